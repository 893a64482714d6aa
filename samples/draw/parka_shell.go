package main

import "seamwarden/samples/draw/draft"

// The outside. Bodies are drafted with the centre on the left; those that are drawn as
// the wearer's right front, seen from outside, are turned over at the end.

const (
	facingWide = 70  // of the front facing below the chest: the corner of the lower edge
	snapIn     = 30  // of a snap from the front edge
	pocketLong = 180 // of the opening, as the zip
	tabUp      = 58  // the middle of the tab above the wrist
	bandDeep   = 60
)

// down is the side seam of the body.
func (b *block) down(v view) draft.Path {
	return b.side.Then(draft.Line(b.side.End(), draft.At(b.seat/4, b.lower(v))))
}

// lower is the y of the lower edge of the body: in view C that of the band seam.
func (b *block) lower(v view) float64 {
	if v == viewC {
		return b.bandSeam
	}
	return b.backLong[v]
}

// frontEdge and foot bound the stretch of a front that its facing covers.
func (b *block) frontEdge(v view) draft.Path {
	return straight(0, b.lower(v), 0, b.frontNeck)
}

func (b *block) foot(y float64) draft.Path {
	return straight(facingWide, y, 0, y)
}

// notched is how far below the neck a raglan seam has its notch.
func notched(h half) float64 { return 0.72 * h.upper.Length() }

func (b *block) frontPiece(v view) *draft.Piece {
	y := b.lower(v)
	p := draft.New(edge("neck", b.front.neck), edge("raglan", b.front.raglan()), edge("side", b.down(v)),
		edge("hem", straight(b.seat/4, y, facingWide, y)), edge("corner", b.foot(y)), edge("front-edge", b.frontEdge(v)))
	p.Notch("front-notch", "raglan", notched(b.front))
	b.frontMarks(p, v)
	return p.GrainLine(draft.At(120, 310), draft.At(120, 490)).Mirrored(0)
}

// frontMarks puts the snaps onto a front. In view C the uppermost is on the collar.
func (b *block) frontMarks(p *draft.Piece, v view) {
	p.Mark("facing-end", draft.At(facingWide, b.lower(v)))
	for i, y := range b.snaps(v) {
		switch {
		case i > 0:
			p.Mark("snap-place", draft.At(snapIn, y))
		case v != viewC:
			p.Mark("top-snap-place", draft.At(snapIn, y))
		}
	}
}

// panel is the seam between centre front and side front, from the raglan seam down.
func (b *block) panel(v view) (raglan float64, seam draft.Path) {
	raglan = 0.55 * b.front.upper.Length()
	from, way := b.front.upper.At(raglan)
	knee := draft.At(from.X+12+0.02*b.over, b.chestLine+30)
	return raglan, swing(from, way.Right().Plus(draft.Downward), 0.25, knee, draft.Downward, 0.4).Then(draft.Line(knee, draft.At(knee.X, b.lower(v))))
}

// pocketFrom is how far along the panel seam the opening begins.
func pocketFrom(seam draft.Path) float64 { return seam[:1].Length() + 40 }

func (b *block) centreFront(v view) *draft.Piece {
	s, seam := b.panel(v)
	raglan, _ := b.front.raglan().Cut(s)
	y := b.lower(v)
	p := draft.New(edge("neck", b.front.neck), edge("raglan", raglan), edge("panel", seam), edge("hem", draft.Line(seam.End(), draft.At(facingWide, y))),
		edge("corner", b.foot(y)), edge("front-edge", b.frontEdge(v)))
	p.Notch("pocket-top", "panel", pocketFrom(seam)).Notch("pocket-end", "panel", pocketFrom(seam)+pocketLong)
	b.frontMarks(p, v)
	return p.GrainLine(draft.At(90, 310), draft.At(90, 490)).Mirrored(0)
}

func (b *block) sideFront(v view) *draft.Piece {
	s, seam := b.panel(v)
	_, raglan := b.front.raglan().Cut(s)
	p := draft.New(edge("raglan", raglan), edge("side", b.down(v)), edge("hem", draft.Line(draft.At(b.seat/4, b.lower(v)), seam.End())), edge("panel", seam.Reversed()))
	p.Notch("front-notch", "raglan", notched(b.front)-s)
	p.NotchBack("pocket-top", "panel", pocketFrom(seam)).NotchBack("pocket-end", "panel", pocketFrom(seam)+pocketLong)
	return p.GrainLine(draft.At(210, 310), draft.At(210, 490)).Mirrored(0)
}

