package model

import (
	"math/big"
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/measure"
	"seamwarden/compiler/size"
	"seamwarden/dsl"
	"seamwarden/dsl/finding"
)

// Promise tells how much of a material is enough, lying so wide, in the garments of a
// condition: one amount for each size. It is a row of `cloth`, or the sentences `needs`
// that speak of the same cloth and garments.
type Promise struct {
	Material *Material
	Width    measure.Measure // nothing if it holds for every width
	Cond     condition.Cond  // in every size
	Draft    *size.Draft     // the draft that it stands in, nil above the drafts
	Row      *size.Row       // nil if it is made of sentences
	Cells    []*Amount       // by the sizes of the pattern, one without sizes; nil if it is not told
	Span     finding.Span    // the key of the row, or the first sentence
	WidthAt  finding.Span    // where the width is said; nothing if it is not
}

// Has reports whether the amount for the size with the number i is told; a pattern
// without sizes asks for -1.
func (p *Promise) Has(i int) bool { return p.Cell(i) != nil }

// Cell gives the amount for the size with the number i, nil if none is told.
func (p *Promise) Cell(i int) *Amount {
	if i = max(i, 0); i < len(p.Cells) {
		return p.Cells[i]
	}
	return nil
}

// SaidOnce is the one amount that a sentence tells for all sizes; nil if the sizes
// have amounts of their own.
func (p *Promise) SaidOnce() *Amount {
	for _, c := range p.Cells {
		if c == nil || c != p.Cells[0] {
			return nil
		}
	}
	if len(p.Cells) == 0 {
		return nil
	}
	return p.Cells[0]
}

// InTable reports whether it stands in a table.
func (p *Promise) InTable() bool { return p.Row != nil }

// ForWidth reports whether it tells of a material where that lies so wide.
func (p *Promise) ForWidth(m *Material, width measure.Length) bool {
	return p.Material == m && (p.Width.Length.IsZero() || p.Width.Length == width)
}

// Told says for which garments and sizes a promise tells an amount. A cell that could
// not be read is reported elsewhere, and counts as told.
func (p *Pattern) Told(x *Promise) condition.Cond {
	return p.Space.And(x.Cond, p.InSizes(func(i int) bool {
		if x.Row != nil {
			return size.DraftRow{Row: x.Row, Draft: x.Draft}.Cell(p.Sizes, i) >= 0
		}
		return x.Has(i)
	}))
}

// promises gathers what is promised: the rows of the table, then the sentences.
func (b *builder) promises(sources []Source) {
	if b.Sizes != nil {
		for _, r := range b.Sizes.ClothRows() {
			if m := b.rowCloth[r.Row]; m != nil {
				b.Promises = append(b.Promises, b.fromRow(r, m))
			}
		}
	}
	b.each(sources, func(s Source) {
		b.needs(s)
		if _, head := s.Node.(*dsl.Pattern); head {
			b.inside(s, b.needs)
		}
	})
}

func (b *builder) fromRow(r size.DraftRow, m *Material) *Promise {
	p := &Promise{Material: m, Width: r.Width, Cond: b.rowConds[r.Row], Draft: r.Draft, Row: r.Row, Span: r.KeySpan, WidthAt: r.WidthSpan}
	for i := range b.Sizes.Sizes {
		var cell *Amount
		if k := r.Cell(b.Sizes, i); r.Has(k) {
			cell = &Amount{measure.Measure{Length: r.Values[k], Unit: r.Unit}, r.ValueSpans[k]} // in the unit of the row
		}
		p.Cells = append(p.Cells, cell)
	}
	return p
}

