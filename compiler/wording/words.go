package wording

import (
	"strings"

	"seamwarden/compiler/model"
)

// usedWords gives a test for whether the booklet uses a term, in an operation or
// in a text, also with the endings of English.
func (w *writer) usedWords() func(string) bool {
	var all strings.Builder
	put := func(s string) { all.WriteString(" " + strings.ToLower(s)) }
	for _, s := range w.Sections {
		for _, n := range s.Notes {
			put(n.Text)
		}
		for _, st := range s.Steps {
			if !w.there(st.Cond) {
				continue
			}
			put(st.Title.Text)
			for _, i := range st.Items {
				if !w.there(i.Where()) {
					continue
				}
				switch x := i.(type) {
				case *model.Op:
					put(x.Verb)
					put(w.ph.Operations[x.Verb])
					for _, t := range x.Objects {
						put(w.thing(t, false))
					}
					for _, p := range x.Phrases {
						put(p.Word)
						put(w.ph.Techniques[p.Word])
					}
					if x.As != nil {
						put(x.As.Text)
					}
				case *model.Prose:
					put(x.Text)
				case *model.Caution:
					put(x.Text.Text)
				case *model.TryOn:
					put(x.Text.Text)
				}
			}
		}
	}
	for _, p := range w.Pieces {
		put(p.Name)
	}
	text := all.String()
	return func(term string) bool {
		t := strings.ToLower(term)
		if strings.Contains(text, t) {
			return true
		}
		return strings.HasSuffix(t, "e") && strings.Contains(text, strings.TrimSuffix(t, "e")+"ing")
	}
}
