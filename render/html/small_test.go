package html

import (
	"strings"
	"testing"

	"seamwarden/compiler/booklet"
	"seamwarden/compiler/figure"
)

// TestDrawingsInATable: a drawing in a cell is an image with a name and a description for
// whoever listens to the page, and its id stands once.
func TestDrawingsInATable(t *testing.T) {
	art := &figure.Drawing{Width: 100, Height: 50, NaturalWidth: 20, Title: "Piece 3, over front", Desc: "Edges, clockwise: waist, hem."}
	art.Items = append(art.Items, &figure.Path{Stroke: figure.Paint{}, Fill: figure.Paint{None: true}, Width: 1, Commands: []figure.Command{{Op: 'M'}, {Op: 'L', Points: [3]figure.Point{{X: 9, Y: 9}}}}})
	b := &booklet.Booklet{Lang: "en", Title: "Skirt", Labels: booklet.Labels{Contents: "Contents", BackToTop: "Top", Step: "Step", Figure: "Figure"}}
	cell := func(id string) booklet.Cell {
		return booklet.Cell{Figures: []*booklet.Figure{{ID: id, Art: art}}}
	}
	text := booklet.Cell{Text: []booklet.Inline{booklet.Text("Over front")}}
	table := &booklet.Table{ID: "cutting", Columns: make([]booklet.Column, 2), RowHead: true, Rows: []booklet.Row{{Cells: []booklet.Cell{text, cell("shape-a")}}, {Cells: []booklet.Cell{text, cell("shape-b")}}}}
	b.Chapters = []booklet.Chapter{{ID: "cut", Title: "What to cut", Blocks: []booklet.Block{table}}}
	out, err := Render(b)
	if err != nil {
		t.Fatal(err)
	}
	s := string(out)
	for _, want := range []string{`role="img"`, `>Piece 3, over front</title>`, `>Edges, clockwise: waist, hem.</desc>`, `width="20mm"`, `class="shapes"`} {
		if n := strings.Count(s, want); n < 2 {
			t.Errorf("%q stands %d times", want, n)
		}
	}
	table.Rows[1].Cells[1] = cell("shape-a")
	if _, err := Render(b); err == nil {
		t.Error("an id that stands twice is taken")
	}
}
