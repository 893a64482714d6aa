package assembly

import (
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// plan is what can be told of a pattern before the first step: which edges lie in
// which seam line, and where seam lines end.
type plan struct {
	*model.Pattern
	meet  meetings
	lines map[*model.Join]*seamline
	of    map[*model.Instance][]*seamline // the seam lines that take a part
	takes map[model.EdgeUse][]*seamline   // the seam lines that take an edge
	ends  map[model.EdgeUse][]*seamEnd    // the ends that an edge crosses
	gaps  map[string]*model.Gap
	// everLeft is where an opening is left, now or later
	everLeft map[*model.Gap]condition.Cond
	made     map[*model.Part][]*seamline // what holds a made-up part together
}

// seamline is one real seam: its two rows, and what is caught between them.
type seamline struct {
	*model.Join
	n      int // how manieth it is
	a, b   row
	caught []model.EdgeUse
	uses   []model.EdgeUse // all of these
	parts  []*model.Instance
	ends   []*seamEnd
	will   []deed         // what sews it, now or later
	total  condition.Cond // and where
}

func newPlan(p *model.Pattern) *plan {
	parts, lines, uses := sizes(p)
	w := &plan{Pattern: p, meet: make(meetings, uses), lines: make(map[*model.Join]*seamline, lines), of: make(map[*model.Instance][]*seamline, parts),
		takes: make(map[model.EdgeUse][]*seamline, uses), ends: make(map[model.EdgeUse][]*seamEnd, uses),
		gaps: map[string]*model.Gap{}, everLeft: map[*model.Gap]condition.Cond{}, made: map[*model.Part][]*seamline{}}
	for _, g := range p.Gaps {
		w.gaps[g.ID] = g
	}
	for _, op := range p.Ops() {
		if g := w.gapLeft(op); g != nil {
			w.everLeft[g] = p.Space.Or(w.everLeft[g], op.Cond)
		}
	}
	all := make([]*seamline, 0, lines)
	for _, s := range p.Seams {
		for _, j := range s.Copies {
			all = append(all, w.take(j))
		}
	}
	for _, l := range all {
		w.draw(l)
	}
	for _, x := range p.Parts {
		w.made[x] = w.inside(x)
	}
	return w
}

// sizes counts what is kept for each cut part, seam line and edge in a seam, so that
// no map has to grow.
func sizes(p *model.Pattern) (parts, lines, uses int) {
	for _, x := range p.Pieces {
		parts += len(x.Instances())
	}
	for _, s := range p.Seams {
		lines += len(s.Copies)
		uses += len(s.Uses())
	}
	return
}

// gapLeft gives the opening that an operation leaves.
func (w *plan) gapLeft(op *model.Op) *model.Gap {
	if p := op.Phrase("leaving"); p != nil {
		return w.gaps[p.Gap]
	}
	return nil
}

// holds gives the garments in which an operation is done: what needs an opening is
// done only where one is left, though it may stand before the step that leaves it.
func (w *plan) holds(op *model.Op) condition.Cond {
	c := op.Cond
	needs := func(t *model.Target) {
		if t.Gap != nil {
			c = w.Space.And(c, w.everLeft[t.Gap])
		}
	}
	each(op.Objects, needs)
	if p := op.Phrase("through"); p != nil {
		each(p.Targets, needs)
	}
	return c
}

// take notes what a seam line takes.
func (w *plan) take(j *model.Join) *seamline {
	l := &seamline{Join: j, n: len(w.lines), a: rowOf(w.Space, j, j.A), b: rowOf(w.Space, j, j.B), caught: caught(j)}
	if l.uses = keys(j.A); !itself(j) {
		l.uses = append(l.uses, keys(j.B)...)
	}
	l.uses = append(l.uses, l.caught...)
	w.lines[j] = l
	var seen []*model.Instance
	for n, u := range l.uses {
		w.takes[u] = append(w.takes[u], l)
		if has(seen, u.Instance) {
			continue
		}
		seen = append(seen, u.Instance)
		if n < len(l.uses)-len(l.caught) {
			l.parts = append(l.parts, u.Instance)
		}
		w.of[u.Instance] = append(w.of[u.Instance], l)
	}
	w.meet.take(w.Space, l)
	return l
}

// draw notes where a seam line ends, once it is known which edges meet.
func (w *plan) draw(l *seamline) {
	for _, e := range w.endsOf(l) {
		l.ends = append(l.ends, e)
		w.ends[e.a] = append(w.ends[e.a], e)
		if e.b.Instance != nil && e.b != e.a {
			w.ends[e.b] = append(w.ends[e.b], e)
		}
	}
}

// inside lists the seam lines that join the pieces of a made-up part to one
// another, or one of them to itself.
func (w *plan) inside(x *model.Part) (all []*seamline) {
	in := map[*model.Instance]bool{}
	for _, t := range x.Of {
		for _, i := range t.Instances {
			in[i] = true
		}
	}
	for _, t := range x.Of {
		for _, i := range t.Instances {
			for _, l := range w.of[i] {
				if l.parts[0] == i && within(l.parts, in) {
					all = append(all, l)
				}
			}
		}
	}
	return
}

func within(list []*model.Instance, in map[*model.Instance]bool) bool {
	for _, i := range list {
		if !in[i] {
			return false
		}
	}
	return true
}

// foresee notes where each seam line will be sewn, so that one that is never sewn
// is left to the rule that says so.
func (w *plan) foresee(op *model.Op) {
	if !op.Row.Sews {
		return
	}
	each(op.Objects, func(t *model.Target) {
		if t.Seam == nil {
			return
		}
		for _, j := range t.Seam.Copies {
			if c := w.Space.And(w.holds(op), j.Cond); SewnBy(op, t, j) && c != condition.False {
				w.lines[j].foresee(w.Space, op, t, c)
			}
		}
	})
}

// foresee leaves out of an end what is sewn through all that lies there: that can
// be done when the end is closed.
func (l *seamline) foresee(space *condition.Space, op *model.Op, t *model.Target, c condition.Cond) {
	l.will = append(l.will, deed{op, c})
	l.total = space.Or(l.total, c)
	for _, e := range l.ends {
		if op.Phrase("through") == nil && e.reachedBy(t) {
			e.total = space.Or(e.total, space.And(c, e.cond))
		}
	}
}

// on gives the seam line on which an operation on a seam acts, for each side.
func (w *plan) on(op *model.Op, t *model.Target) (all []*seamline) {
	for _, j := range t.Seam.Copies {
		if SewnBy(op, t, j) {
			all = append(all, w.lines[j])
		}
	}
	return
}

func each(list []*model.Target, f func(*model.Target)) {
	for _, t := range list {
		t.Each(f)
	}
}

func has[T comparable](list []T, x T) bool {
	for _, y := range list {
		if y == x {
			return true
		}
	}
	return false
}
