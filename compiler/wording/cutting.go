package wording

import (
	"fmt"
	"strings"

	"seamwarden/compiler/booklet"
	"seamwarden/compiler/model"
)

// cutting makes the cutting table: grouped by material, then by piece.
func (w *writer) cutting() *booklet.Chapter {
	c := w.ph.Cut
	t := &booklet.Table{ID: w.id("table", "cutting"), Caption: c["table"], RowHead: true,
		Columns: []booklet.Column{{Head: plain(c["piece"])}, {Head: plain(c["number"]), Numeric: true}, {Head: plain(c["cut"]), Numeric: true}, {Head: plain(c["how"])}}}
	glue, small := false, w.thumbs()
	if small != nil {
		t.Columns = append(t.Columns, booklet.Column{Head: plain(c["shape"])})
	}
	for _, m := range w.Materials {
		var rows []booklet.Row
		for _, p := range w.Pieces {
			for _, cut := range p.Cuts {
				if cut.Material == m && w.there(cut.Cond) {
					rows = append(rows, small.row(w.cutRow(cut), cut))
					glue = glue || m.Fusible
				}
			}
		}
		for _, s := range w.Strips {
			if s.Material == m && w.there(s.Cond) {
				rows = append(rows, small.row(w.stripRow(s), nil))
			}
		}
		if len(rows) > 0 {
			t.Rows = append(t.Rows, booklet.Row{Group: true, When: w.when(m.Cond), Cells: []booklet.Cell{{Text: typed(m.Name)}}})
			t.Rows = append(t.Rows, rows...)
		}
	}
	if len(t.Rows) == 0 {
		return nil
	}
	ch := w.chapter("cut")
	intro := c["intro"]
	if glue {
		intro += " " + c["intro-glue"]
	}
	ch.Blocks = append(ch.Blocks, para(plain(intro)))
	if small != nil {
		ch.Blocks = append(ch.Blocks, para(plain(small.legend())))
	}
	ch.Blocks = append(ch.Blocks, t)
	ch.Blocks = append(ch.Blocks, w.pieceNotes()...)
	return ch
}

func (w *writer) cutRow(c *model.Cut) booklet.Row {
	when := ""
	if at := w.within(c.Cond, c.Material.Cond); at != "" {
		when = at
	}
	number := ""
	if c.Piece.Number > 0 {
		number = fmt.Sprint(c.Piece.Number)
	}
	return booklet.Row{Tick: true, When: when, Cells: []booklet.Cell{{Text: plain(c.Piece.Name)}, {Text: plain(number)}, {Text: plain(fmt.Sprint(c.Count))}, {Text: plain(w.lies(c))}}}
}

// lies words how a cut lies on the cloth.
func (w *writer) lies(c *model.Cut) string {
	p, l := w.ph.Cut, c.Lay
	var parts []string
	names := strings.ReplaceAll(strings.Join(l.Names, ", "), "-", " ")
	switch {
	case l.Mirrored && len(l.Names) > 1:
		parts = append(parts, put(put(p["mirrored-pairs"], "n", fmt.Sprint(len(l.Names))), "names", names))
	case l.Mirrored:
		parts = append(parts, p["mirrored"])
	case l.Fold && l.FoldEdge != nil:
		parts = append(parts, put(p["fold-edge"], "edge", edgeName(l.FoldEdge.Name, w.ph)))
	case l.Fold:
		parts = append(parts, p["fold"])
	case l.Up == model.FaceUp && c.Glue:
		parts = append(parts, p["glue-up"])
	case l.Up == model.FaceDown && c.Glue:
		parts = append(parts, p["glue-down"])
	case l.Up == model.FaceUp:
		parts = append(parts, p["up"])
	case l.Up == model.FaceDown:
		parts = append(parts, p["down"])
	case l.Alike:
		parts = append(parts, p["alike"])
	default:
		parts = append(parts, p["either"])
	}
	if !l.Mirrored && len(l.Names) > 0 {
		parts = append(parts, put(p["names"], "names", names))
	}
	if l.Bias {
		parts = append(parts, p["bias"])
	}
	if l.Crossgrain {
		parts = append(parts, p["crossgrain"])
	}
	return upper(strings.Join(parts, ", "))
}

func (w *writer) stripRow(s *model.Strip) booklet.Row {
	p := w.ph.Cut
	how := fill(upper(p["strip"]), filling{"w": w.amount(&s.Width), "l": w.amount(&s.Length)})
	var bits []string
	for _, b := range s.Bits {
		name := b.Name
		if b.Count > 1 {
			name = strings.TrimSpace(fmt.Sprintf("%d %s", b.Count, b.Name))
		}
		bits = append(bits, name)
	}
	if len(bits) > 0 {
		how = add(how, booklet.Text(", "+put(p["bits"], "bits", strings.Join(bits, ", "))))
	}
	number := ""
	if s.Number > 0 {
		number = fmt.Sprint(s.Number)
	}
	return booklet.Row{Tick: true, When: w.within(s.Cond, s.Material.Cond), Cells: []booklet.Cell{{Text: plain(s.Name)}, {Text: plain(number)}, {Text: plain(fmt.Sprint(s.Count))}, {Text: how}}}
}

// pieceNotes prints what the author says of single pieces.
func (w *writer) pieceNotes() []booklet.Block {
	var items []booklet.Term
	for _, p := range w.Pieces {
		if !w.there(p.Cond) {
			continue
		}
		var blocks []booklet.Block
		for _, n := range p.Notes {
			if w.there(n.Cond) {
				blocks = append(blocks, w.guarded(w.within(n.Cond, p.Cond), w.prose(n))...)
			}
		}
		if len(blocks) > 0 {
			items = append(items, booklet.Term{ID: w.id("piece", p.ID), Word: p.Name, Blocks: blocks})
		}
	}
	if len(items) == 0 {
		return nil
	}
	return []booklet.Block{w.heading(w.ph.Cut["notes"]), &booklet.Terms{Items: items}}
}
