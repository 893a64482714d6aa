package main

import "seamwarden/samples/draw/draft"

func init() { samples["dusk-skirt"] = drawSkirt }

// The Dusk Skirt. The band sits at the waist; the hip lies 8 in below it. Each seam is
// shaped between waist and hip and flares straight from there, and the hem of each
// panel is an arc of the cone that it lies on, so that the closed skirt hangs level.
const (
	skirtHipDepth   = 8 * draft.Inch
	skirtLap        = 0.75 * draft.Inch // how far the wrap passes the left front seam
	skirtDartTakes  = 1 * draft.Inch
	skirtDartLong   = 4.5 * draft.Inch
	skirtSideFlare  = 0.09 // across for each unit down
	skirtFrontFlare = 0.07
	skirtFrontInset = 1 * draft.Inch // shaping of each side of a front seam
	skirtFrontRise  = 0.35 * draft.Inch
	skirtBackRise   = 0.75 * draft.Inch // how far the waist rises to the side seam
	skirtFacing     = 2.5 * draft.Inch
	skirtBand       = 2.5 * draft.Inch // unfolded
	skirtPocketTop  = 2 * draft.Inch   // below the waist
	skirtPocketLong = 6.5 * draft.Inch
)

// skirt is one size in one view.
type skirt struct {
	waist, hip, long float64 // finished
	curved           bool
}

// Half of the waist lies behind, and half an inch less than half of the hip, so that
// the side seams are seen from the front a little below the waist.
func (s skirt) backWaist() float64  { return s.waist / 4 }
func (s skirt) backHip() float64    { return s.hip/4 - 0.125*draft.Inch }
func (s skirt) frontWaist() float64 { return 0.3 * s.waist }
func (s skirt) frontHip() float64   { return s.frontWaist() + 2*skirtFrontInset }
func (s skirt) sideWaist() float64  { return (s.waist/2 - s.frontWaist()) / 2 }
func (s skirt) sideHip() float64    { return (s.hip/2 + 0.25*draft.Inch - s.frontHip()) / 2 }

// hips gives the ends of the hip line of a panel, an arc whose lowest place is at the
// depth of the hip.
func hips(width, left, right float64) (l, r draft.Point) {
	low := width * left / (left + right)
	return draft.At(0, skirtHipDepth-low*left/2), draft.At(width, skirtHipDepth-(width-low)*right/2)
}

// rightSeam is a seam on the right of a panel, walked down: from the waist, so far
// inside and above the hip, and on along its flare.
func (s skirt) rightSeam(hip draft.Point, inset, above, flare float64) draft.Path {
	waist := draft.At(hip.X-inset, hip.Y-above)
	down := draft.At(flare, 1)
	bend := draft.Flow(waist, draft.At(2*inset/above-flare, 1), hip, down, 0.36)
	return bend.Then(draft.Line(hip, hip.Plus(down.Unit().Times(s.long-skirtHipDepth))))
}

// leftSeam is the same on the left, walked up.
func (s skirt) leftSeam(hip draft.Point, inset, above, flare float64) draft.Path {
	return s.rightSeam(draft.At(-hip.X, hip.Y), inset, above, flare).Mirrored(0)
}

// arcTo is a line that leaves one seam and reaches another at right angles: a hem, or a
// waist without a dart.
func arcTo(from draft.Point, leaving draft.Point, to draft.Point, arriving draft.Point) draft.Path {
	return draft.Flow(from, leaving, to, arriving, 0.34)
}

// back is half of the back, its fold on the left.
func (s skirt) back() *draft.Piece {
	waist, side, legs := s.darted()
	foot := draft.At(0, s.long)
	p := draft.New(draft.Edge{Name: "waist", Path: waist}, draft.Edge{Name: "side", Path: side},
		draft.Edge{Name: "hem", Path: arcTo(side.End(), side.Arriving().Right(), foot, draft.Leftward)},
		draft.Edge{Name: "centre", Path: draft.Line(foot, draft.At(0, 0))})
	p.Notch("pocket-top", "side", skirtPocketTop).Notch("pocket-end", "side", skirtPocketTop+skirtPocketLong)
	p.Mark("back-dart", legs[0].Start()).Help(legs[0], legs[1])
	return p.GrainLine(draft.At(4*draft.Inch, 8*draft.Inch), draft.At(4*draft.Inch, 18*draft.Inch))
}

