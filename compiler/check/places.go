package check

import (
	"fmt"
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "place-never-taken", Severity: finding.Advice, Category: "names", FromAbsence: true, ahead: -6, run: placeIdle,
		Purpose: "A place is marked inside a piece, and nothing is ever put there.",
		Why:     "The step that sews or sets something there may have been lost; or the mark is left over."})
}

// placeIdle looks for marks that are called a place and that a step marks. A text
// that speaks of the place uses it as well as an operation does. Notches and points
// are matched by eye, and nothing need name them.
func placeIdle(r *run) {
	marked, used, _ := r.signs()
	var texts []stepText
	for _, p := range r.Pieces {
		for _, m := range p.Marks {
			name := strings.ReplaceAll(lower(m.Name), "-", " ")
			if m.On != nil || m.Between || !strings.HasSuffix(name, " place") {
				continue
			}
			if texts == nil {
				texts = r.stepTexts()
			}
			bad := r.Space.And(r.Space.Diff(marked[m], r.Space.Or(used[m], r.namedIn(texts, name))), r.Valid)
			if used[m] != condition.False || r.found[bad] {
				continue // where it is used in some garments, mark-without-use speaks
			}
			r.report(bad, at(m.Span, "nothing goes here", fmt.Sprintf("The %s of %s is marked, and nothing is put there.", name, the(p.Name)),
				"Name it in the operation: `at "+m.Name+"`; or take the mark out."))
		}
	}
}

// namedIn is where a text names something.
func (r *run) namedIn(texts []stepText, name string) (c condition.Cond) {
	c = condition.False
	for _, t := range texts {
		if strings.Contains(strings.ToLower(t.text), name) {
			c = r.Space.Or(c, t.cond)
		}
	}
	return c
}
