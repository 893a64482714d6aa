package html

import (
	"errors"
	"fmt"
	"html/template"

	"seamwarden/compiler/booklet"
)

type stepView struct {
	ID, TitleID, Title string
	Word, When         string
	Number, Level      int
	Body               template.HTML
	Figures            []template.HTML
}

// step sets one step. Its number is the label of its tick box, so that the whole
// of it can be hit with a finger.
func (p *page) step(s *booklet.Step) (template.HTML, error) {
	if s.ID == "" || s.Title == "" {
		return "", fmt.Errorf("step %d has no title or no id", s.Number)
	}
	v := stepView{
		ID: s.ID, TitleID: p.ids.fresh(s.ID + "-title"), Title: s.Title,
		Word: p.doc.Labels.Step, When: s.When, Number: s.Number, Level: p.levels.step(),
	}
	defer p.inside(v.TitleID, v.Level)()
	var err error
	if v.Body, err = p.blocks(s.Blocks); err != nil {
		return "", fmt.Errorf("step %d: %w", s.Number, err)
	}
	for _, f := range s.Figures {
		set, err := p.figure(f)
		if err != nil {
			return "", fmt.Errorf("step %d: %w", s.Number, err)
		}
		v.Figures = append(v.Figures, set)
	}
	return p.fill("step", v)
}

// inside makes the headings that follow parts of the one given, until the
// function it returns is called.
func (p *page) inside(titleID string, level int) (leave func()) {
	label, outer := p.label, p.levels
	p.label, p.levels = titleID, &levels{base: level}
	return func() { p.label, p.levels = label, outer }
}

// figure sets line art with its caption below it.
func (p *page) figure(f *booklet.Figure) (template.HTML, error) {
	if f == nil || f.Art == nil {
		return "", errors.New("a figure has no line art")
	}
	art, err := p.drawing(f)
	if err != nil {
		return "", fmt.Errorf("figure %q: %w", booklet.Plain(f.Caption), err)
	}
	caption, err := p.inline(f.Caption)
	if err != nil {
		return "", err
	}
	return p.fill("figure", struct {
		ID           string
		Art, Caption template.HTML
	}{f.ID, art, caption})
}
