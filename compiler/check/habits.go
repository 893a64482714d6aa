package check

import (
	"fmt"
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

// What a good instruction does not leave out.
func init() {
	register(Rule{ID: "seam-never-finished", Severity: finding.Warning, Category: "seams", FromAbsence: true, run: neverFinished,
		Purpose: "The allowances of a seam are left raw and open to see.",
		Why:     "Cloth frays. A seam that is not shut inside something is finished, felled or bound, unless the pattern's head says what is done to every seam."})
	register(Rule{ID: "pressed-under-never-stitched", Severity: finding.Error, Category: "seams", FromAbsence: true, ahead: 1, run: neverStitched,
		Purpose: "An edge is pressed under and nothing holds it.",
		Why:     "A crease opens in the wash."})
	register(Rule{ID: "never-marked", Severity: finding.Warning, Category: "order", FromAbsence: true, run: neverMarked,
		Purpose: "A step uses a sign that no step marks, although others are marked.",
		Why:     "The sewist looks for a sign that she was not told to transfer."})
	register(Rule{ID: "mark-without-use", Severity: finding.Warning, Category: "names", FromAbsence: true, ahead: -2, run: markIdle,
		Purpose: "A mark is there in garments that do not use it.",
		Why:     "She marks a pocket place on a garment without pockets: a guard is missing."})
	register(Rule{ID: "button-without-buttonhole", Severity: finding.Warning, Category: "needs", FromAbsence: true, run: noButtonhole,
		Purpose: "Buttons are sewn on and no buttonhole or loop takes them.",
		Why:     "A button that closes something needs a slit or a loop."})
	register(Rule{ID: "never-turned", Severity: finding.Error, Category: "order", FromAbsence: true, run: neverTurned,
		Purpose: "A part is sewn with its right side inside and never turned.",
		Why:     "A flap, a band end or a facing that is not turned shows its seam and its wrong side."})
	register(Rule{ID: "turned-untrimmed", Severity: finding.Advice, Category: "order", FromAbsence: true, run: untrimmed,
		Purpose: "A seam is turned inside and its allowances are never trimmed, graded or clipped.",
		Why:     "Full allowances make a ridge inside, and a curve that is not clipped will not lie flat."})
	register(Rule{ID: "raw-edge-stitched-down", Severity: finding.Warning, Category: "seams", FromAbsence: true, ahead: -1, run: rawStitched,
		Purpose: "An edge is stitched down that was not folded, hemmed, bound or finished before.",
		Why:     "The raw edge frays out of the row of stitching."})
	register(Rule{ID: "fold-line-never-used", Severity: finding.Warning, Category: "names", FromAbsence: true, run: foldIdle,
		Purpose: "A piece has a fold line, and no step folds it there.",
		Why:     "Either a step is missing, or the line is left over."})
	register(Rule{ID: "opening-without-use", Severity: finding.Warning, Category: "order", FromAbsence: true, run: openingIdle,
		Purpose: "An opening is left and closed, and nothing goes through it.",
		Why:     "It was left to turn something or to thread something through; that step is missing."})
	register(Rule{ID: "edge-left-hanging", Severity: finding.Warning, Category: "seams", FromAbsence: true, run: hanging,
		Purpose: "A band is folded over a seam, and its other edge is never caught.",
		Why:     "The inside of the band hangs loose."})
	register(Rule{ID: "basted-elsewhere", Severity: finding.Error, Category: "order", run: bastedElsewhere,
		Purpose: "A part is basted to an edge, and the seam that takes it is another one.",
		Why:     "What is basted in a place is sewn in that place."})
}

// seamDeeds gives where an operation of one of these verbs is done to a seam, or
// to every edge in it.
func (r *run) seamDeeds(s *model.Seam, verbs ...string) condition.Cond {
	c := condition.False
	for op := range r.opsOf(verbs...) {
		for _, o := range op.Objects {
			if o.Seam == s {
				c = r.Space.Or(c, op.Cond)
			}
			if o.Kind == model.ToEdge && takesEdge(s, o.Edge) {
				c = r.Space.Or(c, r.Space.And(op.Cond, o.Cond))
			}
		}
	}
	return c
}

func oneOf(s string, list []string) bool {
	for _, x := range list {
		if x == s {
			return true
		}
	}
	return false
}

func takesEdge(s *model.Seam, e *model.Edge) bool {
	for _, u := range s.Uses() {
		if u.Edge == e {
			return true
		}
	}
	return false
}

// inside is where the allowances of a seam are shut in: a part of it is turned,
// looks in, or is stitched down along another edge; or the seam is stitched down
// itself.
func (r *run) inside(s *model.Seam) condition.Cond {
	parts := map[*model.Piece]bool{}
	for _, u := range s.Uses() {
		parts[u.Instance.Piece] = true
	}
	c := condition.False
	for p := range parts {
		if p.WornIn {
			return condition.True
		}
		for _, i := range p.Cloths() {
			if i.Cut.Material.NoRightSide {
				return condition.True
			}
		}
	}
	for _, op := range r.Ops() {
		for _, o := range op.Objects {
			o.Each(func(t *model.Target) {
				in := op.Verb == "turn" || oneOf(op.Verb, []string{"slipstitch", "fell", "apply"})
				in = in || op.Verb == "edgestitch" && t.Kind == model.ToEdge
				if in && t.Piece != nil && parts[t.Piece] {
					c = r.Space.Or(c, op.Cond)
				}
				for p := range parts {
					if op.Verb == "turn" && t.Part != nil && holds(t.Instances, p) {
						c = r.Space.Or(c, op.Cond)
					}
				}
			})
		}
		if ph := op.Phrase("catching"); ph != nil && !op.Row.Sews {
			for _, t := range ph.Targets {
				if t.Piece != nil && parts[t.Piece] {
					c = r.Space.Or(c, op.Cond)
				}
			}
		}
	}
	return c
}

func holds(list []*model.Instance, p *model.Piece) bool {
	for _, i := range list {
		if i.Piece == p {
			return true
		}
	}
	return false
}

// lined reports whether the garment has a layer that covers its inside.
func (r *run) lined() bool {
	for _, m := range r.Materials {
		if !m.Interfacing && strings.Contains(lower(m.ID+" "+m.Name), "lining") && !strings.Contains(lower(m.Name), "pocket") {
			return true
		}
	}
	return false
}

func neverFinished(r *run) {
	if r.Finish != nil && r.Finish.With != "" || r.lined() {
		return
	}
	groups := map[condition.Cond][]*model.Seam{}
	var order []condition.Cond
	for _, s := range r.Seams {
		bad := r.unsaid(s, r.Space.Diff(s.Cond, r.seamDeeds(s, "finish", "bind", "fell", "cover", "understitch")))
		bad = r.Space.And(r.unsaid(s, r.Space.Diff(bad, r.inside(s))), r.Valid)
		if bad == condition.False || knitted(s) || inTwoCloths(s) || r.finishInText(s) {
			continue
		}
		if groups[bad] == nil {
			order = append(order, bad)
		}
		groups[bad] = append(groups[bad], s)
	}
	for _, bad := range order {
		list := groups[bad]
		f := at(list[0].Span, "left raw", fmt.Sprintf("The allowances of %s are never finished.", theSeams(list)),
			fmt.Sprintf("Add `finish %s together with overlock` after it is sewn, or say in the head what is done to every seam: finish seams together with overlock.", list[0].ID))
		for _, s := range list[1:] {
			f = also(f, s.Span, "nor these")
		}
		r.report(bad, f)
	}
}

// onePiece reports whether a seam joins copies of one piece to each other.
func onePiece(s *model.Seam) bool {
	var first *model.Piece
	for _, u := range s.Uses() {
		if first != nil && u.Instance.Piece != first {
			return false
		}
		first = u.Instance.Piece
	}
	return true
}

// holdingRows are the operations that keep a fold in place.
var holdingRows = []string{"slipstitch", "edgestitch", "topstitch", "hem", "fell", "stitch", "tack", "attach", "quilt", "sew", "bar-tack", "set"}

// neverStitched looks for an edge that is pressed under and then neither sewn
// down nor taken by a seam, a hem or a patch.
func neverStitched(r *run) {
	held := map[*model.Edge]condition.Cond{}
	note := func(t *model.Target, c condition.Cond) {
		if t.Kind == model.ToEdge {
			held[t.Edge] = r.Space.Or(held[t.Edge], r.Space.And(c, t.Cond))
		}
	}
	whole := map[*model.Piece]condition.Cond{}
	for _, op := range r.Ops() {
		holding := oneOf(op.Verb, holdingRows)
		for _, o := range op.Objects {
			o.Each(func(t *model.Target) {
				if holding {
					note(t, op.Cond)
				}
				if (op.Verb == "attach" || op.Verb == "set" || op.Verb == "quilt") && t.Kind == model.ToPiece {
					whole[t.Piece] = r.Space.Or(whole[t.Piece], op.Cond)
				}
			})
		}
		for _, p := range op.Phrases {
			if p.Name == "catching" || op.Verb == "apply" && (p.Name == "to" || p.Place == "over") { // a curtain tape holds what it is stitched to
				for _, t := range p.Targets {
					t.Each(func(x *model.Target) { note(x, op.Cond) })
				}
			}
		}
	}
	for _, s := range r.Seams {
		for _, u := range s.Uses() {
			held[u.Edge] = r.Space.Or(held[u.Edge], s.Cond)
		}
	}
	reported := map[*model.Edge]bool{}
	for _, op := range r.Ops() {
		if op.Verb != "press under" && op.Verb != "turn under" {
			continue
		}
		for _, o := range op.Objects {
			if o.Kind != model.ToEdge || reported[o.Edge] {
				continue
			}
			fixed := held[o.Edge]
			if o.From != nil && o.To != nil {
				fixed = r.heldStretch(o)
			}
			bad := r.Space.Diff(r.Space.And(op.Cond, o.Cond), r.Space.Or(fixed, whole[o.Piece]))
			if r.possible(bad) {
				reported[o.Edge] = true
				r.tell(o.Edge, bad)
				r.report(bad, at(op.Span, "held by nothing", fmt.Sprintf("The %s of %s is pressed under and never stitched.", edgeCalled(o.Edge.Name), the(o.Piece.Name)),
					"Edgestitch, hem or slipstitch it, or catch it in a row: `ditch SEAM catching EDGE`."))
			}
		}
	}
}

// heldStretch is where the stretch of an edge between two marks is sewn down. The
// seams of the edge lie before and after it.
func (r *run) heldStretch(o *model.Target) condition.Cond {
	c := condition.False
	for _, d := range r.deeds().edge[o.Edge] {
		if d.on.Seam == nil && oneOf(d.op.Verb, holdingRows) {
			c = r.Space.Or(c, d.cond)
		}
	}
	for _, s := range r.Seams {
		for _, t := range append(append([]*model.Target(nil), s.Joins...), s.To...) {
			t.Each(func(x *model.Target) {
				if x.Edge == o.Edge && sameStretch(x, o) {
					c = r.Space.Or(c, s.Cond)
				}
			})
		}
	}
	return c
}

// sameStretch reports whether two stretches of an edge reach from the same mark to
// the same; one that names no marks is the whole edge.
func sameStretch(a, b *model.Target) bool {
	if a.From == nil || a.To == nil {
		return true
	}
	return a.From.Mark == b.From.Mark && a.To.Mark == b.To.Mark || a.From.Mark == b.To.Mark && a.To.Mark == b.From.Mark
}

func noButtonhole(r *run) {
	for _, n := range r.Notions {
		if len(r.facts.Holes[n]) > 0 || !strings.Contains(lower(n.ID+" "+n.Name), "button") {
			continue
		}
		for _, a := range r.facts.OfNotion(n) {
			if a.Op.Verb == "sew on" {
				r.report(a.Cond, at(a.Op.Span, "no buttonhole for it", fmt.Sprintf("%s is sewn on, and no buttonhole takes it.", n.Name), fmt.Sprintf("Add `buttonhole 1 on EDGE for %s`; for a button that only decorates, name the notion otherwise.", n.ID)))
				break
			}
		}
	}
}

// bastedElsewhere compares where a part is basted with the seams that take it.
func bastedElsewhere(r *run) {
	for op := range r.opsOf("baste") {
		p := op.Phrase("to")
		if p == nil {
			continue
		}
		for _, o := range op.Objects {
			o.Each(func(t *model.Target) {
				for _, to := range p.Targets {
					to.Each(func(a *model.Target) {
						takes, fits := false, false
						for _, s := range r.Seams {
							if !takenBy(s, t) {
								continue
							}
							takes = true
							fits = fits || len(s.Copies) == 0 // it is not known what it joins
							for _, u := range a.Uses {
								fits = fits || usesEdge(s, u)
							}
						}
						if takes && !fits && len(a.Uses) > 0 {
							r.report(r.Space.And(op.Cond, a.Cond), at(a.Span, "another place", fmt.Sprintf("%s is basted to %s, and the seam that takes it is elsewhere.", Upper(t.Describe()), a.Describe()),
								"Baste it to the edge that the seam takes it with."))
						}
					})
				}
			})
		}
	}
}

// takenBy reports whether a seam takes a target, sewn or caught.
func takenBy(s *model.Seam, t *model.Target) bool {
	for _, c := range s.Catching {
		found := false
		c.Target.Each(func(x *model.Target) {
			found = found || x.Path == t.Path || x.Notion != nil && x.Notion == t.Notion && x.NotionBit == t.NotionBit
		})
		if found {
			return true
		}
	}
	for _, u := range t.Uses {
		if usesEdge(s, u) {
			return true
		}
	}
	return false
}

func usesEdge(s *model.Seam, u *model.EdgeUse) bool {
	for _, v := range s.Uses() {
		if *v == *u || v.Edge == u.Edge && v.Instance == u.Instance && (v.Side == u.Side || v.Side == model.Neither || u.Side == model.Neither) {
			return true
		}
	}
	return false
}
