package html

import (
	"errors"
	"fmt"
	stdhtml "html"
	"html/template"
	"strings"

	"seamwarden/compiler/booklet"
)

// inline sets running text. Every character of the booklet is escaped; the only
// markup is what this file writes.
func (p *page) inline(in []booklet.Inline) (template.HTML, error) {
	var out strings.Builder
	for _, i := range in {
		if err := p.writeInline(&out, i); err != nil {
			return "", err
		}
	}
	return template.HTML(out.String()), nil
}

func (p *page) writeInline(out *strings.Builder, i booklet.Inline) error {
	switch x := i.(type) {
	case booklet.Text:
		out.WriteString(stdhtml.EscapeString(string(x)))
	case booklet.Strong:
		return p.wrap(out, "<strong>", x.Text, "</strong>")
	case booklet.Emphasis:
		return p.wrap(out, "<em>", x.Text, "</em>")
	case booklet.Link:
		return p.writeLink(out, x)
	case booklet.Measure:
		writeMeasure(out, x)
	case booklet.Break:
		out.WriteString("<br>")
	default:
		return errUnknownText
	}
	return nil
}

func (p *page) wrap(out *strings.Builder, open string, in []booklet.Inline, shut string) error {
	s, err := p.inline(in)
	if err != nil {
		return err
	}
	out.WriteString(open + string(s) + shut)
	return nil
}

// writeLink sets a link inside the page. One to a place that is not in the
// booklet, or inside another link, is an error.
func (p *page) writeLink(out *strings.Builder, x booklet.Link) error {
	if !p.ids.taken[x.To] {
		return fmt.Errorf("the link %q leads to %q, which is not in the booklet", booklet.Plain(x.Text), x.To)
	}
	if p.inLink {
		return errors.New("a link stands inside another link")
	}
	p.inLink = true
	defer func() { p.inLink = false }()
	return p.wrap(out, `<a href="#`+stdhtml.EscapeString(x.To)+`">`, x.Text, "</a>")
}

// writeMeasure sets a length so that a line may break between its two systems,
// never between a number and its unit.
func writeMeasure(out *strings.Builder, m booklet.Measure) {
	first, second := [2]string{"imperial", m.Imperial}, [2]string{"metric", m.Metric}
	if m.MetricFirst {
		first, second = second, first
	}
	if first[1] == "" {
		first, second = second, first
	}
	out.WriteString(`<span class="measure">`)
	writeUnit(out, first[0], first[1])
	if second[1] != "" {
		out.WriteString(" ")
		writeUnit(out, second[0], "("+second[1]+")")
	}
	out.WriteString("</span>")
}

func writeUnit(out *strings.Builder, system, text string) {
	out.WriteString(`<span class="` + system + `">` + stdhtml.EscapeString(text) + `</span>`)
}
