package pdf

import (
	"errors"
	"time"

	"seamwarden/compiler/booklet"
)

// Options say how a booklet is printed.
type Options struct {
	Paper Paper
	Date  time.Time // written into the file as its date; zero is a fixed date
}

// Result is a printed booklet.
type Result struct {
	Bytes         []byte
	Pages         int
	MissingGlyphs []rune // characters that no font has, in order; a box stands in their place
}

// fixedDate stands in a file when the caller gives no date, so that the same
// booklet always gives the same bytes.
var fixedDate = time.Date(2000, time.January, 1, 0, 0, 0, 0, time.UTC)

// Render sets the booklet on pages and writes them as a PDF file. It fails on a
// block or a kind of text that print does not know, and on an unknown paper.
func Render(b *booklet.Booklet, o Options) (Result, error) {
	d, err := layOut(b, o.Paper)
	if err != nil {
		return Result{}, err
	}
	if o.Date.IsZero() {
		o.Date = fixedDate
	}
	c := newWriter(d.sheet, describe(b), o.Date)
	draw(d, c)
	file, err := c.finish()
	if err != nil {
		return Result{}, err
	}
	return Result{Bytes: file, Pages: len(d.pages), MissingGlyphs: d.missing}, nil
}

// document is a booklet laid out: what is to be drawn, and where.
type document struct {
	sheet   sheet
	pages   []page
	outline []entry
	places  map[string]place // by id
	missing []rune
}

// layOut does all of the work except drawing.
func layOut(b *booklet.Booklet, p Paper) (*document, error) {
	if b == nil {
		return nil, errors.New("there is no booklet to print")
	}
	sh, err := sheetFor(p)
	if err != nil {
		return nil, err
	}
	l, err := newLayouter(b, sh)
	if err != nil {
		return nil, err
	}
	flow, err := l.booklet(b)
	if err != nil {
		return nil, err
	}
	d := &document{sheet: sh, pages: paginate(flow, sh.bodyHeight()), outline: l.outline}
	l.finish(d, b)
	d.missing = l.set.missingRunes()
	return d, nil
}
