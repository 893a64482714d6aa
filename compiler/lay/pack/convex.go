package pack

import (
	"fmt"
	"slices"
)

// convexParts splits a simple ring into convex rings whose areas add up to its
// own: ears are cut off, then parts that share an edge are merged as long as they
// stay convex (S. Hertel, K. Mehlhorn, "Fast triangulation of simple polygons",
// 1983).
func convexParts(ring []Point) ([][]Point, error) {
	r := straightened(ring)
	triangles, err := ears(r)
	if err != nil {
		return nil, err
	}
	parts := merged(triangles)
	var sum int64
	for _, p := range parts {
		sum += Area2(p)
	}
	if sum != Area2(ring) {
		return nil, fmt.Errorf("the outline crosses itself")
	}
	return parts, nil
}

// ears cuts a simple ring into triangles.
func ears(r []Point) (all [][]Point, err error) {
	r = slices.Clone(r)
	for len(r) > 3 {
		best := -1
		var bestSize int64
		for i := range r {
			a, b, c := r[(i+len(r)-1)%len(r)], r[i], r[(i+1)%len(r)]
			if turn(a, b, c) <= 0 || !empty(r, a, b, c) {
				continue
			}
			// The shortest cut leaves the fattest rest.
			d := c.minus(a)
			if size := d.X*d.X + d.Y*d.Y; best < 0 || size < bestSize {
				best, bestSize = i, size
			}
		}
		if best < 0 {
			return nil, fmt.Errorf("the outline crosses itself")
		}
		n := len(r)
		all = append(all, []Point{r[(best+n-1)%n], r[best], r[(best+1)%n]})
		r = straightened(slices.Delete(r, best, best+1))
	}
	if len(r) == 3 && turn(r[0], r[1], r[2]) > 0 {
		all = append(all, r)
	}
	return all, nil
}

// empty reports whether no other corner of the ring lies in a triangle or on it.
func empty(r []Point, a, b, c Point) bool {
	for _, p := range r {
		if p == a || p == b || p == c {
			continue
		}
		if turn(a, b, p) >= 0 && turn(b, c, p) >= 0 && turn(c, a, p) >= 0 {
			return false
		}
	}
	return true
}

// merged joins convex rings along shared edges, the longest first, while the
// result stays convex.
func merged(parts [][]Point) [][]Point {
	for {
		bi, bj, best := -1, -1, int64(0)
		var ring []Point
		for i := range parts {
			for j := i + 1; j < len(parts); j++ {
				if r, size := joined(parts[i], parts[j]); r != nil && size > best {
					bi, bj, best, ring = i, j, size, r
				}
			}
		}
		if bi < 0 {
			return parts
		}
		parts[bi] = ring
		parts = slices.Delete(parts, bj, bj+1)
	}
}

// joined is the union of two convex rings that share an edge, if it is convex,
// and the square of that edge's length.
func joined(p, q []Point) ([]Point, int64) {
	for i := range p {
		a, b := p[i], p[(i+1)%len(p)]
		for j := range q {
			if q[j] != b || q[(j+1)%len(q)] != a {
				continue
			}
			var r []Point
			for k := 1; k <= len(p); k++ {
				r = append(r, p[(i+k)%len(p)])
			}
			for k := 2; k < len(q); k++ {
				r = append(r, q[(j+k)%len(q)])
			}
			if !convex(r) {
				return nil, 0
			}
			d := b.minus(a)
			return r, d.X*d.X + d.Y*d.Y
		}
	}
	return nil, 0
}

func convex(r []Point) bool {
	for i := range r {
		if turn(r[i], r[(i+1)%len(r)], r[(i+2)%len(r)]) < 0 {
			return false
		}
	}
	return true
}
