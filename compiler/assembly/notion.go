package assembly

import (
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// notionDeed is what was done with a notion: a verb.
type notionDeed struct {
	notion *model.Notion
	verb   string
}

// shutIn stands for the verb of a zip that was shut in: that is reported once.
const shutIn = "shut in"

// threading is a notion that was drawn through an opening.
type threading struct {
	notion *model.Notion
	gap    *model.Gap
}

// onNotion plays an operation on elastic, cord, a zip or a fastening.
func (w *play) onNotion(op *model.Op, t *model.Target, c condition.Cond) {
	n := t.Notion
	did := func(verb string) notionDeed { return notionDeed{n, verb} }
	later := func(verb string) condition.Cond {
		return w.diff(w.later.did.where(did(verb)), w.did.where(did(verb)))
	}
	switch op.Verb {
	case "join":
		w.trouble(w.and(c, later("thread")), Trouble{Kind: JoinedBeforeThreading, Op: op, Notion: n}, w.later.did.deeds(did("thread")))
	case "sew on":
		w.trouble(w.and(c, later("buttonhole")), Trouble{Kind: ButtonFirst, Op: op, Notion: n}, w.later.did.deeds(did("buttonhole")))
	case "thread":
		w.casingMade(op, n, c)
	}
	w.did.add(did(op.Verb), op, c)
}

// buttonholes notes the notion that a buttonhole is for.
func (w *play) buttonholes(op *model.Op, t *model.Target, c condition.Cond) {
	if t.Kind == model.ToNotion {
		w.did.add(notionDeed{t.Notion, op.Verb}, op, c)
	}
}

// thread notes what is drawn through an opening.
func (w *play) thread(op *model.Op, g *model.Gap, c condition.Cond) {
	if op.Verb != "thread" {
		return
	}
	each(op.Objects, func(t *model.Target) {
		if t.Notion != nil {
			w.threaded.add(threading{t.Notion, g}, op, w.and(c, t.Cond))
		}
	})
}

// endsJoined looks at what was drawn in through an opening that is closed now: if
// its ends are joined at all, that must have been done.
func (w *play) endsJoined(op *model.Op, g *model.Gap, c condition.Cond) {
	for _, n := range w.Notions {
		in := w.threaded.where(threading{n, g})
		if in == condition.False {
			continue
		}
		k := notionDeed{n, "join"}
		late := w.diff(w.later.did.where(k), w.did.where(k))
		w.trouble(w.and(c, in, late), Trouble{Kind: EndsNotJoined, Op: op, Gap: g, Notion: n}, w.later.did.deeds(k))
	}
}

// casingMade looks at the edges and seams that something is drawn into: the tunnel
// must have been sewn.
func (w *play) casingMade(op *model.Op, n *model.Notion, c condition.Cond) {
	for _, p := range op.Phrases {
		if p.Name != "into" && p.Name != "through" {
			continue
		}
		each(p.Targets, func(t *model.Target) {
			tc := w.and(c, t.Cond)
			for _, x := range t.Uses {
				w.tunnel(op, n, keyOf(x), w.and(tc, x.Cond))
			}
		})
	}
}

func (w *play) tunnel(op *model.Op, n *model.Notion, u model.EdgeUse, c condition.Cond) {
	late, by := w.diff(w.later.shut.where(u), w.shut.where(u)), w.later.shut.deeds(u)
	for _, l := range w.takes[u] {
		late, by = w.Space.Or(late, w.unsewn(l)), append(by[:len(by):len(by)], l.will...)
		row, deeds := w.rowsLater(op, l)
		late, by = w.Space.Or(late, row), append(by, deeds...)
	}
	w.trouble(w.and(c, late), Trouble{Kind: CasingNotMade, Op: op, Use: &u, Notion: n}, by)
}

// rowsLater is where the row that makes a tunnel of an edge is sewn only after
// something is drawn into it.
func (w *play) rowsLater(op *model.Op, l *seamline) (condition.Cond, []deed) {
	done := func(o *model.Op) bool { return w.when[o] < w.when[op] }
	before, _ := w.later.rows.only(l, done)
	after, by := w.later.rows.only(l, func(o *model.Op) bool { return !done(o) })
	return w.diff(after, before), by
}

// insert plays a zip or a part that goes between edges: where a band, a facing or
// a binding has closed the edge at its end, it cannot go in any more.
func (w *play) insert(op *model.Op) {
	if op.Verb != "insert" {
		return
	}
	for _, p := range op.Phrases {
		var edges []*model.EdgeUse
		var beyond []model.EdgeUse
		each(p.Targets, func(t *model.Target) {
			if t.Kind == model.ToEdge {
				edges = append(edges, t.Uses...)
				for _, u := range t.Uses {
					beyond = append(beyond, neighbours(u)...)
				}
			}
		})
		each(p.Targets, func(t *model.Target) {
			if t.Kind == model.ToEdge {
				w.insertAt(op, t, beyond)
			}
		})
	}
}

func (w *play) insertAt(op *model.Op, t *model.Target, beyond []model.EdgeUse) {
	for _, x := range t.Uses {
		c := w.and(w.holds(op), t.Cond, x.Cond)
		for _, n := range neighbours(x) {
			if t.From != nil && !names(t, n.Edge) {
				continue
			}
			by := w.shutAcross(n, beyond)
			w.trouble(w.and(c, w.ever(by)), Trouble{Kind: ZipTooLate, Op: op, Use: &n}, by)
		}
		if opensAt(op) {
			w.zipped.add(keyOf(x), op, c)
		}
	}
}

// opensAt reports whether it is a zip that is put in.
func opensAt(op *model.Op) (zip bool) {
	each(op.Objects, func(t *model.Target) { zip = zip || t.Kind == model.ToNotion })
	return
}

// shutAcross keeps the deeds that closed an edge with another part or a binding.
// The seam that goes on below the zip closes nothing: it joins the two edges that
// lie beyond the end of the opening to each other.
func (w *play) shutAcross(n model.EdgeUse, beyond []model.EdgeUse) (out []deed) {
	for _, d := range w.shut.deeds(n) {
		if (d.op.Row.Sews || d.op.Verb == "bind") && !w.goesOn(d.op, n, beyond) {
			out = append(out, d)
		}
	}
	return
}

func (w *play) goesOn(op *model.Op, n model.EdgeUse, beyond []model.EdgeUse) (yes bool) {
	each(op.Objects, func(t *model.Target) {
		if t.Seam == nil {
			return
		}
		for _, l := range w.on(op, t) {
			for _, m := range beyond {
				yes = yes || l.joins(n, m)
			}
		}
	})
	return
}

// zipOpen looks at a bag that is sewn shut across both ends of a zip: if it is to
// be turned, the zip must be open by now, since nobody can reach its slider later.
func (w *play) zipOpen(op *model.Op, l *seamline, c condition.Cond) {
	for _, n := range w.Notions {
		if len(n.Parts) != 2 || n.Set {
			continue
		}
		shut := w.diff(w.across(l, n), w.Space.Or(w.did.where(notionDeed{n, "open"}), w.did.where(notionDeed{n, shutIn})))
		turned := condition.False
		for _, i := range l.parts {
			turned = w.Space.Or(turned, w.later.turned.where(i))
		}
		bad := w.and(c, shut, turned)
		w.trouble(bad, Trouble{Kind: ZipShut, Op: op, Seam: l.Seam, Notion: n}, w.later.did.deeds(notionDeed{n, "open"}))
		w.did.add(notionDeed{n, shutIn}, op, bad)
	}
}

// across is where a seam line joins a part with the one side of a zip to the part
// with the other, across the ends of both.
func (w *play) across(l *seamline, n *model.Notion) condition.Cond {
	a, b := w.sideIn(l, l.A, n), w.sideIn(l, l.B, n)
	return w.Space.Or(w.and(a[0], b[1]), w.and(a[1], b[0]))
}

// sideIn gives where an edge of a row crosses the end of a seam that catches the
// one side of a zip, and where it does the other.
func (w *play) sideIn(l *seamline, row []*model.EdgeUse, n *model.Notion) (in [2]condition.Cond) {
	for _, u := range row {
		for _, e := range w.ends[keyOf(u)] {
			for _, k := range e.line.Seam.Catching {
				k.Target.Each(func(t *model.Target) {
					for side, name := range n.Parts {
						if t.Notion == n && t.NotionBit == name {
							in[side] = w.Space.Or(in[side], w.and(e.sewn, t.Cond))
						}
					}
				})
			}
		}
	}
	return
}
