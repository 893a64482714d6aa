package check

import (
	"fmt"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "marked-for-nothing", Severity: finding.Warning, Category: "guards", FromAbsence: true, whole: true, ahead: -2, run: markedForNothing,
		Purpose: "A mark between two edges is marked in garments in which both edges are sewn as one.",
		Why:     "She marks where one edge ends and the next begins, and nothing begins there: a guard is missing."})
	register(Rule{ID: "curve-guards-differ", Severity: finding.Warning, Category: "guards", whole: true, ahead: -2, run: curveGuards,
		Purpose: "An edge is steadied in some garments, and its seam is notched out in others.",
		Why:     "Both are done to a curve. Where only one is, the guard of one of them is wrong, or the edge is straight there."})
}

// markedForNothing looks at the marks that divide a smooth line into two edges.
func markedForNothing(r *run) {
	_, used, _ := r.signs()
	for _, op := range r.Ops() {
		if op.Verb != "mark" {
			continue
		}
		bad, span, name := condition.False, finding.Span{}, ""
		for _, o := range op.Objects {
			o.Each(func(t *model.Target) {
				if t.Kind != model.ToMark || t.Mark == nil || !t.Mark.Between {
					return
				}
				needed := r.Space.Or(used[t.Mark], r.dividing(t.Mark))
				idle := r.Space.Diff(r.Space.And(op.Cond, t.Cond), needed)
				if !r.possible(needed) || !r.possible(idle) {
					return // it is used nowhere, which is told of the mark itself
				}
				if bad == condition.False {
					span, name = t.Span, t.Describe()
				}
				bad = r.Space.Or(bad, idle)
			})
		}
		if r.possible(bad) && !r.explained(bad) {
			r.report(bad, at(span, "not needed here", fmt.Sprintf("%s is marked, and the two edges beside it are sewn as one.", Upper(name)), "Guard the operation as what needs the mark is guarded."))
		}
	}
}

// dividing is where something is done to one of the two edges beside a mark and not
// to the other.
func (r *run) dividing(m *model.Mark) condition.Cond {
	if m.On == nil || m.On.Index+1 >= len(m.Piece.Edges) {
		return condition.True
	}
	a, b := m.On, m.Piece.Edges[m.On.Index+1]
	c := condition.False
	for _, s := range r.Seams {
		one, other := condition.False, condition.False
		for _, u := range s.Uses() {
			switch u.Edge {
			case a:
				one = r.Space.Or(one, u.Cond)
			case b:
				other = r.Space.Or(other, u.Cond)
			}
		}
		c = r.Space.Or(c, r.Space.And(s.Cond, r.oneOnly(one, other)))
	}
	for _, op := range r.Ops() {
		one, other := condition.False, condition.False
		for _, o := range op.Objects {
			o.Each(func(t *model.Target) {
				switch t.Edge {
				case nil:
				case a:
					one = r.Space.Or(one, t.Cond)
				case b:
					other = r.Space.Or(other, t.Cond)
				}
			})
		}
		c = r.Space.Or(c, r.Space.And(op.Cond, r.oneOnly(one, other)))
	}
	return c
}

// oneOnly is where one of two conditions holds and the other does not.
func (r *run) oneOnly(a, b condition.Cond) condition.Cond {
	return r.Space.Or(r.Space.Diff(a, b), r.Space.Diff(b, a))
}

// curveGuards compares where an edge is staystitched with where its seam is notched
// out. An edge may be steadied and not notched, if it is only cut on the bias.
func curveGuards(r *run) {
	steady := map[*model.Edge]condition.Cond{}
	first := map[*model.Edge]*model.Op{}
	for _, op := range r.Ops() {
		if op.Verb != "staystitch" {
			continue
		}
		for _, o := range op.Objects {
			o.Each(func(t *model.Target) {
				if t.Kind == model.ToEdge {
					steady[t.Edge] = r.Space.Or(steady[t.Edge], r.Space.And(op.Cond, t.Cond))
					if first[t.Edge] == nil {
						first[t.Edge] = op
					}
				}
			})
		}
	}
	if len(steady) == 0 {
		return
	}
	for _, op := range r.Ops() {
		if op.Verb != "notch out" {
			continue
		}
		for _, o := range op.Objects {
			o.Each(func(t *model.Target) { r.notched(op, t, steady, first) })
		}
	}
}

// notched reports a seam that is notched out where none of its edges is steadied,
// although one of them is in other garments in which it is there.
func (r *run) notched(op *model.Op, t *model.Target, steady map[*model.Edge]condition.Cond, first map[*model.Edge]*model.Op) {
	if t.Seam == nil {
		return
	}
	var edge *model.Edge
	there, done := condition.False, condition.False
	for _, u := range t.Seam.Uses() {
		if c, ok := steady[u.Edge]; ok {
			edge, done = u.Edge, r.Space.Or(done, c)
			there = r.Space.Or(there, u.Cond)
		}
	}
	bad := r.Space.Diff(r.Space.All(op.Cond, t.Cond, there), done)
	if edge == nil || !r.possible(done) || !r.possible(bad) {
		return
	}
	f := at(op.Span, "a straight edge here?", fmt.Sprintf("%s is notched out, and the %s of %s is not steadied.", Upper(seamName(t.Seam)), edgeCalled(edge.Name), the(edge.Piece.Name)),
		"Guard both alike: both are done where the edge is curved.")
	r.report(bad, also(f, first[edge].Span, "steadied in other garments only"))
	r.tell(t.Seam, r.Valid) // with the guards alike, it is notched out where it is steadied
}
