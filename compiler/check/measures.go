package check

import (
	"fmt"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "trimmed-to-more-than-there-is", Severity: finding.Error, Category: "measures", run: trims,
		Purpose: "A seam is trimmed to a width, or by a width, that its allowance does not have.",
		Why:     "Either nothing is cut off, or the stitches are."})
}

// trims compares what is trimmed with the allowances, for the seams of one
// operation together.
func trims(r *run) {
	for _, op := range r.Ops() {
		if op.Verb != "trim" && op.Verb != "grade" {
			continue
		}
		for _, how := range []string{"to", "by"} {
			p := op.Phrase(how)
			if p == nil || len(p.Amounts) == 0 {
				continue
			}
			byWidth := map[string][]*model.Seam{}
			var order []string
			for _, o := range op.Objects {
				if s := o.Seam; s != nil && s.Allow != nil && p.Amounts[0].Length.Cmp(s.Allow.Length) >= 0 {
					if k := s.Allow.String(); byWidth[k] == nil {
						order = append(order, k)
					}
					byWidth[s.Allow.String()] = append(byWidth[s.Allow.String()], s)
				}
			}
			for _, k := range order {
				r.trimmed(op, byWidth[k], p.Amounts[0], how)
			}
		}
	}
}

func (r *run) trimmed(op *model.Op, seams []*model.Seam, a model.Amount, how string) {
	have := seams[0].Allow
	bad := condition.False
	for _, s := range seams {
		bad = r.Space.Or(bad, r.Space.And(op.Cond, s.Cond))
	}
	f := at(a.Span, fmt.Sprintf("the allowance is %s", have.Measure), fmt.Sprintf("%s %s trimmed %s %s, and the allowance is %s.", Upper(theSeams(seams)), isOrAre(len(seams)), how, a.Measure, have.Measure),
		"Write less than the allowance, or widen the allowance.")
	r.report(r.unsaid(a.Span, r.unsaid(have.Span, bad)), also(f, have.Span, "the allowance"))
}
