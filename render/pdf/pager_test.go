package pdf

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"seamwarden/compiler/booklet"
)

// randomFlow draws pieces that name themselves by an anchor.
func randomFlow(t *rapid.T) []*piece {
	n := rapid.IntRange(0, 60).Draw(t, "pieces")
	var flow []*piece
	for i := range n {
		flow = append(flow, &piece{
			height:  rapid.Float64Range(1, 90).Draw(t, "height"),
			gap:     rapid.Float64Range(0, 20).Draw(t, "gap"),
			below:   rapid.Float64Range(0, 20).Draw(t, "below"),
			need:    rapid.Float64Range(0, 100).Draw(t, "need"),
			after:   rapid.SampledFrom([]cost{free, free, soft, firm, strong, never}).Draw(t, "after"),
			newPage: rapid.IntRange(0, 15).Draw(t, "new page") == 0,
			anchors: []string{fmt.Sprint(i)},
		})
		if rapid.IntRange(0, 5).Draw(t, "head") == 0 {
			flow[i].head = &piece{height: 10}
		}
	}
	return flow
}

func TestPagesHoldEveryPieceOnceInOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		const height = 200
		flow := randomFlow(t)
		next := 0
		for _, pg := range paginate(flow, height) {
			for k, p := range pg.places {
				if p.id != fmt.Sprint(next) {
					t.Fatalf("piece %s stands where %d should", p.id, next)
				}
				if bottom := p.y + flow[next].height; bottom > height+slack {
					t.Fatalf("piece %d ends at %.1f of %d", next, bottom, height)
				}
				if k > 0 && flow[next].newPage {
					t.Fatalf("piece %d does not begin a page", next)
				}
				next++
			}
		}
		if next != len(flow) {
			t.Fatalf("%d of %d pieces on pages", next, len(flow))
		}
	})
}

// TestPageEndsAtTheCheapestPlace: no page ends where a break costs more than at
// another place on it, unless it had to.
func TestPageEndsAtTheCheapestPlace(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		flow := randomFlow(t)
		i := 0
		for _, pg := range paginate(flow, 200) {
			end := i + len(pg.places)
			if end < len(flow) && !flow[end].newPage {
				for j := i; j < end-1; j++ {
					if flow[j].after < flow[end-1].after {
						t.Fatalf("page ends after piece %d (cost %d), although %d costs %d", end-1, flow[end-1].after, j, flow[j].after)
					}
				}
			}
			i = end
		}
	})
}

func TestHeadingStandsWithWhatItHeads(t *testing.T) {
	// Whatever stands before it, a heading and its step come on the same page.
	for lines := range 60 {
		b := chapterOf()
		for range lines {
			b.Chapters[0].Blocks = append(b.Chapters[0].Blocks, para(txt("one line")...))
		}
		b.Chapters[0].Blocks = append(b.Chapters[0].Blocks, &booklet.Heading{ID: "h", Level: 2, Title: "Pockets"},
			&booklet.Heading{ID: "h3", Level: 3, Title: "Bags"},
			&booklet.Step{ID: "s", Number: 1, Title: "Join", When: "View B", Blocks: []booklet.Block{
				para(txt(long(22))...), &booklet.Caution{Signal: "Caution", Text: txt(long(9))}, para(txt("last words")...)},
				Figures: []*booklet.Figure{fig("f", "Art", skirtArt(5))}})
		d := mustLayOut(t, b, Letter)
		at := d.places["h"].page
		if d.places["s"].page != at || d.places["h3"].page != at || d.places["f"].page != at || pageOf(d, "words") != at {
			t.Errorf("after %d lines: heading on page %d, step on %d, its end on %d", lines, at, d.places["s"].page, pageOf(d, "words"))
		}
	}
}

// pageOf gives the last page on which a text is drawn.
func pageOf(d *document, text string) int {
	n := 0
	for i, pg := range d.pages {
		for _, m := range pg.items {
			if x, ok := m.(textMark); ok && strings.Contains(string(x.run.text), text) {
				n = i + 1
			}
		}
	}
	return n
}

func TestTableHeadComesAgain(t *testing.T) {
	d := mustLayOut(t, chapterOf(bigTable(3, 200)), A4)
	pages := 0
	for i, pg := range d.pages {
		one := drawn(&document{pages: []page{pg}})
		rows := strings.Count(one, "c2")
		if rows == 0 {
			continue
		}
		pages++
		if strings.Count(one, "Head2") != 1 {
			t.Errorf("page %d has %d rows and %d heads", i+1, rows, strings.Count(one, "Head2"))
		}
		if strings.Contains(one, "Big(continued)") != (pages > 1) {
			t.Errorf("page %d, the %d. of the table: wrong caption", i+1, pages)
		}
	}
	if pages < 4 {
		t.Errorf("200 rows on %d pages", pages)
	}
}

func TestGroupRowStandsWithTheNext(t *testing.T) {
	for lines := range 50 {
		tab := &booklet.Table{Columns: []booklet.Column{{Head: txt("Head")}}}
		for range lines {
			tab.Rows = append(tab.Rows, booklet.Row{Cells: cellsOf("row")})
		}
		tab.Rows = append(tab.Rows, booklet.Row{Group: true, Cells: cellsOf("Lining")}, booklet.Row{Cells: cellsOf("pocket")})
		d := mustLayOut(t, chapterOf(tab), A4)
		if g, r := pageOf(d, "Lining"), pageOf(d, "pocket"); g != r {
			t.Errorf("after %d rows: group on page %d, its row on %d", lines, g, r)
		}
	}
}
