package model

import (
	"slices"

	"seamwarden/compiler/condition"
	"seamwarden/dsl"
	"seamwarden/dsl/finding"
)

// eachStep reads the sections and steps: first the names that they declare, then
// what they do, since a step may refer to one that comes later.
func (b *builder) eachStep(sources []Source) {
	var later []func()
	var loose *Section
	b.each(sources, func(s Source) {
		switch n := s.Node.(type) {
		case *dsl.Section:
			sec := &Section{Title: text(n.Label), Cond: b.guard(n)}
			b.Sections = append(b.Sections, sec)
			loose = nil
			b.within(sec.Cond, func() {
				b.inside(s, func(i Source) { b.inSection(sec, i, &later) })
			})
		case *dsl.Step:
			if loose == nil {
				loose = &Section{Cond: condition.True}
				b.Sections = append(b.Sections, loose)
			}
			b.inSection(loose, s, &later)
		}
	})
	for _, f := range later {
		f()
	}
}

func (b *builder) inSection(sec *Section, s Source, later *[]func()) {
	switch n := s.Node.(type) {
	case *dsl.Text:
		b.noteInto(&sec.Notes)(s)
	case *dsl.Caution:
		sec.Cautions = append(sec.Cautions, b.caution(n))
	case *dsl.Figure:
		sec.Figures = append(sec.Figures, b.figure(n))
	case *dsl.UseMethod:
		b.unchecked("the method "+n.ID.Text, s.Span(s.File))
	case *dsl.Step:
		st := &Step{Title: text(n.Label), Decl: Decl{Span: text(n.Label).Span, Cond: b.guard(n)}}
		st.Name = st.Title.Text
		if n.ID != nil {
			st.ID, st.Span = n.ID.Text, dsl.SpanOf(n.ID.Tokens)
			if old := b.steps[st.ID]; old != nil {
				b.report(declaredTwice("step", &st.Decl, &old.Decl))
			} else {
				b.steps[st.ID] = st
			}
		}
		sec.Steps = append(sec.Steps, st)
		b.declareGaps(s)
		around := b.around
		*later = append(*later, func() {
			b.around = around
			b.within(st.Cond, func() { b.items(st, s, Neither) })
			b.around = condition.True
		})
	}
}

// declareGaps notes the openings that a step's operations leave.
func (b *builder) declareGaps(s Source) {
	b.inside(s, func(i Source) {
		if _, ok := i.Node.(*dsl.OnOnly); ok {
			b.declareGaps(i)
		}
		op, ok := i.Node.(*dsl.Op)
		if !ok {
			return
		}
		for _, p := range op.Phrases {
			if p.Leaving == nil || p.Gap == nil {
				continue
			}
			g := &Gap{Decl: Decl{ID: p.Gap.Text, Name: words(p.Gap.Text), Span: dsl.SpanOf(p.Gap.Tokens), Cond: condition.True}}
			if old := b.gaps[g.ID]; old != nil {
				b.report(declaredTwice("opening", &g.Decl, &old.Decl))
				continue
			}
			b.gaps[g.ID] = g
			b.Gaps = append(b.Gaps, g)
		}
	})
}

// items reads what stands in a step, or in an `on left only` block of it.
func (b *builder) items(st *Step, s Source, only Side) {
	b.inside(s, func(i Source) {
		switch n := i.Node.(type) {
		case *dsl.Op:
			if op := b.op(st, n, only, i.Span(i.File)); op != nil {
				st.Items = append(st.Items, op)
			}
		case *dsl.OnOnly:
			side := Neither
			if len(n.Side.Parts) == 1 {
				side = sideNamed(n.Side.Parts[0])
			}
			if side == Neither {
				b.report(notASide(dsl.SpanOf(n.Side.Tokens), join(n.Side.Parts)))
				return
			}
			b.within(b.guard(n), func() { b.items(st, i, side) })
		case *dsl.Text:
			st.Items = append(st.Items, b.proseOf(n, i.File))
		case *dsl.Figure:
			st.Items = append(st.Items, b.figure(n))
		case *dsl.Caution:
			st.Items = append(st.Items, b.caution(n))
		case *dsl.TryOn:
			c := b.guard(n)
			st.Items = append(st.Items, &TryOn{Text: text(n.Text), Body: b.quoted(n.Text, c), Cond: c})
		case *dsl.UseMethod:
			b.unchecked("the method "+n.ID.Text, i.Span(i.File))
		}
	})
}

func (b *builder) figure(n *dsl.Figure) *Figure {
	c := b.guard(n)
	return &Figure{File: text(n.File), Label: text(n.Label), Body: b.quoted(n.Label, c), Cond: c}
}

func (b *builder) caution(n *dsl.Caution) *Caution {
	c := b.guard(n)
	return &Caution{Signal: n.Signal, About: b.hazard(n.About), Text: text(n.Text), Body: b.quoted(n.Text, c), Cond: c}
}

