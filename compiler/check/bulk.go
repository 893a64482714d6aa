package check

import (
	"fmt"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "shut-in-untrimmed", Severity: finding.Advice, Category: "seams", FromAbsence: true, run: bulky,
		Purpose: "A band shuts in the allowances of a seam at their full width, in a pattern that trims or grades the others that are shut in.",
		Why:     "Two full allowances and the turned edge of the band end on one line, which shows as a ridge outside."})
}

// bulky looks at the seams that a folded band shuts in. Whether the pattern trims
// such seams is seen from those that are turned.
func bulky(r *run) {
	habit := false
	for _, s := range r.Seams {
		if r.insideOut(s) == nil || ownEnd(s) || catchesNotion(s) || r.turnings(r.insideOut(s), s) == condition.False {
			continue
		}
		if r.narrowed(s) == condition.False {
			return
		}
		habit = true
	}
	if !habit {
		return
	}
	onto := r.sewnDownOn()
	for _, s := range r.Seams {
		band, shut := r.bandOver(s, onto[s])
		if band == nil {
			continue
		}
		bad := r.unsaid(s, r.Space.Diff(shut, r.narrowed(s)))
		r.report(bad, at(s.Span, "full allowances", fmt.Sprintf("%s shuts in the allowances of %s, and they are never trimmed or graded as others are.", Upper(the(band.Name)), seamName(s)),
			fmt.Sprintf("Add `grade %s` after it is sewn.", s.ID)))
	}
}

// narrowed is where the allowances of a seam are made narrower.
func (r *run) narrowed(s *model.Seam) condition.Cond {
	return r.whereDone(r.deeds().seam[s], "trim", "grade", "miter", "fell")
}

// ownEnd reports whether a seam sews the end of a piece to itself.
func ownEnd(s *model.Seam) bool {
	for _, j := range s.Copies {
		if len(j.A) != 1 || len(j.B) != 1 || *j.A[0] != *j.B[0] {
			return false
		}
	}
	return len(s.Copies) > 0
}

// sewnDownOn lists for each seam what is sewn down on it: caught by a row in its
// groove or beside it, or slipstitched to it.
func (r *run) sewnDownOn() map[*model.Seam][]deed {
	onto := map[*model.Seam][]deed{}
	each := func(n int, op *model.Op, seams, edges []*model.Target) {
		for _, s := range seams {
			for _, e := range edges {
				e.Each(func(x *model.Target) {
					if s.Seam != nil {
						onto[s.Seam] = append(onto[s.Seam], deed{n, op, x, r.Space.And(op.Cond, x.Cond)})
					}
				})
			}
		}
	}
	for n, op := range r.Ops() {
		if p := op.Phrase("catching"); p != nil && !op.Row.Sews {
			each(n, op, op.Objects, p.Targets)
		}
		if p := op.Phrase("to"); p != nil && (op.Verb == "slipstitch" || op.Verb == "fell") {
			each(n, op, p.Targets, op.Objects)
		}
	}
	return onto
}

// bandOver gives the piece of a seam whose other edge is sewn down on the same seam,
// and where.
func (r *run) bandOver(s *model.Seam, onto []deed) (band *model.Piece, c condition.Cond) {
	c = condition.False
	for _, d := range onto {
		p, e := d.on.Piece, d.on.Edge
		if p != nil && e != nil && rowsHave(s, p) && !takesEdge(s, e) && len(p.FoldLines) > 0 {
			band, c = p, r.Space.Or(c, d.cond)
		}
	}
	return
}
