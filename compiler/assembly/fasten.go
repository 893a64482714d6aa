package assembly

import (
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// around plays the things that an operation names after to, on, over or at: a
// seam there must be sewn, and a fastening needs a part that is closed.
func (w *play) around(op *model.Op) {
	for _, p := range op.Phrases {
		if p.Name == "toward" || p.Name == "through" || p.Name == "with" {
			continue
		}
		each(p.Targets, func(t *model.Target) {
			c := w.and(w.holds(op), t.Cond)
			if t.Seam != nil {
				for _, j := range t.Seam.Copies {
					if t.In != "" && j.In != t.In {
						continue
					}
					l := w.lines[j]
					w.trouble(w.and(c, j.Cond, w.unsewn(l)), Trouble{Kind: SeamNotSewnYet, Op: op, Seam: t.Seam}, l.will)
				}
			}
			if op.Verb == "buttonhole" || op.Verb == "sew on" {
				for _, i := range t.Parts() {
					if w.fastens(op) {
						w.fastened.add(i, op, c)
					}
				}
				w.buttonholes(op, t, c)
			}
		})
	}
}

// fastens reports whether an operation makes a fastening. A buttonhole that is for no
// button is an eyelet for a cord, which is worked in a single layer, and so is what is
// sewn on and closes nothing: a label, a weight in a hem, the eye of a toy.
func (w *play) fastens(op *model.Op) (yes bool) {
	if op.Verb == "buttonhole" {
		return op.Phrase("for") != nil
	}
	each(op.Objects, func(t *model.Target) {
		if n := t.Notion; n != nil {
			hole := notionDeed{n, "buttonhole"}
			yes = yes || n.Set || w.did.where(hole) != condition.False || w.later.did.where(hole) != condition.False
		}
	})
	return
}

// fastenedBefore reports a fastening on a part that is closed only now.
func (w *play) fastenedBefore(op *model.Op, i *model.Instance, c condition.Cond) {
	for _, d := range w.fastened.deeds(i) {
		w.trouble(w.and(c, d.cond), Trouble{Kind: FastenedTooEarly, Op: d.op, Part: i}, []deed{{op, c}})
	}
}

// marking notes where a mark or dart is used, and finds it marked only later.
func (w *play) marking(op *model.Op) {
	note := func(t *model.Target) { w.useMark(op, t) }
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
			for _, r := range t.Seam.Rows() {
				if r.From != nil {
					w.markOf(op, r.From, t.Cond)
					w.markOf(op, r.To, t.Cond)
				}
			}
		}
	})
}

func (w *play) useMark(op *model.Op, t *model.Target) {
	var x any
	switch {
	case t == nil:
		return
	case t.Kind == model.ToMark:
		x = t.Mark
	case t.Kind == model.ToShaping:
		x = t.Shaping
	default:
		return
	}
	c := w.and(w.holds(op), t.Cond)
	if op.Verb == "mark" {
		w.trouble(w.and(c, w.marks.where(x)), Trouble{Kind: MarkedTooLate, Op: op, Word: t.Describe()}, w.marks.deeds(x))
		return
	}
	w.marks.add(x, op, c)
}

// markOf notes that a seam runs from or to a mark.
func (w *play) markOf(op *model.Op, t *model.Target, c condition.Cond) {
	if t != nil && t.Mark != nil {
		w.marks.add(t.Mark, op, w.and(w.holds(op), c))
	}
}
