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
	if apart(a, b) {
		return false
	}
	for i := range a {
		for j := range b {
			if crossing(a[i], next(a, i), b[j], next(b, j)) {
				return true
			}
		}
	}
	return enters(a, b) || enters(b, a) || inside(b, middle(a))
}

// apart reports whether the bounds of two rings have no inside in common.
func apart(a, b []Point) bool {
	x := func(p, q Point) int { return int(p.X - q.X) }
	y := func(p, q Point) int { return int(p.Y - q.Y) }
	return slices.MaxFunc(a, x).X <= slices.MinFunc(b, x).X || slices.MaxFunc(b, x).X <= slices.MinFunc(a, x).X ||
		slices.MaxFunc(a, y).Y <= slices.MinFunc(b, y).Y || slices.MaxFunc(b, y).Y <= slices.MinFunc(a, y).Y
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

// crossing reports whether two edges cross at a point that ends neither.
func crossing(p, q, r, s Point) bool {
	return side(p, q, r)*side(p, q, s) < 0 && side(r, s, p)*side(r, s, q) < 0
}

// place is an exact point.
type place struct{ x, y *big.Rat }

// enters reports whether a piece of an edge of a lies strictly inside b.
func enters(a, b []Point) bool {
	for i := range a {
		p, q := a[i], next(a, i)
		if apart([]Point{p, q}, b) { // most are
			continue
		}
		cuts := touches(p, q, b)
		for k := range len(cuts) - 1 {
			t := new(big.Rat).Add(cuts[k], cuts[k+1])
			if inside(b, along(p, q, t.Quo(t, big.NewRat(2, 1)))) {
				return true
			}
		}
	}
	return false
}

// touches are the shares of an edge at which it meets the edge of a ring, with its
// two ends, in order.
func touches(p, q Point, ring []Point) []*big.Rat {
	cuts := []*big.Rat{big.NewRat(0, 1), big.NewRat(1, 1)}
	for j := range ring {
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
