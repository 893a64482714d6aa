package check

import (
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// deed is one operation on one thing: its place in the order of work, what it
// names, and in which garments.
type deed struct {
	n    int
	op   *model.Op
	on   *model.Target
	cond condition.Cond
}

// work is what is done to each thing, in order. A seam has what names it or one of
// its edges; a piece what names it, one of its edges or a part that it belongs to.
type work struct {
	seam  map[*model.Seam][]deed
	piece map[*model.Piece][]deed
	edge  map[*model.Edge][]deed
	mark  map[*model.Mark][]deed
}

// deeds walks over the operations once.
func (r *run) deeds() *work {
	if r.work != nil {
		return r.work
	}
	w := &work{map[*model.Seam][]deed{}, map[*model.Piece][]deed{}, map[*model.Edge][]deed{}, map[*model.Mark][]deed{}}
	in := map[*model.Edge][]*model.Seam{}
	for _, s := range r.Seams {
		for _, u := range s.Uses() {
			if list := in[u.Edge]; len(list) == 0 || list[len(list)-1] != s {
				in[u.Edge] = append(list, s)
			}
		}
	}
	for n, op := range r.Ops() {
		for _, o := range op.Objects {
			o.Each(func(t *model.Target) {
				d := deed{n, op, t, r.Space.And(op.Cond, t.Cond)}
				w.note(d, in)
			})
		}
	}
	r.work = w
	return w
}

func (w *work) note(d deed, in map[*model.Edge][]*model.Seam) {
	t := d.on
	if t.Seam != nil {
		w.seam[t.Seam] = append(w.seam[t.Seam], d)
		return
	}
	if t.Mark != nil && t.Kind == model.ToMark {
		w.mark[t.Mark] = append(w.mark[t.Mark], d)
	}
	edges := map[*model.Edge]bool{}
	for _, u := range t.Uses {
		edges[u.Edge] = true
	}
	if t.Edge != nil {
		edges[t.Edge] = true
	}
	for e := range edges {
		w.edge[e] = append(w.edge[e], d)
		for _, s := range in[e] {
			w.seam[s] = append(w.seam[s], d)
		}
	}
	pieces := map[*model.Piece]bool{}
	for _, i := range t.Instances {
		pieces[i.Piece] = true
	}
	if t.Piece != nil {
		pieces[t.Piece] = true
	}
	for p := range pieces {
		w.piece[p] = append(w.piece[p], d)
	}
}

// where gives the garments in which one of these verbs is among some deeds.
func (r *run) whereDone(list []deed, verbs ...string) condition.Cond {
	c := condition.False
	for _, d := range list {
		if oneOf(d.op.Verb, verbs) {
			c = r.Space.Or(c, d.cond)
		}
	}
	return c
}

// sewnAt gives the place in the order of work of the first operation that sews a
// seam, -1 if none does.
func (r *run) sewnAt(s *model.Seam) int {
	for _, d := range r.deeds().seam[s] {
		if d.op.Row.Sews && d.on.Seam == s {
			return d.n
		}
	}
	return -1
}
