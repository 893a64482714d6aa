package wording

import (
	"fmt"
	"strings"

	"seamwarden/compiler/assembly"
	"seamwarden/compiler/booklet"
	"seamwarden/compiler/condition"
	"seamwarden/compiler/measure"
	"seamwarden/compiler/model"
	"seamwarden/compiler/size"
)

// buy makes the shopping list.
func (w *writer) buy() *booklet.Chapter {
	ch := w.chapter("buy")
	b := w.ph.Buy
	if t := w.materials(); len(t.Rows) > 0 {
		ch.Blocks = append(ch.Blocks, w.heading(b["fabric"]), t)
		for _, m := range w.Materials {
			ch.Blocks = append(ch.Blocks, w.aboutMaterial(m)...)
		}
		amounts := w.cloth()
		if len(amounts) == 0 {
			amounts = []booklet.Block{para(plain(b["not-computed"]))}
		}
		ch.Blocks = append(ch.Blocks, amounts...)
	}
	if t := w.notions(); len(t.Rows) > 0 {
		ch.Blocks = append(ch.Blocks, w.heading(b["notions"]), t)
		ch.Blocks = append(ch.Blocks, w.lengths()...)
	}
	if len(ch.Blocks) == 0 {
		return nil
	}
	return ch
}

// aboutMaterial prints what the author says of a material beyond its row.
func (w *writer) aboutMaterial(m *model.Material) (out []booklet.Block) {
	if !w.there(m.Cond) {
		return nil
	}
	name := []booklet.Inline{booklet.Strong{Text: plain(m.Name + ".")}, booklet.Text(" ")}
	if m.Shrinks != nil {
		say := w.ph.Buy["shrinks"]
		if w.amountTold(m) {
			say = w.ph.Buy["shrinks-counted"]
		}
		out = append(out, para(add(name, plain(put(say, "n", m.Shrinks.Text))...)))
	}
	for _, n := range m.Notes {
		if !w.there(n.Cond) {
			continue
		}
		for _, b := range w.prose(n) {
			if p, ok := b.(*booklet.Paragraph); ok {
				p.Text = add(append([]booklet.Inline(nil), name...), p.Text...)
			}
			out = append(out, b)
		}
	}
	return
}

func (w *writer) materials() *booklet.Table {
	b := w.ph.Buy
	t := &booklet.Table{ID: w.id("table", "materials"), Caption: b["materials"], RowHead: true,
		Columns: []booklet.Column{{Head: plain(b["material"])}, {Head: plain(b["suggested"])}, {Head: plain(b["widths"])}}}
	for _, m := range w.Materials {
		if !w.there(m.Cond) {
			continue
		}
		about := m.Suggested
		if m.Fusible {
			about = strings.TrimPrefix(about+", "+b["fusible"], ", ")
		}
		var widths []booklet.Inline
		for i, a := range m.Widths {
			if i > 0 {
				widths = append(widths, booklet.Break{})
			}
			widths = append(widths, w.measure(a.Measure, measure.Width))
		}
		t.Rows = append(t.Rows, booklet.Row{When: w.when(m.Cond), Cells: []booklet.Cell{{Text: typed(m.Name)}, {Text: typed(upper(about))}, {Text: widths}}})
	}
	return t
}

// cloth tells how much of each material to buy, once in yards and once in metres: as the
// pattern says it, and where it does not, as the lays take it.
func (w *writer) cloth() (out []booklet.Block) {
	groups, computed := w.layGroups(), false
	for _, inches := range w.systems() {
		unit := w.ph.Buy["metres"]
		if inches {
			unit = w.ph.Buy["yards"]
		}
		t := &booklet.Table{ID: w.id("table", "cloth", unit), RowHead: true,
			Caption: put(put(w.ph.Buy["amounts-in"], "what", w.ph.Buy["fabric"]), "unit", unit),
			Columns: []booklet.Column{{Head: plain(w.ph.Buy["material"])}}}
		for _, i := range w.sizeColumns() {
			head := w.ph.Buy["amounts"]
			if i >= 0 {
				head = w.Pattern.Sizes.Sizes[i]
			}
			t.Columns = append(t.Columns, booklet.Column{Head: plain(head), Numeric: true})
		}
		for _, p := range w.Promises {
			if w.there(p.Cond) {
				t.Rows = append(t.Rows, w.clothRow(p, inches))
			}
		}
		for _, g := range groups {
			if c := w.unpromised(g); w.there(c) {
				t.Rows = append(t.Rows, w.laidRow(g, c, inches))
				computed = true
			}
		}
		if len(t.Rows) > 0 {
			out = append(out, t)
		}
	}
	if computed {
		out = append(out, para(plain(w.ph.Buy["from-layouts"])))
	}
	return
}

// sizeColumns gives the sizes that are left to choose from; only -1 in a pattern
// without sizes.
func (w *writer) sizeColumns() []int {
	if w.Pattern.Sizes == nil {
		return []int{-1}
	}
	return w.sizeList()
}

// systems gives the order of the two unit systems: true is inches.
func (w *writer) systems() []bool {
	system := measure.Imperial
	switch {
	case w.Pattern.Sizes != nil:
		system = w.Pattern.Sizes.Unit.System()
	case len(w.Promises) > 0:
		system = w.Promises[0].Cells[0].Unit.System()
	case w.metric:
		system = measure.Metric
	}
	return []bool{system != measure.Metric, system == measure.Metric}
}

