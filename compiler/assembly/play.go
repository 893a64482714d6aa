package assembly

import (
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// play goes through the steps in order. Each tally holds one fact of the model:
// what was done to a thing so far, by which operations and in which garments.
type play struct {
	*plan
	*troubles
	sewn     tally[*seamline]
	caught   tally[*seamline] // its end was crossed
	enclosed tally[*seamline] // its allowances are out of reach
	deep     tally[*seamline] // it lies inside a turned bag, shut in at its ends
	seam     tally[seamDeed]
	shut     tally[model.EdgeUse] // hemmed, bound, sewn into a seam
	finished tally[model.EdgeUse] // kept from fraying
	zipped   tally[model.EdgeUse] // a zip is in
	tacked   tally[model.EdgeUse]
	under    tally[model.EdgeUse] // folded under
	joined   tally[*model.Instance]
	turned   tally[*model.Instance]
	bagged   tally[[2]*model.Instance]          // turned while they hang together
	hidden   tally[*model.Instance]             // its free edge is caught, so that its wrong side is shut
	fixed    tally[*model.Instance]             // stitched down by an edge of its own
	laid     tally[*model.Instance]             // put on another and stitched
	hung     tally[*model.Instance]             // fastened to another by no declared seam
	early    tally[*model.Instance]             // sewn on before it was made; that is reported
	fresh    map[*model.Instance]condition.Cond // pressed since it was turned last
	fastened tally[*model.Instance]             // a buttonhole or fastening is on it
	marks    tally[any]                         // where a mark or a dart was used
	left     tally[*model.Gap]
	closed   tally[*model.Gap]
	threaded tally[threading]
	did      tally[notionDeed]
	when     map[*model.Op]int // how manieth an operation is
	later    foresight
}

// seamDeed is what was done to a seam: a verb, with or without the manner of it.
type seamDeed struct {
	seam *model.Seam
	verb string
}

// Play goes through the steps in their order and gives what comes at the wrong
// time, in every garment at once.
func Play(p *model.Pattern) []Trouble {
	w := newPlay(p)
	ops := p.Ops()
	for n, op := range ops {
		w.when[op] = n
		w.foresee(op)
		w.later.note(w.plan, op)
	}
	for _, op := range ops {
		w.do(op)
	}
	w.atTheEnd()
	return w.out
}

func newPlay(p *model.Pattern) *play {
	s := p.Space
	return &play{plan: planOf(p), troubles: newTroubles(p),
		sewn: newTally[*seamline](s), caught: newTally[*seamline](s), enclosed: newTally[*seamline](s), deep: newTally[*seamline](s),
		seam: newTally[seamDeed](s), shut: newTally[model.EdgeUse](s), finished: newTally[model.EdgeUse](s), zipped: newTally[model.EdgeUse](s),
		tacked: newTally[model.EdgeUse](s), under: newTally[model.EdgeUse](s), joined: newTally[*model.Instance](s), turned: newTally[*model.Instance](s),
		bagged: newTally[[2]*model.Instance](s), hidden: newTally[*model.Instance](s), fixed: newTally[*model.Instance](s), laid: newTally[*model.Instance](s), hung: newTally[*model.Instance](s),
		early: newTally[*model.Instance](s), fresh: map[*model.Instance]condition.Cond{}, fastened: newTally[*model.Instance](s),
		marks: newTally[any](s), left: newTally[*model.Gap](s), closed: newTally[*model.Gap](s), threaded: newTally[threading](s),
		did: newTally[notionDeed](s), later: newForesight(s), when: map[*model.Op]int{}}
}

// do plays one operation: its needs are looked at first, then its effects noted.
func (w *play) do(op *model.Op) {
	var closing []model.EdgeUse
	each(op.Objects, func(t *model.Target) {
		c := w.Space.And(w.holds(op), t.Cond)
		switch {
		case t.Kind == model.ToGap:
			w.onGap(op, t, c)
		case t.Seam != nil && op.Row.Sews:
			w.sewSeam(op, t, c)
		case t.Seam != nil:
			w.onSeam(op, t, c)
		case t.Kind == model.ToShaping && shapes(op):
			w.shape(op, t.Shaping.In, c)
		case t.Kind == model.ToEdge || t.Kind == model.ToPartEdge:
			closing = append(closing, w.onEdge(op, t, c)...)
		case t.Kind == model.ToPiece || t.Kind == model.ToPart:
			w.onPiece(op, t, c)
		case t.Kind == model.ToNotion:
			w.onNotion(op, t, c)
		}
	})
	if closes[op.Verb] || op.Verb == "level" {
		w.crossClosed(op, closing)
	}
	w.phrases(op)
}

// phrases plays what stands beside the objects of an operation.
func (w *play) phrases(op *model.Op) {
	w.around(op)
	w.marking(op)
	w.throughGap(op)
	w.leave(op)
	w.insert(op)
	w.catching(op)
	w.hold(op)
}

// and, diff are shorthand for conditions.
func (w *play) and(c ...condition.Cond) condition.Cond  { return w.Space.All(c...) }
func (w *play) diff(a, b condition.Cond) condition.Cond { return w.Space.Diff(a, b) }

// unsewn gives where a seam line is still to be sewn.
func (w *play) unsewn(l *seamline) condition.Cond { return w.diff(l.total, w.sewn.where(l)) }

// atTheEnd looks at what is left open.
func (w *play) atTheEnd() {
	w.gapsLeft()
	w.secondPasses()
	w.pressedNowhere()
}
