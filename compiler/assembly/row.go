package assembly

import (
	"slices"

	"seamwarden/compiler/model"
)

// position is one member of a row of a seam: a line, or several that lie on each
// other there. dir is +1 if the row runs along it clockwise as drawn, -1 if not.
type position struct {
	of    *model.Target
	stack []*line
	dir   int8
}

// rows gives the two rows of a seam line in this garment.
func (t *worktable) rows(j *model.Join) [2][]position {
	return [2][]position{t.row(j.Seam.Joins, j.A), t.row(j.Seam.To, j.B)}
}

func (t *worktable) row(targets []*model.Target, uses []*model.EdgeUse) (row []position) {
	for _, o := range targets {
		p := position{of: o}
		o.Each(func(x *model.Target) {
			for _, u := range x.Uses {
				l := t.lines[keyOf(u)]
				if l != nil && t.holds(u.Cond) && slices.Contains(uses, u) && !slices.Contains(p.stack, l) {
					p.stack = append(p.stack, l)
				}
			}
		})
		if len(p.stack) > 0 {
			row = append(row, p)
		}
	}
	return
}

// share gives the stretch of a line that a seam takes: what its row says, or what
// the other row says if the edge lies in other seams too.
func (t *worktable) share(j *model.Join, p position, shared bool) (from, to *model.Target) {
	if p.of.From != nil || !shared {
		return p.of.From, p.of.To
	}
	for _, o := range append(slices.Clone(j.Seam.Joins), j.Seam.To...) {
		if o.From != nil {
			return o.From, o.To
		}
	}
	return nil, nil
}

// meeting notes which lines meet at a point: those that are sewn to each other one
// to one, and neighbours in a row.
func (t *worktable) meeting() {
	note := func(a, b *line) {
		t.meets[[2]model.EdgeUse{a.use, b.use}], t.meets[[2]model.EdgeUse{b.use, a.use}] = true, true
	}
	t.eachJoin(func(j *model.Join) {
		rows := t.rows(j)
		for _, row := range rows {
			for n := 1; n < len(row); n++ {
				note(row[n-1].stack[0], row[n].stack[0])
			}
		}
		if len(rows[0]) == 1 && len(rows[1]) == 1 {
			for _, a := range rows[0][0].stack {
				for _, b := range rows[1][0].stack {
					note(a, b)
				}
			}
		}
	})
}

// touch reports whether an end of one line is the same point as an end of another:
// already, or by the edges that follow there. The ends are -1 for the beginning,
// +1 for the end.
func (t *worktable) touch(a *line, x int, b *line, y int) bool {
	if len(a.stretches) > 0 && t.one(a.tip(x)) == t.one(b.tip(y)) {
		return true
	}
	n, ok := t.next(a, x)
	m, ok2 := t.next(b, y)
	return ok && ok2 && (t.meets[[2]model.EdgeUse{n, m}] || n == b.use && m == a.use)
}

// tip gives the point at an end of a line.
func (l *line) tip(end int) int {
	if end < 0 {
		return l.stretches[0].start
	}
	return l.stretches[len(l.stretches)-1].end
}

// next gives the line that follows at an end of another; false at the fold.
func (t *worktable) next(l *line, end int) (model.EdgeUse, bool) {
	i, side := l.use.Instance, l.use.Side
	e := t.beside(l.use, end)
	if side == model.Neither && i.Cut.Lay.Fold && i.Cut.Lay.FoldEdge != nil { // it runs across the fold
		side = drawnSide(i.Piece)
		if onTheFold(i, e) {
			e, side = t.beside(l.use, -end), side.Other()
		}
	}
	if e == l.use.Edge || onTheFold(i, e) {
		return model.EdgeUse{}, false
	}
	if !e.Doubled(i.Cut) {
		side = i.Side
	}
	u := key(i, e, side)
	return u, t.lines[u] != nil
}

// runs tells whether two lines that are sewn to each other run the same way round
// their pieces (+1) or opposite ways (-1): by the ends that meet, by the hands, by
// neighbours of one name, else as two parts of one hand do. A part cut on the fold
// may lie either way round, so that its hand is asked for last.
func (t *worktable) runs(a, b *line) int8 {
	if way := t.told(a, b, t.touch); way != 0 {
		return way
	}
	if x, y := a.use.Instance.Hand, b.use.Instance.Hand; x != 0 && y != 0 {
		return -x * y
	}
	if way := t.told(a, b, t.alike); way != 0 {
		return way
	}
	if a.hand != 0 && b.hand != 0 {
		return -a.hand * b.hand
	}
	return -1
}

// told tells how two lines run from what is known of their ends; 0 if it cannot.
func (t *worktable) told(a, b *line, meet func(a *line, x int, b *line, y int) bool) int8 {
	same := meet(a, -1, b, -1) || meet(a, 1, b, 1)
	opposite := meet(a, -1, b, 1) || meet(a, 1, b, -1)
	switch {
	case same && !opposite:
		return 1
	case opposite && !same:
		return -1
	}
	return 0
}

// alike reports whether the edges that follow at two ends have one name.
func (t *worktable) alike(a *line, x int, b *line, y int) bool {
	return len(a.use.Edge.Piece.Edges) > 2 && len(b.use.Edge.Piece.Edges) > 2 && t.beside(a.use, x).ID == t.beside(b.use, y).ID
}

// direct tells which way each member of a row is run along. Members that follow
// each other touch; those that are not known to lie as the hands say.
func (t *worktable) direct(row []position) {
	for n := 1; n < len(row); n++ {
		a, b := &row[n-1], &row[n]
		for _, x := range []int{1, -1} {
			for _, y := range []int{-1, 1} {
				if int(a.dir) != -x && int(b.dir) != y && t.touch(a.stack[0], x, b.stack[0], y) {
					a.dir, b.dir = int8(x), int8(-y)
				}
			}
		}
	}
	lead := int8(1)
	for _, p := range row {
		if p.dir != 0 && p.stack[0].hand != 0 {
			lead = p.dir * p.stack[0].hand
		}
	}
	for n := range row {
		if p := &row[n]; p.dir == 0 {
			p.dir = lead
			if p.stack[0].hand != 0 {
				p.dir *= p.stack[0].hand
			}
		}
	}
}

// face turns a single line so that it runs along with the row that it is sewn to.
func (t *worktable) face(p *position, row []position) {
	if len(row) == 1 {
		p.dir = row[0].dir * t.runs(row[0].stack[0], p.stack[0])
		return
	}
	l, first, last := p.stack[0], row[0], row[len(row)-1]
	along := t.touch(l, -1, first.stack[0], -int(first.dir)) || t.touch(l, 1, last.stack[0], int(last.dir))
	back := t.touch(l, 1, first.stack[0], -int(first.dir)) || t.touch(l, -1, last.stack[0], int(last.dir))
	switch {
	case along != back && along:
		p.dir = 1
	case along != back:
		p.dir = -1
	default:
		p.dir = -first.dir
		if first.stack[0].hand != 0 && l.hand != 0 {
			p.dir *= first.stack[0].hand * l.hand
		}
	}
}
