package check

import (
	"fmt"
	"sort"

	"seamwarden/compiler/assembly"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "one-side-only", Severity: finding.Error, Category: "sides", FromAbsence: true, run: oneSide,
		Purpose: "One of a pair is treated and the other is not.",
		Why:     "The two sides of the body come out different, and only one of them was meant."})
}

// oneSide compares what is done to the left and the right one of each pair.
func oneSide(r *run) {
	for _, k := range sortedTreats(r.facts.Treats) {
		t := r.facts.Treats[k]
		if t.Said {
			continue
		}
		for _, s := range []model.Side{model.Left, model.Right} {
			other := s.Other()
			bad := r.Space.Diff(r.Space.Diff(t.Side[s], t.Side[other]), t.Side[model.Neither])
			if t.Op[s] == nil || !r.hasOther(k, other) || !r.possible(bad) {
				continue
			}
			what := treated(k)
			f := at(t.Op[s].Span, "on the "+s.String()+" side only", fmt.Sprintf("`%s` is done to the %s %s and not to the %s one.", k.Verb, s, what, other),
				fmt.Sprintf("Name it without a side for both, or say `on %s only` if only one is meant.", s))
			r.report(bad, f)
		}
	}
}

func treated(k assembly.TreatKey) string {
	switch {
	case k.Seam != nil:
		return k.Seam.Name + " seam"
	case k.Edge != nil:
		return lower(k.Edge.Name) + " edge of " + the(k.Piece.Name)
	}
	return lower(k.Piece.Name)
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

func sortedTreats(m map[assembly.TreatKey]*assembly.Treatment) (all []assembly.TreatKey) {
	for k := range m {
		all = append(all, k)
	}
	first := func(k assembly.TreatKey) int {
		for _, op := range m[k].Op {
			if op != nil {
				return op.Span.Start.Offset
			}
		}
		return 0
	}
	sort.Slice(all, func(i, j int) bool {
		a, b := all[i], all[j]
		if first(a) != first(b) {
			return first(a) < first(b)
		}
		return a.Verb+treated(a)+a.Copy < b.Verb+treated(b)+b.Copy
	})
	return
}
