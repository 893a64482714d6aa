package pdf

import (
	"fmt"

	"seamwarden/compiler/booklet"
	"seamwarden/compiler/figure"
)

// The fixture is an invented pattern; its numbers mean nothing.

func txt(s string) []booklet.Inline { return []booklet.Inline{booklet.Text(s)} }

func para(in ...booklet.Inline) *booklet.Paragraph { return &booklet.Paragraph{Text: in} }

func cellsOf(texts ...string) []booklet.Cell {
	var cs []booklet.Cell
	for _, t := range texts {
		cs = append(cs, booklet.Cell{Text: txt(t)})
	}
	return cs
}

var (
	narrowSeam = booklet.Measure{Imperial: "³⁄₁₆ in", Metric: "0.5 cm"}
	seam       = booklet.Measure{Imperial: "⅝ in", Metric: "1.6 cm"}
	hem        = booklet.Measure{Imperial: "1¼ in", Metric: "3.2 cm", MetricFirst: true}
)

func pt(x, y float64) figure.Point { return figure.Point{X: x, Y: y} }

func move(x, y float64) figure.Command   { return command('M', x, y) }
func lineTo(x, y float64) figure.Command { return command('L', x, y) }

func curveTo(a, b, c figure.Point) figure.Command {
	return figure.Command{Op: 'C', Points: [3]figure.Point{a, b, c}}
}

var closed = figure.Command{Op: 'Z'}

// skirtArt is a wrap skirt seen from the front, flare units wider at the hem.
func skirtArt(flare float64) *figure.Drawing {
	outline := []figure.Command{move(60, 10), lineTo(140, 10),
		curveTo(pt(150, 60), pt(160, 120), pt(160+flare, 230)),
		curveTo(pt(130, 242), pt(70, 242), pt(40-flare, 230)),
		curveTo(pt(40, 120), pt(50, 60), pt(60, 10)), closed}
	return &figure.Drawing{Width: 200, Height: 250, Items: []figure.Item{
		&figure.Path{Commands: outline, Fill: figure.Paint{R: 255, G: 255, B: 255}, Stroke: black, Width: 1.6, Join: "round"},
		&figure.Path{Commands: []figure.Command{move(58, 24), lineTo(142, 24)}, Fill: none, Stroke: black, Width: 1},
		&figure.Path{Commands: []figure.Command{move(118, 24), curveTo(pt(122, 90), pt(126, 160), pt(128+flare/2, 238))},
			Fill: none, Stroke: black, Width: 1},
		&figure.Path{Commands: []figure.Command{move(38-flare, 222), curveTo(pt(70, 234), pt(130, 234), pt(162+flare, 222))},
			Fill: none, Stroke: black, Width: 0.8, Dash: []float64{4, 3}},
	}}
}

// seamArt shows two layers, the wrong side shaded, with labels and a ring that is
// hollow by the even-odd rule.
func seamArt(natural float64) *figure.Drawing {
	ring := []figure.Command{move(20, 20), lineTo(40, 20), lineTo(40, 40), lineTo(20, 40), closed,
		move(25, 25), lineTo(35, 25), lineTo(35, 35), lineTo(25, 35), closed}
	grey := figure.Paint{R: 205, G: 205, B: 205}
	return &figure.Drawing{Width: 160, Height: 120, NaturalWidth: natural, Items: []figure.Item{
		&figure.Path{Commands: []figure.Command{move(10, 10), lineTo(150, 10), lineTo(150, 110), lineTo(10, 110), closed},
			Fill: grey, Stroke: black, Width: 1.2},
		&figure.Path{Commands: ring, EvenOdd: true, Fill: black, Stroke: none},
		&figure.Path{Commands: []figure.Command{move(135, 10), lineTo(135, 110)}, Fill: none, Stroke: black, Width: 1.2, Dash: []float64{5, 3}, Cap: "round"},
		&figure.Label{At: pt(75, 65), Text: "wrong side", Size: 12, Anchor: "middle"},
		&figure.Label{At: pt(145, 100), Text: "⅝ in", Size: 10, Anchor: "start", Angle: -90, Bold: true},
	}}
}

func fig(id, caption string, art *figure.Drawing) *booklet.Figure {
	return &booklet.Figure{ID: id, Caption: txt(caption), Art: art}
}

