package check

import (
	"fmt"

	"seamwarden/compiler/assembly"
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "seam-without-allowance", Severity: finding.Error, Category: "seams", run: noAllowance,
		Purpose: "A seam has no allowance, and the pattern names none.",
		Why:     "Nobody can sew a seam without knowing how far from the edge."})
	register(Rule{ID: "seam-never-sewn", Severity: finding.Error, Category: "seams", FromAbsence: true, run: neverSewn,
		Purpose: "A declared seam is sewn in no step.",
		Why:     "A step is missing: the garment does not hold together there."})
	register(Rule{ID: "seam-sewn-twice", Severity: finding.Error, Category: "seams", run: sewnTwice,
		Purpose: "Two steps sew the same seam.",
		Why:     "The second step asks for something that is done already, so one of them is wrong."})
	register(Rule{ID: "edge-in-two-seams", Severity: finding.Error, Category: "seams", run: twoSeams,
		Purpose: "An edge is joined by two seams.",
		Why:     "An edge that is sewn is shut in; another piece can only be caught in the same seam."})
	register(Rule{ID: "edge-left-raw", Severity: finding.Error, Category: "seams", FromAbsence: true, run: leftRaw,
		Purpose: "Nothing is done to an edge.",
		Why:     "It frays, or a seam, a hem or a facing was forgotten."})
}

func noAllowance(r *run) {
	for _, s := range r.Seams {
		if s.Allow == nil && !s.None {
			r.report(s.Cond, at(s.Span, "no allowance", fmt.Sprintf("The %s seam has no allowance.", s.Name),
				"Add `allow 5/8in` to the head of the pattern for every seam, or to this one; `allow none` if there is none on purpose."))
		}
	}
}

// stretch is a part of a seam that an operation sews: the steps of its line from
// the first to the one before the last.
type stretch struct {
	op         *model.Op
	cond       condition.Cond
	first, end int
}

