package check

import (
	"fmt"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/compiler/outline"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "grain-beside-the-piece", Severity: finding.Warning, Category: "outlines", ahead: -6, run: grainBeside,
		Purpose: "The grain line is drawn outside the piece.",
		Why:     "It was mostly left behind when the piece was moved or turned, and shows another direction than is meant."})
}

// grainOf is the grain line of a drawing of which it is said that it lies the wrong way.
type grainOf struct{ *model.Drawn }

func grainBeside(r *run) {
	var all drawings
	r.eachDrawn(func(p *model.Piece, d *model.Drawn, where condition.Cond) {
		bad, first := r.inOutline(d, func(o *outline.Outline) bool {
			return o.Grain != nil && !o.Holds(o.Grain.From) && !o.Holds(o.Grain.To)
		})
		if first == nil {
			return
		}
		bad = r.unsaid(grainOf{d}, r.unsaid(edgesOf{p}, r.Space.And(bad, where)))
		all.add(r, bad, also(at(d.File.Span, "in this drawing", fmt.Sprintf("The grain line of %s lies outside the piece.", the(p.Name)),
			"Move it into the piece, and see that it still runs along the grain."), first.Grain.Span, "this line"))
	})
	all.report(r)
}
