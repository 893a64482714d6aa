package check

import (
	"fmt"

	"seamwarden/compiler/model"
)

// strangers looks for seams that are pressed toward or stitched on a piece that
// they do not join.
func strangers(r *run) {
	for _, op := range r.Ops() {
		for _, name := range []string{"toward", "on"} {
			p := op.Phrase(name)
			if p == nil || name == "on" && op.Verb != "topstitch" && op.Verb != "understitch" && op.Verb != "edgestitch" {
				continue
			}
			for _, t := range p.Targets {
				if name == "toward" && bodyWays[t.Path] {
					continue // a side of the body, not the piece of that name
				}
				if t.Piece != nil && t.Kind == model.ToPiece && len(t.Instances) > 0 {
					r.stranger(op, t)
				}
			}
		}
	}
}

// bodyWays are the names of pieces that are words for a direction as well.
var bodyWays = map[string]bool{"back": true, "front": true, "side": true, "body": true, "hem": true, "waist": true, "neck": true}

// stranger compares the seams of one operation with the piece that it names.
func (r *run) stranger(op *model.Op, t *model.Target) {
	var seams []*model.Seam
	for _, o := range op.Objects {
		if o.Seam != nil && len(o.Seam.Copies) > 0 && !joinsPiece(o.Seam, t.Piece) {
			seams = append(seams, o.Seam)
		}
	}
	if len(seams) == 0 {
		return
	}
	do := "do"
	if len(seams) == 1 {
		do = "does"
	}
	bad := r.Space.And(op.Cond, t.Cond)
	f := at(t.Span, "not in this seam", fmt.Sprintf("%s %s not join %s.", Upper(theSeams(seams)), do, the(t.Piece.Name)), "Name one of the pieces that are joined.")
	for _, s := range seams {
		f = also(f, s.Span, "declared here")
		r.tell(s, bad)
	}
	r.report(bad, f)
}

func joinsPiece(s *model.Seam, p *model.Piece) bool {
	for _, u := range s.Uses() {
		if u.Instance.Piece == p {
			return true
		}
	}
	return false
}
