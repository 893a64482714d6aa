package lay

import (
	"fmt"
	"math"
)

func realOf(p Point) real { return real{float64(p.X), float64(p.Y)} }

// trace gives where a point of the drawn piece comes to lie, to within some units.
func (p Piece) trace(at Place) func(real) real {
	sinAxis, cosAxis := math.Sincos(-p.axis(at))
	sin, cos := math.Sincos(float64(at.Turn) * math.Pi / 180)
	turned := func(v real) real {
		along, across := v.x*cosAxis-v.y*sinAxis, v.x*sinAxis+v.y*cosAxis
		if at.Mirrored {
			across = -across
		}
		return real{along*cos - across*sin, along*sin + across*cos}
	}
	low := real{math.Inf(1), math.Inf(1)}
	reach := func(v real) { q := turned(v); low = real{min(low.x, q.x), min(low.y, q.y)} }
	for _, v := range p.Outline {
		reach(realOf(v))
		if at.Opened {
			reach(p.across(v))
		}
	}
	return func(v real) real {
		q := turned(v)
		return real{q.x - low.x + float64(at.At.X), q.y - low.y + float64(at.At.Y)}
	}
}

// axis is the angle of the line on the piece that is laid along the cloth: its grain
// line, or at the fold the fold edge, which runs the same way within what is drawn.
func (p Piece) axis(at Place) float64 {
	d := p.Grain
	if at.Folded {
		d = Point{p.Fold[1].X - p.Fold[0].X, p.Fold[1].Y - p.Fold[0].Y}
		if float64(d.X)*float64(p.Grain.X)+float64(d.Y)*float64(p.Grain.Y) < 0 {
			d = Point{-d.X, -d.Y}
		}
	}
	return math.Atan2(float64(d.Y), float64(d.X))
}

// across reflects a point of the drawn piece about its fold edge.
func (p Piece) across(v Point) real {
	f := p.Fold[0]
	dx, dy := float64(p.Fold[1].X-f.X), float64(p.Fold[1].Y-f.Y)
	x, y := float64(v.X-f.X), float64(v.Y-f.Y)
	k := 2 * (x*dx + y*dy) / (dx*dx + dy*dy)
	return real{float64(f.X) + k*dx - x, float64(f.Y) + k*dy - y}
}

// near is how far a trace may be off: outlines that do not fall on the grid are grown
// by a unit, at a sharp corner by three, and at most twice. It is 0.08 mm.
const near = 8

// holds reports whether a point is inside a ring, or near its edges.
func holds(ring []Point, q real) bool {
	inside := false
	for i, v := range ring {
		a, b := realOf(v), realOf(ring[(i+1)%len(ring)])
		if q.y < min(a.y, b.y)-near || q.y > max(a.y, b.y)+near {
			continue
		}
		dx, dy := b.x-a.x, b.y-a.y
		t := min(1, max(0, ((q.x-a.x)*dx+(q.y-a.y)*dy)/(dx*dx+dy*dy)))
		if math.Hypot(a.x+t*dx-q.x, a.y+t*dy-q.y) <= near {
			return true
		}
		if (a.y > q.y) != (b.y > q.y) && q.x < a.x+(q.y-a.y)/dy*dx {
			inside = !inside
		}
	}
	return inside
}

// complete checks that each part is cut exactly as often as it should be. A place on
// two layers gives a part of each hand; half a piece on the fold gives a whole one.
func (j Job) complete(l Lay) error {
	type tally struct{ up, down, atFold, whole int }
	got := make([]tally, len(j.Pieces))
	for _, p := range l.Places {
		g := &got[p.Piece]
		switch {
		case p.Folded:
			g.atFold++
		case l.Way != SingleLayer:
			g.up, g.down, g.whole = g.up+1, g.down+1, g.whole+2
		case p.Mirrored:
			g.down, g.whole = g.down+1, g.whole+1
		default:
			g.up, g.whole = g.up+1, g.whole+1
		}
	}
	for i, p := range j.Pieces {
		g, want := got[i], p.Drawn+p.Mirrored+p.Either
		enough := g.up >= p.Drawn && g.down >= p.Mirrored && g.whole+g.atFold >= want
		if !enough {
			return fmt.Errorf("%s: not all of its parts are cut", p.title())
		}
		spare := g.whole + g.atFold - want
		if l.Way == SingleLayer && spare > 0 || spare > 1 && g.up > max(p.Drawn, p.Mirrored) {
			return fmt.Errorf("%s: more of its parts are cut than are wanted", p.title())
		}
	}
	return nil
}

// Spare tells of each place whether a part of one layer only is wanted there, of which
// the other layer gives one too many.
func (j Job) Spare(l Lay) []bool {
	spare := make([]bool, len(l.Places))
	if l.Way.layers() == 1 {
		return spare
	}
	left := make([]int, len(j.Pieces)) // how many parts the places give beyond what is wanted
	for _, p := range l.Places {
		if !p.Folded {
			left[p.Piece] += 2
		}
	}
	for i, p := range j.Pieces {
		left[i] -= p.Drawn + p.Mirrored + p.Either
	}
	for i := len(spare) - 1; i >= 0; i-- {
		if p := l.Places[i]; !p.Folded && left[p.Piece] > 0 {
			spare[i] = true
			left[p.Piece]--
		}
	}
	return spare
}
