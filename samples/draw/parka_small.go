package main

import "seamwarden/samples/draw/draft"

const (
	flapWide = 60
	studIn   = 105 // of the stud on the back sleeve from the overarm seam
	clear    = 10  // how far the flap keeps from the neck and lower edge, one allowance
)

// Small parts; what is the same in all sizes is drawn once.

// flapTop is the y of the upper end of the flap, flapLong how long it is. In view C it
// runs up over the collar, to the seam at its top.
func (b *block) flapTop(v view) float64 {
	if v == viewC {
		return b.frontNeck - collarHigh
	}
	return b.frontNeck + clear
}

func (b *block) flapLong(v view) float64 {
	if v == viewC {
		return b.backLong[v] - b.flapTop(v)
	}
	return b.backLong[v] - clear - b.flapTop(v)
}

// snaps gives the y of the six snaps of the flap. In view C the first is on the collar,
// and the lowest above the band.
func (b *block) snaps(v view) (ys []float64) {
	first, last := b.flapTop(v)+17, b.flapTop(v)+b.flapLong(v)-17
	if v == viewC {
		first, last = b.flapTop(v)+25, b.bandSeam-20
	}
	for i := range 6 {
		ys = append(ys, first+(last-first)*float64(i)/5)
	}
	return
}

func (b *block) stormFlap(v view) *draft.Piece {
	p := draft.Rectangle(2*flapWide, b.flapLong(v), "top", "outer", "foot", "inner").Fold("middle", draft.At(flapWide, 0), draft.At(flapWide, b.flapLong(v)))
	for _, y := range b.snaps(v) {
		p.Mark("snap-place", draft.At(flapWide+20, y-b.flapTop(v)))
	}
	return p.GrainLine(draft.At(25, 150), draft.At(25, 350))
}

// The tab is narrow enough to leave the row along the wrist free.
func sleeveTab() *draft.Piece {
	const wide, long, point = 32, 85, 17
	a, z := draft.At(0, 0), draft.At(wide, 0)
	return draft.New(edge("attach", draft.Line(a, z)), edge("rim", draft.Line(z, draft.At(wide, long-point), draft.At(wide/2, long), draft.At(0, long-point), a))).
		Mark("socket-place", draft.At(wide/2, long-point)).GrainLine(draft.At(8, 10), draft.At(8, 60))
}

func pocketWelt() *draft.Piece {
	const wide = 35
	top, foot := draft.At(wide, 0), draft.At(wide, pocketLong)
	return draft.New(edge("attach", draft.Line(top, foot)), edge("rim", draft.Line(foot, draft.At(0, pocketLong), draft.At(0, 0), top))).GrainLine(draft.At(15, 40), draft.At(15, 140))
}

// bag is the round of a pocket bag, from the upper end of the opening to the lower.
func bag() draft.Path {
	return draft.Bezier(draft.At(0, 0), draft.At(62, 2), draft.At(118, 40), draft.At(118, 118)).Then(draft.Bezier(draft.At(118, 118), draft.At(118, 176), draft.At(96, 216), draft.At(58, 216)),
		draft.Bezier(draft.At(58, 216), draft.At(34, 216), draft.At(14, 204), draft.At(0, pocketLong)))
}

func pocketBag() *draft.Piece {
	return draft.New(edge("opening", straight(0, pocketLong, 0, 0)), edge("bag", bag())).GrainLine(draft.At(40, 50), draft.At(40, 150))
}

// pocketFacing is traced from the bag along the opening.
func pocketFacing() *draft.Piece {
	const wide = 50
	inner := straight(wide, -50, wide, 300)
	s, _, _ := bag().Crossing(inner)
	t, _, _ := bag().Reversed().Crossing(inner)
	top, _ := bag().Cut(s)
	_, foot := bag().Cut(bag().Length() - t)
	return draft.New(edge("top", top), edge("inner", draft.Line(top.End(), foot.Start())), edge("foot", foot), edge("opening", straight(0, pocketLong, 0, 0))).
		GrainLine(draft.At(25, 40), draft.At(25, 150))
}

func hangLoop() *draft.Piece {
	const wide, long = 20, 90
	return draft.Rectangle(wide, long, "head", "outer", "foot", "inner").Fold("middle", draft.At(wide/2, 0), draft.At(wide/2, long)).GrainLine(draft.At(5, 20), draft.At(5, 70))
}

func insidePocket() *draft.Piece {
	return draft.Rectangle(140, 150, "top", "front-side", "base", "back-side").GrainLine(draft.At(70, 30), draft.At(70, 120))
}
