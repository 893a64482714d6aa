package check

import (
	"fmt"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "never-applies", Severity: finding.Error, Category: "guards", ahead: 9, run: neverApplies,
		Purpose: "A sentence holds for no garment that can be chosen.",
		Why:     "Its guard contradicts the guards of what it refers to, so it is printed for nobody."})
	register(Rule{ID: "step-without-work", Severity: finding.Warning, Category: "guards", whole: true, ahead: -2, run: workless,
		Purpose: "A step is printed in garments in which none of its operations is done.",
		Why:     "The sewist reads a step that is not hers, with nothing in it to do."})
}

// neverApplies looks for guards that shut each other out, and reports each where
// it does so first: a dead piece is not reported again for each of its seams.
func neverApplies(r *run) {
	for _, o := range r.Options {
		r.dead(o.Cond, o.Span, "The option "+o.Name)
	}
	for _, c := range r.Choices {
		r.dead(c.Cond, c.Span, "The choice "+c.Name)
	}
	for _, p := range r.Pieces {
		if r.dead(p.Cond, p.Span, "The piece "+p.Name) {
			continue
		}
		for _, c := range p.Cuts {
			r.deadCut(c)
		}
	}
	for _, s := range r.Sections {
		if r.dead(s.Cond, s.Title.Span, "The section "+s.Title.Text) {
			continue
		}
		for _, st := range s.Steps {
			if !r.dead(st.Cond, st.Span, "The step "+st.Title.Text) {
				r.deadItems(st)
			}
		}
	}
}

// dead reports a sentence whose guard, with those around it, holds nowhere.
func (r *run) dead(c condition.Cond, at_ finding.Span, what string) bool {
	if r.possible(c) {
		return false
	}
	r.report(condition.True, at(at_, "for no garment", what+" holds for no garment that can be chosen.",
		"Its guard and the guards around it shut each other out; change one of them."))
	return true
}

// deadCut reports a cut line that is there for no garment, and tells the guards
// that shut each other out.
func (r *run) deadCut(c *model.Cut) {
	if r.possible(c.Cond) || !r.possible(c.Material.Cond) {
		return
	}
	f := at(c.Span, "for no garment", fmt.Sprintf("This cut line of %s holds for no garment that can be chosen.", the(c.Piece.Name)), "Change one of the guards.")
	if p, m := r.where(c.Piece.Cond), r.where(c.Material.Cond); p != "" && m != "" {
		f.Headline = fmt.Sprintf("No garment has this cut line: %s is there only %s, and %s only %s.", the(c.Piece.Name), p, lower(c.Material.Name), m)
		f = also(also(f, c.Piece.Span, "the piece"), c.Material.Span, "the material")
	}
	r.report(condition.True, f)
	r.found[r.Space.And(c.Piece.Cond, r.Valid)] = true // what is left over there follows from it
	r.found[r.Space.And(c.Material.Cond, r.Valid)] = true
	r.tell(c.Piece, condition.True)
	r.tell(c.Material, condition.True)
}

// deadItems reports what a step holds for nobody: what its own guard forbids, and
// operations that act on what is never there when they are done.
func (r *run) deadItems(st *model.Step) {
	var idle []*model.Op
	for _, i := range st.Items {
		switch x := i.(type) {
		case *model.Op:
			if !r.dead(x.Said, x.Span, "This operation") && r.wasIdle(x) {
				idle = append(idle, x)
			}
		case *model.Prose:
			r.dead(x.Cond, x.Span, "This text")
		}
	}
	if len(idle) > 0 {
		r.idleIn(st, idle)
	}
}

// wasIdle finds an operation of the mended pattern among the idle ones.
func (r *run) wasIdle(op *model.Op) bool {
	for x := range r.idle {
		if x.Node == op.Node {
			return true
		}
	}
	return false
}

// idleIn words operations of one step that meet nothing to act on. Both guards
// are told.
func (r *run) idleIn(st *model.Step, ops []*model.Op) {
	op := ops[0]
	f := at(op.Span, "for no garment", fmt.Sprintf("In no garment is there anything for this `%s` to act on.", op.Verb),
		"Change the guard of one of them.")
	for _, o := range op.Objects {
		f.Headline = fmt.Sprintf("This `%s` stands in a step for garments %s, and %s is there only %s.", op.Verb, r.where(op.Said), o.Describe(), r.where(o.Cond))
		if r.where(op.Said) == "" || r.where(o.Cond) == "" {
			f.Headline = fmt.Sprintf("This `%s` holds for no garment that can be chosen.", op.Verb)
		}
		f = also(f, o.Declared(), "declared here")
		break
	}
	var others []finding.Span
	for _, o := range ops[1:] {
		f = also(f, o.Span, "and this")
		others = append(others, o.Span)
	}
	r.report(condition.True, f, others...)
}

// workless looks for steps that keep their title and text where all their
// operations are guarded away.
func workless(r *run) {
	for _, st := range r.Steps() {
		work, ops := condition.False, 0
		for _, i := range st.Items {
			switch x := i.(type) {
			case *model.Op:
				ops++
				work = r.Space.Or(work, x.Cond)
				if r.lost(x) {
					work = condition.True
				}
			case *model.TryOn:
				work = r.Space.Or(work, x.Cond)
			}
		}
		bad := r.Space.And(r.Space.Diff(st.Cond, work), r.Valid)
		if ops == 0 || r.explained(bad) {
			continue
		}
		r.report(bad, at(st.Span, "nothing to do", fmt.Sprintf("Nothing is done in the step “%s”.", st.Title.Text),
			"Guard the step with `when`, as what is done in it is guarded; or take the guards away."))
	}
}
