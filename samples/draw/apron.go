package main

import "seamwarden/samples/draw/draft"

func init() { samples["market-apron"] = drawApron }

const cm = 10 // millimetres

// The Market Apron. The bib is level at the top, the armholes are hollow and meet the
// sides at right angles, and the sides hang straight.
const (
	apronFacing     = 6 * cm // depth of the facing
	apronStrap      = 7 * cm // width of a strap unfolded
	apronPocketHalf = 18 * cm
	apronPocketDeep = 20 * cm
	apronLoopLong   = 14 * cm
	apronLoopWide   = 4 * cm
)

// apron is one size.
type apron struct {
	width, length, bib, strap float64 // finished
	underarm                  float64 // how far the sides begin below the top
}

func (t *table) apron(i int) apron {
	return apron{t.finished("width", i), t.finished("length", i), t.finished("bib", i), t.finished("strap", i), (26 + 0.5*float64(i)) * cm}
}

func (a apron) armhole() draft.Path {
	return draft.Flow(draft.At(a.bib/2, 0), draft.At(0.12, 1), draft.At(a.width/2, a.underarm), draft.Rightward, 0.5)
}

// body is the half from the fold, on the left, to the back corner.
func (a apron) body() *draft.Piece {
	arm := a.armhole()
	foot, corner := draft.At(0, a.length), draft.At(a.width/2, a.length)
	p := draft.New(draft.Edge{Name: "top", Path: draft.Line(draft.At(0, 0), arm.Start())}, draft.Edge{Name: "armhole", Path: arm},
		draft.Edge{Name: "side", Path: draft.Line(arm.End(), corner)}, draft.Edge{Name: "hem", Path: draft.Line(corner, foot)},
		draft.Edge{Name: "centre", Path: draft.Line(foot, draft.At(0, 0))})
	p.NotchBack("strap-place", "top", 3*cm)
	pocket := draft.At(0, a.underarm+12*cm)
	p.Mark("pocket-place", pocket).Mark("loop-place", pocket.Plus(draft.At(apronPocketHalf+3*cm, 3*cm)))
	p.Mark("corner-place", arm.End().Plus(draft.At(-2*cm, 2.5*cm)))
	return p.GrainLine(draft.At(8*cm, 30*cm), draft.At(8*cm, 60*cm))
}

// facing repeats the top of the body, with the beginning of the armhole as its end.
func (a apron) facing() *draft.Piece {
	end, _ := a.armhole().Cut(apronFacing)
	low := end.End().Y
	return draft.New(draft.Edge{Name: "attach", Path: draft.Line(draft.At(0, 0), end.Start())}, draft.Edge{Name: "end", Path: end},
		draft.Edge{Name: "inner", Path: draft.Line(end.End(), draft.At(0, low))}, draft.Edge{Name: "centre", Path: draft.Line(draft.At(0, low), draft.At(0, 0))}).
		GrainLine(draft.At(5*cm, 1*cm), draft.At(5*cm, 5*cm))
}

// strip is a piece that is folded along its middle.
func strip(wide, long float64) *draft.Piece {
	return draft.Rectangle(wide, long, "head", "outer", "foot", "inner").
		Fold("middle", draft.At(wide/2, 0), draft.At(wide/2, long)).GrainLine(draft.At(wide/4, long/4), draft.At(wide/4, 3*long/4))
}

func apronPocket() *draft.Piece {
	return draft.Rectangle(apronPocketHalf, apronPocketDeep, "top", "side", "base", "centre").
		GrainLine(draft.At(8*cm, 4*cm), draft.At(8*cm, 16*cm))
}

func drawApron(t *table) map[string]*draft.Drawing {
	return map[string]*draft.Drawing{
		"body":       t.drawing("Market Apron 1, body", func(i int) *draft.Piece { return t.apron(i).body() }),
		"top-facing": t.drawing("Market Apron 2, top facing", func(i int) *draft.Piece { return t.apron(i).facing() }),
		"strap":      t.drawing("Market Apron 3, strap", func(i int) *draft.Piece { return strip(apronStrap, t.apron(i).strap) }),
		"pocket":     t.drawing("Market Apron 4, pocket", func(int) *draft.Piece { return apronPocket() }),
		"loop":       t.drawing("Market Apron 5, towel loop", func(int) *draft.Piece { return strip(apronLoopWide, apronLoopLong) }),
	}
}
