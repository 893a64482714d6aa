package model

import (
	"seamwarden/dsl"
)

// stock reads what is bought: materials, notions, tools, and strips cut by
// measure.
func (b *builder) stock(s Source) {
	switch n := s.Node.(type) {
	case *dsl.Material:
		b.material(s, n)
	case *dsl.Notion:
		b.notion(s, n)
	case *dsl.Supply:
		u := &Supply{Word: n.Kind, Decl: Decl{Name: dsl.Unquote(n.Label.Text), Span: dsl.SpanOf(n.Label.Tokens), Cond: b.guard(n)}}
		if n.ID != nil {
			u.ID = n.ID.Text
		}
		b.Supplies = append(b.Supplies, u)
	}
}

func (b *builder) material(s Source, n *dsl.Material) {
	m := &Material{Decl: b.decl(n.ID, n.Label, n), Interfacing: n.Kind == "interfacing"}
	for _, f := range n.Flags {
		switch f {
		case "fusible":
			m.Fusible = true
		case "sew-in", "two-faced":
			m.NoRightSide = true
		case "stretch":
			m.Stretch = true
		case "one-way":
			m.OneWay = true
		}
	}
	b.inside(s, func(i Source) {
		switch p := i.Node.(type) {
		case *dsl.Widths:
			m.Widths = b.amounts(p.Of)
		case *dsl.Setting:
			m.Suggested = dsl.Unquote(p.Value.Text)
		case *dsl.NoRightSide:
			m.NoRightSide = true
		case *dsl.Shrinks, *dsl.Selvedges, *dsl.Clearance, *dsl.Laying:
			b.laying(m, p)
		case *dsl.Text:
			b.noteInto(&m.Notes)(i)
		}
	})
	if b.name(&m.Decl, m, n.Kind) {
		b.Materials = append(b.Materials, m)
	}
}

func (b *builder) notion(s Source, n *dsl.Notion) {
	t := &Notion{Decl: b.decl(n.ID, n.Label, n), Word: n.Kind, Listed: b.count(n.Count), Length: b.amount(n.Amount), Props: map[string]Amount{}}
	if n.Count != nil {
		t.Count = dsl.SpanOf(n.Count.Tokens)
	}
	if n.Kind != "notion" {
		t.Kind = ByLength
	}
	b.inside(s, func(i Source) { b.notionProperty(t, i) })
	if b.name(&t.Decl, t, n.Kind) {
		b.Notions = append(b.Notions, t)
	}
}

func (b *builder) notionProperty(t *Notion, s Source) {
	switch p := s.Node.(type) {
	case *dsl.Property:
		switch {
		case p.Ref != nil:
			t.BySize = b.sizeRow(p.Ref)
		case p.Key.Text == "length":
			t.Length = b.amount(p.Amount)
		default:
			if a := b.amount(p.Amount); a != nil {
				t.Props[p.Key.Text] = *a
			}
		}
	case *dsl.Parts:
		t.Set = p.Set
		for _, n := range p.Names {
			t.Parts = append(t.Parts, n.Text)
		}
	case *dsl.CutLengths:
		c := NotionCut{Count: b.count(p.Count), Length: b.amount(p.Amount), Cond: b.Space.And(t.Cond, b.guard(p))}
		if p.Ref != nil {
			c.BySize = b.sizeRow(p.Ref)
		}
		t.Cuts = append(t.Cuts, c)
	case *dsl.Wear:
		b.wearing(p, Wearing{What: &t.Decl, Thing: t, Word: t.Word})
	case *dsl.Trait:
		t.Fill = true
	case *dsl.Text:
		b.noteInto(&t.Notes)(s)
	}
}

// sizeRow reads sizes.zip: the row of the size table that holds a length.
func (b *builder) sizeRow(r *dsl.Ref) string {
	at := dsl.SpanOf(r.Tokens)
	if len(r.Parts) != 2 || r.Parts[0] != "sizes" {
		b.report(notASizeRow(at, join(r.Parts)))
		return ""
	}
	if b.Sizes == nil {
		b.report(noSizeTable(at, r.Parts[1]))
		return ""
	}
	if len(b.Sizes.FindAll(r.Parts[1])) == 0 {
		b.report(unknownSizeRow(at, r.Parts[1], b.rowKeys()))
		return ""
	}
	return r.Parts[1]
}

func (b *builder) rowKeys() (keys []string) {
	if b.Sizes == nil {
		return nil
	}
	for _, r := range b.Sizes.Rows() {
		if r.Of == "" {
			keys = append(keys, r.Key)
		}
	}
	return
}

// strip reads a piece that is cut by measure, after the materials are known.
func (b *builder) strip(n *dsl.Strip) {
	t := &Strip{Decl: b.decl(n.ID, n.Label, n), Number: b.count(n.Number), Count: b.count(n.Count)}
	if w := b.amount(n.Width); w != nil {
		t.Width = *w
	}
	if l := b.amount(n.Length); l != nil {
		t.Length = *l
	}
	t.Material = b.materialNamed(n.From)
	t.Lay = b.lay(nil, n.Lay)
	if t.Material != nil {
		t.Cond = b.Space.And(t.Cond, t.Material.Cond)
	}
	if !b.name(&t.Decl, t, "strip") {
		return
	}
	b.Strips = append(b.Strips, t)
	for _, bit := range n.Into {
		b.bit(t, bit)
	}
}

func (b *builder) bit(t *Strip, n *dsl.StripBit) {
	x := &Bit{Strip: t, Count: 1, Length: b.amount(n.Amount)}
	x.Cond = t.Cond
	id := n.ID
	if id == nil {
		x.Count = b.count(n.Count)
		id = n.As
	}
	if id != nil {
		x.ID, x.Name, x.Span = id.Text, words(id.Text), dsl.SpanOf(id.Tokens)
		if !b.name(&x.Decl, x, "part of a strip") {
			return
		}
	}
	t.Bits = append(t.Bits, x)
}

// materialNamed finds a material, or reports that there is none of that name.
func (b *builder) materialNamed(n *dsl.Name) *Material {
	if m, ok := b.names[n.Text].(*Material); ok {
		m.Used = true
		return m
	}
	if !b.lost[n.Text] {
		known := b.namesOf(func(x any) bool { _, ok := x.(*Material); return ok })
		b.reportOnce(b.spelt(unknownMaterial(n, known), dsl.SpanOf(n.Tokens), n.Text, known), n.Text)
	}
	return nil
}

// namesOf lists the declared names that pass a test.
func (b *builder) namesOf(want func(any) bool) (all []string) {
	for n, x := range b.names {
		if want(x) {
			all = append(all, n)
		}
	}
	return
}
