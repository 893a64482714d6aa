package wording

import (
	"fmt"
	"slices"
	"strings"

	"seamwarden/compiler/booklet"
	"seamwarden/compiler/condition"
	"seamwarden/compiler/measure"
	"seamwarden/compiler/model"
	"seamwarden/compiler/size"
)

// value words what a brace in a text fetches.
func (w *writer) value(b *model.Brace) []booklet.Inline {
	switch b.Word {
	case "allow":
		if a := b.Target.Seam.Allow; a != nil {
			return w.amount(a)
		}
		return plain(w.ph.Before["no-allowance"])
	case "piece", "name":
		return plain(strings.TrimPrefix(w.thing(b.Target, true), "the "))
	case "number":
		return plain(fmt.Sprint(b.Target.Piece.Number))
	case "step":
		text := plain(strings.ToLower(w.ph.Labels["step"]) + "\u00a0" + fmt.Sprint(w.numbers[b.Step]))
		if w.numbers[b.Step] == 0 {
			return plain(b.Step.Title.Text)
		}
		return []booklet.Inline{booklet.Link{To: w.stepIDs[b.Step], Text: text}}
	case "count":
		return w.countOf(b.Target)
	case "takes":
		if b.Target.Shaping.Takes != nil {
			return w.amount(b.Target.Shaping.Takes)
		}
	case "wide":
		if b.Target.Gap.Wide != nil {
			return w.amount(b.Target.Gap.Wide)
		}
	case "edition":
		return plain(w.Edition)
	case "view":
		return plain(b.Args[0])
	case "length":
		return w.lengthOf(b.Target)
	case "finished", "body", "ease", "sizes":
		return w.sizeValue(b)
	}
	return nil
}

// countOf words how many of a notion the steps use: a range where it depends on
// what is chosen.
func (w *writer) countOf(t *model.Target) []booklet.Inline {
	if t.Notion == nil {
		return plain(fmt.Sprint(t.Bit.Count))
	}
	return plain(w.notionCount(t.Notion))
}

func (w *writer) lengthOf(t *model.Target) []booklet.Inline {
	n := t.Notion
	switch {
	case n == nil && t.Bit != nil && t.Bit.Length != nil:
		return w.amount(t.Bit.Length)
	case n != nil && n.Length != nil:
		return w.amount(n.Length)
	case n != nil && n.BySize != "":
		return w.rowRange(w.Pattern.Sizes.FindAll(n.BySize))
	case n != nil && len(n.Cuts) == 1 && n.Cuts[0].Length != nil:
		return w.amount(n.Cuts[0].Length)
	case n != nil && len(n.Cuts) == 1:
		return w.rowRange(w.Pattern.Sizes.FindAll(n.Cuts[0].BySize))
	}
	return nil
}

// sizeValue words a row of the size table: one value for one size, else the
// smallest and the largest.
func (w *writer) sizeValue(b *model.Brace) []booklet.Inline {
	c := w.Pattern.Sizes
	var rows []size.DraftRow
	switch b.Word {
	case "finished", "ease":
		rows = c.FindIn(size.FinishedPart, b.Row)
	case "body":
		rows = c.FindIn(size.BodyPart, b.Row)
	}
	if len(rows) == 0 {
		rows = c.FindAll(b.Row)
	}
	if b.Word != "ease" {
		return w.rowRange(rows)
	}
	return w.rangeOf(rows, func(r size.DraftRow) []measure.Length {
		if r.Draft == nil {
			return c.Ease(r.Row)
		}
		return r.Draft.Ease(r.Row)
	})
}

func (w *writer) rowRange(rows []size.DraftRow) []booklet.Inline {
	return w.rangeOf(rows, func(r size.DraftRow) []measure.Length { return r.Values })
}

// rangeOf words the smallest and the largest of some lengths of a row. Rows of several
// drafts that are left to choose from stand one after the other, each with its draft.
func (w *writer) rangeOf(rows []size.DraftRow, values func(size.DraftRow) []measure.Length) (out []booklet.Inline) {
	rows = slices.DeleteFunc(slices.Clone(rows), func(r size.DraftRow) bool { return r.Draft != nil && !w.there(w.DraftCond(*r.Draft)) })
	for _, r := range rows {
		text := w.rangeIn(r, values(r))
		if len(text) == 0 {
			continue
		}
		if len(out) > 0 {
			out = add(out, booklet.Text("; "))
		}
		out = add(out, text...)
		if len(rows) > 1 {
			out = add(out, booklet.Text(" ("+r.Draft.Name+")"))
		}
	}
	return
}

func (w *writer) rangeIn(r size.DraftRow, values []measure.Length) []booklet.Inline {
	var lo, hi *measure.Length
	for _, i := range w.sizeList() {
		k := r.Cell(w.Pattern.Sizes, i)
		if k < 0 || k >= len(values) {
			continue
		}
		v := values[k]
		if lo == nil || v.Cmp(*lo) < 0 {
			lo = &v
		}
		if hi == nil || v.Cmp(*hi) > 0 {
			hi = &v
		}
	}
	if lo == nil {
		return nil
	}
	out := []booklet.Inline{w.inRow(r.Row, *lo)}
	if *lo != *hi {
		out = add(out, booklet.Text(" to "))
		out = add(out, w.inRow(r.Row, *hi))
	}
	return out
}

// inRow words a length of a row of the size table, rounded as the table declares.
func (w *writer) inRow(row *size.Row, l measure.Length) booklet.Measure {
	i, m := w.Pattern.Sizes.Print(row, l)
	return booklet.Measure{Imperial: i, Metric: m, MetricFirst: row.Unit.System() == measure.Metric}
}

// sizeList gives the sizes that are left to choose from, by index.
func (w *writer) sizeList() (all []int) {
	if w.Pattern.Sizes == nil {
		return nil
	}
	for v := range condition.VarID(w.Space.Vars()) {
		if w.Space.Var(v).Kind == condition.Size && int(v) < len(w.chosen) && w.chosen[v] >= 0 {
			return []int{w.chosen[v]}
		}
	}
	for i := range w.Pattern.Sizes.Sizes {
		all = append(all, i)
	}
	return
}
