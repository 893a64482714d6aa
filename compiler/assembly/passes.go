package assembly

import (
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// A seam whose allowances are shut in by itself is sewn in two rows. In the first
// the parts lie wrong sides together, so the row is sewn from the right side: sew
// side 5mm from the right side. The second row, `stitch side` for a French seam or
// `fell side` for a flat-felled one, shuts the allowances in. The same first row
// is right for a lapped seam, of which one edge was folded under before.

// firstPass reports whether an operation sews a seam with its allowances outside.
func firstPass(op *model.Op) bool {
	p := op.Phrase("side")
	return op.Row.Sews && p != nil && p.Word == "right"
}

// secondPass reports whether an operation may be the second row of such a seam.
func secondPass(op *model.Op) bool { return op.Verb == "stitch" || op.Verb == "fell" }

// firstPassOnly is where a seam line has had its first row, and nothing has shut its
// allowances in yet.
func (w *play) firstPassOnly(l *seamline) condition.Cond {
	first, _ := w.sewn.only(l, firstPass)
	for _, verb := range []string{"stitch", "fell", "bind", "cover"} {
		first = w.diff(first, w.seam.where(seamDeed{l.Seam, verb}))
	}
	return w.diff(first, w.lapped(l))
}

// lapped is where an edge of a seam line was folded under.
func (w *play) lapped(l *seamline) condition.Cond {
	c := condition.False
	for _, u := range l.uses {
		c = w.Space.Or(c, w.under.where(u))
	}
	return c
}

// secondPasses finds seams that are sewn with their allowances outside and never
// get the second row.
func (w *play) secondPasses() {
	for _, s := range w.Seams {
		for _, j := range s.Copies {
			l := w.lines[j]
			for _, d := range w.sewn.deeds(l) {
				if firstPass(d.op) {
					w.trouble(w.and(d.cond, w.firstPassOnly(l)), Trouble{Kind: SecondPassMissing, Op: d.op, Seam: s}, nil)
				}
			}
		}
	}
}
