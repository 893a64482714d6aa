package compiler_test

import (
	"seamwarden/compiler/model"
	"seamwarden/dsl"
)

// touches is what a step works on: cut parts, each on one side of the body or as
// a whole, and the marks that it uses.
type touches struct {
	parts map[*model.Instance]map[model.Side]bool
	marks map[any]bool
	only  bool // it marks and does nothing else
}

// swappable are two steps that follow each other and work on the same cut parts, on
// the same side of the body. Steps that share none can be done in either order, so
// that swapping them makes the same thing; and so can a step that only marks and one
// that uses none of its marks.
func swappable(a, b *dsl.Sentence, touched map[string]touches) bool {
	x, ok := a.Node.(*dsl.Step)
	y, ok2 := b.Node.(*dsl.Step)
	if !ok || !ok2 {
		return false
	}
	first, second := touched[dsl.Unquote(x.Label.Text)], touched[dsl.Unquote(y.Label.Text)]
	for m := range first.marks {
		if second.marks[m] {
			return true
		}
	}
	return !first.only && !second.only && first.meets(second)
}

// meets reports whether two steps share a cut part on one side.
func (t touches) meets(o touches) bool {
	for i, sides := range t.parts {
		for s := range sides {
			for other := range o.parts[i] {
				if s == other || s == model.Neither || other == model.Neither {
					return true
				}
			}
		}
	}
	return false
}

// touchedBySteps gives what each step works on, by its title.
func touchedBySteps(p *model.Pattern) map[string]touches {
	all := map[string]touches{}
	for _, s := range p.Steps() {
		t := touches{parts: map[*model.Instance]map[model.Side]bool{}, marks: map[any]bool{}, only: true}
		for _, i := range s.Items {
			if op, ok := i.(*model.Op); ok {
				t.op(op)
			}
		}
		all[s.Title.Text] = t
	}
	return all
}

func (t *touches) op(op *model.Op) {
	t.only = t.only && op.Verb == "mark"
	list := append([]*model.Target(nil), op.Objects...)
	for _, ph := range op.Phrases {
		list = append(list, ph.Targets...)
	}
	for _, x := range list {
		x.Each(t.target)
	}
}

func (t *touches) target(x *model.Target) {
	t.mark(x)
	if x.Seam != nil {
		for _, u := range x.Seam.Uses() {
			t.touch(u.Instance, u.Side)
		}
		for _, row := range append(append([]*model.Target(nil), x.Seam.Joins...), x.Seam.To...) {
			t.mark(row.From)
			t.mark(row.To)
		}
		for _, k := range x.Seam.Catching {
			k.Target.Each(t.target)
			t.mark(k.At)
		}
	}
	for _, u := range x.Uses {
		t.touch(u.Instance, u.Side)
	}
	for _, i := range x.Parts() {
		if len(x.Uses) == 0 {
			t.touch(i, model.Neither)
		}
	}
}

func (t *touches) mark(x *model.Target) {
	switch {
	case x == nil:
	case x.Mark != nil:
		t.marks[x.Mark] = true
	case x.Shaping != nil:
		t.marks[x.Shaping] = true
	}
}

func (t *touches) touch(i *model.Instance, s model.Side) {
	if t.parts[i] == nil {
		t.parts[i] = map[model.Side]bool{}
	}
	t.parts[i][s] = true
}
