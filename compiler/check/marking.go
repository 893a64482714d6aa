package check

import (
	"fmt"
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

// Marks that nobody transfers, and places that nobody uses.
func init() {
	register(Rule{ID: "mark-never-transferred", Severity: finding.Advice, Category: "names", FromAbsence: true, ahead: -1, run: untransferred,
		Purpose: "A piece has a mark that no step tells the sewist to transfer, although others of its kind are transferred.",
		Why:     "Where some notches and dots are named in a step, she takes the list for complete and leaves out the rest."})
	register(Rule{ID: "place-never-taken", Severity: finding.Warning, Category: "names", FromAbsence: true, ahead: -2, run: placeIdle,
		Purpose: "A place is marked on a piece, and no step puts anything there.",
		Why:     "The step that lays something at the mark is missing, or says nothing of it; the sewist looks for what belongs there."})
}

// untransferred compares the marks on edges with one another, and those inside
// pieces; many patterns mark the ones and leave the others to be snipped in cutting.
func untransferred(r *run) {
	marked, used, _ := r.signs()
	habit := map[bool]bool{}
	for _, p := range r.Pieces {
		for _, m := range p.Marks {
			if marked[m] != condition.False {
				habit[onAnEdge(m)] = true
			}
		}
	}
	var first *model.Mark
	var names []string
	var f finding.Finding
	all := condition.False
	for _, p := range r.Pieces {
		for _, m := range p.Marks {
			inside := !onAnEdge(m)
			bad := r.Space.And(r.cutOut(p), m.Cond)
			if marked[m] != condition.False || !habit[!inside] || inside && used[m] != condition.False || !r.possible(bad) {
				continue // a mark inside that is used is told of where it is used
			}
			all = r.Space.Or(all, bad)
			names = append(names, fmt.Sprintf("%s of %s", m.Name, the(p.Name)))
			if first == nil {
				first, f = m, at(m.Span, "never transferred", "", fmt.Sprintf("Add `mark %s.%s` to the step that marks the others, or take the mark out.", p.ID, m.ID))
				continue
			}
			f = also(f, m.Span, "nor this")
		}
	}
	if first == nil {
		return
	}
	f.Headline = fmt.Sprintf("No step marks the %s, although others are marked.", listed(names))
	r.report(all, f)
}

// cutOut is where a piece is there to be marked.
func (r *run) cutOut(p *model.Piece) condition.Cond {
	c := condition.False
	for _, i := range p.Cloths() {
		c = r.Space.Or(c, r.Space.And(p.Cond, i.Cond))
	}
	return c
}

func onAnEdge(m *model.Mark) bool { return m.On != nil || m.Between }

// placeIdle looks for marks that are called a place. A text that speaks of the
// place uses it as well as an operation does. With the same mark on two pieces, one
// of them may be there to be met by the other. Whether a button or a snap is put on
// is told where it is listed.
func placeIdle(r *run) {
	marked, used, _ := r.signs()
	taken := map[string]bool{}
	for _, p := range r.Pieces {
		for _, m := range p.Marks {
			taken[m.ID] = taken[m.ID] || used[m] != condition.False
		}
	}
	for _, p := range r.Pieces {
		for _, m := range p.Marks {
			what, isPlace := strings.CutSuffix(m.ID, "-place")
			if !isPlace || taken[m.ID] || marked[m] == condition.False || r.ofNotion(what) {
				continue
			}
			bad := r.Space.Diff(r.Space.All(p.Cond, m.Cond, marked[m]), r.spokenOf(strings.ReplaceAll(m.ID, "-", " ")))
			r.report(bad, at(m.Span, "nothing is put here", fmt.Sprintf("The %s of %s is marked, and no step puts anything there.", lower(m.Name), the(p.Name)),
				fmt.Sprintf("Say in the step that lays it there: … `at %s`.", m.ID)))
		}
	}
}

// spokenOf is where the text of a step names something, given in small letters.
func (r *run) spokenOf(name string) (c condition.Cond) {
	c = condition.False
	texts := r.stepTexts()
	for i, small := range r.smallTexts() {
		if strings.Contains(small, name) {
			c = r.Space.Or(c, texts[i].cond)
		}
	}
	return c
}

// ofNotion reports whether a notion, or a half of one, is called so.
func (r *run) ofNotion(what string) bool {
	for _, n := range r.Notions {
		if n.ID == what || oneOf(what, n.Parts) {
			return true
		}
	}
	return false
}