var labels = booklet.Labels{
	Contents: "Contents", Continued: "continued", Figure: "Figure", Step: "Step", Edition: "Edition",
	Page: "Page", PageOf: "of", BackToTop: "Back to top", Views: "Views",
}

func fixture() *booklet.Booklet {
	return &booklet.Booklet{
		Lang: "en", Title: "Marlow wrap skirt", Maker: "Quillfen", Edition: "Second test edition",
		Scope: "Views A and B, sizes 6 to 28", Labels: labels,
		Cover: booklet.Cover{
			About: txt("A skirt that wraps over at the front and ties at the side. View A is straight; view B flares towards the hem and has pockets in the side seams."),
			Facts: []booklet.Fact{
				{Name: "Level", Value: txt("You have sewn a skirt before")},
				{Name: "Fabric", Value: txt("Linen, cotton twill, light denim")},
			},
			Views: []booklet.CoverView{
				{ID: "view-a", Name: "View A", Title: "Straight wrap", Figure: fig("art-a", "View A", skirtArt(0))},
				{ID: "view-b", Name: "View B", Title: "Flared wrap with side pockets", Figure: fig("art-b", "View B", skirtArt(30))},
				{ID: "view-c", Name: "View C", Title: "No art yet"},
			},
		},
		Chapters: []booklet.Chapter{before(), sizes(), cutting(), sewing(), words()},
	}
}

func before() booklet.Chapter {
	return booklet.Chapter{ID: "before", Title: "Before you start", Blocks: []booklet.Block{
		para(booklet.Text("Read "), booklet.Strong{Text: txt("all steps")}, booklet.Text(" of your view first. Seams are "), seam,
			booklet.Text(" wide unless a step says otherwise; the facing is "), narrowSeam, booklet.Text(", the hem "), hem,
			booklet.Text(". Fractions such as ½, ⅓, ⅛ and ³⁄₁₆, ¹⁰⁄₃₂ or ⅙ are of an inch. See "),
			booklet.Link{To: "words", Text: txt("the words")}, booklet.Text(", or "),
			booklet.Link{To: "step-3", Text: []booklet.Inline{booklet.Emphasis{Text: txt("the pocket step")}}}, booklet.Text(" first."),
			booklet.Break{}, booklet.Text("A new line in the same paragraph, with "),
			booklet.Strong{Text: []booklet.Inline{booklet.Emphasis{Text: txt("both at once")}}}, booklet.Text(".")),
		&booklet.Heading{ID: "cautions", Level: 2, Title: "Cautions"},
		&booklet.Caution{Signal: "Warning", Text: txt("The iron and its steam are hot enough to burn. Keep cords and children away from the board, set the iron on its heel, and let fused pieces cool before you move them.")},
		&booklet.Caution{Signal: "Caution", Text: txt("Take pins out before the needle reaches them.")},
		&booklet.Heading{ID: "how", Level: 2, Title: "How to use this booklet"},
		&booklet.List{Items: [][]booklet.Block{
			{para(txt("Tick the box when a step is done.")...)},
			{para(txt("Dashed lines are stitching.")...), &booklet.List{Ordered: true, Items: [][]booklet.Block{
				{para(txt("Right sides together, unless a step says otherwise.")...)}, {para(txt("Press each seam before you cross it.")...)}}}},
			{},
		}},
		&booklet.Heading{ID: "keys", Level: 3, Title: "Shadings"},
		fig("key", "Grey is the wrong side of the fabric; white is the right side.", seamArt(60)),
		&booklet.Group{When: "View B only", Blocks: []booklet.Block{
			para(txt("Cut the pocket bags from lining if the fabric is thick.")...),
			&booklet.Group{When: "with side pockets", Blocks: []booklet.Block{para(txt("Mark both openings.")...)}}}},
		&booklet.Group{Blocks: []booklet.Block{para(txt("A group for every garment.")...)}},
	}}
}

