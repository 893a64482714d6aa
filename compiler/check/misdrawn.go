package check

import (
	"fmt"
	"math"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/compiler/outline"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "drawn-in-another-unit", Severity: finding.Error, Category: "outlines", Why: whyUnit,
		Purpose: "A piece would fit all that it is sewn to if it were drawn in another unit."})
	register(Rule{ID: "allowance-misstated", Severity: finding.Error, Category: "outlines", Why: whyAllowance,
		Purpose: "A piece would fit all that it is sewn to if its lines were meant the other way: sewn along and not cut along, or cut along and not sewn along."})
}

const (
	whyUnit      = "A drawing has the size that its width, height and view box say. One that was saved in inches and is read in millimetres is a piece for a doll."
	whyAllowance = "What is cut along lies outside what is sewn along by the allowance. Taken for one another, every seam of the piece is too long or too short."
)

// supposition is what may be wrong with a whole drawing.
type supposition struct {
	times     float64 // it ought to be so many times as large
	allowance bool    // its lines are meant the other way
	help      string
}

// The units that are taken for one another: inches, centimetres, millimetres, and pixels,
// of which 96 make an inch (CSS and SVG 2).
var suppositions = []supposition{
	{times: 1, allowance: true},
	{times: 25.4, help: "It looks as if inches had been taken for millimetres."},
	{times: 10, help: "It looks as if centimetres had been taken for millimetres."},
	{times: 96 / 25.4, help: "It looks as if millimetres had been taken for pixels, which count where a drawing has no view box."},
	{times: 2.54, help: "It looks as if inches had been taken for centimetres."},
	{times: 96, help: "It looks as if inches had been taken for pixels, which count where a drawing has no view box."},
	{times: 1 / 25.4, help: "It looks as if millimetres had been taken for inches."},
	{times: 0.1, help: "It looks as if millimetres had been taken for centimetres."},
	{times: 25.4 / 96, help: "It looks as if pixels had been taken for millimetres."},
}

// misdrawn looks for one drawing that explains why seams do not fit: supposed to be drawn
// in another unit, or meant the other way, it fits in all of them. It reports that and
// gives the seams that are left.
func (r *run) misdrawn(wrong []misfit, taken map[*model.Edge]float64) []misfit {
	for _, x := range suppositions {
		for _, m := range wrong {
			for _, u := range m.seam.Uses() {
				p := u.Edge.Piece
				for i, d := range p.Outlines {
					if c := r.Space.All(m.bad, p.Cond, d.Cond); d.Art != nil && r.possible(c) && r.fitsIf(p, i, x, taken) {
						r.reportMisdrawn(p, d, x)
						return r.misdrawn(r.withoutPiece(wrong, p, d), taken)
					}
				}
			}
		}
	}
	return wrong
}

// fitsIf reports whether all seams of a piece fit, in every garment of its drawing, under
// a supposition about it. Of an allowance one seam is not enough: that may well be off by
// as much for another reason.
func (r *run) fitsIf(p *model.Piece, i int, x supposition, taken map[*model.Edge]float64) bool {
	d := p.Outlines[i]
	if x.times != 1 && r.tooLarge(d, x.times) {
		return false
	}
	p.Outlines[i] = supposed(d, x)
	defer func() { p.Outlines[i] = d }()
	measured := 0
	for _, s := range r.Seams {
		if !joinsPiece(s, p) {
			continue
		}
		bad, known := r.misfitting(s, taken)
		if r.possible(r.Space.And(bad, d.Cond)) {
			return false
		}
		if known {
			measured++
		}
	}
	return !x.allowance || measured > 1
}

// mostAcross is as large as a piece may be supposed to be, in millimetres.
const mostAcross = 5000

func (r *run) tooLarge(d *model.Drawn, times float64) bool {
	for _, s := range d.Art.Sizes {
		b := s.Bounds()
		if max(b.Max.X-b.Min.X, b.Max.Y-b.Min.Y)*times > mostAcross {
			return true
		}
	}
	return false
}

// supposed is a drawing as it would be under a supposition.
func supposed(d *model.Drawn, x supposition) *model.Drawn {
	other, art := *d, *d.Art
	art.Sizes = nil
	for _, s := range d.Art.Sizes {
		a := s.Allowance
		if x.allowance {
			a = outline.Included + outline.Excluded - a
		}
		art.Sizes = append(art.Sizes, outline.Sized{Sizes: s.Sizes, Outline: s.Supposed(x.times, a)})
	}
	other.Art = &art
	return &other
}

// misfitting gives the garments in which the rows of a seam differ, and whether their
// lengths are known in some.
func (r *run) misfitting(s *model.Seam, taken map[*model.Edge]float64) (bad condition.Cond, known bool) {
	bad, lost := condition.False, r.incomparable(s)
	for _, j := range s.Copies {
		rows := r.rowsOf(s, j, taken)
		for i := range rows {
			known = known || rows[i].known()
		}
		in, _, _, _, _ := r.worstRows(rows, func(a, b float64) float64 { return r.tooFar(s, a, b) })
		bad = r.Space.Or(bad, r.Space.Diff(in, lost))
	}
	return bad, known
}

// withoutPiece leaves out the seams of a piece in the garments of its drawing.
func (r *run) withoutPiece(wrong []misfit, p *model.Piece, d *model.Drawn) (left []misfit) {
	for _, m := range wrong {
		if joinsPiece(m.seam, p) {
			m.bad = r.Space.Diff(m.bad, d.Cond)
		}
		if r.possible(m.bad) {
			left = append(left, m)
		}
	}
	return
}

func (r *run) reportMisdrawn(p *model.Piece, d *model.Drawn, x supposition) {
	name := Upper(the(p.Name))
	r.tell(d, d.Cond)
	r.tell(areas{}, r.Space.And(p.Cond, d.Cond))
	if x.allowance {
		f := at(d.File.Span, "meant the other way?", name+" is said to be drawn along its stitching lines, and it would fit all that it is sewn to if it were drawn along its cutting lines.",
			"If the allowance is in the drawing, write data-allowance=\"included\" in it. If not, every edge of the piece is too long or too short by it.")
		if d.Art.Sizes[0].Allowance == outline.Included {
			f = at(d.File.Span, "meant the other way?", name+" is said to include its allowance, and it would fit all that it is sewn to if it did not.",
				"If the drawing has the stitching lines, write data-allowance=\"none\" in it. If not, the allowance has been left out.")
		}
		r.report(r.Space.And(p.Cond, d.Cond), finding.Finding{Rule: "allowance-misstated", Severity: finding.Error, Headline: f.Headline, Place: f.Place, Help: f.Help, Why: whyAllowance})
		return
	}
	how, times := "small", x.times
	if times < 1 {
		how, times = "large", 1/times
	}
	f := at(d.File.Span, "too "+how, fmt.Sprintf("%s is drawn %s times too %s for what it is sewn to.", name, about(times), how),
		x.help+" Look at width, height and viewBox of the drawing.")
	r.report(r.Space.And(p.Cond, d.Cond), finding.Finding{Rule: "drawn-in-another-unit", Severity: finding.Error, Headline: f.Headline, Place: f.Place, Help: f.Help, Why: whyUnit})
}

// about words a number with at most one digit behind the point.
func about(times float64) string {
	return fmt.Sprint(math.Round(times*10) / 10)
}
