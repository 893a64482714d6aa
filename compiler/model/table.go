package model

import (
	"seamwarden/compiler/condition"
	"seamwarden/compiler/size"
	"seamwarden/dsl"
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
		g, bad := dsl.ParseGuard(r.When, r.WhenSpan)
		if bad != nil {
			b.report(*bad)
			continue
		}
		b.rowConds[r] = b.or(g)
	}
	for i := range b.Sizes.Cloth {
		r := &b.Sizes.Cloth[i]
		m, ok := b.names[r.Of].(*Material)
		if !ok {
			b.reportOnce(unknownCloth(r, b.namesOf(func(x any) bool { _, ok := x.(*Material); return ok })), r.Of)
			continue
		}
		b.rowCloth[r] = m
		b.rowConds[r] = b.Space.And(b.rowConds[r], m.Cond)
	}
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
