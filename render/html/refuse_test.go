package html

import (
	"math"
	"strings"
	"testing"

	"seamwarden/compiler/booklet"
	"seamwarden/compiler/figure"
)

// Kinds that no renderer has met: they pass for blocks, texts and shapes only
// because they hold one.
type (
	oddBlock  struct{ booklet.Block }
	oddInline struct{ booklet.Inline }
	oddItem   struct{ figure.Item }
)

// withArt is a block with a figure of one item.
func withArt(i figure.Item) booklet.Block {
	return &booklet.Figure{Caption: text("Odd one"), Art: &figure.Drawing{Width: 9, Height: 9, Items: []figure.Item{i}}}
}

func items(b booklet.Block) [][]booklet.Block { return [][]booklet.Block{{b}} }

// What a booklet must not hold, where it stands, and the words that must be in
// the error.
func TestBadBlocksAreRefused(t *testing.T) {
	odd, art := oddBlock{}, &figure.Drawing{Width: 1, Height: 1}
	oneColumn := []booklet.Column{{Head: text("Only")}}
	for _, c := range []struct {
		block booklet.Block
		words string
	}{
		{odd, "kind of block"},
		{&booklet.List{Items: items(odd)}, "kind of block"},
		{&booklet.Step{ID: "s", Title: "S", Blocks: []booklet.Block{odd}}, "kind of block"},
		{&booklet.Group{Blocks: []booklet.Block{odd}}, "kind of block"},
		{&booklet.Terms{Items: []booklet.Term{{Blocks: []booklet.Block{odd}}}}, "kind of block"},
		{nil, "kind of block"},
		{para(oddInline{}), "kind of text"},
		{para(booklet.Strong{Text: []booklet.Inline{oddInline{}}}), "kind of text"},
		{para(&booklet.Strong{Text: text("by pointer")}), "kind of text"},
		{&booklet.Table{Columns: []booklet.Column{{Head: []booklet.Inline{oddInline{}}}}}, "kind of text"},
		{&booklet.Caution{Signal: "Warning", Text: []booklet.Inline{oddInline{}}}, "kind of text"},
		{withArt(oddItem{}), "kind of shape"},
		{withArt(&figure.Path{Commands: []figure.Command{{Op: 'Q'}}}), `path command 'Q'`},
		{withArt(&figure.Label{Size: math.NaN()}), "not finite"},
		{withArt(line(black, 1, math.Inf(1))), "not finite"},
		{&booklet.Figure{Caption: text("No size"), Art: &figure.Drawing{Width: 4}}, `figure "No size": the line art has no size`},
		{&booklet.Figure{}, "no line art"},
		{&booklet.Step{ID: "s", Title: "S", Number: 4, Figures: []*booklet.Figure{{}}}, "step 4: a figure has no line art"},
		{para(booklet.Link{To: "gone", Text: text("there")}), `the link "there" leads to "gone"`},
		{para(booklet.Link{To: "sew", Text: []booklet.Inline{booklet.Link{To: "sew"}}}), "inside another link"},
		{&booklet.Figure{ID: "sew", Art: art}, `"sew" is used twice`},
		{&booklet.Heading{ID: "two words", Level: 2, Title: "T"}, `"two words" holds ' '`},
		{&booklet.Step{Title: "S", Number: 5}, "step 5 has no title or no id"},
		{&booklet.Caution{Text: text("Hot")}, "no signal word"},
		{&booklet.Table{Caption: "Bare"}, `table "Bare" has no columns`},
		{&booklet.Table{Caption: "Odd", Columns: oneColumn, Rows: []booklet.Row{{}}}, `table "Odd", row 1: it has 0 cells where 1 belong`},
		{&booklet.Table{Columns: oneColumn, Rows: []booklet.Row{{Group: true, Cells: []booklet.Cell{{}, {}}}}}, "2 cells where 1 belong"},
	} {
		b := fixture()
		b.Chapters[3].Blocks = append(b.Chapters[3].Blocks, c.block)
		refused(t, b, c.words)
		refused(t, b, `chapter "Sewing"`)
	}
}

func refused(t *testing.T, b *booklet.Booklet, words string) {
	t.Helper()
	out, err := Render(b)
	if err == nil || !strings.Contains(err.Error(), words) || out != nil {
		t.Errorf("error %v with %d bytes, want one with %q and none", err, len(out), words)
	}
}

func TestBadFrontMatterIsRefused(t *testing.T) {
	for words, spoil := range map[string]func(*booklet.Booklet){
		"no title":                   func(b *booklet.Booklet) { b.Title = "" },
		"tag of a language":          func(b *booklet.Booklet) { b.Lang = "" },
		"word for the contents list": func(b *booklet.Booklet) { b.Labels.Contents = "" },
		"word for the way back":      func(b *booklet.Booklet) { b.Labels.BackToTop = "" },
		"word for a step":            func(b *booklet.Booklet) { b.Labels.Step = "" },
		"word for a figure":          func(b *booklet.Booklet) { b.Labels.Figure = "" },
		"word for the views":         func(b *booklet.Booklet) { b.Labels.Views = "" },
		"word for the edition":       func(b *booklet.Booklet) { b.Labels.Edition = "" },
		"chapter 2 has no title":     func(b *booklet.Booklet) { b.Chapters[1].Title = "" },
		`"cut" is used twice`:        func(b *booklet.Booklet) { b.Cover.Views[0].ID = "cut" },
		"cover: the link":            func(b *booklet.Booklet) { b.Cover.About = []booklet.Inline{booklet.Link{To: "gone"}} },
		"cover: the booklet holds":   func(b *booklet.Booklet) { b.Cover.Facts[0].Value = []booklet.Inline{nil} },
	} {
		b := fixture()
		spoil(b)
		refused(t, b, words)
	}
}

func TestTheSmallestBooklet(t *testing.T) {
	root := setPage(t, &booklet.Booklet{Lang: "en", Title: "Bare"})
	if len(elements(root, "nav", "dl", "ul")) != 0 || textOf(elements(root, "h1")[0]) != "Bare" {
		t.Error("a booklet with a title only has more than that on its page")
	}
}
