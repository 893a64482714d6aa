package pack

import (
	"fmt"
	"slices"
)

// Point is a place on the grid.
type Point struct{ X, Y int64 }

func (p Point) plus(q Point) Point  { return Point{p.X + q.X, p.Y + q.Y} }
func (p Point) minus(q Point) Point { return Point{p.X - q.X, p.Y - q.Y} }

// cross is positive if q lies to the left of p, seen from the origin.
func cross(p, q Point) int64 { return p.X*q.Y - p.Y*q.X }

// turn is positive if a, b, c turn to the left, 0 if they lie on a line.
func turn(a, b, c Point) int64 { return cross(b.minus(a), c.minus(a)) }

type box struct{ Min, Max Point }

func boundsOf(ring []Point) box {
	b := box{ring[0], ring[0]}
	for _, p := range ring[1:] {
		b.Min.X, b.Min.Y = min(b.Min.X, p.X), min(b.Min.Y, p.Y)
		b.Max.X, b.Max.Y = max(b.Max.X, p.X), max(b.Max.Y, p.Y)
	}
	return b
}

// Area2 is twice the area of a ring, positive if it runs counter-clockwise.
func Area2(ring []Point) (sum int64) {
	o := ring[0]
	for i := range ring {
		sum += cross(ring[i].minus(o), ring[(i+1)%len(ring)].minus(o))
	}
	return
}

func checkRing(ring []Point) error {
	if len(ring) < 3 {
		return fmt.Errorf("an outline of %d points", len(ring))
	}
	for _, p := range ring {
		if max(p.X, -p.X, p.Y, -p.Y) > limit {
			return fmt.Errorf("a point at %d, %d; coordinates go to %d", p.X, p.Y, limit)
		}
	}
	if Area2(ring) <= 0 {
		return fmt.Errorf("the outline does not run counter-clockwise round an area")
	}
	return nil
}

// straightened leaves out the points that stand on a straight line between their
// neighbours, and repeated points.
func straightened(ring []Point) []Point {
	r := slices.Clone(ring)
	for i := 0; i < len(r) && len(r) > 3; {
		a, b, c := r[(i+len(r)-1)%len(r)], r[i], r[(i+1)%len(r)]
		if turn(a, b, c) == 0 {
			r = slices.Delete(r, i, i+1)
			i = max(0, i-1)
			continue
		}
		i++
	}
	return r
}

// sum is the Minkowski sum of a convex ring and the mirror image through the
// origin of another: the places of q, taken from that of p, where they overlap.
func sum(p, q []Point) []Point {
	neg := make([]Point, len(q))
	for i, v := range q {
		neg[i] = Point{-v.X, -v.Y}
	}
	i0, j0 := lowest(p), lowest(neg)
	at := p[i0].plus(neg[j0])
	var r []Point
	for i, j := 0, 0; i < len(p) || j < len(neg); {
		r = append(r, at)
		a := p[(i0+i+1)%len(p)].minus(p[(i0+i)%len(p)])
		b := neg[(j0+j+1)%len(neg)].minus(neg[(j0+j)%len(neg)])
		c := cross(a, b)
		switch {
		case j == len(neg) || i < len(p) && c > 0:
			at, i = at.plus(a), i+1
		case i == len(p) || c < 0:
			at, j = at.plus(b), j+1
		default:
			at, i, j = at.plus(a).plus(b), i+1, j+1
		}
	}
	return straightened(r)
}

func lowest(r []Point) (at int) {
	for i, p := range r {
		if p.Y < r[at].Y || p.Y == r[at].Y && p.X < r[at].X {
			at = i
		}
	}
	return
}
