package check

import (
	"fmt"
	"slices"

	"seamwarden/compiler/assembly"
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "more-parts-than-places", Severity: finding.Error, Category: "cutting", run: placesTaken,
		Purpose: "More of a piece are cut than there are places to put them, or one is put on both of a pair.",
		Why:     "Two pockets in one place: one of them is left over, and nobody can say whether a place is missing or a number is wrong."})
	register(Rule{ID: "how-many-are-caught", Severity: finding.Warning, Category: "cutting", run: caughtParts,
		Purpose: "A seam catches a part, and the number that is cut does not give one for each seam line.",
		Why:     "A part that is caught is taken once for each seam line. With more of them the seam must say how many lie there; with fewer, one seam goes without."})
}

// placesTaken compares the parts that a step puts at a mark with the places that
// the mark gives. One part may have several marks, for its corners, so that fewer
// parts than places say nothing.
func placesTaken(r *run) {
	for _, op := range r.Ops() {
		at_ := op.Phrase("at")
		if op.Verb != "apply" && op.Verb != "attach" && op.Verb != "set" || at_ == nil || len(at_.Targets) != 1 || len(op.Objects) != 1 {
			continue
		}
		at_.Targets[0].Each(func(place *model.Target) {
			if place.Kind != model.ToMark || place.Mark == nil {
				return
			}
			parts := marked(op, place)
			places, ok := placesOn(r, place.Mark, parts)
			if !ok {
				return
			}
			op.Objects[0].Each(func(t *model.Target) { r.placesOf(op, t, place, places) })
			op.Objects[0].Each(func(t *model.Target) { r.oneForTwo(op, t, place) })
		})
	}
}

// marked lists the cut parts on which a mark is meant: those that the step names,
// or those of the mark's piece.
func marked(op *model.Op, place *model.Target) (parts []*model.Instance) {
	all := place.Instances
	if to := op.Phrase("to"); to != nil {
		for _, t := range to.Targets {
			t.Each(func(x *model.Target) {
				if x.Piece == place.Mark.Piece {
					all = x.Instances
				}
			})
		}
	}
	if len(all) == 0 {
		all = place.Mark.Piece.Cloths()
	}
	for _, i := range all {
		if i.Cloth() && (op.Only == model.Neither || i.Side == model.Neither || i.Side == op.Only) {
			parts = append(parts, i)
		}
	}
	return
}

// placesOn counts the places that a mark gives on some parts. On a part that is
// cut on the fold it may be there once or on both halves, unless its number is said.
func placesOn(r *run, m *model.Mark, parts []*model.Instance) (list []assembly.Amount, ok bool) {
	for _, i := range parts {
		if i.Cut.Lay.Fold && !m.Said {
			return nil, false
		}
		list = append(list, assembly.Amount{N: m.Count, Cond: r.Space.And(i.Cond, m.Cond)})
	}
	return list, len(list) > 0
}

// oneForTwo reports a single part that a step puts on both of a pair: a pocket that is cut
// once and laid on both fronts. Where left and right are sewn to each other it may lie across.
func (r *run) oneForTwo(op *model.Op, t, place *model.Target) {
	if op.Verb != "apply" || op.Counted || op.Only != model.Neither || t.Kind != model.ToPiece || len(t.Instances) == 0 {
		return
	}
	on := marked(op, place)
	if len(on) != 2 || on[0].Side == model.Neither || on[0].Cut != on[1].Cut || r.sewnTogether(on[0], on[1]) {
		return
	}
	for _, i := range r.oneLayer(t.Instances) {
		if i != t.Instances[0] || !i.Cloth() || i.Side != model.Neither || i.Cut.Lay.Fold || i.Copy != "" {
			return
		}
	}
	bad := r.unsaid(t.Piece, r.Space.All(op.Cond, t.Instances[0].Cond, on[0].Cond, on[1].Cond))
	name := on[0].Piece.ID
	f := at(op.Span, "on both", fmt.Sprintf("%s is cut once, and this puts it on the left and on the right %s.", Upper(the(t.Piece.Name)), lower(on[0].Piece.Name)),
		fmt.Sprintf("Say on which it goes, `to %s.left`; or cut one for each side.", name))
	r.report(bad, also(f, t.Instances[0].Cut.CountSpan, "cut here"))
	r.tell(t.Piece, bad)
}

// sewnTogether reports whether a seam joins two parts.
func (r *run) sewnTogether(a, b *model.Instance) bool {
	for _, s := range r.Seams {
		for _, j := range s.Copies {
			if liesIn(a, j.A) && liesIn(b, j.B) || liesIn(b, j.A) && liesIn(a, j.B) {
				return true
			}
		}
	}
	return false
}

