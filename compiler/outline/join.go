package outline

import (
	"math"
	"slices"
)

// join puts edges into a ring by their ends, whichever way each is drawn and in
// whatever order they stand in the file.
func (b *builder) join(list []*shape) bool {
	if len(list) == 0 {
		b.add(b.noEdges())
		return false
	}
	for i, sh := range list {
		if !b.lineOfOnePart(sh, list[:i]) {
			return false
		}
	}
	if sh := list[0]; len(list) == 1 {
		if gap := distance(sh.from(), sh.to()); gap > b.tolerance {
			b.add(b.notClosed(sh, gap))
			return false
		}
	} else if i := closedIn(list); i >= 0 {
		b.add(b.closedAmongOthers(list[i], list[(i+1)%len(list)]))
		return false
	}
	ring, ok := b.chain(list)
	if !ok {
		return false
	}
	b.out.Edges = make([]*Edge, 0, len(ring))
	for i, sh := range ring {
		next := ring[(i+1)%len(ring)]
		own := sh.curves
		if sh.shared {
			own = slices.Clone(own)
		}
		e := &Edge{Name: sh.name, Curves: own, Span: sh.at}
		moveEnd(e.Curves, next.from())
		b.out.Edges = append(b.out.Edges, e)
	}
	return true
}

// moveEnd lets an edge end exactly where the next one begins.
func moveEnd(list []Curve, to Point) {
	c := &list[len(list)-1]
	if c.Straight {
		*c = straight(c.P[0], to)
		return
	}
	d := minus(to, c.P[3])
	c.P[2], c.P[3] = Point{X: c.P[2].X + d.X, Y: c.P[2].Y + d.Y}, to
}

// lineOfOnePart looks at an edge by itself.
func (b *builder) lineOfOnePart(sh *shape, before []*shape) bool {
	switch {
	case sh.name == "":
		b.add(b.edgeWithoutName(sh.at))
	case len(sh.curves) == 0:
		b.add(b.edgeOfNoLength(sh))
	case sh.parts != 1:
		b.add(b.severalParts(sh))
	default:
		for i := range before {
			if before[i].name == sh.name {
				b.add(b.edgeTwice(sh, before[i].at))
				return false
			}
		}
		return true
	}
	return false
}

// closedIn finds an edge that ends where it begins, -1 if there is none.
func closedIn(list []*shape) int {
	for i, sh := range list {
		if sh.closed || distance(sh.from(), sh.to()) < 1e-6 {
			return i
		}
	}
	return -1
}

// chain orders the edges, each turned so that it begins where the one before it ends.
// From the end of each it goes on with the edge whose end is nearest.
func (b *builder) chain(list []*shape) ([]*shape, bool) {
	ring, left := append(make([]*shape, 0, len(list)), list[0]), slices.Clone(list[1:])
	for len(left) > 0 {
		end := ring[len(ring)-1]
		best, back, gap := 0, false, math.Inf(1)
		for i := range left {
			if d := distance(end.to(), left[i].from()); d < gap {
				best, back, gap = i, false, d
			}
			if d := distance(end.to(), left[i].to()); d < gap {
				best, back, gap = i, true, d
			}
		}
		next := left[best]
		if back {
			next = turned(next)
		}
		if gap > b.tolerance {
			b.add(b.gap(end, next, gap, endsOf(append(left, ring[0]))))
			return nil, false
		}
		ring = append(ring, next)
		left = append(left[:best], left[best+1:]...)
	}
	last := ring[len(ring)-1]
	if gap := distance(last.to(), ring[0].from()); gap > b.tolerance {
		b.add(b.gap(last, ring[0], gap, endsOf(ring[:1])))
		return nil, false
	}
	return ring, true
}

// endsOf lists where edges begin and end.
func endsOf(list []*shape) (all []Point) {
	for _, sh := range list {
		all = append(all, sh.from(), sh.to())
	}
	return
}

func turned(sh *shape) *shape {
	other := *sh
	other.curves, other.shared = backwards(sh.curves), false
	return &other
}
