package outline

import (
	"cmp"
	"math"
	"slices"
)

// divide cuts one closed line at corners that are marked: each corner is where the
// edge of its name begins, clockwise.
func (b *builder) divide(edges, corners []*shape) bool {
	if len(edges) != 1 {
		b.add(b.cornersNeedOneLine(corners[0].at, edges))
		return false
	}
	sh := edges[0]
	if len(sh.curves) == 0 {
		b.add(b.edgeOfNoLength(sh))
		return false
	}
	if gap := distance(sh.from(), sh.to()); sh.parts != 1 || gap > b.tolerance {
		b.add(b.notClosed(sh, gap))
		return false
	}
	whole := &Edge{Name: sh.name, Curves: append([]Curve(nil), sh.curves...), Span: sh.at}
	moveEnd(whole.Curves, whole.from())
	o := &Outline{Edges: []*Edge{whole}}
	if o.signed() < 0 {
		o.reverse()
	}
	cuts, ok := b.cuts(whole.Curves, corners)
	if ok {
		b.out.Edges = whole.cutAt(cuts)
	}
	return ok
}

// cut is a corner on the ring: the curve, and the parameter from 0 up to 1, at which it
// lies.
type cut struct {
	curve int
	t     float64
	shape *shape
}

// cuts finds the corners on the ring, in the order of the ring.
func (b *builder) cuts(ring []Curve, corners []*shape) ([]cut, bool) {
	var all []cut
	for i, sh := range corners {
		for k := range corners[:i] {
			if corners[k].name == sh.name {
				b.add(b.edgeTwice(sh, corners[k].at))
				return nil, false
			}
		}
		c, off := place(ring, sh.middle())
		if off > onEdge {
			b.add(b.cornerOff(sh))
			return nil, false
		}
		c.shape = sh
		all = append(all, c)
	}
	all = inOrder(all)
	for i := 1; i < len(all); i++ {
		if p, q := all[i-1], all[i]; p.curve == q.curve && p.t == q.t {
			b.add(b.cornersInOnePlace(q.shape, p.shape))
			return nil, false
		}
	}
	return all, true
}

// inOrder sorts cuts along the ring.
func inOrder(all []cut) []cut {
	slices.SortFunc(all, func(p, q cut) int {
		return cmp.Or(cmp.Compare(p.curve, q.curve), cmp.Compare(p.t, q.t))
	})
	return all
}

// nearJoint is how near to the joint of two curves a corner is taken to be that joint,
// in millimetres.
const nearJoint = 0.5

// place finds the place of a ring nearest to a point, and how far off it is.
func place(ring []Curve, p Point) (c cut, off float64) {
	off = math.Inf(1)
	for k := range ring {
		if d := distance(ring[k].from(), p); d < min(off, nearJoint) {
			c, off = cut{curve: k}, d
		}
	}
	if off <= nearJoint {
		return c, off
	}
	for k := range ring {
		if t, d := ring[k].nearest(p, onEdge); d < off {
			c, off = cut{curve: k, t: t}, d
		}
	}
	if c.t > 1-1e-9 {
		c = cut{curve: (c.curve + 1) % len(ring)}
	}
	return c, off
}

// cutAt gives the edges between cuts that stand in the order of the ring.
func (e *Edge) cutAt(cuts []cut) (all []*Edge) {
	for i, from := range cuts {
		to := cuts[(i+1)%len(cuts)]
		part := &Edge{Name: from.shape.name, Span: from.shape.at}
		k, t := from.curve, from.t
		if to.curve > k || to.curve == k && to.t > t {
			part.stretch(e.Curves, k, t, to.curve, to.t)
		} else { // over the end of the ring
			part.stretch(e.Curves, k, t, len(e.Curves), 0)
			part.stretch(e.Curves, 0, 0, to.curve, to.t)
		}
		all = append(all, part)
	}
	return
}

// stretch adds the curves of a ring from one place to a later one.
func (e *Edge) stretch(ring []Curve, k int, t float64, end int, until float64) {
	for ; k <= end && k < len(ring); k, t = k+1, 0 {
		c := ring[k]
		if k == end {
			if until <= t {
				return
			}
			c, _ = c.split(until)
			if t > 0 {
				_, c = c.split(t / until)
			}
		} else if t > 0 {
			_, c = c.split(t)
		}
		e.Curves = append(e.Curves, c)
	}
}
