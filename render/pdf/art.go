package pdf

import (
	"math"

	"seamwarden/compiler/figure"
)

// artMarks gives the marks of a drawing whose top left corner is at (0, 0), with
// so many points to a drawing unit. What reaches out of the drawing is cut off, as a
// browser does with the same file; labels, which must not be lost, are moved in.
func (l *layouter) artMarks(d *figure.Drawing, scale float64) []mark {
	area := rect{0, 0, d.Width * scale, d.Height * scale}
	var ms []mark
	for _, it := range d.Items {
		switch x := it.(type) {
		case *figure.Path:
			if x != nil {
				ms = append(ms, pathMark{path: scaled(x, scale), clip: area})
			}
		case *figure.Label:
			if x != nil {
				ms = append(ms, l.labelMarks(x, scale, area)...)
			}
		}
	}
	return ms
}

// scaled gives a path in points. Strokes stay thick enough to print.
func scaled(p *figure.Path, s float64) *figure.Path {
	q := *p
	q.Commands = make([]figure.Command, len(p.Commands))
	for i, c := range p.Commands {
		for j := range c.Points {
			c.Points[j] = figure.Point{X: finite(c.Points[j].X * s), Y: finite(c.Points[j].Y * s)}
		}
		q.Commands[i] = c
	}
	q.Stroke.None = p.Stroke.None || !sound(p.Width)
	q.Width = max(finite(p.Width*s), thinnest)
	q.Dash = scaledDash(p.Dash, s)
	q.DashStart = finite(p.DashStart * s)
	return &q
}

// thinnest is the thinnest stroke, in points, that a home printer shows.
const thinnest = 0.3

// scaledDash gives dashes in points; a pattern that PDF does not allow is solid
// (ISO 32000-1, 8.4.3.6: numbers not negative and not all zero).
func scaledDash(dash []float64, s float64) []float64 {
	total := 0.0
	out := make([]float64, len(dash))
	for i, d := range dash {
		if d < 0 {
			return nil
		}
		out[i] = finite(d * s)
		total += out[i]
	}
	if total < 0.01 {
		return nil
	}
	return out
}

// finite keeps coordinates within what every PDF reader takes (±32767, ISO
// 32000-1, annex C).
func finite(v float64) float64 {
	if math.IsNaN(v) {
		return 0
	}
	return max(-30000, min(30000, v))
}

// labelMarks sets a label. One that does not fit in the art is moved in, and
// made smaller if it must be.
func (l *layouter) labelMarks(x *figure.Label, scale float64, area rect) []mark {
	size := finite(x.Size * scale)
	if size <= 0 || x.Text == "" {
		return nil
	}
	ms := l.labelAt(x, size, scale)
	b := boxOf(ms)
	if shrink := min(1, area.w/b.w, area.h/b.h); shrink < 1 {
		ms = l.labelAt(x, size*shrink*0.999, scale)
		b = boxOf(ms)
	}
	dx := max(area.x-b.x, 0) + min(area.x+area.w-b.x-b.w, 0)
	dy := max(area.y-b.y, 0) + min(area.y+area.h-b.y-b.h, 0)
	return shiftAll(ms, dx, dy)
}

// labelAt sets a label where the drawing has it.
func (l *layouter) labelAt(x *figure.Label, size, scale float64) []mark {
	runs := l.set.shape(x.Text, style{family: sans, bold: x.Bold, italic: x.Italic, size: size}, "")
	along := 0.0
	switch x.Anchor {
	case "middle":
		along = -sum(runs) / 2
	case "end":
		along = -sum(runs)
	}
	angle := finite(x.Angle)
	sin, cos := math.Sincos(angle * math.Pi / 180)
	ink := x.Fill
	ink.None = false // a label without a colour would be lost
	var ms []mark
	for _, r := range runs {
		ms = append(ms, textMark{
			x:     finite(x.At.X*scale) + along*cos,
			y:     finite(x.At.Y*scale) + along*sin,
			angle: angle, run: r, ink: ink,
		})
		along += r.width
	}
	return ms
}

func boxOf(ms []mark) rect {
	var b rect
	for i, m := range ms {
		if i == 0 {
			b = m.box()
		} else {
			b = b.cover(m.box())
		}
	}
	return b
}
