package assembly

import (
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// A row of edges is a ring where each of them meets the next and the last meets
// the first: a sleeve cap once the sleeve seam is sewn, an armhole once shoulder
// and side are. Two edges meet at the end of a seam that is sewn, or on one part.
// What lies round a corner behind several seams is not followed.

// ring is what is known of a row at some time.
type ring struct {
	known  condition.Cond // where every meeting is told by a seam of the pattern
	closed condition.Cond // where it is a ring by now
	later  condition.Cond // where it will be one, once all is sewn
	will   []deed         // what closes it
}

func (w *play) ringOf(r row) ring {
	x := ring{known: condition.True, closed: condition.True, later: condition.True}
	twice := map[[2]model.EdgeUse]bool{}
	for _, p := range r.pairs {
		twice[[2]model.EdgeUse{p.a, p.b}] = true
		w.meeting(&x, p, 1)
	}
	for _, p := range r.wraps(w.Space) {
		need := 1
		if twice[[2]model.EdgeUse{p.b, p.a}] {
			need = 2
		}
		w.meeting(&x, p, need)
	}
	return x
}

// meeting takes into account that two edges of a row have to meet, at so many of
// their ends: on one part, or where a seam ends between them.
func (w *play) meeting(x *ring, p pair, need int) {
	need -= adjoin(&p.a, &p.b)
	ends := w.between(p.a, p.b)
	if need <= 0 {
		return
	}
	not := w.diff(condition.True, p.cond)
	if len(ends) < need {
		x.known, x.closed, x.later = w.and(x.known, not), w.and(x.closed, not), w.and(x.later, not)
		return
	}
	now, then := condition.False, condition.False
	if need > 1 {
		now, then = condition.True, condition.True
	}
	for _, e := range ends {
		if need > 1 {
			now, then = w.and(now, e.sewn), w.and(then, e.total)
		} else {
			now, then = w.Space.Or(now, e.sewn), w.Space.Or(then, e.total)
		}
		x.will = append(x.will, e.line.will...)
	}
	x.closed = w.and(x.closed, w.Space.Or(not, now))
	x.later = w.and(x.later, w.Space.Or(not, then))
}

// adjoin counts the ends at which two edges are neighbours on one part.
func adjoin(a, b *model.EdgeUse) (n int) {
	for _, u := range neighbours(a) {
		if u == *b {
			n++
		}
	}
	return
}

// rings holds what a step says of rings against what they are. Nothing is sewn in
// the round that is not a ring, nor flat that is one, nor a ring to what is open.
func (w *play) rings(op *model.Op, l *seamline, c condition.Cond) {
	a, b := w.ringOf(l.a), w.ringOf(l.b)
	switch {
	case op.Phrase("round") != nil:
		for _, x := range []ring{a, b} {
			w.trouble(w.diff(w.and(c, x.known), x.closed), Trouble{Kind: RoundNotClosed, Op: op, Seam: l.Seam}, x.will)
		}
	case op.Phrase("flat") != nil:
		for _, x := range []ring{a, b} {
			w.trouble(w.and(c, x.known, x.closed), Trouble{Kind: FlatButClosed, Op: op, Seam: l.Seam}, w.done(x.will, op))
		}
	default:
		for _, x := range [][2]ring{{a, b}, {b, a}} {
			open := w.diff(w.and(x[1].known, x[1].later), x[1].closed)
			w.trouble(w.and(c, x[0].known, x[0].closed, open), Trouble{Kind: RingIntoFlat, Op: op, Seam: l.Seam}, x[1].will)
		}
	}
}

// done keeps the deeds that have been done before an operation.
func (w *play) done(list []deed, op *model.Op) (all []deed) {
	for _, d := range list {
		if w.when[d.op] < w.when[op] {
			all = append(all, d)
		}
	}
	return
}

// ringLeftOpen gives advice on an edge that is sewn before the seam that will
// close it to a ring, when the step does not say that it is meant flat.
func (w *play) ringLeftOpen(op *model.Op, l *seamline, c condition.Cond) {
	if op.Phrase("round") != nil || op.Phrase("flat") != nil || itself(l.Join) {
		return // an edge that is folded on itself, as the end of a belt, lies flat
	}
	for _, x := range [][2]row{{l.a, l.b}, {l.b, l.a}} {
		ring := w.ringOf(x[1]) // what is sewn to a ring is reported as that
		for _, m := range x[0].single {
			for _, e := range w.between(m.use, m.use) {
				if e.line != l {
					late := w.diff(w.diff(e.total, e.sewn), w.and(ring.known, ring.closed))
					w.trouble(w.and(c, m.cond, late), Trouble{Kind: RingSewnOpen, Op: op, Seam: e.line.Seam, Use: &m.use}, e.line.will)
				}
			}
		}
	}
}
