package main

import (
	"math"

	"seamwarden/samples/draw/draft"
)

func init() { samples["puddle-cape"] = drawCape }

// The Puddle Cape hangs from the shoulders as a cone. Its front and back are sectors of
// that cone, alike at the side: the seam runs from the neck over the shoulder and then
// straight down. The fronts are cut back by half the width of the band.
const (
	capeBand       = 4 * cm // finished width
	capeNeckRise   = 1.8 * cm
	capePocketWide = 12 * cm
	capePocketDeep = 12 * cm
	capeFlapDeep   = 5.5 * cm
)

// capeShoulder is the way of the side seam from the neck.
var capeShoulder = draft.At(1, 0.25)

// cape is one size. A quarter of a girth reaches from the middle to the side.
type cape struct {
	seam       float64 // half of the neck seam, from front edge to the middle of the back
	chest, hem float64 // a quarter of each
	long, hood float64
	depth      float64 // of the chest line below the neck
	slit, hand float64 // how far along the side the hand opening begins, and its length
}

func (t *table) cape(i int) cape {
	grow := float64(i)
	return cape{seam: (t.finished("neck", i) - capeBand) / 2, chest: t.finished("chest", i) / 4, hem: t.finished("hem", i) / 4,
		long: t.finished("length", i), hood: t.finished("hood", i), depth: (16 + 0.8*grow) * cm, slit: (27 + 1.5*grow) * cm, hand: (13 + 0.5*grow) * cm}
}

// cone gives the angle of a sector from the middle to the side, in radians, and how high
// its point lies: between chest and hem the cone grows as the table says.
func (c cape) cone() (flare, top float64) {
	flare = (c.hem - c.chest) / (c.long - c.depth)
	return flare, c.long - c.hem/flare
}

// neckPoint is where the side seam begins, beside the middle of the back.
func (c cape) neckPoint() draft.Point { return draft.At(0.39*c.seam, -capeNeckRise) }

// side is the side seam of the back, walked down.
func (c cape) side() draft.Path {
	flare, top := c.cone()
	down := draft.At(math.Sin(flare), math.Cos(flare))
	apex := draft.At(0, top)
	chest, hem := apex.Plus(down.Times(c.chest/flare)), apex.Plus(down.Times(c.hem/flare))
	return draft.Flow(c.neckPoint(), capeShoulder, chest, down, 0.4).Then(draft.Line(chest, hem))
}

// hemArc is the lower edge from the side to the middle, an arc of the cone.
func (c cape) hemArc() draft.Path {
	flare, top := c.cone()
	return draft.Arc(draft.At(0, top), c.hem/flare, 90-flare*180/math.Pi, 90)
}

// backNeck meets the side at a right angle, as the front neck does.
func (c cape) backNeck() draft.Path {
	end := c.neckPoint()
	return draft.Bezier(draft.At(0, 0), draft.At(0.6*end.X, 0), end.Minus(capeShoulder.Left().Unit().Times(0.75*capeNeckRise)), end)
}

func (c cape) back() *draft.Piece {
	side, hem := c.side(), c.hemArc()
	p := draft.New(draft.Edge{Name: "neck", Path: c.backNeck()}, draft.Edge{Name: "side", Path: side}, draft.Edge{Name: "hem", Path: hem},
		draft.Edge{Name: "centre", Path: draft.Line(hem.End(), draft.At(0, 0))})
	p.Notch("slit-top", "side", c.slit).Notch("slit-end", "side", c.slit+c.hand).Mark("patch-place", draft.At(0, 12*cm))
	return p.GrainLine(draft.At(8*cm, 12*cm), draft.At(8*cm, 36*cm))
}

// frontNeck is as deep as makes the whole neck seam as long as it ought to be. It is
// drawn for the left front and mirrored with it.
func (c cape) frontNeck() draft.Path {
	wanted := c.seam - c.backNeck().Length()
	return draft.OfLength(wanted, 2*cm, 12*cm, func(deep float64) draft.Path {
		return draft.Flow(draft.At(capeBand/2, deep), draft.Rightward, c.neckPoint(), capeShoulder.Left(), 0.45)
	})
}

// front is the front on the wearer's right: its side lies on the left.
func (c cape) front() *draft.Piece {
	side, neck := c.side(), c.frontNeck()
	edge := draft.Line(neck.Start(), draft.At(capeBand/2, c.long))
	whole := c.hemArc()
	cut, _ := whole.Meeting(edge.Then(draft.Line(edge.End(), edge.End().Plus(draft.At(0, cm)))))
	hem, _ := whole.Cut(cut)
	p := draft.New(draft.Edge{Name: "neck", Path: neck}, draft.Edge{Name: "side", Path: side}, draft.Edge{Name: "hem", Path: hem},
		draft.Edge{Name: "front-edge", Path: draft.Line(hem.End(), neck.Start())})
	p.Notch("slit-top", "side", c.slit).Notch("slit-end", "side", c.slit+c.hand)
	place := draft.At(11*cm, c.depth+2*cm)
	p.Mark("pocket-place", place).Mark("flap-place", place.Minus(draft.At(0, 1.5*cm)))
	return p.GrainLine(draft.At(6*cm, 14*cm), draft.At(6*cm, 36*cm)).Mirrored(0)
}

