package check

import (
	"slices"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// stretch is a part of a seam that an operation sews: the steps of its line from
// the first to the one before the last.
type stretch struct {
	op         *model.Op
	cond       condition.Cond
	first, end int
}

// stretches lists what the operations sew of a seam line, and into how many steps it
// is divided: into one, if each of them sews the whole of it.
func (r *run) stretches(_ *model.Seam, j *model.Join) (all []stretch, steps int, known bool) {
	var line [][]string
	steps, known = 1, true
	for x := range r.sewnOn(j) {
		if x.object.From != nil {
			line = points(j)
			steps = max(1, len(line)-1)
			break
		}
	}
	for x := range r.sewnOn(j) {
		y := stretch{x.op, r.Space.And(x.op.Cond, j.Cond), 0, steps}
		if o := x.object; o.From != nil {
			a, b := place(line, o.From), place(line, o.To)
			if a < 0 || b < 0 || a == b {
				known = false
				continue
			}
			y.first, y.end = min(a, b), max(a, b)
		}
		all = append(all, y)
	}
	return
}

// points names the places along a seam where a stretch may begin or end: the
// neighbour of its first edge, the marks and bounds between, the neighbour of
// the last.
func points(j *model.Join) [][]string {
	if len(j.A) == 0 {
		return nil
	}
	row := j.A
	if len(j.B) > len(j.A) {
		row = j.B
	}
	line := [][]string{neighbour(row[0].Edge, -1)}
	for i, u := range row {
		line = append(line, marksOn(u.Edge)...)
		bound := neighbour(u.Edge, 1)
		if i+1 < len(row) {
			bound = append(bound, row[i+1].Edge.ID, row[i+1].Instance.Piece.ID)
		}
		line = append(line, bound)
	}
	return line
}

// pointsOf is the same for one edge.
func pointsOf(e *model.Edge) [][]string {
	return append(append([][]string{neighbour(e, -1)}, marksOn(e)...), neighbour(e, 1))
}

func marksOn(e *model.Edge) (line [][]string) {
	for _, m := range e.Piece.Marks {
		if m.On == e && !m.Between {
			line = append(line, []string{m.ID})
		}
	}
	return
}

// neighbour names what stands before or after an edge on its piece: the edge
// there, and the mark between if there is one.
func neighbour(e *model.Edge, step int) (names []string) {
	n := len(e.Piece.Edges)
	next := e.Piece.Edges[(e.Index+step+n)%n]
	names = append(names, next.ID)
	of := e
	if step < 0 {
		of = next
	}
	for _, m := range of.Dividing {
		names = append(names, m.ID)
	}
	return
}

func place(line [][]string, t *model.Target) int {
	name := t.Path
	switch {
	case t.Mark != nil:
		name = t.Mark.ID
	case t.Edge != nil:
		name = t.Edge.ID
	}
	for i, names := range line {
		for _, n := range names {
			if n == name {
				return i
			}
		}
	}
	return -1
}

// part is what a seam takes of an edge: the whole of it, or the stretch between
// two of its places. Which way round the marks on an edge lie is not declared, so
// two stretches are only known to overlap if they are the same.
type part struct {
	whole      bool
	from, to   int
	unresolved bool
}

func (a part) overlaps(b part) bool {
	switch {
	case a.unresolved || b.unresolved:
		return false
	case a.whole || b.whole:
		return true
	}
	return a == b
}

// partOf tells what a seam takes of an edge: all of it, unless the seam says
// `from … to …` and the edge has these places.
func partOf(s *model.Seam, e *model.Edge) part {
	for _, t := range s.Rows() {
		if t.From == nil || t.To == nil {
			continue
		}
		line := pointsOf(e)
		a, b := place(line, t.From), place(line, t.To)
		switch {
		case a < 0 && b < 0 && t.Edge != e:
			return part{whole: true}
		case a < 0 || b < 0 || a == b:
			return part{unresolved: true}
		}
		return part{from: min(a, b), to: max(a, b)}
	}
	return part{whole: true}
}

// doubt is where a seam joins a piece that is not cut: that is reported, and
// nothing else is said of the seam there.
func (r *run) doubt(s *model.Seam) condition.Cond {
	c := condition.False
	if len(r.uncut) == 0 {
		return c
	}
	for _, p := range r.index.named[s] {
		c = r.Space.Or(c, r.uncut[p])
	}
	return r.Space.And(c, there(s))
}

// there is where a seam is: everywhere if it is not known what it joins.
func there(s *model.Seam) condition.Cond {
	if len(s.Copies) == 0 {
		return condition.True
	}
	return s.Cond
}

// used is where a part becomes part of the garment; also by a seam of which it is
// not known what it joins besides.
func (r *run) used(i *model.Instance) condition.Cond {
	c := r.facts.Used[i]
	for _, x := range r.index.blind {
		if slices.Contains(r.index.named[x.object.Seam], i.Piece) {
			c = r.Space.Or(c, r.Space.And(x.op.Said, i.Cond))
		}
	}
	return c
}
