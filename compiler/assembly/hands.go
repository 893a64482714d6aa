package assembly

import (
	"sync/atomic"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// Hands. Each copy of a cut line has one unknown sign: + if its parts are the hand
// that the cut line says, - if they are the mirror image. Of a mirrored pair the
// left one has the other sign than the right one; of a part cut on the fold so
// have its halves, and each such part may lie either way round. A seam ties two
// signs together, since edges that are sewn right sides together run opposite
// ways: d(P)·hand(P)·d(Q)·hand(Q) = -1, where d is +1 if the edge runs clockwise,
// as drawn, from end A of the seam to end B. A part that is cut once with a side up
// is tied to the constant +1. Signs that contradict one another mean that something
// is cut as its mirror image.

// Clash is a contradiction between hands. Cut is the cut line to blame, if
// turning it over cures more than any other; else nil. Seam is the seam at which
// the contradiction shows. Sure says that seams tell which ends meet; if not, a
// name that two edges have in common does.
type Clash struct {
	Cut  *model.Cut
	Seam *model.Seam
	Sure bool
	Cond condition.Cond
}

// Solution is what is known of hands: the contradictions, the side of single cuts
// that the pattern left open and one reading alone fits, and the seams whose ends
// could not be told, which are not checked.
type Solution struct {
	Clashes []Clash
	Deduced map[*model.Cut]int8
	Unknown []*model.Seam

	plan atomic.Pointer[plan] // of the same pattern, for whoever takes it first
}

// Hands solves the signs, in every garment at once.
func Hands(p *model.Pattern) *Solution {
	w := newPlan(p)
	ties, unknown := w.ties()
	x := &Solution{Deduced: map[*model.Cut]int8{}, Unknown: unknown}
	x.plan.Store(w)
	var all, strong []*tie
	for n := range ties {
		t := &ties[n]
		if t.cond = p.Space.And(t.cond, p.Valid); t.cond == condition.False {
			continue
		}
		all = append(all, t)
		if !t.weak {
			strong = append(strong, t)
		}
	}
	for _, island := range islands(strong) {
		x.clash(p, island, true)
	}
	for _, island := range islands(all) {
		x.clash(p, island, false)
	}
	x.deduce(p, strong)
	return x
}

// clash finds what is wrong in one island. Names are asked last: what is wrong
// without them is not said again.
func (x *Solution) clash(p *model.Pattern, ties []*tie, sure bool) {
	s := newSigns(p.Space, ties)
	s.solve()
	for _, t := range ties {
		bad := s.against(t)
		for _, c := range x.Clashes {
			if !sure && c.Sure && touches(ties, c) {
				bad = p.Space.Diff(bad, c.Cond)
			}
		}
		if bad != condition.False {
			x.report(p, ties, t, bad, sure)
		}
	}
}

// touches reports whether a clash lies in an island.
func touches(ties []*tie, c Clash) bool {
	for _, t := range ties {
		if t.seam != nil && t.seam == c.Seam || c.Cut != nil && (t.a.cut == c.Cut || t.b.cut == c.Cut) {
			return true
		}
	}
	return false
}

// report names the piece to blame, garment by garment where that differs; where
// too many choices meet, the seam alone.
func (x *Solution) report(p *model.Pattern, ties []*tie, t *tie, bad condition.Cond, sure bool) {
	list, ok := regions(p.Space, bad, ties)
	if !ok {
		list = []condition.Cond{bad}
	}
	for _, r := range list {
		c := Clash{Seam: t.seam, Cond: r, Sure: sure}
		if ok {
			c.Cut = blame(p.Space, r, ties)
		}
		x.Clashes = widened(p.Space, x.Clashes, c)
	}
}

// widened adds a clash, or widens the same one.
func widened(space *condition.Space, list []Clash, c Clash) []Clash {
	for i := range list {
		if list[i].Sure == c.Sure && list[i].Cut == c.Cut && (c.Cut != nil || list[i].Seam == c.Seam) {
			list[i].Cond = space.Or(list[i].Cond, c.Cond)
			return list
		}
	}
	return append(list, c)
}

// deduce gives the sign of every cut that has the same one wherever it is cut.
func (x *Solution) deduce(p *model.Pattern, ties []*tie) {
	s := newSigns(p.Space, ties)
	fixed := s.solve()
	open := map[*model.Cut]bool{}
	for g, is := range fixed {
		if g.cut == nil {
			continue
		}
		there := p.Space.And(g.cut.Cond, p.Valid)
		sign := int8(1)
		if is[0] == condition.False {
			sign = -1
		}
		whole := p.Space.Implies(there, p.Space.Or(is[0], is[1])) && (is[0] == condition.False) != (is[1] == condition.False)
		if old, ok := x.Deduced[g.cut]; !whole || ok && old != sign {
			open[g.cut] = true
			continue
		}
		x.Deduced[g.cut] = sign
	}
	for c := range open {
		delete(x.Deduced, c)
	}
}

// Solved gives what Deduce solved, if the pattern still is as it was then; else it
// solves the signs anew.
func Solved(p *model.Pattern) *Solution {
	if x, ok := p.Kept.(*Solution); ok {
		return x
	}
	return Hands(p)
}

// planOf gives the plan that was made when the signs were solved, to whoever asks
// first, since a play writes into it; else a new one.
func planOf(p *model.Pattern) *plan {
	if x, ok := p.Kept.(*Solution); ok {
		if w := x.plan.Swap(nil); w != nil {
			w.Pattern = p
			return w
		}
	}
	return newPlan(p)
}

// Deduce settles the side of single cuts that the pattern leaves open where one
// reading alone fits what they are sewn to. Interfacing follows its cloth. What was
// solved is kept with the pattern if nothing had to be settled.
func Deduce(p *model.Pattern) {
	x := Hands(p)
	settled := false
	for c, sign := range x.Deduced {
		l := &c.Lay
		if l.Up != model.NotSaid || l.Mirrored || l.Fold || l.Alike || c.Count != 1 || c.Piece.Symmetric || c.Material.Interfacing {
			continue
		}
		c.Settle(model.Face(sign))
		settled = true
	}
	if settled = p.SettleInterfacing() || settled; !settled {
		p.Kept = x
	}
}
