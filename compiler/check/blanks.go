package check

import (
	"fmt"
	"slices"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// blanks gathers the seams whose lengths are not known, by the reason: a piece has no
// drawing, or what of an edge is sewn, or taken up, is not known.
type blanks struct{ undrawn, unclear []*model.Seam }

// note looks at the rows of a seam in the garments that have it.
func (b *blanks) note(r *run, s *model.Seam, rows []rowLengths) {
	if r.spoken[s] != condition.False || slices.Contains(b.undrawn, s) || slices.Contains(b.unclear, s) {
		return
	}
	_, lost := r.fullnesses(s)
	missing := r.possible(r.Space.And(s.Cond, lost)) || len(rows) == 0
	for _, l := range rows {
		missing = missing || r.possible(l.cond) && !l.known()
	}
	switch {
	case !missing || r.outlineReported(s):
	case r.allDrawn(s):
		b.unclear = append(b.unclear, s)
	default:
		b.undrawn = append(b.undrawn, s)
	}
}

// allDrawn reports whether every piece of a seam has an outline, in all its garments.
func (r *run) allDrawn(s *model.Seam) bool {
	return !slices.ContainsFunc(s.Uses(), func(u *model.EdgeUse) bool {
		left := r.Space.And(s.Cond, u.Cond)
		for _, d := range u.Edge.Piece.Outlines {
			if d.Art != nil {
				left = r.Space.Diff(left, d.Cond)
			}
		}
		return r.possible(left)
	})
}

// outlineReported reports whether something is found in a drawing that a seam needs, or
// of a mark at which it ends: then that is to be mended first.
func (r *run) outlineReported(s *model.Seam) bool {
	for _, u := range s.Uses() {
		for _, d := range u.Edge.Piece.Outlines {
			if d.Art == nil || r.spoken[d] != condition.False {
				return true
			}
		}
		for _, m := range u.Edge.Piece.Marks {
			if r.spoken[m] != condition.False {
				return true
			}
		}
	}
	return false
}

// list says of which seams nothing is known. What is declared of a length, and could not
// be compared, is said of each seam by itself.
func (b *blanks) list(r *run) {
	for _, l := range []struct {
		seams []*model.Seam
		where string
	}{
		{b.undrawn, "where a piece has no outline"},
		{b.unclear, "where it is not known what of an edge is sewn or taken up"},
	} {
		var rest []*model.Seam
		for _, s := range l.seams {
			if !r.declaredLength(s) {
				rest = append(rest, s)
			}
		}
		if len(rest) > 0 {
			r.out = append(r.out, unchecked(model.Unchecked{What: fmt.Sprintf("the lengths of the two rows of %s, %s", theSeams(rest), l.where), Span: rest[0].Sentence}))
		}
	}
}

// declaredLength lists the ease or the gathers of a seam as not checked; false if it
// declares none.
func (r *run) declaredLength(s *model.Seam) bool {
	what := ""
	switch {
	case s.Ease != nil:
		what = "the ease of " + seamName(s)
	case s.Gathered:
		what = "how " + seamName(s) + " is gathered"
	default:
		return false
	}
	r.out = append(r.out, unchecked(model.Unchecked{What: what, Span: s.Sentence}))
	return true
}

// undrawn lists what is declared of lengths in a pattern without outlines.
func (r *run) undrawn() {
	for _, s := range r.Seams {
		r.declaredLength(s)
	}
}