// darted gives waist and side of the back. The waist is drawn with the dart closed, of
// its finished length, and the dart is opened in it; its point lies as low as makes the
// legs as long as they ought to be.
func (s skirt) darted() (waist, side draft.Path, legs [2]draft.Path) {
	_, hip := hips(s.backHip(), 0, skirtSideFlare)
	angle := draft.Angle(skirtDartTakes, skirtDartLong)
	at := func(depth float64) (closed draft.Path, along float64, point draft.Point) {
		point = draft.At(0.52*s.backWaist(), depth)
		try := func(inset float64) draft.Path {
			side = s.rightSeam(hip, inset, hip.Y+skirtBackRise, skirtSideFlare)
			end := point.Plus(side.Start().Minus(point).Turned(-angle))
			return arcTo(draft.At(0, 0), draft.Rightward, end, side.Leaving().Left().Turned(-angle))
		}
		closed = draft.OfLength(s.backWaist(), 0.5*draft.Inch, 4*draft.Inch, try)
		along, _ = closed.Meeting(draft.Line(point, point.Plus(draft.Upward.Turned(-angle/2).Times(2*depth))))
		return
	}
	depth := draft.Solve(0.8*skirtDartLong, 1.2*skirtDartLong, skirtDartLong, func(depth float64) float64 {
		closed, along, point := at(depth)
		foot, _ := closed.At(along)
		return foot.Minus(point).Length()
	})
	closed, along, point := at(depth)
	waist, legs = draft.Dart(closed, along, point, skirtDartTakes)
	return
}

// frontAbove is how far the waist end of a front seam lies above the hip, the same on
// the side panel and on the fronts.
func (s skirt) frontAbove() float64 {
	l, _ := hips(s.frontHip(), skirtFrontFlare, skirtFrontFlare)
	return l.Y + skirtFrontRise
}

// sidePanel is the panel for the wearer's right side: the side seam on the left is as
// long as that of the back.
func (s skirt) sidePanel() *draft.Piece {
	l, r := hips(s.sideHip(), skirtSideFlare, skirtFrontFlare)
	front := s.rightSeam(r, skirtFrontInset, s.frontAbove(), skirtFrontFlare)
	wanted := s.back().Edge("side").Length()
	side := func(inset float64) draft.Path {
		return draft.OfLength(wanted, skirtHipDepth/2, 2*skirtHipDepth, func(above float64) draft.Path {
			return s.leftSeam(l, inset, above, skirtSideFlare)
		})
	}
	waist := func(inset float64) draft.Path {
		up := side(inset)
		return arcTo(up.End(), up.Arriving().Right(), front.Start(), front.Leaving().Left())
	}
	inset := draft.Solve(0.2*draft.Inch, 3*draft.Inch, s.sideWaist(), func(x float64) float64 { return waist(x).Length() })
	up := side(inset)
	p := draft.New(draft.Edge{Name: "waist", Path: waist(inset)}, draft.Edge{Name: "front-seam", Path: front},
		draft.Edge{Name: "hem", Path: arcTo(front.End(), front.Arriving().Right(), up.Start(), up.Leaving().Left())},
		draft.Edge{Name: "side", Path: up})
	p.NotchBack("pocket-top", "side", skirtPocketTop).NotchBack("pocket-end", "side", skirtPocketTop+skirtPocketLong)
	return p.GrainLine(draft.At(2.8*draft.Inch, 6*draft.Inch), draft.At(2.8*draft.Inch, 18*draft.Inch))
}

