package assembly

import "seamwarden/compiler/model"

// rimOf is what a verb makes of the edges that it acts on; other verbs leave
// their rims as they are.
var rimOf = map[string]Rim{"finish": FinishedRim, "press under": PressedRim, "turn under": PressedRim, "hem": HemmedRim, "bind": BoundRim,
	"cover": BoundRim, "edgestitch": StitchedRim, "slipstitch": StitchedRim, "fell": StitchedRim, "topstitch": StitchedRim, "close": StitchedRim, "apply": StitchedRim,
	"attach": StitchedRim, "insert": StitchedRim, "set": StitchedRim}

// rims notes what an operation makes of edges. What is hemmed or bound stays so
// when it is stitched again.
func (t *worktable) rims(op *model.Op, uses []*model.EdgeUse, rim Rim) {
	if rim == Raw {
		return
	}
	for _, u := range uses {
		l := t.lines[keyOf(u)]
		if l == nil || !t.holds(u.Cond) || !beSide(op.Only, u.Side) {
			continue
		}
		from, to := stretchOf(op, u)
		first, end := t.span(l, from, to)
		for _, s := range l.stretches[first:end] {
			if op.Verb == "topstitch" && s.rim != PressedRim {
				continue // a row beside a raw edge does not close it
			}
			t.worked[u.Instance] = t.worked[u.Instance] || rim >= HemmedRim
			if s.rim < rim && s.rim < HemmedRim {
				s.rim, s.by = rim, op
			}
		}
	}
}

// stretchOf gives the stretch of an edge that an operation names, if any.
func stretchOf(op *model.Op, u *model.EdgeUse) (from, to *model.Target) {
	for _, o := range op.Objects {
		o.Each(func(x *model.Target) {
			if o.From != nil && x.Edge == u.Edge {
				from, to = o.From, o.To
			}
		})
	}
	return
}

// through plays what lies in the phrases of an operation: an edge that is caught
// or taken between layers, and the rim of a part that is laid on another.
func (t *worktable) through(op *model.Op) {
	for _, p := range op.Phrases {
		if p.Name == "catching" || op.Verb == "insert" && (p.Name == "into" || p.Place == "into" || p.Place == "between") {
			t.each(p.Targets, func(x *model.Target) { t.rims(op, x.Uses, StitchedRim) })
		}
	}
	if op.Verb != "apply" {
		return
	}
	t.each(op.Objects, func(x *model.Target) {
		if x.Kind != model.ToPiece {
			return
		}
		for _, i := range x.Instances {
			for _, u := range t.order {
				if u.Instance == i {
					u.Cond = i.Cond
					t.rims(op, []*model.EdgeUse{&u}, StitchedRim)
				}
			}
		}
	})
}
