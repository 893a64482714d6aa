package pdf

import "slices"

// page is a page of the body: what is on it, placed from the body's top.
type page struct {
	chapter string
	items   []mark
	places  []placed // the ids that lead here
}

// placed is an id and its distance from the top.
type placed struct {
	id string
	y  float64
}

// paginate cuts the flow into pages of a height. A booklet has one page at least.
func paginate(flow []*piece, height float64) []page {
	var pages []page
	for i := 0; i < len(flow); {
		end, forced := furthest(flow, i, height)
		if !forced {
			end = bestBreak(flow, i, end)
		}
		pages = append(pages, compose(flow[i:end]))
		i = end
	}
	if len(pages) == 0 {
		pages = []page{{}}
	}
	return pages
}

// furthest gives the end of what fits on the page that begins at i: one piece at
// least. Forced tells that the page must end there.
func furthest(flow []*piece, i int, height float64) (end int, forced bool) {
	y := topOf(flow[i])
	for j := i; j < len(flow); j++ {
		p := flow[j]
		if j > i {
			if p.newPage {
				return j, true
			}
			y += p.gapAfter(flow[j-1])
			if !p.spacer() && y+max(p.height, p.need) > height+slack {
				return j, false
			}
		}
		y += p.height
	}
	return len(flow), true
}

// topOf gives the height of the head that is repeated above a piece at a page's top.
func topOf(p *piece) float64 {
	if p.head == nil {
		return 0
	}
	return p.head.height
}

// bestBreak gives the cheapest place to end a page, the last of equals.
func bestBreak(flow []*piece, i, end int) int {
	best := end
	for j := end - 1; j > i; j-- {
		if flow[j-1].after < flow[best-1].after {
			best = j
		}
	}
	return best
}

// compose places pieces on a page.
func compose(ps []*piece) page {
	pg := page{chapter: ps[0].chapter}
	y := 0.0
	if h := ps[0].head; h != nil {
		pg.items = append(pg.items, h.marks...)
		y = h.height
	}
	var open []extentOf
	for i, p := range ps {
		if i > 0 {
			y += p.gapAfter(ps[i-1])
		}
		pg.items = append(pg.items, shiftAll(p.marks, 0, y)...)
		for _, id := range p.anchors {
			pg.places = append(pg.places, placed{id, y})
		}
		open = grow(open, p, y)
		y += p.height
	}
	for _, e := range open {
		pg.items = append(pg.items, e.frame.mark(e.top, e.bottom, e.hasFirst, e.hasLast))
	}
	return pg
}

// extentOf is what a frame has to go round on one page.
type extentOf struct {
	frame             *frame
	top, bottom       float64
	hasFirst, hasLast bool
}

// grow lengthens the frames round a piece that stands at y.
func grow(open []extentOf, p *piece, y float64) []extentOf {
	for _, f := range p.frames {
		i := slices.IndexFunc(open, func(e extentOf) bool { return e.frame == f })
		if i < 0 {
			i = len(open)
			open = append(open, extentOf{frame: f, top: y})
		}
		e := &open[i]
		e.bottom = y + p.height
		e.hasFirst = e.hasFirst || p == f.first
		e.hasLast = e.hasLast || p == f.last
	}
	return open
}
