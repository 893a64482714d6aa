package wording

import (
	"strings"

	"seamwarden/compiler/booklet"
	"seamwarden/compiler/measure"
	"seamwarden/compiler/size"
)

// sizes makes the size chart: body measures, finished measures and ease, each
// once in inches and once in centimetres.
func (w *writer) sizes() *booklet.Chapter {
	c := w.Pattern.Sizes
	if c == nil || len(c.Sizes) == 0 {
		return nil
	}
	ch := w.chapter("sizes")
	s := w.ph.Sizes
	if len(c.Body) > 0 {
		ch.Blocks = append(ch.Blocks, para(plain(s["how"])))
	}
	ch.Blocks = append(ch.Blocks, w.sizeTables(s["body"], refs(c.Body), plainValues)...)
	ch.Blocks = append(ch.Blocks, w.sizeTables(s["finished"], refs(c.Finished), plainValues)...)
	var eased []*size.Row
	for _, r := range refs(c.Finished) {
		if r.Over != "" {
			eased = append(eased, r)
		}
	}
	if len(eased) > 0 {
		ch.Blocks = append(ch.Blocks, w.sizeTables(s["ease"], eased, c.Ease)...)
		ch.Blocks = append(ch.Blocks, para(plain(s["how-ease"])))
	}
	if len(ch.Blocks) == 0 {
		return nil
	}
	return ch
}

func refs(rows []size.Row) (all []*size.Row) {
	for i := range rows {
		all = append(all, &rows[i])
	}
	return
}

func plainValues(r *size.Row) []measure.Length { return r.Values }

// sizeTables makes a part of the chart in both systems, the author's first.
func (w *writer) sizeTables(title string, rows []*size.Row, values func(*size.Row) []measure.Length) []booklet.Block {
	var there []*size.Row
	for _, r := range rows {
		if w.there(w.RowCond(r)) {
			there = append(there, r)
		}
	}
	if len(there) == 0 {
		return nil
	}
	first, second := "in-inches", "in-centimetres"
	if w.Pattern.Sizes.Unit.System() == measure.Metric {
		first, second = second, first
	}
	out := []booklet.Block{w.heading(title)}
	for _, key := range []string{first, second} {
		t := &booklet.Table{ID: w.id("table", title, key), Caption: put(w.ph.Sizes[key], "what", title), RowHead: true,
			Columns: []booklet.Column{{Head: plain(w.ph.Sizes["measure"])}}}
		for _, i := range w.sizeList() {
			t.Columns = append(t.Columns, booklet.Column{Head: plain(w.Pattern.Sizes.Sizes[i]), Numeric: true})
		}
		for _, r := range there {
			t.Rows = append(t.Rows, w.sizeRow(r, values(r), key == "in-inches"))
		}
		out = append(out, t)
	}
	return out
}

func (w *writer) sizeRow(r *size.Row, values []measure.Length, inches bool) booklet.Row {
	row := booklet.Row{When: w.when(w.RowCond(r)), Cells: []booklet.Cell{{Text: typed(r.Name)}}}
	for _, i := range w.sizeList() {
		text := ""
		if i < len(values) {
			text = w.bare(values[i], inches)
		}
		row.Cells = append(row.Cells, booklet.Cell{Text: plain(text)})
	}
	return row
}

// bare words a body measure without its unit, which stands above the table. What
// the author wrote is exact; the other system is rounded.
func (w *writer) bare(l measure.Length, inches bool) string {
	written := w.Pattern.Sizes.Unit.System()
	i, m := measure.Print(l, measure.Body, written, measure.English)
	if inches {
		return number(i)
	}
	return number(m)
}

// number takes the unit from a printed measure.
func number(s string) string {
	if i := strings.LastIndex(s, "\u00a0"); i > 0 {
		return s[:i]
	}
	return s
}
