package check

import (
	"fmt"
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

// Lines inside a piece that are creased, and rows that run along them. The fold of
// a piece that is cut on the fold is such a line: on the cloth it is not to be seen.
func init() {
	register(Rule{ID: "row-along-no-line", Severity: finding.Advice, Category: "order", FromAbsence: true, run: rowAlongNothing,
		Purpose: "A row of stitching runs along the middle of a piece, and nothing marks or creases that line.",
		Why:     "The piece was cut on the fold and opened out. Where its middle is, nobody can see."})
	register(Rule{ID: "crease-never-used", Severity: finding.Advice, Category: "order", FromAbsence: true, run: creaseIdle,
		Purpose: "A crease is pressed along the middle of a piece, and no later step uses it.",
		Why:     "A crease in the middle is pressed to sew, fold or match along it later. That step is missing, or it does not say so."})
}

// middle gives the edge of a piece along which an operation runs, if it is one that
// was laid on the fold.
func middle(op *model.Op) *model.Edge {
	t := along(op)
	if t == nil || t.Edge == nil || len(t.Edge.Fold) == 0 {
		return nil
	}
	return t.Edge
}

func rowAlongNothing(r *run) {
	seen := map[*model.Edge]condition.Cond{}
	for _, op := range r.Ops() {
		e := middle(op)
		if e == nil {
			continue
		}
		if !oneOf(op.Verb, []string{"topstitch", "edgestitch", "stitch"}) {
			seen[e] = r.Space.Or(seen[e], op.Cond)
			continue
		}
		r.report(r.Space.Diff(op.Cond, seen[e]), at(op.Span, "where is it?", fmt.Sprintf("A row runs along the %s of %s, and nothing marks that line.", lower(e.Name), the(e.Piece.Name)),
			fmt.Sprintf("Add `press %s along %s` before, while the piece lies flat.", e.Piece.ID, e.ID)))
	}
}

var crease = expression(`(?i)\b(?:crease|creased|fold|middle|centre|center)\b`)

func creaseIdle(r *run) {
	ops := r.Ops()
	for n, op := range ops {
		e := middle(op)
		if e == nil || op.Verb != "press" {
			continue
		}
		used := condition.False
		for _, later := range ops[n+1:] {
			if middle(later) == e {
				used = r.Space.Or(used, later.Cond)
			}
		}
		if bad := r.Space.Diff(op.Cond, used); r.possible(bad) && !r.creaseInText(e.Piece, op.Step) {
			r.report(bad, at(op.Span, "for what?", fmt.Sprintf("A crease is pressed along the %s of %s, and no later step uses it.", lower(e.Name), the(e.Piece.Name)),
				"Add the row or the fold along it, or say in a later step what is matched to it."))
		}
	}
}

var matched = expression(`(?i)\b(?:meets?|match\w*|level with)\b`)

// creaseInText reports whether the text of a later step speaks of the crease, or the
// same step says what it is matched to.
func (r *run) creaseInText(p *model.Piece, after *model.Step) bool {
	later := map[*model.Step]bool{}
	past := false
	for _, s := range r.Steps() {
		later[s] = past
		past = past || s == after
	}
	for _, x := range r.stepTexts() {
		if x.step == after && crease().MatchString(x.text) && matched().MatchString(x.text) {
			return true
		}
		if later[x.step] && crease().MatchString(x.text) && (strings.Contains(strings.ToLower(x.text), "crease") || worksOn(x.step, p)) {
			return true
		}
	}
	return false
}

// worksOn reports whether an operation of a step touches a piece.
func worksOn(s *model.Step, p *model.Piece) bool { return sidesWorked(s, p) != [3]bool{} }
