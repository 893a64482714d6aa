package check

import (
	"fmt"
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

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
		bad = r.Space.Diff(bad, r.overlocked(s))
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
