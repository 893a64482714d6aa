package wording

import (
	"fmt"
	"strings"

	"seamwarden/compiler/booklet"
	"seamwarden/compiler/measure"
	"seamwarden/compiler/size"
)

// sizes makes the size chart: how a size is chosen, and then for each draft body
// measures, finished measures and ease, each once in inches and once in centimetres.
func (w *writer) sizes() *booklet.Chapter {
	c := w.Pattern.Sizes
	if c == nil || len(c.Sizes) == 0 {
		return nil
	}
	ch := w.chapter("sizes")
	ch.Blocks = append(ch.Blocks, w.howToChoose(c)...)
	eased := false
	for _, d := range c.Versions() {
		if w.there(w.DraftCond(d)) {
			blocks, ease := w.version(d)
			ch.Blocks = append(ch.Blocks, blocks...)
			eased = eased || ease
		}
	}
	if eased {
		ch.Blocks = append(ch.Blocks, para(plain(w.ph.Sizes["how-ease"])))
	}
	if len(ch.Blocks) == 0 {
		return nil
	}
	return ch
}

// howToChoose words the rule of [size.Chart.Choice].
func (w *writer) howToChoose(c *size.Chart) []booklet.Block {
	s, key := w.ph.Sizes, c.Lead()
	if key == "" {
		return nil
	}
	row, how := c.Versions()[0].BodyRow(key), "how-"+string(c.Way())
	switch {
	case len(c.Sizes) == 1:
		how = "how-only"
	case row.Limits != nil:
		how = "how-limits"
	}
	text := s["how-not-shops"] + " " + put(s[how], "lead", lower(row.Name))
	var drafts [][]booklet.Inline
	for _, d := range c.Drafts {
		if w.there(w.DraftCond(d)) {
			drafts = append(drafts, plain(d.Name))
		}
	}
	if len(drafts) > 1 {
		text += " " + put(put(s["how-drafts"], "n", fmt.Sprint(len(drafts))), "drafts", booklet.Plain(list(drafts, "and")))
	}
	more := ""
	if len(c.Sizes) > 1 {
		more = s["how-between"]
	}
	if len(c.Versions()[0].Body) > 1 {
		more += " " + s["how-others"]
	}
	out := []booklet.Block{w.heading(s["how"]), para(plain(text))}
	if more != "" {
		out = append(out, para(plain(strings.TrimSpace(more))))
	}
	return out
}

// version makes the tables of one draft, and says whether there is one of ease.
func (w *writer) version(d size.Draft) (out []booklet.Block, ease bool) {
	s := w.ph.Sizes
	title := func(key string) string {
		if d.Key == "" {
			return s[key]
		}
		return put(put(s["in-draft"], "what", s[key]), "draft", d.Name)
	}
	var eased []*size.Row
	for _, r := range refs(d.Finished) {
		if r.Over != "" {
			eased = append(eased, r)
		}
	}
	out = append(out, w.sizeTables(title("body"), d, refs(d.Body), plainValues)...)
	out = append(out, w.sizeTables(title("finished"), d, refs(d.Finished), plainValues)...)
	if len(eased) > 0 {
		out = append(out, w.sizeTables(title("ease"), d, eased, d.Ease)...)
	}
	return out, len(eased) > 0
}

func refs(rows []size.Row) (all []*size.Row) {
	for i := range rows {
		all = append(all, &rows[i])
	}
	return
}

func plainValues(r *size.Row) []measure.Length { return r.Values }

// sizeTables makes a part of the chart in both systems, the author's first.
func (w *writer) sizeTables(title string, d size.Draft, rows []*size.Row, values func(*size.Row) []measure.Length) []booklet.Block {
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
		for _, i := range w.sizesIn(d) {
			t.Columns = append(t.Columns, booklet.Column{Head: plain(d.Sizes[i]), Numeric: true})
		}
		for _, r := range there {
			t.Rows = append(t.Rows, w.sizeRow(d, r, values(r), key == "in-inches"))
		}
		out = append(out, t)
	}
	return out
}

// sizesIn gives the sizes of a draft that are left to choose from, by their index in
// the draft.
func (w *writer) sizesIn(d size.Draft) (all []int) {
	for _, i := range w.sizeList() {
		if k := d.Index(w.Pattern.Sizes.Sizes[i]); k >= 0 {
			all = append(all, k)
		}
	}
	return
}

func (w *writer) sizeRow(d size.Draft, r *size.Row, values []measure.Length, inches bool) booklet.Row {
	row := booklet.Row{When: w.when(w.RowCond(r)), Cells: []booklet.Cell{{Text: typed(r.Name)}}}
	ranged := r.Limits != nil && len(values) > 0 && &values[0] == &r.Values[0]
	for _, i := range w.sizesIn(d) {
		text := ""
		switch {
		case ranged:
			text = w.bare(r, r.Limits[i], inches) + "–" + w.bare(r, r.Limits[i+1], inches)
		case i < len(values):
			text = w.bare(r, values[i], inches)
		}
		row.Cells = append(row.Cells, booklet.Cell{Text: plain(text)})
	}
	return row
}

// bare words a body measure without its unit, which stands above the table. What
// the author wrote is exact; the other system is rounded.
func (w *writer) bare(r *size.Row, l measure.Length, inches bool) string {
	i, m := w.Pattern.Sizes.InTable(r, l)
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
