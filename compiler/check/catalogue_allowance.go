package check

import (
	"fmt"
	"math/big"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/measure"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

// What an allowance has room for.
func init() {
	register(Rule{ID: "trimmed-to-almost-nothing", Severity: finding.Warning, Category: "measures", run: almostNothing,
		Purpose: "A seam is trimmed so that less than 3 mm are left.",
		Why:     "Cloth frays out of so narrow an allowance, and the seam opens."})
	register(Rule{ID: "stitched-beyond-the-allowance", Severity: finding.Warning, Category: "measures", run: beyond,
		Purpose: "A row is stitched farther from the seam than its allowance reaches.",
		Why:     "The row is meant to hold the allowance, and goes through one layer beside it."})
	register(Rule{ID: "too-narrow-to-fell", Severity: finding.Warning, Category: "measures", run: tooNarrowToFell,
		Purpose: "A seam is felled whose wide allowance does not reach round the trimmed one.",
		Why:     "One allowance is folded over the other and stitched down; it takes about two and a half times the width of the trimmed one."})
	register(Rule{ID: "rows-wider-than-the-allowance", Severity: finding.Error, Category: "measures", run: twoRows,
		Purpose: "The two rows of a French seam take more than the allowance.",
		Why:     "The first row and the second together make the allowance; what they take more is taken from the width of the garment."})
	register(Rule{ID: "sewn-beside-the-allowance", Severity: finding.Error, Category: "measures", run: beside,
		Purpose: "A step sews a seam at another width than its allowance.",
		Why:     "The pieces are drafted for the allowance: sewn at another width the garment comes out in another size."})
}

// leastLeft is what a trimmed allowance must keep. Common practice, no source.
var leastLeft = measure.Of(3, 1, measure.Millimetre)

// almostNothing leaves to another rule what is trimmed by all that there is.
func almostNothing(r *run) {
	for _, op := range r.Ops() {
		if op.Verb != "trim" && op.Verb != "grade" {
			continue
		}
		for _, o := range op.Objects {
			left, where := leftBy(op, o.Seam)
			if where == nil || left.Sign() <= 0 || left.Cmp(leastLeft) >= 0 {
				continue
			}
			c := r.Space.And(op.Cond, o.Cond)
			r.report(r.unsaid(where.Span, c), at(where.Span, "less than 3 mm are left", fmt.Sprintf("%s is trimmed so far that less than 3 mm are left.", Upper(o.Describe())),
				"Leave 3 mm (1/8 in) or more."))
			r.tell(where.Span, c)
		}
	}
}

// leftBy gives what a trimming leaves of an allowance, and the measure that says
// so; nil if none does.
func leftBy(op *model.Op, s *model.Seam) (measure.Length, *model.Amount) {
	if p := op.Phrase("to"); p != nil && len(p.Amounts) > 0 {
		return p.Amounts[0].Length, &p.Amounts[0]
	}
	if p := op.Phrase("by"); p != nil && len(p.Amounts) > 0 && s != nil && s.Allow != nil {
		return s.Allow.Length.Sub(p.Amounts[0].Length), &p.Amounts[0]
	}
	return measure.Length{}, nil
}

// distance gives the measure that says how far from an edge or seam a row lies.
func distance(op *model.Op) *model.Amount {
	for _, p := range op.Phrases {
		if p.Name == "distance" && len(p.Amounts) > 0 {
			return &p.Amounts[0]
		}
	}
	return nil
}

// beyond compares rows along a seam with the width of its allowance. Of two rows
// the nearer one holds it. Where the allowance lies inside a facing or a turned
// part, the row goes through both layers.
func beyond(r *run) {
	for _, op := range r.Ops() {
		d := distance(op)
		if d == nil || op.Verb != "topstitch" && op.Verb != "edgestitch" && op.Verb != "understitch" {
			continue
		}
		for _, o := range op.Objects {
			s := o.Seam
			if s == nil || s.Allow == nil || d.Length.Cmp(s.Allow.Length) < 0 {
				continue
			}
			bad := r.Space.Diff(r.Space.And(op.Cond, o.Cond), r.Space.Or(r.inside(s), r.heldNearer(s)))
			f := at(d.Span, "beside the allowance", fmt.Sprintf("%s is stitched at %s, and its allowance is only %s wide.", Upper(seamName(s)), d.Measure, s.Allow.Measure),
				"Stitch nearer to the seam, or add a nearer row that holds the allowance.")
			bad = r.unsaid(d.Span, r.unsaid(s.Allow.Span, bad))
			r.report(bad, also(f, s.Allow.Span, "the allowance"))
			r.tell(d.Span, bad)
		}
	}
}

// heldNearer is where another row, within the allowance, is stitched on a seam.
func (r *run) heldNearer(s *model.Seam) condition.Cond {
	c := condition.False
	for op := range r.opsOf("topstitch", "edgestitch", "understitch") {
		for _, o := range op.Objects {
			if d := distance(op); o.Seam == s && (d == nil || d.Length.Cmp(s.Allow.Length) < 0) {
				c = r.Space.Or(c, op.Cond)
			}
		}
	}
	return c
}

// tooNarrowToFell compares the allowance of a felled seam with the width to which
// the lower one was trimmed: 2 1/2 times it. Common practice, no source.
func tooNarrowToFell(r *run) {
	for _, fell := range r.Ops() {
		for _, o := range fell.Objects {
			s := o.Seam
			if fell.Verb != "fell" || s == nil || s.Allow == nil {
				continue
			}
			for _, op := range r.Ops() {
				left, where := leftBy(op, s)
				if op.Verb != "trim" || where == nil || !actsOn(op, s) || s.Allow.Length.Cmp(left.MulRat(big.NewRat(5, 2))) >= 0 {
					continue
				}
				f := at(fell.Span, "too narrow", fmt.Sprintf("%s is felled: its allowance of %s does not reach round the one that was trimmed to %s.", Upper(seamName(s)), s.Allow.Measure, measure.Source(left, where.Unit)),
					"Trim the lower allowance further, or widen both.")
				r.report(r.Space.All(fell.Cond, op.Cond, s.Cond), also(also(f, where.Span, "trimmed here"), s.Allow.Span, "the allowance"))
			}
		}
	}
}

func actsOn(op *model.Op, s *model.Seam) bool {
	for _, o := range op.Objects {
		if o.Seam == s {
			return true
		}
	}
	return false
}

func beside(r *run) {
	for _, op := range r.Ops() {
		d := distance(op)
		if d == nil || !op.Row.Sews || fromRightSide(op) {
			continue // the first row of a French seam takes a part of the allowance
		}
		for _, o := range op.Objects {
			s := o.Seam
			if s == nil || s.Allow == nil || d.Length == s.Allow.Length || s.AllowTo != nil && d.Length == s.AllowTo.Length {
				continue
			}
			f := at(d.Span, "another width", fmt.Sprintf("%s is sewn at %s, and its allowance is %s.", Upper(seamName(s)), d.Measure, s.Allow.Measure),
				fmt.Sprintf("Leave the measure out of the step; if the seam has an allowance of its own, say so where it is declared: allow %s.", d.Measure))
			r.report(r.unsaid(s.Allow.Span, r.Space.And(op.Cond, o.Cond)), also(f, s.Allow.Span, "the allowance"))
		}
	}
}

// fromRightSide reports whether a seam is sewn with its allowances outside, to be
// shut in by a second row.
func fromRightSide(op *model.Op) bool {
	p := op.Phrase("side")
	return p != nil && p.Word == "right"
}

func twoRows(r *run) {
	for _, first := range r.Ops() {
		d := distance(first)
		if d == nil || !first.Row.Sews || !fromRightSide(first) {
			continue
		}
		for _, o := range first.Objects {
			if o.Seam != nil && o.Seam.Allow != nil {
				r.secondRow(first, o.Seam, *d)
			}
		}
	}
}

// secondRow compares both rows of a French seam with its allowance.
func (r *run) secondRow(first *model.Op, s *model.Seam, d model.Amount) {
	for _, op := range r.Ops() {
		e := distance(op)
		if op.Verb != "stitch" || e == nil || !actsOn(op, s) || d.Length.Add(e.Length).Cmp(s.Allow.Length) <= 0 {
			continue
		}
		f := at(e.Span, "together too wide", fmt.Sprintf("The two rows of %s are sewn at %s and %s, and its allowance is %s.", seamName(s), d.Measure, e.Measure, s.Allow.Measure), "Let both together be as wide as the allowance.")
		r.report(r.Space.All(first.Cond, op.Cond, s.Cond), also(also(f, d.Span, "the first row"), s.Allow.Span, "the allowance"))
	}
}
