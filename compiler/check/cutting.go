package check

import (
	"fmt"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "piece-not-cut", Severity: finding.Error, Category: "cutting", FromAbsence: true, ahead: 8, run: notCut,
		Purpose: "A piece is there and no cut line cuts it from cloth.",
		Why:     "The sewist meets a piece in the steps that the cutting list never told her to cut."})
	register(Rule{ID: "piece-never-used", Severity: finding.Error, Category: "cutting", FromAbsence: true, ahead: 3, run: neverUsed,
		Purpose: "A piece is cut and no step does anything with it.",
		Why:     "She cuts good cloth for nothing, or a step is missing."})
	register(Rule{ID: "side-up-not-said", Severity: finding.Error, Category: "cutting", run: sideUp,
		Purpose: "A single cut of a piece that is not symmetric does not say which side is up.",
		Why:     "Cut with the wrong side up it comes out as its mirror image, and one piece cannot be turned over."})
	register(Rule{ID: "pair-or-alike", Severity: finding.Error, Category: "cutting", ahead: 7, run: pairOrAlike,
		Purpose: "Several of a piece are cut without saying how they lie.",
		Why:     "Cut on two layers they are a left and a right one, cut on one layer they are all the same; only one of these can be sewn."})
	register(Rule{ID: "material-never-cut", Severity: finding.Error, Category: "cutting", FromAbsence: true, run: materialNeverCut,
		Purpose: "A material is listed and nothing is cut from it.",
		Why:     "It is on the shopping list, so somebody buys it."})
	register(Rule{ID: "piece-number-repeated", Severity: finding.Error, Category: "cutting", ahead: 1, run: numberRepeated,
		Purpose: "Two pieces have the same number.",
		Why:     "The number is printed on the piece; two with one number get mixed up."})
}

// notCut looks for pieces that are there and not cut. Interfacing alone does for
// a piece that is only put on others.
func notCut(r *run) {
	for _, p := range r.Pieces {
		if p.Template {
			continue
		}
		var cloth, in condition.Cond
		for _, c := range p.Cuts {
			if c.Material.Interfacing {
				in = r.Space.Or(in, c.Cond)
			} else {
				cloth = r.Space.Or(cloth, c.Cond)
			}
		}
		cloth = r.Space.Or(cloth, r.Space.Diff(in, r.needsCloth(p)))
		bad := r.unsaid(p, r.Space.Diff(p.Cond, cloth))
		f := at(p.Span, "not cut", fmt.Sprintf("No cut line cuts %s.", the(p.Name)), "Add one: cut 1 MATERIAL …")
		switch {
		case r.possible(r.Space.And(bad, in)):
			f.Headline = fmt.Sprintf("No cut line cuts %s from cloth.", the(p.Name))
			f = also(f, p.Cuts[0].Span, "interfacing only")
		case len(p.Cuts) > 0:
			f.Help = "Guard the piece as its cut line and its material are guarded, or let them be cut in these garments too."
			f = also(f, p.Cuts[0].Span, "cut in other garments only")
		}
		r.tell(p, bad)
		r.uncut[p] = bad
		r.report(bad, f)
	}
}

// needsCloth is where a piece is more than interfacing: a seam joins it, or a step
// fuses it without saying to what. What is caught in a seam, or sewn in, may be
// interfacing alone.
func (r *run) needsCloth(p *model.Piece) condition.Cond {
	need := condition.False
	for _, c := range p.Cuts {
		if c.Material.Interfacing && !c.Material.Fusible {
			return need
		}
	}
	for _, s := range r.index.naming[p] {
		need = r.Space.Or(need, there(s))
	}
	for _, f := range r.facts.Fusing {
		if f.Target.Piece == p && f.Op.Phrase("to") == nil && f.Op.Phrase("on") == nil {
			need = r.Space.Or(need, f.Cond)
		}
	}
	return need
}

// neverUsed looks for cloth that no step sews or even hems. What lies in a seam
// that is never sewn is left to the rule that says so.
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

// unused reports the parts of one cut that nothing is done with, together if they
// are unused in the same garments.
func (r *run) unused(c *model.Cut) {
	groups := map[condition.Cond][]*model.Instance{}
	var order []condition.Cond
	for _, i := range c.Instances {
		bad := r.Space.Diff(r.unsaid(i, i.Cond), r.used(i))
		if r.possible(bad) { // for most that is all
			bad = r.Space.Diff(bad, r.Space.Or(r.complete(i), r.waits(i)))
		}
		if groups[bad] == nil {
			order = append(order, bad)
		}
		groups[bad] = append(groups[bad], i)
	}
	for _, bad := range order {
		for _, i := range groups[bad] {
			r.tell(i, bad)
		}
		r.report(bad, at(c.Span, "cut here", unusedWords(c, groups[bad]),
			"Sew it in a step, or leave it out of the cutting list. A guide that is not sewn says `template`, an item of its own `separate`."))
	}
}

// waits is where a part is to be sewn to a piece that is not cut, which is
// reported.
func (r *run) waits(i *model.Instance) condition.Cond {
	c := condition.False
	if len(r.uncut) == 0 {
		return c
	}
	for _, s := range r.index.naming[i.Piece] {
		c = r.Space.Or(c, r.doubt(s))
	}
	return c
}

