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
	sides := sidesOf(ring)
	slices.SortFunc(sides, func(s, t side) int { return cmp.Compare(s.left, t.left) })
	open := make([]*side, 0, len(sides))
	for k := range sides {
		s, kept := &sides[k], open[:0]
		for _, t := range open {
			if t.right < s.left {
				continue
			}
			kept = append(kept, t)
			if s.next != t.from && t.next != s.from && meet(ring[s.from], ring[s.next], ring[t.from], ring[t.next]) {
				return min(s.from, t.from), max(s.from, t.from), true
			}
		}
		open = append(kept, s)
	}
	return 0, 0, false
}

// side is a side of a polygon: the numbers of its ends, and how far it reaches.
type side struct {
	from, next  int
	left, right float64
}

func sidesOf(ring []Point) []side {
	all := make([]side, len(ring))
	for i, p := range ring {
		next := (i + 1) % len(ring)
		q := ring[next]
		all[i] = side{from: i, next: next, left: min(p.X, q.X), right: max(p.X, q.X)}
	}
	return all
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
