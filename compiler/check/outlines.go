package check

import (
	"fmt"
	"slices"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/compiler/outline"
	"seamwarden/dsl/finding"
)

// What is said of a piece, beside its drawing.
func init() {
	register(Rule{ID: "outline-size-missing", Severity: finding.Error, Category: "outlines", run: sizeMissing,
		Purpose: "A piece is drawn, but not in every size of the pattern, or in one that the pattern has not.",
		Why:     "Whoever makes that size has nothing to cut out. A size that is only drawn is mostly one whose name is written differently."})
	register(Rule{ID: "outline-edges-differ", Severity: finding.Error, Category: "outlines", FromAbsence: true, ahead: 5, run: edgesDiffer,
		Purpose: "The edges of a drawing are not those that the piece names, clockwise in the same order.",
		Why:     "Seams, hems and marks are told by edges; one that is called otherwise in the drawing has no length, and a ring the other way round is the piece for the other side of the body."})
	register(Rule{ID: "outline-given-twice", Severity: finding.Error, Category: "outlines", ahead: 2, run: drawnTwice,
		Purpose: "Two drawings of a piece hold for the same garment.",
		Why:     "Nobody can tell which of the two is cut out."})
	register(Rule{ID: "outline-for-some-only", Severity: finding.Warning, Category: "outlines", ahead: -1, run: drawnForSome,
		Purpose: "A piece is drawn for some of the garments in which it is cut, and not for the others.",
		Why:     "Whoever makes one of the others has nothing to cut out. The drawing of a view is easily forgotten, or its guard is too narrow."})
	register(Rule{ID: "symmetric-not-drawn", Severity: finding.Error, Category: "outlines", ahead: -1, run: notSymmetric,
		Purpose: "A piece is called symmetric, and its drawing is not.",
		Why:     "Cut with the other side up it would be another shape, and nobody is told which side goes up."})
	register(Rule{ID: "fold-edge-not-straight", Severity: finding.Error, Category: "outlines", run: foldNotStraight,
		Purpose: "A piece is cut on the fold at an edge that is not straight.",
		Why:     "Cloth folds along a straight line; on a bent edge the two halves would not come out as one piece."})
	register(Rule{ID: "same-shape-not-drawn", Severity: finding.Error, Category: "outlines", run: notSameShape,
		Purpose: "A piece is said to copy another along an edge, and no edge of its drawing does.",
		Why:     "A facing that is not cut to the line that it faces pulls it out of shape."})
}

// eachDrawn calls f for every drawing of a piece that could be read, and where it holds.
func (r *run) eachDrawn(f func(p *model.Piece, d *model.Drawn, where condition.Cond)) {
	for _, p := range r.Pieces {
		for _, d := range p.Outlines {
			if d.Art != nil {
				f(p, d, r.Space.And(p.Cond, d.Cond))
			}
		}
	}
}

// drawings gathers what a rule finds in drawings. A piece may have one for each view:
// what is wrong with them in the same words is one mistake.
type drawings struct {
	list  []finding.Finding
	bad   []condition.Cond
	spans [][]finding.Span
}

func (g *drawings) add(r *run, bad condition.Cond, f finding.Finding) {
	if !r.possible(bad) {
		return
	}
	for i := range g.list {
		if first := &g.list[i]; first.Headline == f.Headline {
			g.bad[i] = r.Space.Or(g.bad[i], bad)
			if f.Place.Span != first.Place.Span {
				*first = also(*first, f.Place.Span, "here as well")
				g.spans[i] = append(g.spans[i], f.Place.Span)
			}
			return
		}
	}
	g.list, g.bad, g.spans = append(g.list, f), append(g.bad, bad), append(g.spans, nil)
}

func (g *drawings) report(r *run) {
	for i, f := range g.list {
		r.report(g.bad[i], f, g.spans[i]...)
	}
}

