package pdf

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"seamwarden/compiler/booklet"
)

func randomNeeds(t *rapid.T) []need {
	n := rapid.IntRange(1, 20).Draw(t, "columns")
	ns := make([]need, n)
	for i := range ns {
		least := rapid.Float64Range(12, 200).Draw(t, "least")
		ns[i] = need{least, least + rapid.Float64Range(0, 400).Draw(t, "more")}
	}
	return ns
}

func TestColumnsFillNoMoreThanTheWidth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ns := randomNeeds(t)
		const avail, gap = 480, 8
		total, least := -8.0, -8.0
		for i, w := range fit(ns, avail, gap) {
			total += w + gap
			least += ns[i].least + gap
			if w < 0 {
				t.Fatalf("column %d is %.1f wide", i, w)
			}
		}
		if total > avail+slack {
			t.Fatalf("columns take %.2f of %d", total, avail)
		}
		for i, w := range fit(ns, avail, gap) {
			if least <= avail && w < ns[i].least-slack {
				t.Fatalf("column %d gets %.1f and needs %.1f, although there was room", i, w, ns[i].least)
			}
		}
	})
}

func TestEveryColumnStandsInOnePart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ns := randomNeeds(t)
		first := rapid.Bool().Draw(t, "first")
		seen := make([]int, len(ns))
		for _, cols := range divide(ns, 480, 8, first) {
			if !slices.IsSorted(cols) || len(cols) == 0 {
				t.Fatalf("part %v", cols)
			}
			for _, c := range cols {
				seen[c]++
			}
		}
		for c, n := range seen {
			if n != 1 && !(first && c == 0 && n > 0) {
				t.Fatalf("column %d stands in %d parts", c, n)
			}
		}
	})
}

func TestNarrowColumnIsNotBrokenForAWideOne(t *testing.T) {
	got := fit([]need{{20, 80}, {40, 900}}, 300, 10)
	if got[0] < 79.9 || got[0] > 80.1 || got[1] < 209.9 || got[1] > 210.1 {
		t.Errorf("widths %.1f, want 80 and 210", got)
	}
}

func TestFourteenColumnsKeepTheTextSize(t *testing.T) {
	d := mustLayOut(t, chapterOf(bigTable(14, 6)), A4)
	for _, m := range d.pages[len(d.pages)-1].items {
		if x, ok := m.(textMark); ok && string(x.run.text) == "r5c13" && x.run.size < 11 {
			t.Errorf("set at %.1f points", x.run.size)
		}
	}
	if got := pageOf(d, "r5c13"); got == 0 {
		t.Error("the last cell is lost")
	}
}

func TestNumbersEndOnOneLine(t *testing.T) {
	d := mustLayOut(t, chapterOf(&booklet.Table{Columns: []booklet.Column{{Head: txt("Piece")}, {Head: txt("Amount"), Numeric: true}},
		Rows: []booklet.Row{{Cells: cellsOf("a", "7")}, {Cells: cellsOf("b", "1234")}}}), A4)
	ends := map[string]float64{}
	for _, pg := range d.pages {
		for _, m := range pg.items {
			if x, ok := m.(textMark); ok {
				ends[string(x.run.text)] = x.x + x.run.width
			}
		}
	}
	if ends["7"] == 0 || ends["7"]-ends["1234"] > slack || ends["1234"]-ends["7"] > slack || ends["Amount"]-ends["7"] > slack {
		t.Errorf("the column ends at %v", ends)
	}
}
