package html

import (
	"seamwarden/compiler/booklet"
	"seamwarden/compiler/figure"
)

// hostile is text that would do harm, or break the page, if it were taken for
// markup, for a style or for the end of either.
var hostile = []string{
	`<script>alert("x")</script>`,
	`</style></title></svg></table><img src=x onerror=alert(1)>`,
	`"quotes" 'single' & ampersand &lt; &amp;lt; &#60;`,
	`<![CDATA[ ]]> <!-- --> --> <?php ?>`,
	`{{.Title}} {{template "page"}} javascript:alert(1)`,
	"thread 🧵 and ✂️ and 👩🏽‍🎨",
	"שלום עולם – مرحبا, \u202eback\u202c",
	`\"; } @import url(x); body{display:none} /*`,
}

// hostileUnit is short, because a length is never broken over two lines.
const hostileUnit = `<b>"&'</b>`

func text(s string) []booklet.Inline { return []booklet.Inline{booklet.Text(s)} }

func para(in ...booklet.Inline) *booklet.Paragraph { return &booklet.Paragraph{Text: in} }

func cell(in ...booklet.Inline) booklet.Cell { return booklet.Cell{Text: in} }

func words(s string) booklet.Cell { return cell(booklet.Text(s)) }

var (
	seam   = booklet.Measure{Imperial: "⅝\u00a0in", Metric: "1.6\u00a0cm"}
	narrow = booklet.Measure{Imperial: "⅜\u00a0in", Metric: "1\u00a0cm", MetricFirst: true}
)

// fixture is an invented wrap skirt with every kind of block and of text.
func fixture() *booklet.Booklet {
	return &booklet.Booklet{
		Lang: "en", Title: "Marrow Wrap Skirt", Maker: "Quillfen", Edition: "1.2",
		Scope: "View B, with side pockets",
		Cover: fixtureCover(),
		Labels: booklet.Labels{
			Contents: "Contents", Continued: "continued", Figure: "Figure", Step: "Step", Edition: "Edition",
			Page: "Page", PageOf: "of", BackToTop: "Back to top", Views: "Views",
		},
		Chapters: []booklet.Chapter{
			{ID: "before", Title: "Before you start", Blocks: beforeBlocks()},
			{ID: "sizes", Title: "Sizes", Blocks: []booklet.Block{sizeTable()}},
			{ID: "cut", Title: "What to cut", Blocks: []booklet.Block{
				para(booklet.Text("Tick each piece once it is cut.")), cutTable()}},
			{ID: "sew", Title: "Sewing", Blocks: sewBlocks()},
			{ID: "words", Title: "Words", Blocks: []booklet.Block{wordList()}},
			{ID: "odd", Title: "Odd text " + hostile[0], Blocks: hostileBlocks()},
		},
	}
}

func fixtureCover() booklet.Cover {
	return booklet.Cover{
		About: []booklet.Inline{booklet.Text("A skirt that wraps once and a half, ties at the side and has room for a "),
			booklet.Emphasis{Text: text("notebook")}, booklet.Text(" in its pocket.")},
		Facts: []booklet.Fact{
			{Name: "Level", Value: text("Some practice: you have put in a pocket before")},
			{Name: "Sizes", Value: text("6 to 24")},
			{Name: "Fabric", Value: []booklet.Inline{booklet.Text("Medium linen, "), booklet.Measure{Imperial: "2 ⅞\u00a0yd", Metric: "2.6\u00a0m"}}},
		},
		Views: []booklet.CoverView{
			{ID: "view-a", Name: "View A", Title: "Straight wrap", Figure: &booklet.Figure{ID: "art-view-a",
				Caption: text("View A from the front"), Art: skirtArt(false)}},
			{ID: "view-b", Name: "View B", Title: "Flared wrap with side pockets", Figure: &booklet.Figure{ID: "art-view-b",
				Caption: text("View B from the front, with the pocket opening at the side"), Art: skirtArt(true)}},
		},
	}
}

