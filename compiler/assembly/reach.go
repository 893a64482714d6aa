package assembly

import (
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// everJoined is where a part is sewn to anything at all, now or later.
func (w *play) everJoined(i *model.Instance) condition.Cond {
	c := condition.False
	for j, total := range w.total {
		if joins(j, i) {
			c = w.Space.Or(c, total)
		}
	}
	return c
}

// sewTurned finds a seam of which every part has been turned: its edges lie
// inside.
func (w *play) sewTurned(op *model.Op, j *model.Join, c condition.Cond) {
	in := condition.True
	var by []deed
	for _, u := range append(append([]*model.EdgeUse(nil), j.A...), j.B...) {
		flat := w.onlyTo(w.turned[u.Instance])
		in = w.Space.And(in, w.ever(flat))
		by = append(by, flat...)
	}
	w.trouble(w.Space.And(c, in), Trouble{Kind: SeamShutIn, Op: op, Seam: j.Seam}, by)
}

// onlyTo leaves out the turnings of a facing to one side, after which its other
// edges can still be sewn.
func (w *play) onlyTo(list []deed) (out []deed) {
	for _, d := range list {
		if d.op.Phrase("to") == nil && d.op.Phrase("toward") == nil {
			out = append(out, d)
		}
	}
	return
}

// closedBehind gives what closed the far edge of the part that a seam is to be
// understitched on: then the part no longer lies open.
func (w *play) closedBehind(op *model.Op, j *model.Join) (by []deed) {
	on := op.Phrase("on")
	if op.Verb != "understitch" || on == nil {
		return
	}
	each(on.Targets, func(t *model.Target) {
		for _, u := range append(append([]*model.EdgeUse(nil), j.A...), j.B...) {
			if !has(t.Instances, u.Instance) {
				continue
			}
			for _, e := range u.Instance.Piece.Edges {
				if e == u.Edge || beside(e, u.Edge) {
					continue
				}
				for _, d := range w.shut[key(u.Instance, e, u.Side)] {
					if d.op.Row.Sews || catches[d.op.Verb] {
						by = append(by, d)
					}
				}
			}
		}
	})
	return
}

func has(list []*model.Instance, i *model.Instance) bool {
	for _, x := range list {
		if x == i {
			return true
		}
	}
	return false
}

// beside reports whether two edges are neighbours on a piece of three or more.
func beside(a, b *model.Edge) bool {
	n := len(a.Piece.Edges)
	gap := (a.Index - b.Index + n) % n
	return n > 2 && (gap == 1 || gap == n-1)
}

// around plays the things that an operation names after to, on, over or at: a
// seam there must be sewn, and a fastening needs a part that is closed.
func (w *play) around(op *model.Op) {
	for _, p := range op.Phrases {
		if p.Name == "toward" || p.Name == "through" || p.Name == "with" {
			continue
		}
		each(p.Targets, func(t *model.Target) {
			c := w.Space.And(op.Cond, t.Cond)
			if t.Seam != nil {
				for _, j := range t.Seam.Copies {
					later := w.Space.Diff(w.total[j], w.ever(w.sewn[j]))
					w.trouble(w.Space.All(c, j.Cond, later), Trouble{Kind: SeamNotSewnYet, Op: op, Seam: t.Seam}, nil)
				}
			}
			if op.Verb == "buttonhole" || op.Verb == "sew on" {
				for _, i := range t.Parts() {
					w.fastened[i] = append(w.fastened[i], deed{op, c})
				}
			}
		})
	}
}

// fastenedBefore reports a fastening on a part that is closed only now.
func (w *play) fastenedBefore(op *model.Op, i *model.Instance, c condition.Cond) {
	for _, d := range w.fastened[i] {
		w.trouble(w.Space.And(c, d.cond), Trouble{Kind: FastenedTooEarly, Op: d.op, Part: i}, []deed{{op, c}})
	}
}

// marking notes where a mark or dart is used, and finds it marked only later.
func (w *play) marking(op *model.Op) {
	note := func(t *model.Target) {
		var x any
		switch {
		case t.Kind == model.ToMark:
			x = t.Mark
		case t.Kind == model.ToShaping:
			x = t.Shaping
		default:
			return
		}
		c := w.Space.And(op.Cond, t.Cond)
		if op.Verb == "mark" {
			w.trouble(w.Space.And(c, w.ever(w.marks[x])), Trouble{Kind: MarkedTooLate, Op: op, Word: t.Describe()}, w.marks[x])
			return
		}
		w.marks[x] = append(w.marks[x], deed{op, c})
	}
	each(op.Objects, note)
	for _, p := range op.Phrases {
		each(p.Targets, note)
	}
	each(op.Objects, func(t *model.Target) {
		if t.From != nil {
			note(t.From)
			note(t.To)
		}
		if t.Seam != nil && op.Row.Sews {
			for _, r := range append(append([]*model.Target(nil), t.Seam.Joins...), t.Seam.To...) {
				if r.From != nil {
					w.markOf(op, r.From, t.Cond)
					w.markOf(op, r.To, t.Cond)
				}
			}
		}
	})
}

// markOf notes that a seam runs from or to a mark.
func (w *play) markOf(op *model.Op, t *model.Target, c condition.Cond) {
	if t != nil && t.Mark != nil {
		w.marks[t.Mark] = append(w.marks[t.Mark], deed{op, w.Space.And(op.Cond, c)})
	}
}
