package pdf

import (
	"seamwarden/compiler/booklet"
	"seamwarden/compiler/figure"
)

// canvas is all that drawing needs of a writer of PDF files. Lengths are points, y
// down from the top of the page.
type canvas interface {
	// page begins a page; all that follows stands on it.
	page()
	// text draws a run from (x, y), the left end of its baseline, turned clockwise.
	text(x, y, angle float64, r run, ink figure.Paint)
	// path draws a shape whose coordinates count from (x, y), nothing of it outside
	// clip, which counts from there too; the zero rect clips nothing.
	path(x, y float64, p *figure.Path, clip rect)
	// link makes an area lead to a place.
	link(area rect, to place)
	// bookmark adds a line to the outline; level 0 is the highest, and no level
	// is more than one below the level before it.
	bookmark(title string, level int, y float64)
	// finish ends the file and gives its bytes.
	finish() ([]byte, error)
}

// about is what a file says of itself.
type about struct {
	lang, title, author, subject string
}

func describe(b *booklet.Booklet) about {
	subject := b.Scope
	if b.Edition != "" {
		if subject != "" {
			subject += " · "
		}
		subject += b.Edition
	}
	return about{lang: b.Lang, title: b.Title, author: b.Maker, subject: subject}
}