// inOutline says in which sizes a test holds of a drawing, and gives the first such
// outline. Sizes that are not drawn are passed over.
func (r *run) inOutline(d *model.Drawn, test func(*outline.Outline) bool) (where condition.Cond, first *outline.Outline) {
	judged := map[*outline.Outline]bool{} // one drawing may stand for several sizes
	where = r.InSizes(func(i int) bool {
		o := d.Outline(r.Pattern, i)
		if o == nil {
			return false
		}
		bad, known := judged[o]
		if !known {
			bad = test(o)
			judged[o] = bad
		}
		if bad && first == nil {
			first = o
		}
		return bad
	})
	return
}

func drawnTwice(r *run) {
	for _, p := range r.Pieces {
		for i, d := range p.Outlines {
			for _, first := range p.Outlines[:i] {
				both := r.Space.All(p.Cond, d.Cond, first.Cond)
				if r.possible(both) {
					r.tell(d, both)
					r.tell(first, both)
					r.tell(guardsOf{p}, condition.True)
				}
				r.report(both, also(at(d.File.Span, "a second drawing", fmt.Sprintf("%s has two drawings.", Upper(the(p.Name))),
					"Keep one, or say in which garments each of them holds, such as `when A`."), first.File.Span, "the first"))
			}
		}
	}
}

// guardsOf are the guards of a piece's drawings of which it is said that one is wrong: then
// it is wrong for the garments that it leaves out as well.
type guardsOf struct{ *model.Piece }

// drawnForSome looks for garments in which a piece has no drawing while it has one in
// others.
func drawnForSome(r *run) {
	for _, p := range r.Pieces {
		left := p.Cond
		for _, d := range p.Outlines {
			left = r.Space.Diff(left, d.Cond)
		}
		left = r.unsaid(guardsOf{p}, left)
		if len(p.Outlines) == 0 || !r.possible(left) {
			continue
		}
		r.report(left, at(p.Outlines[0].File.Span, "not there", fmt.Sprintf("%s is drawn, but not for every garment in which it is cut.", Upper(the(p.Name))),
			"Draw it for these too, with an `outline` of its own, or let this drawing hold for them as well."))
	}
}

func sizeMissing(r *run) {
	var all drawings
	defer func() { all.report(r) }()
	r.eachDrawn(func(p *model.Piece, d *model.Drawn, where condition.Cond) {
		missing := r.Space.And(where, r.InSizes(func(i int) bool { return d.Outline(r.Pattern, i) == nil }))
		extra := r.onlyDrawn(d)
		say, help := "is not drawn in every size", "Draw the piece in these sizes too: one group for each, such as <g id=\"size-"+r.someSize()+"\">."
		switch {
		case len(extra) > 0 && r.possible(missing):
			say, help = "is drawn in size "+listed(extra)+", which the pattern has not, and not in all that it has", "Name the groups by the sizes in the table of sizes."
		case len(extra) > 0:
			missing = where
			say, help = "is drawn in size "+listed(extra)+", which the pattern has not", "Take the group away, or add the size to the table of sizes."
		}
		all.add(r, missing, at(d.File.Span, "in this file", fmt.Sprintf("%s %s.", Upper(the(p.Name)), say), help))
	})
}

func (r *run) someSize() string {
	if r.Sizes == nil || len(r.Sizes.Sizes) == 0 {
		return "12"
	}
	return r.Sizes.Sizes[0]
}

// onlyDrawn lists the sizes of a drawing that the pattern has not. A pattern without
// sizes may have a drawing of one, whatever it is called.
func (r *run) onlyDrawn(d *model.Drawn) (extra []string) {
	if r.Sizes == nil {
		return nil
	}
	for _, s := range d.Art.Sizes {
		for _, name := range s.Sizes {
			if !slices.Contains(r.Sizes.Sizes, name) {
				extra = append(extra, name)
			}
		}
	}
	return
}

