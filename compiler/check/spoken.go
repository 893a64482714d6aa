package check

import (
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

// written lists every text that tells the sewist of the garment: those of the
// steps, their titles and figures, the cautions, and the names of tools. A text of
// a step counts only where something is done in the step; a step without work has
// a rule of its own.
func (r *run) written() []stepText {
	if r.index.told == nil {
		r.index.told = r.allWritten()
	}
	return r.index.told
}

// smallWritten gives the same texts in small letters.
func (r *run) smallWritten() []string {
	if r.index.smallTold == nil {
		r.index.smallTold = r.smallTexts()
		for _, t := range r.written()[len(r.index.smallTold):] {
			r.index.smallTold = append(r.index.smallTold, strings.ToLower(t.text))
		}
	}
	return r.index.smallTold
}

func (r *run) allWritten() (all []stepText) {
	for _, t := range r.stepTexts() {
		t.cond = r.Space.And(t.cond, r.worked(t.step))
		all = append(all, t)
	}
	add := func(s *model.Step, p *model.Prose, c condition.Cond) {
		if p != nil {
			all = append(all, stepText{s, p.Text, c, placesIn(p)})
		}
	}
	caution := func(s *model.Step, c *model.Caution) {
		if c.Body != nil {
			add(s, c.Body, c.Cond)
		} else {
			all = append(all, heading(s, c.Text, c.Cond))
		}
	}
	for _, s := range r.Steps() {
		work := r.worked(s)
		all = append(all, heading(s, s.Title, r.Space.And(s.Cond, work)))
		for _, i := range s.Items {
			switch x := i.(type) {
			case *model.Figure:
				add(s, x.Body, r.Space.And(x.Cond, work))
			case *model.Caution:
				caution(s, x)
			}
		}
	}
	for _, c := range r.Cautions {
		caution(nil, c)
	}
	for _, s := range r.Sections {
		for _, c := range s.Cautions {
			caution(nil, c)
		}
		for _, n := range s.Notes {
			add(nil, n, n.Cond)
		}
	}
	for _, s := range r.Supplies {
		all = append(all, heading(nil, model.Text{Text: s.Name, Span: s.Span}, s.Cond))
	}
	return all
}

// heading is a text that is pointed at as a whole.
func heading(s *model.Step, t model.Text, c condition.Cond) stepText {
	return stepText{s, t.Text, c, func(int, int) finding.Span { return t.Span }}
}

// worked is where something is done in a step; everywhere, if it only speaks.
func (r *run) worked(s *model.Step) condition.Cond {
	c, ops := condition.False, 0
	for _, i := range s.Items {
		switch x := i.(type) {
		case *model.Op:
			ops++
			c = r.Space.Or(c, x.Cond)
		case *model.TryOn:
			c = r.Space.Or(c, x.Cond)
		}
	}
	if ops == 0 {
		return condition.True
	}
	return c
}

// supposing are words by which a sentence speaks of what may not be there, or of
// one of several.
var supposing = phrases{"if", "unless", "whether", "without", "view", "views", "instead", "as for", "like", "option", "options", "leave out", "left out", "chose", "chosen",
	"where there", "where you", "where your", "where one", "where it has", "where it is there", "when there", "when you", "when your", "when one", "when it has", "when it is there"}

// deniedThere are words that say that something is not there.
var deniedThere = phrases{"not", "no", "never", "none", "nothing", "neither", "nor"}

// sentenceAt gives the sentence of a text in which a place lies.
func sentenceAt(text string, at int) string {
	from, to := 0, len(text)
	for _, end := range []string{". ", "! ", "? ", ".\n", "\n\n"} {
		if i := strings.LastIndex(text[:at], end); i >= 0 {
			from = max(from, i+len(end))
		}
		if i := strings.Index(text[at:], end); i >= 0 {
			to = min(to, at+i+1)
		}
	}
	return text[from:to]
}