func (r *run) stretches(s *model.Seam, j *model.Join) (all []stretch, steps int, known bool) {
	line := points(j)
	steps, known = max(1, len(line)-1), true
	for _, op := range r.Ops() {
		if !op.Row.Sews {
			continue
		}
		for _, o := range op.Objects {
			o.Each(func(t *model.Target) {
				if t.Seam != s || !assembly.SewnBy(op, t, j) {
					return
				}
				x := stretch{op, r.Space.And(op.Cond, j.Cond), 0, steps}
				if o.From != nil {
					a, b := place(line, o.From), place(line, o.To)
					if a < 0 || b < 0 || a == b {
						known = false
						return
					}
					x.first, x.end = min(a, b), max(a, b)
				}
				all = append(all, x)
			})
		}
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
		for _, m := range u.Edge.Piece.Marks {
			if m.On == u.Edge && !m.Between {
				line = append(line, []string{m.ID})
			}
		}
		bound := neighbour(u.Edge, 1)
		if i+1 < len(row) {
			bound = append(bound, row[i+1].Edge.ID, row[i+1].Instance.Piece.ID)
		}
		line = append(line, bound)
	}
	return line
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

func neverSewn(r *run) {
	for _, s := range r.Seams {
		bad, part, side := condition.False, false, model.Neither
		for _, j := range s.Copies {
			list, steps, known := r.stretches(s, j)
			if !known {
				r.out = append(r.out, unchecked(model.Unchecked{What: "whether every stretch of the " + s.Name + " seam is sewn", Span: s.Span}))
				continue
			}
			missing := condition.False
			for i := range steps {
				done := condition.False
				for _, x := range list {
					if x.first <= i && i < x.end {
						done = r.Space.Or(done, x.cond)
					}
				}
				missing = r.Space.Or(missing, r.Space.Diff(j.Cond, done))
			}
			if r.possible(missing) {
				side = j.Side
				part = part || len(list) > 0 && steps > 1
			}
			bad = r.Space.Or(bad, missing)
		}
		f := at(s.Span, "declared here", fmt.Sprintf("The %s seam is never sewn.", s.Name), fmt.Sprintf("Add `sew %s` to a step.", s.ID))
		if part {
			f.Headline = fmt.Sprintf("A part of the %s seam is never sewn.", s.Name)
			f.Help = "The stretches that the steps sew do not reach from end to end."
		} else if side != model.Neither && r.sewnSomewhere(s) {
			f.Headline = fmt.Sprintf("The %s seam is never sewn on the %s side.", s.Name, side)
		}
		r.report(bad, f)
	}
}

func (r *run) sewnSomewhere(s *model.Seam) bool {
	for _, j := range s.Copies {
		if list, _, _ := r.stretches(s, j); len(list) > 0 {
			return true
		}
	}
	return false
}

func sewnTwice(r *run) {
	for _, s := range r.Seams {
		done := map[[2]*model.Op]bool{}
		for _, j := range s.Copies {
			list, _, _ := r.stretches(s, j)
			for i, x := range list {
				for _, y := range list[:i] {
					if y.first >= x.end || x.first >= y.end || done[[2]*model.Op{x.op, y.op}] {
						continue
					}
					done[[2]*model.Op{x.op, y.op}] = true
					f := at(x.op.Span, "sewn again", fmt.Sprintf("The %s seam is sewn twice.", s.Name),
						"Take one of them out, say which stretch each sews (`from … to …`), or guard them so that only one applies.")
					r.report(r.Space.And(x.cond, y.cond), also(f, y.op.Span, "sewn here first"))
				}
			}
		}
	}
}

// twoSeams looks for an edge that two seams join, unless each takes a stretch of
// it or it is only caught.
func twoSeams(r *run) {
	type joining struct {
		seam *model.Seam
		cond condition.Cond
	}
	by := map[model.EdgeUse][]joining{}
	reported := map[[2]*model.Seam]bool{}
	for _, s := range r.Seams {
		part := partial(s)
		for _, j := range s.Copies {
			for _, u := range append(append([]*model.EdgeUse(nil), j.A...), j.B...) {
				if part[u.Edge] {
					continue
				}
				for _, o := range by[*u] {
					if pair := [2]*model.Seam{o.seam, s}; o.seam != s && !reported[pair] && r.possible(r.Space.And(o.cond, j.Cond)) {
						reported[pair] = true
						f := at(s.Span, "joined again", fmt.Sprintf("The %s edge of %s is in two seams: %s and %s.", lower(u.Edge.Name), the(u.Instance.Piece.Name), o.seam.Name, s.Name),
							"If both are sewn at once, declare one seam and put the third layer after `catching`. If each takes a part of the edge, say `from … to …`.")
						r.report(r.Space.All(o.cond, j.Cond), also(f, o.seam.Span, "joined here first"))
					}
				}
				by[*u] = append(by[*u], joining{s, j.Cond})
			}
		}
	}
}

// partial lists the edges of which a seam takes only a stretch: in a seam that
// says `from … to …` that is every edge in it.
func partial(s *model.Seam) map[*model.Edge]bool {
	m := map[*model.Edge]bool{}
	stretch := false
	for _, t := range append(append([]*model.Target(nil), s.Joins...), s.To...) {
		stretch = stretch || t.From != nil
	}
	for _, u := range s.Uses() {
		m[u.Edge] = stretch
	}
	return m
}

// leftRaw looks for edges to which nothing happens. The edges of a piece that is
// never sewn at all are left to the rule that says so.
func leftRaw(r *run) {
	for _, p := range r.Pieces {
		for _, e := range p.Edges {
			bad := condition.False
			var where *model.EdgeUse
			for _, i := range p.Cloths() {
				for _, u := range usesOf(r, i, e) {
					raw := r.Space.Diff(r.Space.And(u.Cond, r.facts.Used[i]), r.Space.Or(r.facts.Shut[u], e.LeftRaw))
					if laid(i, e) || !r.possible(raw) {
						continue
					}
					where = &u
					bad = r.Space.Or(bad, raw)
				}
			}
			if where == nil {
				continue
			}
			r.report(bad, at(e.Span, "nothing closes it", fmt.Sprintf("Nothing is done to the %s edge of %s.", lower(e.Name), the(p.Name)),
				fmt.Sprintf("Sew, hem, bind, face or finish it in a step; if it stays as it is cut, say `raw %s` or `selvage %s` in the piece.", e.ID, e.ID)))
		}
	}
}

// laid reports whether a cut lays the edge on the fold.
func laid(i *model.Instance, e *model.Edge) bool { return i.Cut.Lay.FoldEdge == e }

func usesOf(r *run, i *model.Instance, e *model.Edge) (all []model.EdgeUse) {
	c := r.Space.And(i.Cond, e.Cond)
	sides := []model.Side{i.Side}
	if e.Doubled(i.Cut) {
		sides = []model.Side{model.Left, model.Right}
	}
	for _, s := range sides {
		all = append(all, model.EdgeUse{Instance: i, Edge: e, Side: s, Cond: c})
	}
	return
}