// placesOf reports where one step puts more of a piece than it has places for.
func (r *run) placesOf(op *model.Op, t, place *model.Target, places []assembly.Amount) {
	if t.Kind != model.ToPiece || len(t.Instances) == 0 {
		return
	}
	var parts []assembly.Amount
	for _, i := range r.oneLayer(t.Instances) {
		if !i.Cloth() || i.Copy != "" {
			return // layers that lie on one another
		}
		parts = append(parts, assembly.Amount{N: 1, Cond: r.Space.And(i.Cond, op.Cond)})
	}
	if op.Counted {
		parts = []assembly.Amount{{N: op.Count, Cond: op.Cond}}
	}
	have, room := r.facts.Totals(parts), r.facts.Totals(places)
	for _, n := range assembly.Sums(have) {
		for _, k := range assembly.Sums(room) {
			if k == 0 || n <= k {
				continue
			}
			f := at(op.Span, fmt.Sprintf("%d put here", n), fmt.Sprintf("%s: %d cut, and %s takes %d.", Upper(lower(t.Piece.Name)), n, place.Describe(), k),
				fmt.Sprintf("Change the number of the cut line, or say how many places there are: marks %d %s inside.", n, place.Mark.ID))
			f = also(also(f, t.Instances[0].Cut.CountSpan, "cut here"), place.Mark.Span, "the place")
			bad := r.unsaid(t.Piece, r.Space.All(op.Cond, have[n], room[k]))
			r.report(bad, f)
			r.tell(t.Piece, bad)
		}
	}
}

// caughtParts compares the parts that a seam catches with its seam lines. A
// number that is written is looked at by cut-and-used-differ.
func caughtParts(r *run) {
	for _, s := range r.Seams {
		for _, k := range s.Catching {
			if k.Said {
				continue
			}
			k.Target.Each(func(t *model.Target) { r.caughtIn(s, t) })
		}
	}
}

func (r *run) caughtIn(s *model.Seam, t *model.Target) {
	if t.Kind != model.ToEdge && t.Kind != model.ToPiece || len(t.Instances) == 0 {
		return
	}
	var parts, lines []assembly.Amount
	for _, i := range r.oneLayer(t.Instances) {
		if i.Side != model.Neither || i.Copy != "" || i.Cut.Lay.Fold {
			return // it is told which lies where
		}
		parts = append(parts, assembly.Amount{N: 1, Cond: i.Cond})
	}
	for _, j := range s.Copies {
		lines = append(lines, assembly.Amount{N: 1, Cond: j.Cond})
	}
	have, want := r.facts.Totals(parts), r.facts.Totals(lines)
	for _, n := range assembly.Sums(have) {
		for _, k := range assembly.Sums(want) {
			if n != 0 && k != 0 && n != k {
				r.otherNumber(s, t, n, k, r.Space.All(t.Cond, have[n], want[k]))
			}
		}
	}
}

// otherNumber words n parts that are caught in k seam lines.
func (r *run) otherNumber(s *model.Seam, t *model.Target, n, k int, bad condition.Cond) {
	help := "Change the number of the cut line."
	if n > k && n%k == 0 {
		help = fmt.Sprintf("Say how many lie in it, `catching %d %s`, or change the number of the cut line.", n/k, t.Path)
	}
	lines := "one"
	if k > 1 {
		lines = fmt.Sprintf("one in each of its %d seam lines", k)
	}
	f := at(t.Span, "how many?", fmt.Sprintf("%s: %d cut, and %s catches %s.", Upper(lower(t.Piece.Name)), n, seamName(s), lines), help)
	bad = r.unsaid(t.Piece, bad)
	r.report(bad, also(f, t.Instances[0].Cut.CountSpan, "cut here"))
	r.tell(t.Piece, bad)
}

// oneLayer leaves out what is cut from another cloth and sewn all along its own double,
// as the lining of a patch pocket or of a flap is: shell and lining are one part then.
func (r *run) oneLayer(parts []*model.Instance) (kept []*model.Instance) {
	for _, i := range parts {
		if !slices.ContainsFunc(kept, func(k *model.Instance) bool { return r.doubles(k, i) }) {
			kept = append(kept, i)
		}
	}
	return
}

// doubles reports whether a seam joins two parts of one piece that are cut from two cloths.
func (r *run) doubles(a, b *model.Instance) bool {
	if a.Piece != b.Piece || a.Cut.Material == b.Cut.Material {
		return false
	}
	for _, s := range r.Seams {
		for _, j := range s.Copies {
			if liesIn(a, j.A) && liesIn(b, j.B) || liesIn(b, j.A) && liesIn(a, j.B) {
				return true
			}
		}
	}
	return false
}

func liesIn(i *model.Instance, uses []*model.EdgeUse) bool {
	return slices.ContainsFunc(uses, func(u *model.EdgeUse) bool { return u.Instance == i })
}
