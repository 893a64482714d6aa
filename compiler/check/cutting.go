package check

import (
	"fmt"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "piece-not-cut", Severity: finding.Error, Category: "cutting", FromAbsence: true, run: notCut,
		Purpose: "A piece is there and no cut line cuts it.",
		Why:     "The sewist meets a piece in the steps that the cutting list never told her to cut."})
	register(Rule{ID: "piece-never-used", Severity: finding.Error, Category: "cutting", FromAbsence: true, run: neverUsed,
		Purpose: "A piece is cut and no step sews it to anything.",
		Why:     "She cuts good cloth for nothing, or a step is missing."})
	register(Rule{ID: "side-up-not-said", Severity: finding.Error, Category: "cutting", run: sideUp,
		Purpose: "A single cut of a piece that is not symmetric does not say which side is up.",
		Why:     "Cut with the wrong side up it comes out as its mirror image, and one piece cannot be turned over."})
	register(Rule{ID: "pair-or-alike", Severity: finding.Error, Category: "cutting", run: pairOrAlike,
		Purpose: "Several of a piece are cut without saying how they lie.",
		Why:     "Cut on two layers they are a left and a right one, cut on one layer they are all the same; only one of these can be sewn."})
	register(Rule{ID: "material-never-cut", Severity: finding.Error, Category: "cutting", FromAbsence: true, run: materialNeverCut,
		Purpose: "A material is listed and nothing is cut from it.",
		Why:     "It is on the shopping list, so somebody buys it."})
	register(Rule{ID: "piece-number-repeated", Severity: finding.Error, Category: "cutting", run: numberRepeated,
		Purpose: "Two pieces have the same number.",
		Why:     "The number is printed on the piece; two with one number get mixed up."})
}

func notCut(r *run) {
	for _, p := range r.Pieces {
		cut := condition.False
		for _, c := range p.Cuts {
			cut = r.Space.Or(cut, c.Cond)
		}
		f := at(p.Span, "never cut", fmt.Sprintf("No cut line cuts %s.", the(p.Name)), "Add one: cut 1 MATERIAL …, or guard the piece with `when`.")
		if len(p.Cuts) > 0 {
			f.Headline, f.Place.Label = fmt.Sprintf("%s is used and not cut.", Upper(the(p.Name))), "used here and everywhere that it is named"
			f = also(f, p.Cuts[0].Span, "cut here only")
			f.Help = "Widen the guard of the cut line, or guard the piece itself."
		}
		r.report(r.Space.Diff(p.Cond, cut), f)
	}
}

func neverUsed(r *run) {
	for _, p := range r.Pieces {
		if p.Template {
			continue
		}
		for _, c := range p.Cuts {
			if !c.Material.Interfacing {
				r.unused(c)
			}
		}
	}
}

// unused reports the parts of one cut that nothing sews, together if they are
// unused in the same garments.
func (r *run) unused(c *model.Cut) {
	groups := map[condition.Cond][]*model.Instance{}
	var order []condition.Cond
	for _, i := range c.Instances {
		bad := r.Space.Diff(i.Cond, r.facts.Used[i])
		if groups[bad] == nil {
			order = append(order, bad)
		}
		groups[bad] = append(groups[bad], i)
	}
	for _, bad := range order {
		list := groups[bad]
		what := Upper(the(c.Piece.Name)) + " is cut and never sewn to anything."
		switch {
		case len(list) < len(c.Instances):
			what = fmt.Sprintf("%d of %d of %s are cut, and of these %s is never sewn to anything.", c.Count, c.Count, the(c.Piece.Name), list[0].Path())
			if list[0].Side != model.Neither || list[0].Copy != "" {
				what = fmt.Sprintf("`%s` is cut and never sewn to anything.", list[0].Path())
			}
		case c.Piece.Name != "" && c.Count > 1:
			what = fmt.Sprintf("%d of %s are cut and never sewn to anything.", c.Count, the(c.Piece.Name))
		}
		r.report(bad, at(c.Span, "cut here", what, "Sew it in a step, or leave it out of the cutting list. A guide that is not sewn says `template`."))
	}
}

func sideUp(r *run) {
	for _, p := range r.Pieces {
		if p.Symmetric {
			continue
		}
		for _, c := range p.Cuts {
			l := c.Lay
			if l.Up != model.NotSaid || l.Mirrored || l.Fold || l.Alike || c.Count != 1 || c.Material.NoRightSide {
				continue
			}
			say := "right side up"
			if c.Material.Fusible {
				say = "glue side up"
			}
			r.report(c.Cond, at(c.Span, "which side is up?", fmt.Sprintf("%s is cut once, and the cut line does not say which side of %s is up.", Upper(the(p.Name)), lower(c.Material.Name)),
				fmt.Sprintf("Add `%s`, or the other side; if the piece is the same either way up, say `symmetric` in it.", say)))
		}
	}
}

func pairOrAlike(r *run) {
	for _, p := range r.Pieces {
		if p.Symmetric {
			continue
		}
		for _, c := range p.Cuts {
			l := c.Lay
			if c.Count < 2 || l.Mirrored || l.Fold || l.Alike || l.Up != model.NotSaid || c.Material.NoRightSide {
				continue
			}
			r.report(c.Cond, at(c.Span, "a pair, or all alike?", fmt.Sprintf("%d of %s are cut, and the cut line does not say whether they are a pair or all alike.", c.Count, the(p.Name)),
				"Add `mirrored` for left and right ones, `alike` for copies; if the piece is the same either way up, say `symmetric` in it."))
		}
	}
}

func materialNeverCut(r *run) {
	cut := map[*model.Material]condition.Cond{}
	for _, p := range r.Pieces {
		for _, c := range p.Cuts {
			cut[c.Material] = r.Space.Or(cut[c.Material], c.Cond)
		}
	}
	for _, s := range r.Strips {
		if s.Material != nil {
			cut[s.Material] = r.Space.Or(cut[s.Material], s.Cond)
		}
	}
	for _, m := range r.Materials {
		r.report(r.Space.Diff(m.Cond, cut[m]), at(m.Span, "nothing is cut from it", fmt.Sprintf("Nothing is cut from %s.", lower(m.Name)),
			"Cut a piece from it, or take it off the list; if it belongs to an option, guard it with `when`."))
	}
}

func numberRepeated(r *run) {
	seen := map[int][]*model.Piece{}
	for _, p := range r.Pieces {
		if p.Number == 0 {
			continue
		}
		for _, o := range seen[p.Number] {
			f := at(p.NumberSpan, "again", fmt.Sprintf("The pieces %s and %s both have the number %d.", o.Name, p.Name, p.Number), "Give each piece a number of its own.")
			r.report(r.Space.And(p.Cond, o.Cond), also(f, o.NumberSpan, "here first"))
		}
		seen[p.Number] = append(seen[p.Number], p)
	}
}
