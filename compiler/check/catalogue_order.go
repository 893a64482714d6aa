package check

import (
	"fmt"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "basting-left-in", Severity: finding.Advice, Category: "order", FromAbsence: true, run: bastingLeft,
		Purpose: "Basting is neither covered by a seam nor taken out again.",
		Why:     "Its long stitches stay in the finished garment, where they catch and break."})
	register(Rule{ID: "fused-over-folds", Severity: finding.Warning, Category: "order", whole: true, run: fusedOverFolds,
		Purpose: "Interfacing is fused to a piece after it was pleated, tucked or gathered.",
		Why:     "The glue bonds the folds to each other, and the iron presses the fullness flat."})
}

// takenOut are words of a text that speak of taking basting out, or of its staying in.
var takenOut = expression(`(?i)\bbast\w*`)

// bastingLeft counts as covered what a seam takes, and what an operation closes.
func bastingLeft(r *run) {
	out := condition.False
	for op := range r.opsOf("remove") {
		out = r.Space.Or(out, op.Cond)
	}
	for _, t := range r.stepTexts() {
		if t.step != nil && basteStems.in(t.text) && takenOut().MatchString(t.text) {
			out = r.Space.Or(out, t.cond)
		}
	}
	for op := range r.opsOf("baste") {
		covered := out
		list := op.Objects
		if p := op.Phrase("to"); p != nil {
			list = append(append([]*model.Target(nil), list...), p.Targets...)
		}
		for _, o := range list {
			o.Each(func(t *model.Target) { covered = r.Space.Or(covered, r.coveredLater(t)) })
		}
		f := at(op.Span, "stays in", "This basting is neither covered by a seam nor taken out.", "Add `remove` or a sentence that says when to take it out.")
		r.report(r.Space.Diff(op.Cond, covered), f)
	}
}

// coveredLater is where what is basted lies in a seam, a hem or a row.
func (r *run) coveredLater(t *model.Target) condition.Cond {
	c := condition.False
	for _, s := range r.Seams {
		if takenBy(s, t) || t.Seam == s {
			c = r.Space.Or(c, s.Cond)
		}
	}
	for _, u := range t.Uses {
		c = r.Space.Or(c, r.facts.Shut[*u])
	}
	if t.Kind == model.ToPiece || t.Kind == model.ToPart {
		for _, i := range t.Instances {
			c = r.Space.Or(c, r.facts.Used[i])
		}
	}
	return c
}

// fusedOverFolds looks at what came before each fusing of a piece.
func fusedOverFolds(r *run) {
	ops := r.Ops()
	if len(r.index.byVerb["fuse"]) == 0 {
		return
	}
	for i, fuse := range ops {
		if fuse.Verb != "fuse" {
			continue
		}
		for _, op := range ops[:i] {
			for _, o := range op.Objects {
				p := foldedPiece(op, o)
				if p == nil || !fuses(fuse, p) {
					continue
				}
				f := at(fuse.Span, "over folds", fmt.Sprintf("%s is fused after it was folded by `%s`.", Upper(the(p.Name)), op.Verb), "Fuse while the piece lies flat.")
				r.report(r.Space.All(fuse.Cond, op.Cond, o.Cond), also(f, op.Span, "folded here"))
			}
		}
	}
}

// foldedPiece gives the piece that an operation lays into folds, nil for none.
// A dart leaves the cloth flat beside it and is none.
func foldedPiece(op *model.Op, o *model.Target) *model.Piece {
	switch {
	case o.Shaping != nil && op.Row.Sews && o.Shaping.Kind != "dart" && o.Shaping.In != nil:
		return o.Shaping.In.Piece
	case oneOf(op.Verb, []string{"pleat", "gather", "shirr", "tuck"}):
		return o.Piece
	}
	return nil
}

func fuses(op *model.Op, p *model.Piece) bool {
	for _, o := range op.Objects {
		if o.Piece == p {
			return true
		}
	}
	return false
}
