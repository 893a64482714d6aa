package main

import (
	"math"

	"seamwarden/samples/draw/draft"
)

// block is the body and sleeve of the coat in one size, drafted on the wearer's right:
// x from the centre line outwards, y down from the neck at the centre back. Front and
// back are drafted over each other, so that chest, side and hem are level, and each half
// of the sleeve lies where it meets the shoulder. Plain geometry for a loose coat
// (common practice, no source); the sizes table says how wide and how long.
type block struct {
	coatSize
	over        float64     // how far the bust is above that of the first size: grading goes by it
	chestLine   float64     // y of the line under the arms
	shoulder    draft.Point // where neck and overarm seam meet
	under       draft.Point // where side and raglan seam meet
	front, back half
	side        draft.Path // from under the arm down to the level of the band seam
	overarm     draft.Path // from the neck to the wrist, the same for both halves of the sleeve
}

// half is what front and back have each of its own.
type half struct {
	neck       draft.Path // from the centre to the raglan seam
	sleeveNeck draft.Path // on from there to the overarm seam
	upper      draft.Path // the raglan seam from the neck to the pitch, one line on body and sleeve
	body       draft.Path // on from the pitch, on the body
	sleeve     draft.Path // and on the sleeve
	underarm   draft.Path // from the raglan seam to the wrist
	wrist      draft.Path // from the underarm seam to the overarm seam
}

func (h half) raglan() draft.Path       { return h.upper.Then(h.body) }
func (h half) sleeveRaglan() draft.Path { return h.upper.Then(h.sleeve) }

// What is the same in all sizes.
const (
	armDegrees    = 48 // how far the arm hangs below the level
	backRise      = 25 // the shoulder above the neck at the centre back
	backOnSleeve  = 34 // of the neck, on the back sleeve
	frontOnSleeve = 40 // and on the front sleeve
	wristBack     = 5  // by so much the back sleeve is wider than half, the front one narrower
)

func newBlock(m coatSize, smallest float64) *block {
	b := &block{coatSize: m, over: m.bust - smallest}
	b.shoulder = draft.At(86+0.025*b.over, -backRise)
	b.chestLine = 250 + 0.085*b.over
	b.under = draft.At(m.chest/4, b.chestLine)
	slope := b.arm()
	b.front.neck, b.front.sleeveNeck = b.cutNeck(draft.At(0, m.frontNeck), slope, 0.38, frontOnSleeve)
	b.back.neck, b.back.sleeveNeck = b.cutNeck(draft.At(0, 0), slope, 0.3, backOnSleeve)
	level := draft.At(m.seat/4, m.bandSeam)
	b.side = draft.Flow(b.under, level.Minus(b.under), level, draft.Downward, 0.35)
	b.raglans()
	return b
}

// arm draws the overarm line over the shoulder to the wrist, and gives the direction of
// the shoulder at the neck.
func (b *block) arm() (slope draft.Point) {
	tip := draft.At(208+0.075*b.over, 28)
	slope = tip.Minus(b.shoulder).Unit()
	past := tip.Plus(slope.Plus(draft.Heading(armDegrees)).Unit().Times(70))
	round := swing(b.shoulder, slope, 0.42, past, draft.Heading(armDegrees), 0.3)
	b.overarm = round.Then(draft.Line(past, past.Plus(draft.Heading(armDegrees).Times(b.sleeve-round.Length()))))
	return slope
}

// cutNeck draws the neck from the centre to the shoulder, square to both, and parts it
// where the raglan seam begins.
func (b *block) cutNeck(centre, slope draft.Point, upright, onSleeve float64) (body, sleeve draft.Path) {
	neck := swing(centre, draft.Rightward, 0.5, b.shoulder, slope.Left(), upright)
	return neck.Cut(neck.Length() - onSleeve)
}

// raglans places the pitch points and draws the raglan seams. Below the pitch the lines
// of body and sleeve part. Both have one length, and the pitch lies as far from the one
// end as from the other, so that they are equally hollow.
func (b *block) raglans() {
	wide := 190 + 0.125*b.over // half of the sleeve under the arm
	front := draft.At(184+0.095*b.over, b.chestLine-112-0.01*b.over)
	apart := func(p draft.Point, far, wide float64) float64 {
		return p.Minus(b.corner(far, wide)).Length() - p.Minus(b.under).Length()
	}
	far := draft.Solve(b.sleeve*0.4, b.sleeve*0.75, 0, func(far float64) float64 { return apart(front, far, wide-wristBack) })
	b.sew(&b.front, front, far, wide-wristBack, b.wrist-wristBack)
	back := front.Plus(draft.At(4, 0))
	y := draft.Solve(-60, 80, 0, func(y float64) float64 { return apart(back.Plus(draft.At(0, y)), far, wide+wristBack) })
	b.sew(&b.back, back.Plus(draft.At(0, y)), far, wide+wristBack, b.wrist+wristBack)
}

// corner is the place on the sleeve so far from the wrist, and so far from the overarm.
func (b *block) corner(far, wide float64) draft.Point {
	down := draft.Heading(armDegrees)
	return b.overarm.End().Minus(down.Times(far)).Plus(down.Right().Times(wide))
}

// sew draws the raglan seam of a half from the neck over the pitch to both its ends, and
// the sleeve on to the wrist. The last stretch of the sleeve is straight, so that cuff
// facing and lining fit it.
func (b *block) sew(h *half, pitch draft.Point, far, wide, wrist float64) {
	way := pitch.Minus(h.neck.End())
	h.upper = draft.Flow(h.neck.End(), way.Turned(-10), pitch, way.Turned(12), 0.35)
	slant := h.upper.Arriving()
	h.body = swing(pitch, slant, 0.34, b.under, draft.Rightward, 0.42)
	end, knee := b.corner(far, wide), b.corner(cuffDeep+10, wrist)
	down := draft.Heading(armDegrees)
	lean := 1.5 * math.Atan2(wide-wrist, far-cuffDeep-10) * 180 / math.Pi
	h.underarm = draft.Flow(end, down.Turned(-lean), knee, down, 0.3).Then(draft.Line(knee, b.corner(0, wrist)))
	h.sleeve = draft.OfLength(h.body.Length(), 0.05, 1, func(full float64) draft.Path { return draft.Flow(pitch, slant, end, down.Turned(90-lean), full) })
	h.wrist = draft.Line(b.corner(0, wrist), b.overarm.End())
}

// swing is a curve like Flow, with a fullness of its own at each end.
func swing(a, leaving draft.Point, first float64, b, arriving draft.Point, last float64) draft.Path {
	long := b.Minus(a).Length()
	return draft.Bezier(a, a.Plus(leaving.Unit().Times(first*long)), b.Minus(arriving.Unit().Times(last*long)), b)
}
