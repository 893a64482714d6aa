package check

import (
	"math"
	"slices"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/compiler/outline"
)

// mostRows is the number of different garments in which lengths are added up; with
// more, they are passed over.
const mostRows = 64

// rowLengths are the two rows of a seam in millimetres, for every size, in the garments
// of a condition. A size in which an edge is not drawn is no number.
type rowLengths struct {
	cond condition.Cond
	rows [2][]float64
}

// known reports whether both rows are known in every size.
func (l *rowLengths) known() bool {
	for i := range l.rows[0] {
		if math.IsNaN(l.rows[0][i] + l.rows[1][i]) {
			return false
		}
	}
	return true
}

// noLengths begins to add up in the garments of a condition.
func (r *run) noLengths(c condition.Cond) rowLengths {
	n := 1
	if r.Sizes != nil {
		n = max(1, len(r.Sizes.Sizes))
	}
	return rowLengths{cond: r.Space.And(r.Valid, c), rows: [2][]float64{make([]float64, n), make([]float64, n)}}
}

// plus gives the lengths of one row with those of another thing, by the number of the
// size, added, in the garments of c.
func (l rowLengths) plus(row int, c condition.Cond, mm func(size int) float64) rowLengths {
	l.cond = c
	l.rows[row] = slices.Clone(l.rows[row])
	for i := range l.rows[row] {
		l.rows[row][i] += mm(i)
	}
	return l
}

func notKnown(int) float64 { return math.NaN() }

// takenUp says how much darts, pleats and tucks take out of edges, in millimetres; no
// number where that is not said, or where it is not known into which edge they run.
func (r *run) takenUp() map[*model.Edge]float64 {
	taken := map[*model.Edge]float64{}
	for _, x := range r.Shapings {
		if x.In == nil {
			continue
		}
		edges := []*model.Edge{x.In.Edge}
		if x.In.Edge == nil && x.In.Piece != nil {
			edges = x.In.Piece.Edges
		}
		for _, e := range edges {
			switch {
			case e == nil:
			case x.Takes == nil || x.In.Edge == nil || x.Cond != e.Cond:
				taken[e] = math.NaN()
			default:
				taken[e] += x.Takes.Length.MM()
			}
		}
	}
	return taken
}

// takenTwice is the same where a dart or pleat in an edge that runs on over the fold is
// there on either half; nil if a seam has none. Nobody says which of the two is meant:
// a pleat lies at the fold, darts on both sides of it.
func takenTwice(s *model.Seam, taken map[*model.Edge]float64) map[*model.Edge]float64 {
	twice := map[*model.Edge]float64{}
	for _, u := range s.Uses() {
		if taken[u.Edge] != 0 && acrossFold(u) {
			twice[u.Edge] = 2 * taken[u.Edge]
		}
	}
	if len(twice) == 0 {
		return nil
	}
	for e, mm := range taken {
		if _, ok := twice[e]; !ok {
			twice[e] = mm
		}
	}
	return twice
}

// closer takes of two readings of the same rows, in every size, the one in which they
// differ less.
func closer(all, other []rowLengths) []rowLengths {
	for i := range all {
		a, b := &all[i].rows, &other[i].rows
		for k := range a[0] {
			if math.Abs(b[0][k]-b[1][k]) < math.Abs(a[0][k]-a[1][k]) {
				a[0][k], a[1][k] = b[0][k], b[1][k]
			}
		}
	}
	return all
}

// addUp gives the lengths of both rows of a joining in all garments that have it; nil if
// there are too many to tell apart.
func (r *run) addUp(s *model.Seam, j *model.Join, taken map[*model.Edge]float64) []rowLengths {
	all := []rowLengths{r.noLengths(r.Space.And(s.Cond, j.Cond))}
	for row, uses := range [2][]*model.EdgeUse{j.A, j.B} {
		for _, t := range [2][]*model.Target{s.Joins, s.To}[row] {
			all = r.withMember(all, row, of(t, uses), func(u *model.EdgeUse, d *model.Drawn, size int) float64 {
				return r.alongSeam(s, t, u, d, size, taken)
			})
			if len(all) > mostRows {
				return nil
			}
		}
	}
	return all
}

