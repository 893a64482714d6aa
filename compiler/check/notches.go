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
	register(Rule{ID: "notches-apart", Severity: finding.Error, Category: "outlines", FromAbsence: true, ahead: -1, run: notchesApart,
		Purpose: "Two edges are sewn together, and a notch that both have does not meet itself.",
		Why:     "Notches are there to be laid on one another. Where they do not meet, one part is stretched against the other, and the ends no longer fit."})
}

// meeting is a notch that two edges have, with how far it lies from the end at which both
// begin, in millimetres.
type meeting struct {
	name string
	a, b float64
	span finding.Span
}

// notchesApart looks at seams of one edge to one edge, where nothing is gathered.
func notchesApart(r *run) {
	for _, s := range r.Seams {
		if len(s.Joins) != 1 || len(s.To) != 1 {
			continue
		}
		full, lost := r.fullnesses(s)
		for _, f := range full {
			if f.gathers {
				lost = r.Space.Or(lost, f.cond)
			}
		}
		for _, j := range s.Copies {
			if r.notchesOf(s, j, lost) {
				break // the other side of the body has the same fault
			}
		}
	}
}

func (r *run) notchesOf(s *model.Seam, j *model.Join, lost condition.Cond) (found bool) {
	for _, a := range j.A {
		for _, b := range j.B {
			if a.Edge == b.Edge {
				continue
			}
			for _, d := range a.Edge.Piece.Outlines {
				for _, e := range b.Edge.Piece.Outlines {
					c := r.Space.All(s.Cond, j.Cond, a.Cond, b.Cond, d.Cond, e.Cond)
					if c = r.unsaid(s, r.Space.Diff(c, lost)); d.Art != nil && e.Art != nil && r.possible(c) && r.notchesBetween(s, a, b, d, e, c) {
						return true
					}
				}
			}
		}
	}
	return false
}

// notchesBetween reports the notch that is farthest from meeting itself.
func (r *run) notchesBetween(s *model.Seam, a, b *model.EdgeUse, d, e *model.Drawn, c condition.Cond) bool {
	var worst meeting
	var back bool
	most, at0, sizes := 0.0, 0, map[int]bool{}
	bad := r.InSizes(func(i int) bool {
		m, off, reversed := r.apartIn(s, a, b, d, e, i)
		if off <= 0 {
			return false
		}
		if sizes[i] = true; off > most {
			most, at0, worst, back = off, i, m, reversed
		}
		return true
	})
	if bad = r.Space.And(bad, c); !r.possible(bad) {
		return false
	}
	if r.spoken[seamEnd{a.Edge, worst.name}] != condition.False || r.spoken[seamEnd{b.Edge, worst.name}] != condition.False {
		return false // a seam ends there, and does not fit
	}
	in := r.inSize(max(at0, 0), len(sizes) > 1)
	fromA, fromB := r.endCalled(a, d, at0, false), r.endCalled(b, e, at0, back)
	f := at(s.Span, "do not meet", fmt.Sprintf("The notch %s of %s does not meet itself%s: on %s it lies %s from %s, on %s %s from %s.", worst.name, seamName(s), in,
		the(a.Edge.Piece.Name), r.inUnits(worst.a), fromA, the(b.Edge.Piece.Name), r.inUnits(worst.b), fromB), "Move one of the two in its drawing; a notch that means something else needs a name of its own.")
	r.report(bad, also(f, worst.span, "this notch"))
	return true
}

// endCalled names the end of a drawn edge from which places are told: the edge before
// it, or behind it.
func (r *run) endCalled(u *model.EdgeUse, d *model.Drawn, size int, back bool) string {
	o, e := r.drawnEdge(u.Edge, d, max(size, 0))
	before, behind := o.Neighbours(e)
	if back {
		before = behind
	}
	return "the " + edgeCalled(before.Name)
}

