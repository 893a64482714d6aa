package check

import (
	"fmt"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/measure"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "trimmed-to-more-than-there-is", Severity: finding.Error, Category: "measures", run: trims,
		Purpose: "A seam is trimmed to a width, or by a width, that its allowance does not have.",
		Why:     "Either nothing is cut off, or the stitches are."})
	register(Rule{ID: "measure-in-the-other-system", Severity: finding.Warning, Category: "measures", ahead: 1, run: oddUnits,
		Purpose: "One measure is written in centimetres where all the others are in inches, or the other way round.",
		Why:     "It is mostly a slip of the hand, and then the length is wrong: 1/4cm is not half of 1/4in. Both systems are printed beside each other anyway."})
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

// written is a measure of the sewing, with the sentence's condition.
type written struct {
	model.Amount
	cond condition.Cond
}

// measures lists the measures of the pattern: of seams, operations and darts, the
// widths of cloth, strips, and lengths that are bought. Sizes of notions are left
// out: a button may be sold in millimetres.
func (r *run) measures() (all []written) {
	add := func(c condition.Cond, list ...*model.Amount) {
		for _, a := range list {
			if a != nil {
				all = append(all, written{*a, c})
			}
		}
	}
	add(condition.True, r.Allow)
	for _, m := range r.Materials {
		for i := range m.Widths {
			add(m.Cond, &m.Widths[i])
		}
	}
	for _, s := range r.Strips {
		add(s.Cond, &s.Width, &s.Length)
	}
	for _, n := range r.Notions {
		add(n.Cond, n.Length)
	}
	for _, s := range r.Seams {
		if s.Own {
			add(s.Cond, s.Allow, s.AllowTo)
		}
	}
	for _, x := range r.Shapings {
		add(x.Cond, x.Takes, x.Long)
	}
	for _, op := range r.Ops() {
		for _, p := range op.Phrases {
			for i := range p.Amounts {
				add(op.Cond, &p.Amounts[i])
			}
		}
	}
	return
}

// oddUnits reports a measure that stands alone in its system, if there are enough
// others to tell which one the author works in.
func oddUnits(r *run) {
	const enough = 4 // measures for each one that is out of line
	by := map[measure.System][]written{}
	for _, m := range r.measures() {
		by[m.Unit.System()] = append(by[m.Unit.System()], m)
	}
	words := map[measure.System]string{measure.Imperial: "inches", measure.Metric: "centimetres"}
	for few, most := range map[measure.System]measure.System{measure.Imperial: measure.Metric, measure.Metric: measure.Imperial} {
		if len(by[few])*enough > len(by[most]) {
			continue
		}
		for _, m := range by[few] {
			f := at(m.Span, "not in "+words[most], fmt.Sprintf("%s is not written in %s, as all the other measures are.", m.Measure, words[most]),
				fmt.Sprintf("Write it in %s; both are printed.", words[most]))
			r.report(m.cond, f)
			r.tell(m.Span, m.cond)
		}
	}
}