func (b *block) backPiece(v view) *draft.Piece {
	y := b.lower(v)
	p := draft.New(edge("neck", b.back.neck), edge("raglan", b.back.raglan()), edge("side", b.down(v)),
		edge("hem", straight(b.seat/4, y, 0, y)), edge("centre", straight(0, y, 0, 0)))
	return p.Notch("back-notch", "raglan", notched(b.back)).GrainLine(draft.At(60, 310), draft.At(60, 490))
}

// yoke is the seam below the yoke, from the raglan seam to the centre, and how far down
// the raglan seam it lies.
func (b *block) yoke() (raglan float64, seam draft.Path) {
	raglan = notched(b.back) - 15
	from, _ := b.back.upper.At(raglan)
	return raglan, draft.Flow(from, draft.Heading(174), draft.At(0, from.Y+9), draft.Leftward, 0.35)
}

func (b *block) backYoke() *draft.Piece {
	s, seam := b.yoke()
	raglan, _ := b.back.raglan().Cut(s)
	p := draft.New(edge("neck", b.back.neck), edge("raglan", raglan), edge("base", seam), edge("centre", draft.Line(seam.End(), draft.At(0, 0))))
	return p.GrainLine(draft.At(30, 25), draft.At(30, 95))
}

func (b *block) lowerBack() *draft.Piece {
	s, seam := b.yoke()
	_, raglan := b.back.raglan().Cut(s)
	y := b.lower(viewC)
	p := draft.New(edge("top", seam.Reversed()), edge("raglan", raglan), edge("side", b.down(viewC)), edge("hem", straight(b.seat/4, y, 0, y)),
		edge("centre", draft.Line(draft.At(0, y), seam.End())))
	return p.Notch("back-notch", "raglan", notched(b.back)-s).GrainLine(draft.At(60, 310), draft.At(60, 490))
}

// sleevePiece is half a sleeve that ends so far above the wrist, hanging down from the
// shoulder, as the back one is seen from outside.
func (b *block) sleevePiece(h half, short float64) *draft.Piece {
	overarm, _ := b.overarm.Cut(b.overarm.Length() - short)
	underarm, _ := h.underarm.Cut(h.underarm.Length() - short)
	hang := func(p draft.Path) draft.Path { return p.Turned(b.shoulder, 90-armDegrees).Moved(b.shoulder.Times(-1)) }
	return draft.New(edge("neck", hang(h.sleeveNeck)), edge("overarm", hang(overarm)), edge("wrist", hang(draft.Line(overarm.End(), underarm.End()))),
		edge("underarm", hang(underarm.Reversed())), edge("raglan", hang(h.sleeveRaglan().Reversed()))).
		GrainLine(draft.At(-60, 250), draft.At(-60, 500))
}

func (b *block) frontSleeve() *draft.Piece {
	p := b.sleevePiece(b.front, 0).NotchBack("front-notch", "raglan", notched(b.front))
	return p.NotchBack("tab-place", "overarm", tabUp).Mirrored(0)
}

func (b *block) backSleeve() *draft.Piece {
	p := b.sleevePiece(b.back, 0).NotchBack("back-notch", "raglan", notched(b.back)).NotchBack("tab-place", "overarm", tabUp)
	end := p.Edge("wrist").Start()
	return p.Mark("stud-place", end.Plus(draft.At(-studIn, -tabUp)))
}

func (b *block) hemBand() *draft.Piece {
	long := b.seat / 2
	p := draft.New(edge("top", straight(0, 0, long, 0)), edge("end", straight(long, 0, long, bandDeep)),
		edge("corner", straight(long, bandDeep, long-facingWide, bandDeep)), edge("base", straight(long-facingWide, bandDeep, 0, bandDeep)),
		edge("centre", straight(0, bandDeep, 0, 0)))
	return p.Mark("facing-end", draft.At(long-facingWide, bandDeep)).GrainLine(draft.At(100, 10), draft.At(100, bandDeep-10))
}
