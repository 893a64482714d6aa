package verify

import (
	"math/big"
	"slices"
)

// Meet reports whether the insides of two simple rings have a point in common.
//
// If two edges cross, they do. If none do, each piece of an edge between its
// touches lies wholly inside the other ring, outside it or along it, and its middle
// tells which. If no piece lies inside, the insides meet only if the two rings
// bound the very same area.
func Meet(a, b []Point) bool {
	return meet(a, b, boxOf(a), boxOf(b))
}

func meet(a, b []Point, boxA, boxB box) bool {
	if boxA.apart(boxB) {
		return false
	}
	touchA, touchB := map[int][]int{}, map[int][]int{} // the edges of the other ring that an edge has a point of
	near := edgesIn(b, boxA)
	for _, i := range edgesIn(a, boxB) {
		p, q := a[i], next(a, i)
		edge := boxOf([]Point{p, q})
		for _, j := range near {
			r, s := b[j], next(b, j)
			if edge.clear(boxOf2(r, s)) {
				continue
			}
			switch how(p, q, r, s) {
			case crosses:
				return true
			case touching:
				touchA[i], touchB[j] = append(touchA[i], j), append(touchB[j], i)
			}
		}
	}
	return enters(a, b, touchA, boxB) || enters(b, a, touchB, boxA) || boxA == boxB && inside(b, middle(a))
}

// box is the bounds of something.
type box struct{ low, high Point }

func boxOf(ring []Point) box {
	b := box{ring[0], ring[0]}
	for _, p := range ring[1:] {
		b.low = Point{min(b.low.X, p.X), min(b.low.Y, p.Y)}
		b.high = Point{max(b.high.X, p.X), max(b.high.Y, p.Y)}
	}
	return b
}

func boxOf2(p, q Point) box {
	return box{Point{min(p.X, q.X), min(p.Y, q.Y)}, Point{max(p.X, q.X), max(p.Y, q.Y)}}
}

// apart reports whether two boxes have no inside in common.
func (b box) apart(c box) bool {
	return b.high.X <= c.low.X || c.high.X <= b.low.X || b.high.Y <= c.low.Y || c.high.Y <= b.low.Y
}

// clear reports whether two boxes have no point in common.
func (b box) clear(c box) bool {
	return b.high.X < c.low.X || c.high.X < b.low.X || b.high.Y < c.low.Y || c.high.Y < b.low.Y
}

// edgesIn lists the edges of a ring of which some point may lie in a box.
func edgesIn(ring []Point, b box) (all []int) {
	for i, p := range ring {
		if !boxOf2(p, next(ring, i)).clear(b) {
			all = append(all, i)
		}
	}
	return
}

func next(ring []Point, i int) Point { return ring[(i+1)%len(ring)] }

// side is positive if c lies to the left of the line from a to b.
func side(a, b, c Point) int {
	v := (b.X-a.X)*(c.Y-a.Y) - (b.Y-a.Y)*(c.X-a.X)
	switch {
	case v > 0:
		return 1
	case v < 0:
		return -1
	}
	return 0
}

// meeting is how two edges meet.
type meeting uint8

const (
	not      meeting = iota
	touching         // a point of one is a point of the other
	crosses          // they cross at a point that ends neither
)

func how(p, q, r, s Point) meeting {
	a, b := side(p, q, r)*side(p, q, s), side(r, s, p)*side(r, s, q)
	switch {
	case a < 0 && b < 0:
		return crosses
	case a <= 0 && b <= 0:
		return touching // or on one line, apart; then nothing is lost but time
	}
	return not
}

// place is an exact point.
type place struct{ x, y *big.Rat }

// enters reports whether a piece of an edge of a lies strictly inside b, whose bounds
// are given. touch lists the edges of b that an edge of a touches; one that touches none
// lies inside or outside as a whole, with its ends.
func enters(a, b []Point, touch map[int][]int, bounds box) bool {
	for i := range a {
		p, q := a[i], next(a, i)
		if bounds.clear(boxOf2(p, q)) {
			continue
		}
		if len(touch[i]) == 0 {
			if holds(b, p) {
				return true
			}
			continue
		}
		cuts := touches(p, q, b, touch[i])
		for k := range len(cuts) - 1 {
			t := new(big.Rat).Add(cuts[k], cuts[k+1])
			if inside(b, along(p, q, t.Quo(t, big.NewRat(2, 1)))) {
				return true
			}
		}
	}
	return false
}

