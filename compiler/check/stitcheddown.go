package check

import (
	"fmt"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

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
