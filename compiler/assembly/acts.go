package assembly

import (
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// onSeam plays an operation on a seam that does not sew it.
func (w *play) onSeam(op *model.Op, t *model.Target, c condition.Cond) {
	if before[op.Verb] || op.Verb == "finish" && waysOf(op) == "apart" {
		w.note(op, t.Seam, c)
		return
	}
	for _, j := range t.Seam.Copies {
		if !SewnBy(op, t, j) {
			continue
		}
		jc := w.Space.And(c, j.Cond)
		later := w.Space.Diff(w.total[j], w.ever(w.sewn[j]))
		w.trouble(w.Space.And(jc, later), Trouble{Kind: SeamNotSewnYet, Op: op, Seam: t.Seam}, nil)
		if allowances[op.Verb] {
			in := append(append([]deed(nil), w.enclosed[j]...), w.closedBehind(op, j)...)
			w.trouble(w.Space.And(jc, w.ever(in)), Trouble{Kind: SeamShutIn, Op: op, Seam: t.Seam}, in)
		}
		ends := w.Space.Diff(w.ever(w.caught[j]), w.ever(w.enclosed[j]))
		switch op.Verb {
		case "finish", "bind":
			w.trouble(w.Space.And(jc, ends), Trouble{Kind: FinishedTooLate, Op: op, Seam: t.Seam}, w.caught[j])
		case "press":
			if op.Phrase("open") != nil || op.Phrase("toward") != nil {
				w.trouble(w.Space.And(jc, ends), Trouble{Kind: PressedTooLate, Op: op, Seam: t.Seam}, w.caught[j])
			}
		}
	}
	w.seamSense(op, t, c)
	w.note(op, t.Seam, c)
}

// before are the verbs that act on a seam, or on its edges, before it is sewn.
var before = map[string]bool{"baste": true, "pin": true, "mark": true, "staystitch": true, "reinforce": true, "gather": true, "ease": true,
	"lay": true, "overlap": true, "remove": true, "open": true}

// allowances are the verbs that need the allowances of a seam in reach.
var allowances = map[string]bool{"trim": true, "grade": true, "clip": true, "notch out": true, "finish": true, "bind": true, "understitch": true, "fell": true}

func waysOf(op *model.Op) string {
	if p := op.Phrase("together"); p != nil {
		return p.Word
	}
	return ""
}

func (w *play) note(op *model.Op, s *model.Seam, c condition.Cond) {
	if w.seam[s] == nil {
		w.seam[s] = map[string][]deed{}
	}
	for _, v := range []string{op.Verb, op.Verb + " " + manner(op)} {
		w.seam[s][v] = append(w.seam[s][v], deed{op, c})
	}
}

// manner is how a seam is pressed or finished.
func manner(op *model.Op) string {
	switch {
	case op.Phrase("open") != nil:
		return "open"
	case op.Phrase("toward") != nil:
		return "toward"
	}
	return waysOf(op)
}

// seamSense looks at what was done to a seam before: pressed one way and finished
// the other, stitched on the far side, or stitched too early.
func (w *play) seamSense(op *model.Op, t *model.Target, c condition.Cond) {
	did := w.seam[t.Seam]
	clash := func(verb string) {
		w.trouble(w.Space.And(c, w.ever(did[verb])), Trouble{Kind: PressedTwoWays, Op: op, Seam: t.Seam}, did[verb])
	}
	switch {
	case op.Verb == "press" && op.Phrase("open") != nil:
		clash("finish together")
	case op.Verb == "finish" && waysOf(op) == "together":
		clash("press open")
	case op.Verb == "grade", op.Verb == "clip", op.Verb == "notch out", op.Verb == "trim":
		for _, v := range []string{"understitch", "topstitch"} {
			w.trouble(w.Space.And(c, w.ever(did[v])), Trouble{Kind: TrimmedTooLate, Op: op, Seam: t.Seam, Word: v}, did[v])
		}
	case op.Verb == "press":
		for _, v := range []string{"understitch", "topstitch", "edgestitch", "ditch"} {
			unpressed := w.Space.Diff(w.Space.And(c, w.ever(did[v])), w.ever(did["press"]))
			w.trouble(unpressed, Trouble{Kind: StitchedUnpressed, Op: op, Seam: t.Seam, Word: v}, did[v])
		}
	case op.Verb == "topstitch", op.Verb == "understitch", op.Verb == "edgestitch":
		w.farSide(op, t, c, did["press toward"])
	}
}

// farSide compares the side of a row of stitching with the side that the
// allowances were pressed to last.
func (w *play) farSide(op *model.Op, t *model.Target, c condition.Cond, pressed []deed) {
	on := op.Phrase("on")
	if on == nil || len(on.Targets) == 0 || len(pressed) == 0 {
		return
	}
	left := c
	for i := len(pressed) - 1; i >= 0; i-- {
		d := pressed[i]
		to := d.op.Phrase("toward")
		if len(to.Targets) > 0 && !meet(on.Targets, to.Targets) {
			w.trouble(w.Space.And(left, d.cond), Trouble{Kind: StitchedFarSide, Op: op, Seam: t.Seam}, []deed{d})
		}
		left = w.Space.Diff(left, d.cond)
	}
}

// meet reports whether two lists name a part in common.
func meet(a, b []*model.Target) bool {
	parts := map[*model.Instance]bool{}
	unknown := false
	each(a, func(t *model.Target) {
		for _, i := range t.Instances {
			parts[i] = true
		}
		unknown = unknown || len(t.Instances) == 0
	})
	each(b, func(t *model.Target) {
		for _, i := range t.Instances {
			unknown = unknown || parts[i]
		}
		unknown = unknown || len(t.Instances) == 0
	})
	return unknown
}

// preparing are the verbs that act on an edge while it is still free.
var preparing = map[string]Kind{"hem": EdgeClosedBefore, "bind": EdgeClosedBefore, "finish": EdgeClosedBefore, "staystitch": ShapedTooLate, "gather": ShapedTooLate,
	"ease": ShapedTooLate, "pleat": ShapedTooLate, "shirr": ShapedTooLate, "press under": EdgeClosedBefore, "turn under": EdgeClosedBefore, "level": EdgeClosedBefore, "baste": EdgeClosedBefore}

// onEdge plays an operation on edges, and gives the edges that it closes.
func (w *play) onEdge(op *model.Op, t *model.Target, c condition.Cond) (closed []model.EdgeUse) {
	for _, x := range t.Uses {
		u := keyOf(x)
		uc := w.Space.And(c, x.Cond)
		if kind, ok := preparing[op.Verb]; ok {
			w.trouble(w.Space.And(uc, w.ever(w.shut[u])), Trouble{Kind: kind, Op: op, Use: &u}, w.shut[u])
		}
		if closes[op.Verb] {
			w.shut[u] = append(w.shut[u], deed{op, uc})
			closed = append(closed, u)
		}
		if op.Verb == "level" {
			closed = append(closed, u)
		}
		if catches[op.Verb] || op.Verb == "tack" {
			w.fixed[u.Instance] = append(w.fixed[u.Instance], deed{op, uc})
		}
		if catches[op.Verb] {
			w.fastenedBefore(op, u.Instance, uc)
			w.encloseBehind(op, u.Instance, uc)
			w.shut[u] = append(w.shut[u], deed{op, uc})
		}
	}
	return
}

// catches are the verbs that fix the free edge of a band or facing, which shuts
// in the seams that were sewn along its other edges.
var catches = map[string]bool{"slipstitch": true, "edgestitch": true, "fell": true}

func (w *play) encloseBehind(op *model.Op, i *model.Instance, c condition.Cond) {
	for _, s := range w.Seams {
		for _, j := range s.Copies {
			if joins(j, i) {
				if done := w.Space.And(c, w.ever(w.sewn[j])); done != condition.False {
					w.enclosed[j] = append(w.enclosed[j], deed{op, done})
				}
			}
		}
	}
}

func joins(j *model.Join, i *model.Instance) bool {
	for _, u := range append(append([]*model.EdgeUse(nil), j.A...), j.B...) {
		if u.Instance == i {
			return true
		}
	}
	return false
}

// shape plays a dart or pleat: its edge must still be free.
func (w *play) shape(op *model.Op, in *model.Target, c condition.Cond) {
	for _, x := range in.Uses {
		u := keyOf(x)
		w.trouble(w.Space.And(c, w.ever(w.shut[u])), Trouble{Kind: ShapedTooLate, Op: op, Use: &u}, w.shut[u])
	}
}

// onPiece plays an operation on whole parts.
func (w *play) onPiece(op *model.Op, t *model.Target, c condition.Cond) {
	for _, i := range t.Instances {
		ic := w.Space.And(c, i.Cond)
		switch op.Verb {
		case "fuse":
			w.trouble(w.Space.And(ic, w.ever(w.turned[i])), Trouble{Kind: FusedWhenTurned, Op: op, Part: i}, w.turned[i])
			early := w.Space.Diff(w.ever(w.joined[i]), w.ever(w.turned[i]))
			w.trouble(w.Space.And(ic, early), Trouble{Kind: FusedTooLate, Op: op, Part: i}, w.joined[i])
		case "turn":
			w.turn(op, i, ic)
		case "apply":
			w.lay(op, i, ic)
		}
	}
}

// turn brings the right side of a part out: the allowances of the seams that were
// sewn round it go inside.
func (w *play) turn(op *model.Op, i *model.Instance, c condition.Cond) {
	w.turned[i] = append(w.turned[i], deed{op, c})
	w.trouble(w.Space.And(c, w.ever(w.fixed[i])), Trouble{Kind: FixedBeforeTurning, Op: op, Part: i}, w.fixed[i])
	w.fastenedBefore(op, i, c)
	if later := w.everJoined(i); later != condition.False {
		w.trouble(w.Space.And(c, w.Space.Diff(later, w.ever(w.joined[i]))), Trouble{Kind: TurnedTooEarly, Op: op, Part: i}, nil)
	}
	open := condition.False
	for _, e := range i.Piece.Edges {
		u := key(i, e, i.Side)
		open = w.Space.Or(open, w.Space.Diff(e.Cond, w.ever(onlySewn(w.shut[u]))))
	}
	if op.Phrase("through") == nil && op.Phrase("to") == nil && op.Phrase("toward") == nil && !i.Cut.Lay.Fold && len(i.Piece.FoldLines) == 0 {
		w.trouble(w.Space.Diff(w.Space.Diff(c, open), w.openings(i)), Trouble{Kind: NoWayOut, Op: op, Part: i}, nil)
	}
	w.behind(op, i, c)
}

// onlySewn keeps the deeds that shut an edge against another one: a bag is turned
// through an edge that is hemmed or bound.
func onlySewn(list []deed) (out []deed) {
	for _, d := range list {
		if d.op.Row.Sews {
			out = append(out, d)
		}
	}
	return
}

// behind puts the seams along a turned part out of reach. A facing's seam can
// still be understitched, since the facing lies open until it is caught.
func (w *play) behind(op *model.Op, i *model.Instance, c condition.Cond) {
	if op.Phrase("through") == nil && op.Phrase("to") == nil && op.Phrase("toward") == nil {
		w.encloseBehind(op, i, c)
		return
	}
	if op.Phrase("through") != nil {
		w.encloseBehind(op, i, c)
	}
}

// openings is where a seam round a part was sewn with an opening left.
func (w *play) openings(i *model.Instance) condition.Cond {
	c := condition.False
	for g, deeds := range w.left {
		if g.Seam == nil {
			continue
		}
		for _, j := range g.Seam.Copies {
			if joins(j, i) {
				c = w.Space.Or(c, w.ever(deeds))
			}
		}
	}
	return c
}

// lay puts a patch on a panel: from then on its edges are closed.
func (w *play) lay(op *model.Op, i *model.Instance, c condition.Cond) {
	for _, e := range i.Piece.Edges {
		for _, s := range []model.Side{model.Neither, model.Left, model.Right} {
			u := key(i, e, s)
			w.shut[u] = append(w.shut[u], deed{op, c})
		}
	}
}
