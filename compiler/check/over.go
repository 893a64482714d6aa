package check

import (
	"fmt"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "laid-over-what-comes-later", Severity: finding.Error, Category: "order", run: laidOver,
		Purpose: "A part is laid or folded over another one that is put in its place only later.",
		Why:     "The one underneath goes on first, or the layers lie in the wrong order."})
}

// puts are the verbs that put a part in its place.
var puts = map[string]bool{"baste": true, "pin": true, "lay": true, "apply": true, "attach": true, "set": true, "insert": true, "tack": true, "sew on": true}

// placed is an operation that puts something in its place; n is how manieth it is.
type placed struct {
	op   *model.Op
	n    int
	cond condition.Cond
}

// laidOver compares each `over` with the operations that put what lies under it in
// its place. What no step puts anywhere is taken to lie there.
func laidOver(r *run) {
	ops := r.Ops()
	var over []int
	for n, op := range ops {
		if op.Phrase("over") != nil {
			over = append(over, n)
		}
	}
	if len(over) == 0 {
		return
	}
	places := r.placings(ops)
	for _, n := range over {
		for _, t := range ops[n].Phrase("over").Targets {
			t.Each(func(x *model.Target) { r.under(ops[n], n, x, places) })
		}
	}
}

// placings lists the operations that put each thing in its place: those that lay or
// baste it there, and the seams that catch it.
func (r *run) placings(ops []*model.Op) map[any][]placed {
	places := map[any][]placed{}
	for n, op := range ops {
		put := func(t *model.Target) {
			for _, x := range thingsIn(t) {
				places[x] = append(places[x], placed{op, n, r.Space.And(op.Cond, t.Cond)})
			}
		}
		basted := puts[op.Verb] && firstPhrase(op, "to", "at", "on") != nil
		for _, o := range op.Objects {
			o.Each(func(t *model.Target) {
				if basted {
					put(t)
				}
				if t.Seam != nil && op.Row.Sews {
					for _, k := range t.Seam.Catching {
						k.Target.Each(put)
					}
				}
			})
		}
	}
	return places
}

// under reports what an operation is laid over, if it comes only later.
func (r *run) under(op *model.Op, n int, t *model.Target, places map[any][]placed) {
	for _, x := range thingsIn(t) {
		there, later := condition.False, condition.False
		var by *model.Op
		for _, p := range places[x] {
			if p.n <= n {
				there = r.Space.Or(there, p.cond)
				continue
			}
			later = r.Space.Or(later, p.cond)
			if by == nil {
				by = p.op
			}
		}
		bad := r.Space.And(r.Space.And(op.Cond, t.Cond), r.Space.Diff(later, there))
		if r.possible(bad) {
			f := at(t.Span, "not there yet", fmt.Sprintf("`%s` lays something over %s, which is put in its place only later.", op.Verb, t.Describe()), "Do this after the step that puts the other one there; or a step is missing that bastes it on.")
			r.report(bad, also(f, by.Span, "put there here, later"))
			return
		}
	}
}

// thingsIn lists what a target is, or belongs to: cut parts, or a notion.
func thingsIn(t *model.Target) (all []any) {
	for _, i := range t.Instances {
		all = append(all, i)
	}
	if t.Notion != nil {
		all = append(all, [2]any{t.Notion, t.NotionBit})
	}
	return
}
