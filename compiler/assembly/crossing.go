package assembly

import (
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// crossing is one end of a seam line: the two neighbouring edges that meet there,
// one of each part that it joins. Whatever is sewn along these edges crosses the
// end of the seam.
type crossing struct {
	join *model.Join
	a, b model.EdgeUse
}

// hand gives the hand of the part an edge lies on; of a part cut on the fold the
// half as drawn is + and the other -. 0 is either.
func hand(u *model.EdgeUse) int8 {
	i := u.Instance
	if i.Hand != 0 || !i.Cut.Lay.Fold || u.Side == model.Neither || i.Piece.Symmetric {
		return i.Hand
	}
	h := int8(1)
	if (u.Side == model.Left) != i.Piece.DrawnLeft {
		h = -h
	}
	if i.Piece.WornIn {
		h = -h
	}
	return h
}

// neighbour gives the edge before (-1) or after (+1) another on the same part;
// false at the fold, where the line goes on in the other half.
func neighbour(u *model.EdgeUse, step int) (model.EdgeUse, bool) {
	p, n := u.Instance.Piece, len(u.Instance.Piece.Edges)
	if n < 2 {
		return model.EdgeUse{}, false
	}
	e := p.Edges[(u.Edge.Index+step+n)%n]
	cut := u.Instance.Cut
	if cut.Lay.Fold && cut.Lay.FoldEdge == e {
		return model.EdgeUse{}, false
	}
	side := u.Instance.Side
	if e.Doubled(cut) {
		side = u.Side
	}
	return key(u.Instance, e, side), true
}

// key is the same for every mention of an edge of a part.
func key(i *model.Instance, e *model.Edge, s model.Side) model.EdgeUse {
	return model.EdgeUse{Instance: i, Edge: e, Side: s}
}

func keyOf(u *model.EdgeUse) model.EdgeUse { return key(u.Instance, u.Edge, u.Side) }

// crossings finds the ends of every seam line that joins one edge to one other:
// by what is sewn at its ends, else by the names there, else by the hands. Two
// edges are sewn right sides together, so of parts of the same hand one runs up as
// the other runs down; of parts of opposite hands both run the same way.
func crossings(p *model.Pattern) (all []crossing) {
	ends := endsOf(p)
	for _, s := range p.Seams {
		for _, j := range s.Copies {
			if len(j.A) != 1 || len(j.B) != 1 || *j.A[0] == *j.B[0] {
				continue
			}
			same, known := ends.run(j.A[0], j.B[0])
			flip := int(same)
			if !known {
				flip, known = byHands(j.A[0], j.B[0])
			}
			if !known {
				continue
			}
			for _, step := range []int{-1, 1} {
				a, ok := neighbour(j.A[0], step)
				b, ok2 := neighbour(j.B[0], step*flip)
				if ok && ok2 && reaches(s, a, b) {
					all = append(all, crossing{j, a, b})
				}
			}
		}
	}
	return
}

// byHands tells whether two edges that are sewn together run the same way (+1) or
// opposite ways (-1) round their pieces, by the hands of their parts.
func byHands(a, b *model.EdgeUse) (flip int, known bool) {
	switch ha, hb := hand(a), hand(b); {
	case ha != 0 && ha == hb:
		return -1, true
	case ha != 0 && hb != 0:
		return 1, true
	}
	return 0, false
}

func match(a, b string) bool { return a != "" && a == b }

// reaches reports whether a seam goes as far as this end: one that is sewn from a
// mark to a mark stops before it.
func reaches(s *model.Seam, a, b model.EdgeUse) bool {
	for _, t := range append(append([]*model.Target(nil), s.Joins...), s.To...) {
		if t.From == nil {
			continue
		}
		for _, end := range []*model.Target{t.From, t.To} {
			if end != nil && end.Edge != nil && (end.Edge.ID == a.Edge.ID || end.Edge.ID == b.Edge.ID) {
				return true
			}
		}
		return false
	}
	return true
}

// deed is something that was done, by which operation and in which garments.
type deed struct {
	op   *model.Op
	cond condition.Cond
}
