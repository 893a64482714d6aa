package check

import (
	"fmt"
	"math"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "opening-longer-than-seam", Severity: finding.Error, Category: "outlines", run: openingTooLong,
		Purpose: "An opening is left in a seam that is drawn hardly longer, or shorter, than the opening.",
		Why:     "Nothing of the seam is left to hold the ends of the opening: they tear when the work is turned through it."})
}

// holdsEnd is the stretch of stitches that an opening needs at either end, in
// millimetres (common practice, no source).
const holdsEnd = 10

func openingTooLong(r *run) {
	if !r.anyOutline() {
		return
	}
	taken := r.takenUp()
	for _, op := range r.Ops() {
		p := op.Phrase("leaving")
		if p == nil || len(p.Amounts) == 0 || len(op.Objects) != 1 {
			continue // in a row of several seams it may lie across two
		}
		t := op.Objects[0]
		if t.Seam == nil || t.From != nil || t.To != nil {
			continue
		}
		wide := p.Amounts[0]
		bad, long, size := r.tooShortFor(t.Seam, wide.Length.MM(), taken)
		if bad = r.Space.And(bad, op.Cond); !r.possible(bad) {
			continue
		}
		in := ""
		if size != "" {
			in = " in size " + size
		}
		r.report(bad, also(at(wide.Span, "hardly less than the seam", fmt.Sprintf("An opening of %s does not fit into %s, which is drawn %s long%s.", r.inUnits(wide.Length.MM()), seamName(t.Seam), r.inUnits(long), in),
			"Leave a shorter opening, with some stitches at either end of it."), t.Seam.Span, "the seam"))
	}
}

// tooShortFor gives where a seam is too short for an opening, with the least length and
// its size.
func (r *run) tooShortFor(s *model.Seam, wide float64, taken map[*model.Edge]float64) (bad condition.Cond, least float64, size string) {
	bad, least = condition.False, math.Inf(1)
	for _, j := range s.Copies {
		for _, l := range r.addUp(s, j, taken) {
			short := r.InSizes(func(i int) bool {
				k := max(i, 0)
				long := min(l.rows[0][k], l.rows[1][k])
				if !(wide > long-2*holdsEnd) {
					return false
				}
				if long < least {
					least = long
					if i >= 0 {
						size = r.Sizes.Sizes[i]
					}
				}
				return true
			})
			bad = r.Space.Or(bad, r.Space.And(short, l.cond))
		}
	}
	return
}