// needs reads a sentence of one amount. What names a file was read with the table.
func (b *builder) needs(s Source) {
	n, ok := s.Node.(*dsl.Needs)
	if !ok || n.File != nil {
		return
	}
	m, amount := b.materialNamed(n.Material), b.amount(n.Amount)
	if m == nil || amount == nil {
		return
	}
	p := &Promise{Material: m, Cond: b.Space.And(b.guard(n), m.Cond), Span: s.Span(s.File), Cells: make([]*Amount, b.sizeCount())}
	if w := b.amount(n.Width); w != nil {
		p.Width, p.WidthAt = w.Measure, w.Span
	}
	if n.View != nil {
		c, ok := b.viewNamed(n.View)
		if !ok {
			return
		}
		p.Cond = b.Space.And(p.Cond, c)
	}
	if n.Size == nil {
		for i := range p.Cells {
			p.Cells[i] = amount
		}
		b.Promises = append(b.Promises, p)
		return
	}
	if i, ok := b.sizeNamed(n.Size); ok {
		b.promisedFor(p, i, amount)
	}
}

// promisedFor adds an amount for one size to what is promised of the same cloth and
// garments, if nothing is for this size yet.
func (b *builder) promisedFor(p *Promise, i int, amount *Amount) {
	for _, old := range b.Promises {
		if old.Row == nil && old.Material == p.Material && old.Width.Length == p.Width.Length && old.Cond == p.Cond && old.Cells[i] == nil {
			old.Cells[i] = amount
			return
		}
	}
	p.Cells[i] = amount
	b.Promises = append(b.Promises, p)
}

func (b *builder) sizeCount() int {
	if b.Sizes == nil {
		return 1
	}
	return max(1, len(b.Sizes.Sizes))
}

// viewNamed gives the garments of a view that a sentence names.
func (b *builder) viewNamed(id *dsl.ViewID) (condition.Cond, bool) {
	if g := b.guards[id.Text]; g != nil && g.view != nil {
		g.decl.Used = true
		return b.is(g.view), true
	}
	if !b.lost[id.Text] {
		b.reportOnce(unknownView(id, ids(b.Views, func(v *View) string { return v.ID })), "in view "+id.Text)
	}
	return condition.False, false
}

// sizeNamed gives the number of a size that a sentence names.
func (b *builder) sizeNamed(id *dsl.ViewID) (int, bool) {
	var known []string
	if b.Sizes != nil {
		known = b.Sizes.Sizes
		if i := b.Sizes.Index(id.Text); i >= 0 {
			return i, true
		}
	}
	if b.Sizes != nil || b.SizesFile.Text == "" { // else the table could not be read
		b.reportOnce(unknownSize(id, known), "size "+id.Text)
	}
	return 0, false
}

// Spared is how much more than a lay takes may be promised, in hundredths of it, and
// whether the pattern says so.
func (p *Pattern) Spared() (percent int64, said bool) {
	if p.Spare == nil {
		return usualSpare, false
	}
	return p.Spare.Percent, true
}

// usualSpare is what a promise may lie above a lay where the pattern says nothing: room
// for a layout that is less clever than the shortest (common practice, no source).
const usualSpare = 15

// Spare is a share in hundredths.
type Spare struct {
	Percent int64
	Span    finding.Span
}

func (b *builder) spare(n *dsl.Spare) {
	r, ok := new(big.Rat).SetString(strings.TrimSuffix(n.By.Text, "%"))
	if !ok || !strings.HasSuffix(n.By.Text, "%") || !r.IsInt() || r.Sign() < 0 || r.Cmp(big.NewRat(100, 1)) > 0 {
		b.report(badSpare(n))
		return
	}
	b.Spare = &Spare{r.Num().Int64(), dsl.SpanOf(n.By.Tokens)}
}

// NeedsFiles finds the names of the tables that sentences `needs "FILE"` name.
func NeedsFiles(sources []Source) (all []Text) {
	add := func(n any) {
		if n, ok := n.(*dsl.Needs); ok && n.File != nil {
			all = append(all, text(n.File))
		}
	}
	for _, s := range sources {
		add(s.Node)
		if _, head := s.Node.(*dsl.Pattern); head {
			for _, i := range s.Body {
				add(i.Node)
			}
		}
	}
	return
}
