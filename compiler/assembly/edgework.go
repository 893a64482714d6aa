package assembly

import (
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// preparing are the verbs that act on an edge while it is still free.
var preparing = map[string]Kind{"hem": EdgeClosedBefore, "bind": EdgeClosedBefore, "finish": EdgeClosedBefore, "staystitch": ShapedTooLate, "gather": ShapedTooLate,
	"ease": ShapedTooLate, "pleat": ShapedTooLate, "shirr": ShapedTooLate, "press under": EdgeClosedBefore, "turn under": EdgeClosedBefore, "level": LevelledTooLate, "baste": EdgeClosedBefore}

// closes are the verbs that close the edges they are given, all at once.
var closes = map[string]bool{"hem": true, "bind": true}

// catches are the verbs that fix the free edge of a band or facing, which shuts
// in the seams that were sewn along its other edges.
var catches = map[string]bool{"slipstitch": true, "edgestitch": true, "fell": true}

// onEdge plays an operation on edges, and gives the edges that it closes.
func (w *play) onEdge(op *model.Op, t *model.Target, c condition.Cond) (closing []model.EdgeUse) {
	for _, x := range t.Uses {
		if !beSide(x.Side, op.Only) {
			continue
		}
		u, uc := keyOf(x), w.and(c, x.Cond)
		w.edgeFree(op, t, u, uc)
		if closes[op.Verb] || op.Verb == "level" {
			closing = append(closing, u)
		}
		w.edgeDone(op, u, uc)
	}
	if attaching[op.Verb] {
		w.hang(op, t, c)
	}
	return
}

// edgeFree looks at what an operation needs of an edge.
func (w *play) edgeFree(op *model.Op, t *model.Target, u model.EdgeUse, c condition.Cond) {
	if kind, ok := preparing[op.Verb]; ok {
		w.trouble(w.diff(w.and(c, w.shut.where(u)), w.bastedToSewn(op)), Trouble{Kind: kind, Op: op, Use: &u}, w.shut.deeds(u))
	}
	w.besideFacing(op, u, c)
	w.boundEnd(op, u, c)
	w.preparedLate(op, u, c)
	switch op.Verb {
	case "finish", "bind":
		w.trouble(w.and(c, w.zipped.where(u)), Trouble{Kind: EdgeClosedBefore, Op: op, Use: &u}, w.zipped.deeds(u))
		if t.From == nil {
			w.finishEdge(op, nil, u, c)
		}
	case "staystitch":
		w.staystitchedLate(op, u, c)
	case "topstitch", "edgestitch":
		w.turnedUnpressed(op, []*model.Instance{u.Instance}, nil, c)
	}
}

// edgeDone notes what an operation does to an edge.
func (w *play) edgeDone(op *model.Op, u model.EdgeUse, c condition.Cond) {
	if closes[op.Verb] {
		w.shut.add(u, op, c)
	}
	if catches[op.Verb] || op.Verb == "tack" {
		w.fixed.add(u.Instance, op, w.diff(c, w.hemmedSo(op, u)))
	}
	switch op.Verb {
	case "tack":
		w.tacked.add(u, op, c)
	case "press under", "turn under":
		w.under.add(u, op, c)
	}
	if catches[op.Verb] {
		w.catchEdge(op, u, c)
	}
}

// hemmedSo is where a row along an edge holds nothing but its own fold, or the zip
// that lies behind it: the part can still be turned.
func (w *play) hemmedSo(op *model.Op, u model.EdgeUse) condition.Cond {
	if op.Verb == "tack" || w.liesOver(op, u.Instance) {
		return condition.False
	}
	return w.Space.Or(w.under.where(u), w.zipped.where(u))
}

// catchEdge fixes an edge to what lies under it.
func (w *play) catchEdge(op *model.Op, u model.EdgeUse, c condition.Cond) {
	w.fastenedBefore(op, u.Instance, c)
	if w.liesOver(op, u.Instance) {
		w.encloseBehind(op, u.Instance, c)
		w.hidden.add(u.Instance, op, c)
	}
	w.shut.add(u, op, c)
}

// liesOver reports whether a part lies over others when its edge is fixed: it is a
// facing or lining, is folded over, or is said to be sewn to something. The fold of
// a plain hem shuts nothing in.
func (w *play) liesOver(op *model.Op, i *model.Instance) bool {
	if i.Piece.WornIn || op.Phrase("to") != nil || op.Phrase("over") != nil || op.Phrase("catching") != nil {
		return true
	}
	return w.later.folded[i] || w.turned.where(i) != condition.False
}

// encloseBehind puts the seams along a part out of reach.
func (w *play) encloseBehind(op *model.Op, i *model.Instance, c condition.Cond) {
	for _, l := range w.of[i] {
		if has(l.parts, i) {
			w.enclosed.add(l, op, w.and(c, w.sewn.where(l)))
		}
	}
}

// catching plays the edges that a row catches underneath.
func (w *play) catching(op *model.Op) {
	p := op.Phrase("catching")
	if p == nil || op.Row.Sews {
		return
	}
	each(p.Targets, func(t *model.Target) {
		for _, x := range t.Uses {
			u, c := keyOf(x), w.and(w.holds(op), t.Cond, x.Cond)
			w.fixed.add(u.Instance, op, c)
			w.catchEdge(op, u, c)
		}
	})
}

// staystitchedLate gives advice on a row that comes after the seam at an end of
// its edge: the edge has been handled by then.
func (w *play) staystitchedLate(op *model.Op, u model.EdgeUse, c condition.Cond) {
	for _, e := range w.ends[u] {
		w.trouble(w.and(c, e.sewn), Trouble{Kind: StaystitchedLate, Op: op, Seam: e.line.Seam, Use: &u}, w.sewn.deeds(e.line))
	}
}

// shapes reports whether an operation sews or folds a dart, pleat or tuck.
func shapes(op *model.Op) bool {
	return op.Row.Sews || op.Row.Class == model.Shape || op.Verb == "baste" || op.Verb == "stitch"
}

// shape plays a dart or pleat: its edge must still be free.
func (w *play) shape(op *model.Op, in *model.Target, c condition.Cond) {
	for _, x := range in.Uses {
		u := keyOf(x)
		w.trouble(w.and(c, w.shut.where(u)), Trouble{Kind: ShapedTooLate, Op: op, Use: &u}, w.shut.deeds(u))
	}
}

// bastedToSewn is where an operation bastes something to an edge that is sewn already,
// which is reported as that.
func (w *play) bastedToSewn(op *model.Op) condition.Cond {
	c := condition.False
	p := op.Phrase("to")
	if op.Verb != "baste" || p == nil {
		return c
	}
	each(p.Targets, func(t *model.Target) {
		for _, u := range t.Uses {
			c = w.Space.Or(c, w.shut.where(keyOf(u)))
		}
	})
	return c
}