func (w *writer) clothRow(p *model.Promise, inches bool) booklet.Row {
	name := p.Material.Name
	if p.Draft != nil {
		name += ", " + p.Draft.Name
	}
	head := typed(name)
	if !p.Width.Length.IsZero() {
		head = add(head, booklet.Text(", "))
		head = add(head, w.measure(p.Width, measure.Width))
	}
	row := booklet.Row{When: w.when(p.Cond), Cells: []booklet.Cell{{Text: head}}}
	for _, i := range w.sizeColumns() {
		text := ""
		if a := p.Cell(i); a != nil {
			yd, m := w.toBuy(a)
			text = number(m)
			if inches {
				text = number(yd)
			}
		}
		row.Cells = append(row.Cells, booklet.Cell{Text: plain(text)})
	}
	return row
}

// toBuy words an amount of cloth in yards and in metres, as the table says to round.
func (w *writer) toBuy(a *model.Amount) (yards, metres string) {
	steps := measure.Steps{}
	if w.Pattern.Sizes != nil {
		steps = w.Pattern.Sizes.Rounding[size.ClothPart]
	}
	return steps.Print(a.Length, measure.Cloth, a.Unit.System(), measure.English)
}

func (w *writer) notions() *booklet.Table {
	b := w.ph.Buy
	t := &booklet.Table{ID: w.id("table", "notions"), Caption: b["list"], RowHead: true,
		Columns: []booklet.Column{{Head: plain(b["notion"])}, {Head: plain(b["how-many"])}}}
	add := func(c condition.Cond, name, count string) {
		if w.there(c) {
			t.Rows = append(t.Rows, booklet.Row{Tick: true, When: w.when(c), Cells: []booklet.Cell{{Text: typed(name)}, {Text: plain(count)}}})
		}
	}
	for _, n := range w.Notions {
		if !w.there(n.Cond) {
			continue
		}
		if n.Kind == model.ByLength {
			t.Rows = append(t.Rows, booklet.Row{Tick: true, When: w.when(n.Cond), Cells: []booklet.Cell{{Text: typed(n.Name)}, {Text: w.notionLength(n)}}})
			continue
		}
		add(n.Cond, n.Name, w.notionCount(n))
	}
	for _, s := range w.Supplies {
		add(s.Cond, s.Name, b["as-needed"])
	}
	return t
}

// notionCount words how many of a notion the steps use. Where that depends on
// what is chosen, each number stands with its garments.
func (w *writer) notionCount(n *model.Notion) string {
	uses := w.facts.OfNotion(n)
	if len(n.Parts) > 0 { // each has every half once
		uses = w.facts.Stock[assembly.StockKey{Notion: n, Half: n.Parts[0]}]
	}
	sums := w.facts.Totals(uses)
	var parts []string
	for _, total := range assembly.Sums(sums) {
		c := w.Space.And(sums[total], n.Cond)
		if total == 0 || !w.there(c) {
			continue
		}
		s := fmt.Sprint(total)
		if n.Set {
			s = put(w.ph.Buy["set"], "n", s)
			if total == 1 {
				s = w.ph.Buy["set-one"]
			}
		}
		if at := w.within(c, n.Cond); at != "" {
			s += " " + lower(at)
		}
		parts = append(parts, s)
	}
	if len(parts) == 0 && n.Listed > 0 {
		return fmt.Sprint(n.Listed)
	}
	return strings.Join(parts, "; ")
}

func (w *writer) notionLength(n *model.Notion) []booklet.Inline {
	switch {
	case n.Length != nil:
		return w.amount(n.Length)
	case n.BySize != "":
		return w.rowRange(w.Pattern.Sizes.FindAll(n.BySize))
	case len(n.Cuts) > 0:
		return w.cutLengths(n)
	}
	return plain(w.ph.Buy["as-needed"])
}

// cutLengths adds up the lengths that are cut from a webbing or tape, for each
// set of garments.
func (w *writer) cutLengths(n *model.Notion) (out []booklet.Inline) {
	for _, c := range n.Cuts {
		if !w.there(c.Cond) {
			continue
		}
		if len(out) > 0 {
			out = add(out, booklet.Text("; "))
		}
		out = add(out, booklet.Text(fmt.Sprintf("%d × ", c.Count)))
		if c.Length != nil {
			out = add(out, w.amount(c.Length)...)
		} else if c.BySize != "" {
			out = add(out, w.rowRange(w.Pattern.Sizes.FindAll(c.BySize))...)
		}
	}
	return
}

// lengths makes the tables of notions whose length goes by size: of what all drafts
// have, and of each draft's own.
func (w *writer) lengths() (out []booklet.Block) {
	if len(w.sizeList()) < 2 {
		return nil
	}
	title, c := w.ph.Buy["lengths"], w.Pattern.Sizes
	out = w.sizeTables(title, size.Draft{Chart: c}, w.bySize(c.Find), plainValues)
	for _, d := range c.Drafts {
		own := func(key string) *size.Row {
			if c.Find(key) != nil {
				return nil
			}
			return d.Find(key)
		}
		if w.there(w.DraftCond(d)) {
			out = append(out, w.sizeTables(put(put(w.ph.Sizes["in-draft"], "what", title), "draft", d.Name), d, w.bySize(own), plainValues)...)
		}
	}
	return out
}

// bySize gives the rows of notions whose length goes by size, called by the notion.
func (w *writer) bySize(find func(key string) *size.Row) (rows []*size.Row) {
	add := func(n *model.Notion, key string) {
		if key == "" || !w.there(n.Cond) {
			return
		}
		if r := find(key); r != nil {
			x := *r
			x.Name = n.Name
			rows = append(rows, &x)
		}
	}
	for _, n := range w.Notions {
		add(n, n.BySize)
		for _, c := range n.Cuts {
			add(n, c.BySize)
		}
	}
	return rows
}
