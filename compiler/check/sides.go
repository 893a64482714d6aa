package check

import (
	"fmt"
	"slices"
	"strings"

	"seamwarden/compiler/assembly"
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "one-side-only", Severity: finding.Error, Category: "sides", FromAbsence: true, ahead: 4, run: oneSide,
		Purpose: "One of a pair is treated and the other is not.",
		Why:     "The two sides of the body come out different, and only one of them was meant."})
}

// oneSide compares what is done to the left and the right one of each pair.
func oneSide(r *run) {
	for _, k := range sortedTreats(r.facts.Treats, r.unevenly) {
		t := r.facts.Treats[k]
		for _, s := range []model.Side{model.Left, model.Right} {
			other := s.Other()
			bad := r.onlyOn(t, s)
			if k.Seam != nil {
				bad = r.Space.Diff(r.unsaid(k.Seam, bad), r.doubt(k.Seam))
			} else {
				bad = r.Space.Diff(bad, r.uncut[k.Piece])
			}
			if !r.hasOther(k, other) || r.differSides(k, t.Op[s]) || !r.possible(bad) {
				continue
			}
			r.reportSide(k, s, bad)
			r.tellEdges(k, other, bad)
		}
	}
}

// onlyOn is where something is treated on one side and not on the other.
func (r *run) onlyOn(t *assembly.Treatment, s model.Side) condition.Cond {
	return r.Space.Diff(r.Space.Diff(t.Side[s], t.Side[s.Other()]), t.Side[model.Neither])
}

// unevenly reports whether a treatment is done to one side only, and that is not said.
func (r *run) unevenly(t *assembly.Treatment) bool {
	return !t.Said && (r.possible(r.onlyOn(t, model.Left)) || r.possible(r.onlyOn(t, model.Right)))
}

// reportSide points at the operations that treat one side only, each for the
// garments in which it is the first.
func (r *run) reportSide(k assembly.TreatKey, s model.Side, bad condition.Cond) {
	var only [3]bool
	only[s] = true
	for _, op := range r.Ops() {
		if op.Verb != k.Verb || sidesTreated(op, k) != only {
			continue
		}
		f := at(op.Span, "on the "+s.String()+" side only", fmt.Sprintf("`%s` is done to %s and not to the %s one.", k.Verb, treated(k, s), s.Other()),
			fmt.Sprintf("Name it without a side for both, or say `on %s only` if only one is meant.", s))
		r.report(r.Space.And(bad, op.Cond), f)
		bad = r.Space.Diff(bad, op.Cond)
	}
}

// sidesTreated gives the sides on which an operation treats a thing.
func sidesTreated(op *model.Op, k assembly.TreatKey) (sides [3]bool) {
	for _, o := range op.Objects {
		o.Each(func(t *model.Target) {
			switch {
			case k.Seam != nil && t.Kind == model.ToSeam && t.Seam == k.Seam:
				for _, j := range t.Seam.Copies {
					if assembly.SewnBy(op, t, j) {
						sides[j.Side] = true
					}
				}
			case k.Edge != nil && t.Kind == model.ToEdge && t.Edge == k.Edge:
				for _, u := range t.Uses {
					if u.Instance.Copy == k.Copy && u.Instance.Cut.Material == k.Cloth {
						sides[u.Side] = true
					}
				}
			case k.Seam == nil && k.Edge == nil && t.Kind == model.ToPiece && t.Piece == k.Piece:
				for _, i := range t.Instances {
					if i.Copy == k.Copy && i.Cut.Material == k.Cloth {
						sides[i.Side] = true
					}
				}
			}
		})
	}
	return
}

// tellEdges notes that an edge on the side that was left out is reported.
func (r *run) tellEdges(k assembly.TreatKey, side model.Side, bad condition.Cond) {
	if k.Edge == nil {
		return
	}
	for _, i := range k.Piece.Instances() {
		for _, u := range usesOf(r, i, k.Edge) {
			if u.Side == side && i.Copy == k.Copy {
				r.tell(u, bad)
			}
		}
	}
}

// treated names what is treated on one side.
func treated(k assembly.TreatKey, s model.Side) string {
	piece := ""
	if k.Piece != nil {
		piece = lower(k.Piece.Name)
		if k.Copy != "" {
			piece = strings.ReplaceAll(k.Copy, "-", " ") + " " + piece
		}
	}
	switch {
	case k.Seam != nil:
		return fmt.Sprintf("the %s %s", s, k.Seam.Called())
	case k.Edge != nil:
		return fmt.Sprintf("the %s of the %s %s", edgeCalled(k.Edge.Name), s, piece)
	}
	return fmt.Sprintf("the %s %s", s, piece)
}

// differSides reports whether an edge is not meant to be the same on both sides: its left
// one is sewn in another seam than its right one, as at a fly. Raw edges are shut on both
// sides all the same.
func (r *run) differSides(k assembly.TreatKey, op *model.Op) bool {
	if k.Edge == nil || op == nil || op.Row.Shuts {
		return false
	}
	var in [3]*model.Seam
	for _, s := range r.Seams {
		for _, j := range s.Copies {
			for _, u := range j.Uses() {
				if u.Edge == k.Edge && u.Instance.Copy == k.Copy && u.Instance.Cut.Material == k.Cloth {
					in[u.Side] = s
				}
			}
		}
	}
	return in[model.Left] != in[model.Right]
}

// hasOther reports whether the other side exists at all.
func (r *run) hasOther(k assembly.TreatKey, s model.Side) bool {
	if k.Seam != nil {
		for _, j := range k.Seam.Copies {
			if j.Side == s {
				return true
			}
		}
		return false
	}
	for _, i := range k.Piece.Instances() {
		if i.Copy == k.Copy && i.Cut.Material == k.Cloth && (i.Side == s || k.Edge != nil && k.Edge.Doubled(i.Cut)) {
			return true
		}
	}
	return false
}

// sortedTreats puts what is treated in a way that matters in the order of the
// operations that do it first.
func sortedTreats(m map[assembly.TreatKey]*assembly.Treatment, matters func(*assembly.Treatment) bool) []assembly.TreatKey {
	type treat struct {
		key   assembly.TreatKey
		first int
	}
	var all []treat
	for k, t := range m {
		if !matters(t) {
			continue
		}
		x := treat{key: k}
		if i := slices.IndexFunc(t.Op[:], func(op *model.Op) bool { return op != nil }); i >= 0 {
			x.first = t.Op[i].Span.Start.Offset
		}
		all = append(all, x)
	}
	slices.SortFunc(all, func(a, b treat) int {
		if a.first != b.first {
			return a.first - b.first
		}
		return strings.Compare(a.key.Verb+treated(a.key, model.Left), b.key.Verb+treated(b.key, model.Left))
	})
	keys := make([]assembly.TreatKey, len(all))
	for i, x := range all {
		keys[i] = x.key
	}
	return keys
}
