package check

import (
	"fmt"

	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

// glueSide compares the hands of a piece and its interfacing: faces alike, so
// the hands must be the same.
func glueSide(r *run) {
	for _, p := range r.Pieces {
		if p.Symmetric {
			continue
		}
		for _, in := range p.Cuts {
			if !in.Material.Fusible {
				continue
			}
			for _, cloth := range p.Cuts {
				if cloth.Material.Interfacing || fits(cloth, in) {
					continue
				}
				r.report(r.unsaid(p, r.Space.And(in.Cond, cloth.Cond)), wrongGlue(p, cloth, in))
			}
		}
	}
}

// fits reports whether every interfacing finds a cloth of its own hand, or every
// cloth an interfacing if there are more of these. What may have either hand fits
// all; copies that are cut alike are all of one hand, whichever it is.
func fits(cloth, in *model.Cut) bool {
	want := min(len(cloth.Instances), len(in.Instances))
	for _, a := range countHands(in) {
		for _, b := range countHands(cloth) {
			if a.pairs(b) >= want {
				return true
			}
		}
	}
	return false
}

// hands counts the cut parts of each hand.
type hands struct{ plus, minus, either int }

// pairs tells how many can be laid on one another, each on one of its own hand.
func (a hands) pairs(b hands) int {
	plus, minus := min(a.plus, b.plus), min(a.minus, b.minus)
	restA := a.plus + a.minus - plus - minus
	restB := b.plus + b.minus - plus - minus
	onB := min(a.either, restB) // those that may have either hand take what is left
	onA := min(b.either, restA)
	return plus + minus + onA + onB + min(a.either-onB, b.either-onA)
}

// countHands gives the hands that a cut may come out with.
func countHands(c *model.Cut) []hands {
	var h hands
	for _, i := range c.Instances {
		switch {
		case i.Hand > 0:
			h.plus++
		case i.Hand < 0:
			h.minus++
		default:
			h.either++
		}
	}
	if c.Lay.Alike && h.either > 1 && !c.Piece.Symmetric && !c.Lay.Fold && !c.Material.NoRightSide {
		return []hands{{plus: h.either}, {minus: h.either}}
	}
	return []hands{h}
}

func wrongGlue(p *model.Piece, cloth, in *model.Cut) finding.Finding {
	f := at(in.Span, "comes out as the mirror image", fmt.Sprintf("The interfacing of %s does not fit it: it is cut as its mirror image.", the(p.Name)), "")
	switch {
	case cloth.Lay.Mirrored && in.Count > 1:
		f.Headline = fmt.Sprintf("The interfacing of %s is cut all alike, and the cloth as a left and a right one.", the(p.Name))
		f.Place.Label = "these are all of one hand"
		f.Help = "Cut the interfacing `mirrored` as well."
	case cloth.Lay.Up == model.FaceUp:
		f.Help = "The cloth is cut right side up, so cut the interfacing `glue side up`."
		f = otherGlueSide(f, cloth, in, "up")
	case cloth.Lay.Up == model.FaceDown:
		f.Help = "The cloth is cut wrong side up, so cut the interfacing `glue side down`."
		f = otherGlueSide(f, cloth, in, "down")
	default:
		f.Help = "Cut the interfacing as the cloth is cut: `mirrored` for a pair, `alike` for copies."
	}
	return also(f, cloth.Span, "the cloth is cut so")
}

// otherGlueSide adds the edit that turns a single interfacing over, where the
// pattern itself says how its cloth lies.
func otherGlueSide(f finding.Finding, cloth, in *model.Cut, side string) finding.Finding {
	if at := in.UpSpan; at.Start.Line > 0 && !cloth.Deduced && in.Count == 1 && cloth.Count == 1 {
		f.Edits = []finding.Edit{{Span: at, New: side, Certain: true, Title: "Write glue side " + side}}
	}
	return f
}