func notSymmetric(r *run) {
	var all drawings
	defer func() { all.report(r) }()
	r.eachDrawn(func(p *model.Piece, d *model.Drawn, where condition.Cond) {
		if !p.Symmetric {
			return
		}
		bad, _ := r.inOutline(d, func(o *outline.Outline) bool { return len(o.Symmetric()) == 0 })
		for _, s := range r.Seams { // an edge of the wrong length is found there
			if joinsPiece(s, p) {
				bad = r.unsaid(misfitOf{s}, bad)
			}
		}
		all.add(r, r.Space.And(bad, where), at(d.File.Span, "the same on no axis", fmt.Sprintf("%s is called symmetric, and its drawing is not.", Upper(the(p.Name))),
			"Mirrored about no line it comes to lie on itself within 0.5 mm. Mend the drawing, or take `symmetric` out and say in each cut line which side is up."))
	})
}

func foldNotStraight(r *run) {
	var all drawings
	defer func() { all.report(r) }()
	r.eachDrawn(func(p *model.Piece, d *model.Drawn, where condition.Cond) {
		told := map[*model.Edge]condition.Cond{}
		for _, c := range p.Cuts {
			e := c.Lay.FoldEdge
			if !c.Lay.Fold || e == nil {
				continue
			}
			bad, first := r.inOutline(d, func(o *outline.Outline) bool {
				drawn := o.Edge(e.ID)
				return drawn != nil && drawn.Form() != outline.Straight
			})
			bad = r.Space.Diff(r.Space.And(r.Space.And(bad, where), c.Cond), told[e])
			if !r.possible(bad) {
				continue
			}
			told[e] = r.Space.Or(told[e], bad)
			drawn := first.Edge(e.ID)
			all.add(r, bad, also(at(c.Span, "on the fold", fmt.Sprintf("%s is cut on the fold at its %s, and that edge is drawn %s.", Upper(the(p.Name)), edgeCalled(e.Name), bent(drawn.Form())),
				straightInstead(first)), drawn.Span, "this edge"))
		}
	})
}

// straightInstead advises on an edge on the fold that is not straight: of a half one edge
// is, mostly, the one that was meant.
func straightInstead(o *outline.Outline) string {
	var straight []string
	for _, e := range o.Edges {
		if e.Form() == outline.Straight {
			straight = append(straight, e.Name)
		}
	}
	if len(straight) == 1 {
		return fmt.Sprintf("Did you mean `on fold %s`? That edge is straight.", straight[0])
	}
	return "Draw it straight, or name the edge that lies on the fold."
}

// bent words how an edge runs.
func bent(f outline.Form) string {
	return map[outline.Form]string{outline.Straight: "straight", outline.Convex: "bulging", outline.Hollow: "hollow", outline.Wavy: "wavy"}[f]
}

func notSameShape(r *run) {
	var all drawings
	defer func() { all.report(r) }()
	r.eachDrawn(func(p *model.Piece, d *model.Drawn, where condition.Cond) {
		if p.SameAs == nil || p.SameAs.Edge == nil {
			return
		}
		e := p.SameAs.Edge
		for _, other := range e.Piece.Outlines {
			if other.Art == nil {
				continue
			}
			bad := r.InSizes(func(i int) bool {
				a, b := d.Outline(r.Pattern, i), other.Outline(r.Pattern, i)
				return a != nil && b != nil && a.Allowance == b.Allowance && b.Edge(e.ID) != nil && !copied(a, b.Edge(e.ID), p.Flipped)
			})
			bad = r.Space.And(bad, r.Space.And(where, r.Space.And(other.Cond, e.Piece.Cond)))
			all.add(r, bad, also(at(d.File.Span, "no edge like it", fmt.Sprintf("%s is said to copy the %s of %s%s, and no edge of its drawing does.", Upper(the(p.Name)), edgeCalled(e.Name), the(e.Piece.Name), map[bool]string{true: ", flipped"}[p.Flipped]),
				"Trace the line again, or mend the sentence: `flipped` stands for a mirror image."), p.SameAs.Span, "said here"))
		}
	})
}

// copied reports whether some edge of an outline has the line of another's.
func copied(o *outline.Outline, of *outline.Edge, flipped bool) bool {
	for _, e := range o.Edges {
		as, turned := outline.SameEdge(e, of)
		if flipped && turned || !flipped && as {
			return true
		}
	}
	return false
}
