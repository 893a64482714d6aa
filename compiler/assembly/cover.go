package assembly

import (
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// Two neighbouring edges may be closed by different operations, and the seam
// between them is then as much out of reach as if one had closed both: if both are
// hemmed or bound, or if what they are sewn to hangs together at that corner. If it
// does not yet, the seam may follow, and all of it is closed in one row: side and
// underarm of a raglan sleeve.

// coverEnds looks at the seams that end beside an edge which is sewn now, and whose
// other edge is sewn to something else already.
func (w *play) coverEnds(op *model.Op, l *seamline, c condition.Cond) {
	for _, u := range l.uses[:len(l.uses)-len(l.caught)] {
		for _, e := range w.ends[u] {
			v := e.other(u)
			late := w.and(c, e.cond, w.diff(e.total, e.sewn))
			if e.line == l || late == condition.False || e.turnedAt(l) {
				continue
			}
			for _, k := range w.takes[v] {
				if k != l && k != e.line && !e.turnedAt(k) {
					bad := w.and(late, w.sewn.where(k), w.hangs(l.facing(u), k.facing(v)))
					w.trouble(bad, Trouble{Kind: SeamCrossedOpen, Op: op, Seam: e.line.Seam, Use: &u}, e.line.will)
				}
			}
		}
	}
}

// other gives the edge at the far side of an end.
func (e *seamEnd) other(u model.EdgeUse) model.EdgeUse {
	if u == e.a {
		return e.b
	}
	return e.a
}

// facing lists the edges that an edge is sewn to.
func (l *seamline) facing(u model.EdgeUse) []model.EdgeUse {
	for _, x := range l.A {
		if keyOf(x) == u {
			return keys(l.B)
		}
	}
	return keys(l.A)
}

// hangs is where two covers hang together at a corner: they are one edge there, or
// a seam that ends between them is sewn. A part that is set into a corner with two
// of its edges does not count: any of its seams may be the last.
func (w *play) hangs(a, b []model.EdgeUse) condition.Cond {
	c := condition.False
	for _, x := range a {
		for _, y := range b {
			if x == y {
				return condition.True
			}
			meet := w.between(x, y)
			all := condition.True
			for _, e := range meet {
				all = w.and(all, e.sewn)
			}
			if len(meet) > 0 {
				c = w.Space.Or(c, all)
			}
		}
	}
	return c
}

// hangsFree reports whether two edges belong to a shell and a lining of another
// cloth, which are hemmed each by itself before they are joined, as in a curtain.
func hangsFree(a, b model.EdgeUse) bool {
	return a.Instance != nil && b.Instance != nil && a.Instance.Cut.Material != b.Instance.Cut.Material
}

// closedApart looks at the seams that end between an edge that is hemmed or bound
// now and one that was before.
func (w *play) closedApart(op *model.Op, u model.EdgeUse) {
	for _, e := range w.ends[u] {
		before, _ := w.shut.only(e.other(u), func(o *model.Op) bool { return o != op && closes[o.Verb] })
		if op.Verb == "hem" && hangsFree(u, e.other(u)) {
			continue
		}
		bad := w.and(w.holds(op), e.cond, before, w.diff(e.total, e.sewn))
		w.trouble(bad, Trouble{Kind: SeamCrossedOpen, Op: op, Seam: e.line.Seam, Use: &u}, e.line.will)
	}
}