// holds reports whether a point that is not on the edge of a ring is inside it.
func holds(ring []Point, at Point) (odd bool) {
	for i, p := range ring {
		q := next(ring, i)
		if (p.Y > at.Y) == (q.Y > at.Y) {
			continue
		}
		if p.Y > q.Y {
			p, q = q, p
		}
		if side(p, q, at) > 0 { // the edge lies to the right
			odd = !odd
		}
	}
	return odd
}

// touches are the shares of an edge at which it meets some edges of a ring, with its two
// ends, in order.
func touches(p, q Point, ring []Point, which []int) []*big.Rat {
	cuts := []*big.Rat{big.NewRat(0, 1), big.NewRat(1, 1)}
	for _, j := range which {
		r, s := ring[j], next(ring, j)
		across := (q.X-p.X)*(s.Y-r.Y) - (q.Y-p.Y)*(s.X-r.X)
		if across == 0 {
			continue // a parallel edge ends where its neighbours begin
		}
		t := big.NewRat((r.X-p.X)*(s.Y-r.Y)-(r.Y-p.Y)*(s.X-r.X), across)
		if t.Sign() > 0 && t.Cmp(cuts[1]) < 0 {
			cuts = append(cuts, t)
		}
	}
	slices.SortFunc(cuts, (*big.Rat).Cmp)
	return slices.CompactFunc(cuts, func(a, b *big.Rat) bool { return a.Cmp(b) == 0 })
}

func along(p, q Point, t *big.Rat) place {
	x := new(big.Rat).Mul(t, big.NewRat(q.X-p.X, 1))
	y := new(big.Rat).Mul(t, big.NewRat(q.Y-p.Y, 1))
	return place{x.Add(x, big.NewRat(p.X, 1)), y.Add(y, big.NewRat(p.Y, 1))}
}

// inside reports whether a place lies strictly inside a ring: a ray to the right
// meets its edge an odd number of times.
func inside(ring []Point, at place) bool {
	odd := false
	for i := range ring {
		p, q := ring[i], next(ring, i)
		if p.Y > q.Y {
			p, q = q, p
		}
		low, high := at.y.Cmp(big.NewRat(p.Y, 1)), at.y.Cmp(big.NewRat(q.Y, 1))
		if low < 0 || high > 0 {
			continue
		}
		if p.Y == q.Y {
			if at.x.Cmp(big.NewRat(min(p.X, q.X), 1)) >= 0 && at.x.Cmp(big.NewRat(max(p.X, q.X), 1)) <= 0 {
				return false
			}
			continue
		}
		c := crossesAt(p, q, at.y).Cmp(at.x)
		if c == 0 {
			return false
		}
		if c > 0 && high < 0 {
			odd = !odd
		}
	}
	return odd
}

// crossesAt is the x of a line that is not level, at a height.
func crossesAt(p, q Point, y *big.Rat) *big.Rat {
	t := new(big.Rat).Sub(y, big.NewRat(p.Y, 1))
	t.Mul(t, big.NewRat(q.X-p.X, q.Y-p.Y))
	return t.Add(t, big.NewRat(p.X, 1))
}

// middle is a place strictly inside a ring: half way between the first two edges
// that a level line meets, at a height where no corner is.
func middle(ring []Point) place {
	var heights []int64
	for _, p := range ring {
		heights = append(heights, p.Y)
	}
	slices.Sort(heights)
	heights = slices.Compact(heights)
	y := big.NewRat(heights[0]+heights[min(1, len(heights)-1)], 2)
	var met []*big.Rat
	for i := range ring {
		p, q := ring[i], next(ring, i)
		if p.Y != q.Y && big.NewRat(min(p.Y, q.Y), 1).Cmp(y) < 0 && big.NewRat(max(p.Y, q.Y), 1).Cmp(y) > 0 {
			met = append(met, crossesAt(p, q, y))
		}
	}
	slices.SortFunc(met, (*big.Rat).Cmp)
	if len(met) < 2 {
		return place{big.NewRat(ring[0].X, 1), y} // no inside at all
	}
	x := new(big.Rat).Add(met[0], met[1])
	return place{x.Quo(x, big.NewRat(2, 1)), y}
}
