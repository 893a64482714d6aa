package check

import (
	"fmt"
	"math/big"
	"sync"

	"seamwarden/compiler/measure"
	"seamwarden/compiler/model"
	"seamwarden/compiler/size"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "widths-far-from-usual", Severity: finding.Advice, Category: "sizes", run: usualWidths,
		Purpose: "How much of a cloth is asked for in two widths differs far from what the usual chart says.",
		Why: "The chart of the extension services says from experience how much is needed of another width. A layout may well differ from it, as whole pieces do or do " +
			"not lie beside each other; a figure that differs by 3/8 yd or more is worth a second look."})
}

// conversion is the fabric width conversion chart that goes round in leaflets of US
// home economics extension services; read in secondary copies, the columns agree in
// all of them. In eighths of a yard; a line gives what is needed of each width.
var conversion = [][]int64{
	{14, 12, 12, 11, 10, 9, 8, 7},
	{16, 14, 14, 13, 12, 11, 10, 9},
	{18, 16, 16, 14, 13, 12, 11, 10},
	{20, 18, 18, 17, 14, 14, 13, 12},
	{23, 20, 20, 18, 16, 15, 14, 13},
	{25, 22, 22, 20, 18, 16, 15, 14},
	{27, 24, 23, 22, 19, 18, 16, 15},
	{30, 26, 25, 23, 21, 19, 18, 17},
	{34, 28, 27, 25, 22, 21, 19, 18},
	{36, 30, 29, 27, 24, 22, 21, 20},
	{38, 32, 31, 29, 26, 23, 22, 21},
	{40, 34, 33, 31, 27, 25, 23, 22},
}

// chartWidths are the widths of its columns in inches, from and to. A width of
// centimetres belongs to the column that it is sold as.
var chartWidths = [][2]int64{{35, 36}, {39, 39}, {41, 42}, {44, 45}, {50, 50}, {52, 54}, {58, 60}, {65, 66}}

// usualMargin is what the chart's own rider allows for (1/4 yd more for a large
// difference of widths or a one-way cloth) and an eighth for rounding.
var usualMargin = measure.Of(3, 8, measure.Yard)

// chartColumns is the same in lengths, made when it is first needed.
var chartColumns = sync.OnceValue(func() (all [][2]measure.Length) {
	for _, w := range chartWidths {
		all = append(all, [2]measure.Length{measure.FromInches(w[0], 1), measure.FromInches(w[1], 1)})
	}
	return
})

// soldAs is how far a width may be from its column: 140 cm is sold as 54 or 55 in.
var soldAs = measure.FromInches(5, 4)

// chartColumn finds the column that is nearest to a width, -1 if none is near.
func chartColumn(width measure.Length) int {
	column, near := -1, soldAs
	for i, w := range chartColumns() {
		apart := w[0].Sub(width)
		if over := width.Sub(w[1]); over.Cmp(apart) > 0 {
			apart = over
		}
		if apart.Cmp(near) <= 0 {
			column, near = i, apart
		}
	}
	return column
}

// chartLines is the chart in lengths, made when it is first needed.
var chartLines = sync.OnceValue(func() (lines [][]measure.Length) {
	for _, line := range conversion {
		var l []measure.Length
		for _, eighths := range line {
			l = append(l, measure.Of(eighths, 8, measure.Yard))
		}
		lines = append(lines, l)
	}
	return
})

var eighth = measure.Of(1, 8, measure.Yard)

// chartSays converts an amount from one column to another: the line is the first
// that is enough. It is false outside the chart.
func chartSays(amount measure.Length, from, to int) (measure.Length, bool) {
	lines := chartLines()
	if amount.Add(eighth).Cmp(lines[0][from]) < 0 {
		return measure.Length{}, false
	}
	for _, line := range lines {
		if amount.Cmp(line[from]) <= 0 {
			return line[to], true
		}
	}
	return measure.Length{}, false
}

// sameArea converts an amount so that the area stays the same.
func sameArea(amount, from, to measure.Length) measure.Length {
	return amount.MulRat(new(big.Rat).Quo(from.Rat(), to.Rat()))
}

// usualWidths compares two amounts of one cloth with the chart, for the size in which
// they differ most from it. Where both have been laid, the lays say more than a chart.
func usualWidths(r *run) {
	columns := make([]int, len(r.Promises))
	for i, p := range r.Promises {
		columns[i] = chartColumn(p.Width.Length)
	}
	for i, narrow := range r.Promises {
		for k, wide := range r.Promises {
			a, b := columns[i], columns[k]
			if a < 0 || b <= a || wide.Material != narrow.Material || wide.Draft != narrow.Draft {
				continue
			}
			bad := r.unsaid(wide, r.unsaid(narrow, r.Space.And(wide.Cond, narrow.Cond)))
			if at, says := farthest(narrow, wide, a, b); at >= 0 && r.possible(bad) && !(r.laid(narrow, at) && r.laid(wide, at)) {
				r.report(bad, also(r.unusual(narrow, wide, at, says), narrow.Cells[at].Span, "of the narrow one"))
			}
		}
	}
}

// farthest finds the size that differs most from the chart, -1 if none differs by
// the margin or more.
func farthest(narrow, wide *model.Promise, a, b int) (at int, says measure.Length) {
	at = -1
	most := usualMargin
	for i := range narrow.Cells {
		if !narrow.Has(i) || !wide.Has(i) {
			continue
		}
		x, ok := chartSays(narrow.Cells[i].Length, a, b)
		if apart := wide.Cells[i].Length.Sub(x).Abs(); ok && apart.Cmp(most) >= 0 && (at < 0 || apart.Cmp(most) > 0) {
			at, says, most = i, x, apart
		}
	}
	return
}

func (r *run) unusual(narrow, wide *model.Promise, i int, says measure.Length) finding.Finding {
	cell := wide.Cells[i]
	more := "less"
	if cell.Length.Cmp(says) > 0 {
		more = "more"
	}
	area := sameArea(narrow.Cells[i].Length, narrow.Width.Length, wide.Width.Length)
	return at(cell.Span, more+" than usual", fmt.Sprintf("%s%s of %s lying %s wide are asked for; of %s at %s the usual chart makes %s, and the same area would be %s.",
		r.sizeFirst(i), cell, clothOf(wide), wide.Width, narrow.Cells[i], narrow.Width, r.toBuy(says, cell.Unit), r.toBuy(area, cell.Unit)),
		"Look at both layouts again; if they are right, leave both as they are.")
}

// toBuy words a length of cloth as it is bought, rounded up, in the system of a unit.
func (r *run) toBuy(l measure.Length, unit measure.Unit) string {
	yd, m := r.clothSteps().Print(l, measure.Cloth, measure.Computed, measure.English)
	if unit.System() == measure.Metric {
		return m
	}
	return yd
}

// clothSteps is what the pattern rounds cloth to.
func (r *run) clothSteps() measure.Steps {
	if r.Sizes == nil {
		return measure.Steps{}
	}
	return r.Sizes.Rounding[size.ClothPart]
}