func beforeBlocks() []booklet.Block {
	return []booklet.Block{
		para(booklet.Text("Read a step to its end before you sew it. Seam allowance is "), seam,
			booklet.Text(" unless a step says "), narrow, booklet.Text("."), booklet.Break{}, booklet.Text("Words in "),
			booklet.Link{To: "term-stay", Text: text("underlined type")}, booklet.Text(" are explained.")),
		&booklet.Heading{ID: "shadings", Level: 2, Title: "Shadings in the figures"},
		&booklet.List{Items: [][]booklet.Block{
			{para(booklet.Strong{Text: text("Plain")}, booklet.Text(": right side of the fabric"))},
			{para(booklet.Strong{Text: text("Grey")}, booklet.Text(": wrong side"))},
			{para(booklet.Text("Two things at once:")), &booklet.List{Ordered: true, Items: [][]booklet.Block{
				{para(booklet.Text("dots are interfacing"))}, {para(booklet.Text("hatching is lining"))}}}},
		}},
		&booklet.Heading{ID: "care", Level: 2, Title: "Take care"},
		&booklet.Caution{Signal: "Warning", Text: text("An iron and its steam burn. Keep the cord out of reach of children, and follow the iron maker's own directions.")},
		&booklet.Caution{Signal: "Caution", Text: text("Needles break on pins. Take the pins out before they reach the foot.")},
		&booklet.Group{When: "With side pockets", Blocks: []booklet.Block{
			para(booklet.Text("Cut the pocket bags from a thin fabric so that they do not show.")),
			&booklet.Group{When: "View B only", Blocks: []booklet.Block{para(booklet.Text("The flare hides them in any case."))}}}},
	}
}

func sizeTable() *booklet.Table {
	t := &booklet.Table{ID: "body", Caption: "Body measures", RowHead: true,
		Columns: []booklet.Column{{Head: text("Measure")}}}
	sizes := []string{"6", "8", "10", "12", "14", "16", "18", "20", "22", "24"}
	waist, hip := booklet.Row{Cells: []booklet.Cell{words("Waist")}}, booklet.Row{Cells: []booklet.Cell{words("Full hip")}}
	for i, s := range sizes {
		t.Columns = append(t.Columns, booklet.Column{Head: text(s), Numeric: true})
		n := 60 + 5*i
		waist.Cells = append(waist.Cells, cell(lengthOf(n)))
		hip.Cells = append(hip.Cells, cell(lengthOf(n+24)))
	}
	t.Rows = []booklet.Row{waist, hip}
	return t
}

// cutTable is grouped by material and ticked off row by row.
func cutTable() *booklet.Table {
	row := func(when, no string, in ...booklet.Cell) booklet.Row {
		return booklet.Row{Tick: true, When: when, Cells: append([]booklet.Cell{words(no)}, in...)}
	}
	return &booklet.Table{ID: "cutting", Caption: "Pieces to cut", RowHead: true,
		Columns: []booklet.Column{{Head: text("No."), Numeric: true}, {Head: text("Piece")}, {Head: text("How many"), Numeric: true}, {Head: text("How it lies")}},
		Rows: []booklet.Row{
			{Group: true, Cells: []booklet.Cell{words("Main fabric")}},
			row("", "1", words("Back"), words("1"), words("on the fold")),
			row("", "2", words("Front"), words("2"), words("mirrored")),
			row("View B, with side pockets", "3", words("Pocket facing"), words("2"), words("mirrored")),
			{Group: true, When: "View B", Cells: []booklet.Cell{words("Interfacing")}},
			row("", "4", words("Waistband"), words("1"), words("single, glue side up")),
			row("", "", words("Strip for the zip, "), words("2"), cell(booklet.Text("single, "), narrow, booklet.Text(" wide"))),
		}}
}

