package pdf

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"seamwarden/compiler/booklet"
	"seamwarden/compiler/figure"
)

func mustLayOut(t testing.TB, b *booklet.Booklet, p Paper) *document {
	t.Helper()
	d, err := layOut(b, p)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// misplaced tells what stands off the page, and which texts stand on others.
func misplaced(d *document) []string {
	var out []string
	for i, pg := range d.pages {
		var texts []textMark
		for _, m := range pg.items {
			b := m.box()
			if _, isText := m.(textMark); isText {
				texts = append(texts, m.(textMark))
			}
			if b.x < -slack || b.y < -slack || b.x+b.w > d.sheet.width+slack || b.y+b.h > d.sheet.height+slack || math.IsNaN(b.x+b.y+b.w+b.h) {
				out = append(out, fmt.Sprintf("page %d: %T off the page at %.1f", i+1, m, b))
			}
		}
		out = append(out, overlaps(i+1, texts)...)
	}
	return out
}

// overlaps compares runs on about the same baseline.
func overlaps(page int, ts []textMark) []string {
	var out []string
	for i, a := range ts {
		for _, b := range ts[i+1:] {
			if a.angle != 0 || b.angle != 0 || math.Abs(a.y-b.y) > 0.4*min(a.run.size, b.run.size) {
				continue
			}
			if min(a.x+a.run.width, b.x+b.run.width)-max(a.x, b.x) > 0.5 {
				out = append(out, fmt.Sprintf("page %d: %q stands on %q", page, string(a.run.text), string(b.run.text)))
			}
		}
	}
	return out
}

// drawn gives all text of a document without spaces, in the order of drawing.
func drawn(d *document) string {
	var s strings.Builder
	for _, pg := range d.pages {
		for _, m := range pg.items {
			if t, ok := m.(textMark); ok {
				s.WriteString(string(t.run.text))
			}
		}
	}
	return squeeze(s.String())
}

func chapterOf(bs ...booklet.Block) *booklet.Booklet {
	return &booklet.Booklet{Title: "Edge", Labels: labels, Chapters: []booklet.Chapter{{ID: "c", Title: "Chapter", Blocks: bs}}}
}

func long(n int) string { return strings.TrimSpace(strings.Repeat("stitch along the marked line ", n)) }

// nest puts a block into n lists and groups.
func nest(n int, b booklet.Block) booklet.Block {
	for range n {
		b = &booklet.Group{When: "if so", Blocks: []booklet.Block{&booklet.List{Items: [][]booklet.Block{{b}}}}}
	}
	return b
}

func bigTable(columns, rows int) *booklet.Table {
	t := &booklet.Table{Caption: "Big", RowHead: true}
	for c := range columns {
		t.Columns = append(t.Columns, booklet.Column{Head: txt(fmt.Sprintf("Head%d", c)), Numeric: c > 0})
	}
	for r := range rows {
		row := booklet.Row{Tick: r%2 == 0}
		for c := range columns {
			row.Cells = append(row.Cells, cellsOf(fmt.Sprintf("r%dc%d", r, c))...)
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

func edgeCases() map[string]*booklet.Booklet {
	wide := seamArt(900)
	odd := &figure.Drawing{Width: 10, Height: 10, Items: []figure.Item{
		&figure.Path{Commands: []figure.Command{lineTo(-50, 5), lineTo(math.Inf(1), math.NaN()), closed}, Stroke: black, Width: 1, Dash: []float64{0, 0}},
		&figure.Label{At: pt(90, -40), Text: "outside", Size: 40, Anchor: "end", Angle: 30},
		&figure.Label{At: pt(5, 5), Text: "", Size: 4}, &figure.Label{At: pt(5, 5), Text: "x"},
	}}
	tall := &figure.Drawing{Width: 1, Height: 1e6}
	step := &booklet.Step{Number: 1, Title: long(20), When: long(8)}
	for range 40 {
		step.Blocks = append(step.Blocks, para(txt(long(12))...))
	}
	step.Figures = []*booklet.Figure{nil, fig("", "Beside.", seamArt(40)), {}}
	return map[string]*booklet.Booklet{
		"nothing":         {},
		"empty chapter":   {Chapters: []booklet.Chapter{{}, {Title: "Two"}, {Title: "Three", Blocks: []booklet.Block{}}}},
		"empty blocks":    chapterOf(&booklet.Heading{}, &booklet.Paragraph{}, &booklet.List{}, &booklet.List{Items: [][]booklet.Block{nil}}, &booklet.Table{}, &booklet.Figure{}, &booklet.Step{}, &booklet.Caution{}, &booklet.Terms{}, &booklet.Terms{Items: []booklet.Term{{}}}, &booklet.Group{}, &booklet.Group{When: "alone"}),
		"empty rows":      chapterOf(&booklet.Table{Rows: []booklet.Row{{}, {Group: true}, {Tick: true, When: "x"}}}, &booklet.Table{Caption: "c", Columns: []booklet.Column{{}}}),
		"long word":       chapterOf(para(txt(strings.Repeat("seam", 300))...), &booklet.Heading{Level: 2, Title: strings.Repeat("W", 200)}, bigWord()),
		"wide table":      chapterOf(bigTable(14, 6), nest(3, bigTable(14, 3))),
		"long table":      chapterOf(bigTable(3, 200)),
		"tall row":        chapterOf(&booklet.Table{Caption: long(3), Columns: []booklet.Column{{Head: txt(long(2))}}, Rows: []booklet.Row{{Tick: true, When: long(300), Cells: cellsOf(long(600), "b")}}}),
		"tall head":       chapterOf(&booklet.Table{Caption: long(300), Columns: []booklet.Column{{Head: txt(long(500))}}, Rows: []booklet.Row{{Cells: cellsOf("a")}}}),
		"long step":       chapterOf(step),
		"long caution":    chapterOf(&booklet.Caution{Signal: "Warning", Text: txt(long(400))}),
		"wide figure":     chapterOf(fig("f", long(50), wide), fig("g", "tall", tall), fig("h", "odd", odd), fig("i", long(500), seamArt(50))),
		"figure without":  chapterOf(&booklet.Figure{Caption: txt("no art")}, fig("", "flat", &figure.Drawing{Width: 5})),
		"deep nesting":    chapterOf(nest(40, &booklet.Step{Number: 1234, Title: "Deep", Blocks: []booklet.Block{para(txt(long(5))...)}, Figures: []*booklet.Figure{fig("", "in", seamArt(0))}})),
		"long everywhere": {Title: long(60), Maker: long(60), Edition: long(60), Scope: long(60), Labels: booklet.Labels{Contents: long(9), Continued: long(30)}, Cover: booklet.Cover{About: txt(long(400)), Facts: []booklet.Fact{{Name: long(60), Value: txt(long(90))}}, Views: make([]booklet.CoverView, 11)}, Chapters: []booklet.Chapter{{Title: long(300), Blocks: []booklet.Block{bigTable(4, 90), &booklet.Terms{Items: []booklet.Term{{Word: long(40), Blocks: []booklet.Block{para(txt("short")...)}}}}}}}},
		"the fixture":     fixture(),
	}
}

func bigWord() *booklet.Table {
	return &booklet.Table{Columns: []booklet.Column{{Head: txt("a")}, {Head: txt("b"), Numeric: true}},
		Rows: []booklet.Row{{Cells: cellsOf(strings.Repeat("x", 400), strings.Repeat("y", 90))}}}
}

func TestNothingIsLostOrOffThePage(t *testing.T) {
	for name, b := range edgeCases() {
		for paper, p := range papers {
			t.Run(name+" "+paper, func(t *testing.T) {
				d := mustLayOut(t, b, p)
				for _, m := range misplaced(d) {
					t.Error(m)
				}
				text := drawn(d)
				for _, want := range allWords(b) {
					if !strings.Contains(text, squeeze(want)) {
						t.Errorf("lost: %.60q", want)
					}
				}
				if r := mustRender(t, b, Options{Paper: p}); r.Pages != len(d.pages) || r.Pages < 1 {
					t.Errorf("%d pages", r.Pages)
				}
			})
		}
	}
}

// allWords gives the words of a booklet; a word alone may be divided over lines, but
// never by other text.
func allWords(b *booklet.Booklet) []string {
	var out []string
	for _, s := range allTexts(b) {
		out = append(out, strings.Fields(s)...)
	}
	return out
}

func TestEdgeCasesAreSoundFiles(t *testing.T) {
	needTool(t, "qpdf")
	for name, b := range edgeCases() {
		t.Run(name, func(t *testing.T) {
			runTool(t, "qpdf", "--check", save(t, mustRender(t, b, Options{}).Bytes))
		})
	}
}
