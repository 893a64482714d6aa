package outline

import "math"

// GridMM is the unit of whole-number polygons: a hundredth of a millimetre.
const GridMM = 0.01

// Grid is a point in hundredths of a millimetre.
type Grid struct{ X, Y int64 }

// containTolerance is how far the polygon that contains a piece may lie outside it.
const containTolerance = 0.2

// Containing gives a polygon, clockwise as seen and without a repeated end, that
// contains the piece and lies nowhere more than 0.2 mm and the rounding outside it:
// tangents stand for curves that bulge out, chords for hollow ones. It fails like
// [Outline.Widened].
func (o *Outline) Containing() ([]Grid, error) {
	// What is lost by rounding to the grid, at most 0.0071 mm, is added before.
	return o.ContainingWith(func(*Edge) float64 { return GridMM })
}

// ContainingWith is the same for a piece that is cut so far outside each of its edges,
// in millimetres. An edge that is given no width stays where it is, to the rounding.
func (o *Outline) ContainingWith(width func(*Edge) float64) ([]Grid, error) {
	ring, err := o.Widened(width)
	if err != nil {
		return nil, err
	}
	return onGrid(ring), nil
}

// onGrid rounds a polygon; points that fall on one another, or on the line between
// their neighbours, are left out.
func onGrid(ring []Point) (out []Grid) {
	for _, p := range ring {
		g := Grid{X: int64(math.Round(p.X / GridMM)), Y: int64(math.Round(p.Y / GridMM))}
		if n := len(out); n > 0 && out[n-1] == g {
			continue
		}
		out = append(out, g)
	}
	for len(out) > 1 && out[0] == out[len(out)-1] {
		out = out[:len(out)-1]
	}
	return withoutFlat(out)
}

func withoutFlat(ring []Grid) (out []Grid) {
	for i, p := range ring {
		a, b := ring[(i+len(ring)-1)%len(ring)], ring[(i+1)%len(ring)]
		if len(out) > 0 {
			a = out[len(out)-1]
		}
		ax, ay, bx, by := p.X-a.X, p.Y-a.Y, b.X-p.X, b.Y-p.Y
		if ax*by == ay*bx && ax*bx+ay*by > 0 {
			continue
		}
		out = append(out, p)
	}
	return
}

// outer adds the points of a polygon that lies on the outer side of the edge, without
// its last point, at most tolerance away.
func (e *Edge) outer(out []Point, tolerance float64) []Point {
	for i := range e.Curves {
		c := e.Curves[i]
		out = append(out, c.from())
		if c.Straight {
			continue
		}
		done := 0.0
		for _, t := range append(c.cuts(), 1) {
			part := c
			if t < 1 {
				part, c = c.split((t - done) / (1 - done))
			} else {
				part = c
			}
			out = part.outside(out, tolerance, 16)
			if done = t; t < 1 {
				out = append(out, part.to())
			}
		}
	}
	return out
}

// outside adds the points between the ends of a curve that bends one way only.
func (c *Curve) outside(out []Point, tolerance float64, depth int) []Point {
	hollow := c.hollow()
	corner, fine := c.tangents(tolerance)
	switch {
	case fine && hollow:
		return out
	case fine:
		return append(out, corner)
	case depth == 0:
		return append(out, c.P[1], c.P[2]) // its control points contain it
	}
	a, b := c.split(0.5)
	out = a.outside(out, tolerance, depth-1)
	if hollow { // between two tangents the point lies on the line from corner to corner
		out = append(out, a.to())
	}
	return b.outside(out, tolerance, depth-1)
}

// hollow reports whether a curve that bends one way only bends into the piece.
func (c *Curve) hollow() bool {
	a, b := minus(c.P[1], c.P[0]), minus(c.P[2], c.P[1])
	change := minus(minus(c.P[3], c.P[2]), a) // of the speed, as it is in the middle
	if d := cross(c.speed(0.5), change); d != 0 {
		return d < 0
	}
	return cross(a, b) < 0
}

// tangents gives where the tangents at both ends meet. It is fine if the curve turns
// little and neither that point nor the chord is further from it than the tolerance. If
// the point lies h off the chord and the control points stand at the shares f and g of
// the two tangents, the middle of the curve lies 3/8 (f + g) h off the chord, and no
// place of it more than 3/4 of the larger share of h.
func (c *Curve) tangents(tolerance float64) (Point, bool) {
	a, b := c.leaves(), c.arrives()
	chord := minus(c.to(), c.from())
	size := distance(c.to(), c.from())
	if a == (Point{}) || size < 1e-6 {
		return c.to(), true
	}
	if dot(a, b) <= 0 || dot(a, chord) <= 0 || dot(b, chord) <= 0 {
		return Point{}, false
	}
	k := cross(a, b)
	if math.Abs(k) <= 1e-9*distance(a, Point{})*distance(b, Point{}) {
		return mix(c.from(), c.to(), 0.5), true
	}
	s := cross(chord, b) / k
	meet := Point{X: c.from().X + a.X*s, Y: c.from().Y + a.Y*s}
	h := math.Abs(cross(chord, minus(meet, c.from()))) / size
	f := distance(c.P[0], c.P[1]) / distance(c.P[0], meet)
	g := distance(c.P[3], c.P[2]) / distance(c.P[3], meet)
	off := h * max(1-(f+g)*3/8, max(f, g)*3/4)
	return meet, f <= 1 && g <= 1 && off <= tolerance || h <= tolerance
}
