package assembly

import (
	"slices"

	"seamwarden/compiler/model"
)

// joinLines sews two rows to each other: their stretches are no longer open, and
// the points along them become one.
func (t *worktable) joinLines(j *model.Join, o *model.Target) {
	rows := t.rows(j)
	if len(rows[0]) == 0 || len(rows[1]) == 0 {
		return
	}
	t.direct(rows[0])
	t.direct(rows[1])
	switch {
	case len(rows[0]) == 1:
		t.face(&rows[0][0], rows[1])
	case len(rows[1]) == 1:
		t.face(&rows[1][0], rows[0])
	}
	a, b := t.run(j, o, rows[0]), t.run(j, o, rows[1])
	if len(a) == 0 || len(b) == 0 {
		return
	}
	if rows[0][0].stack[0] == rows[1][0].stack[0] { // an edge folded on itself
		t.unite(a[0], a[len(a)-1])
		return
	}
	if len(a) == len(b) {
		for n := range a {
			t.unite(a[n], b[n])
		}
		return
	}
	t.unite(a[0], b[0])
	t.unite(a[len(a)-1], b[len(b)-1])
}

// run sews the stretches of a row and gives the points along it.
func (t *worktable) run(j *model.Join, o *model.Target, row []position) (points []int) {
	if t.sewn[j] == nil {
		t.sewn[j] = map[*stretch]bool{}
	}
	for _, p := range row {
		var at []int
		for _, l := range p.stack {
			for _, s := range t.part(j, o, p, l) {
				s.sewn = true
				t.sewn[j][s] = true
				if l == p.stack[0] {
					at = append(at, s.start, s.end)
				}
			}
			if l != p.stack[0] {
				t.layOn(p.stack[0], l)
			}
		}
		if p.dir < 0 {
			slices.Reverse(at)
		}
		if len(points) > 0 && len(at) > 0 {
			t.unite(points[len(points)-1], at[0])
		}
		points = append(points, at...)
	}
	return
}

// layOn unites the ends of two lines that lie on each other in a stack.
func (t *worktable) layOn(a, b *line) {
	dir := int(t.runs(a, b))
	t.unite(a.tip(-1), b.tip(-dir))
	t.unite(a.tip(1), b.tip(dir))
}

// part gives the stretches of a line that an operation on a seam sews; nil for o
// stands for the whole seam.
func (t *worktable) part(j *model.Join, o *model.Target, p position, l *line) []*stretch {
	from, to := t.share(j, p, t.several[l] > 1)
	if o != nil && o.From != nil {
		from, to = o.From, o.To
	}
	first, end := t.span(l, from, to)
	return l.stretches[first:end]
}

// progress gives how many stretches of a seam line are sewn, of how many.
func (t *worktable) progress(j *model.Join) (done, of int) {
	if !t.holds(j.Cond) || t.sewn[j] == nil {
		return 0, 1
	}
	for _, row := range t.rows(j) {
		for _, p := range row {
			for _, l := range p.stack {
				for _, s := range t.part(j, nil, p, l) {
					of++
					if t.sewn[j][s] {
						done++
					}
				}
			}
		}
	}
	return
}

// rounds walks along the open edges of everything that hangs together.
func (t *worktable) rounds() map[*model.Instance][]Round {
	at := map[int][]*stretch{} // the open stretches at each point
	var open []*stretch
	for _, u := range t.order {
		for _, s := range t.lines[u].stretches {
			if !s.sewn {
				open = append(open, s)
				at[t.one(s.start)] = append(at[t.one(s.start)], s)
				at[t.one(s.end)] = append(at[t.one(s.end)], s)
			}
		}
	}
	all := map[*model.Instance][]Round{}
	walked := map[*stretch]bool{}
	walk := func(s *stretch, from int) {
		r := Round{}
		start := from
		for s != nil {
			walked[s] = true
			r.Edges = append(r.Edges, t.open(s))
			from = t.one(s.start) + t.one(s.end) - from // the other end
			s = nil
			for _, next := range at[from] {
				if !walked[next] && s == nil {
					s = next
				}
			}
		}
		r.Closed = from == start
		root := t.root(r.Edges[0].Instance)
		all[root] = append(all[root], r)
	}
	for _, s := range open { // runs that end in a seam are walked from an end
		for _, p := range []int{t.one(s.start), t.one(s.end)} {
			if !walked[s] && len(at[p])%2 == 1 {
				walk(s, p)
			}
		}
	}
	for _, s := range open {
		if !walked[s] {
			walk(s, t.one(s.start))
		}
	}
	return all
}

// open gives an open stretch as others see it.
func (t *worktable) open(s *stretch) OpenEdge {
	l := s.line
	e := OpenEdge{EdgeUse: l.use, Rim: s.rim, By: s.by}
	e.Cond = e.Instance.Cond
	if len(l.marks) == 0 {
		return e
	}
	names := append(append([]string{t.beside(l.use, -1).ID}, l.marks...), t.beside(l.use, 1).ID)
	at := slices.Index(l.stretches, s)
	e.From, e.To = names[at], names[at+1]
	return e
}
