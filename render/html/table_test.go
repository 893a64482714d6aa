package html

import (
	"strings"
	"testing"

	"golang.org/x/net/html"

	"seamwarden/compiler/booklet"
)

// tablesOf lists the tables of a booklet in reading order.
func tablesOf(t *testing.T, blocks []booklet.Block) []*booklet.Table {
	t.Helper()
	var found []*booklet.Table
	for _, b := range blocks {
		if x, ok := b.(*booklet.Table); ok {
			found = append(found, x)
		}
		inner, err := children(b)
		if err != nil {
			t.Fatal(err)
		}
		found = append(found, tablesOf(t, inner)...)
	}
	return found
}

func TestTablesSayWhatTheBookletSays(t *testing.T) {
	b := fixture()
	var want []*booklet.Table
	for _, c := range b.Chapters {
		want = append(want, tablesOf(t, c.Blocks)...)
	}
	got := elements(setPage(t, b), "table")
	if len(got) != len(want) || len(got) != 4 {
		t.Fatalf("%d tables on the page, %d in the booklet", len(got), len(want))
	}
	for i, table := range got {
		rows := elements(table, "tr")
		if len(rows) != len(want[i].Rows)+1 {
			t.Fatalf("table %d has %d rows, want %d", i, len(rows), len(want[i].Rows)+1)
		}
		for c, cell := range elements(rows[0], "th", "td") {
			if s := textOf(cell); s != booklet.Plain(want[i].Columns[c].Head) {
				t.Errorf("table %d, head %d reads %q", i, c, s)
			}
		}
		for r, row := range want[i].Rows {
			compareRow(t, rows[r+1], row)
		}
	}
}

func compareRow(t *testing.T, got *html.Node, want booklet.Row) {
	t.Helper()
	cells := elements(got, "th", "td")
	if len(cells) != len(want.Cells) {
		t.Fatalf("row %q has %d cells, want %d", textOf(got), len(cells), len(want.Cells))
	}
	when := ""
	for c, cell := range cells {
		for _, w := range withClass(cell, "when") {
			when += textOf(w)
		}
		if s := strings.TrimSuffix(textOf(cell, "when", "said"), " "); s != strings.TrimSuffix(booklet.Plain(want.Cells[c].Text), " ") {
			t.Errorf("a cell reads %q, want %q", s, booklet.Plain(want.Cells[c].Text))
		}
	}
	if when != want.When {
		t.Errorf("row %q is for %q, want %q", textOf(got), when, want.When)
	}
	if ticks := elements(got, "input"); (len(ticks) == 1) != want.Tick || want.Tick && inside(ticks[0], "th", "td") != cells[0] {
		t.Errorf("row %q has %d tick boxes", textOf(got), len(ticks))
	}
}

func TestTableHeadsHaveTheirScope(t *testing.T) {
	root := setPage(t, fixture())
	counts := map[string]int{}
	for _, th := range elements(root, "th") {
		scope := attr(th, "scope")
		counts[scope]++
		if textOf(th) == "" {
			t.Error("a head cell is empty")
		}
		switch {
		case inside(th, "thead") != nil && scope == "col":
		case inside(th, "tbody") != nil && scope == "row" && attr(th, "colspan") == "":
		case inside(th, "tbody") != nil && scope == "rowgroup" && th.Parent == elements(inside(th, "tbody"), "tr")[0]:
		default:
			t.Errorf("the head cell %q has scope %q", textOf(th), scope)
		}
	}
	// Columns 11 + 4 + 1 (the second is empty) + 1; rows 2 + 4 (one has no number); groups 2 + 1.
	if counts["col"] != 17 || counts["row"] != 6 || counts["rowgroup"] != 3 {
		t.Errorf("scopes %v", counts)
	}
	if th := elements(elements(byID(root, "cutting"), "tbody")[0], "th")[0]; attr(th, "colspan") != "4" {
		t.Errorf("the group row spans %q columns of 4", attr(th, "colspan"))
	}
}

func TestTableFramesCanBeReachedAndAreNamed(t *testing.T) {
	root := setPage(t, fixture())
	var names []string
	for _, frame := range withClass(root, "table-frame") {
		name := byID(root, attr(frame, "aria-labelledby"))
		if attr(frame, "tabindex") != "0" || name == nil {
			t.Fatal("a table's frame cannot be scrolled with the keyboard, or has no name")
		}
		names = append(names, textOf(name))
	}
	if names[0] != "Body measures" || names[1] != "Pieces to cut" || names[3] != "A sister of that heading" {
		t.Errorf("frames are called %q", names)
	}
}

func TestNumbersStandAtTheEnd(t *testing.T) {
	root := setPage(t, fixture())
	for _, cell := range elements(byID(root, "body"), "td") {
		if !hasClass(cell, "numeric") {
			t.Errorf("the figure %q is not set as one", textOf(cell))
		}
	}
	numeric := ""
	for _, cell := range elements(elements(byID(root, "cutting"), "tr")[2], "th", "td") {
		if hasClass(cell, "numeric") {
			numeric += textOf(cell) + ";"
		}
	}
	if numeric != "1;1;" {
		t.Errorf("the figures of the first row are %q", numeric)
	}
}
