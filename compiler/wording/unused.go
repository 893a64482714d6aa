package wording

import (
	"fmt"
	"strings"

	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

// UnusedWords finds the terms of the glossary that nothing in the pattern uses:
// no text, title, name, figure or caution, no sentence of an operation, and no
// explanation of another term. Guards do not matter: a term may be there for one
// garment only. A file in which many words go unused is the glossary of a house,
// carried from pattern to pattern: of it nothing is said.
func UnusedWords(p *model.Pattern) (all []finding.Finding) {
	if len(p.Terms) == 0 {
		return nil
	}
	text := everyText(p)
	var ph *phrases
	for _, t := range p.Terms {
		if holdsTerm(text, t.Word.Text) || explainsWith(p, t) {
			continue
		}
		if ph == nil { // most patterns use each term in so many words
			ph, _ = load(p.Lang)
		}
		if ph != nil && holdsTerm(printedWords(p, ph), t.Word.Text) {
			continue
		}
		all = append(all, finding.Finding{Rule: "word-never-used", Severity: finding.Advice, Place: finding.Place{Span: t.Word.Span, Label: "explained, and not used"},
			Headline: fmt.Sprintf("The glossary explains “%s”, and nothing in the pattern uses the word.", t.Word.Text),
			Why:      "Either the step that used it is missing, or the word is left over; the booklet prints only words that it uses.",
			Help:     "See whether a step has been lost; if not, take the word out."})
	}
	return fewOf(p, all)
}

// fewOf keeps what is found in a file if it is one word, or at most one in four.
func fewOf(p *model.Pattern, all []finding.Finding) (kept []finding.Finding) {
	words, unused := map[string]int{}, map[string]int{}
	for _, t := range p.Terms {
		words[t.Word.Span.File]++
	}
	for _, f := range all {
		unused[f.Place.File]++
	}
	for _, f := range all {
		if n := unused[f.Place.File]; n == 1 || 4*n <= words[f.Place.File] {
			kept = append(kept, f)
		}
	}
	return kept
}

// everyText is all that the author wrote, in small letters, but for the glossary.
func everyText(p *model.Pattern) string {
	var all strings.Builder
	all.Grow(32 << 10) // a large pattern has so much
	put := func(s string) {
		all.WriteByte(' ')
		all.WriteString(s)
	}
	glossary := map[*model.Prose]bool{}
	for _, t := range p.Terms {
		glossary[t.Body] = true
	}
	for _, c := range p.Changes {
		glossary[c.Body] = true
	}
	for _, x := range p.Proses {
		if !glossary[x] {
			put(x.Text)
		}
	}
	for _, s := range p.Sections {
		put(s.Title.Text)
		for _, st := range s.Steps {
			put(st.Title.Text)
		}
	}
	for _, op := range p.Ops() {
		put(op.Verb)
		for _, ph := range op.Phrases {
			put(ph.Word)
		}
	}
	namesOfThings(p, put)
	return strings.ToLower(all.String())
}

// namesOfThings gives what the things of a pattern are called.
func namesOfThings(p *model.Pattern, put func(string)) {
	for _, x := range p.Pieces {
		put(x.Name)
		for _, e := range x.Edges {
			put(e.Name)
		}
		for _, m := range x.Marks {
			put(m.Name)
		}
	}
	for _, x := range p.Seams {
		put(x.Name)
	}
	for _, x := range p.Notions {
		put(x.Name)
		put(strings.Join(x.Parts, " "))
	}
	for _, x := range p.Materials {
		put(x.Name + " " + x.Suggested)
	}
	for _, x := range p.Supplies {
		put(x.Name)
	}
	for _, x := range p.Parts {
		put(x.Name)
	}
	for _, x := range p.Shapings {
		put(x.Name + " " + x.Kind)
	}
	for _, x := range p.Gaps {
		put(x.Name)
	}
	for _, x := range p.Views {
		put(x.Name)
	}
	for _, x := range p.Options {
		put(x.Name)
	}
	for _, x := range p.Choices {
		put(x.Name)
		for _, v := range x.Values {
			put(v.Name)
		}
	}
	if p.Finish != nil {
		put(p.Finish.With)
	}
	put(p.Title + " " + p.About)
}

// printedWords are the sentences that the operations of a pattern are printed
// with, without what they act on.
func printedWords(p *model.Pattern, ph *phrases) string {
	var all strings.Builder
	put := func(s string) { all.WriteString(" " + strings.ToLower(s)) }
	for _, op := range p.Ops() {
		put(ph.Operations[op.Verb])
		for _, x := range op.Phrases {
			put(ph.Techniques[x.Word])
		}
	}
	if p.Finish != nil {
		put(ph.Techniques[p.Finish.With])
	}
	return all.String()
}

// explainsWith reports whether another term is explained with this one.
func explainsWith(p *model.Pattern, t *model.Term) bool {
	for _, other := range p.Terms {
		if other != t && holdsTerm(strings.ToLower(other.Body.Text), t.Word.Text) {
			return true
		}
	}
	return false
}

// holdsTerm reports whether a text, in small letters, holds a term, also with the
// endings of English. What stands in brackets behind it belongs to the explanation.
func holdsTerm(text, term string) bool {
	t := strings.ToLower(term)
	if i := strings.IndexByte(t, '('); i > 0 {
		t = t[:i]
	}
	t = strings.TrimPrefix(strings.TrimSpace(t), "to ")
	for _, form := range []string{t, strings.ReplaceAll(t, "-", " "), strings.ReplaceAll(t, " ", "-")} {
		if strings.Contains(text, form) {
			return true
		}
	}
	if past := pastForms[t]; past != "" && strings.Contains(text, past) {
		return true
	}
	for _, end := range []string{"e", "y", "s", "ing", "ed"} {
		if stem := strings.TrimSuffix(t, end); stem != t && len(stem) > 2 && strings.Contains(text, stem) {
			return true
		}
	}
	return false
}

// pastForms are the pasts of verbs that change their vowel.
var pastForms = map[string]string{"bind": "bound", "wind": "wound", "stick": "stuck", "draw": "drawn", "lie": "lay", "cut out": "cut"}
