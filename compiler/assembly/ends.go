package assembly

import (
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// key is the same for every mention of an edge of a part.
func key(i *model.Instance, e *model.Edge, s model.Side) model.EdgeUse {
	return model.EdgeUse{Instance: i, Edge: e, Side: s}
}

func keyOf(u *model.EdgeUse) model.EdgeUse { return key(u.Instance, u.Edge, u.Side) }

func keys(uses []*model.EdgeUse) []model.EdgeUse {
	all := make([]model.EdgeUse, 0, len(uses))
	for _, u := range uses {
		all = append(all, keyOf(u))
	}
	return all
}

// neighbour gives the edge before (-1) or after (+1) another on the same part, as
// its half is drawn. Where that is the fold, the line goes on in the other half
// and ends at what stands on the far side of the edge.
func neighbour(u *model.EdgeUse, step int) (model.EdgeUse, bool) {
	i, n := u.Instance, len(u.Instance.Piece.Edges)
	if n < 2 {
		return model.EdgeUse{}, false
	}
	at := func(step int) *model.Edge { return i.Piece.Edges[(u.Edge.Index+step+n)%n] }
	cut, e := i.Cut, at(step)
	if !cut.Lay.Fold || cut.Lay.FoldEdge == nil || u.Edge.Doubled(cut) {
		return key(i, e, sideOf(e, u)), true
	}
	half := drawnSide(i.Piece)
	if e == cut.Lay.FoldEdge {
		if e = at(-step); e == cut.Lay.FoldEdge {
			return model.EdgeUse{}, false
		}
		half = half.Other()
	}
	if !e.Doubled(cut) {
		half = i.Side
	}
	return key(i, e, half), true
}

// sideOf gives the side on which the neighbour e of an edge lies.
func sideOf(e *model.Edge, u *model.EdgeUse) model.Side {
	if e.Doubled(u.Instance.Cut) {
		return u.Side
	}
	return u.Instance.Side
}

// neighbours gives both of them.
func neighbours(u *model.EdgeUse) (all []model.EdgeUse) {
	for _, step := range []int{-1, 1} {
		if n, ok := neighbour(u, step); ok {
			all = append(all, n)
		}
	}
	return
}

// near gives what stands before or after an edge in each garment: where the
// neighbour is not there, since it has a guard, the one beyond it.
func near(space *condition.Space, u *model.EdgeUse, step int) (all []member) {
	n, ok := neighbour(u, step)
	if !ok {
		return
	}
	left, i := u.Instance.Cond, u.Instance
	if space.Implies(left, n.Edge.Cond) || i.Cut.Lay.Fold && !u.Edge.Doubled(i.Cut) {
		return []member{{n, left}}
	}
	for count := len(i.Piece.Edges); count > 1 && left != condition.False; count-- {
		all = with(all, n, space.And(left, n.Edge.Cond))
		left = space.Diff(left, n.Edge.Cond)
		if n, ok = neighbour(&n, step); !ok || i.Cut.Lay.FoldEdge == n.Edge {
			break
		}
	}
	return
}

// meetings knows which edges meet at a point, since one seam line takes both.
// Few meet each edge.
type meetings map[model.EdgeUse][]model.EdgeUse

func (m meetings) add(a, b model.EdgeUse) {
	if !m.has(a, b) {
		m[a] = append(m[a], b)
		m[b] = append(m[b], a)
	}
}

func (m meetings) has(a, b model.EdgeUse) bool { return has(m[a], b) }

// take notes the edges that meet since one seam line takes them: those that follow
// each other in a row, those at the same end of two rows, and what is caught with
// them.
func (m meetings) take(space *condition.Space, l *seamline) {
	for _, r := range []*row{&l.a, &l.b} {
		for _, x := range r.pairs {
			m.add(x.a, x.b)
		}
	}
	m.across(space, l.a.first, l.b.first)
	m.across(space, l.a.last, l.b.last)
	for _, c := range l.caught {
		for _, u := range l.uses[:len(l.uses)-len(l.caught)] {
			if c.Instance != u.Instance { // the two long edges of a folded band lie on each other, and meet at no point
				m.add(c, u)
			}
		}
	}
}

func (m meetings) across(space *condition.Space, a, b []member) {
	for _, x := range a {
		for _, y := range b {
			if space.Overlaps(x.cond, y.cond) {
				m.add(x.use, y.use)
			}
		}
	}
}

// evidence says how the ends of two edges were told apart.
type evidence uint8

const (
	noEvidence evidence = iota
	byName              // only the names of their neighbours are alike
	byMeeting           // their neighbours are sewn together
)

// run tells whether two edges that are sewn together run the same way round their
// pieces as drawn (+1) or opposite ways (-1): by the edges that meet at their
// ends, and where nothing is sewn there by the names of these edges, if a name
// stands at one end only.
func (m meetings) run(a, b *model.EdgeUse) (int8, evidence) {
	if way := m.way(a, b, m.has); way != 0 {
		return way, byMeeting
	}
	if len(a.Instance.Piece.Edges) < 3 || len(b.Instance.Piece.Edges) < 3 {
		return 0, noEvidence
	}
	if way := m.way(a, b, func(x, y model.EdgeUse) bool { return x.Edge.ID == y.Edge.ID }); way != 0 {
		return way, byName
	}
	return 0, noEvidence
}

// way compares the neighbours of two edges, 0 if they tell nothing or contradict
// each other.
func (m meetings) way(a, b *model.EdgeUse, meet func(a, b model.EdgeUse) bool) int8 {
	at := func(x, y int) bool {
		n, ok := neighbour(a, x)
		o, ok2 := neighbour(b, y)
		return ok && ok2 && meet(n, o)
	}
	same, opposite := at(-1, -1) || at(1, 1), at(-1, 1) || at(1, -1)
	switch {
	case same == opposite:
		return 0
	case same:
		return 1
	}
	return -1
}

// hand gives the hand of the part an edge lies on; of a part cut on the fold the
// half as drawn is + and the other -. 0 is either.
func hand(u *model.EdgeUse) int8 {
	i := u.Instance
	if i.Hand != 0 || !i.Cut.Lay.Fold || u.Side == model.Neither || i.Piece.Symmetric {
		return i.Hand
	}
	if u.Side == drawnSide(i.Piece) {
		return 1
	}
	return -1
}

// byHands tells whether two edges that are sewn right sides together run the same
// way (+1) or opposite ways (-1) round their pieces, by the hands of their parts:
// of parts of one hand one runs up as the other runs down. 0 is not known.
func byHands(a, b *model.EdgeUse) int8 {
	return -hand(a) * hand(b)
}
