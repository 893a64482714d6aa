package pdf

import "errors"

// Paper is the size of the sheet; it is always used upright.
type Paper int

// The papers.
const (
	A4     Paper = iota // ISO 216, 210 × 297 mm
	Letter              // 8½ × 11 in
)

// sheet is a page's size and the margins round its body.
type sheet struct {
	width, height            float64
	left, right, top, bottom float64
	headLine, footLine       float64 // baselines of the running head and foot
}

func sheetFor(p Paper) (sheet, error) {
	s := sheet{left: 57, right: 57, top: 68, bottom: 62}
	switch p {
	case A4:
		s.width, s.height = 595.28, 841.89
	case Letter:
		s.width, s.height = 612, 792
	default:
		return s, errors.New("unknown paper: print knows A4 and Letter")
	}
	s.headLine, s.footLine = 44, s.height-34
	return s, nil
}

func (s sheet) bodyHeight() float64 { return s.height - s.top - s.bottom }

func (s sheet) body() column { return column{s.left, s.width - s.left - s.right} }

// column is the strip in which blocks are set.
type column struct{ x, width float64 }

// narrowest is the width below which no column is made narrower, however deep
// lists and groups are nested.
const narrowest = 90

// inset takes a strip off the left of the column, unless too little would be left.
func (c column) inset(by float64) column {
	if c.width-by < narrowest {
		return c
	}
	return column{c.x + by, c.width - by}
}

// upTo makes the column no wider than width.
func (c column) upTo(width float64) column {
	return column{c.x, min(c.width, width)}
}

// rect is an area of a page.
type rect struct{ x, y, w, h float64 }

func (r rect) shift(dx, dy float64) rect { return rect{r.x + dx, r.y + dy, r.w, r.h} }

// cover gives the smallest area that holds both.
func (r rect) cover(o rect) rect {
	x0, y0 := min(r.x, o.x), min(r.y, o.y)
	x1, y1 := max(r.x+r.w, o.x+o.w), max(r.y+r.h, o.y+o.h)
	return rect{x0, y0, x1 - x0, y1 - y0}
}