// wrapAt gives a front: its panel seam on the left, and on the right the straight wrap
// edge, which passes the other front seam by the lap at waist and hem.
func (s skirt) wrapAt(lap float64) (panel, waist, wrap, hem draft.Path) {
	l, r := hips(s.frontHip(), skirtFrontFlare, skirtFrontFlare)
	panel = s.leftSeam(l, skirtFrontInset, s.frontAbove(), skirtFrontFlare)
	other := s.rightSeam(r, skirtFrontInset, s.frontAbove(), skirtFrontFlare)
	foot := other.End().Plus(other.Arriving().Left().Times(lap))
	top := other.Start().Plus(other.Leaving().Left().Times(lap))
	line := func(x float64) draft.Path {
		head := draft.At(x, top.Y)
		return arcTo(panel.End(), panel.Arriving().Right(), head, foot.Minus(head).Left())
	}
	waist = draft.OfLength(s.frontWaist()+lap, top.X-draft.Inch, top.X+draft.Inch, line)
	wrap = draft.Line(waist.End(), foot)
	hem = arcTo(foot, wrap.Arriving().Right(), panel.Start(), panel.Leaving().Left())
	return
}

func (s skirt) underFront() *draft.Piece {
	panel, waist, wrap, hem := s.wrapAt(0)
	p := draft.New(draft.Edge{Name: "waist", Path: waist}, draft.Edge{Name: "wrap", Path: wrap},
		draft.Edge{Name: "hem", Path: hem}, draft.Edge{Name: "panel", Path: panel})
	p.GrainLine(draft.At(5*draft.Inch, 6*draft.Inch), draft.At(5*draft.Inch, 18*draft.Inch))
	return p.Mirrored(0) // its panel seam lies on the wearer's left
}

// wrapped is the over front with its facing still on it.
type wrapped struct{ panel, waist, wrap, hem, inner draft.Path }

// over draws the over front: in view B the wrap edge leaves the straight line above the
// knee and runs out to the hem on the wearer's right.
func (s skirt) over() wrapped {
	w := wrapped{}
	w.panel, w.waist, w.wrap, w.hem = s.wrapAt(skirtLap)
	if s.curved {
		straight, _ := w.wrap.Cut(14.5 * draft.Inch)
		kept, _ := w.hem.Reversed().Cut(0.48 * w.hem.Length())
		bend := draft.Flow(straight.End(), straight.Arriving(), kept.End(), draft.At(-0.8, 1), 0.4)
		w.wrap, w.hem = straight.Then(bend), kept.Reversed()
	}
	const more = 5 * draft.Inch
	w.inner = w.wrap.Beside(skirtFacing)
	w.inner = draft.Line(w.inner.Start().Minus(w.inner.Leaving().Times(draft.Inch)), w.inner.Start()).
		Then(w.inner, draft.Line(w.inner.End(), w.inner.End().Plus(w.inner.Arriving().Times(more))))
	return w
}

// facingOn cuts the inner edge of the facing at waist and hem: how far along both it
// meets them.
func (w wrapped) facingOn() (inner draft.Path, waist, hem float64) {
	from, waist := w.inner.Meeting(w.waist)
	to, hem := w.inner.Meeting(w.hem)
	inner, _ = w.inner.Cut(to)
	_, inner = inner.Cut(from)
	return
}

func (s skirt) overFront() *draft.Piece {
	w := s.over()
	_, _, along := w.facingOn()
	corner, hem := w.hem.Cut(along)
	p := draft.New(draft.Edge{Name: "waist", Path: w.waist}, draft.Edge{Name: "wrap", Path: w.wrap},
		draft.Edge{Name: "corner", Path: corner}, draft.Edge{Name: "hem", Path: hem}, draft.Edge{Name: "panel", Path: w.panel})
	return p.Notch("facing-end", "hem", 0).GrainLine(draft.At(5*draft.Inch, 6*draft.Inch), draft.At(5*draft.Inch, 18*draft.Inch))
}