// op resolves an operation; nil if nothing it acts on means anything.
func (b *builder) op(st *Step, n *dsl.Op, only Side, at finding.Span) *Op {
	o := &Op{Verb: n.Verb, Row: operationByVerb[n.Verb], Step: st, Count: 1, Only: only, Node: n, Said: b.guard(n), Span: at}
	if n.Count != nil {
		o.Count, o.Counted = b.count(n.Count), true
	}
	b.want = o.Row.On
	o.Objects = b.row(n.Objects, nil)
	b.want = nil
	if n.Objects != nil && len(o.Objects) == 0 {
		return nil
	}
	for _, p := range n.Phrases {
		b.phrase(o, p)
	}
	if len(o.Objects) == 0 && len(o.Row.On) > 0 {
		b.report(nothingToActOn(o, at))
		return nil
	}
	o.Objects = slices.DeleteFunc(o.Objects, func(t *Target) bool { return !b.actsOn(o, t) })
	if len(o.Objects) == 0 && len(o.Row.On) > 0 {
		return nil
	}
	o.Cond = b.Space.And(o.Said, b.opPresence(o))
	b.leaves(o)
	return o
}

// actsOn reports an object of a kind that the verb cannot act on.
func (b *builder) actsOn(o *Op, t *Target) bool {
	ok := true
	t.each(func(x *Target) {
		if len(o.Row.On) > 0 && !slices.Contains(o.Row.On, x.Kind) {
			b.report(wrongKind(o, x))
			ok = false
		}
	})
	return ok
}

// opPresence says where an operation has something to act on, and where what it
// needs beside that is there.
func (b *builder) opPresence(o *Op) condition.Cond {
	c := condition.True
	if len(o.Objects) > 0 {
		c = b.anyThere(o.Objects)
	}
	for _, p := range o.Phrases {
		switch p.Name {
		case "with", "for", "to", "through", "at", "on", "into":
			if len(p.Targets) > 0 {
				c = b.Space.And(c, b.anyThere(p.Targets))
			}
		}
	}
	return c
}

// leaves ties the opening that a seam leaves to the seam.
func (b *builder) leaves(o *Op) {
	p := o.Phrase("leaving")
	if p == nil || p.Gap == "" {
		return
	}
	g := b.gaps[p.Gap]
	g.Cond = o.Cond
	if len(p.Amounts) > 0 {
		g.Wide = &p.Amounts[0]
	}
	for _, t := range o.Objects {
		if t.Seam != nil {
			g.Seam = t.Seam
		}
	}
}

// phrase resolves one phrase of an operation.
func (b *builder) phrase(o *Op, n *dsl.Phrase) {
	p := &Phrase{Name: n.Name(), Place: n.Place, Span: dsl.SpanOf(n.Tokens)}
	near := o.near()
	switch {
	case n.As != nil:
		t := text(n.As)
		o.As, o.Instead = &t, b.quoted(n.As, o.Said)
		return
	case n.Only != nil:
		if len(n.Only.Parts) == 1 {
			o.Only = sideNamed(n.Only.Parts[0])
		}
		if o.Only == Neither {
			b.report(notASide(dsl.SpanOf(n.Only.Tokens), join(n.Only.Parts)))
		}
		return
	case n.ByHand:
		p.Word = "hand"
	case n.Way != "":
		p.Word = n.Way
	case n.Out != "", n.Side != "":
		p.Word = n.Out + n.Side
	case n.ToSide+n.Away != "":
		p.Word = n.ToSide + n.Away
	case n.AllLayer:
		p.Word = "all layers"
	case n.Gap != nil:
		p.Gap = n.Gap.Text
	}
	for _, a := range append(append([]*dsl.Amount{n.By, n.ToAmount, n.Leaving, n.Distance}, n.Turning...), nil) {
		if m := b.amount(a); m != nil {
			p.Amounts = append(p.Amounts, *m)
		}
	}
	for _, r := range []*dsl.Row{n.Toward, n.To, n.With, n.For, n.At, n.On, n.Through, n.Keeping, n.Catching, n.Where} {
		p.Targets = append(p.Targets, b.phraseRow(o, p, r, near)...)
	}
	if n.From != nil {
		if t := b.point(n.From, near); t != nil {
			p.Targets = append(p.Targets, t)
		}
	}
	o.Phrases = append(o.Phrases, p)
}

// near lists what has been named in an operation so far.
func (o *Op) near() (all []*Target) {
	all = append(all, o.Objects...)
	for _, p := range o.Phrases {
		all = append(all, p.Targets...)
	}
	return
}

// phraseRow resolves the names of a phrase; `with overlock` and `toward centre`
// name no declared thing.
func (b *builder) phraseRow(o *Op, p *Phrase, r *dsl.Row, near []*Target) []*Target {
	if r == nil {
		return nil
	}
	if w := bareWord(r); w != "" && b.names[w] == nil {
		known := Techniques
		if p.Name == "toward" {
			known = directions
		}
		if p.Name == "with" || p.Name == "toward" {
			if slices.Contains(known, w) {
				p.Word = w
			} else {
				b.report(unknownName(p.Span, w, append(b.namesOf(func(any) bool { return true }), known...), b.elsewhere(w)))
			}
			return nil
		}
		if e := edgeNear(w, near); e != nil && (p.Name == "to" || p.Name == "along" || p.Name == "at" || p.Name == "on" || p.Name == "over") {
			return []*Target{b.point(r.Runs[0].Alt[0], near)}
		}
	}
	return b.row(r, near)
}

func edgeNear(name string, near []*Target) *Edge {
	for _, t := range near {
		for _, p := range t.pieces() {
			if e := p.Edge(name); e != nil {
				return e
			}
		}
	}
	return nil
}

func bareWord(r *dsl.Row) string {
	if len(r.Runs) == 1 && len(r.Runs[0].Alt) == 1 && len(r.Runs[0].Alt[0].Parts) == 1 {
		return r.Runs[0].Alt[0].Parts[0]
	}
	return ""
}
