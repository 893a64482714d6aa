package check

import (
	"fmt"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "cut-and-used-differ", Severity: finding.Error, Category: "cutting", run: countedPieces,
		Purpose: "A step or a seam says how many of a piece it takes, and another number is cut.",
		Why:     "The sewist lacks one, or has one left over that nobody can place."})
}

// countedPieces compares the numbers that are written before pieces, `apply 2
// strap` or `catching 2 strap.head`, with the parts that the reference means.
func countedPieces(r *run) {
	say := func(t *model.Target, n int, c condition.Cond) {
		t.Each(func(x *model.Target) {
			if x.Piece == nil || x.Kind != model.ToPiece && x.Kind != model.ToEdge || len(x.Instances) == 0 || len(x.Instances) == n {
				return
			}
			cut := x.Instances[0].Cut
			f := at(x.Span, fmt.Sprintf("%d here", n), fmt.Sprintf("%s: %d taken here, %d cut.", Upper(lower(x.Piece.Name)), n, len(x.Instances)),
				"Change the number here or in the cut line.")
			r.report(r.Space.And(c, x.Cond), also(f, cut.CountSpan, "cut here"))
		})
	}
	for _, s := range r.Seams {
		for _, k := range s.Catching {
			if k.Said {
				say(k.Target, k.Count, s.Cond)
			}
		}
	}
	for _, op := range r.Ops() {
		if op.Counted && len(op.Objects) == 1 {
			say(op.Objects[0], op.Count, op.Cond)
		}
	}
}
