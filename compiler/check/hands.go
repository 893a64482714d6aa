package check

import (
	"fmt"

	"seamwarden/compiler/assembly"
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "cut-as-its-mirror-image", Severity: finding.Error, Category: "hands", whole: true, ahead: 4, run: mirrorImage,
		Purpose: "A piece is cut with the side up that makes it the mirror image of what its seams need.",
		Why:     "Two edges that are sewn right sides together run opposite ways. A piece that was cut with the wrong side up has its ends the wrong way round, and no turning over helps."})
}

func mirrorImage(r *run) {
	clashes, _, unknown := assembly.Hands(r.Pattern)
	for _, c := range clashes {
		if c.Cut != nil && c.Cut.Lay.Mirrored {
			side, other := "right", "left"
			if c.Cut.Piece.DrawnLeft {
				side, other = other, side
			}
			f := at(c.Cut.Piece.Span, "drawn as "+side, fmt.Sprintf("%s is drawn as the %s one, and its seams need the printed side to be the %s one.", Upper(the(c.Cut.Piece.Name)), side, other),
				fmt.Sprintf("Say `drawn as %s`, or look at the order of its edges: they are listed clockwise as drawn.", other))
			if c.Seam != nil {
				f = also(f, c.Seam.Span, "this seam needs it")
			}
			r.report(c.Cond, f)
			continue
		}
		if c.Cut != nil {
			say := "wrong side up"
			if c.Cut.Lay.Up == model.FaceDown {
				say = "right side up"
			}
			f := at(c.Cut.Span, "comes out as the mirror image", fmt.Sprintf("%s is cut with the wrong side up for what it is sewn to.", Upper(the(c.Cut.Piece.Name))),
				fmt.Sprintf("Cut it `%s`.", say))
			if c.Seam != nil {
				f = also(f, c.Seam.Span, "this seam needs the other one")
			}
			r.report(c.Cond, f)
			r.tellPiece(c.Cut.Piece, c.Cond)
			continue
		}
		if c.Seam == nil {
			continue
		}
		r.tell(c.Seam, c.Cond)
		f := at(c.Seam.Span, "the two do not fit", fmt.Sprintf("%s joins pieces whose hands do not fit: one of them is the mirror image of what is needed.", Upper(seamName(c.Seam))),
			"Look at which side of each piece is up when it is cut, at `drawn as`, and at `worn face in`.")
		for _, u := range c.Seam.Uses() {
			if sp := u.Instance.Cut.Span; len(f.Related) < 3 {
				f = also(f, sp, the(u.Instance.Piece.Name)+" is cut here")
			}
		}
		r.report(c.Cond, f)
	}
	for _, s := range unknown {
		if r.Space.And(s.Cond, r.Valid) != condition.False {
			r.out = append(r.out, unchecked(model.Unchecked{What: "whether the two edges of " + seamName(s) + " run the right way (nothing tells its ends apart)", Span: s.Span}))
		}
	}
}

// unclashed leaves out of a clash the garments in which something else is
// reported about its seam or the pieces in it.
func (r *run) unclashed(c assembly.Clash) condition.Cond {
	if c.Seam == nil {
		return c.Cond
	}
	bad := r.unsaid(c.Seam, c.Cond)
	for _, u := range c.Seam.Uses() {
		bad = r.unsaid(u.Instance.Piece, bad)
	}
	if c.Cut == nil {
		return bad
	}
	for _, s := range r.Seams {
		if joinsPiece(s, c.Cut.Piece) {
			bad = r.unsaid(s, bad)
		}
	}
	return bad
}

// tellPiece notes that a piece is reported, and with it the seams that it is in.
func (r *run) tellPiece(p *model.Piece, bad condition.Cond) {
	r.tell(p, bad)
	for _, s := range r.Seams {
		if joinsPiece(s, p) {
			r.tell(s, bad)
		}
	}
}
