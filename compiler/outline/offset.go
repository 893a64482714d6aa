package outline

import (
	"errors"
	"math"
)

// Libraries of geometry move all edges by one width, or know one for each corner
// (Clipper2, by a callback); a piece has one for each edge, so the offset is written
// out: each line of the flattened ring is moved sideways, and neighbours are cut where
// they meet (a mitre). A line that a hollow leaves no room for would run backwards; it
// is left out, and its neighbours meet instead. What still crosses itself is an error.
// For one width a test compares it with what two libraries make.

// ErrTooNarrow says that moving the edges leaves no simple outline.
var ErrTooNarrow = errors.New("the outline is too narrow, or a hollow in it too tight, for this allowance")

// longestMitre is how far a corner may reach, in widths; a sharper one is cut straight
// across, a width beyond the point. It is the limit that SVG and CSS use for strokes.
const longestMitre = 4

// Widened gives the polygon whose edges lie the given widths outside the drawn ones
// (inside, if negative), in millimetres, clockwise, without a repeated end. Curves are
// flattened outwards by at most 0.2 mm.
func (o *Outline) Widened(width func(*Edge) float64) ([]Point, error) {
	lines := o.lines(width)
	for n := 0; n != len(lines) && len(lines) > 2; {
		n = len(lines)
		lines = forward(lines)
	}
	var ring []Point
	for i := range lines {
		ring = lines[i].meet(&lines[(i+1)%len(lines)], ring)
	}
	if len(lines) < 3 || crossesItself(ring) || areaOf(ring) <= 0 {
		return nil, ErrTooNarrow
	}
	return ring, nil
}

// forward leaves out the lines that would run backwards between their corners.
func forward(lines []moved) (out []moved) {
	n := len(lines)
	var room [2]Point
	last := lines[n-1].meet(&lines[0], room[:0])
	for i := range lines {
		from := last[len(last)-1]
		next := lines[i].meet(&lines[(i+1)%n], room[:0])
		if dot(minus(next[0], from), lines[i].along) > -1e-9 {
			out = append(out, lines[i])
		}
		last = next
	}
	return
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
	var points, side []Point
	var widths []float64
	for _, e := range o.Edges {
		w := width(e)
		side = e.outer(side[:0], containTolerance)
		for _, p := range side {
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
	wide := max(math.Abs(l.width), math.Abs(next.width))
	if reach := wide * longestMitre; k*l.width > 0 && distance(at, l.b) > reach && distance(at, next.a) > reach {
		return append(ring, ahead(l.b, l.along, wide), ahead(next.a, next.along, -wide))
	}
	return append(ring, at)
}

func ahead(p, along Point, by float64) Point {
	return Point{X: p.X + along.X*by, Y: p.Y + along.Y*by}
}
