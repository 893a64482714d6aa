package check

import (
	"fmt"
	"slices"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

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
	held := r.heldEdges()
	for _, p := range r.Pieces {
		if len(p.FoldLines) == 0 {
			continue
		}
		sewn := condition.False
		for _, s := range r.Seams {
			if !onePiece(s) && joinsPiece(s, p) {
				sewn = r.Space.Or(sewn, s.Cond)
			}
		}
		for _, e := range p.Edges {
			if slices.ContainsFunc(p.Cloths(), func(i *model.Instance) bool { return laid(i, e) }) {
				continue
			}
			bad := r.Space.Diff(r.Space.All(p.Cond, e.Cond, sewn), held[e])
			r.report(r.unsaid(e, bad), at(e.Span, "caught by nothing", fmt.Sprintf("%s is folded over, and its %s is never caught.", Upper(the(p.Name)), edgeCalled(e.Name)), "Slipstitch it, or catch it in a row: `ditch SEAM catching EDGE`."))
		}
	}
}

// heldEdges is where each edge is taken by a seam, sewn down, or caught in a row.
func (r *run) heldEdges() map[*model.Edge]condition.Cond {
	held := map[*model.Edge]condition.Cond{}
	for _, s := range r.Seams {
		for _, u := range s.Uses() {
			held[u.Edge] = r.Space.Or(held[u.Edge], s.Cond)
		}
	}
	hold := func(list []*model.Target, c condition.Cond) {
		for _, o := range list {
			o.Each(func(t *model.Target) {
				if t.Edge != nil {
					held[t.Edge] = r.Space.Or(held[t.Edge], c)
				}
			})
		}
	}
	for op := range r.opsOf("slipstitch", "edgestitch", "topstitch", "fell", "tack", "hem", "stitch") {
		hold(op.Objects, op.Cond)
	}
	for _, op := range r.Ops() {
		if c := op.Phrase("catching"); c != nil {
			hold(c.Targets, op.Cond)
		}
	}
	return held
}
