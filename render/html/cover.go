package html

import (
	"html/template"

	"seamwarden/compiler/booklet"
)

type coverView struct {
	TopID, Title, Maker, Scope string
	Edition, EditionWord       string
	About                      template.HTML
	Facts                      []factView
	Views                      []viewView
	ViewsWord                  string
}

type factView struct {
	Name  string
	Value template.HTML
}

type viewView struct {
	ID, Name, Title string
	Figure          template.HTML
}

// cover sets the first page: what the pattern is, and its views.
func (p *page) cover() (template.HTML, error) {
	about, err := p.inline(p.doc.Cover.About)
	if err != nil {
		return "", err
	}
	v := coverView{
		TopID: p.topID, Title: p.doc.Title, Maker: p.doc.Maker, Scope: p.doc.Scope,
		Edition: p.doc.Edition, EditionWord: p.doc.Labels.Edition,
		About: about, ViewsWord: p.doc.Labels.Views,
	}
	for _, f := range p.doc.Cover.Facts {
		value, err := p.inline(f.Value)
		if err != nil {
			return "", err
		}
		v.Facts = append(v.Facts, factView{f.Name, value})
	}
	for _, c := range p.doc.Cover.Views {
		set, err := p.coverView(c)
		if err != nil {
			return "", err
		}
		v.Views = append(v.Views, set)
	}
	return p.fill("cover", v)
}

func (p *page) coverView(c booklet.CoverView) (viewView, error) {
	v := viewView{ID: c.ID, Name: c.Name, Title: c.Title}
	if c.Figure == nil {
		return v, nil
	}
	var err error
	v.Figure, err = p.figure(c.Figure)
	return v, err
}