// apartIn gives the notch that is farthest off in a size, by how much beyond what may
// be, and whether the second edge runs the other way; 0 if all meet.
func (r *run) apartIn(s *model.Seam, a, b *model.EdgeUse, d, e *model.Drawn, size int) (worst meeting, off float64, back bool) {
	o, x := r.drawnEdge(a.Edge, d, max(size, 0))
	p, y := r.drawnEdge(b.Edge, e, max(size, 0))
	if x == nil || y == nil || !shareNotch(o, x, p, y) {
		return worst, 0, false
	}
	first, second := r.sewnPart(s, s.Joins[0], a, o, x), r.sewnPart(s, s.To[0], b, p, y)
	off = math.Inf(1)
	for _, way := range waysRound(a, b, o, x, p, y) {
		m, far := r.farthestNotch(s, first, second, way < 0)
		if far < off {
			worst, off, back = m, far, way < 0
		}
	}
	return
}

// shareNotch reports whether two drawn edges have a notch of one name; most have none,
// and need not be measured.
func shareNotch(o *outline.Outline, x *outline.Edge, p *outline.Outline, y *outline.Edge) bool {
	for _, m := range o.Marks {
		if m.Edge != x || m.Name == "" {
			continue
		}
		for _, n := range p.Marks {
			if n.Edge == y && n.Name == m.Name {
				return true
			}
		}
	}
	return false
}

// sewn is the part of a drawn edge that lies in a seam, with the notches inside it by
// name: how far along the stitching line each lies. long is no number if that part is
// not known.
type sewn struct {
	long    float64
	notches map[string]float64
	spans   map[string]finding.Span
}

func (r *run) sewnPart(s *model.Seam, t *model.Target, u *model.EdgeUse, o *outline.Outline, e *outline.Edge) sewn {
	width := func(other *outline.Edge) float64 { return r.widthAt(s, u, other) }
	from, to := 0.0, o.SewLength(e, width)
	if a, b := r.stretch(s, t, u); a != nil {
		from, to = o.SewPlace(e, placeOn(o, e, u.Edge, a), width), o.SewPlace(e, placeOn(o, e, u.Edge, b), width)
	}
	from, to = min(from, to), max(from, to)
	part := sewn{long: to - from, notches: map[string]float64{}, spans: map[string]finding.Span{}}
	for _, m := range o.Marks {
		if m.Edge != e || m.Name == "" {
			continue
		}
		const end = 1 // millimetres; what ends the seam is no notch in it
		at := o.SewPlace(e, m.At, width)
		if _, twice := part.notches[m.Name]; twice || at < from+end || at > to-end {
			part.notches[m.Name] = math.NaN()
			continue
		}
		part.notches[m.Name], part.spans[m.Name] = at-from, m.Span
	}
	return part
}

// farthestNotch compares the notches of two parts, the second from its other end if it
// runs back. Beside what is lost in drawing, they may differ by as much as the parts do.
func (r *run) farthestNotch(s *model.Seam, a, b sewn, back bool) (worst meeting, off float64) {
	may := math.Abs(a.long-b.long) + max(rowsDifferMM, rowsDifferPart*max(a.long, b.long))
	if s.Ease != nil {
		may += s.Ease.Length.Abs().MM()
	}
	for name, x := range a.notches {
		y, both := b.notches[name]
		if back {
			y = b.long - y
		}
		far := math.Abs(x-y) - may
		if both && (far > off || far == off && far > 0 && name < worst.name) {
			worst, off = meeting{name, x, y, b.spans[name]}, far
		}
	}
	return
}

// waysRound says how the second edge may run beside the first: 1 with it, -1 against it,
// both where that is not known. Two whole parts that are sewn face to face run against
// each other if they have the same hand; else edges of one name meet at the ends.
func waysRound(a, b *model.EdgeUse, o *outline.Outline, x *outline.Edge, p *outline.Outline, y *outline.Edge) []int {
	hand, names := 0, 0
	if !a.Instance.Cut.Lay.Fold && !b.Instance.Cut.Lay.Fold {
		hand = -int(a.Instance.Hand) * int(b.Instance.Hand)
	}
	before, behind := o.Neighbours(x)
	before2, behind2 := p.Neighbours(y)
	with := before.Name == before2.Name || behind.Name == behind2.Name
	against := before.Name == behind2.Name || behind.Name == before2.Name
	if with != against {
		names = map[bool]int{true: 1, false: -1}[with]
	}
	switch {
	case hand*names < 0 || hand == 0 && names == 0:
		return []int{1, -1}
	case hand != 0:
		return []int{hand}
	}
	return []int{names}
}
