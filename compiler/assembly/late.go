package assembly

import (
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// What comes too late, though the garment can still be made: rows, finishes and
// folds that belong to an earlier moment. Common practice of garment sewing, no
// source.

// insideOut finds a band whose ends are sewn and that is turned only later: until
// then its right side is inside, and its long edge cannot be sewn on.
func (w *play) insideOut(op *model.Op, l *seamline, c condition.Cond) {
	if len(l.parts) == 1 {
		return // the long seam of a belt sews it to nothing but itself
	}
	seen := map[*model.Instance]bool{}
	for _, u := range l.uses {
		i := u.Instance
		if seen[i] || len(i.Piece.FoldLines) == 0 || itself(l.Join) {
			continue
		}
		seen[i] = true
		for _, m := range w.of[i] {
			if m == l || !itself(m.Join) || acts(op, m.Seam) {
				continue
			}
			over, _ := w.turned.only(i, turnsOver)
			bad := w.and(c, w.sewn.where(m), w.diff(w.later.turned.where(i), over))
			w.trouble(bad, Trouble{Kind: InsideOut, Op: op, Seam: m.Seam, Part: i}, w.sewn.deeds(m))
		}
	}
}

// rowTooLate finds a row beside a seam of which another seam has caught the end:
// it belongs under the other one. A row through all layers, one that catches
// something, and one along a turned edge come last on purpose.
func (w *play) rowTooLate(op *model.Op, l *seamline, c condition.Cond) {
	if op.Verb != "topstitch" && op.Verb != "edgestitch" || op.Phrase("through") != nil || op.Phrase("catching") != nil {
		return
	}
	for _, i := range l.parts {
		c = w.diff(c, w.turned.where(i))
	}
	sewn, by := w.caught.only(l, func(o *model.Op) bool { return o.Row.Sews })
	w.trouble(w.and(c, w.diff(sewn, w.enclosed.where(l))), Trouble{Kind: RowTooLate, Op: op, Seam: l.Seam}, by)
}

// understitchedTurned finds a facing that is turned in before it is understitched:
// it has to be opened out again.
func (w *play) understitchedTurned(op *model.Op, l *seamline, c condition.Cond) {
	on := op.Phrase("on")
	if op.Verb != "understitch" || on == nil {
		return
	}
	c = w.diff(c, w.Space.Or(w.enclosed.where(l), w.ever(w.closedBehind(op, l)))) // then it is out of reach
	each(on.Targets, func(t *model.Target) {
		for _, i := range l.parts {
			if has(t.Instances, i) {
				w.trouble(w.and(c, t.Cond, w.turned.where(i)), Trouble{Kind: UnderstitchedTurned, Op: op, Seam: l.Seam, Part: i}, w.turned.deeds(i))
			}
		}
	})
}

// besideFacing looks at an edge that ends where a facing or its shell does, with
// the seam between them sewn: a hem must go under the facing before that is
// fastened, and the free edge of the facing is finished before.
func (w *play) besideFacing(op *model.Op, u model.EdgeUse, c condition.Cond) {
	if op.Verb != "hem" && op.Verb != "finish" {
		return
	}
	for _, e := range w.ends[u] {
		other := e.b
		if other == u {
			other = e.a
		}
		if other.Instance == nil || !faces(u, other) {
			continue
		}
		late := w.and(c, e.sewn)
		if op.Verb == "hem" && other.Instance.Piece.WornIn {
			by := append(append([]deed(nil), w.tacked.deeds(other)...), w.shut.deeds(other)...)
			w.trouble(w.and(late, w.ever(by)), Trouble{Kind: HemUnderFacing, Op: op, Use: &u, Part: other.Instance}, by)
		}
		if op.Verb == "finish" && u.Instance.Piece.WornIn {
			w.trouble(w.diff(late, w.alsoFinished(op, other)), Trouble{Kind: FinishedHeld, Op: op, Seam: e.line.Seam, Use: &u}, w.sewn.deeds(e.line))
		}
	}
}

// alsoFinished is where an operation finishes another edge along with the first.
func (w *play) alsoFinished(op *model.Op, u model.EdgeUse) condition.Cond {
	c := condition.False
	each(op.Objects, func(t *model.Target) {
		for _, x := range t.Uses {
			if keyOf(x) == u {
				c = w.Space.Or(c, w.and(w.holds(op), t.Cond, x.Cond))
			}
		}
	})
	return c
}

// boundEnd finds an edge that is bound when the edge at its end is hemmed or bound
// already: nothing shuts in the cut end of the binding.
func (w *play) boundEnd(op *model.Op, u model.EdgeUse, c condition.Cond) {
	if op.Verb != "bind" {
		return
	}
	x := u
	for _, n := range neighbours(&x) {
		shut, by := w.shut.only(n, func(o *model.Op) bool { return o != op && closes[o.Verb] })
		w.trouble(w.and(c, shut), Trouble{Kind: BoundEndOpen, Op: op, Use: &u}, by)
	}
}

// preparedLate finds the inside edge of a band that is pressed under, bound or
// finished when the band is sewn on: flat, it would have been easy.
func (w *play) preparedLate(op *model.Op, u model.EdgeUse, c condition.Cond) {
	i := u.Instance
	if len(i.Piece.FoldLines) == 0 || !has([]string{"press under", "turn under", "bind", "finish"}, op.Verb) {
		return
	}
	bad := w.and(c, w.joined.where(i), w.diff(w.later.turned.where(i), w.turned.where(i)))
	var by []deed
	for _, l := range w.of[i] {
		if !itself(l.Join) {
			by = append(by, w.sewn.deeds(l)...)
		}
	}
	w.trouble(w.and(bad, w.ever(by)), Trouble{Kind: PreparedLate, Op: op, Use: &u, Part: i}, by)
}
