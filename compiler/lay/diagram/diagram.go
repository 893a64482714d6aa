// Package diagram draws a lay as the cutting layout of a booklet.
//
// In: a job, a lay of it that has passed its check, and the words to print. Out: a
// [figure.Drawing] in black, white and one grey: the outlines with number, name and
// grain, the selvedges, the fold, and the length and width in both systems of units.
// It does not know whose lay it is; the caller gives the title.
package diagram

import (
	"fmt"

	"seamwarden/compiler/figure"
	"seamwarden/compiler/lay"
	"seamwarden/compiler/measure"
)

// Words are what is printed beside the outlines.
type Words struct {
	Title, Desc string
	Fold        string
	Selvedge    string // one
	Selvedges   string // two on each other
	FaceDown    string // what a shaded outline means
	OneLayer    string // stands in a piece of which one layer only is wanted
	Measures    bool   // how long and how wide the cloth lies is written under the drawing
	Style       measure.Style
}

// English are the words of an English booklet, without a title.
func English() Words {
	return Words{Fold: "Fold", Selvedge: "Selvedge", Selvedges: "Selvedges", FaceDown: "Shaded: printed side down.", OneLayer: "cut one layer only", Measures: true, Style: measure.English}
}

// A drawing is printed on a page of about 170 mm by 240 mm; its units are fifths of a
// millimetre there.
const (
	perMillimetre = 5
	widest        = 850
	highest       = 1150
	margin        = 34 // for a line of words on each side
	text          = 16
	large         = 28 // of a number, so that it can be read on a phone
	small         = 13
)

var (
	black = figure.Paint{}
	white = figure.Paint{R: 255, G: 255, B: 255}
	shade = figure.Paint{R: 217, G: 217, B: 217}
	none  = figure.Paint{None: true}
)

// Draw draws a lay. It runs down the page or across it, whichever takes less of the
// page's height, unless it would come out much smaller. It fails if a piece lies as it
// may not.
func Draw(j lay.Job, l lay.Lay, w Words) (*figure.Drawing, error) {
	placed, err := j.Placed(l)
	if err != nil {
		return nil, err
	}
	c := newCanvas(j, l, w)
	c.cloth()
	shaded := false
	spare := j.Spare(l)
	for i, p := range placed {
		note := ""
		if spare[i] {
			note = w.OneLayer
		}
		c.piece(j, l.Places[i], p.Ring, note)
		shaded = shaded || l.Places[i].Mirrored && !symmetric(j, l.Places[i])
	}
	c.edges()
	if w.Measures {
		c.measures()
	}
	if shaded {
		c.label(figure.Point{X: margin, Y: c.d.Height - 6}, w.FaceDown, small, "start", 0, false)
	}
	return c.d, nil
}

// symmetric reports whether it does not matter which side of a piece is up: what is
// cut on the fold is its own reflection.
func symmetric(j lay.Job, p lay.Place) bool { return j.Pieces[p.Piece].Fold != nil }

// canvas is a drawing under way. down says that the cloth runs down the page; scale is
// the number of units on paper for one on the cloth.
type canvas struct {
	d             *figure.Drawing
	words         Words
	way           lay.Way
	length, width int64 // of the strip
	nap           bool
	scale         float64
	down          bool
}

func newCanvas(j lay.Job, l lay.Lay, w Words) *canvas {
	c := &canvas{words: w, way: l.Way, length: l.Length, width: l.Strip(j.Cloth), nap: j.Cloth.Nap}
	long, wide := float64(c.length), float64(c.width)
	across := min((widest-2*margin)/long, (highest-3*margin)/wide)
	down := min((highest-3*margin)/long, (widest-2*margin)/wide)
	c.scale, c.down = across, false
	if flatter := long*down < wide*across; flatter && down >= 0.6*across || down > 1.6*across {
		c.scale, c.down = down, true
	}
	h, v := long*c.scale, wide*c.scale
	if c.down {
		h, v = v, h
	}
	width := max(h+2*margin, 420) // room for a line of words
	c.d = &figure.Drawing{Width: width, Height: v + 3*margin, NaturalWidth: width / perMillimetre, Title: w.Title, Desc: w.Desc}
	return c
}

// at is where a place of the cloth is on paper: across the page, the fold is below;
// down the page it is on the left.
func (c *canvas) at(p lay.Point) figure.Point { return c.at2(float64(p.X), float64(p.Y)) }

func (c *canvas) at2(x, y float64) figure.Point {
	if c.down {
		return figure.Point{X: margin + y*c.scale, Y: margin + x*c.scale}
	}
	return figure.Point{X: margin + x*c.scale, Y: margin + (float64(c.width)-y)*c.scale}
}

