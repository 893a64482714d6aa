package assembly

import (
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// patchOnTube gives advice on a patch that goes on a panel which can no longer be
// laid flat: seams lead from one edge of it, through other parts, back to another
// edge of it. Two edges that are neighbours do not count, since a seam that leads
// round their corner closes nothing. As long as the panel and these parts are still
// to be sewn to each other once more, they lie open: front and back that hang
// together at the shoulders.
func (w *play) patchOnTube(op *model.Op, c condition.Cond) {
	if atAnEdge(op) {
		return // the rim of a tube lies under the needle, as when a bag gets its straps
	}
	for _, p := range op.Phrases {
		if p.Name != "to" && p.Name != "on" && p.Name != "at" {
			continue
		}
		each(p.Targets, func(t *model.Target) {
			for _, i := range t.Instances {
				by, tube := w.tube(i)
				w.trouble(w.and(c, t.Cond, i.Cond, tube), Trouble{Kind: PatchOnTube, Op: op, Part: i}, by)
			}
		})
	}
}

// stitchedEdge is an edge of a panel in a seam line.
type stitchedEdge struct {
	use  model.EdgeUse
	line *seamline
}

// mostEdges bounds the sewn edges of a panel that are looked at. From each of them
// everything is walked through; a panel with more gets no advice.
const mostEdges = 40

// tube is where a part is closed to a tube, and what closed it.
func (w *play) tube(i *model.Instance) (by []deed, tube condition.Cond) {
	edges := w.sewnEdges(i)
	if len(edges) > mostEdges {
		return
	}
	for n, x := range edges {
		reach := w.reach(i, x)
		for _, y := range edges[n+1:] {
			if beside(x.use.Edge, y.use.Edge) && x.use.Side == y.use.Side {
				continue
			}
			c := w.and(w.leads(i, reach, x, y), w.sewn.where(y.line))
			if c = w.diff(c, w.toCome(i, reach)); c != condition.False {
				tube = w.Space.Or(tube, c)
				by = append(append(by, w.sewn.deeds(y.line)...), w.sewn.deeds(x.line)...)
			}
		}
	}
	return
}

// sewnEdges lists the edges of a part that are sewn in some garment.
func (w *play) sewnEdges(i *model.Instance) (all []stitchedEdge) {
	for _, l := range w.of[i] {
		if w.sewn.where(l) == condition.False {
			continue
		}
		for _, u := range l.uses[:len(l.uses)-len(l.caught)] {
			if u.Instance == i {
				all = append(all, stitchedEdge{u, l})
			}
		}
	}
	return
}

// opposite lists the parts that an edge is sewn to.
func (l *seamline) opposite(u model.EdgeUse) (all []*model.Instance) {
	for _, x := range l.facing(u) {
		if !has(all, x.Instance) {
			all = append(all, x.Instance)
		}
	}
	return
}

// leads is where what was reached from one edge is sewn to another edge of the
// panel; or the two edges to each other.
func (w *play) leads(i *model.Instance, reach map[*model.Instance]condition.Cond, x, y stitchedEdge) condition.Cond {
	if x.line == y.line {
		if x.line.joins(x.use, y.use) {
			return condition.True
		}
		return condition.False
	}
	c := condition.False
	for _, p := range y.line.opposite(y.use) {
		c = w.Space.Or(c, reach[p])
	}
	return c
}

// reach gives where each part hangs together with a panel by one of its edges,
// without going through the panel again.
func (w *play) reach(i *model.Instance, from stitchedEdge) map[*model.Instance]condition.Cond {
	at := map[*model.Instance]condition.Cond{}
	var queue []*model.Instance
	spread := func(parts []*model.Instance, c condition.Cond) {
		for _, x := range parts {
			if next := w.Space.Or(at[x], c); x != i && next != at[x] {
				at[x] = next
				queue = append(queue, x)
			}
		}
	}
	for spread(from.line.opposite(from.use), w.sewn.where(from.line)); len(queue) > 0; queue = queue[1:] {
		x := queue[0]
		for _, l := range w.of[x] {
			if l != from.line {
				spread(l.parts, w.and(at[x], w.sewn.where(l)))
			}
		}
	}
	return at
}

// toCome is where the panel is still to be sewn to one of these parts.
func (w *play) toCome(i *model.Instance, reach map[*model.Instance]condition.Cond) condition.Cond {
	c := condition.False
	for _, l := range w.of[i] {
		late := w.unsewn(l)
		if late == condition.False {
			continue
		}
		for _, u := range l.uses {
			if u.Instance != i {
				continue
			}
			for _, x := range l.opposite(u) {
				c = w.Space.Or(c, w.and(late, reach[x]))
			}
		}
	}
	return c
}

// atAnEdge reports whether an operation names a mark on an edge for its place.
func atAnEdge(op *model.Op) bool {
	p := op.Phrase("at")
	if p == nil {
		return false
	}
	for _, t := range p.Targets {
		if t.Mark != nil && t.Mark.On != nil {
			return true
		}
	}
	return false
}
