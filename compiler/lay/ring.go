package lay

import "math"

func abs(n int64) int64 { return max(n, -n) }

// area2 is twice the area of a ring, positive if it runs counter-clockwise.
func area2(r []Point) (sum int64) {
	for i, p := range r {
		q := r[(i+1)%len(r)]
		sum += p.X*q.Y - p.Y*q.X
	}
	return sum
}

// counterClockwise gives the ring in that direction, and without points that lie on
// the straight line between their neighbours.
func counterClockwise(r []Point) []Point {
	var out []Point
	for i, p := range r {
		a, b := r[(i+len(r)-1)%len(r)], r[(i+1)%len(r)]
		if (p.X-a.X)*(b.Y-p.Y) != (p.Y-a.Y)*(b.X-p.X) {
			out = append(out, p)
		}
	}
	if area2(out) < 0 {
		reverse(out)
	}
	return out
}

func reverse(r []Point) {
	for i, j := 0, len(r)-1; i < j; i, j = i+1, j-1 {
		r[i], r[j] = r[j], r[i]
	}
}

// corner is the lower left corner of the box round a ring, far the upper right one.
func corner(r []Point) (low, far Point) {
	if len(r) == 0 {
		return low, far
	}
	low, far = r[0], r[0]
	for _, p := range r {
		low = Point{min(low.X, p.X), min(low.Y, p.Y)}
		far = Point{max(far.X, p.X), max(far.Y, p.Y)}
	}
	return low, far
}

// moved gives the ring moved by a vector.
func moved(r []Point, by Point) []Point {
	out := make([]Point, len(r))
	for i, p := range r {
		out[i] = Point{p.X + by.X, p.Y + by.Y}
	}
	return out
}

// real is a point that is not on the grid.
type real struct{ x, y float64 }

// turn is a rotation by the angle of (c, s); exact says that it is a number of right
// angles, and the grid is turned onto itself.
type turn struct {
	c, s  float64
	exact bool
}

// turnOf is the rotation that brings a direction to the angle deg, which is a number
// of eighths of the circle.
func turnOf(d Point, deg int) turn {
	h := float64(math.Sqrt(float64(float64(d.X)*float64(d.X)) + float64(float64(d.Y)*float64(d.Y))))
	c, s := float64(d.X)/h, -float64(d.Y)/h
	r := math.Sqrt2 / 2
	e := [8]real{{1, 0}, {r, r}, {0, 1}, {-r, r}, {-1, 0}, {-r, -r}, {0, -1}, {r, -r}}[(deg/45%8+8)%8]
	// The products are rounded before they are added, so that every machine gives the
	// same numbers.
	c, s = float64(c*e.x)-float64(s*e.y), float64(c*e.y)+float64(s*e.x)
	return turn{c, s, (d.X == 0 || d.Y == 0) && deg%90 == 0}
}

func (t turn) of(p real) real {
	return real{float64(t.c*p.x) - float64(t.s*p.y), float64(t.c*p.y) + float64(t.s*p.x)}
}

// turned turns a counter-clockwise ring. If that does not bring it onto the grid, the
// result contains it: each edge is moved outward by a unit, so that it stays outside
// when its ends are rounded by at most 0.71 units.
func (t turn) turned(r []Point) []Point {
	fine := make([]real, len(r))
	for i, p := range r {
		fine[i] = t.of(real{float64(p.X), float64(p.Y)})
	}
	if t.exact {
		return rounded(fine)
	}
	return grown(fine, func(int) float64 { return 1 })
}

func rounded(r []real) []Point {
	out := make([]Point, len(r))
	for i, p := range r {
		out[i] = Point{int64(math.Round(p.x)), int64(math.Round(p.y))}
	}
	return out
}

// grown moves the edges of a counter-clockwise ring outward, edge i from point i by
// by(i), and rounds the new corners to the grid. A sharp corner outward is cut off
// square; one inward is not, since the ring would then cut into the old one.
func grown(r []real, by func(int) float64) []Point {
	var out []real
	n := len(r)
	for i, p := range r {
		before, after := (i+n-1)%n, (i+1)%n
		in, on := unit(r[before], p), unit(p, r[after])
		d, e := by(before), by(i)
		// Outside lies to the right: the normal of (x, y) is (y, -x).
		cross := float64(in.x*on.y) - float64(in.y*on.x)
		if dot := float64(in.x*on.x) + float64(in.y*on.y); cross > 0 && dot < -0.8 {
			m := max(d, e)
			out = append(out, real{p.x + float64(d*in.y) + float64(m*in.x), p.y - float64(d*in.x) + float64(m*in.y)},
				real{p.x + float64(e*on.y) - float64(m*on.x), p.y - float64(e*on.x) - float64(m*on.y)})
			continue
		}
		if math.Abs(cross) < 1e-6 { // straight on: the two normals are one
			out = append(out, real{p.x + float64(max(d, e)*in.y), p.y - float64(max(d, e)*in.x)})
			continue
		}
		// The corner moves by a·on - b·in, which has the distance d from the one
		// line and e from the other.
		a, b := d/cross, e/cross
		out = append(out, real{p.x - float64(a*on.x) + float64(b*in.x), p.y - float64(a*on.y) + float64(b*in.y)})
	}
	return rounded(out)
}

func unit(a, b real) real {
	dx, dy := b.x-a.x, b.y-a.y
	h := math.Sqrt(float64(dx*dx) + float64(dy*dy))
	return real{dx / h, dy / h}
}
