package pdf

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"seamwarden/compiler/booklet"
)

// The generators make booklets that no author would: any block in any other, texts
// of any length.

func randomText(t *rapid.T) string {
	return rapid.SampledFrom([]string{"", "Press", "Press the seam open, then finish it.", "⅝ in", "³⁄₁₆\u00A0in",
		"un\u00ADbreak\u00ADable", strings.Repeat("gather", 30), long(12), "a - b", "\n x \t y ", "漢字"}).Draw(t, "text")
}

func randomInlines(t *rapid.T, depth int) []booklet.Inline {
	var out []booklet.Inline
	for range rapid.IntRange(0, 3).Draw(t, "inlines") {
		kind := rapid.IntRange(0, 5).Draw(t, "kind")
		switch {
		case kind == 1 && depth > 0:
			out = append(out, booklet.Strong{Text: randomInlines(t, depth-1)})
		case kind == 2 && depth > 0:
			out = append(out, booklet.Emphasis{Text: randomInlines(t, depth-1)})
		case kind == 3 && depth > 0:
			out = append(out, booklet.Link{To: "c", Text: randomInlines(t, depth-1)})
		case kind == 4:
			out = append(out, booklet.Measure{Imperial: "1 ⅝ in", Metric: "4.1 cm", MetricFirst: rapid.Bool().Draw(t, "metric")})
		case kind == 5:
			out = append(out, booklet.Break{})
		default:
			out = append(out, booklet.Text(randomText(t)))
		}
	}
	return out
}

func randomBlocks(t *rapid.T, depth int) []booklet.Block {
	var out []booklet.Block
	for range rapid.IntRange(0, 4).Draw(t, "blocks") {
		out = append(out, randomBlock(t, depth))
	}
	return out
}

func randomBlock(t *rapid.T, depth int) booklet.Block {
	most := 8
	if depth == 0 {
		most = 4
	}
	switch rapid.IntRange(0, most).Draw(t, "block") {
	case 0:
		return &booklet.Heading{Level: rapid.IntRange(1, 4).Draw(t, "level"), Title: randomText(t)}
	case 1:
		return &booklet.Paragraph{Text: randomInlines(t, 2)}
	case 2:
		return randomTable(t)
	case 3:
		return fig("", randomText(t), seamArt(rapid.Float64Range(0, 400).Draw(t, "width")))
	case 4:
		return &booklet.Caution{Signal: randomText(t), Text: randomInlines(t, 1)}
	case 5:
		return &booklet.Step{Number: rapid.IntRange(0, 999).Draw(t, "number"), Title: randomText(t), When: randomText(t),
			Blocks: randomBlocks(t, depth-1), Figures: []*booklet.Figure{fig("", randomText(t), skirtArt(9))}}
	case 6:
		return &booklet.List{Ordered: rapid.Bool().Draw(t, "ordered"), Items: [][]booklet.Block{randomBlocks(t, depth-1), nil}}
	case 7:
		return &booklet.Terms{Items: []booklet.Term{{Word: randomText(t), Blocks: randomBlocks(t, depth-1)}}}
	}
	return &booklet.Group{When: randomText(t), Blocks: randomBlocks(t, depth-1)}
}

func randomTable(t *rapid.T) *booklet.Table {
	tab := &booklet.Table{Caption: randomText(t), RowHead: rapid.Bool().Draw(t, "row head")}
	n := rapid.IntRange(0, 15).Draw(t, "columns")
	for range n {
		tab.Columns = append(tab.Columns, booklet.Column{Head: randomInlines(t, 0), Numeric: rapid.Bool().Draw(t, "numeric")})
	}
	for range rapid.IntRange(0, 9).Draw(t, "rows") {
		r := booklet.Row{Group: rapid.IntRange(0, 4).Draw(t, "group") == 0, Tick: rapid.Bool().Draw(t, "tick"), When: randomText(t)}
		for range rapid.IntRange(0, n+1).Draw(t, "cells") {
			r.Cells = append(r.Cells, booklet.Cell{Text: randomInlines(t, 1)})
		}
		tab.Rows = append(tab.Rows, r)
	}
	return tab
}

// characters counts what is seen of texts.
func characters(texts ...string) map[rune]int {
	n := map[rune]int{}
	for _, s := range texts {
		for _, r := range squeeze(strings.ReplaceAll(s, "\u00AD", "")) {
			if strings.ContainsRune("漢字", r) {
				r = replacement
			}
			n[r]++
		}
	}
	return n
}

func TestAnyBookletIsSetWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := chapterOf(randomBlocks(t, 3)...)
		paper := rapid.SampledFrom([]Paper{A4, Letter}).Draw(t, "paper")
		d, err := layOut(b, paper)
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range misplaced(d) {
			t.Error(m)
		}
		have := characters(drawn(d))
		for r, n := range characters(allTexts(b)...) {
			if have[r] < n {
				t.Errorf("%q stands %d times in the booklet and %d times on paper", r, n, have[r])
			}
		}
	})
}
