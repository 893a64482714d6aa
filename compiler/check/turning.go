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

// stitchedDown lists what a row fixes: the edge that it runs along, what it catches
// on the other side, and the stretch of an edge between two marks.
func stitchedDown(op *model.Op) (all []*model.Target) {
	if oneOf(op.Verb, []string{"edgestitch", "slipstitch", "fell"}) {
		all = append(all, op.Objects...)
	}
	if op.Verb == "topstitch" {
		for _, o := range op.Objects {
			if o.From != nil && o.To != nil {
				all = append(all, o)
			}
		}
	}
	if p := op.Phrase("catching"); p != nil && !op.Row.Sews && oneOf(op.Verb, []string{"edgestitch", "topstitch", "ditch", "stitch"}) {
		all = append(all, p.Targets...)
	}
	return
}

// foldedStretch is where a stretch of an edge is folded, bound or faced.
func (r *run) foldedStretch(o *model.Target) condition.Cond {
	return r.whereDone(r.deeds().edge[o.Edge], "press under", "turn under", "hem", "bind", "cover", "roll", "fold")
}

// rawStitched looks for edges that are stitched down raw.
func rawStitched(r *run) {
	ready := map[*model.Edge]condition.Cond{}
	for _, op := range r.Ops() {
		if !oneOf(op.Verb, []string{"press under", "turn under", "hem", "bind", "finish", "cover", "roll", "miter"}) {
			continue
		}
		for _, o := range op.Objects {
			o.Each(func(t *model.Target) {
				for _, u := range t.Uses {
					ready[u.Edge] = r.Space.Or(ready[u.Edge], r.Space.And(op.Cond, t.Cond))
				}
			})
		}
	}
	for _, s := range r.Seams {
		for _, u := range s.Uses() {
			ready[u.Edge] = r.Space.Or(ready[u.Edge], s.Cond)
		}
	}
	reported := map[*model.Edge]bool{}
	for _, op := range r.Ops() {
		for _, o := range stitchedDown(op) {
			if o.Kind != model.ToEdge || reported[o.Edge] {
				continue
			}
			done := ready[o.Edge]
			if o.From != nil {
				done = r.foldedStretch(o) // the seams of the edge lie before and after it
			}
			bad := r.Space.Diff(r.Space.And(op.Cond, o.Cond), r.Space.Or(done, o.Edge.LeftRaw))
			for _, i := range o.Instances {
				if laid(i, o.Edge) {
					bad = condition.False
				}
			}
			if r.possible(bad) && !r.explained(bad) {
				reported[o.Edge] = true
				r.report(bad, at(op.Span, "raw", fmt.Sprintf("The %s of %s is stitched down raw.", edgeCalled(o.Edge.Name), the(o.Piece.Name)), "Press it under, hem it or finish it first; if the cloth does not fray, say `raw "+o.Edge.ID+"` in the piece."))
			}
		}
	}
}

func foldIdle(r *run) {
	used := map[*model.Mark]condition.Cond{}
	for _, op := range r.Ops() {
		if !oneOf(op.Verb, []string{"fold", "press", "turn", "lay", "roll", "hem", "press under", "turn under"}) {
			continue
		}
		list := append([]*model.Target(nil), op.Objects...)
		for _, p := range op.Phrases {
			list = append(list, p.Targets...)
		}
		for _, o := range list {
			o.Each(func(t *model.Target) {
				if t.Mark != nil {
					used[t.Mark] = r.Space.Or(used[t.Mark], op.Cond)
				}
			})
		}
	}
	for _, p := range r.Pieces {
		for _, m := range p.FoldLines {
			bad := r.Space.Diff(r.Space.And(p.Cond, m.Cond), used[m])
			r.report(bad, at(m.Span, "never folded", fmt.Sprintf("No step folds %s along its %s line.", the(p.Name), m.Name), fmt.Sprintf("Add `fold %s along %s`, or take the line out.", p.ID, m.ID)))
		}
	}
}

func openingIdle(r *run) {
	for _, g := range r.Gaps {
		used := condition.False
		for _, op := range r.Ops() {
			if p := op.Phrase("through"); p != nil {
				for _, t := range p.Targets {
					if t.Gap == g {
						used = r.Space.Or(used, op.Cond)
					}
				}
			}
			for _, o := range op.Objects {
				if op.Verb == "turn" && g.Seam != nil && o.Piece != nil && joinsPiece(g.Seam, o.Piece) {
					used = r.Space.Or(used, op.Cond)
				}
			}
		}
		if g.Used {
			r.report(r.Space.Diff(g.Cond, used), at(g.Span, "left for nothing", fmt.Sprintf("Nothing goes through the opening %s.", g.Name), fmt.Sprintf("Turn or thread something through it: turn PIECE through %s; or sew the seam without it.", g.ID)))
		}
	}
}

// hanging looks at bands: pieces with a fold line of which one edge is sewn to
// something else and another is only finished.
func hanging(r *run) {
	for _, p := range r.Pieces {
		if len(p.FoldLines) == 0 {
			continue
		}
		sewn := condition.False
		held := map[*model.Edge]condition.Cond{}
		for _, s := range r.Seams {
			for _, u := range s.Uses() {
				if u.Instance.Piece == p {
					held[u.Edge] = r.Space.Or(held[u.Edge], s.Cond)
					if !onePiece(s) {
						sewn = r.Space.Or(sewn, s.Cond)
					}
				}
			}
		}
		for _, op := range r.Ops() {
			list := []*model.Target(nil)
			if oneOf(op.Verb, []string{"slipstitch", "edgestitch", "topstitch", "fell", "tack", "hem", "stitch"}) {
				list = append(list, op.Objects...)
			}
			if c := op.Phrase("catching"); c != nil {
				list = append(list, c.Targets...)
			}
			for _, o := range list {
				o.Each(func(t *model.Target) {
					if t.Edge != nil {
						held[t.Edge] = r.Space.Or(held[t.Edge], op.Cond)
					}
				})
			}
		}
		for _, e := range p.Edges {
			bad := r.Space.Diff(r.Space.All(p.Cond, e.Cond, sewn), held[e])
			laidOn := false
			for _, i := range p.Cloths() {
				laidOn = laidOn || laid(i, e)
			}
			if !laidOn {
				r.report(r.unsaid(e, bad), at(e.Span, "caught by nothing", fmt.Sprintf("%s is folded over, and its %s edge is never caught.", Upper(the(p.Name)), lower(e.Name)), "Slipstitch it, or catch it in a row: `ditch SEAM catching EDGE`."))
			}
		}
	}
}
