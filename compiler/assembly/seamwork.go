package assembly

import (
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// onSeam plays an operation on a seam that does not sew it.
func (w *play) onSeam(op *model.Op, t *model.Target, c condition.Cond) {
	if holds[op.Verb] {
		w.heldTooLate(op, t, c)
	}
	if before[op.Verb] {
		w.note(op, t.Seam, c)
		return
	}
	for _, l := range w.on(op, t) {
		w.onLine(op, t, l, w.and(c, l.Cond))
	}
	w.seamSense(op, t, c)
	w.note(op, t.Seam, c)
}

// onLine plays it on one seam line: the seam must be sewn, and within reach if its
// allowances are worked on.
func (w *play) onLine(op *model.Op, t *model.Target, l *seamline, c condition.Cond) {
	if !(op.Verb == "finish" && waysOf(op) == "apart") {
		w.trouble(w.and(c, w.unsewn(l)), Trouble{Kind: SeamNotSewnYet, Op: op, Seam: t.Seam}, l.will)
	}
	inside := w.enclosed.where(l)
	if allowances[op.Verb] || directed(op) {
		by := append(append([]deed(nil), w.enclosed.deeds(l)...), w.closedBehind(op, l)...)
		w.trouble(w.and(c, w.ever(by)), Trouble{Kind: SeamShutIn, Op: op, Seam: t.Seam}, by)
	}
	ends := w.and(c, w.diff(w.caught.where(l), inside))
	switch {
	case op.Verb == "finish", op.Verb == "bind", secondPass(op):
		w.trouble(ends, Trouble{Kind: FinishedTooLate, Op: op, Seam: t.Seam}, w.caught.deeds(l))
	case directed(op):
		w.trouble(ends, Trouble{Kind: PressedTooLate, Op: op, Seam: t.Seam}, w.caught.deeds(l))
	}
	switch {
	case op.Verb == "finish", op.Verb == "bind":
		w.finishSeam(op, t, l, c)
	case op.Verb == "press":
		w.pressParts(l.parts, op, c)
	case rows[op.Verb]:
		w.rowTooLate(op, l, c)
		w.understitchedTurned(op, l, c)
		w.turnedUnpressed(op, l.parts, t.Seam, c)
		if op.Phrase("through") == nil {
			w.trouble(w.and(c, w.deep.where(l)), Trouble{Kind: SeamShutIn, Op: op, Seam: t.Seam}, w.deep.deeds(l))
		}
	}
}

var (
	// before are the verbs that act on a seam, or on its edges, before it is sewn.
	before = map[string]bool{"baste": true, "pin": true, "mark": true, "staystitch": true, "reinforce": true, "gather": true, "ease": true,
		"lay": true, "overlap": true, "remove": true, "open": true}
	// allowances are the verbs that need the allowances of a seam in reach.
	allowances = map[string]bool{"trim": true, "grade": true, "clip": true, "notch out": true, "finish": true, "bind": true, "understitch": true, "fell": true}
	// trims are the verbs that make allowances narrower or let them spread.
	trims = map[string]bool{"trim": true, "grade": true, "clip": true, "notch out": true}
	// rows are the verbs that sew a row beside a seam or an edge.
	rows = map[string]bool{"understitch": true, "topstitch": true, "edgestitch": true, "ditch": true}
)

// directed reports whether an operation presses allowances open or to one side.
func directed(op *model.Op) bool {
	return op.Verb == "press" && (op.Phrase("open") != nil || op.Phrase("toward") != nil)
}

func waysOf(op *model.Op) string {
	if p := op.Phrase("together"); p != nil {
		return p.Word
	}
	return ""
}

// ever is where one of several deeds was done.
func (w *play) ever(list []deed) condition.Cond {
	c := condition.False
	for _, d := range list {
		c = w.Space.Or(c, d.cond)
	}
	return c
}

func (w *play) note(op *model.Op, s *model.Seam, c condition.Cond) {
	w.seam.add(seamDeed{s, op.Verb}, op, c)
	if m := manner(op); m != "" {
		w.seam.add(seamDeed{s, op.Verb + " " + m}, op, c)
	}
}

// manner is how a seam is pressed or finished.
func manner(op *model.Op) string {
	switch {
	case op.Phrase("open") != nil:
		return "open"
	case op.Phrase("toward") != nil:
		return "toward"
	case op.Verb == "press" && op.Phrase("flat") != nil:
		return "flat"
	}
	return waysOf(op)
}

// seamSense looks at what was done to a seam before: pressed one way and finished
// the other, stitched on the far side, or stitched too early.
func (w *play) seamSense(op *model.Op, t *model.Target, c condition.Cond) {
	clash := func(kind Kind, verb, word string) {
		k := seamDeed{t.Seam, verb}
		w.trouble(w.and(c, w.seam.where(k)), Trouble{Kind: kind, Op: op, Seam: t.Seam, Word: word}, w.seam.deeds(k))
	}
	switch {
	case op.Verb == "press" && op.Phrase("open") != nil:
		clash(PressedTwoWays, "finish together", "")
	case op.Verb == "finish" && waysOf(op) == "together":
		clash(PressedTwoWays, "press open", "")
	case trims[op.Verb]:
		clash(TrimmedTooLate, "understitch", "understitch")
		clash(TrimmedTooLate, "topstitch", "topstitch")
	case op.Verb == "topstitch", op.Verb == "understitch", op.Verb == "edgestitch":
		w.farSide(op, t, c)
	}
	if op.Verb == "press" {
		w.pressedLate(op, t, c)
	}
}

// pressedLate finds a row that was stitched along a seam that is pressed only now.
func (w *play) pressedLate(op *model.Op, t *model.Target, c condition.Cond) {
	unpressed := w.diff(c, w.seam.where(seamDeed{t.Seam, "press"}))
	for _, v := range []string{"understitch", "topstitch", "edgestitch", "ditch"} {
		k := seamDeed{t.Seam, v}
		unpressed := unpressed
		if v == "understitch" && !directed(op) {
			unpressed = w.diff(unpressed, w.turnedOf(t.Seam)) // its edge is pressed once the facing is turned in
		}
		w.trouble(w.and(unpressed, w.seam.where(k)), Trouble{Kind: StitchedUnpressed, Op: op, Seam: t.Seam, Word: v}, w.seam.deeds(k))
	}
}

// turnedOf is where some part of a seam was turned.
func (w *play) turnedOf(s *model.Seam) condition.Cond {
	c := condition.False
	for _, j := range s.Copies {
		for _, i := range w.lines[j].parts {
			c = w.Space.Or(c, w.turned.where(i))
		}
	}
	return c
}

// farSide compares the side of a row of stitching with the side that the
// allowances were pressed to last.
func (w *play) farSide(op *model.Op, t *model.Target, c condition.Cond) {
	pressed := w.seam.deeds(seamDeed{t.Seam, "press toward"})
	on := op.Phrase("on")
	if on == nil || len(on.Targets) == 0 || len(pressed) == 0 {
		return
	}
	left := c
	for i := len(pressed) - 1; i >= 0; i-- {
		d := pressed[i]
		to := d.op.Phrase("toward")
		if len(to.Targets) > 0 && !meet(on.Targets, to.Targets) {
			w.trouble(w.and(left, d.cond), Trouble{Kind: StitchedFarSide, Op: op, Seam: t.Seam}, []deed{d})
		}
		left = w.diff(left, d.cond)
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

// finishSeam finds edges that are finished a second time. The two edges of a seam
// may each be finished by name before it is sewn.
func (w *play) finishSeam(op *model.Op, t *model.Target, l *seamline, c condition.Cond) {
	if second := w.later.second; op.Verb == "finish" {
		bad := w.and(c, w.firstPassOnly(l), second.where(t.Seam))
		w.trouble(bad, Trouble{Kind: FinishedBetween, Op: op, Seam: t.Seam}, second.deeds(t.Seam))
	}
	for _, u := range l.uses[:len(l.uses)-len(l.caught)] {
		if t.From == nil && !partial(t.Seam) {
			w.finishEdge(op, t.Seam, u, c)
		}
	}
}

func (w *play) finishEdge(op *model.Op, s *model.Seam, u model.EdgeUse, c condition.Cond) {
	was, by := w.finished.only(u, func(o *model.Op) bool { return o != op })
	w.trouble(w.and(c, was), Trouble{Kind: FinishedTwice, Op: op, Seam: s, Use: &u}, by)
	w.finished.add(u, op, c)
}

// closedBehind gives what closed the far edge of the part that a seam is to be
// understitched on: then the part no longer lies open.
func (w *play) closedBehind(op *model.Op, l *seamline) (by []deed) {
	on := op.Phrase("on")
	if op.Verb != "understitch" || on == nil {
		return
	}
	each(on.Targets, func(t *model.Target) {
		for _, u := range l.uses {
			if has(t.Instances, u.Instance) {
				by = append(by, w.closedBeyond(u)...)
			}
		}
	})
	return
}

func (w *play) closedBeyond(u model.EdgeUse) (by []deed) {
	for _, e := range u.Instance.Piece.Edges {
		if e == u.Edge || beside(e, u.Edge) {
			continue
		}
		far := key(u.Instance, e, sideOf(e, &u))
		for _, d := range append(append([]deed(nil), w.shut.deeds(far)...), w.tacked.deeds(far)...) {
			if d.op.Row.Sews || catches[d.op.Verb] || d.op.Verb == "tack" {
				by = append(by, d)
			}
		}
	}
	return
}

// beside reports whether two edges are neighbours on a piece of three or more.
func beside(a, b *model.Edge) bool {
	n := len(a.Piece.Edges)
	gap := (a.Index - b.Index + n) % n
	return n > 2 && (gap == 1 || gap == n-1)
}

// pressedNowhere gives advice on a seam that is pressed, and nothing says which
// way its allowances lie. A turned part is pressed along its edge.
func (w *play) pressedNowhere() {
	for _, s := range w.Seams {
		k := seamDeed{s, "press"}
		told := w.Space.Any(w.seam.where(seamDeed{s, "press open"}), w.seam.where(seamDeed{s, "press toward"}), w.seam.where(seamDeed{s, "press flat"}))
		told = w.Space.Or(told, w.turnedOf(s))
		for _, d := range w.seam.deeds(k) {
			if manner(d.op) == "" {
				w.trouble(w.diff(d.cond, told), Trouble{Kind: PressedNowhere, Op: d.op, Seam: s}, nil)
			}
		}
	}
}
