package pdf

import (
	"math"

	"seamwarden/compiler/booklet"
	"seamwarden/compiler/figure"
)

// figure sets a figure on its own: the art and, below it, the caption.
func (l *layouter) figure(f *booklet.Figure, c column) ([]*piece, error) {
	caption, err := l.paragraph(f.Caption, l.th.caption, c)
	if err != nil {
		return nil, err
	}
	var ps []*piece
	if drawable(f.Art) {
		limit := l.tallest() - 60
		if f.Art.NaturalWidth <= 0 {
			limit = min(limit, l.sheet.bodyHeight()*0.4)
		}
		scale := scaleFor(f.Art, c.width, limit)
		ps = append(ps, &piece{
			height: f.Art.Height * scale,
			marks:  shiftAll(l.artMarks(f.Art, scale), c.x, 0),
			after:  never,
		})
	}
	if len(caption) > 0 {
		caption[0].gap = captionGap
	}
	ps = append(ps, caption...)
	if len(ps) == 0 {
		return anchorPiece(f.ID), nil
	}
	ps[len(ps)-1].after = free
	space(ps, l.th.blockGap, l.th.blockGap)
	anchor(ps, f.ID)
	return ps, nil
}

const captionGap = 4

// figureMarks sets a figure in a column, from y 0 down, as one strip.
func (l *layouter) figureMarks(f *booklet.Figure, c column, tallest float64) ([]mark, float64, error) {
	scale := scaleFor(f.Art, c.width, tallest)
	marks := shiftAll(l.artMarks(f.Art, scale), c.x, 0)
	h := f.Art.Height * scale
	lines, err := l.lines(f.Caption, l.th.caption, c.width)
	if err != nil {
		return nil, 0, err
	}
	if len(lines) > 0 {
		h += captionGap
		marks = append(marks, l.blockMarks(lines, l.th.caption, c, h)...)
		h += float64(len(lines)) * l.th.caption.leading
	}
	return marks, h, nil
}

// drawable tells whether there is art that has a size.
func drawable(d *figure.Drawing) bool {
	return d != nil && sound(d.Width) && sound(d.Height)
}

func sound(v float64) bool { return v > 0 && !math.IsInf(v, 1) }

// natural gives the width in points at which art is meant to be printed, or 0.
func natural(d *figure.Drawing) float64 {
	if !sound(d.NaturalWidth) {
		return 0
	}
	return d.NaturalWidth * 72 / 25.4
}

// scaleFor gives the points for one drawing unit: as large as was meant, if that
// is said, but no wider and no higher than there is room.
func scaleFor(d *figure.Drawing, width, height float64) float64 {
	s := min(width/d.Width, height/d.Height)
	if n := natural(d); n > 0 {
		s = min(s, n/d.Width)
	}
	return s
}

// fitsBeside tells whether a figure can still be read in a column of the width:
// it is not shrunk to less than two thirds of its size, nor is it a wide strip.
func fitsBeside(f *booklet.Figure, width float64) bool {
	d := f.Art
	if !drawable(d) || d.Width > 2.4*d.Height {
		return false
	}
	return natural(d) <= width*1.5
}