func (c *canvas) add(fill, stroke figure.Paint, width float64, dash []float64, closed bool, points ...figure.Point) {
	p := &figure.Path{Fill: fill, Stroke: stroke, Width: width, Dash: dash, Cap: "butt", Join: "miter"}
	if !stroke.None {
		p.Join = "round"
	}
	for i, q := range points {
		op := byte('L')
		if i == 0 {
			op = 'M'
		}
		p.Commands = append(p.Commands, figure.Command{Op: op, Points: [3]figure.Point{q}})
	}
	if closed {
		p.Commands = append(p.Commands, figure.Command{Op: 'Z'})
	}
	c.d.Items = append(c.d.Items, p)
}

func (c *canvas) label(at figure.Point, s string, size float64, anchor string, angle float64, bold bool) {
	c.d.Items = append(c.d.Items, &figure.Label{At: at, Text: s, Size: size, Anchor: anchor, Angle: angle, Bold: bold, Fill: black})
}

// cloth draws the ends of the cloth, which are cut.
func (c *canvas) cloth() {
	long, wide := float64(c.length), float64(c.width)
	if c.way != lay.CrosswiseFold {
		c.add(none, black, 0.8, nil, false, c.at2(0, 0), c.at2(0, wide))
	}
	c.add(none, black, 0.8, []float64{6, 4}, false, c.at2(long, 0), c.at2(long, wide))
}

// edges draws the selvedges and the fold, and says which they are.
func (c *canvas) edges() {
	long, wide := float64(c.length), float64(c.width)
	low, high := [2]figure.Point{c.at2(0, 0), c.at2(long, 0)}, [2]figure.Point{c.at2(0, wide), c.at2(long, wide)}
	switch c.way {
	case lay.LengthwiseFold:
		c.fold(low)
		c.selvedge(high, c.words.Selvedges)
	case lay.CrosswiseFold:
		c.selvedge(low, c.words.Selvedges)
		c.selvedge(high, c.words.Selvedges)
		c.fold([2]figure.Point{c.at2(0, 0), c.at2(0, wide)})
	default:
		c.selvedge(low, c.words.Selvedge)
		c.selvedge(high, c.words.Selvedge)
	}
}

// fold is a heavy line of long and short strokes.
func (c *canvas) fold(ends [2]figure.Point) {
	c.add(none, black, 2.4, []float64{16, 4, 3, 4}, false, ends[0], ends[1])
	c.along(ends, c.words.Fold)
}

// selvedge is a double line.
func (c *canvas) selvedge(ends [2]figure.Point, s string) {
	c.add(none, black, 0.8, nil, false, ends[0], ends[1])
	out := c.outward(ends)
	for i := range ends {
		ends[i] = figure.Point{X: ends[i].X + 3*out.X, Y: ends[i].Y + 3*out.Y}
	}
	c.add(none, black, 0.8, nil, false, ends[0], ends[1])
	c.along(ends, s)
}

// outward is the direction away from the cloth at one of its edges.
func (c *canvas) outward(ends [2]figure.Point) figure.Point {
	middle := c.at2(float64(c.length)/2, float64(c.width)/2)
	if ends[0].X == ends[1].X {
		if ends[0].X < middle.X {
			return figure.Point{X: -1}
		}
		return figure.Point{X: 1}
	}
	if ends[0].Y < middle.Y {
		return figure.Point{Y: -1}
	}
	return figure.Point{Y: 1}
}

// along writes words beside an edge, outside the cloth.
func (c *canvas) along(ends [2]figure.Point, s string) {
	out := c.outward(ends)
	x, y := (ends[0].X+ends[1].X)/2, (ends[0].Y+ends[1].Y)/2
	switch {
	case out.X < 0:
		c.label(figure.Point{X: x - 6, Y: y}, s, small, "middle", -90, false)
	case out.X > 0:
		c.label(figure.Point{X: x + 6 + small*0.75, Y: y}, s, small, "middle", -90, false)
	case out.Y < 0:
		c.label(figure.Point{X: x, Y: y - 6}, s, small, "middle", 0, false)
	default:
		c.label(figure.Point{X: x, Y: y + 6 + small*0.75}, s, small, "middle", 0, false)
	}
}

// measures writes how long and how wide the cloth lies, under the drawing.
func (c *canvas) measures() {
	say := func(n int64, kind measure.Kind) string {
		l, ok := measure.FromFloatMM(float64(n) / lay.Millimetre)
		if !ok {
			return ""
		}
		return measure.InMetric(l, kind, false, c.words.Style) + " (" + measure.InImperial(l, kind, false, c.words.Style) + ")"
	}
	s := fmt.Sprintf("%s × %s", say(c.length, measure.Cloth), say(c.width, measure.Width))
	c.label(figure.Point{X: margin, Y: c.d.Height - 6 - 1.5*small}, s, small, "start", 0, false)
}
