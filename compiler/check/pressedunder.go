package check

import (
	"fmt"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// holdingRows are the operations that keep a fold in place.
var holdingRows = []string{"slipstitch", "edgestitch", "topstitch", "hem", "fell", "stitch", "tack", "attach", "quilt", "sew", "bar-tack", "set"}

// neverStitched looks for an edge that is pressed under and then neither sewn
// down nor taken by a seam, a hem or a patch.
func neverStitched(r *run) {
	held := map[*model.Edge]condition.Cond{}
	note := func(t *model.Target, c condition.Cond) {
		if t.Kind == model.ToEdge {
			held[t.Edge] = r.Space.Or(held[t.Edge], r.Space.And(c, t.Cond))
		}
	}
	whole := map[*model.Piece]condition.Cond{}
	for _, op := range r.Ops() {
		holding := oneOf(op.Verb, holdingRows)
		for _, o := range op.Objects {
			o.Each(func(t *model.Target) {
				if holding {
					note(t, op.Cond)
				}
				if (op.Verb == "attach" || op.Verb == "set" || op.Verb == "quilt") && t.Kind == model.ToPiece {
					whole[t.Piece] = r.Space.Or(whole[t.Piece], op.Cond)
				}
			})
		}
		for _, p := range op.Phrases {
			if p.Name == "catching" || op.Verb == "apply" && (p.Name == "to" || p.Place == "over") { // a curtain tape holds what it is stitched to
				for _, t := range p.Targets {
					t.Each(func(x *model.Target) { note(x, op.Cond) })
				}
			}
		}
	}
	for _, s := range r.Seams {
		for _, u := range s.Uses() {
			held[u.Edge] = r.Space.Or(held[u.Edge], s.Cond)
		}
	}
	reported := map[*model.Edge]bool{}
	for _, op := range r.Ops() {
		if op.Verb != "press under" && op.Verb != "turn under" {
			continue
		}
		for _, o := range op.Objects {
			if o.Kind != model.ToEdge || reported[o.Edge] {
				continue
			}
			fixed := held[o.Edge]
			if o.From != nil && o.To != nil {
				fixed = r.heldStretch(o)
			}
			bad := r.Space.Diff(r.Space.And(op.Cond, o.Cond), r.Space.Or(fixed, whole[o.Piece]))
			if r.possible(bad) {
				reported[o.Edge] = true
				r.tell(o.Edge, bad)
				r.report(bad, at(op.Span, "held by nothing", fmt.Sprintf("The %s of %s is pressed under and never stitched.", edgeCalled(o.Edge.Name), the(o.Piece.Name)),
					"Edgestitch, hem or slipstitch it, or catch it in a row: `ditch SEAM catching EDGE`."))
			}
		}
	}
}

// heldStretch is where the stretch of an edge between two marks is sewn down. The
// seams of the edge lie before and after it.
func (r *run) heldStretch(o *model.Target) condition.Cond {
	c := condition.False
	for _, d := range r.deeds().edge[o.Edge] {
		if d.on.Seam == nil && oneOf(d.op.Verb, holdingRows) {
			c = r.Space.Or(c, d.cond)
		}
	}
	for _, s := range r.Seams {
		for _, t := range append(append([]*model.Target(nil), s.Joins...), s.To...) {
			t.Each(func(x *model.Target) {
				if x.Edge == o.Edge && sameStretch(x, o) {
					c = r.Space.Or(c, s.Cond)
				}
			})
		}
	}
	return c
}

// sameStretch reports whether two stretches of an edge reach from the same mark to
// the same; one that names no marks is the whole edge.
func sameStretch(a, b *model.Target) bool {
	if a.From == nil || a.To == nil {
		return true
	}
	return a.From.Mark == b.From.Mark && a.To.Mark == b.To.Mark || a.From.Mark == b.To.Mark && a.To.Mark == b.From.Mark
}
