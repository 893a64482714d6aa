package check

import (
	"slices"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// DrawnUp is how long a row is that an operation gathers, and how long the row that it is
// sewn to, in millimetres by the number of the size, in the garments of Cond. A pattern
// without sizes has one of each; what is not drawn is no number.
type DrawnUp struct {
	Cond     condition.Cond
	From, To []float64
}

// Gathers gives for each operation that gathers a whole row of a seam by how much, as
// far as both rows are drawn.
func Gathers(p *model.Pattern) map[*model.Op][]DrawnUp {
	if !slices.ContainsFunc(p.Ops(), func(op *model.Op) bool { return oneOf(op.Verb, gatherers) }) {
		return nil
	}
	r := newRun(p)
	out := map[*model.Op][]DrawnUp{}
	r.eachFull(func(s *model.Seam, full fullness, rows []rowLengths) bool {
		if !full.gathers || full.op == nil || full.row < 0 || !wholeRow(s, full) {
			return false
		}
		for _, l := range rows {
			if l.known() {
				out[full.op] = append(out[full.op], DrawnUp{l.cond, l.rows[full.row], l.rows[1-full.row]})
			}
		}
		return true // the other side of the body has the same lengths
	})
	return out
}

// wholeRow reports whether an operation names every edge of the row that it gathers, and
// all of each.
func wholeRow(s *model.Seam, full fullness) bool {
	for _, t := range [2][]*model.Target{s.Joins, s.To}[full.row] {
		named := false
		for _, o := range full.op.Objects {
			o.Each(func(x *model.Target) {
				named = named || x.From == nil && slices.ContainsFunc(t.Uses, func(u *model.EdgeUse) bool { return slices.Contains(x.Uses, u) })
			})
		}
		if !named {
			return false
		}
	}
	return true
}
