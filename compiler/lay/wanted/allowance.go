package wanted

import (
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// allowances says how far outside each edge of a piece the cloth is cut, in
// millimetres, in the garments of a condition: for a seam its allowance, for a hem all
// that is turned under, nothing on a fold, at an edge that stays raw or is bound, and
// else the pattern's. Where garments differ, it is the most that any of them needs,
// since a piece is drawn with one cutting line.
func (plan *Plan) allowances(c *model.Cut, where condition.Cond) map[string]float64 {
	all := map[string]float64{}
	if plan.ops == nil {
		plan.ops = plan.pattern.Ops()
	}
	a := allowing{plan.pattern, plan.ops, where}
	for _, e := range c.Piece.Edges {
		switch {
		case c.Lay.Fold && c.Lay.FoldEdge == e:
		case plan.pattern.Space.Implies(where, e.LeftRaw):
		default:
			all[e.ID] = a.at(e)
		}
	}
	return all
}

type allowing struct {
	*model.Pattern
	ops   []*model.Op
	where condition.Cond
}

// at is the allowance of an edge that neither lies on the fold nor is left raw.
func (a allowing) at(e *model.Edge) float64 {
	seam, sewn := a.inSeams(e)
	turned, worked := a.turned(e)
	switch {
	case sewn || worked:
		return max(seam, turned)
	case a.Allow != nil:
		return a.Allow.Length.MM()
	}
	return 0
}

// inSeams is the widest allowance of the seams in which an edge lies.
func (a allowing) inSeams(e *model.Edge) (most float64, sewn bool) {
	for _, s := range a.Seams {
		for _, j := range s.Copies {
			for row, uses := range [2][]*model.EdgeUse{j.A, j.B} {
				for _, u := range uses {
					if u.Edge != e || !a.Space.Overlaps(a.Space.And(s.Cond, u.Cond), a.where) {
						continue
					}
					sewn = true
					width, _ := s.Allowance()
					if row == 1 && s.AllowTo != nil {
						width = s.AllowTo.Length
					}
					most = max(most, width.MM())
				}
			}
		}
	}
	return
}

// turned is the most that is folded under at an edge by a hem or a pressing. It is
// worked, with nothing turned, where it is bound.
func (a allowing) turned(e *model.Edge) (most float64, worked bool) {
	for _, op := range a.ops {
		under := op.Verb == "hem" || op.Verb == "press under" || op.Verb == "turn under"
		if !under && op.Verb != "bind" || !a.Space.Overlaps(op.Cond, a.where) || !touches(op, e) {
			continue
		}
		sum := 0.0
		for _, p := range op.Phrases {
			if p.Name == "turning" || under && p.Name == "by" {
				for _, m := range p.Amounts {
					sum += m.Length.MM()
				}
			}
		}
		if sum > 0 || op.Verb == "bind" {
			most, worked = max(most, sum), true
		}
	}
	return
}

// touches reports whether an operation acts on an edge itself.
func touches(op *model.Op, e *model.Edge) (found bool) {
	for _, o := range op.Objects {
		o.Each(func(t *model.Target) {
			found = found || t.Kind == model.ToEdge && t.Edge == e
			if t.Kind == model.ToPartEdge && t.PartEdge != nil {
				for _, of := range t.PartEdge.Of {
					found = found || of.Edge == e
				}
			}
		})
	}
	return
}