// of lists the uses of a target that are among those of a row.
func of(t *model.Target, uses []*model.EdgeUse) (all []*model.EdgeUse) {
	for _, u := range t.Uses {
		if slices.Contains(uses, u) {
			all = append(all, u)
		}
	}
	return
}

// withMember adds a member of a row. Its uses lie on each other, as the layers of a
// made-up part do, or are alternatives: the first that is there counts.
func (r *run) withMember(all []rowLengths, row int, uses []*model.EdgeUse, long func(u *model.EdgeUse, d *model.Drawn, size int) float64) (out []rowLengths) {
	add := func(l rowLengths, c condition.Cond, mm func(int) float64) {
		if c == condition.False || c == condition.Undecided {
			return
		}
		if mm == nil {
			l.cond = c
			out = append(out, l)
			return
		}
		out = append(out, l.plus(row, c, mm))
	}
	for _, l := range all {
		left := l.cond
		for _, u := range uses {
			here := r.Space.And(left, u.Cond)
			left = r.Space.Diff(left, u.Cond)
			for _, d := range u.Edge.Piece.Outlines {
				if d.Art != nil {
					add(l, r.Space.And(here, d.Cond), func(size int) float64 { return long(u, d, size) })
					here = r.Space.Diff(here, d.Cond)
				}
			}
			add(l, here, notKnown)
		}
		add(l, left, nil)
	}
	return
}

// drawnEdge gives an edge as it is drawn in a size, nil if it is not, or if it is
// reported that the drawing is not that of the piece.
func (r *run) drawnEdge(e *model.Edge, d *model.Drawn, size int) (*outline.Outline, *outline.Edge) {
	if r.Sizes == nil || len(r.Sizes.Sizes) == 0 {
		size = -1
	}
	o := d.Outline(r.Pattern, size)
	if o == nil || r.spoken[d] != condition.False {
		return nil, nil
	}
	return o, o.Edge(e.ID)
}

// alongSeam is the length of an edge, or of a stretch of it, along the seam in one size;
// no number if it is not drawn. Of a part that is cut on the fold, an edge that runs up
// to the fold has both halves.
func (r *run) alongSeam(s *model.Seam, t *model.Target, u *model.EdgeUse, d *model.Drawn, size int, taken map[*model.Edge]float64) float64 {
	o, e := r.drawnEdge(u.Edge, d, size)
	if e == nil {
		return math.NaN()
	}
	width := func(other *outline.Edge) float64 { return r.widthAt(s, u, other) }
	both := acrossFold(u)
	if from, to := r.stretch(s, t, u); from != nil {
		a, b := placeOn(o, e, u.Edge, from), placeOn(o, e, u.Edge, to)
		if both || taken[u.Edge] != 0 { // which half, and whether the dart lies in it, nobody says
			return math.NaN()
		}
		return math.Abs(o.SewPlace(e, b, width) - o.SewPlace(e, a, width))
	}
	if both {
		return 2*o.SewLength(e, width) - taken[u.Edge]
	}
	return o.SewLength(e, width) - taken[u.Edge]
}

// acrossFold reports whether the drawn edge is one half of an edge that runs on over the
// fold.
func acrossFold(u *model.EdgeUse) bool {
	lay := u.Instance.Cut.Lay
	return lay.Fold && lay.FoldEdge != nil && lay.FoldEdge != u.Edge && !u.Edge.Doubled(u.Instance.Cut)
}

// widthAt is the allowance of an edge of the piece: that of the seam for the edge in it,
// of another seam for its neighbours, nothing on the fold.
func (r *run) widthAt(s *model.Seam, u *model.EdgeUse, drawn *outline.Edge) float64 {
	e := u.Edge.Piece.Edge(drawn.Name)
	if e == nil || u.Instance.Cut.Lay.FoldEdge == e {
		return 0
	}
	if e != u.Edge {
		s = nil
		for _, other := range r.Seams {
			if slices.ContainsFunc(other.Uses(), func(o *model.EdgeUse) bool { return o.Edge == e }) {
				s = other
				break
			}
		}
	}
	switch {
	case s != nil:
		w, _ := s.Allowance()
		return w.MM()
	case r.Allow != nil:
		return r.Allow.Length.MM()
	}
	return 0
}
