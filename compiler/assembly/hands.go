package assembly

import (
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// Hands. Each copy of a cut line has one unknown sign: + if its parts are the hand
// that the cut line says, - if they are the mirror image. Of a mirrored pair the
// left one has the other sign than the right one; of a part cut on the fold so
// have its halves, and each such part may lie either way round. A seam ties two signs together, since edges that are sewn right
// sides together run opposite ways: d(P)·hand(P)·d(Q)·hand(Q) = -1, where d is +1
// if the edge runs clockwise, as drawn, from end A of the seam to end B. A part
// that is cut once with a side up is tied to the constant +1. Signs that contradict
// one another mean that something is cut as its mirror image.

// group is what has one sign: a copy of a cut line, or one part cut on the fold.
// The zero group is the constant +1.
type group struct {
	cut  *model.Cut
	copy string
	fold *model.Instance
}

func groupOf(i *model.Instance) group {
	if i.Cut.Lay.Fold {
		return group{cut: i.Cut, fold: i}
	}
	return group{cut: i.Cut, copy: i.Copy}
}

// tie says that the signs of two groups agree (+1) or differ (-1), where its
// condition holds.
type tie struct {
	a, b group
	sign int8
	cond condition.Cond
	seam *model.Seam // nil for what a cut line or a piece says itself
	said bool        // the pattern says it of this cut: its side up, or how it is drawn
}

// Clash is a contradiction between hands. Cut is the cut line to blame, if
// turning it over cures more than any other; else nil. Seam is the seam at which
// the contradiction shows.
type Clash struct {
	Cut  *model.Cut
	Seam *model.Seam
	Cond condition.Cond
}

// Hands solves the signs. It gives the contradictions, the side of single cuts
// that the pattern left open and one reading alone fits, and the seams whose ends
// could not be told, which are not checked.
func Hands(p *model.Pattern) (clashes []Clash, deduced map[*model.Cut]int8, unknown []*model.Seam) {
	ties, unknown := tiesOf(p)
	deduced = map[*model.Cut]int8{}
	open := map[*model.Cut]bool{}
	parts := regions(p, ties)
	if parts == nil {
		for _, t := range ties { // too many to tell apart: nothing is claimed
			if t.seam != nil {
				unknown = append(unknown, t.seam)
			}
		}
	}
	for i, region := range parts {
		var here []tie
		for _, t := range ties {
			if p.Space.Implies(region, t.cond) {
				here = append(here, t)
			}
		}
		sign, bad := solve(here)
		for _, b := range bad {
			clashes = widened(p, clashes, Clash{Cut: blame(here, b), Seam: b.seam, Cond: region})
		}
		for g, s := range sign {
			if old, ok := deduced[g.cut]; ok && old != s || i > 0 && !ok {
				open[g.cut] = true
			}
			deduced[g.cut] = s
		}
	}
	for c := range open {
		delete(deduced, c)
	}
	return clashes, deduced, unknown
}

// widened adds a clash, or widens the same one.
func widened(p *model.Pattern, list []Clash, c Clash) []Clash {
	for i := range list {
		if list[i].Cut == c.Cut && (c.Cut != nil || list[i].Seam == c.Seam) {
			list[i].Cond = p.Space.Or(list[i].Cond, c.Cond)
			return list
		}
	}
	return append(list, c)
}

// tiesOf gathers what ties hands together.
func tiesOf(p *model.Pattern) (ties []tie, unknown []*model.Seam) {
	for _, x := range p.Pieces {
		if x.Symmetric {
			continue
		}
		for _, c := range x.Cuts {
			if !c.Material.Interfacing && c.Lay.Up != model.NotSaid && !c.Lay.Mirrored {
				for _, g := range groupsOf(c) {
					ties = append(ties, tie{a: g, sign: int8(c.Lay.Up), cond: c.Cond, said: true})
				}
			}
			if c.Lay.Mirrored && x.DrawnSaid && len(c.Lay.Names) < 2 {
				ties = append(ties, tie{a: groupOf(c.Instances[0]), sign: drawn(x), cond: c.Cond, said: true})
			}
		}
	}
	ends := endsOf(p)
	for _, s := range p.Seams {
		told := true
		for _, j := range s.Copies {
			if len(j.A) != 1 || len(j.B) != 1 || *j.A[0] == *j.B[0] || !handed(j.A[0]) || !handed(j.B[0]) {
				continue
			}
			same, ok := ends.run(j.A[0], j.B[0])
			if !ok {
				told = false
				continue
			}
			sign := -same * relative(j.A[0]) * relative(j.B[0])
			ties = append(ties, tie{a: groupOf(j.A[0].Instance), b: groupOf(j.B[0].Instance), sign: sign, cond: j.Cond, seam: s})
		}
		if !told {
			unknown = append(unknown, s)
		}
	}
	return
}

func groupsOf(c *model.Cut) (all []group) {
	seen := map[group]bool{}
	for _, i := range c.Instances {
		if g := groupOf(i); !seen[g] {
			seen[g] = true
			all = append(all, g)
		}
	}
	return
}

// drawn is the hand of the wearer's right one of a pair: worn side = drawn side ·
// hand · (+ if its face looks out, - if in).
func drawn(p *model.Piece) int8 {
	if p.DrawnLeft != p.WornIn {
		return -1
	}
	return 1
}

// handed reports whether the hand of the part matters: not for a symmetric piece,
// nor for an edge that runs across a fold.
func handed(u *model.EdgeUse) bool {
	return !u.Instance.Piece.Symmetric && (!u.Instance.Cut.Lay.Fold || u.Side != model.Neither) && !u.Instance.Cut.Material.NoRightSide
}

// relative is the sign of one part among those of its cut line.
func relative(u *model.EdgeUse) int8 {
	if u.Side == model.Left && (u.Instance.Cut.Lay.Mirrored || u.Instance.Cut.Lay.Fold) {
		return -1
	}
	return 1
}

// meetings knows which edges meet at a point, from the seams.
type meetings struct{ at map[[2]model.EdgeUse]bool }

// endsOf notes the pairs of edges that one seam line takes: sewn to each other,
// or next to each other in a row or a stack.
func endsOf(p *model.Pattern) *meetings {
	m := &meetings{map[[2]model.EdgeUse]bool{}}
	for _, s := range p.Seams {
		for _, j := range s.Copies {
			all := append(keys(j.A), keys(j.B)...)
			for _, k := range s.Catching {
				all = append(all, keys(k.Target.Uses)...)
			}
			for i, a := range all {
				for _, b := range all[i+1:] {
					m.at[[2]model.EdgeUse{a, b}], m.at[[2]model.EdgeUse{b, a}] = true, true
				}
			}
		}
	}
	return m
}

// run tells whether two edges that are sewn together run the same way round their
// pieces as drawn (+1) or opposite ways (-1), by the edges that meet at their
// ends. Names alone tell it where nothing is sewn there.
func (m *meetings) run(a, b *model.EdgeUse) (int8, bool) {
	meet := func(x, y int) bool {
		n, ok := neighbour(a, x)
		o, ok2 := neighbour(b, y)
		return ok && ok2 && m.at[[2]model.EdgeUse{n, o}]
	}
	same := meet(-1, -1) || meet(1, 1)
	opposite := meet(-1, 1) || meet(1, -1)
	if same != opposite {
		if same {
			return 1, true
		}
		return -1, true
	}
	if len(a.Instance.Piece.Edges) < 3 || len(b.Instance.Piece.Edges) < 3 {
		return 0, false
	}
	name := func(u *model.EdgeUse, step int) string {
		if n, ok := neighbour(u, step); ok {
			return n.Edge.ID
		}
		return ""
	}
	same = match(name(a, -1), name(b, -1)) || match(name(a, 1), name(b, 1))
	opposite = match(name(a, -1), name(b, 1)) || match(name(a, 1), name(b, -1))
	if same == opposite {
		return 0, false
	}
	if same {
		return 1, true
	}
	return -1, true
}

// mostRegions bounds the garments that are told apart when hands are solved.
const mostRegions = 64

// regions divides the garments so that in each of them every tie either holds or
// does not.
func regions(p *model.Pattern, ties []tie) []condition.Cond {
	list := []condition.Cond{p.Valid}
	for _, t := range ties {
		var next []condition.Cond
		for _, r := range list {
			in, out := p.Space.And(r, t.cond), p.Space.Diff(r, t.cond)
			if in != condition.False {
				next = append(next, in)
			}
			if out != condition.False {
				next = append(next, out)
			}
		}
		if len(next) > mostRegions {
			return nil
		}
		list = next
	}
	return list
}

// solve spreads signs from the constant and from one cut of each group, and gives
// the ties that contradict what was spread. Only signs that hang on the constant
// are given back.
func solve(ties []tie) (fixed map[group]int8, bad []tie) {
	sign := map[group]int8{{}: 1}
	order := []group{{}}
	for _, t := range ties {
		order = append(order, t.a, t.b)
	}
	fixed = map[group]int8{}
	for n, start := range order {
		if _, ok := sign[start]; ok && n > 0 {
			continue
		}
		sign[start] = 1
		for queue := []group{start}; len(queue) > 0; queue = queue[1:] {
			at := queue[0]
			if n == 0 && at != (group{}) {
				fixed[at] = sign[at]
			}
			for _, t := range ties {
				for _, ab := range [][2]group{{t.a, t.b}, {t.b, t.a}} {
					if ab[0] != at {
						continue
					}
					if _, ok := sign[ab[1]]; !ok {
						sign[ab[1]] = sign[at] * t.sign
						queue = append(queue, ab[1])
					}
				}
			}
		}
	}
	for _, t := range ties {
		if sign[t.a]*sign[t.b] != t.sign {
			bad = append(bad, t)
		}
	}
	return
}

// blame finds the single cut whose turning over cures the most contradictions;
// nil if several would do as well.
func blame(ties []tie, _ tie) *model.Cut {
	var best *model.Cut
	least, equal := len(ties)+1, false
	for i, t := range ties {
		if !t.said {
			continue
		}
		turned := append([]tie(nil), ties...)
		turned[i].sign = -t.sign
		_, bad := solve(turned)
		switch {
		case len(bad) < least:
			least, best, equal = len(bad), t.a.cut, false
		case len(bad) == least:
			equal = true
		}
	}
	if _, bad := solve(ties); equal || least >= len(bad) {
		return nil
	}
	return best
}

// Deduce settles the side of single cuts that the pattern leaves open where one
// reading alone fits what they are sewn to. Interfacing follows its cloth.
func Deduce(p *model.Pattern) {
	_, deduced, _ := Hands(p)
	for c, sign := range deduced {
		l := &c.Lay
		if l.Up != model.NotSaid || l.Mirrored || l.Fold || l.Alike || c.Count != 1 || c.Piece.Symmetric || c.Material.Interfacing {
			continue
		}
		c.Settle(model.Face(sign))
	}
	p.SettleInterfacing()
}
