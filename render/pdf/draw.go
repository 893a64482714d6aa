package pdf

// draw puts a document on a canvas, page by page.
func draw(d *document, c canvas) {
	bookmarks := bookmarksByPage(d)
	for i, pg := range d.pages {
		c.page()
		for _, b := range bookmarks[i+1] {
			c.bookmark(b.title, b.level, b.y)
		}
		for _, m := range pg.items {
			drawMark(c, m, d.places)
		}
	}
}

func drawMark(c canvas, m mark, places map[string]place) {
	switch x := m.(type) {
	case textMark:
		c.text(x.x, x.y, x.angle, x.run, x.ink)
	case pathMark:
		c.path(x.x, x.y, x.path, x.clip)
	case linkMark:
		c.link(x.area, places[x.to])
	}
}

// bookmark is a line of the outline on its page.
type bookmark struct {
	title string
	level int
	y     float64
}

// bookmarksByPage places the chapters and headings. A heading that skips a level
// is raised, for an outline has no gaps.
func bookmarksByPage(d *document) map[int][]bookmark {
	out := map[int][]bookmark{}
	level := -1
	for _, e := range d.outline {
		p, ok := d.places[e.id]
		if !ok || e.title == "" {
			continue
		}
		level = min(e.level, level+1)
		out[p.page] = append(out[p.page], bookmark{e.title, level, p.y})
	}
	return out
}