func sewBlocks() []booklet.Block {
	return []booklet.Block{
		para(booklet.Text("Press each seam as you go.")),
		&booklet.Heading{ID: "pockets", Level: 2, Title: "Pockets"},
		&booklet.Step{ID: "step-1", Number: 1, Title: "Stay the pocket opening", When: "View B, with side pockets",
			Blocks: []booklet.Block{
				para(booklet.Text("Stitch "), seam, booklet.Text(" from the edge of the "), booklet.Link{To: "cutting", Text: text("front")},
					booklet.Text(", between the dots. Do not stretch the edge.")),
				para(booklet.Text("Press the stitching flat.")),
				&booklet.Caution{Signal: "Caution", Text: text("Hot iron: keep your fingers off the steam.")}},
			Figures: []*booklet.Figure{{ID: "fig-1", Caption: text("A row of stitches between two dots at the side of the front, wrong side up."), Art: pocketArt()}}},
		&booklet.Step{ID: "step-2", Number: 2, Title: "Sew the pocket bag to the front",
			Blocks: []booklet.Block{para(booklet.Text("Put the bag on the front, right sides together. Sew, clip to the dots and turn the bag inside.")),
				&booklet.Heading{Level: 3, Title: "If the bag shows"},
				para(booklet.Text("Roll the seam "), booklet.Measure{Metric: "2\u00a0mm", Imperial: "1⁄16\u00a0in", MetricFirst: true}, booklet.Text(" to the inside and press again."))},
			Figures: []*booklet.Figure{
				{ID: "fig-2", Caption: text("The bag lies on the front, edges level."), Art: pocketArt()},
				{ID: "fig-3", Caption: text("The bag has been turned inside."), Art: pocketArt()}}},
		&booklet.Heading{ID: "closing", Level: 2, Title: "Waist and hem"},
		&booklet.Group{When: "With ties", Blocks: []booklet.Block{
			&booklet.Step{ID: "step-3", Number: 3, Title: "Make the ties", Blocks: []booklet.Block{para(booklet.Text("Fold each tie along its length and sew the long edge."))}}}},
		&booklet.Step{ID: "step-10", Number: 10, Title: "Hem the skirt", Blocks: []booklet.Block{
			&booklet.List{Ordered: true, Items: [][]booklet.Block{{para(booklet.Text("Turn up "), seam, booklet.Text(" and press."))}, {para(booklet.Text("Turn up again, pin and topstitch."))}}}}},
	}
}

func wordList() *booklet.Terms {
	return &booklet.Terms{Items: []booklet.Term{
		{ID: "term-clip", Word: "Clip", Blocks: []booklet.Block{para(booklet.Text("Snip into the allowance up to the stitching, not through it."))}},
		{ID: "term-stay", Word: "Staystitch", Blocks: []booklet.Block{para(booklet.Text("A row of stitches that keeps an edge from stretching.")),
			para(booklet.Text("See "), booklet.Link{To: "step-1", Text: text("step 1")}, booklet.Text("."))}},
	}}
}

// hostileBlocks puts each hostile text in each place that takes one.
func hostileBlocks() []booklet.Block {
	all := &booklet.List{}
	for _, h := range hostile {
		all.Items = append(all.Items, []booklet.Block{para(booklet.Text(h), booklet.Strong{Text: text(h)}, booklet.Emphasis{Text: text(h)},
			booklet.Link{To: "odd", Text: text(h)}, booklet.Measure{Imperial: hostileUnit, Metric: hostileUnit})})
	}
	h := hostile[0] + hostile[1] + hostile[2]
	art := &figure.Drawing{Width: 40, Height: 12, Title: h, Desc: hostile[3], Items: []figure.Item{
		&figure.Label{At: figure.Point{X: 20, Y: 8}, Text: hostile[0], Size: 3, Anchor: "middle", Bold: true}}}
	return []booklet.Block{all,
		&booklet.Heading{ID: "odd-2", Level: 3, Title: h},
		&booklet.Heading{ID: "odd-3", Level: 3, Title: "A sister of that heading"},
		&booklet.Caution{Signal: hostile[2], Text: text(h)},
		&booklet.Table{Caption: h, Columns: []booklet.Column{{Head: text(h)}, {}}, Rows: []booklet.Row{
			{Group: true, Cells: []booklet.Cell{words(h)}}, {Tick: true, When: h, Cells: []booklet.Cell{words(""), words(h)}}}},
		&booklet.Table{Columns: []booklet.Column{{Head: text("A table without a caption"), Numeric: true}},
			Rows: []booklet.Row{{When: h, Cells: []booklet.Cell{words("7")}}}},
		&booklet.Group{When: h, Blocks: []booklet.Block{&booklet.Terms{Items: []booklet.Term{{Word: h, Blocks: []booklet.Block{para(booklet.Text(h))}}}}}},
		&booklet.Step{ID: "odd-step", Number: 11, Title: h, When: h, Figures: []*booklet.Figure{{Caption: text(h), Art: art}}},
	}
}
