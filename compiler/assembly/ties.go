package assembly

import (
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

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

func groupsOf(c *model.Cut) (all []group) {
	for _, i := range c.Instances {
		if g := groupOf(i); !has(all, g) {
			all = append(all, g)
		}
	}
	return
}

// tie says that the signs of two groups agree (+1) or differ (-1), where its
// condition holds.
type tie struct {
	a, b group
	sign int8
	cond condition.Cond
	seam *model.Seam // nil for what a cut line or a piece says itself
	said bool        // the pattern says it of this cut: its side up, or how it is drawn
	weak bool        // only names tell which ends meet
}

// ties gathers what ties hands together, and the seams of which nothing tells the
// ends apart.
func (w *plan) ties() (ties []tie, unknown []*model.Seam) {
	for _, x := range w.Pieces {
		if !x.Symmetric {
			ties = append(ties, saidOf(w.Space, x)...)
		}
	}
	for _, s := range w.Seams {
		told := true
		for _, j := range s.Copies {
			list, ok := w.lines[j].ties(w.Space)
			ties, told = append(ties, list...), told && ok
		}
		if !told {
			unknown = append(unknown, s)
		}
	}
	return
}

// saidOf gives what the pattern says of a piece itself: which side is up of a
// single cut, which of a pair is drawn.
//
// How a piece is drawn is said of one pair. Where a second pair of it is cut for the
// same garment, as the lining of a front is, the two lie face to face, and one of
// them is the mirror image: its seams tell.
func saidOf(space *condition.Space, x *model.Piece) (ties []tie) {
	pairs := condition.False
	for _, c := range x.Cuts {
		if !c.Material.Interfacing && c.Lay.Up != model.NotSaid && !c.Lay.Mirrored {
			for _, g := range groupsOf(c) {
				ties = append(ties, tie{a: g, sign: int8(c.Lay.Up), cond: c.Cond, said: true})
			}
		}
		if c.Lay.Mirrored && x.DrawnSaid && len(c.Lay.Names) < 2 {
			if first := space.Diff(c.Cond, pairs); first != condition.False {
				ties = append(ties, tie{a: groupOf(c.Instances[0]), sign: drawn(x), cond: first, said: true})
			}
		}
		if c.Lay.Mirrored && !c.Material.Interfacing {
			pairs = space.Or(pairs, c.Cond)
		}
	}
	return
}

// ties gives what a seam line ties: at each of its ends, the two edges that end
// there. told says whether all hands in it that matter are tied.
func (l *seamline) ties(space *condition.Space) (ties []tie, told bool) {
	open := l.handed(space)
	at := map[[2]model.EdgeUse]int{}
	for _, e := range l.ends {
		p, q := &e.of[0].use, &e.of[1].use
		if e.told == noEvidence || !handed(p) || !handed(q) {
			continue
		}
		open = space.Diff(open, e.cond)
		k := [2]model.EdgeUse{*p, *q}
		if n, ok := at[k]; ok {
			ties[n].cond = space.Or(ties[n].cond, e.cond)
			continue
		}
		at[k] = len(ties)
		way := int8(e.of[0].step * e.of[1].step)
		ties = append(ties, tie{a: groupOf(p.Instance), b: groupOf(q.Instance), sign: -way * relative(p) * relative(q), cond: e.cond, seam: l.Seam, weak: e.told == byName})
	}
	return ties, open == condition.False
}

// handed is where both rows of a seam line have edges of which the hand matters.
func (l *seamline) handed(space *condition.Space) condition.Cond {
	if itself(l.Join) {
		return condition.False
	}
	var in [2]condition.Cond
	for n, list := range [][]*model.EdgeUse{l.A, l.B} {
		for _, u := range list {
			if handed(u) {
				in[n] = space.Or(in[n], u.Cond)
			}
		}
	}
	return space.All(l.Cond, in[0], in[1])
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

// relative is the sign of one part among those of its group.
func relative(u *model.EdgeUse) int8 {
	if u.Side == model.Left && (u.Instance.Cut.Lay.Mirrored || u.Instance.Cut.Lay.Fold) {
		return -1
	}
	return 1
}
