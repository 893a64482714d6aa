package assembly

import (
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// leave notes an opening that an operation leaves in a seam.
func (w *play) leave(op *model.Op) {
	if g := w.gapOf(op); g != nil {
		w.left[g] = append(w.left[g], deed{op, op.Cond})
	}
}

func (w *play) gapOf(op *model.Op) *model.Gap {
	p := op.Phrase("leaving")
	if p == nil || p.Gap == "" {
		return nil
	}
	for _, g := range w.Gaps {
		if g.ID == p.Gap {
			return g
		}
	}
	return nil
}

// onGap plays an operation on an opening. Closing it ends its use.
func (w *play) onGap(op *model.Op, t *model.Target, c condition.Cond) {
	g := t.Gap
	if !op.Row.Shuts && op.Verb != "sew" {
		return
	}
	missing := w.Space.Diff(w.Space.And(c, g.Cond), w.ever(w.left[g]))
	w.trouble(missing, Trouble{Kind: GapNotThere, Op: op, Gap: g, Word: "left"}, nil)
	w.closed[g] = append(w.closed[g], deed{op, c})
}

// throughGap plays what goes through an opening: it must be there, and not be
// closed yet.
func (w *play) throughGap(op *model.Op) {
	for _, p := range op.Phrases {
		if p.Name != "through" {
			continue
		}
		each(p.Targets, func(t *model.Target) {
			if t.Gap == nil {
				return
			}
			c := w.Space.And(op.Cond, t.Cond)
			w.trouble(w.Space.Diff(c, w.ever(w.left[t.Gap])), Trouble{Kind: GapNotThere, Op: op, Gap: t.Gap, Word: "left"}, nil)
			w.trouble(w.Space.And(c, w.ever(w.closed[t.Gap])), Trouble{Kind: GapNotThere, Op: op, Gap: t.Gap, Word: "closed"}, w.closed[t.Gap])
			w.turns[t.Gap] = append(w.turns[t.Gap], deed{op, c})
		})
	}
	if op.Row.Verb == "turn" {
		each(op.Objects, func(t *model.Target) {
			for g, deeds := range w.left {
				for _, i := range t.Instances {
					if g.Seam != nil && onSeam(g.Seam, i) {
						w.trouble(w.Space.And(op.Cond, w.Space.And(w.ever(deeds), w.ever(w.closed[g]))), Trouble{Kind: GapNotThere, Op: op, Gap: g, Word: "closed"}, w.closed[g])
					}
				}
			}
		})
	}
}

func onSeam(s *model.Seam, i *model.Instance) bool {
	for _, j := range s.Copies {
		if joins(j, i) {
			return true
		}
	}
	return false
}

// insert plays a zip or a part that goes between edges: where a band, a facing or
// a binding has closed the edge at its end, it cannot go in any more.
func (w *play) insert(op *model.Op) {
	if op.Verb != "insert" {
		return
	}
	for _, p := range op.Phrases {
		each(p.Targets, func(t *model.Target) {
			if t.Kind != model.ToEdge {
				return
			}
			for _, x := range t.Uses {
				for _, step := range []int{-1, 1} {
					if n, ok := neighbour(x, step); ok {
						by := w.bySewing(w.shut[n])
						w.trouble(w.Space.And(w.Space.And(op.Cond, t.Cond), w.ever(by)), Trouble{Kind: ZipTooLate, Op: op, Use: &n}, by)
					}
				}
			}
		})
	}
}

// bySewing keeps the deeds that closed an edge with another part or a binding.
func (w *play) bySewing(list []deed) (out []deed) {
	for _, d := range list {
		if d.op.Row.Sews || d.op.Verb == "bind" {
			out = append(out, d)
		}
	}
	return
}

// atTheEnd looks at what is left open.
func (w *play) atTheEnd() {
	for _, g := range w.Gaps {
		if !g.Used {
			continue // the rule for names says so
		}
		for _, d := range w.left[g] {
			bad := w.Space.Diff(d.cond, w.ever(w.closed[g]))
			w.trouble(bad, Trouble{Kind: GapNeverClosed, Op: d.op, Gap: g}, nil)
		}
	}
}

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
		here := p.Space.And(rest, p.Space.And(f.Used[root], root.Cond))
		if p.Space.And(here, p.Valid) == condition.False {
			continue
		}
		reach := map[*model.Instance]condition.Cond{root: here}
		for changed := true; changed; {
			changed = false
			for _, l := range links {
				for _, ab := range [][2]*model.Instance{{l.a, l.b}, {l.b, l.a}} {
					c := p.Space.Or(reach[ab[1]], p.Space.And(reach[ab[0]], l.cond))
					if c != reach[ab[1]] {
						reach[ab[1]] = c
						changed = true
					}
				}
			}
		}
		for _, i := range parts {
			bad := p.Space.Diff(p.Space.And(here, i.Cond), reach[i])
			loose[i] = p.Space.Or(loose[i], bad)
		}
		rest = p.Space.Diff(rest, here)
	}
	return loose
}

// link holds two parts together wherever its condition holds.
type link struct {
	a, b *model.Instance
	cond condition.Cond
}

func linksOf(p *model.Pattern) (all []link) {
	tie := func(list []*model.Instance, c condition.Cond) {
		for i := 1; i < len(list); i++ {
			all = append(all, link{list[0], list[i], c})
		}
	}
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
					tie(partsOf(append(append([]*model.EdgeUse(nil), j.A...), j.B...)), p.Space.And(op.Cond, j.Cond))
				}
			}
			for _, k := range t.Seam.Catching {
				for _, j := range t.Seam.Copies {
					k.Target.Each(func(x *model.Target) {
						for _, i := range x.Instances {
							if len(j.A) > 0 && (i.Side == j.Side || i.Side == model.Neither || j.Side == model.Neither) {
								all = append(all, link{j.A[0].Instance, i, p.Space.All(op.Cond, j.Cond, x.Cond)})
							}
						}
					})
				}
			}
		})
		all = append(all, together(p, op)...)
	}
	return
}

// together links what an operation names: what is laid on, tacked or caught.
func together(p *model.Pattern, op *model.Op) (all []link) {
	var base []*model.Instance
	bc := condition.False
	for _, ph := range op.Phrases {
		each(ph.Targets, func(t *model.Target) {
			base = append(base, t.Instances...)
			if len(t.Instances) > 0 {
				bc = p.Space.Or(bc, t.Cond)
			}
			if t.Mark != nil {
				base = append(base, t.Mark.Piece.Cloths()...)
				bc = p.Space.Or(bc, t.Cond)
			}
			if t.Seam != nil {
				for _, u := range t.Seam.Uses() {
					base = append(base, u.Instance)
				}
				bc = p.Space.Or(bc, t.Cond)
			}
		})
	}
	var own []*model.Instance
	each(op.Objects, func(t *model.Target) {
		if t.Seam == nil {
			own = append(own, t.Instances...)
		}
	})
	for _, a := range own {
		for _, b := range base {
			if a != b && (a.Side == b.Side || a.Side == model.Neither || b.Side == model.Neither) {
				all = append(all, link{a, b, p.Space.All(op.Cond, bc, a.Cond, b.Cond)})
			}
		}
	}
	if len(base) == 0 {
		for i := 1; i < len(own); i++ {
			all = append(all, link{own[0], own[i], p.Space.All(op.Cond, own[0].Cond, own[i].Cond)})
		}
	}
	return
}

func partsOf(uses []*model.EdgeUse) (all []*model.Instance) {
	for _, u := range uses {
		all = append(all, u.Instance)
	}
	return
}
