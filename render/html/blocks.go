package html

import (
	"errors"
	"fmt"
	"html/template"
	"strings"

	"seamwarden/compiler/booklet"
)

func (p *page) blocks(bs []booklet.Block) (template.HTML, error) {
	var out strings.Builder
	for _, b := range bs {
		s, err := p.block(b)
		if err != nil {
			return "", err
		}
		out.WriteString(string(s))
	}
	return template.HTML(out.String()), nil
}

func (p *page) block(b booklet.Block) (template.HTML, error) {
	switch x := b.(type) {
	case *booklet.Heading:
		return p.heading(x)
	case *booklet.Paragraph:
		return p.paragraph(x)
	case *booklet.List:
		return p.list(x)
	case *booklet.Table:
		return p.table(x)
	case *booklet.Figure:
		return p.figure(x)
	case *booklet.Step:
		return p.step(x)
	case *booklet.Caution:
		return p.caution(x)
	case *booklet.Terms:
		return p.terms(x)
	case *booklet.Group:
		return p.group(x)
	}
	return "", errUnknownBlock
}

func (p *page) heading(h *booklet.Heading) (template.HTML, error) {
	if h.ID != "" {
		p.label = h.ID
	}
	return p.fill("heading", struct {
		Level     int
		ID, Title string
	}{p.levels.enter(h.Level), h.ID, h.Title})
}

func (p *page) paragraph(x *booklet.Paragraph) (template.HTML, error) {
	text, err := p.inline(x.Text)
	if err != nil {
		return "", err
	}
	return p.fill("paragraph", text)
}

// flow sets the blocks of a list item or a definition; a single paragraph stands
// there without the element and its margins.
func (p *page) flow(bs []booklet.Block) (template.HTML, error) {
	if len(bs) == 1 {
		if only, ok := bs[0].(*booklet.Paragraph); ok {
			return p.inline(only.Text)
		}
	}
	return p.blocks(bs)
}

func (p *page) list(l *booklet.List) (template.HTML, error) {
	if len(l.Items) == 0 {
		return "", nil
	}
	items := make([]template.HTML, len(l.Items))
	for i, item := range l.Items {
		var err error
		if items[i], err = p.flow(item); err != nil {
			return "", err
		}
	}
	return p.fill("list", struct {
		Ordered bool
		Items   []template.HTML
	}{l.Ordered, items})
}

func (p *page) caution(c *booklet.Caution) (template.HTML, error) {
	if c.Signal == "" {
		return "", errors.New("a caution has no signal word")
	}
	text, err := p.inline(c.Text)
	if err != nil {
		return "", err
	}
	return p.fill("caution", struct {
		Signal string
		Text   template.HTML
	}{c.Signal, text})
}

func (p *page) terms(x *booklet.Terms) (template.HTML, error) {
	type term struct {
		ID, Word string
		Body     template.HTML
	}
	if len(x.Items) == 0 {
		return "", nil
	}
	var items []term
	for _, t := range x.Items {
		body, err := p.flow(t.Blocks)
		if err != nil {
			return "", fmt.Errorf("term %q: %w", t.Word, err)
		}
		items = append(items, term{t.ID, t.Word, body})
	}
	return p.fill("terms", items)
}

// group sets what belongs to some garments only, under its condition; without a
// condition it is as if the blocks stood there alone.
func (p *page) group(g *booklet.Group) (template.HTML, error) {
	if g.When == "" {
		return p.blocks(g.Blocks)
	}
	whenID := p.ids.fresh("for")
	body, err := p.blocks(g.Blocks)
	if err != nil {
		return "", err
	}
	return p.fill("group", struct {
		When, WhenID string
		Body         template.HTML
	}{g.When, whenID, body})
}
