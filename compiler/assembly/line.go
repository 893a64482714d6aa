package assembly

import "seamwarden/compiler/model"

// line is an edge of a cut part, divided where a seam or a step begins or ends on
// it. Its stretches run clockwise as drawn.
type line struct {
	use       model.EdgeUse
	marks     []string // the marks that divide it, in order
	stretches []*stretch
	hand      int8 // of the part, or of the half that it lies on; 0 is either
}

// stretch is a part of an edge between two points, that are numbers of points of
// the worktable.
type stretch struct {
	line       *line
	start, end int
	sewn       bool
	rim        Rim
	by         *model.Op
}

// corner is where one edge of a cut part ends and the next begins, on one side of
// the fold if it is cut on the fold.
type corner struct {
	part *model.Instance
	at   int
	side model.Side
}

// layOut makes the lines of every cut part, and learns which edges meet.
func (t *worktable) layOut() {
	for _, i := range t.parts {
		for _, e := range t.edgesOf(i) {
			for _, s := range sidesOf(i, e) {
				u := key(i, e, s)
				t.order = append(t.order, u)
				t.lines[u] = &line{use: u, hand: lineHand(u)}
			}
		}
	}
	t.divide()
	for _, u := range t.order {
		t.draw(t.lines[u])
	}
	t.meeting()
}

// edgesOf lists the edges that a part has in this garment, but not the one that
// lies on the fold.
func (t *worktable) edgesOf(i *model.Instance) (all []*model.Edge) {
	for _, e := range i.Piece.Edges {
		if t.holds(e.Cond) && !onTheFold(i, e) {
			all = append(all, e)
		}
	}
	return
}

func onTheFold(i *model.Instance, e *model.Edge) bool {
	return i.Cut.Lay.Fold && i.Cut.Lay.FoldEdge == e
}

// sidesOf gives the sides on which a part has an edge: both, if it is away from
// the fold.
func sidesOf(i *model.Instance, e *model.Edge) []model.Side {
	if e.Doubled(i.Cut) {
		return []model.Side{model.Left, model.Right}
	}
	return []model.Side{i.Side}
}

// lineHand is the hand of the part that an edge lies on. Of a part cut on the fold
// the half as drawn is +, and so is an edge that runs across the fold.
func lineHand(u model.EdgeUse) int8 {
	switch i := u.Instance; {
	case !i.Cut.Lay.Fold || i.Cut.Lay.FoldEdge == nil:
		return i.Hand
	case u.Side == model.Neither || u.Side == drawnSide(i.Piece):
		return 1
	}
	return -1
}

// drawnSide is the side of the body on which the half as drawn of a part cut on
// the fold is worn.
func drawnSide(p *model.Piece) model.Side {
	if p.DrawnLeft != p.WornIn {
		return model.Left
	}
	return model.Right
}

// ends gives the corners at the beginning and the end of a line.
func (t *worktable) ends(u model.EdgeUse) (start, end corner) {
	i, n := u.Instance, len(u.Instance.Piece.Edges)
	start, end = corner{i, (u.Edge.Index + n - 1) % n, u.Side}, corner{i, u.Edge.Index, u.Side}
	if !i.Cut.Lay.Fold || i.Cut.Lay.FoldEdge == nil {
		return corner{i, t.before(i, start.at), model.Neither}, corner{i, t.before(i, end.at), model.Neither}
	}
	f, right := i.Cut.Lay.FoldEdge, drawnSide(i.Piece)
	if u.Side == model.Neither { // it runs across the fold
		if (f.Index+1)%n == u.Edge.Index {
			start, end = corner{i, end.at, right.Other()}, corner{i, end.at, right}
		} else {
			start, end = corner{i, start.at, right}, corner{i, start.at, right.Other()}
		}
	}
	return
}

// before gives the corner that stands for one whose edge is not there in this
// garment: the end of the last edge before it that is.
func (t *worktable) before(i *model.Instance, at int) int {
	n := len(i.Piece.Edges)
	for range n {
		if t.holds(i.Piece.Edges[at].Cond) {
			return at
		}
		at = (at + n - 1) % n
	}
	return at
}

// point gives the number of a corner.
func (t *worktable) point(c corner) int {
	n, known := t.corners[c]
	if !known {
		n = t.newPoint()
		t.corners[c] = n
	}
	return n
}

func (t *worktable) newPoint() int {
	t.points = append(t.points, len(t.points))
	return len(t.points) - 1
}

// one finds the number that stands for all points that are one with a point.
func (t *worktable) one(p int) int {
	for t.points[p] != p {
		t.points[p] = t.points[t.points[p]]
		p = t.points[p]
	}
	return p
}

// unite makes two points one: a seam ends there.
func (t *worktable) unite(a, b int) {
	if a, b = t.one(a), t.one(b); a != b {
		t.points[max(a, b)] = min(a, b)
	}
}

// draw makes the stretches of a line.
func (t *worktable) draw(l *line) {
	from, to := t.ends(l.use)
	at := t.point(from)
	for range l.marks {
		next := t.newPoint()
		l.stretches = append(l.stretches, &stretch{line: l, start: at, end: next})
		at = next
	}
	l.stretches = append(l.stretches, &stretch{line: l, start: at, end: t.point(to)})
	for _, s := range l.stretches {
		if t.holds(l.use.Edge.LeftRaw) {
			s.rim = LeftRaw
		}
	}
}

// shutLine notes that a whole edge is sewn in.
func (t *worktable) shutLine(u model.EdgeUse) {
	if l := t.lines[u]; l != nil {
		for _, s := range l.stretches {
			s.sewn = true
		}
	}
}
