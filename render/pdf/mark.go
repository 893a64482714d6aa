package pdf

import (
	"math"

	"seamwarden/compiler/figure"
)

// mark is one thing that is drawn, or an area that leads somewhere.
type mark interface {
	shift(dx, dy float64) mark
	box() rect // all that it covers
}

// textMark is a run whose baseline begins at (x, y), turned clockwise.
type textMark struct {
	x, y  float64
	angle float64 // degrees
	run   run
	ink   figure.Paint
}

// pathMark is a shape whose coordinates count from (x, y). Nothing is drawn
// outside clip, which counts from there too; the zero rect clips nothing.
type pathMark struct {
	x, y float64
	path *figure.Path
	clip rect
}

// linkMark is an area that leads to the place with the id to.
type linkMark struct {
	area rect
	to   string
}

// refMark is a page number that is not known before the pages are: it ends at
// (x, y), and dots lead to it from dotsFrom.
type refMark struct {
	x, y     float64
	dotsFrom float64
	to       string
	st       style
}

func (m textMark) shift(dx, dy float64) mark { m.x += dx; m.y += dy; return m }
func (m pathMark) shift(dx, dy float64) mark { m.x += dx; m.y += dy; return m }
func (m linkMark) shift(dx, dy float64) mark { m.area = m.area.shift(dx, dy); return m }
func (m refMark) shift(dx, dy float64) mark {
	m.x += dx
	m.y += dy
	m.dotsFrom += dx
	return m
}

func (m linkMark) box() rect { return m.area }

func (m refMark) box() rect { return rect{m.dotsFrom, m.y, m.x - m.dotsFrom, 0} }

func (m textMark) box() rect {
	b := m.run.box(0, 0)
	sin, cos := math.Sincos(m.angle * math.Pi / 180)
	turn := func(x, y float64) rect { return rect{m.x + x*cos - y*sin, m.y + x*sin + y*cos, 0, 0} }
	return turn(b.x, b.y).cover(turn(b.x+b.w, b.y)).
		cover(turn(b.x, b.y+b.h)).cover(turn(b.x+b.w, b.y+b.h))
}

func (m pathMark) box() rect {
	if m.clip != (rect{}) {
		return m.clip.shift(m.x, m.y)
	}
	var r rect
	first := true
	for _, c := range m.path.Commands {
		for _, p := range c.Points[:pointsOf(c.Op)] {
			q := rect{p.X, p.Y, 0, 0}
			if !first {
				q = r.cover(q)
			}
			r, first = q, false
		}
	}
	return r.shift(m.x, m.y)
}

// pointsOf gives the number of points that a path command has.
func pointsOf(op byte) int {
	switch op {
	case 'M', 'L':
		return 1
	case 'C':
		return 3
	}
	return 0
}

var (
	black = figure.Paint{}
	none  = figure.Paint{None: true}
)

// ruleMark is a straight line from one point to another.
func ruleMark(x1, y1, x2, y2, width float64) mark {
	return pathMark{path: &figure.Path{
		Commands: []figure.Command{command('M', x1, y1), command('L', x2, y2)},
		Fill:     none, Stroke: black, Width: width,
	}}
}

// boxMark is the outline of a rectangle.
func boxMark(r rect, width float64) mark {
	return pathMark{path: &figure.Path{
		Commands: []figure.Command{command('M', r.x, r.y), command('L', r.x+r.w, r.y),
			command('L', r.x+r.w, r.y+r.h), command('L', r.x, r.y+r.h), {Op: 'Z'}},
		Fill: none, Stroke: black, Width: width,
	}}
}

// dotsMark is a line of dots on a baseline, to lead the eye.
func dotsMark(x1, x2, y float64) mark {
	return pathMark{path: &figure.Path{
		Commands: []figure.Command{command('M', x1, y), command('L', x2, y)},
		Fill:     none, Stroke: black, Width: 0.9, Dash: []float64{0, 4}, Cap: "round",
	}}
}

func command(op byte, x, y float64) figure.Command {
	return figure.Command{Op: op, Points: [3]figure.Point{{X: x, Y: y}}}
}

func shiftAll(ms []mark, dx, dy float64) []mark {
	out := make([]mark, len(ms))
	for i, m := range ms {
		out[i] = m.shift(dx, dy)
	}
	return out
}
