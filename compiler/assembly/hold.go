package assembly

import (
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// holds are the verbs that hold layers until they are sewn.
var holds = map[string]bool{"baste": true, "pin": true, "lay": true}

// heldTooLate finds layers that are held after they were sewn.
func (w *play) heldTooLate(op *model.Op, t *model.Target, c condition.Cond) {
	if t.From != nil || op.Verb == "lay" {
		return
	}
	for _, l := range w.on(op, t) {
		w.trouble(w.and(c, l.Cond, w.sewn.where(l)), Trouble{Kind: HeldTooLate, Op: op, Seam: t.Seam}, w.sewn.deeds(l))
	}
}

// hold plays what is laid, pinned or basted to something: a part that is stitched
// on already, an edge that is closed.
func (w *play) hold(op *model.Op) {
	each(op.Objects, func(t *model.Target) {
		c := w.and(w.holds(op), t.Cond)
		if holds[op.Verb] && t.Kind == model.ToPiece {
			for _, i := range t.Instances {
				w.trouble(w.and(c, i.Cond, w.laid.where(i)), Trouble{Kind: HeldTooLate, Op: op, Part: i}, w.laid.deeds(i))
			}
		}
	})
	if has([]string{"baste", "pin", "insert", "attach"}, op.Verb) {
		w.caughtTooLate(op)
	}
}

// caughtTooLate finds a loop, a tie or a zip that goes to an edge which is sewn
// already: its raw end belongs into that seam.
func (w *play) caughtTooLate(op *model.Op) {
	for _, p := range op.Phrases {
		if p.Name != "to" && p.Name != "at" && p.Place != "into" && p.Place != "between" || op.Verb == "insert" && p.Name != "to" {
			continue
		}
		each(p.Targets, func(t *model.Target) {
			if t.Kind != model.ToEdge && t.Kind != model.ToPartEdge {
				return
			}
			for _, x := range t.Uses {
				u, c := keyOf(x), w.and(w.holds(op), t.Cond, x.Cond)
				sewn, by := w.shut.only(u, func(o *model.Op) bool { return o.Row.Sews })
				w.trouble(w.and(c, sewn), Trouble{Kind: CaughtTooLate, Op: op, Use: &u}, by)
			}
		})
	}
}
