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
	register(Rule{ID: "mirror-image-by-its-names", Severity: finding.Advice, Category: "hands",
		Purpose: "The names of the edges beside a seam say that a piece is cut as its mirror image.",
		Why:     whyNames})
}

const whyNames = "Where nothing is sewn at the ends of a seam, equal names of the edges there tell which ends meet. Names may mislead, so this is advice."

// mirrorImage reports what is sure first, then what names alone tell.
func mirrorImage(r *run) {
	x := assembly.Solved(r.Pattern)
	for _, sure := range []bool{true, false} {
		for _, c := range x.Clashes {
			if c.Sure == sure {
				r.clash(c)
			}
		}
	}
	for _, s := range x.Unknown {
		if r.possible(s.Cond) {
			r.out = append(r.out, unchecked(model.Unchecked{What: "whether the two edges of " + seamName(s) + " run the right way (nothing tells its ends apart)", Span: s.Span}))
		}
	}
}

func (r *run) clash(c assembly.Clash) {
	bad := r.unclashed(c)
	word := func(f finding.Finding) finding.Finding {
		if c.Sure {
			return f
		}
		names := finding.Finding{Rule: "mirror-image-by-its-names", Severity: finding.Advice, Why: whyNames}
		names.Headline, names.Place, names.Related, names.Help = f.Headline, f.Place, f.Related, f.Help
		return names
	}
	switch {
	case c.Cut != nil:
		r.report(bad, word(clashOfCut(c)))
		r.tellPiece(c.Cut.Piece, bad)
	case c.Seam != nil:
		r.report(bad, word(clashOfSeam(c)))
		r.tell(c.Seam, bad)
	}
}

// clashOfCut words a clash that turning one piece over would cure.
func clashOfCut(c assembly.Clash) finding.Finding {
	p := c.Cut.Piece
	var f finding.Finding
	if c.Cut.Lay.Mirrored {
		side, other := "right", "left"
		if p.DrawnLeft {
			side, other = other, side
		}
		f = at(p.Span, "drawn as "+side, fmt.Sprintf("%s is drawn as the %s one, and its seams need the printed side to be the %s one.", Upper(the(p.Name)), side, other),
			fmt.Sprintf("Say `drawn as %s`, or look at the order of its edges: they are listed clockwise as drawn.", other))
	} else {
		say := "wrong side up"
		if c.Cut.Lay.Up == model.FaceDown {
			say = "right side up"
		}
		f = at(c.Cut.Span, "comes out as the mirror image", fmt.Sprintf("%s is cut with the wrong side up for what it is sewn to.", Upper(the(p.Name))), fmt.Sprintf("Cut it `%s`; or look at the order of its edges: they are listed clockwise as drawn.", say))
	}
	if c.Seam != nil {
		f = also(f, c.Seam.Span, "this seam needs the other one")
	}
	return f
}

// clashOfSeam words a clash of which nobody can say which piece is wrong.
func clashOfSeam(c assembly.Clash) finding.Finding {
	f := at(c.Seam.Span, "the two do not fit", fmt.Sprintf("%s joins pieces whose hands do not fit: one of them is the mirror image of what is needed.", Upper(seamName(c.Seam))),
		"Look at which side of each piece is up when it is cut, at `drawn as`, and at `worn face in`.")
	for _, u := range c.Seam.Uses() {
		if len(f.Related) < 3 {
			f = also(f, u.Instance.Cut.Span, the(u.Instance.Piece.Name)+" is cut here")
		}
	}
	return f
}

// unclashed leaves out of a clash the garments in which something else is
// reported about its seam or the pieces in it.
func (r *run) unclashed(c assembly.Clash) condition.Cond {
	if c.Seam == nil {
		return c.Cond
	}
	bad := r.unsaid(c.Seam, c.Cond)
	for _, u := range c.Seam.Uses() {
		bad = r.unsaid(edgesOf{u.Instance.Piece}, r.unsaid(u.Instance.Piece, bad))
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
