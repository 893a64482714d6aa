package main

import "seamwarden/samples/draw/draft"

// hoodSide is drawn as its right one, seen from outside, with the face on the right and
// the neck at the front in the origin. Its neck goes with front and sleeve.
func (b *block) hoodSide() *draft.Piece {
	neck, crown, face := b.hoodLines()
	return draft.New(edge("crown", crown), edge("face", face), edge("neck", neck)).GrainLine(draft.At(-110, -240), draft.At(-110, -60))
}

func (b *block) hoodLines() (neck, crown, face draft.Path) {
	long := b.front.neck.Length() + b.front.sleeveNeck.Length() + b.back.sleeveNeck.Length()
	front, top := draft.At(0, 0), draft.At(-14, -318-0.02*b.over)
	neck = draft.OfLength(long, 0.7*long, 0.999*long, func(x float64) draft.Path {
		return draft.Flow(front, draft.Heading(178), draft.At(-x, -30), draft.Heading(174), 0.38)
	})
	nape := neck.End()
	behind := draft.At(nape.X-34, -196-0.01*b.over)
	crown = draft.Flow(nape, draft.Heading(257), behind, draft.Heading(274), 0.35).
		Then(draft.Bezier(behind, behind.Plus(draft.Heading(274).Times(0.55*(behind.Y-top.Y))), top.Minus(draft.Heading(9).Times(0.55*(top.X-behind.X))), top))
	face = swing(top, draft.Heading(103), 0.35, front, draft.Heading(88), 0.35)
	return
}

// The hood's centre is half a strip from the face, on top, to the neck at the back.
const centreFace = 76

func (b *block) hoodCentre() *draft.Piece {
	_, crown, _ := b.hoodLines()
	wide := b.back.neck.Length()
	at := func(long float64) draft.Path {
		return swing(draft.At(centreFace, 0), draft.Heading(84), 0.35, draft.At(wide, long), draft.Heading(92), 0.3)
	}
	side := draft.OfLength(crown.Length(), 200, 700, at)
	neck := draft.Line(side.End(), draft.At(0, side.End().Y))
	return draft.New(edge("face", straight(0, 0, centreFace, 0)), edge("crown", side), edge("neck", neck), edge("centre", draft.Line(neck.End(), draft.At(0, 0)))).
		GrainLine(draft.At(35, 120), draft.At(35, 320))
}

// The peak is sewn to the whole face edge of the hood's centre.
func hoodPeak() *draft.Piece {
	attach := draft.OfLength(centreFace, 40, centreFace-0.1, func(x float64) draft.Path {
		return draft.Flow(draft.At(x, 16), draft.Heading(198), draft.At(0, 0), draft.Leftward, 0.35)
	})
	rim := swing(draft.At(0, -62), draft.Rightward, 0.5, attach.Start(), draft.Heading(78), 0.4)
	return draft.New(edge("rim", rim), edge("attach", attach), edge("centre", straight(0, 0, 0, -62))).GrainLine(draft.At(20, -45), draft.At(20, -5))
}

const collarHigh = 70

// innerCollar is half a stand collar; it rises toward the front, so that it lies close.
func (b *block) innerCollar() *draft.Piece {
	f, k := b.front, b.back
	long := k.neck.Length() + k.sleeveNeck.Length() + f.sleeveNeck.Length() + f.neck.Length()
	up := draft.Heading(-9)
	neck := draft.OfLength(long, 0.8*long, long, func(x float64) draft.Path {
		return draft.Flow(draft.At(0, collarHigh), draft.Rightward, draft.At(x, collarHigh-18), up, 0.35)
	})
	front := neck.End().Plus(up.Left().Times(collarHigh))
	return draft.New(edge("top", draft.Flow(draft.At(0, 0), draft.Rightward, front, up, 0.35)), edge("end", draft.Line(front, neck.End())), edge("neck", neck.Reversed()),
		edge("centre", straight(0, collarHigh, 0, 0))).GrainLine(draft.At(60, 12), draft.At(60, 58))
}

func (b *block) collar() *draft.Piece {
	p := b.innerCollar()
	end := p.Edge("end")
	down, in := end.Leaving(), end.Leaving().Right()
	return p.Mark("stud-place", end.Start().Plus(down.Times(b.snaps(viewC)[0]-b.flapTop(viewC))).Plus(in.Times(snapIn)))
}
