package assembly

import (
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// onPiece plays an operation on whole parts.
func (w *play) onPiece(op *model.Op, t *model.Target, c condition.Cond) {
	for _, i := range t.Instances {
		if !beSide(i.Side, op.Only) {
			continue
		}
		ic := w.and(c, i.Cond)
		switch op.Verb {
		case "fuse":
			w.fuse(op, i, ic)
		case "turn":
			w.turn(op, i, ic)
		case "apply":
			w.lay(op, i, ic)
		case "press":
			w.pressParts([]*model.Instance{i}, op, ic)
		case "topstitch", "edgestitch":
			w.turnedUnpressed(op, []*model.Instance{i}, nil, ic)
		}
	}
	if attaching[op.Verb] || op.Verb == "stitch" && op.Phrase("to") != nil {
		w.hang(op, t, c)
	}
}

// hang fastens a part, which must have been made.
func (w *play) hang(op *model.Op, t *model.Target, c condition.Cond) {
	w.partMade(op, t, c)
	for _, i := range t.Instances {
		w.hung.add(i, op, w.and(c, i.Cond))
	}
}

// attaching are the verbs that fasten a part that has been made.
var attaching = map[string]bool{"apply": true, "attach": true, "insert": true, "set": true}

// fuse puts interfacing in. After the first seam it still goes, but not under the
// allowances; in a part that is turned or caught down no iron reaches it.
func (w *play) fuse(op *model.Op, i *model.Instance, c condition.Cond) {
	by := append(append([]deed(nil), w.turned.deeds(i)...), w.hidden.deeds(i)...)
	shut := w.ever(by)
	w.trouble(w.and(c, shut), Trouble{Kind: FusedWhenTurned, Op: op, Part: i}, by)
	w.trouble(w.and(c, w.diff(w.joined.where(i), shut)), Trouble{Kind: FusedTooLate, Op: op, Part: i}, w.joined.deeds(i))
}

// turn brings the right side of a part out: the allowances of the seams that were
// sewn round it go inside. A facing that is only turned to one side lies open
// until it is caught.
func (w *play) turn(op *model.Op, i *model.Instance, c condition.Cond) {
	w.trouble(w.and(c, w.fixed.where(i)), Trouble{Kind: FixedBeforeTurning, Op: op, Part: i}, w.fixed.deeds(i))
	w.fastenedBefore(op, i, c)
	will, total := w.sewing(i)
	w.trouble(w.and(c, w.diff(total, w.Space.Or(w.joined.where(i), w.hung.where(i)))), Trouble{Kind: TurnedTooEarly, Op: op, Part: i}, will)
	if op.Phrase("through") == nil && turnsOver(op) {
		w.wayOut(op, i, c)
	}
	w.turned.add(i, op, c)
	w.bag(op, i, c)
	if turnsOver(op) {
		w.encloseBehind(op, i, c)
		w.fresh[i] = w.diff(w.fresh[i], c)
	}
}

// bag notes with what a part hangs together when it is turned; what is turned through
// an opening is one thing.
func (w *play) bag(op *model.Op, i *model.Instance, c condition.Cond) {
	if op.Phrase("through") == nil {
		for x, there := range w.hanging(i) {
			w.bagged.add([2]*model.Instance{i, x}, op, w.and(c, there))
			w.bagged.add([2]*model.Instance{x, i}, op, w.and(c, there))
		}
		return
	}
	each(op.Objects, func(t *model.Target) {
		for _, x := range t.Instances {
			w.bagged.add([2]*model.Instance{i, x}, op, w.and(c, t.Cond, x.Cond))
		}
	})
}

// sewing is where a part is sewn to anything at all, now or later, and by what.
func (w *play) sewing(i *model.Instance) (will []deed, total condition.Cond) {
	for _, l := range w.of[i] {
		will, total = append(will, l.will...), w.Space.Or(total, l.total)
	}
	return
}

// wayOut reports a part that is turned when all of its edges are sewn and no seam
// of it was left open; a bag is turned through an edge that is hemmed, its own or
// that of a part which hangs together with it: the backs of a cushion cover overlap
// and are sewn to nothing there. A part with a fold is open along its sides.
func (w *play) wayOut(op *model.Op, i *model.Instance, c condition.Cond) {
	if i.Cut.Lay.Fold || len(i.Piece.FoldLines) > 0 {
		return
	}
	open := w.Space.Or(w.openings(i), w.early.where(i))
	for x, there := range w.hanging(i) {
		open = w.Space.Or(open, w.and(there, w.unsewnEdge(x)))
	}
	w.trouble(w.diff(c, open), Trouble{Kind: NoWayOut, Op: op, Part: i}, nil)
}

// hanging gives where each part hangs together with another by what is sewn, that
// one among them.
func (w *play) hanging(i *model.Instance) map[*model.Instance]condition.Cond {
	at := map[*model.Instance]condition.Cond{i: condition.True}
	for queue := []*model.Instance{i}; len(queue) > 0; queue = queue[1:] {
		from := queue[0]
		for _, l := range w.of[from] {
			c := w.and(at[from], w.sewn.where(l))
			for _, x := range l.parts {
				if next := w.Space.Or(at[x], c); next != at[x] {
					at[x] = next
					queue = append(queue, x)
				}
			}
		}
	}
	return at
}

// unsewnEdge is where some edge of a part, but for one that lies on the fold, is
// sewn to nothing.
func (w *play) unsewnEdge(i *model.Instance) condition.Cond {
	c := condition.False
	for _, e := range i.Piece.Edges {
		if i.Cut.Lay.Fold && e == i.Cut.Lay.FoldEdge {
			continue
		}
		sewn := condition.False
		for _, side := range []model.Side{i.Side, model.Neither, model.Left, model.Right} {
			s, _ := w.shut.only(key(i, e, side), func(o *model.Op) bool { return o.Row.Sews })
			sewn = w.Space.Or(sewn, s)
		}
		c = w.Space.Or(c, w.diff(e.Cond, sewn))
	}
	return c
}

// pressParts notes that parts are pressed as they lie now.
func (w *play) pressParts(parts []*model.Instance, op *model.Op, c condition.Cond) {
	for _, i := range parts {
		w.fresh[i] = w.Space.Or(w.fresh[i], c)
	}
}

// turnedUnpressed finds a row along a part that was turned and not pressed since,
// although it is pressed before or after.
func (w *play) turnedUnpressed(op *model.Op, parts []*model.Instance, s *model.Seam, c condition.Cond) {
	for _, i := range parts {
		turned, _ := w.turned.only(i, turnsOver)
		bad := w.and(c, w.diff(turned, w.fresh[i]), w.later.pressed.where(i))
		w.trouble(bad, Trouble{Kind: TurnedUnpressed, Op: op, Seam: s, Part: i}, w.later.pressed.deeds(i))
	}
}

// lay puts a patch on a panel: from then on its edges are closed.
func (w *play) lay(op *model.Op, i *model.Instance, c condition.Cond) {
	w.patchOnTube(op, c)
	for _, e := range i.Piece.Edges {
		for _, s := range []model.Side{model.Neither, model.Left, model.Right} {
			w.shut.add(key(i, e, s), op, c)
		}
	}
	w.laid.add(i, op, c)
}

// foresight is what later steps do, as far as earlier ones depend on it.
type foresight struct {
	pressed tally[*model.Instance] // as whole parts
	turned  tally[*model.Instance]
	folded  map[*model.Instance]bool
	did     tally[notionDeed]
	shut    tally[model.EdgeUse]
	second  tally[*model.Seam] // sewn a second time, see secondPass
	through tally[*model.Gap]  // turned through it
	rows    tally[*seamline]   // rows through all layers along it, which make a tunnel
}

func newForesight(s *condition.Space) foresight {
	return foresight{newTally[*model.Instance](s), newTally[*model.Instance](s), map[*model.Instance]bool{}, newTally[notionDeed](s), newTally[model.EdgeUse](s), newTally[*model.Seam](s), newTally[*model.Gap](s), newTally[*seamline](s)}
}

func (f *foresight) note(w *plan, op *model.Op) {
	each(op.Objects, func(t *model.Target) {
		c := w.Space.And(w.holds(op), t.Cond)
		for _, i := range t.Instances {
			ic := w.Space.And(c, i.Cond)
			switch {
			case op.Verb == "press" && op.Phrase("along") == nil && t.Uses == nil:
				f.pressed.add(i, op, ic)
			case op.Verb == "turn" && turnsOver(op):
				f.turned.add(i, op, ic)
			case op.Verb == "fold":
				f.folded[i] = true
			}
		}
		if t.Seam != nil && secondPass(op) {
			f.second.add(t.Seam, op, c)
		}
		if t.Seam != nil && rows[op.Verb] && op.Phrase("through") != nil {
			for _, l := range w.on(op, t) {
				f.rows.add(l, op, w.Space.And(c, l.Cond))
			}
		}
		if closes[op.Verb] || catches[op.Verb] {
			for _, u := range t.Uses {
				f.shut.add(keyOf(u), op, w.Space.And(c, u.Cond))
			}
		}
		if t.Kind == model.ToNotion {
			f.did.add(notionDeed{t.Notion, op.Verb}, op, c)
		}
	})
	for _, p := range op.Phrases {
		each(p.Targets, func(t *model.Target) {
			if p.Name == "through" && t.Gap != nil && op.Verb == "turn" {
				f.through.add(t.Gap, op, w.Space.And(w.holds(op), t.Cond))
			}
			if p.Name == "for" && t.Kind == model.ToNotion {
				f.did.add(notionDeed{t.Notion, op.Verb}, op, w.Space.And(w.holds(op), t.Cond))
			}
		})
	}
}