// wrapFacing is traced from the over front and turned over.
func (s skirt) wrapFacing() *draft.Piece {
	w := s.over()
	inner, waist, along := w.facingOn()
	_, top := w.waist.Cut(waist)
	foot, _ := w.hem.Cut(along)
	p := draft.New(draft.Edge{Name: "attach", Path: w.wrap}, draft.Edge{Name: "foot", Path: foot},
		draft.Edge{Name: "inner", Path: inner.Reversed()}, draft.Edge{Name: "top", Path: top})
	place, _ := w.wrap.Beside(skirtFacing / 2).At(5 * draft.Inch)
	return p.GrainLine(place, place.Plus(draft.At(0, 8*draft.Inch))).Mirrored(top.End().X / 2)
}

// waistband is as long as the waist edges in a row, under end on the left.
func (s skirt) waistband() *draft.Piece {
	front := s.frontWaist()
	long := s.waist + front + skirtLap
	p := draft.Rectangle(long, skirtBand, "top", "over-end", "bottom", "under-end")
	p.Fold("middle", draft.At(0, skirtBand/2), draft.At(long, skirtBand/2))
	p.Mark("button-place", draft.At(front+skirtLap-0.5*draft.Inch, 0.75*skirtBand))
	p.Mark("bar-place", draft.At(long-skirtLap-front, 0.25*skirtBand))
	return p.GrainLine(draft.At(long/2-3*draft.Inch, 0.3*skirtBand), draft.At(long/2+3*draft.Inch, 0.3*skirtBand))
}

// skirtPocketBag is the same in every size: as long at the opening as the pocket, and deeper
// toward the hem.
func skirtPocketBag() *draft.Piece {
	const in = draft.Inch
	top, end := draft.At(0, 0), draft.At(0, skirtPocketLong)
	bag := draft.Flow(top, draft.At(1, -0.1), draft.At(5.5*in, 4*in), draft.At(0.12, 1), 0.42).
		Then(draft.Flow(draft.At(5.5*in, 4*in), draft.At(0.12, 1), draft.At(3.4*in, 9.5*in), draft.Leftward, 0.46),
			draft.Flow(draft.At(3.4*in, 9.5*in), draft.Leftward, end, draft.At(-0.55, -1), 0.4))
	p := draft.New(draft.Edge{Name: "bag", Path: bag}, draft.Edge{Name: "opening", Path: draft.Line(end, top)})
	p.NotchBack("pocket-top", "opening", 0).Notch("pocket-end", "opening", 0)
	return p.GrainLine(draft.At(2.4*in, 1.5*in), draft.At(2.4*in, 7.5*in))
}

func drawSkirt(t *table) map[string]*draft.Drawing {
	files := map[string]*draft.Drawing{
		"waistband":  t.drawing("Dusk Skirt 6, waistband", func(i int) *draft.Piece { return t.skirt(i, "a").waistband() }),
		"pocket-bag": t.drawing("Dusk Skirt 7, pocket bag", func(int) *draft.Piece { return skirtPocketBag() }),
	}
	for view, letter := range map[string]string{"a": "A", "b": "B"} {
		for _, x := range []struct {
			file, words string
			piece       func(skirt) *draft.Piece
		}{
			{"back", "1, back", skirt.back}, {"side-panel", "2, side panel", skirt.sidePanel}, {"over-front", "3, over front", skirt.overFront},
			{"under-front", "4, under front", skirt.underFront}, {"wrap-facing", "5, wrap facing", skirt.wrapFacing},
		} {
			files[x.file+"-"+view] = t.drawing("Dusk Skirt "+x.words+", view "+letter, func(i int) *draft.Piece { return x.piece(t.skirt(i, view)) })
		}
	}
	return files
}

func (t *table) skirt(i int, view string) skirt {
	return skirt{waist: t.finished("waist", i), hip: t.finished("hip", i), long: t.finished("length-"+view, i), curved: view == "b"}
}
