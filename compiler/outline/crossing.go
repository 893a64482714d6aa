package outline

import (
	"cmp"
	"slices"
)

// crossesItself reports whether two sides of a polygon that are not neighbours meet.
func crossesItself(ring []Point) bool {
	_, _, yes := crossing(ring)
	return yes
}

// crossing finds two sides that meet and are not neighbours. Sides are taken from left
// to right, and compared with those that reach as far.
func crossing(ring []Point) (int, int, bool) {
	n := len(ring)
	order := make([]int, n)
	for i := range order {
		order[i] = i
	}
	left := func(i int) float64 { return min(ring[i].X, ring[(i+1)%n].X) }
	slices.SortFunc(order, func(i, j int) int { return cmp.Compare(left(i), left(j)) })
	var open []int
	for _, i := range order {
		kept := open[:0]
		for _, j := range open {
			if max(ring[j].X, ring[(j+1)%n].X) < left(i) {
				continue
			}
			kept = append(kept, j)
			if (i+1)%n != j && (j+1)%n != i && meet(ring[i], ring[(i+1)%n], ring[j], ring[(j+1)%n]) {
				return min(i, j), max(i, j), true
			}
		}
		open = append(kept, i)
	}
	return 0, 0, false
}

// meet reports whether two stretches have a point in common.
func meet(a, b, c, d Point) bool {
	if max(a.Y, b.Y) < min(c.Y, d.Y) || max(c.Y, d.Y) < min(a.Y, b.Y) {
		return false
	}
	ab, cd := minus(b, a), minus(d, c)
	p, q := cross(ab, minus(c, a)), cross(ab, minus(d, a))
	r, s := cross(cd, minus(a, c)), cross(cd, minus(b, c))
	if p == 0 && q == 0 { // on one line
		return max(a.X, b.X) >= min(c.X, d.X) && max(c.X, d.X) >= min(a.X, b.X)
	}
	return (p <= 0 && q >= 0 || p >= 0 && q <= 0) && (r <= 0 && s >= 0 || r >= 0 && s <= 0)
}
