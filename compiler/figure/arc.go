package figure

import "math"

// arc is an elliptical arc as path data gives it (SVG 1.1, 8.3.8): radii, the
// turn of the ellipse's x axis in degrees, the two flags and the end.
type arc struct {
	rx, ry, turn float64
	large, sweep bool
	to           Point
}

// cubics gives the arc from a point as lines and curves. The ellipse is found as
// SVG 1.1, appendix F.6.5 and F.6.6 (SVG 2, B.2.4 and B.2.5) say: a radius of
// nothing makes a line, radii that are too small grow until they reach.
// Each curve spans the angle step at most; see quarter and sixteenth.
func (a arc) cubics(from Point, step float64) []Command {
	rx, ry := math.Abs(a.rx), math.Abs(a.ry)
	if rx == 0 || ry == 0 {
		return []Command{{Op: 'L', Points: [3]Point{a.to}}}
	}
	sin, cos := math.Sincos(a.turn * math.Pi / 180)
	// half the chord, in the ellipse's own directions
	hx, hy := (from.X-a.to.X)/2, (from.Y-a.to.Y)/2
	x, y := cos*hx+sin*hy, cos*hy-sin*hx
	if grow := math.Hypot(x/rx, y/ry); grow > 1 {
		rx, ry = rx*grow, ry*grow
	}
	ux, uy := x/rx, y/ry // on the unit circle's scale
	d := ux*ux + uy*uy
	k := math.Sqrt(math.Max(0, 1/d-1))
	if a.large == a.sweep {
		k = -k
	}
	cx, cy := k*uy, -k*ux // centre, in the same scale, from the chord's middle
	begin := math.Atan2(uy-cy, ux-cx)
	span := math.Atan2(-uy-cy, -ux-cx) - begin
	if a.sweep && span < 0 {
		span += 2 * math.Pi
	} else if !a.sweep && span > 0 {
		span -= 2 * math.Pi
	}
	place := matrix{cos, sin, -sin, cos, (from.X + a.to.X) / 2, (from.Y + a.to.Y) / 2}.
		then(scaling(rx, ry)).then(translation(cx, cy))
	out := turns(place, begin, span, step)
	if len(out) > 0 {
		out[len(out)-1].Points[2] = a.to // exactly where the path says
	}
	return out
}

// How much of a turn one curve stands for: a quarter stays within 0.0003 radii of
// the true arc, which is enough to look at; the error shrinks with the sixth power of
// the angle, and a sixteenth stays within a ten-millionth, which is enough to measure.
const (
	quarter   = math.Pi / 2
	sixteenth = math.Pi / 8
)

// turns draws the unit circle from the angle begin over span, as place lays it, in
// curves of at most an angle each.
func turns(place matrix, begin, span, most float64) []Command {
	n := int(math.Ceil(math.Abs(span)/most - 1e-9))
	if n < 1 || n > 16 { // more than a whole turn cannot be: the numbers overflowed
		n = 1
	}
	step := span / float64(n)
	handle := 4. / 3 * math.Tan(step/4)
	out := make([]Command, n)
	for i := range out {
		s0, c0 := math.Sincos(begin + step*float64(i))
		s1, c1 := math.Sincos(begin + step*float64(i+1))
		out[i] = Command{Op: 'C', Points: [3]Point{
			place.apply(Point{c0 - handle*s0, s0 + handle*c0}),
			place.apply(Point{c1 + handle*s1, s1 - handle*c1}),
			place.apply(Point{c1, s1}),
		}}
	}
	return out
}
