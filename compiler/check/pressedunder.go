package check

import (
	"fmt"
	"slices"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

// holdingRows are the operations that keep a fold in place.
var holdingRows = []string{"slipstitch", "edgestitch", "topstitch", "hem", "fell", "stitch", "tack", "attach", "quilt", "sew", "bar-tack", "set"}

// layerEdge is an edge of what one cut line gives, or of its copies of one name: the lining
// of a bodice is held at the waist by other work than its shell.
type layerEdge struct {
	edge *model.Edge
	cut  *model.Cut
	copy string
}

func layersOf(uses []*model.EdgeUse) (all []layerEdge) {
	for _, u := range uses {
		if k := (layerEdge{u.Edge, u.Instance.Cut, u.Instance.Copy}); !slices.Contains(all, k) {
			all = append(all, k)
		}
	}
	return
}

// neverStitched looks for an edge that is pressed under and then neither sewn
// down nor taken by a seam, a hem or a patch.
func neverStitched(r *run) {
	held := map[layerEdge]condition.Cond{}
	note := func(t *model.Target, c condition.Cond) {
		if t.Kind == model.ToEdge {
			for _, k := range layersOf(t.Uses) {
				held[k] = r.Space.Or(held[k], r.Space.And(c, t.Cond))
			}
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
		for _, k := range layersOf(s.Uses()) {
			held[k] = r.Space.Or(held[k], s.Cond)
		}
	}
	reported := map[*model.Edge]bool{}
	var loose []looseFold
	for _, op := range r.Ops() {
		if op.Verb != "press under" && op.Verb != "turn under" {
			continue
		}
		for _, o := range op.Objects {
			if o.Kind != model.ToEdge || reported[o.Edge] {
				continue
			}
			fixed := condition.True
			for _, k := range layersOf(o.Uses) {
				fixed = r.Space.And(fixed, r.Space.Or(held[k], r.Space.Not(k.cut.Cond)))
			}
			if o.From != nil && o.To != nil {
				fixed = r.heldStretch(o)
			}
			bad := r.Space.Diff(r.Space.And(op.Cond, o.Cond), r.Space.Or(fixed, whole[o.Piece]))
			if r.possible(bad) {
				reported[o.Edge] = true
				r.tell(o.Edge, bad)
				if n := len(loose); n > 0 && loose[n-1].op == op && loose[n-1].bad == bad {
					loose[n-1].edges = append(loose[n-1].edges, o)
					continue
				}
				loose = append(loose, looseFold{op, []*model.Target{o}, bad})
			}
		}
	}
	for _, l := range loose {
		r.report(l.bad, l.finding())
	}
}

// looseFold is what one operation presses under and nothing holds.
type looseFold struct {
	op    *model.Op
	edges []*model.Target
	bad   condition.Cond
}

func (l looseFold) finding() finding.Finding {
	var names []string
	for _, o := range l.edges {
		names = append(names, fmt.Sprintf("the %s of %s", edgeCalled(o.Edge.Name), the(o.Piece.Name)))
	}
	are := "is"
	if len(names) > 1 {
		are = "are"
	}
	return at(l.op.Span, "held by nothing", fmt.Sprintf("%s %s pressed under and never stitched.", Upper(listed(names)), are),
		"Edgestitch, hem or slipstitch it, or catch it in a row: `ditch SEAM catching EDGE`.")
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
