package html

import (
	"errors"
	"fmt"
	stdhtml "html"
	"html/template"
	"math"
	"strconv"
	"strings"

	"seamwarden/compiler/booklet"
	"seamwarden/compiler/figure"
)

// drawing writes the line art of a figure as an SVG element of the page. Its
// name and description are those of the art, or else the caption.
func (p *page) drawing(f *booklet.Figure) (template.HTML, error) {
	d := f.Art
	if !positive(d.Width) || !positive(d.Height) {
		return "", errors.New("the line art has no size")
	}
	w := &svgWriter{colours: p.colours}
	w.open(d)
	p.describe(w, f)
	for _, item := range d.Items {
		if err := w.item(item); err != nil {
			return "", err
		}
	}
	w.text("</svg>\n")
	return template.HTML(w.out.String()), nil
}

// describe ends the opening tag with the ids of the title and description, and
// writes those two.
func (p *page) describe(w *svgWriter, f *booklet.Figure) {
	caption := booklet.Plain(f.Caption)
	title := firstOf(f.Art.Title, caption, p.doc.Labels.Figure)
	desc := firstOf(f.Art.Desc, caption)
	stem := firstOf(f.ID, "figure")
	titleID := p.ids.fresh(stem + "-name")
	if desc == "" || desc == title {
		w.text(` aria-labelledby="`, titleID, `"><title id="`, titleID, `">`)
		w.escaped(title)
		w.text("</title>")
		return
	}
	descID := p.ids.fresh(stem + "-desc")
	w.text(` aria-labelledby="`, titleID, ` `, descID, `"><title id="`, titleID, `">`)
	w.escaped(title)
	w.text(`</title><desc id="`, descID, `">`)
	w.escaped(desc)
	w.text("</desc>")
}

func firstOf(words ...string) string {
	for _, s := range words {
		if s != "" {
			return s
		}
	}
	return ""
}

func positive(v float64) bool { return v > 0 && !math.IsInf(v, 1) }

// svgWriter writes one drawing and notes its colours and the first number that
// is none.
type svgWriter struct {
	out     strings.Builder
	colours palette
	bad     bool
}

func (w *svgWriter) open(d *figure.Drawing) {
	w.text(`<svg class="art" role="img" viewBox="0 0 `)
	w.numbers(d.Width, d.Height)
	w.text(`"`)
	if positive(d.NaturalWidth) {
		w.text(` width="`)
		w.numbers(d.NaturalWidth)
		w.text(`mm"`)
	}
}

func (w *svgWriter) item(i figure.Item) error {
	switch x := i.(type) {
	case *figure.Path:
		if err := w.path(x); err != nil {
			return err
		}
	case *figure.Label:
		w.label(x)
	default:
		return errors.New("the line art holds a kind of shape that the page cannot set")
	}
	if w.bad {
		return errors.New("the line art holds a number that is not finite")
	}
	return nil
}

func (w *svgWriter) path(x *figure.Path) error {
	w.text(`<path d="`)
	for _, c := range x.Commands {
		n, known := map[byte]int{'M': 1, 'L': 1, 'C': 3, 'Z': 0}[c.Op]
		if !known {
			return fmt.Errorf("the line art holds the path command %q", c.Op)
		}
		w.text(string(rune(c.Op)))
		for i := 0; i < n; i++ {
			if i > 0 {
				w.text(" ")
			}
			w.numbers(c.Points[i].X, c.Points[i].Y)
		}
	}
	w.text(`"`)
	w.paint("fill", x.Fill)
	if x.EvenOdd && !x.Fill.None {
		w.text(` fill-rule="evenodd"`)
	}
	w.stroke(x)
	w.text("/>")
	return nil
}

func (w *svgWriter) stroke(x *figure.Path) {
	if x.Stroke.None {
		return // the initial value of stroke
	}
	w.paint("stroke", x.Stroke)
	w.attribute("stroke-width", x.Width)
	if len(x.Dash) > 0 {
		w.attribute("stroke-dasharray", x.Dash...)
		if x.DashStart != 0 {
			w.attribute("stroke-dashoffset", x.DashStart)
		}
	}
	if x.Cap == "round" || x.Cap == "square" {
		w.text(` stroke-linecap="`, x.Cap, `"`)
	}
	if x.Join == "round" || x.Join == "bevel" {
		w.text(` stroke-linejoin="`, x.Join, `"`)
	}
}

func (w *svgWriter) label(x *figure.Label) {
	w.text("<text")
	w.attribute("x", x.At.X)
	w.attribute("y", x.At.Y)
	w.attribute("font-size", x.Size)
	if x.Anchor == "middle" || x.Anchor == "end" {
		w.text(` text-anchor="`, x.Anchor, `"`)
	}
	if x.Bold {
		w.text(` font-weight="bold"`)
	}
	if x.Italic {
		w.text(` font-style="italic"`)
	}
	if x.Angle != 0 {
		w.text(` transform="rotate(`)
		w.numbers(x.Angle, x.At.X, x.At.Y)
		w.text(`)"`)
	}
	w.paint("fill", x.Fill)
	w.text(">")
	w.escaped(x.Text)
	w.text("</text>")
}

func (w *svgWriter) paint(attribute string, c figure.Paint) {
	w.text(` `, attribute, `="`, w.colours.use(c), `"`)
}

func (w *svgWriter) attribute(name string, values ...float64) {
	w.text(` `, name, `="`)
	w.numbers(values...)
	w.text(`"`)
}

// numbers writes values with six figures, which is finer than any printer.
func (w *svgWriter) numbers(values ...float64) {
	for i, v := range values {
		if i > 0 {
			w.text(" ")
		}
		if math.IsNaN(v) || math.IsInf(v, 0) {
			w.bad = true
		}
		w.text(strconv.FormatFloat(v+0, 'g', 6, 64)) // +0 turns -0 into 0
	}
}

func (w *svgWriter) text(parts ...string) {
	for _, s := range parts {
		w.out.WriteString(s)
	}
}

func (w *svgWriter) escaped(s string) { w.out.WriteString(stdhtml.EscapeString(s)) }
