package assembly

import (
	"slices"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// sewSeam sews the seam lines that an operation means.
func (w *play) sewSeam(op *model.Op, t *model.Target, c condition.Cond) {
	for _, l := range w.on(op, t) {
		w.sewLine(op, t, l, w.and(c, l.Cond))
	}
}

// sewLine looks at what sewing a seam line needs, and notes what it does.
func (w *play) sewLine(op *model.Op, t *model.Target, l *seamline, c condition.Cond) {
	if c == condition.False {
		return
	}
	w.insideAlready(op, l, c)
	if t.From == nil && !partial(t.Seam) && op.Phrase("through") == nil {
		w.closedAlready(op, l, c)
	}
	w.partsMade(op, t, c)
	w.insideOut(op, l, c)
	w.rings(op, l, c)
	w.crossRows(op, l, c)
	w.coverEnds(op, l, c)
	w.zipOpen(op, l, c)
	w.catchEnds(op, t, l, c)
	w.sew(op, t, l, c)
}

// sew notes that a seam line is sewn.
func (w *play) sew(op *model.Op, t *model.Target, l *seamline, c condition.Cond) {
	w.sewn.add(l, op, c)
	for _, e := range l.ends {
		if e.reachedBy(t) {
			e.sewn = w.Space.Or(e.sewn, w.and(c, e.cond))
		}
	}
	if whole := t.From == nil && !partial(t.Seam); whole {
		for _, u := range l.uses {
			w.shut.add(u, op, c)
		}
	}
	var seen []*model.Instance
	for _, u := range l.uses {
		if !has(seen, u.Instance) {
			seen = append(seen, u.Instance)
			w.fastenedBefore(op, u.Instance, c)
			w.joined.add(u.Instance, op, c)
		}
	}
}

// closedAlready reports an edge that lies in something else by now.
func (w *play) closedAlready(op *model.Op, l *seamline, c condition.Cond) {
	for _, u := range l.uses {
		before, by := w.shut.only(u, func(o *model.Op) bool { return !acts(o, l.Seam) })
		w.trouble(w.and(c, before), Trouble{Kind: EdgeClosedBefore, Op: op, Seam: l.Seam, Use: &u}, by)
		zip, by := w.zipped.where(u), w.zipped.deeds(u)
		w.trouble(w.and(c, zip), Trouble{Kind: EdgeClosedBefore, Op: op, Seam: l.Seam, Use: &u}, by)
	}
}

// acts reports whether an operation acts on a seam.
func acts(op *model.Op, s *model.Seam) (yes bool) {
	each(op.Objects, func(t *model.Target) { yes = yes || t.Seam == s })
	return
}

// partial reports whether a seam is declared from one point to another.
func partial(s *model.Seam) bool {
	for _, t := range s.Rows() {
		if t.From != nil {
			return true
		}
	}
	return false
}

// insideAlready finds a seam of which every part has been turned: its edges lie
// inside. A facing that was turned to one side still has its other edges free, and so
// have the front and the back of a lined bodice that were turned each by itself.
func (w *play) insideAlready(op *model.Op, l *seamline, c condition.Cond) {
	in := condition.True
	var by []deed
	first := l.uses[0].Instance
	for _, u := range l.uses[:len(l.uses)-len(l.caught)] {
		flat, deeds := w.turned.only(u.Instance, turnsOver)
		in, by = w.and(in, flat), append(by, deeds...)
		if u.Instance != first {
			in = w.and(in, w.bagged.where([2]*model.Instance{first, u.Instance}))
		}
	}
	w.trouble(w.and(c, in), Trouble{Kind: SeamShutIn, Op: op, Seam: l.Seam}, by)
}

// turnsOver reports whether a turning brings the right side of a part out, and
// does not only lay it over, or draw it through a slit to the far side of another.
func turnsOver(op *model.Op) bool {
	if p := op.Phrase("through"); p != nil && len(p.Targets) == 1 && p.Targets[0].Kind == model.ToMark {
		return false
	}
	return op.Phrase("to") == nil && op.Phrase("toward") == nil
}

// crossRows looks at the seams that end between two edges of one row, or between
// an edge and what is caught with it: they must be sewn before.
func (w *play) crossRows(op *model.Op, l *seamline, c condition.Cond) {
	var open []crossed
	for _, r := range []*row{&l.a, &l.b} {
		for _, p := range r.pairs {
			open = append(open, w.crossPair(l, p, c)...)
		}
	}
	for _, u := range l.caught {
		for _, v := range l.uses[:len(l.uses)-len(l.caught)] {
			if faces(u, v) {
				open = append(open, w.crossPair(l, pair{u, v, condition.True}, c)...)
			}
		}
	}
	slices.SortStableFunc(open, func(a, b crossed) int { return a.line.n - b.line.n })
	for _, x := range open {
		w.trouble(x.bad, Trouble{Kind: SeamCrossedOpen, Op: op, Seam: x.line.Seam, Use: &x.use}, x.line.will)
	}
	w.ringLeftOpen(op, l, c)
}

// crossed is a seam whose end is closed over before it is sewn.
type crossed struct {
	line *seamline
	use  model.EdgeUse
	bad  condition.Cond
}

// crossPair gives the seams between two neighbouring edges that are sewn only
// later. Where two edges meet at both of their ends, one end may follow: front and
// back of an armhole that is sewn flat are joined at the shoulder, and at the side
// only afterwards.
func (w *play) crossPair(by *seamline, p pair, c condition.Cond) (open []crossed) {
	ends := w.between(p.a, p.b)
	late := w.and(c, p.cond)
	for _, e := range ends {
		late = w.and(late, w.diff(e.total, e.sewn))
	}
	for _, e := range ends {
		if e.line != by && late != condition.False {
			open = append(open, crossed{e.line, p.a, late})
		}
	}
	return
}

// between gives the ends of seams at which two edges meet.
func (w *plan) between(a, b model.EdgeUse) (all []*seamEnd) {
	for _, e := range w.ends[a] {
		if e.a == a && e.b == b || e.a == b && e.b == a {
			all = append(all, e)
		}
	}
	return
}

// catchEnds notes the seams whose end is caught under this one.
func (w *play) catchEnds(op *model.Op, t *model.Target, l *seamline, c condition.Cond) {
	for _, u := range l.uses {
		for _, e := range w.ends[u] {
			if e.line == l || e.turnedAt(l) || !w.touches(t, l, u, e) {
				continue
			}
			w.caught.add(e.line, op, w.and(c, e.sewn))
		}
	}
}

// touches reports whether a seam that may be sewn or declared in a stretch goes
// as far as the end of another.
func (w *play) touches(t *model.Target, l *seamline, u model.EdgeUse, e *seamEnd) bool {
	of := []*model.Edge{e.of[0].use.Edge, e.of[1].use.Edge}
	if t.From != nil {
		return names(t, of...)
	}
	return l.reaches(of...)
}

// crossClosed looks at the seams that end at edges which are hemmed, bound or
// levelled all at once.
func (w *play) crossClosed(op *model.Op, edges []model.EdgeUse) {
	in := map[model.EdgeUse]bool{}
	for _, u := range edges {
		in[u] = true
	}
	through := op.Phrase("through") != nil
	for _, u := range edges {
		if closes[op.Verb] && !through {
			w.closedApart(op, u)
		}
		for _, e := range w.ends[u] {
			if u == e.a && in[e.b] && !through {
				w.trouble(w.and(w.holds(op), w.diff(e.total, e.sewn)), Trouble{Kind: SeamCrossedOpen, Op: op, Seam: e.line.Seam, Use: &u}, e.line.will)
			}
			if op.Verb != "level" {
				w.caught.add(e.line, op, w.and(w.holds(op), e.sewn))
			}
		}
	}
}

// partsMade reports an edge of a made-up part that is sewn before the part is.
func (w *play) partsMade(op *model.Op, t *model.Target, c condition.Cond) {
	each(t.Seam.Rows(), func(x *model.Target) { w.partMade(op, x, w.and(c, x.Cond)) })
	for _, k := range t.Seam.Catching {
		k.Target.Each(func(x *model.Target) { w.partMade(op, x, w.and(c, x.Cond)) })
	}
}

func (w *play) partMade(op *model.Op, x *model.Target, c condition.Cond) {
	if x.Part == nil {
		return
	}
	for _, l := range w.made[x.Part] {
		if acts(op, l.Seam) {
			continue
		}
		bad := w.and(c, w.unsewn(l))
		w.trouble(bad, Trouble{Kind: PartNotMade, Op: op, Seam: l.Seam, Word: x.Part.Name}, l.will)
		for _, i := range l.parts {
			w.early.add(i, op, bad)
		}
	}
}
