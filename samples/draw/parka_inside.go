package main

import (
	"math"

	"seamwarden/samples/draw/draft"
)

// The inside has the shape of the outside, cut into facings and lining.

const (
	frontFacingOn  = 45 // of the front raglan seam
	neckFacingOn   = 65 // of the back raglan seam
	neckFacingDeep = 80 // deep at the centre
	cuffDeep       = 75
	pleatHalf      = 20 // of the ease pleat, on either half of the back lining
)

// hemDeep is how deep the hem facing is: in view C as deep as the band.
func hemDeep(v view) float64 {
	if v == viewC {
		return bandDeep
	}
	return 50
}

// inner is the edge of the front facing toward the lining, from the raglan seam down to
// the lower edge of the coat.
func (b *block) inner(v view) draft.Path {
	from, way := b.front.upper.At(frontFacingOn)
	knee := draft.At(facingWide, b.chestLine)
	return swing(from, way.Right(), 0.3, knee, draft.Downward, 0.35).Then(draft.Line(knee, draft.At(facingWide, b.backLong[v])))
}

func (b *block) frontFacing(v view) *draft.Piece {
	raglan, _ := b.front.upper.Cut(frontFacingOn)
	y := b.backLong[v]
	p := draft.New(edge("neck", b.front.neck), edge("raglan", raglan), edge("inner", b.inner(v)), edge("foot", b.foot(y)), edge("attach", straight(0, y, 0, b.frontNeck)))
	return p.Mark("eyelet-place", draft.At(facingWide-15, y-13)).GrainLine(draft.At(35, 310), draft.At(35, 490)).Mirrored(0)
}

func (b *block) frontLining(v view) *draft.Piece {
	_, raglan := b.front.raglan().Cut(frontFacingOn)
	inner := b.inner(v)
	front, _ := inner.Cut(inner.Length() - hemDeep(v))
	side := b.liningSide(v)
	p := draft.New(edge("raglan", raglan), edge("side", side), edge("hem", draft.Line(side.End(), front.End())), edge("front", front.Reversed()))
	p.Notch("front-notch", "raglan", notched(b.front)-frontFacingOn).Mark("inside-pocket-place", draft.At(facingWide+90, b.chestLine+20))
	return p.GrainLine(draft.At(210, 310), draft.At(210, 490)).Mirrored(0)
}

func (b *block) liningSide(v view) draft.Path {
	return b.side.Then(draft.Line(b.side.End(), draft.At(b.seat/4, math.Max(b.bandSeam, b.backLong[v]-hemDeep(v)))))
}

// neckBase is the lower edge of the back neck facing, from the raglan seam to the centre.
func (b *block) neckBase() draft.Path {
	from, way := b.back.upper.At(neckFacingOn)
	return swing(from, way.Right(), 0.3, draft.At(0, neckFacingDeep), draft.Leftward, 0.4)
}

func (b *block) neckFacing() *draft.Piece {
	raglan, _ := b.back.upper.Cut(neckFacingOn)
	return draft.New(edge("neck", b.back.neck), edge("raglan", raglan), edge("base", b.neckBase()), edge("centre", straight(0, neckFacingDeep, 0, 0))).
		GrainLine(draft.At(30, 15), draft.At(30, 65))
}

// backLining lies on the fold along a line that leans out by half the pleat at the top;
// it is turned so that this line is upright.
func (b *block) backLining(v view) *draft.Piece {
	side := b.liningSide(v)
	foot := draft.At(0, side.End().Y)
	lean := math.Atan2(pleatHalf, foot.Y-neckFacingDeep) * 180 / math.Pi
	out := draft.Leftward.Turned(-lean)
	head := draft.At(0, neckFacingDeep).Plus(out.Times(pleatHalf))
	_, raglan := b.back.raglan().Cut(neckFacingOn)
	up := func(p draft.Path) draft.Path { return p.Turned(foot, lean) }
	p := draft.New(edge("top", up(draft.Line(head, draft.At(0, neckFacingDeep)).Then(b.neckBase().Reversed()))), edge("raglan", up(raglan)), edge("side", up(side)),
		edge("hem", up(draft.Flow(side.End(), draft.Leftward, foot, out, 0.35))), edge("centre", up(draft.Line(foot, head))))
	return p.Notch("back-notch", "raglan", notched(b.back)-neckFacingOn).GrainLine(draft.At(60, 310), draft.At(60, 490))
}

func (b *block) frontSleeveLining() *draft.Piece {
	return b.sleevePiece(b.front, cuffDeep).NotchBack("front-notch", "raglan", notched(b.front)).Mirrored(0)
}

func (b *block) backSleeveLining() *draft.Piece {
	return b.sleevePiece(b.back, cuffDeep).NotchBack("back-notch", "raglan", notched(b.back))
}

func (b *block) frontHemFacing(v view) *draft.Piece {
	return draft.Rectangle(b.seat/4-facingWide, hemDeep(v), "top", "end", "base", "side").GrainLine(draft.At(60, 5), draft.At(60, hemDeep(v)-5))
}

func (b *block) backHemFacing(v view) *draft.Piece {
	return draft.Rectangle(b.seat/4, hemDeep(v), "top", "side", "base", "centre").GrainLine(draft.At(60, 5), draft.At(60, hemDeep(v)-5))
}

func (b *block) cuffFacing() *draft.Piece {
	return draft.Rectangle(2*b.wrist, cuffDeep, "top", "front-end", "base", "back-end").GrainLine(draft.At(60, 10), draft.At(60, cuffDeep-10))
}
