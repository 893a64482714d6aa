package check

import (
	"fmt"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// turnings is where a piece is turned after a seam: itself, in a part, or with
// everything it is sewn to, through an opening. A part that was made up before it
// was sewn on is not turned by that: it lies between the layers as it was sewn on.
func (r *run) turnings(p *model.Piece, s *model.Seam) condition.Cond {
	c := condition.False
	sewn, goesOn := r.sewnAt(s), r.goesOn(p, s)
	for n, op := range r.Ops() {
		if op.Verb != "turn" && op.Verb != "fold" && op.Verb != "roll" || op.Verb != "turn" && n < sewn {
			continue
		}
		if op.Verb == "turn" && op.Phrase("through") != nil && !goesOn {
			c = r.Space.Or(c, op.Cond)
		}
		for _, o := range op.Objects {
			o.Each(func(t *model.Target) {
				if t.Piece == p || holds(t.Instances, p) {
					c = r.Space.Or(c, r.Space.And(op.Cond, t.Cond))
				}
			})
		}
	}
	return c
}

// goesOn reports whether a part that is made up by a seam is sewn to something else
// later: by another edge, or caught.
func (r *run) goesOn(p *model.Piece, s *model.Seam) bool {
	if !onePiece(s) {
		return false
	}
	for _, o := range r.Seams {
		if o != s && joinsPiece(o, p) && !onePiece(o) && r.sewnAt(o) > r.sewnAt(s) {
			return true
		}
	}
	return false
}

// inside out are the seams after which a part must be turned: an end that is sewn
// to itself, two copies of a piece that lie on each other, a facing on its edge.
func (r *run) insideOut(s *model.Seam) *model.Piece {
	for _, j := range s.Copies {
		if len(j.A) == 0 || len(j.B) == 0 {
			continue
		}
		a, b := j.A[0], j.B[0]
		single := len(j.A) == 1 && len(j.B) == 1
		switch {
		case single && *a == *b && len(a.Instance.Piece.FoldLines) > 0:
			return a.Instance.Piece
		case single && a.Instance.Piece == b.Instance.Piece && a.Instance != b.Instance && a.Edge == b.Edge && a.Instance.Copy != b.Instance.Copy && r.together(a.Instance, b.Instance):
			return a.Instance.Piece
		case len(j.A) == 1 && a.Instance.Piece.WornIn && allOut(j.B):
			return a.Instance.Piece
		case len(j.B) == 1 && b.Instance.Piece.WornIn && allOut(j.A):
			return b.Instance.Piece
		}
	}
	return nil
}

// allOut reports whether none of a row of edges belongs to a piece that is worn
// with its face in.
func allOut(row []*model.EdgeUse) bool {
	for _, u := range row {
		if u.Instance.Piece.WornIn {
			return false
		}
	}
	return true
}

// together reports whether the other edges of two copies go into the same seam, as
// those of a flap do; those of a pocket bag go into two, and those of the front and
// back of a skirt into none.
func (r *run) together(a, b *model.Instance) bool {
	for _, p := range r.Parts {
		hasA, hasB := false, false
		for _, t := range p.Of {
			hasA, hasB = hasA || has(t.Instances, a), hasB || has(t.Instances, b)
		}
		if hasA && hasB && len(p.Edges) > 0 {
			return true // they are one made-up part with an edge of its own
		}
	}
	both := false
	for _, s := range r.Seams {
		for _, j := range s.Copies {
			hasA, hasB := false, false
			for _, u := range j.Uses() {
				hasA, hasB = hasA || u.Instance == a, hasB || u.Instance == b
			}
			if hasA != hasB {
				return false
			}
			both = both || hasA && hasB && oneEdge(s, a, b)
		}
		for _, c := range s.Catching {
			both = both || has(c.Target.Instances, a) && has(c.Target.Instances, b)
		}
	}
	return both
}

// oneEdge reports whether two parts lie on each other in a seam, as the layers of a
// made-up part do. Two that stand one after the other in its row do not.
func oneEdge(s *model.Seam, a, b *model.Instance) bool {
	found := false
	for _, t := range s.Rows() {
		t.Each(func(x *model.Target) { found = found || has(x.Instances, a) && has(x.Instances, b) })
	}
	return found
}

func has(list []*model.Instance, i *model.Instance) bool {
	for _, x := range list {
		if x == i {
			return true
		}
	}
	return false
}

func neverTurned(r *run) {
	reported := map[*model.Piece]condition.Cond{}
	for _, s := range r.Seams {
		p := r.insideOut(s)
		if p == nil {
			continue
		}
		bad := r.unsaid(s, r.Space.Diff(r.Space.Diff(s.Cond, r.turnings(p, s)), reported[p]))
		if !r.possible(bad) {
			continue
		}
		reported[p] = r.Space.Or(reported[p], bad)
		r.report(bad, at(s.Span, "sewn with the right side inside", fmt.Sprintf("%s is sewn with its right side inside and never turned.", Upper(the(p.Name))), fmt.Sprintf("Add `turn %s` after this seam; for a facing `turn %s to inside`.", p.ID, p.ID)))
	}
}

func untrimmed(r *run) {
	for _, s := range r.Seams {
		p := r.insideOut(s)
		if p == nil || catchesNotion(s) {
			continue // beside the tape of a zip the allowances stay as they are
		}
		bad := r.Space.And(s.Cond, r.turnings(p, s))
		cut := []string{"trim", "grade", "miter"}
		if !onePiece(s) || narrow(s) {
			cut = append(cut, "clip", "notch out") // a facing may keep its allowance, and a narrow one is trimmed from the start
		}
		bad = r.Space.Diff(bad, r.seamDeeds(s, cut...))
		r.report(bad, at(s.Span, "full allowances", fmt.Sprintf("%s is turned inside, and its allowances are never trimmed.", Upper(seamName(s))), fmt.Sprintf("Add `trim %s to 1/4in` or `grade %s` before it is turned, and clip its curves.", s.ID, s.ID)))
	}
}

// narrow reports whether the allowance of a seam is no wider than what it would be
// trimmed to: 7 mm (common practice, no source).
func narrow(s *model.Seam) bool {
	const widest = 7
	w, ok := s.Allowance()
	return ok && w.MM() <= widest
}

func catchesNotion(s *model.Seam) bool {
	found := false
	for _, c := range s.Catching {
		c.Target.Each(func(t *model.Target) { found = found || t.Kind == model.ToNotion })
	}
	return found
}
