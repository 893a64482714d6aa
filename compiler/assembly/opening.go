package assembly

import (
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// leave notes an opening that an operation leaves in a seam.
func (w *play) leave(op *model.Op) {
	if g := w.gapLeft(op); g != nil {
		w.left.add(g, op, w.holds(op))
	}
}

// onGap plays an operation on an opening. Closing it ends its use.
func (w *play) onGap(op *model.Op, t *model.Target, c condition.Cond) {
	g := t.Gap
	if !op.Row.Shuts && op.Verb != "sew" {
		return
	}
	w.notLeft(op, g, w.and(c, g.Cond))
	w.closed.add(g, op, c)
	w.endsJoined(op, g, c)
}

func (w *play) notLeft(op *model.Op, g *model.Gap, c condition.Cond) {
	var will []deed
	if g.Seam != nil {
		for _, j := range g.Seam.Copies {
			will = append(will, w.lines[j].will...)
		}
	}
	w.trouble(w.diff(c, w.left.where(g)), Trouble{Kind: GapNotThere, Op: op, Gap: g, Word: "left"}, will)
}

// throughGap plays what goes through an opening: it must be there, and not be
// closed yet.
func (w *play) throughGap(op *model.Op) {
	for _, p := range op.Phrases {
		if p.Name != "through" {
			continue
		}
		each(p.Targets, func(t *model.Target) {
			if t.Gap != nil {
				c := w.and(w.holds(op), t.Cond)
				w.notLeft(op, t.Gap, c)
				w.shutAlready(op, t.Gap, c)
				w.reached(op, t.Gap, c)
				w.thread(op, t.Gap, c)
			}
		})
	}
	if op.Verb == "turn" {
		each(op.Objects, func(t *model.Target) { w.turnInside(op, t) })
		w.shutDeep(op)
	}
}

// reached finds something that is done through an opening before the thing is
// turned through it: until then what lies inside later is still outside.
func (w *play) reached(op *model.Op, g *model.Gap, c condition.Cond) {
	if op.Verb == "turn" || op.Verb == "thread" {
		return
	}
	past := func(o *model.Op) bool { return w.when[o] < w.when[op] }
	done, _ := w.later.through.only(g, past)
	after, by := w.later.through.only(g, func(o *model.Op) bool { return !past(o) })
	w.trouble(w.and(c, w.diff(after, done)), Trouble{Kind: ReachedTooEarly, Op: op, Gap: g}, by)
}

// shutDeep notes the seams that lie inside a bag when it is turned: all their parts
// are turned, and another seam of the bag has caught their ends. A row along one of
// them goes through all layers, or is sewn before.
func (w *play) shutDeep(op *model.Op) {
	turned := map[*model.Instance]bool{}
	each(op.Objects, func(t *model.Target) {
		for _, i := range t.Instances {
			turned[i] = turnsOver(op)
		}
	})
	each(op.Objects, func(t *model.Target) {
		for _, i := range t.Instances {
			for _, l := range w.of[i] {
				if within(l.parts, turned) {
					w.deep.add(l, op, w.and(w.holds(op), t.Cond, i.Cond, w.caught.where(l)))
				}
			}
		}
	})
}

func (w *play) shutAlready(op *model.Op, g *model.Gap, c condition.Cond) {
	w.trouble(w.and(c, w.closed.where(g)), Trouble{Kind: GapNotThere, Op: op, Gap: g, Word: "closed"}, w.closed.deeds(g))
}

// turnInside looks at the openings in the seams round a part that is turned.
func (w *play) turnInside(op *model.Op, t *model.Target) {
	for _, g := range w.Gaps {
		for _, i := range t.Instances {
			if w.inSeam(g, i) {
				w.shutAlready(op, g, w.and(w.holds(op), w.left.where(g)))
			}
		}
	}
}

// inSeam reports whether an opening lies in a seam of a part.
func (w *plan) inSeam(g *model.Gap, i *model.Instance) bool {
	for _, l := range w.of[i] {
		if l.Seam == g.Seam {
			return true
		}
	}
	return false
}

// openings is where a seam round a part was sewn with an opening left.
func (w *play) openings(i *model.Instance) condition.Cond {
	c := condition.False
	for _, g := range w.Gaps {
		if w.inSeam(g, i) {
			c = w.Space.Or(c, w.left.where(g))
		}
	}
	return c
}

// gapsLeft finds openings that are used and never closed.
func (w *play) gapsLeft() {
	for _, g := range w.Gaps {
		if !g.Used {
			continue // the rule for names says so
		}
		for _, d := range w.left.deeds(g) {
			w.trouble(w.diff(d.cond, w.closed.where(g)), Trouble{Kind: GapNeverClosed, Op: d.op, Gap: g}, nil)
		}
	}
}
