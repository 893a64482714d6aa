package model

import (
	"seamwarden/compiler/condition"
	"seamwarden/compiler/size"
	"seamwarden/dsl"
	"seamwarden/dsl/finding"
)

// rows reads the guards of the size table, and ties rows of cloth to their
// materials.
func (b *builder) rows() {
	b.rowConds = map[*size.Row]condition.Cond{}
	b.rowCloth = map[*size.Row]*Material{}
	if b.Sizes == nil {
		return
	}
	for _, r := range b.Sizes.Rows() {
		b.rowConds[r] = condition.True
		if r.When == "" {
			continue
		}
		if g, ok := b.rowGuard(r.When, r.WhenSpan, r.Inherited); ok {
			b.rowConds[r] = g
		}
	}
	b.draftConds = map[string]condition.Cond{}
	for _, d := range b.Sizes.Drafts {
		b.draft(d)
	}
	for _, r := range b.Sizes.Rows() {
		if r.Part != size.ClothPart {
			continue
		}
		m, ok := b.names[r.Of].(*Material)
		if !ok {
			b.reportOnce(unknownCloth(r, b.namesOf(func(x any) bool { _, ok := x.(*Material); return ok })), r.Of)
			continue
		}
		b.rowCloth[r] = m
		b.rowConds[r] = b.Space.And(b.rowConds[r], m.Cond)
	}
}

// rowGuard reads a guard of the table. A row that a draft has from above was
// reported there.
func (b *builder) rowGuard(text string, at finding.Span, quiet bool) (condition.Cond, bool) {
	g, bad := dsl.ParseGuard(text, at)
	switch {
	case bad != nil && !quiet:
		b.report(*bad)
		return condition.True, false
	case bad != nil:
		return condition.True, false
	}
	return b.or(g), true
}

// draft reads the guard of a draft, and narrows its own rows to it. The rows from
// above hold in every draft.
func (b *builder) draft(d size.Draft) {
	c := condition.True
	if d.When != "" {
		c, _ = b.rowGuard(d.When, d.WhenSpan, false)
	}
	b.draftConds[d.Key] = c
	for _, r := range d.Rows() {
		b.rowConds[r] = b.Space.And(b.rowConds[r], c)
	}
}

// DraftCond says for which garments a draft is drawn: all, if it has no guard.
func (p *Pattern) DraftCond(d size.Draft) condition.Cond {
	if c, ok := p.draftConds[d.Key]; ok {
		return c
	}
	return condition.True
}

// RowCond says for which garments a row of the size table holds.
func (p *Pattern) RowCond(r *size.Row) condition.Cond {
	if c, ok := p.rowConds[r]; ok {
		return c
	}
	return condition.True
}

// MaterialOf gives the material of a row of cloth, nil for other rows.
func (p *Pattern) MaterialOf(r *size.Row) *Material { return p.rowCloth[r] }

// chooseFor tells the table for whom the pattern is: for children the height leads.
func (b *builder) chooseFor() {
	if b.Sizes != nil {
		b.Sizes.Choose.Children = b.ForChildren()
	}
}
