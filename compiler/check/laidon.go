package check

import (
	"fmt"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

// Parts that are laid on another and sewn down.
func init() {
	register(Rule{ID: "laid-on-never-sewn", Severity: finding.Warning, Category: "seams", FromAbsence: true, run: laidNotSewn,
		Purpose: "A part is laid on another, and no step sews it down.",
		Why:     "A sentence that only lays it there, and holds it with pins or tape, leaves the sewing to a row that is missing."})
	register(Rule{ID: "sewn-on-and-left-raw", Severity: finding.Warning, Category: "seams", FromAbsence: true, run: sewnOnRaw,
		Purpose: "The open edge of a turned part is sewn onto cloth, and nothing shuts its raw edges in.",
		Why:     "The allowances stand up under the flap and fray. They are trimmed, the part is folded over them, and a row wider than they are shuts them in; or they are finished or pressed under before."})
}

var sewingWord = expression(`(?i)\b(?:sew|sewn|stitch\w*|edgestitch\w*|topstitch\w*|machine|fell|tack)\b`)

func laidNotSewn(r *run) {
	for n, op := range r.Ops() {
		if op.Verb != "apply" || op.As == nil || sewingWord().MatchString(op.As.Text) {
			continue
		}
		for _, o := range op.Objects {
			if o.Piece == nil {
				continue
			}
			sewn := r.sewnAfter(o.Piece, n)
			r.report(r.Space.Diff(r.Space.And(op.Cond, o.Cond), sewn), at(op.Span, "laid on here", fmt.Sprintf("%s is laid on, and no step sews it down.", Upper(the(o.Piece.Name))),
				fmt.Sprintf("Add `edgestitch %s.EDGE` for each of its edges that is sewn down, or let the sentence say how it is sewn.", o.Piece.ID)))
		}
	}
}

// sewnAfter is where a row goes through a piece after an operation.
func (r *run) sewnAfter(p *model.Piece, n int) condition.Cond {
	c := condition.False
	for _, d := range r.deeds().piece[p] {
		if d.n > n && (d.op.Row.Class == model.Decorate || d.op.Row.Class == model.Attach || oneOf(d.op.Verb, []string{"slipstitch", "fell", "hem"})) {
			c = r.Space.Or(c, d.cond)
		}
	}
	for _, s := range r.Seams {
		if joinsPiece(s, p) && r.sewnAt(s) > n {
			c = r.Space.Or(c, s.Cond)
		}
	}
	return c
}

// sewnOnRaw looks at the edges of made-up parts that are sewn onto cloth by
// themselves. The layers of such an edge are raw unless something was done to it.
func sewnOnRaw(r *run) {
	for n, op := range r.Ops() {
		if op.Verb != "apply" && op.Verb != "attach" {
			continue
		}
		for _, o := range op.Objects {
			if o.PartEdge == nil {
				continue
			}
			bad := r.Space.Diff(r.Space.And(op.Cond, o.Cond), r.edgeDone(o, "press under", "turn under", "hem", "bind", "finish", "cover", "slipstitch"))
			if bad = r.Space.Diff(bad, r.shutIn(op, o, n)); !r.possible(bad) {
				continue
			}
			r.report(bad, at(op.Span, "raw edges inside", fmt.Sprintf("The %s of %s is sewn on, and nothing shuts its raw edges in.", edgeCalled(o.PartEdge.Name), the(o.Part.Name)),
				fmt.Sprintf("Trim the allowances, `fold %s along %s`, and topstitch it farther from the fold than they are wide; or finish the edge before.", o.Part.ID, o.PartEdge.ID)))
		}
	}
}

// edgeDone is where one of these verbs is done to all that lies at an edge.
func (r *run) edgeDone(o *model.Target, verbs ...string) condition.Cond {
	c := condition.False
	for _, u := range o.Uses {
		c = r.Space.Or(c, r.whereDone(r.deeds().edge[u.Edge], verbs...))
	}
	return c
}

// shutIn is where a part is folded over the edge by which it was sewn on, and a row
// then runs along that edge that is wider than what is left of the allowance.
func (r *run) shutIn(op *model.Op, o *model.Target, n int) condition.Cond {
	folded, stitched := condition.False, condition.False
	left := r.Allow
	for _, i := range o.Instances {
		for _, d := range r.deeds().piece[i.Piece] {
			if d.n > n && oneOf(d.op.Verb, []string{"fold", "turn", "press", "roll", "lay"}) {
				folded = r.Space.Or(folded, d.cond)
			}
		}
	}
	for _, u := range o.Uses {
		for _, d := range r.deeds().edge[u.Edge] {
			switch {
			case d.n < n:
			case oneOf(d.op.Verb, []string{"trim", "grade"}):
				if a := amountOf(d.op); a != nil {
					left = a
				}
			case oneOf(d.op.Verb, []string{"topstitch", "edgestitch", "stitch"}):
				if w := amountOf(d.op); w == nil || left == nil || left.Length.Cmp(w.Length) < 0 {
					stitched = r.Space.Or(stitched, d.cond)
				}
			}
		}
	}
	return r.Space.And(folded, stitched)
}

// amountOf is the first length that an operation says, nil if it says none.
func amountOf(op *model.Op) *model.Amount {
	for _, p := range op.Phrases {
		if len(p.Amounts) > 0 {
			return &p.Amounts[0]
		}
	}
	return nil
}