// complete is where a part is a thing of its own although nothing is sewn to it:
// something is done to each of its edges, and it says that it is separate, or is
// all that is cut, like a napkin.
func (r *run) complete(i *model.Instance) condition.Cond {
	if len(i.Piece.Edges) == 0 {
		return condition.False
	}
	c := condition.True
	for _, e := range i.Piece.Edges {
		for _, u := range usesOf(r, i, e) {
			if !laid(i, e) {
				c = r.Space.And(c, r.Space.Any(r.facts.Shut[u], e.LeftRaw, r.Space.Not(e.Cond)))
			}
		}
	}
	if i.Piece.Separate {
		return c
	}
	for _, p := range r.Pieces {
		for _, o := range p.Cloths() {
			if o != i && !p.Template {
				c = r.Space.Diff(c, o.Cond)
			}
		}
	}
	return c
}

func unusedWords(c *model.Cut, parts []*model.Instance) string {
	first := parts[0]
	switch {
	case c.Count == 1:
		return Upper(the(c.Piece.Name)) + " is cut and never sewn to anything."
	case len(parts) == len(c.Instances):
		return fmt.Sprintf("%d of %s are cut and never sewn to anything.", c.Count, the(c.Piece.Name))
	case len(parts) == 1 && partWords(first) != the(c.Piece.Name):
		return Upper(partWords(first)) + " is cut and never sewn to anything."
	}
	return fmt.Sprintf("%d of %s are cut, and %d of them %s never sewn to anything.", c.Count, the(c.Piece.Name), len(parts), isOrAre(len(parts)))
}

// sideUp asks for the side that is up, once a piece: interfacing follows its
// cloth.
// pairNotDrawn gives a piece that is cut in pairs and sewn to another, and does not say how it
// is drawn; nil if there is none.
func (r *run) pairNotDrawn(p *model.Piece) *model.Piece {
	for _, s := range r.Seams {
		if !joinsPiece(s, p) {
			continue
		}
		for _, u := range s.Uses() {
			if q := u.Instance.Piece; q != p && u.Instance.Cut.Lay.Mirrored && !q.DrawnSaid {
				return q
			}
		}
	}
	return nil
}

func sideUp(r *run) {
	for _, p := range r.Pieces {
		if r.inUnclearSeam(p) {
			continue // whether it is a pair is asked there
		}
		asked := condition.False
		for _, in := range []bool{false, true} {
			for _, c := range p.Cuts {
				if c.Material.Interfacing != in || !sideMatters(c) {
					continue
				}
				say := "right side up"
				if in {
					say = "glue side up"
				}
				help := fmt.Sprintf("Add `%s`, or the other side; if the piece is the same either way up, say `symmetric` in it.", say)
				if q := r.pairNotDrawn(p); q != nil && !in {
					help += fmt.Sprintf(" Or say in %s how it is drawn, `drawn as right` or `drawn as left`: then the side follows from the seam.", q.ID)
				}
				r.report(r.Space.Diff(c.Cond, asked), at(c.Span, "which side is up?", fmt.Sprintf("%s is cut once, and the cut line does not say which side of %s is up.", Upper(the(p.Name)), lower(c.Material.Name)),
					help))
				asked = r.Space.Or(asked, c.Cond)
			}
		}
	}
}

// inUnclearSeam reports whether a piece is named in a seam of which it could not
// be worked out what it joins.
func (r *run) inUnclearSeam(p *model.Piece) bool {
	for _, s := range r.Seams {
		if len(s.Copies) > 0 {
			continue
		}
		for _, t := range s.Rows() {
			if t.Piece == p {
				return true
			}
		}
	}
	return false
}

// sideMatters reports whether a cut line should say which side is up and does not.
func sideMatters(c *model.Cut) bool {
	l := c.Lay
	return !c.Piece.Symmetric && !c.Piece.Template && c.Count == 1 && l.Up == model.NotSaid && !l.Mirrored && !l.Fold && !l.Alike && !c.Material.NoRightSide
}

func pairOrAlike(r *run) {
	for _, p := range r.Pieces {
		if p.Symmetric || p.Template {
			continue
		}
		for _, c := range p.Cuts {
			l := c.Lay
			if c.Count < 2 || l.Mirrored || l.Fold || l.Alike || l.Up != model.NotSaid || c.Material.NoRightSide {
				continue
			}
			r.tell(p, c.Cond)
			r.report(c.Cond, at(c.Span, "a pair, or all alike?", fmt.Sprintf("%s is cut %s, and the cut line does not say whether as a pair or all alike.", Upper(the(p.Name)), times(c.Count)),
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
	uncut := condition.False // garments with a piece that may have been meant
	for _, p := range r.Pieces {
		if len(p.Cuts) == 0 {
			uncut = r.Space.Or(uncut, r.spoken[p])
		}
	}
	for _, m := range r.Materials {
		r.report(r.unsaid(m, r.Space.Diff(m.Cond, r.Space.Or(cut[m], uncut))), at(m.Span, "nothing is cut from it", fmt.Sprintf("Nothing is cut from %s.", lower(m.Name)),
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
			f := at(p.NumberSpan, "again", fmt.Sprintf("%s and %s both have the number %d.", Upper(the(o.Name)), the(p.Name), p.Number), "Give each piece a number of its own.")
			r.report(r.Space.And(p.Cond, o.Cond), also(f, o.NumberSpan, "here first"))
			r.tell("piece numbers", condition.True)
		}
		seen[p.Number] = append(seen[p.Number], p)
	}
}
