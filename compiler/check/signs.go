package check

import (
	"fmt"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

// signs gives where each mark and dart is marked, and where it is used.
func (r *run) signs() (marked, used map[any]condition.Cond, first map[any]*model.Op) {
	if r.index.marked == nil {
		r.index.marked, r.index.used, r.index.firstUse = r.signsIn()
	}
	return r.index.marked, r.index.used, r.index.firstUse
}

func (r *run) signsIn() (marked, used map[any]condition.Cond, first map[any]*model.Op) {
	marked, used, first = map[any]condition.Cond{}, map[any]condition.Cond{}, map[any]*model.Op{}
	for _, op := range r.Ops() {
		cond := op.Cond
		note := func(t *model.Target) {
			if t == nil {
				return
			}
			var x any
			switch {
			case t.Mark != nil && t.Kind == model.ToMark:
				x = t.Mark
			case t.Kind == model.ToShaping:
				x = t.Shaping
			default:
				return
			}
			if op.Verb == "mark" {
				marked[x] = r.Space.Or(marked[x], cond)
				return
			}
			used[x] = r.Space.Or(used[x], cond)
			if first[x] == nil {
				first[x] = op
			}
		}
		list := append([]*model.Target(nil), op.Objects...)
		for _, p := range op.Phrases {
			list = append(list, p.Targets...)
		}
		for _, o := range list {
			o.Each(func(t *model.Target) {
				note(t)
				note(t.From)
				note(t.To)
				if t.Seam != nil && op.Row.Sews {
					for _, row := range t.Seam.Rows() {
						note(row.From)
						note(row.To)
					}
					for _, c := range t.Seam.Catching {
						cond = r.Space.And(op.Cond, c.Target.Cond) // the place is used where the part is
						note(c.At)
					}
					cond = op.Cond
				}
			})
		}
	}
	return
}

func neverMarked(r *run) {
	marked, used, first := r.signs()
	if len(marked) == 0 {
		return // the pattern leaves marking to the sewist altogether
	}
	r.markedElsewhere()
	say := func(x any, name string, fold bool) {
		if op := first[x]; op != nil && !fold {
			r.report(r.Space.Diff(used[x], marked[x]), at(op.Span, "used here", fmt.Sprintf("%s is used and never marked.", Upper(name)), "Add it to a `mark` operation before this step."))
		}
	}
	for _, p := range r.Pieces {
		for _, m := range p.Marks {
			say(m, "the "+m.Name+" mark", m.On != nil || m.Between)
		}
	}
	for _, s := range r.Shapings {
		say(s, "the "+s.Name, false)
	}
}

// markedElsewhere finds a mark that is marked on one of a pair and used on the
// other.
func (r *run) markedElsewhere() {
	type key struct {
		mark *model.Mark
		side model.Side
	}
	marked := map[key]condition.Cond{}
	sideOf := func(op *model.Op, t *model.Target) model.Side {
		if t.Side != model.Neither {
			return t.Side
		}
		if p := op.Phrase("to"); p != nil && op.Verb != "mark" {
			for _, o := range p.Targets {
				if o.Piece == t.Mark.Piece {
					return o.Side
				}
			}
		}
		return model.Neither
	}
	each := func(f func(*model.Op, *model.Target)) {
		for _, op := range r.Ops() {
			list := append([]*model.Target(nil), op.Objects...)
			for _, p := range op.Phrases {
				list = append(list, p.Targets...)
			}
			for _, o := range list {
				o.Each(func(t *model.Target) {
					if t.Mark != nil {
						f(op, t)
					}
				})
			}
		}
	}
	each(func(op *model.Op, t *model.Target) {
		if op.Verb == "mark" {
			k := key{t.Mark, sideOf(op, t)}
			marked[k] = r.Space.Or(marked[k], op.Cond)
		}
	})
	each(func(op *model.Op, t *model.Target) {
		s := sideOf(op, t)
		other, here := marked[key{t.Mark, s.Other()}], r.Space.Or(marked[key{t.Mark, s}], marked[key{t.Mark, model.Neither}])
		if op.Verb == "mark" || s == model.Neither || other == condition.False {
			return
		}
		f := at(t.Span, "the "+s.String()+" one", fmt.Sprintf("The %s mark is used on the %s one and marked on the %s one.", t.Mark.Name, s, s.Other()), "Mark it on the side where it is used.")
		r.report(r.Space.And(op.Cond, r.Space.Diff(other, here)), f)
	})
}

// markIdle looks for marks without a use; those of one piece in the same garments
// are reported together.
func markIdle(r *run) {
	_, used, _ := r.signs()
	for _, p := range r.Pieces {
		groups := map[condition.Cond][]*model.Mark{}
		var order []condition.Cond
		for _, m := range p.Marks {
			c, ok := used[m]
			bad := r.Space.And(r.Space.Diff(r.Space.And(m.Cond, p.Cond), c), r.Valid)
			if !ok || bad == condition.False || r.explained(bad) {
				continue
			}
			if groups[bad] == nil {
				order = append(order, bad)
			}
			groups[bad] = append(groups[bad], m)
		}
		for _, bad := range order {
			r.report(bad, idleMarks(p, groups[bad]))
		}
	}
}

func idleMarks(p *model.Piece, marks []*model.Mark) finding.Finding {
	var names []string
	for _, m := range marks {
		names = append(names, m.Name)
	}
	f := at(marks[0].Span, "not used here", fmt.Sprintf("The mark %s of %s is there, and nothing uses it.", names[0], the(p.Name)), "Guard the mark as what uses it is guarded.")
	if len(marks) > 1 {
		f.Headline = fmt.Sprintf("The marks %s of %s are there, and nothing uses them.", listed(names), the(p.Name))
	}
	for _, m := range marks[1:] {
		f = also(f, m.Span, "nor this")
	}
	return f
}
