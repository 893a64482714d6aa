package check

import (
	"fmt"
	"math/big"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/lay"
	"seamwarden/compiler/measure"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

// How much cloth is said to be enough, beside what the drawn pieces take.
func init() {
	register(Rule{ID: "cloth-less-than-its-pieces", Severity: finding.Error, Category: "sizes", ahead: -4, run: lessThanPieces,
		Purpose: "Less cloth is told to be enough than the pieces would fill without a gap.",
		Why:     "The area of the cut parts divided by the width is a length below which no layout comes. Whoever buys this cannot cut the garment."})
	register(Rule{ID: "cloth-less-than-the-lay", Severity: finding.Error, Category: "sizes", ahead: -5, run: lessThanLay,
		Purpose: "Less cloth is told to be enough than the shortest lay that was found takes.",
		Why:     "Whoever buys this has no layout to cut from. A more clever one may exist; until it is found, nobody else has it either."})
	register(Rule{ID: "cloth-more-than-the-lay", Severity: finding.Advice, Category: "sizes", ahead: -6, run: moreThanLay,
		Purpose: "Much more cloth is told to be needed than the lay takes.",
		Why:     "Cloth is most of what a garment costs. Some is spared for a layout that is less clever and for matching; how much, the head says with `spare`."})
}

// layings are the lays that the pattern needs, for the promises to be held against.
func (r *run) layings() []*model.Laying {
	if r.Layings == nil || len(r.Promises) == 0 {
		return nil
	}
	return r.Layings()
}

// lays lists the lays for which a promise has to be enough, in the size with the number
// i. A draft for which there is no garment of its own has no drawings of its own either,
// and is not held against any.
func (r *run) lays(p *model.Promise, i int) (all []*model.Laying) {
	if p.Draft != nil && p.Draft.When == "" {
		return nil
	}
	for _, l := range r.layings() {
		if max(l.Size, 0) == max(i, 0) && p.ForWidth(l.Material, l.Width.Length) && r.Space.Overlaps(r.Space.And(p.Cond, l.Cond), r.Valid) {
			all = append(all, l)
		}
	}
	return
}

// laid reports whether every garment of a promise has been laid in a size.
func (r *run) laid(p *model.Promise, i int) bool {
	covered := condition.False
	for _, l := range r.lays(p, i) {
		if l.Found == nil {
			return false
		}
		covered = r.Space.Or(covered, l.Cond)
	}
	return covered != condition.False && !r.possible(r.Space.Diff(p.Cond, covered))
}

// laidOf is where a material has been laid, in a width or in any.
func (r *run) laidOf(m *model.Material, w *model.Amount) condition.Cond {
	c := condition.False
	for _, l := range r.layings() {
		if l.Material == m && l.Found != nil && (w == nil || l.Width.Length == w.Length) {
			c = r.Space.Or(c, r.Space.And(l.Cond, r.InSizes(func(i int) bool { return i == l.Size })))
		}
	}
	return c
}

// areas are what drawings fill, of which it is said that one is drawn in another unit:
// then nobody knows how much cloth they take.
type areas struct{}

// byLays holds each promise against its lays: over says by how much it is wrong for a
// lay, nothing if it is right. It is reported once for each promise, with the size in
// which it is most wrong.
func (r *run) byLays(over func(*model.Amount, *model.Laying) measure.Length, word func(*model.Promise, *model.Amount, *model.Laying) finding.Finding) {
	for _, p := range r.Promises {
		bad, most := condition.False, measure.Length{}
		var worst *model.Laying
		for i := range p.Cells {
			if !p.Has(i) {
				continue
			}
			for _, l := range r.lays(p, i) {
				by := over(p.Cells[i], l).Sub(l.Before(int64(l.SpareMM * lay.Millimetre)))
				if by.Sign() <= 0 {
					continue // or some of the garments need no more
				}
				bad = r.Space.Or(bad, r.Space.All(p.Cond, l.Cond, r.sizeOf(l)))
				if by.Cmp(most) > 0 {
					most, worst = by, l
				}
			}
		}
		if bad = r.unsaid(areas{}, r.unsaid(p, bad)); worst != nil && r.possible(bad) {
			r.report(bad, word(p, p.Cell(worst.Size), worst))
			r.tell(p, condition.True)
		}
	}
}

func (r *run) sizeOf(l *model.Laying) condition.Cond {
	return r.InSizes(func(i int) bool { return i == l.Size })
}

// hair is by how much a promise may be less, as nobody measures cloth more exactly
// (common practice, no source).
var hair = measure.Of(1, 1, measure.Millimetre)

// lessThan is by how much an amount is less than what is needed, nothing if it is not.
func lessThan(a *model.Amount, need measure.Length) measure.Length {
	if by := need.Sub(a.Length); by.Cmp(hair) > 0 {
		return by
	}
	return measure.Length{}
}

func lessThanPieces(r *run) {
	r.byLays(func(a *model.Amount, l *model.Laying) measure.Length {
		return lessThan(a, bare(l))
	}, func(p *model.Promise, a *model.Amount, l *model.Laying) finding.Finding {
		return at(a.Span, "cannot be enough", fmt.Sprintf("%s%s of %s lying %s wide is told to be enough, and the cut parts alone fill %s of it.", r.sizeFirst(l.Size), a, clothOf(p), l.Width, finely(bare(l), a.Unit)),
			"Look for a slip in this number, its width or its size, or in how many are cut; a layout takes more than this again.")
	})
}

// bare is the length of cloth that the cut parts of a lay would fill without a gap. What
// shrinks is cut from what is left of it.
func bare(l *model.Laying) measure.Length { return l.Before(l.Job.Area()) }

func lessThanLay(r *run) {
	r.byLays(func(a *model.Amount, l *model.Laying) measure.Length {
		if l.Found == nil {
			return measure.Length{}
		}
		return lessThan(a, l.Before(l.Found.Cloth()))
	}, func(p *model.Promise, a *model.Amount, l *model.Laying) finding.Finding {
		need := l.Before(l.Found.Cloth())
		return at(a.Span, "less than the lay", fmt.Sprintf("%s%s of %s lying %s wide is told to be enough, and the shortest lay that was found takes %s.", r.sizeFirst(l.Size), a, clothOf(p), l.Width, finely(need, a.Unit)),
			fmt.Sprintf("Tell %s, or have `seamwarden lay` look longer. The booklet of this size draws the lay (%s).", r.toBuy(need.Sub(hair), a.Unit), layWays[l.Found.Way]))
	})
}

var layWays = map[lay.Way]string{lay.SingleLayer: "in a single layer", lay.LengthwiseFold: "folded lengthwise", lay.CrosswiseFold: "folded crosswise"}

// moreThanLay compares with the longest lay for which a promise has to be enough, if
// all of them are known.
func moreThanLay(r *run) {
	for _, p := range r.Promises {
		most, at0 := measure.Length{}, -1
		var need measure.Length
		var worst *model.Laying
		wrong := r.InSizes(func(i int) bool {
			longest := r.longest(p, i)
			if longest == nil {
				return false
			}
			n := longest.Before(longest.Found.Cloth())
			by := p.Cell(i).Length.Sub(r.atMost(n, p.Cell(i).Unit))
			if by.Sign() > 0 && by.Cmp(most) > 0 {
				most, at0, need, worst = by, max(i, 0), n, longest
			}
			return by.Sign() > 0
		})
		if bad := r.unsaid(p, r.Space.And(p.Cond, wrong)); at0 >= 0 && r.possible(bad) {
			r.report(bad, r.wordMore(p, p.Cells[at0], worst, need))
		}
	}
}

// longest is the longest lay of a promise in a size, nil if nothing is promised there or
// some lay is not known.
func (r *run) longest(p *model.Promise, i int) (longest *model.Laying) {
	if !p.Has(i) || !r.laid(p, i) {
		return nil
	}
	for _, l := range r.lays(p, i) {
		if longest == nil || l.Before(l.Found.Cloth()).Cmp(longest.Before(longest.Found.Cloth())) > 0 {
			longest = l
		}
	}
	return
}

// atMost is what may be promised where so much is needed: with what is spared, rounded
// up as cloth is bought.
func (r *run) atMost(need measure.Length, unit measure.Unit) measure.Length {
	percent, _ := r.Spared()
	return r.clothSteps().Round(need.Sub(hair).MulRat(big.NewRat(100+percent, 100)), measure.Cloth, unit.System())
}

func (r *run) wordMore(p *model.Promise, a *model.Amount, l *model.Laying, need measure.Length) finding.Finding {
	percent, said := r.Spared()
	help := fmt.Sprintf("Tell %s. If you spare more than %d %%, to match a print say, write it in the head: `spare 30%%`.", r.toBuy(need.Sub(hair), a.Unit), percent)
	if said {
		help = fmt.Sprintf("Tell %s, or spare more than %d %%.", r.toBuy(need.Sub(hair), a.Unit), percent)
	}
	f := at(a.Span, "more than the lay", fmt.Sprintf("%s%s of %s lying %s wide is told, and the lay takes %s.", r.sizeFirst(l.Size), a, clothOf(p), l.Width, finely(need, a.Unit)), help)
	if said {
		f = also(f, r.Spare.Span, "to spare")
	}
	return f
}

// finely words a length of cloth more finely than it is bought, upward: to 1 cm or to
// 1/16 yd; what a lay is more by a hair is left out.
func finely(l measure.Length, unit measure.Unit) string {
	l = l.Sub(hair)
	if unit.System() == measure.Metric {
		return measure.Source(measure.Steps{Metric: measure.Of(1, 1, measure.Centimetre)}.Round(l, measure.Cloth, measure.Metric), measure.Metre)
	}
	return measure.Source(measure.Steps{Imperial: measure.Of(1, 16, measure.Yard)}.Round(l, measure.Cloth, measure.Imperial), measure.Yard)
}
