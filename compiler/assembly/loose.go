package assembly

import (
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// Loose gives, for each part that is sewn to something, where it does not hang
// together with the rest of the garment. Parts that are items of their own say
// `separate`.
func Loose(p *model.Pattern, f *Facts) map[*model.Instance]condition.Cond {
	links := linksOf(p)
	var parts []*model.Instance
	for _, x := range p.Pieces {
		for _, i := range x.Instances() {
			if i.Cloth() && !x.Template && !x.Separate {
				parts = append(parts, i)
			}
		}
	}
	loose := map[*model.Instance]condition.Cond{}
	rest := condition.True // the garments that have no root yet
	for _, root := range parts {
		here := p.Space.All(rest, f.Used[root], root.Cond)
		if p.Space.And(here, p.Valid) == condition.False {
			continue
		}
		reach := links.from(p.Space, root, here)
		for _, i := range parts {
			bad := p.Space.Diff(p.Space.And(here, i.Cond), reach[i])
			loose[i] = p.Space.Or(loose[i], bad)
		}
		rest = p.Space.Diff(rest, here)
	}
	return loose
}

// links gives, for each part and each seam line, what it holds together with and
// where. Parts that one seam takes hang together by it.
type links map[any][]link

type link struct {
	to   any
	cond condition.Cond
}

func (l links) add(a, b any, c condition.Cond) {
	if a != b && c != condition.False {
		l[a], l[b] = append(l[a], link{b, c}), append(l[b], link{a, c})
	}
}

// from gives where each part hangs together with one of them.
func (l links) from(space *condition.Space, root any, here condition.Cond) map[any]condition.Cond {
	reach := map[any]condition.Cond{root: here}
	waits := map[any]bool{root: true}
	for queue := []any{root}; len(queue) > 0; queue = queue[1:] {
		at := queue[0]
		waits[at] = false
		for _, k := range l[at] {
			c := space.Or(reach[k.to], space.And(reach[at], k.cond))
			if c == reach[k.to] {
				continue
			}
			reach[k.to] = c
			if !waits[k.to] {
				waits[k.to] = true
				queue = append(queue, k.to)
			}
		}
	}
	return reach
}

func linksOf(p *model.Pattern) links {
	l := links{}
	for _, op := range p.Ops() {
		if !op.Row.Joins {
			continue
		}
		each(op.Objects, func(t *model.Target) {
			if t.Seam == nil {
				return
			}
			for _, j := range t.Seam.Copies {
				if SewnBy(op, t, j) {
					l.seam(p.Space, op, j)
				}
			}
		})
		l.together(p, op)
	}
	return l
}

// seam links all that lies in a seam line.
func (l links) seam(space *condition.Space, op *model.Op, j *model.Join) {
	c := space.And(op.Cond, j.Cond)
	for _, u := range j.Uses() {
		l.add(j, u.Instance, space.And(c, u.Cond))
	}
	for _, k := range j.Seam.Catching {
		k.Target.Each(func(x *model.Target) {
			for _, i := range x.Instances {
				if beSide(i.Side, j.Side) {
					l.add(j, i, space.All(c, x.Cond, i.Cond))
				}
			}
		})
	}
}

// together links what an operation names: what is laid on, tacked or caught; or,
// if it is put on nothing, its own parts.
func (l links) together(p *model.Pattern, op *model.Op) {
	base, bc := baseOf(p.Space, op)
	var own []*model.Instance
	each(op.Objects, func(t *model.Target) {
		if t.Seam == nil {
			own = append(own, t.Instances...)
		}
	})
	for _, a := range own {
		for _, b := range base {
			if beSide(a.Side, b.Side) {
				l.add(a, b, p.Space.All(op.Cond, bc, a.Cond, b.Cond))
			}
		}
	}
	for i := 1; i < len(own) && len(base) == 0; i++ {
		l.add(own[0], own[i], p.Space.All(op.Cond, own[0].Cond, own[i].Cond))
	}
}

// baseOf lists the parts that an operation puts something on.
func baseOf(space *condition.Space, op *model.Op) (base []*model.Instance, c condition.Cond) {
	for _, ph := range op.Phrases {
		each(ph.Targets, func(t *model.Target) {
			list := t.Parts()
			if t.Seam != nil {
				for _, u := range t.Seam.Uses() {
					list = append(list[:len(list):len(list)], u.Instance)
				}
			}
			if len(list) > 0 {
				base, c = append(base, list...), space.Or(c, t.Cond)
			}
		})
	}
	return
}
