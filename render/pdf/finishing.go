package pdf

import (
	"fmt"
	"math"
	"strconv"

	"seamwarden/compiler/booklet"
)

// place is where an id is: the page, from 1, and the distance from its top edge.
type place struct {
	page int
	y    float64
}

// finish does what needs the pages to be known: it moves the marks to where they
// stand on the sheet, fills in page numbers, drops links that lead nowhere, and adds
// the running heads and feet.
func (l *layouter) finish(d *document, b *booklet.Booklet) {
	d.places = map[string]place{}
	for i := range d.pages {
		for _, p := range d.pages[i].places {
			if _, taken := d.places[p.id]; !taken {
				d.places[p.id] = place{i + 1, d.sheet.top + p.y}
			}
		}
	}
	for i := range d.pages {
		pg := &d.pages[i]
		items := shiftAll(pg.items, 0, d.sheet.top)
		pg.items = nil
		if i > 0 {
			pg.items = l.edges(b, pg.chapter, i+1, len(d.pages))
		}
		for _, m := range items {
			pg.items = append(pg.items, l.settle(m, d.places)...)
		}
	}
}

// settle gives what stands in place of a mark once the pages are known.
func (l *layouter) settle(m mark, places map[string]place) []mark {
	switch x := m.(type) {
	case linkMark:
		if _, ok := places[x.to]; !ok {
			return nil
		}
	case refMark:
		return l.pageNumber(x, places)
	}
	return []mark{m}
}

func (l *layouter) pageNumber(m refMark, places map[string]place) []mark {
	p, ok := places[m.to]
	if !ok {
		return nil
	}
	runs := l.set.shape(strconv.Itoa(p.page), m.st, "")
	x := m.x - sum(runs)
	from := math.Ceil((m.dotsFrom+5)/4) * 4 // the dots of all entries stand below each other
	var ms []mark
	if from < x-5 {
		ms = append(ms, dotsMark(from, x-5, m.y))
	}
	for _, r := range runs {
		ms = append(ms, textMark{x: x, y: m.y, run: r})
		x += r.width
	}
	return ms
}

// edges sets the running head and the foot of a page.
func (l *layouter) edges(b *booklet.Booklet, chapter string, n, of int) []mark {
	ts := l.th.edge
	c := l.sheet.body()
	head := b.Title
	if head != "" && chapter != "" {
		head += " · "
	}
	head += chapter
	var ms []mark
	if head != "" {
		runs := l.set.fitOneLine(head, ts.style, c.width)
		ms = l.edgeLine(runs, c.x, l.sheet.headLine)
	}
	number := l.set.shape(fmt.Sprintf("%d / %d", n, of), style{family: sans, size: 11}, "")
	w := sum(number)
	ms = append(ms, l.edgeLine(number, c.x+c.width-w, l.sheet.footLine)...)
	edition := l.set.fitOneLine(b.Edition, ts.style, c.width-w-20)
	return append(ms, l.edgeLine(edition, c.x, l.sheet.footLine)...)
}

func (l *layouter) edgeLine(runs []run, x, y float64) []mark {
	var ms []mark
	for _, r := range runs {
		ms = append(ms, textMark{x: x, y: y, run: r})
		x += r.width
	}
	return ms
}