// sizes holds a chart of 14 columns, which no upright sheet takes in one piece.
func sizes() booklet.Chapter {
	t := &booklet.Table{ID: "chart", Caption: "Body measures", RowHead: true, Columns: []booklet.Column{{Head: txt("Measure")}}}
	for i := range 13 {
		t.Columns = append(t.Columns, booklet.Column{Head: txt(fmt.Sprintf("Size %d", 6+2*i)), Numeric: true})
	}
	for r, name := range []string{"Waist", "Hip", "Back waist to knee"} {
		row := booklet.Row{Cells: cellsOf(name)}
		for i := range 13 {
			row.Cells = append(row.Cells, booklet.Cell{Text: []booklet.Inline{booklet.Measure{
				Imperial: fmt.Sprintf("%d½ in", 24+10*r+i), Metric: fmt.Sprintf("%d.%d cm", 62+25*r+2*i, i%10)}}})
		}
		t.Rows = append(t.Rows, row)
	}
	return booklet.Chapter{ID: "sizes", Title: "Sizes", Blocks: []booklet.Block{
		para(txt("Choose by the hip measure.")...), t,
		&booklet.Table{Columns: []booklet.Column{{Head: txt("Fabric width")}, {Head: txt("Needed"), Numeric: true}},
			Rows: []booklet.Row{{Cells: cellsOf("45 in (115 cm)", "2⅝ yd")}, {Cells: cellsOf("60 in (150 cm)", "1⅞ yd", "one more")}}},
	}}
}

func cutting() booklet.Chapter {
	t := &booklet.Table{ID: "cut", Caption: "Cut from the fabric", Columns: []booklet.Column{
		{Head: txt("Piece")}, {Head: txt("Name")}, {Head: txt("Cut"), Numeric: true}, {Head: txt("How it lies")}}}
	for g := range 3 {
		t.Rows = append(t.Rows, booklet.Row{Group: true, Cells: cellsOf([]string{"Main fabric", "Lining", "Interfacing"}[g])})
		for i := range 9 {
			r := booklet.Row{Tick: true, Cells: cellsOf(fmt.Sprint(10*g+i+1), fmt.Sprintf("Piece name %d-%d", g, i), "2", "mirrored, grain along the long edge, right side up on the second layer")}
			if i%4 == 2 {
				r.When = "View B with side pockets"
			}
			t.Rows = append(t.Rows, r)
		}
	}
	return booklet.Chapter{ID: "cutting", Title: "What to cut", Blocks: []booklet.Block{t}}
}

func sewing() booklet.Chapter {
	c := booklet.Chapter{ID: "sewing", Title: "Sewing"}
	for i := range 12 {
		if i%4 == 0 {
			c.Blocks = append(c.Blocks, &booklet.Heading{ID: fmt.Sprintf("part-%d", i/4), Level: 2, Title: []string{"Darts and pockets", "Skirt seams", "Waistband and hem"}[i/4]})
		}
		s := &booklet.Step{ID: fmt.Sprintf("step-%d", i+1), Number: i + 1, Title: fmt.Sprintf("Join the pieces of seam %d", i+1),
			Blocks: []booklet.Block{
				para(booklet.Text("Lay the front on the back, right sides together. Pin from the waist down. Stitch "), seam, booklet.Text(" from the edge. Back-stitch at both ends.")),
				para(txt("Press the seam open. Finish each edge.")...)}}
		switch i % 4 {
		case 0:
			s.Figures = []*booklet.Figure{fig(fmt.Sprintf("fig-%d", i), "The dart, wrong side.", seamArt(0))}
		case 1:
			s.When = "View B with side pockets"
			s.Figures = []*booklet.Figure{fig("", "Front.", seamArt(45)), fig("", "Back, turned over.", skirtArt(10))}
		case 2:
			s.Blocks = append(s.Blocks, &booklet.Caution{Signal: "Caution", Text: txt("Hot steam.")})
			s.Figures = []*booklet.Figure{fig("", "A wide strip.", &figure.Drawing{Width: 400, Height: 60, Items: []figure.Item{
				&figure.Path{Commands: []figure.Command{move(0, 5), lineTo(400, 5), lineTo(400, 55), lineTo(0, 55), closed}, Fill: none, Stroke: black, Width: 2}}})}
		}
		c.Blocks = append(c.Blocks, s)
	}
	return c
}

func words() booklet.Chapter {
	return booklet.Chapter{ID: "words", Title: "Words", Blocks: []booklet.Block{&booklet.Terms{Items: []booklet.Term{
		{ID: "term-ease", Word: "Ease", Blocks: []booklet.Block{para(txt("The garment's measure less the body's. What you need to move is the wearing ease; the rest is style.")...)}},
		{ID: "term-stay", Word: "Stay-stitching", Blocks: []booklet.Block{para(txt("A line of stitching inside the seam allowance that keeps a curved edge from stretching.")...)}},
		{ID: "term-bare", Word: "Selvedge"},
	}}}}
}
