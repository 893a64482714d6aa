package figure

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
)

// WriteSVG writes the drawing as clean SVG 1.1: one element for each item,
// numbers with at most three decimals, nothing that is the default. The same
// drawing gives the same bytes, and [Read] gives the same drawing back if it
// came from Read.
//
// With a prefix the title and the description get ids that begin with it, and
// the drawing is labelled by them; so several can stand in one HTML page. With
// "" there are no ids. It fails if a number is not finite, or if w does.
func (d *Drawing) WriteSVG(w io.Writer, prefix string) error {
	var p printer
	p.open(d, idPrefix(prefix))
	for _, it := range d.Items {
		switch it := it.(type) {
		case *Path:
			p.path(it)
		case *Label:
			p.label(it)
		}
	}
	p.WriteString("</svg>\n")
	if p.unfit {
		return fmt.Errorf("a number in the drawing is not finite")
	}
	_, err := w.Write(p.Bytes())
	return err
}

// idPrefix keeps what is safe in an id.
func idPrefix(s string) string {
	return strings.Map(func(c rune) rune {
		if c < 0x80 && (isLetter(byte(c)) || isDigit(byte(c)) || c == '-' || c == '_') {
			return c
		}
		return '-'
	}, s)
}

// printer writes elements.
type printer struct {
	bytes.Buffer
	unfit bool // a number could not be written
}

func (p *printer) open(d *Drawing, prefix string) {
	fmt.Fprintf(p, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %s %s"`, p.number(d.Width), p.number(d.Height))
	if d.NaturalWidth > 0 {
		fmt.Fprintf(p, ` width="%smm"`, p.number(d.NaturalWidth))
	}
	p.WriteString(` role="img"`)
	ids := ""
	if prefix != "" && d.Title != "" {
		ids = prefix + "-title"
	}
	if prefix != "" && d.Desc != "" {
		ids = strings.TrimSpace(ids + " " + prefix + "-desc")
	}
	if ids != "" {
		p.attr("aria-labelledby", ids)
	}
	p.WriteString(">\n")
	p.words("title", d.Title, prefix)
	p.words("desc", d.Desc, prefix)
}

// words writes a title or a description, if there is one.
func (p *printer) words(name, text, prefix string) {
	if text == "" {
		return
	}
	p.WriteString("<" + name)
	if prefix != "" {
		p.attr("id", prefix+"-"+name)
	}
	p.WriteString(">")
	p.text(text)
	p.WriteString("</" + name + ">\n")
}

// text writes escaped text; a buffer cannot fail.
func (p *printer) text(s string) { _ = xml.EscapeText(p, []byte(s)) }

func (p *printer) attr(name, value string) { fmt.Fprintf(p, ` %s="%s"`, name, value) }

// unless writes an attribute if its value is not the usual one.
func (p *printer) unless(usual, name, value string) {
	if value != usual && value != "" {
		p.attr(name, value)
	}
}

func (p *printer) path(it *Path) {
	p.WriteString(`<path d="`)
	p.commands(it.Commands)
	p.WriteByte('"')
	p.unless("#000000", "fill", paint(it.Fill))
	if it.EvenOdd {
		p.attr("fill-rule", "evenodd")
	}
	if !it.Stroke.None {
		p.stroke(it)
	}
	p.WriteString("/>\n")
}

func (p *printer) stroke(it *Path) {
	p.attr("stroke", paint(it.Stroke))
	p.unless("1", "stroke-width", p.number(it.Width))
	if len(it.Dash) > 0 {
		list := make([]string, len(it.Dash))
		for i, v := range it.Dash {
			list[i] = p.number(v)
		}
		p.attr("stroke-dasharray", strings.Join(list, " "))
		p.unless("0", "stroke-dashoffset", p.number(it.DashStart))
	}
	p.unless("butt", "stroke-linecap", it.Cap)
	p.unless("miter", "stroke-linejoin", it.Join)
}

func (p *printer) commands(list []Command) {
	for _, c := range list {
		p.WriteByte(c.Op)
		for k, pt := range c.Points[:points(c.Op)] {
			if k > 0 {
				p.WriteByte(' ')
			}
			p.WriteString(p.number(pt.X) + " " + p.number(pt.Y))
		}
	}
}

func (p *printer) label(it *Label) {
	x, y := p.number(it.At.X), p.number(it.At.Y)
	p.WriteString("<text")
	p.attr("x", x)
	p.attr("y", y)
	p.attr("font-size", p.number(it.Size))
	p.unless("start", "text-anchor", it.Anchor)
	if it.Bold {
		p.attr("font-weight", "bold")
	}
	if it.Italic {
		p.attr("font-style", "italic")
	}
	p.unless("#000000", "fill", paint(it.Fill))
	if a := p.number(it.Angle); a != "0" {
		p.attr("transform", "rotate("+a+" "+x+" "+y+")")
	}
	p.WriteString(">")
	p.text(it.Text)
	p.WriteString("</text>\n")
}

func paint(c Paint) string {
	if c.None {
		return "none"
	}
	return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B)
}

// number writes at most three decimals, without trailing noughts.
func (p *printer) number(v float64) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		p.unfit = true
		return "0"
	}
	s := strconv.FormatFloat(round(v), 'f', 3, 64)
	return strings.TrimRight(strings.TrimRight(s, "0"), ".")
}