// hoodSide is the hood on the wearer's right, its face on the right. The crown leaves
// the neck and reaches the face at right angles, so that both run on over the seam.
func (c cape) hoodSide() *draft.Piece {
	front, top := draft.At(0, 0), draft.At(0, -c.hood)
	dip := draft.At(-1, 0.3)
	neck := draft.OfLength(c.seam, 8*cm, 30*cm, func(x float64) draft.Path { return draft.Flow(front, draft.Leftward, draft.At(-x, 2*cm), dip, 0.36) })
	back := draft.At(neck.End().X-4*cm, -0.52*c.hood)
	crown := draft.Flow(neck.End(), dip.Right(), back, draft.Upward, 0.36).Then(draft.Flow(back, draft.Upward, top, draft.Rightward, 0.45))
	p := draft.New(draft.Edge{Name: "crown", Path: crown}, draft.Edge{Name: "face", Path: draft.Line(top, front)}, draft.Edge{Name: "neck", Path: neck})
	p.Notch("shoulder-point", "neck", c.frontNeck().Length())
	return p.GrainLine(draft.At(-6*cm, -22*cm), draft.At(-6*cm, -4*cm))
}

// band is the band on the wearer's right, its attached edge on the left: as long as
// the front edge and the face of the hood.
func (c cape) band() *draft.Piece {
	front := c.front().Edge("front-edge").Length()
	long := c.hood + front
	p := draft.Rectangle(2*capeBand, long, "head", "inner", "foot", "attach")
	p.Fold("crease", draft.At(capeBand, 0), draft.At(capeBand, long)).Notch("neck-point", "attach", front)
	const first = 2.5 * cm
	for k := range 5 {
		p.Mark("snap-place", draft.At(capeBand/2, c.hood+first+float64(k)*0.16*front))
	}
	return p.GrainLine(draft.At(1.5*capeBand, 10*cm), draft.At(1.5*capeBand, 40*cm))
}

// backing lies behind the outer half of the band, from its foot to the neck.
func (c cape) backing() *draft.Piece {
	return draft.Rectangle(capeBand, c.front().Edge("front-edge").Length(), "head", "fold-side", "foot", "attach").
		GrainLine(draft.At(capeBand/2, 8*cm), draft.At(capeBand/2, 28*cm))
}

func capePocket() *draft.Piece {
	return draft.Rectangle(capePocketWide/2, capePocketDeep, "top", "side", "base", "centre").
		GrainLine(draft.At(3*cm, 2*cm), draft.At(3*cm, 10*cm))
}

// capeFlap is a little wider than the pocket that it covers.
func capeFlap() *draft.Piece {
	half := capePocketWide/2 + 0.3*cm
	low := draft.At(0, capeFlapDeep)
	right := draft.Flow(draft.At(half, 0), draft.Downward, low, draft.Leftward, 0.5)
	return draft.New(draft.Edge{Name: "straight-edge", Path: draft.Line(draft.At(-half, 0), draft.At(half, 0))},
		draft.Edge{Name: "round", Path: right.Then(right.Mirrored(0))}).GrainLine(draft.At(0, 1*cm), draft.At(0, 4.5*cm))
}

// capeDrop has its point up: two straight lines that touch a circle.
func capeDrop() *draft.Piece {
	const radius, high = 3.2 * cm, 7 * cm // of the circle, and from its middle to the point
	angle := math.Asin(radius/high) * 180 / math.Pi
	round := draft.Arc(draft.At(0, 0), radius, -angle, 180+angle)
	point := draft.At(0, -high)
	return draft.New(draft.Edge{Name: "outer-edge", Path: draft.Line(point, round.Start()).Then(round, draft.Line(round.End(), point))}).
		GrainLine(draft.At(0, -4*cm), draft.At(0, 2*cm))
}

func drawCape(t *table) map[string]*draft.Drawing {
	sized := func(title string, piece func(cape) *draft.Piece) *draft.Drawing {
		return t.drawing("Puddle Cape "+title, func(i int) *draft.Piece { return piece(t.cape(i)) })
	}
	same := func(title string, piece func() *draft.Piece) *draft.Drawing {
		return t.drawing("Puddle Cape "+title, func(int) *draft.Piece { return piece() })
	}
	return map[string]*draft.Drawing{
		"front": sized("1, front", cape.front), "back": sized("2, back", cape.back), "hood": sized("3, hood side", cape.hoodSide),
		"band": sized("4, front band", cape.band), "snap-backing": sized("5, snap backing", cape.backing),
		"pocket": same("6, chest pocket", capePocket), "flap": same("7, pocket flap", capeFlap), "patch": same("8, reflective patch", capeDrop),
	}
}
