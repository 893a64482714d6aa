package check

import (
	"fmt"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "first-turn-deeper", Severity: finding.Warning, Category: "measures", run: turns,
		Purpose: "The first fold of a hem is deeper than the second.",
		Why:     "The raw edge then reaches past the second fold and is bent back by it: the hem is thick and lies badly. The first fold is the smaller one, or they are alike."})
	register(Rule{ID: "depth-hard-to-believe", Severity: finding.Warning, Category: "measures", ahead: 1, run: depths,
		Purpose: "A fold, an allowance or the distance of a row is far larger than sewing knows.",
		Why:     "Mostly a key was struck too often or the unit is wrong; the sewist would cut or fold away half of the piece."})
}

// turns looks at hems with two folds.
func turns(r *run) {
	for op := range r.opsOf("hem", "turn under", "press under") {
		p := op.Phrase("turning")
		if p == nil || len(p.Amounts) != 2 || p.Amounts[0].Length.Cmp(p.Amounts[1].Length) <= 0 {
			continue
		}
		first, second := p.Amounts[0], p.Amounts[1]
		f := at(first.Span, "more than the "+second.Measure.String()+" of the second", fmt.Sprintf("The hem is turned %s and then %s: the first fold is the deeper one.", first.Measure, second.Measure),
			"Write the smaller one first, as it is folded first: `turning "+second.Measure.String()+", "+first.Measure.String()+"`.")
		r.report(r.unsaid(first.Span, op.Cond), f)
	}
}

// deepest is what no common garment goes beyond (common practice, no source): the
// deep hem of a curtain has some 20 cm, a wide allowance for letting out some 5.
var deepest = struct{ fold, allowance, row float64 }{fold: 300, allowance: 100, row: 200} // in mm

// depths holds measures against what sewing knows.
func depths(r *run) {
	if r.Allow != nil {
		r.believe("An allowance", *r.Allow, deepest.allowance, r.Valid)
	}
	for _, s := range r.Seams {
		if s.Own && s.Allow != nil {
			r.believe("An allowance", *s.Allow, deepest.allowance, s.Cond)
		}
	}
	for op := range r.opsOf("hem", "turn under", "press under") {
		for _, p := range op.Phrases {
			if p.Name == "turning" || p.Name == "by" {
				for _, a := range p.Amounts {
					r.believe("A fold", a, deepest.fold, op.Cond)
				}
			}
		}
	}
	for op := range r.opsOf("topstitch", "edgestitch", "understitch") {
		if p := op.Phrase("distance"); p != nil && len(p.Amounts) > 0 {
			r.believe("A distance", p.Amounts[0], deepest.row, op.Cond)
		}
	}
}

// believe reports a measure beyond the most, in mm, that is believed.
func (r *run) believe(what string, a model.Amount, most float64, c condition.Cond) {
	if a.Length.MM() <= most {
		return
	}
	r.report(c, at(a.Span, "so much?", fmt.Sprintf("%s of %s is far more than is usual.", what, a.Measure),
		"Look for a slip of the keys or a wrong unit. If it is meant, say so in a remark."))
	r.tell(a.Span, c)
}
