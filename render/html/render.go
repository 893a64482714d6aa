package html

import (
	"bytes"
	"fmt"
	"html/template"
	"strings"
	"sync"
	"unicode"

	"golang.org/x/text/language"

	"seamwarden/compiler/booklet"
	"seamwarden/templates"
)

// Render sets the booklet as one self-contained HTML file in UTF-8. The error
// says in plain words what in the booklet cannot be set.
func Render(b *booklet.Booklet) ([]byte, error) {
	p, err := newPage(b)
	if err != nil {
		return nil, err
	}
	view, err := p.view()
	if err != nil {
		return nil, err
	}
	text, err := p.fill("page", view)
	if err != nil {
		return nil, err
	}
	return bytes.Map(allowed, []byte(text)), nil
}

// page is one rendering under way.
type page struct {
	doc       *booklet.Booklet
	templates *template.Template
	ids       *register
	levels    *levels
	colours   palette
	topID     string
	label     string // id of the nearest heading, for what has no name of its own
	inLink    bool
}

// pageView is what the page template places.
type pageView struct {
	Lang, Dir, Name           string
	Policy                    string
	Style                     template.CSS
	First                     *booklet.Chapter // where the skip link leads; nil if there is no chapter
	Cover, Contents, Chapters template.HTML
}

var loadTemplates = sync.OnceValues(func() (*template.Template, error) {
	return template.ParseFS(templates.HTML, "html/*.html")
})

func newPage(b *booklet.Booklet) (*page, error) {
	t, err := loadTemplates()
	if err != nil {
		return nil, fmt.Errorf("the page templates cannot be read: %w", err)
	}
	if err := checkWords(b); err != nil {
		return nil, err
	}
	ids, err := collectIDs(b)
	if err != nil {
		return nil, err
	}
	return &page{doc: b, templates: t, ids: ids, colours: palette{}, topID: ids.fresh("top")}, nil
}

// view sets all parts of the page. The style comes last, because the drawings
// say which colours it must define.
func (p *page) view() (v pageView, err error) {
	v.Lang, v.Name = p.doc.Lang, p.name()
	if v.Dir, err = direction(p.doc.Lang); err != nil {
		return v, err
	}
	if v.Cover, err = p.cover(); err != nil {
		return v, fmt.Errorf("cover: %w", err)
	}
	if v.Contents, err = p.contents(); err != nil {
		return v, err
	}
	if v.Chapters, err = p.chapters(); err != nil {
		return v, err
	}
	if len(p.doc.Chapters) > 0 {
		v.First = &p.doc.Chapters[0]
	}
	v.Style, v.Policy, err = p.style()
	return v, err
}

// name is the title of the browser's window.
func (p *page) name() string {
	parts := []string{p.doc.Title}
	for _, s := range []string{p.doc.Scope, p.doc.Maker} {
		if s != "" {
			parts = append(parts, s)
		}
	}
	return strings.Join(parts, " – ")
}

func (p *page) chapters() (template.HTML, error) {
	var out strings.Builder
	for i := range p.doc.Chapters {
		c := &p.doc.Chapters[i]
		s, err := p.chapter(c)
		if err != nil {
			return "", fmt.Errorf("chapter %q: %w", c.Title, err)
		}
		out.WriteString(string(s))
	}
	return template.HTML(out.String()), nil
}

func (p *page) chapter(c *booklet.Chapter) (template.HTML, error) {
	titleID := p.ids.fresh(c.ID + "-title")
	p.label, p.levels = titleID, &levels{base: 2}
	body, err := p.blocks(c.Blocks)
	if err != nil {
		return "", err
	}
	return p.fill("chapter", struct {
		ID, Title, TitleID, TopID, BackToTop string
		Body                                 template.HTML
	}{c.ID, c.Title, titleID, p.topID, p.doc.Labels.BackToTop, body})
}

// fill places finished values in the template of that name. A value of type
// template.HTML has been escaped already; every other one is escaped there.
func (p *page) fill(name string, values any) (template.HTML, error) {
	var out strings.Builder
	if err := p.templates.ExecuteTemplate(&out, name, values); err != nil {
		return "", fmt.Errorf("the page template %q cannot be filled: %w", name, err)
	}
	return template.HTML(out.String()), nil
}

// direction is "ltr" or "rtl", from the script in which the language is written.
func direction(lang string) (string, error) {
	tag, err := language.Parse(lang)
	if err != nil {
		return "", fmt.Errorf("%q is not the tag of a language, such as en or pt-BR", lang)
	}
	script, _ := tag.Script()
	switch script.String() {
	case "Arab", "Hebr", "Syrc", "Thaa", "Nkoo", "Adlm", "Rohg":
		return "rtl", nil
	}
	return "ltr", nil
}

// allowed replaces what the HTML Standard forbids in a document: control
// characters other than white space, and noncharacters (section 13.2.3.5,
// "Preprocessing the input stream"). Bytes that are not UTF-8 arrive as U+FFFD.
func allowed(r rune) rune {
	switch {
	case r == '\t' || r == '\n' || r == '\r':
		return r
	case unicode.IsControl(r), r >= 0xFDD0 && r <= 0xFDEF, r&0xFFFE == 0xFFFE:
		return unicode.ReplacementChar
	}
	return r
}
