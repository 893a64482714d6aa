package check

import (
	"maps"
	"slices"
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// doings are what the operations of a pattern leave on its pieces.
type doings struct {
	r    *run
	ops  map[string][]*model.Op // by verb
	read string                 // every text that may tell to do something, in small letters
	of   map[*model.Target][]*model.Piece
	in   map[*model.Step]map[*model.Piece]bool
}

func (r *run) doings() *doings {
	return &doings{r: r, ops: r.index.byVerb, of: map[*model.Target][]*model.Piece{}, in: map[*model.Step]map[*model.Piece]bool{}}
}

func (w *doings) any(o *outcome) bool {
	for _, v := range o.by {
		if len(w.ops[v]) > 0 {
			return true
		}
	}
	return false
}

// everywhere is where one of the operations is done at all.
func (w *doings) everywhere(o *outcome) (c condition.Cond) {
	c = condition.False
	for _, v := range o.by {
		for _, op := range w.ops[v] {
			c = w.r.Space.Or(c, op.Cond)
		}
	}
	return
}

// near is where the work is done on what the text speaks of: on the thing that
// "is basted", if it is named, and else on any piece that the step works on or the
// text names. It gives the name of the thing as well.
func (w *doings) near(t stepText, text string, at int, o *outcome) (condition.Cond, string) {
	before := strings.TrimSuffix(strings.TrimSuffix(text[:at], " is "), " are ")
	if len(before) < at {
		for i, p := range w.r.Pieces {
			if rest, ok := strings.CutSuffix(before, w.r.smallPieces()[i]); ok && strings.HasSuffix(rest, " ") {
				return w.onPieces(map[*model.Piece]bool{p: true}, o), p.Name
			}
		}
	}
	return w.onPieces(w.pieces(t, text), o), ""
}

// onPieces is where the work is done on one of a number of pieces; on any, if the
// text names none.
func (w *doings) onPieces(some map[*model.Piece]bool, o *outcome) (c condition.Cond) {
	if len(some) == 0 {
		return w.everywhere(o)
	}
	c = condition.False
	for _, v := range o.by {
		for _, op := range w.ops[v] {
			touches := w.touches(op.Objects, some)
			for _, p := range op.Phrases {
				touches = touches || (p.Name == "to" || p.Name == "catching") && w.touches(p.Targets, some)
			}
			if touches {
				c = w.r.Space.Or(c, op.Cond)
			}
		}
	}
	return c
}

func (w *doings) touches(list []*model.Target, some map[*model.Piece]bool) bool {
	for _, o := range list {
		for _, p := range w.piecesOf(o) {
			if some[p] {
				return true
			}
		}
	}
	return false
}

// piecesOf remembers what piecesIn gives.
func (w *doings) piecesOf(o *model.Target) []*model.Piece {
	list, ok := w.of[o]
	if !ok {
		list = slices.Collect(maps.Keys(piecesIn(o)))
		w.of[o] = list
	}
	return list
}

// piecesIn gives the pieces that a target means, or that it joins.
func piecesIn(o *model.Target) map[*model.Piece]bool {
	m := map[*model.Piece]bool{}
	o.Each(func(t *model.Target) {
		if t.Piece != nil {
			m[t.Piece] = true
		}
		for _, i := range t.Instances {
			m[i.Piece] = true
		}
		for _, u := range t.Uses {
			m[u.Instance.Piece] = true
		}
		if t.Mark != nil {
			m[t.Mark.Piece] = true
		}
		if t.Shaping != nil && t.Shaping.In != nil && t.Shaping.In.Piece != nil {
			m[t.Shaping.In.Piece] = true
		}
		if t.Seam != nil {
			for _, j := range t.Seam.Copies { // what is only caught in it keeps its own edges
				for _, u := range append(append([]*model.EdgeUse(nil), j.A...), j.B...) {
					m[u.Instance.Piece] = true
				}
			}
		}
	})
	return m
}

// pieces are those that a step works on, and those that the text names.
func (w *doings) pieces(t stepText, text string) map[*model.Piece]bool {
	if t.step == nil {
		return nil
	}
	worked := w.workedOn(t.step)
	if len(worked) == 0 {
		return nil
	}
	all := maps.Clone(worked)
	small, braces := w.r.smallPieces(), strings.Contains(text, "}")
	for i, p := range w.r.Pieces {
		if wholeName(text, small[i]) || braces && strings.Contains(text, " "+p.ID+"}") {
			all[p] = true
		}
	}
	return all
}

// workedOn remembers the pieces that the operations of a step name.
func (w *doings) workedOn(s *model.Step) map[*model.Piece]bool {
	if m := w.in[s]; m != nil {
		return m
	}
	m := map[*model.Piece]bool{}
	take := func(list []*model.Target) {
		for _, o := range list {
			for _, p := range w.piecesOf(o) {
				m[p] = true
			}
		}
	}
	for _, i := range s.Items {
		if op, ok := i.(*model.Op); ok {
			take(op.Objects)
			for _, ph := range op.Phrases {
				take(ph.Targets)
			}
		}
	}
	w.in[s] = m
	return m
}

// wholeName reports whether a text holds a name, not as a part of a word.
func wholeName(text, name string) bool {
	for from := 0; ; {
		i := strings.Index(text[from:], name)
		if i < 0 {
			return false
		}
		from += i + len(name)
		before := from - len(name) - 1
		if (before < 0 || !letter(text[before])) && (from == len(text) || !letter(text[from]) || text[from] == 's') {
			return true
		}
	}
}
