package pdf

import (
	"math"
	"strconv"
	"strings"

	"seamwarden/compiler/figure"
)

// The operators are those of ISO 32000-1, annex A.

// path writes one shape between q and Q, so that nothing of its look stays.
func (w *writer) path(x, y float64, p *figure.Path, clip rect) {
	op := paintOp(p)
	shape := w.shape(x, y, p.Commands)
	if op == "" || shape == "" {
		return
	}
	parts := []string{"q"}
	if clip != (rect{}) {
		parts = append(parts, point(x+clip.x, w.up(y+clip.y+clip.h)), point(clip.w, clip.h), "re W n")
	}
	if !p.Fill.None {
		parts = append(parts, colourOp(p.Fill, "rg", "g"))
	}
	if !p.Stroke.None {
		parts = append(parts, strokeOps(p))
	}
	w.pdf.RawWriteStr(strings.Join(append(parts, shape, op, "Q"), " "))
}

// paintOp gives the operator that fills and strokes a path, "" if neither.
func paintOp(p *figure.Path) string {
	op := ""
	switch {
	case p.Fill.None && p.Stroke.None:
		return ""
	case p.Fill.None:
		return "S"
	case p.Stroke.None:
		op = "f"
	default:
		op = "B"
	}
	if p.EvenOdd {
		op += "*"
	}
	return op
}

func strokeOps(p *figure.Path) string {
	caps := map[string]string{"round": "1 J", "square": "2 J"}
	joins := map[string]string{"round": "1 j", "bevel": "2 j"}
	ops := []string{colourOp(p.Stroke, "RG", "G"), num(p.Width), "w", "4 M"} // SVG's own mitre limit
	if c := caps[p.Cap]; c != "" {
		ops = append(ops, c)
	}
	if j := joins[p.Join]; j != "" {
		ops = append(ops, j)
	}
	if len(p.Dash) > 0 {
		ops = append(ops, "["+nums(p.Dash)+"]", num(p.DashStart), "d")
	}
	return strings.Join(ops, " ")
}

// shape writes the construction of a path. A path must begin with a move; one that
// does not begins at its first point.
func (w *writer) shape(x, y float64, cs []figure.Command) string {
	var b strings.Builder
	open := false
	for _, c := range cs {
		n := pointsOf(c.Op)
		if n == 0 {
			if c.Op == 'Z' && open {
				b.WriteString("h ")
			}
			continue
		}
		at := func(p figure.Point) string { return point(x+p.X, w.up(y+p.Y)) + " " }
		if !open && c.Op != 'M' {
			b.WriteString(at(c.Points[0]) + "m ")
		}
		open = true
		for _, p := range c.Points[:n] {
			b.WriteString(at(p))
		}
		b.WriteString(map[byte]string{'M': "m ", 'L': "l ", 'C': "c "}[c.Op])
	}
	return b.String()
}

// colourOp sets a colour; grey is written as grey, which costs no coloured ink.
func colourOp(p figure.Paint, rgb, grey string) string {
	part := func(v uint8) string { return num(float64(v) / 255) }
	if p.R == p.G && p.G == p.B {
		return part(p.R) + " " + grey
	}
	return part(p.R) + " " + part(p.G) + " " + part(p.B) + " " + rgb
}

// turn gives the first four numbers of a text matrix for a clockwise turn.
func turn(angle float64) string {
	if angle == 0 {
		return "1 0 0 1"
	}
	sin, cos := math.Sincos(angle * math.Pi / 180)
	f := func(v float64) string { return strconv.FormatFloat(v, 'f', 5, 64) }
	return f(cos) + " " + f(-sin) + " " + f(sin) + " " + f(cos)
}

func point(x, y float64) string { return num(x) + " " + num(y) }

func nums(vs []float64) string {
	out := make([]string, len(vs))
	for i, v := range vs {
		out[i] = num(v)
	}
	return strings.Join(out, " ")
}

// num writes a number with three decimals at most, and never as an exponent or
// "NaN", which PDF does not know.
func num(v float64) string {
	s := strconv.FormatFloat(finite(v), 'f', 3, 64)
	s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	if s == "-0" {
		return "0"
	}
	return s
}
