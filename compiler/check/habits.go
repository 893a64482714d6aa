package check

import (
	"fmt"
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

// What a good instruction does not leave out.
func init() {
	register(Rule{ID: "seam-never-finished", Severity: finding.Warning, Category: "seams", FromAbsence: true, run: neverFinished,
		Purpose: "The allowances of a seam are left raw and open to see.",
		Why:     "Cloth frays. A seam that is not shut inside something is finished, felled or bound, unless the pattern's head says what is done to every seam."})
	register(Rule{ID: "pressed-under-never-stitched", Severity: finding.Error, Category: "seams", FromAbsence: true, ahead: 1, run: neverStitched,
		Purpose: "An edge is pressed under and nothing holds it.",
		Why:     "A crease opens in the wash."})
	register(Rule{ID: "never-marked", Severity: finding.Warning, Category: "order", FromAbsence: true, run: neverMarked,
		Purpose: "A step uses a sign that no step marks, although others are marked.",
		Why:     "The sewist looks for a sign that she was not told to transfer."})
	register(Rule{ID: "mark-without-use", Severity: finding.Warning, Category: "names", FromAbsence: true, ahead: -2, run: markIdle,
		Purpose: "A mark is there in garments that do not use it.",
		Why:     "She marks a pocket place on a garment without pockets: a guard is missing."})
	register(Rule{ID: "button-without-buttonhole", Severity: finding.Warning, Category: "needs", FromAbsence: true, run: noButtonhole,
		Purpose: "Buttons are sewn on and no buttonhole or loop takes them.",
		Why:     "A button that closes something needs a slit or a loop."})
	register(Rule{ID: "never-turned", Severity: finding.Error, Category: "order", FromAbsence: true, run: neverTurned,
		Purpose: "A part is sewn with its right side inside and never turned.",
		Why:     "A flap, a band end or a facing that is not turned shows its seam and its wrong side."})
	register(Rule{ID: "turned-untrimmed", Severity: finding.Advice, Category: "order", FromAbsence: true, run: untrimmed,
		Purpose: "A seam is turned inside and its allowances are never trimmed, graded or clipped.",
		Why:     "Full allowances make a ridge inside, and a curve that is not clipped will not lie flat."})
	register(Rule{ID: "raw-edge-stitched-down", Severity: finding.Warning, Category: "seams", FromAbsence: true, ahead: -1, run: rawStitched,
		Purpose: "An edge is stitched down that was not folded, hemmed, bound or finished before.",
		Why:     "The raw edge frays out of the row of stitching."})
	register(Rule{ID: "fold-line-never-used", Severity: finding.Warning, Category: "names", FromAbsence: true, run: foldIdle,
		Purpose: "A piece has a fold line, and no step folds it there.",
		Why:     "Either a step is missing, or the line is left over."})
	register(Rule{ID: "opening-without-use", Severity: finding.Warning, Category: "order", FromAbsence: true, run: openingIdle,
		Purpose: "An opening is left and closed, and nothing goes through it.",
		Why:     "It was left to turn something or to thread something through; that step is missing."})
	register(Rule{ID: "edge-left-hanging", Severity: finding.Warning, Category: "seams", FromAbsence: true, run: hanging,
		Purpose: "A band is folded over a seam, and its other edge is never caught.",
		Why:     "The inside of the band hangs loose."})
	register(Rule{ID: "basted-elsewhere", Severity: finding.Error, Category: "order", run: bastedElsewhere,
		Purpose: "A part is basted to an edge, and the seam that takes it is another one.",
		Why:     "What is basted in a place is sewn in that place."})
}

// seamDeeds gives where an operation of one of these verbs is done to a seam, or
// to every edge in it.
func (r *run) seamDeeds(s *model.Seam, verbs ...string) condition.Cond {
	c := condition.False
	for op := range r.opsOf(verbs...) {
		for _, o := range op.Objects {
			if o.Seam == s {
				c = r.Space.Or(c, op.Cond)
			}
			if o.Kind == model.ToEdge && takesEdge(s, o.Edge) {
				c = r.Space.Or(c, r.Space.And(op.Cond, o.Cond))
			}
		}
	}
	return c
}

func oneOf(s string, list []string) bool {
	for _, x := range list {
		if x == s {
			return true
		}
	}
	return false
}

func takesEdge(s *model.Seam, e *model.Edge) bool {
	for _, u := range s.Uses() {
		if u.Edge == e {
			return true
		}
	}
	return false
}

func noButtonhole(r *run) {
	for _, n := range r.Notions {
		if len(r.facts.Holes[n]) > 0 || !strings.Contains(lower(n.ID+" "+n.Name), "button") {
			continue
		}
		for _, a := range r.facts.OfNotion(n) {
			if a.Op.Verb == "sew on" {
				r.report(a.Cond, at(a.Op.Span, "no buttonhole for it", fmt.Sprintf("%s is sewn on, and no buttonhole takes it.", n.Name), fmt.Sprintf("Add `buttonhole 1 on EDGE for %s`; for a button that only decorates, name the notion otherwise.", n.ID)))
				break
			}
		}
	}
}
