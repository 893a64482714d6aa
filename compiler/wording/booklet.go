// Package wording turns a pattern into a booklet: every sentence, table and
// number that a sewist reads, in her language and in both unit systems.
//
// In: a [model.Pattern] and what its reader has chosen. Out: a [booklet.Booklet].
// It decides words and order, never whether the sewing works; the sentences of
// each language stand in a table of the templates folder.
package wording

import (
	"fmt"
	"strings"

	"seamwarden/compiler/assembly"
	"seamwarden/compiler/booklet"
	"seamwarden/compiler/check"
	"seamwarden/compiler/condition"
	"seamwarden/compiler/measure"
	"seamwarden/compiler/model"
)

// writer words one booklet.
type writer struct {
	*model.Pattern
	chosen  condition.Assignment
	valid   condition.Cond // the garments that are left to choose from
	ph      *phrases
	facts   *assembly.Facts
	names   condition.Names
	numbers map[*model.Step]int
	figures int
	ids     map[string]bool
	stepIDs map[*model.Step]string
	metric  bool // the pattern is written in metric units

	gathers      map[*model.Op][]check.DrawnUp // by how much operations gather; see drawnUp
	gathersKnown bool
}

// Booklet words a pattern for the garments that are left when the known values
// of chosen are settled. The error says that the pattern's language has no
// phrases.
func Booklet(p *model.Pattern, chosen condition.Assignment) (*booklet.Booklet, error) {
	ph, err := load(p.Lang)
	if err != nil {
		return nil, err
	}
	w := &writer{Pattern: p, chosen: chosen, ph: ph, facts: assembly.Gather(p), names: check.Names(p), ids: map[string]bool{},
		numbers: map[*model.Step]int{}, stepIDs: map[*model.Step]string{}}
	w.valid = p.Space.Given(p.Valid, chosen)
	w.metric = p.Allow != nil && p.Allow.Unit.System() == measure.Metric
	w.number()
	b := &booklet.Booklet{Lang: ph.Lang, Title: p.Title, Maker: p.Maker, Edition: p.Edition, Scope: w.scope(), Labels: w.labels()}
	b.Cover = w.cover()
	for _, c := range []func() *booklet.Chapter{w.before, w.sizes, w.buy, w.cutting, w.layouts, w.steps, w.terms, w.changes} {
		if ch := c(); ch != nil {
			b.Chapters = append(b.Chapters, *ch)
		}
	}
	return b, nil
}

func (w *writer) labels() booklet.Labels {
	l := w.ph.Labels
	return booklet.Labels{Contents: l["contents"], Continued: l["continued"], Figure: l["figure"], Step: l["step"], Edition: l["edition"],
		Page: l["page"], PageOf: l["page-of"], BackToTop: l["back-to-top"], Views: l["views"]}
}

// scope says in words for which garments the booklet is.
func (w *writer) scope() string {
	for _, v := range w.chosen {
		if v >= 0 {
			return upper(w.Space.WordsFor(w.chosen, w.names, true))
		}
	}
	return ""
}

// there reports whether something belongs to any garment that is left.
func (w *writer) there(c condition.Cond) bool {
	return w.Space.And(w.Space.Given(c, w.chosen), w.valid) != condition.False
}

// when words the garments for which something holds: "" for all that are left.
func (w *writer) when(c condition.Cond) string {
	c = w.Space.Given(c, w.chosen)
	if w.Space.Implies(w.valid, c) {
		return ""
	}
	return upper(w.Space.Words(w.Space.Smallest(c, w.valid), w.names))
}

// id makes a name that is unique in the document and safe as an HTML id.
func (w *writer) id(parts ...string) string {
	base := slug(strings.Join(parts, "-"))
	id := base
	for n := 2; w.ids[id]; n++ {
		id = fmt.Sprintf("%s-%d", base, n)
	}
	w.ids[id] = true
	return id
}

func slug(s string) string {
	var b strings.Builder
	for _, r := range strings.ToLower(s) {
		switch {
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9':
			b.WriteRune(r)
		case b.Len() > 0 && !strings.HasSuffix(b.String(), "-"):
			b.WriteByte('-')
		}
	}
	out := strings.Trim(b.String(), "-")
	if out == "" || out[0] >= '0' && out[0] <= '9' {
		out = "n-" + out
	}
	return strings.Trim(out, "-")
}

func (w *writer) chapter(key string) *booklet.Chapter {
	return &booklet.Chapter{ID: w.id("chapter", key), Title: w.ph.Chapters[key]}
}

func (w *writer) heading(title string) *booklet.Heading {
	return &booklet.Heading{ID: w.id("part", title), Level: 2, Title: title}
}

func para(in []booklet.Inline) *booklet.Paragraph { return &booklet.Paragraph{Text: in} }

// measure words a length of a kind. The author's own system stands first.
func (w *writer) measure(a measure.Measure, kind measure.Kind) booklet.Measure {
	written := a.Unit.System()
	i, m := measure.Print(a.Length, kind, written, measure.English)
	return booklet.Measure{Imperial: i, Metric: m, MetricFirst: written == measure.Metric}
}

func (w *writer) amount(a *model.Amount) []booklet.Inline {
	return []booklet.Inline{w.measure(a.Measure, measure.Detail)}
}

// number gives each step that is left its number and its id.
func (w *writer) number() {
	n := 0
	for _, s := range w.Steps() {
		if w.there(s.Cond) {
			n++
			w.numbers[s] = n
			name := s.ID
			if name == "" {
				name = s.Title.Text
			}
			w.stepIDs[s] = w.id("step", name)
		}
	}
}

func (w *writer) cover() booklet.Cover {
	c := booklet.Cover{About: w.line(w.AboutBody)}
	if w.Level != "" {
		c.Facts = append(c.Facts, booklet.Fact{Name: w.ph.Labels["level"], Value: plain(w.Level)})
	}
	if s := w.sizeRange(); s != "" {
		c.Facts = append(c.Facts, booklet.Fact{Name: w.ph.Labels["sizes"], Value: plain(s)})
	}
	c.Facts = append(c.Facts, w.wearerFacts()...)
	for _, m := range w.Materials {
		if !m.Interfacing && w.there(m.Cond) && m.Suggested != "" {
			c.Facts = append(c.Facts, booklet.Fact{Name: m.Name, Value: plain(m.Suggested)})
		}
	}
	for _, v := range w.Views {
		if !w.there(v.Cond) {
			continue
		}
		x := booklet.CoverView{ID: w.id("view", v.ID), Name: put(w.ph.Before["view"], "v", v.ID), Title: v.Name}
		for _, f := range v.Figures {
			x.Figure = w.figure(f)
			break
		}
		c.Views = append(c.Views, x)
	}
	for _, f := range w.CoverFigures {
		if x := w.figure(f); x != nil {
			c.Views = append(c.Views, booklet.CoverView{ID: w.id("view", w.Title), Figure: x})
		}
	}
	return c
}

func (w *writer) sizeRange() string {
	list := w.sizeList()
	switch {
	case len(list) == 0:
		return ""
	case len(list) == 1:
		return w.Pattern.Sizes.Sizes[list[0]]
	}
	all := w.Pattern.Sizes.Sizes
	return all[list[0]] + " to " + all[list[len(list)-1]]
}

func (w *writer) figure(f *model.Figure) *booklet.Figure {
	if f.Art == nil {
		return nil
	}
	w.figures++
	return &booklet.Figure{ID: w.id("figure", fmt.Sprint(w.figures)), Caption: w.line(f.Body), Art: f.Art}
}
