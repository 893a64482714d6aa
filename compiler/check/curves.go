package check

import (
	"fmt"
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/compiler/outline"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "curve-never-clipped", Severity: finding.Advice, Category: "seams", FromAbsence: true, ahead: -3, run: unclipped,
		Purpose: "The seam of a curved edge is never clipped or notched.",
		Why:     "The edge of an allowance is shorter or longer than the curve that it is turned along. Without snips or wedges it pulls or lies in folds."})
}

// unclipped takes an edge for curved if it is called so and the seam is turned, or
// if it is steadied before it is turned or sewn to a neck: a straight edge needs no
// staystitching there, unless it is cut on the slant. Where the edge is drawn, the drawing
// tells.
func unclipped(r *run) {
	for _, s := range r.Seams {
		curved, e := r.curved(s)
		if e == nil || narrowTo(r, s) {
			continue
		}
		bad := r.Space.And(s.Cond, curved)
		bad = r.unsaid(s, r.Space.Diff(bad, r.whereDone(r.deeds().seam[s], "clip", "notch out", "reinforce")))
		r.report(bad, at(s.Span, "never clipped", fmt.Sprintf("The %s of %s is curved, and %s is never clipped.", edgeCalled(e.Name), the(e.Piece.Name), seamName(s)),
			r.clipOrNotch(s, e)))
	}
}

// curved gives where a seam runs along an edge that is certainly curved, and that
// edge.
func (r *run) curved(s *model.Seam) (c condition.Cond, found *model.Edge) {
	p := r.insideOut(s)
	turned := condition.False
	if p != nil {
		turned = r.turnings(p, s)
	}
	for _, u := range s.Uses() {
		e := u.Edge
		where := condition.False
		switch {
		case turned != condition.False && r.isCurved(e) != condition.False:
			where = r.Space.And(turned, r.isCurved(e))
		case turned != condition.False && !onTheSlant(e) && len(e.Piece.Outlines) == 0:
			where = r.Space.And(turned, r.whereDone(r.deeds().edge[e], "staystitch"))
		case wordIn(e.ID, "neck", "neckline"):
			where = r.whereDone(r.deeds().edge[e], "staystitch")
		}
		if where != condition.False && found == nil {
			found = e
		}
		c = r.Space.Or(c, where)
	}
	return
}

// onTheSlant reports whether the name of an edge tells another reason to steady it: a
// slanting pocket edge is straight and lies on the bias, where cloth gives.
func onTheSlant(e *model.Edge) bool {
	return wordIn(e.ID, "pocket", "slant", "slanted", "slanting", "bias", "mouth", "diagonal")
}

// clearlyBent is how many degrees the curves of a drawn edge turn, one way, before its
// allowance has to give (common practice, no source). Corners are trimmed, not clipped.
const clearlyBent = 30

// isCurved gives where an edge is curved: as it is drawn, or by its name where it is not.
func (r *run) isCurved(e *model.Edge) condition.Cond {
	curved, left := condition.False, condition.True
	for _, d := range e.Piece.Outlines {
		if d.Art == nil {
			continue
		}
		bent, _ := r.inOutline(d, func(o *outline.Outline) bool {
			drawn := o.Edge(e.ID)
			if drawn == nil || drawn.Form() == outline.Straight {
				return false
			}
			out, in := drawn.Bending()
			return max(out, in) >= clearlyBent
		})
		curved = r.Space.Or(curved, r.Space.And(d.Cond, bent))
		left = r.Space.Diff(left, d.Cond)
	}
	if calledCurved(e) {
		curved = r.Space.Or(curved, left)
	}
	return curved
}

// clipOrNotch says what to do, by the drawing where there is one.
func (r *run) clipOrNotch(s *model.Seam, e *model.Edge) string {
	for _, d := range e.Piece.Outlines {
		if d.Art == nil || len(d.Art.Sizes) == 0 || d.Art.Sizes[0].Edge(e.ID) == nil {
			continue
		}
		switch d.Art.Sizes[0].Edge(e.ID).Form() {
		case outline.Hollow:
			return fmt.Sprintf("It is drawn hollow: add `clip %s` before it is turned or pressed.", s.ID)
		case outline.Convex:
			return fmt.Sprintf("It is drawn bulging: add `notch out %s` before it is turned or pressed.", s.ID)
		}
	}
	return fmt.Sprintf("Add `clip %s` where the curve is hollow, `notch out %s` where it stands out, before it is turned or pressed.", s.ID, s.ID)
}

// calledCurved reports whether the name of an edge says that it is curved. Round
// says so only beside an edge that is called straight; else it may mean all round.
func calledCurved(e *model.Edge) bool {
	if wordIn(e.ID, "curve", "curved", "scallop", "scallops", "armhole") {
		return true
	}
	for _, o := range e.Piece.Edges {
		if wordIn(e.ID, "round") && wordIn(o.ID, "straight") {
			return true
		}
	}
	return false
}

func wordIn(id string, words ...string) bool {
	for _, w := range strings.Split(id, "-") {
		if oneOf(w, words) {
			return true
		}
	}
	return false
}

// narrowTo reports whether a seam is trimmed to so little that it gives by itself:
// 3 mm (common practice, no source).
func narrowTo(r *run, s *model.Seam) bool {
	const gives = 3
	if w, ok := s.Allowance(); ok && w.MM() <= gives {
		return true
	}
	for _, d := range r.deeds().seam[s] {
		if a := amountOf(d.op); a != nil && d.op.Verb == "trim" && a.Length.MM() <= gives {
			return true
		}
	}
	return false
}
