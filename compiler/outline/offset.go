package outline

import (
	"errors"
	"math"
)

// No library that works offline here moves every edge by a width of its own, so the
// offset is written out: each line of the flattened ring is moved sideways, and
// neighbours are cut where they meet (a mitre). That is right as long as a curve's
// radius on the inner side, and every straight stretch there, is longer than the
// width; where it is not, the result crosses itself, and that is an error.

// ErrTooNarrow says that moving the edges leaves no simple outline.
var ErrTooNarrow = errors.New("the outline is too narrow, or a hollow in it too tight, for this allowance")

// longestMitre is how far a corner may reach, in widths; a sharper one is cut straight
// across. It is the limit that SVG and CSS use for strokes.
const longestMitre = 4

// Widened gives the polygon whose edges lie the given widths outside the drawn ones
// (inside, if negative), in millimetres, clockwise, without a repeated end. Curves are
// flattened outwards by at most 0.2 mm.
func (o *Outline) Widened(width func(*Edge) float64) ([]Point, error) {
	lines := o.lines(width)
	var ring []Point
	for i := range lines {
		ring = lines[i].meet(&lines[(i+1)%len(lines)], ring)
	}
	if len(ring) < 3 || crossesItself(ring) || areaOf(ring) <= 0 {
		return nil, ErrTooNarrow
	}
	return ring, nil
}

// areaOf is the area of a polygon, positive if it runs clockwise as seen.
func areaOf(ring []Point) (sum float64) {
	for i, p := range ring {
		sum += cross(p, ring[(i+1)%len(ring)]) / 2
	}
	return
}

// moved is one side of the ring, moved outwards by its width.
type moved struct {
	a, b  Point
	along Point // of length 1
	width float64
}

func (o *Outline) lines(width func(*Edge) float64) (all []moved) {
	var points []Point
	var widths []float64
	for _, e := range o.Edges {
		w := width(e)
		for _, p := range e.outer(containTolerance) {
			if n := len(points); n > 0 && distance(points[n-1], p) < 1e-6 {
				points[n-1], widths[n-1] = p, w
				continue
			}
			points, widths = append(points, p), append(widths, w)
		}
	}
	for n := len(points); n > 1 && distance(points[n-1], points[0]) < 1e-6; n = len(points) {
		points, widths = points[:n-1], widths[:n-1]
	}
	for i, p := range points {
		q := points[(i+1)%len(points)]
		d, size := minus(q, p), distance(p, q)
		along := Point{X: d.X / size, Y: d.Y / size}
		w := widths[i]
		out := Point{X: along.Y * w, Y: -along.X * w} // to the left of the way, where the piece is not
		all = append(all, moved{a: Point{X: p.X + out.X, Y: p.Y + out.Y}, b: Point{X: q.X + out.X, Y: q.Y + out.Y}, along: along, width: w})
	}
	return
}

// meet adds the corner between a line and the next.
func (l *moved) meet(next *moved, ring []Point) []Point {
	k := cross(l.along, next.along)
	if math.Abs(k) < 1e-9 {
		if distance(l.b, next.a) < 1e-9 {
			return append(ring, l.b)
		}
		return append(ring, l.b, next.a) // a step, where the width changes along a line
	}
	s := cross(minus(next.a, l.b), next.along) / k
	at := Point{X: l.b.X + l.along.X*s, Y: l.b.Y + l.along.Y*s}
	reach := max(math.Abs(l.width), math.Abs(next.width)) * longestMitre
	if distance(at, l.b) > reach && distance(at, next.a) > reach {
		return append(ring, l.b, next.a)
	}
	return append(ring, at)
}
