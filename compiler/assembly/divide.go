package assembly

import (
	"slices"

	"seamwarden/compiler/model"
)

// claim is what something takes of a line: the stretch between two named points,
// the whole of it where from is nil.
type claim struct {
	line     *line
	from, to *model.Target
}

// divide cuts every line where a seam or a step begins or ends on it. A stretch
// that only one row of a seam names holds for the other row as well, unless the
// seam is all that the edge there is for.
func (t *worktable) divide() {
	seams := map[*line]int{}
	named := t.namedBySteps()
	for _, c := range named {
		seams[c.line]++
	}
	t.eachJoin(func(j *model.Join) {
		for _, row := range t.rows(j) {
			for _, p := range row {
				for _, l := range p.stack {
					seams[l]++
				}
			}
		}
	})
	t.eachJoin(func(j *model.Join) {
		for _, row := range t.rows(j) {
			for _, p := range row {
				for _, l := range p.stack {
					from, to := t.share(j, p, seams[l] > 1)
					named = append(named, claim{l, from, to})
				}
			}
		}
	})
	claims := map[*line][]claim{}
	for _, c := range named {
		c.line.claim(c)
		claims[c.line] = append(claims[c.line], c)
	}
	for l, list := range claims {
		t.settle(l, list)
	}
	t.several = seams
}

// eachJoin calls f for each seam line of this garment.
func (t *worktable) eachJoin(f func(*model.Join)) {
	for _, s := range t.Seams {
		for _, j := range s.Copies {
			if t.holds(j.Cond) {
				f(j)
			}
		}
	}
}

// namedBySteps lists the stretches that operations name.
func (t *worktable) namedBySteps() (all []claim) {
	for _, op := range t.Ops() {
		if !t.holds(op.Cond) {
			continue
		}
		for _, o := range op.Objects {
			if o.From == nil {
				continue
			}
			t.each([]*model.Target{o}, func(x *model.Target) {
				uses := x.Uses
				if x.Seam != nil {
					uses = x.Seam.Uses()
				}
				for _, u := range uses {
					if l := t.lines[keyOf(u)]; l != nil {
						all = append(all, claim{l, o.From, o.To})
					}
				}
			})
		}
	}
	return
}

// claim adds the marks at which a claim ends to those that divide the line.
func (l *line) claim(c claim) {
	for _, end := range []*model.Target{c.from, c.to} {
		if end == nil || end.Mark == nil {
			continue
		}
		for _, m := range l.use.Edge.Piece.Marks {
			if m.ID == end.Mark.ID && m.On == l.use.Edge && !m.Between && !slices.Contains(l.marks, m.ID) {
				l.marks = append(l.marks, m.ID)
			}
		}
	}
}

// settle puts the marks of a line in order. Pieces list them, but not from which
// end; taken is the order in which stretches that begin at an end of the edge
// have the fewest marks inside.
func (t *worktable) settle(l *line, claims []claim) {
	declared := func(mark string) int {
		return slices.IndexFunc(l.use.Edge.Piece.Marks, func(m *model.Mark) bool { return m.ID == mark })
	}
	slices.SortFunc(l.marks, func(a, b string) int { return declared(a) - declared(b) })
	inside := func() (n int) {
		last := len(l.marks) + 1
		for _, c := range claims {
			a, b := t.place(l, c.from), t.place(l, c.to)
			if a >= 0 && b >= 0 && (min(a, b) == 0) != (max(a, b) == last) {
				n += max(a, b) - min(a, b) - 1
			}
		}
		return
	}
	as := inside()
	if slices.Reverse(l.marks); as <= inside() {
		slices.Reverse(l.marks)
	}
}

// place gives where on a line a named point lies: 0 is its beginning, then come its
// marks, then its end; -1 if the line has no such point, or has it twice.
func (t *worktable) place(l *line, at *model.Target) int {
	if at == nil || l.use.Side == model.Neither && l.use.Instance.Cut.Lay.Fold {
		return -1
	}
	before, after := t.beside(l.use, -1), t.beside(l.use, 1)
	last := len(l.marks) + 1
	switch m := at.Mark; {
	case before == after:
		if m == nil {
			return -1
		}
	case at.Edge != nil && at.Edge.ID == before.ID:
		return 0
	case at.Edge != nil && at.Edge.ID == after.ID:
		return last
	}
	if at.Mark == nil {
		return -1
	}
	if n := slices.Index(l.marks, at.Mark.ID); n >= 0 {
		return n + 1
	}
	return t.bound(l, at.Mark.ID, before, last)
}

// bound finds a mark that stands between two edges.
func (t *worktable) bound(l *line, mark string, before *model.Edge, last int) int {
	for _, m := range l.use.Edge.Piece.Marks {
		switch {
		case m.ID != mark || !m.Between:
		case m.On == l.use.Edge:
			return last
		case m.On == before:
			return 0
		}
	}
	return -1
}

// beside gives the edge before (-1) or after (+1) another, also one that lies on
// the fold.
func (t *worktable) beside(u model.EdgeUse, step int) *model.Edge {
	all, n := u.Edge.Piece.Edges, len(u.Edge.Piece.Edges)
	for at := (u.Edge.Index + step + n) % n; ; at = (at + step + n) % n {
		if at == u.Edge.Index || t.holds(all[at].Cond) {
			return all[at]
		}
	}
}

// span gives the stretches of a line between two named points, [from, to): all of
// them where a point is not named, or not found.
func (t *worktable) span(l *line, from, to *model.Target) (first, end int) {
	a, b := t.place(l, from), t.place(l, to)
	if a < 0 || b < 0 || a == b {
		return 0, len(l.stretches)
	}
	return min(a, b), max(a, b)
}
