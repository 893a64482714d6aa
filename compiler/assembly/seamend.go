package assembly

import (
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// seamEnd is one end of a seam line. There two neighbouring edges meet, a on one
// side of the seam and b on the other: whatever is sewn along both of them crosses
// the end. Where it cannot be told which edge b is, b is empty and either lists
// those that it may be.
type seamEnd struct {
	line   *seamline
	a, b   model.EdgeUse
	of     [2]foot // the edges of the seam that end there
	told   evidence
	either []model.EdgeUse
	cond   condition.Cond // where the seam has this end
	total  condition.Cond // where it will be sewn to this end
	sewn   condition.Cond // where it is, by now
}

// foot is one of the edges of a seam, and the end of it at which the seam ends:
// -1 its beginning, as drawn, and +1 its end.
type foot struct {
	use  model.EdgeUse
	step int
}

// endsOf finds the ends of a seam line.
func (w *plan) endsOf(l *seamline) (all []*seamEnd) {
	if itself(l.Join) {
		return w.endsOfFolded(l)
	}
	for _, a := range l.a.single {
		for _, b := range l.b.single {
			if c := w.Space.And(a.cond, b.cond); c != condition.False {
				all = append(all, w.endsOfTwo(l, &a.use, &b.use, c)...)
			}
		}
	}
	return append(all, w.endsOfRows(l)...)
}

// endsOfFolded is for an edge that is folded and joined to itself: it ends where
// its own two neighbours meet, and at the fold.
func (w *plan) endsOfFolded(l *seamline) []*seamEnd {
	n := neighbours(l.A[0])
	if len(n) < 2 || !l.reaches(l.A[0].Edge) {
		return nil
	}
	return []*seamEnd{{line: l, a: n[0], b: n[1], of: [2]foot{{keyOf(l.A[0]), -1}, {keyOf(l.A[0]), 1}}, cond: l.Cond}}
}

// endsOfTwo is for one edge joined to one other. Which neighbours meet is told by
// what is sewn there, else by their names, else by the hands of the parts.
func (w *plan) endsOfTwo(l *seamline, a, b *model.EdgeUse, c condition.Cond) (all []*seamEnd) {
	way, from := w.meet.run(a, b)
	if from == noEvidence {
		way = byHands(a, b)
	}
	for _, step := range []int{-1, 1} {
		if way == 0 {
			all = append(all, w.oneSided(l, a, b, step, c)...)
			continue
		}
		of := [2]foot{{*a, step}, {*b, step * int(way)}}
		for _, n := range near(w.Space, a, step) {
			for _, o := range near(w.Space, b, step*int(way)) {
				here := w.Space.All(c, n.cond, o.cond)
				if here != condition.False && l.reaches(n.use.Edge, o.use.Edge) {
					all = append(all, &seamEnd{line: l, a: n.use, b: o.use, of: of, told: from, cond: here})
				}
			}
		}
	}
	return
}

// oneSided gives the ends of a seam of which nobody knows which neighbours meet:
// what is sewn along any of them crosses one end or the other.
func (w *plan) oneSided(l *seamline, a, b *model.EdgeUse, step int, c condition.Cond) (all []*seamEnd) {
	for _, x := range [][2]*model.EdgeUse{{a, b}, {b, a}} {
		for _, n := range near(w.Space, x[0], step) {
			if here := w.Space.And(c, n.cond); here != condition.False && l.reaches(n.use.Edge) {
				all = append(all, &seamEnd{line: l, a: n.use, either: neighbours(x[1]), of: [2]foot{{use: *x[0]}, {use: *x[1]}}, cond: here})
			}
		}
	}
	return
}

// beyond is an edge that lies beside the first or last member of a row, and may
// lie beyond the end of the row.
type beyond struct {
	edge  model.EdgeUse
	of    foot
	cond  condition.Cond
	known bool // it is told that it does
}

// endsOfRows is for seam lines of which a row has several members.
func (w *plan) endsOfRows(l *seamline) (all []*seamEnd) {
	for _, first := range []bool{true, false} {
		a, b := w.beyond(l.a, l.b, first), w.beyond(l.b, l.a, first)
		all = append(all, w.matched(l, a, b)...)
	}
	return
}

// matched puts together what lies beyond the same end of both rows: what is known
// to, what is sewn together there, else what has one name.
func (w *plan) matched(l *seamline, a, b []beyond) (all []*seamEnd) {
	for _, told := range []evidence{byMeeting, byName} {
		for _, x := range a {
			for _, y := range b {
				c := w.Space.And(x.cond, y.cond)
				if c == condition.False || !l.reaches(x.edge.Edge, y.edge.Edge) || !w.meetAs(told, x, y) {
					continue
				}
				all = append(all, &seamEnd{line: l, a: x.edge, b: y.edge, of: [2]foot{x.of, y.of}, told: told, cond: c})
			}
		}
		if len(all) > 0 {
			return
		}
	}
	return append(touching(l, a, b), touching(l, b, a)...)
}

// meetAs reports whether two edges beside the ends of rows meet, as far as one
// kind of evidence goes.
func (w *plan) meetAs(told evidence, x, y beyond) bool {
	if told == byMeeting {
		return x.known && y.known || w.meet.has(x.edge, y.edge)
	}
	return x.edge.Edge.ID == y.edge.Edge.ID
}

// touching gives one-sided ends, where nothing tells which edges meet.
func touching(l *seamline, list, others []beyond) (all []*seamEnd) {
	for _, x := range list {
		e := &seamEnd{line: l, a: x.edge, of: [2]foot{x.of, x.of}, cond: x.cond}
		for _, y := range others {
			e.either = append(e.either, y.edge)
		}
		all = append(all, e)
	}
	return
}

// beyond gives what lies beyond the first, or last, member of a row: away from the
// member that follows it. Where it is not told at which of its ends that one lies,
// and beside a single edge that faces a row of several, both neighbours may.
func (w *plan) beyond(r, other row, first bool) (all []beyond) {
	for _, p := range r.pairs {
		u, next, at := p.a, p.b, r.first
		if !first {
			u, next, at = p.b, p.a, r.last
		}
		for _, m := range at {
			if c := w.Space.And(m.cond, p.cond); m.use == u && c != condition.False {
				all = append(all, w.besideEnd(&u, w.toward(&u, &next), c)...)
			}
		}
	}
	several := condition.False
	for _, p := range other.pairs {
		several = w.Space.Or(several, p.cond)
	}
	for _, m := range r.single {
		if c := w.Space.And(m.cond, several); c != condition.False {
			all = append(all, w.besideEnd(&m.use, 0, c)...)
		}
	}
	return
}

// besideEnd gives the neighbour of an edge away from an inner end, or both if the
// inner end is not known.
func (w *plan) besideEnd(u *model.EdgeUse, inner int, c condition.Cond) (all []beyond) {
	for _, step := range []int{-1, 1} {
		if step == inner {
			continue
		}
		for _, n := range near(w.Space, u, step) {
			if here := w.Space.And(c, n.cond); here != condition.False {
				all = append(all, beyond{n.use, foot{*u, step}, here, inner != 0})
			}
		}
	}
	return
}

// toward tells at which of its ends an edge meets the one that follows it in a
// row; 0 if that is not known.
func (w *plan) toward(u, next *model.EdgeUse) (step int) {
	for _, s := range []int{-1, 1} {
		n, ok := neighbour(u, s)
		if !ok {
			continue
		}
		meet := n == *next
		for _, o := range neighbours(next) {
			meet = meet || w.meet.has(n, o)
		}
		if meet && step != 0 {
			return 0
		}
		if meet {
			step = s
		}
	}
	return
}

// reaches reports whether a seam line goes as far as the end at one of these
// edges: a seam that is declared from a mark to a mark stops before it.
func (l *seamline) reaches(edges ...*model.Edge) bool {
	for _, t := range l.Seam.Rows() {
		if t.From != nil {
			return names(t, edges...)
		}
	}
	return true
}

// names reports whether the stretch of a target ends at one of these edges.
func names(t *model.Target, edges ...*model.Edge) bool {
	for _, end := range []*model.Target{t.From, t.To} {
		for _, e := range edges {
			if end != nil && end.Edge != nil && e != nil && end.Edge.ID == e.ID {
				return true
			}
		}
	}
	return false
}

// reachedBy reports whether an operation on a seam reaches this end: one that
// sews a stretch reaches the end that it names.
func (e *seamEnd) reachedBy(t *model.Target) bool {
	return t.From == nil || names(t, e.a.Edge, e.b.Edge)
}

// turnedAt reports whether a seam line turns the corner here: it joins to each
// other the two edges that meet at this end, so that two layers are sewn round a
// corner, and none of the two seams crosses the other.
func (e *seamEnd) turnedAt(l *seamline) bool {
	others := e.either
	if e.b.Instance != nil {
		others = []model.EdgeUse{e.b}
	}
	for _, o := range others {
		if l.joins(e.a, o) {
			return true
		}
	}
	return false
}

// joins reports whether one of two edges lies in the one row and one in the other.
// What is caught lies on the far side, unless it is a facing or lining of the part
// beside it.
func (l *seamline) joins(x, y model.EdgeUse) bool {
	in := func(list []*model.EdgeUse, u model.EdgeUse) bool {
		for _, v := range list {
			if keyOf(v) == u {
				return true
			}
		}
		return false
	}
	a, b := in(l.A, x) || in(l.B, x), in(l.A, y) || in(l.B, y)
	if a && has(l.caught, y) || b && has(l.caught, x) {
		return !faces(x, y)
	}
	return in(l.A, x) && in(l.B, y) || in(l.A, y) && in(l.B, x)
}

// faces reports whether one of two edges belongs to a layer that looks at the body
// and the other does not, so that one is the facing of the other.
func faces(x, y model.EdgeUse) bool {
	return x.Instance.Piece.WornIn != y.Instance.Piece.WornIn
}
