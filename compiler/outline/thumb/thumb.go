// Package thumb draws a piece as the small drawing beside it in the cutting table.
//
// In: an outline, the number of the piece, the edge on the fold and a scale. Out: a
// drawing in the figure model: the outline, notches, grain arrow, fold and the number.
// It does not know patterns; the caller gives title and description.
package thumb

import (
	"math"

	"seamwarden/compiler/figure"
	"seamwarden/compiler/outline"
)

// Look is what is shown of an outline.
type Look struct {
	Number string
	Under  string // a word below it, such as the view in which it is cut so
	Fold   string // the edge that lies on the fold of the cloth, "" if none does
	Scale  float64
	Title  string
	Desc   string
}

// A drawing has five units to a printed millimetre.
const (
	perMM   = 5
	widest  = 32.0 // mm on paper
	highest = 26.0
	least   = 6.0 // a piece that is smaller in both directions cannot be told from a speck
	edge    = 0.9 // mm of air around
	text    = 13  // units
	small   = 11
)

// scales are those that a drawing may have: one printed millimetre for so many.
var scales = []float64{2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 60, 80, 100, 150, 200}

// Scale gives the largest scale at which every outline fits, as the number of
// millimetres that a printed one stands for.
func Scale(all []*outline.Outline) float64 {
	for _, s := range scales {
		fits := true
		for _, o := range all {
			b := o.Bounds()
			fits = fits && (b.Max.X-b.Min.X)/s <= widest && (b.Max.Y-b.Min.Y)/s <= highest
		}
		if fits {
			return s
		}
	}
	return scales[len(scales)-1]
}

// TooSmall reports whether a piece cannot be made out at a scale.
func TooSmall(o *outline.Outline, scale float64) bool {
	b := o.Bounds()
	return max(b.Max.X-b.Min.X, b.Max.Y-b.Min.Y)/scale < least
}

var (
	black = figure.Paint{}
	none  = figure.Paint{None: true}
)

// Draw draws an outline.
func Draw(o *outline.Outline, look Look) *figure.Drawing {
	b := o.Bounds()
	k := perMM / look.Scale
	c := &canvas{k: k, off: figure.Point{X: edge*perMM - b.Min.X*k, Y: edge*perMM - b.Min.Y*k}}
	c.d = &figure.Drawing{Title: look.Title, Desc: look.Desc,
		Width: (b.Max.X-b.Min.X)*k + 2*edge*perMM, Height: (b.Max.Y-b.Min.Y)*k + 2*edge*perMM}
	c.outline(o, look.Fold)
	for _, hole := range o.Openings {
		c.line(hole, 1.2, nil)
	}
	for _, l := range o.Folds {
		c.stroke(1, []float64{4, 3}, c.at(l.From), c.at(l.To))
	}
	c.marks(o)
	c.grain(o)
	c.number(o, look.Number)
	c.under(look.Under)
	c.d.NaturalWidth = c.d.Width / perMM
	return c.d
}

// canvas is a drawing under way: k units for a millimetre of the piece.
type canvas struct {
	d    *figure.Drawing
	k    float64
	off  figure.Point
	busy [][2]figure.Point // strokes that a number keeps clear of
}

func (c *canvas) at(p outline.Point) figure.Point {
	return figure.Point{X: p.X*c.k + c.off.X, Y: p.Y*c.k + c.off.Y}
}

// outline draws the ring; the edge on the fold is a heavy line of long and short strokes.
func (c *canvas) outline(o *outline.Outline, fold string) {
	for _, e := range o.Edges {
		if e.Name == fold && fold != "" {
			c.line(e.Curves, 2.6, []float64{11, 3, 2.5, 3})
			continue
		}
		c.line(e.Curves, 1.4, nil)
	}
}

// line draws curves that follow on one another.
func (c *canvas) line(curves []outline.Curve, width float64, dash []float64) {
	p := &figure.Path{Fill: none, Stroke: black, Width: width, Dash: dash, Cap: "butt", Join: "round"}
	if dash == nil {
		p.Cap = "round"
	}
	for i := range curves {
		q := curves[i].P
		if i == 0 {
			p.Commands = append(p.Commands, figure.Command{Op: 'M', Points: [3]figure.Point{c.at(q[0])}})
		}
		if curves[i].Straight {
			p.Commands = append(p.Commands, figure.Command{Op: 'L', Points: [3]figure.Point{c.at(q[3])}})
			continue
		}
		p.Commands = append(p.Commands, figure.Command{Op: 'C', Points: [3]figure.Point{c.at(q[1]), c.at(q[2]), c.at(q[3])}})
	}
	c.d.Items = append(c.d.Items, p)
}

func (c *canvas) stroke(width float64, dash []float64, from, to figure.Point) {
	c.busy = append(c.busy, [2]figure.Point{from, to})
	c.d.Items = append(c.d.Items, &figure.Path{Fill: none, Stroke: black, Width: width, Dash: dash, Cap: "butt", Join: "miter",
		Commands: []figure.Command{{Op: 'M', Points: [3]figure.Point{from}}, {Op: 'L', Points: [3]figure.Point{to}}}})
}

// marks draws what lies on an edge as a short line into the piece. Signs inside would be
// specks, and are left out.
func (c *canvas) marks(o *outline.Outline) {
	const deep = 5
	for _, m := range o.Marks {
		if m.Edge == nil {
			continue
		}
		d := m.Edge.Direction(m.At)
		p := c.at(m.Edge.Place(m.At))
		c.stroke(1.2, nil, p, figure.Point{X: p.X - d.Y*deep, Y: p.Y + d.X*deep})
	}
}

// grain draws the grain line where the designer drew it, with a head at both ends.
func (c *canvas) grain(o *outline.Outline) {
	if o.Grain == nil {
		return
	}
	from, to := c.at(o.Grain.From), c.at(o.Grain.To)
	long := math.Hypot(to.X-from.X, to.Y-from.Y)
	const head, half = 5.0, 1.9
	if long < 2*head {
		return
	}
	c.stroke(0.9, nil, from, to)
	d := figure.Point{X: (to.X - from.X) / long, Y: (to.Y - from.Y) / long}
	for _, tip := range []struct {
		p figure.Point
		k float64
	}{{to, 1}, {from, -1}} {
		back := figure.Point{X: tip.p.X - head*tip.k*d.X, Y: tip.p.Y - head*tip.k*d.Y}
		c.d.Items = append(c.d.Items, &figure.Path{Fill: black, Stroke: none, Cap: "butt", Join: "miter", Commands: []figure.Command{
			{Op: 'M', Points: [3]figure.Point{tip.p}},
			{Op: 'L', Points: [3]figure.Point{{X: back.X - half*d.Y, Y: back.Y + half*d.X}}},
			{Op: 'L', Points: [3]figure.Point{{X: back.X + half*d.Y, Y: back.Y - half*d.X}}},
			{Op: 'Z'}}})
	}
}
