package model

import (
	"seamwarden/compiler/condition"
	"seamwarden/dsl"
)

// guardName is what a name means after `when`.
type guardName struct {
	decl   *Decl
	view   *View
	option *Option
	choice *Choice
}

// choices declares everything that the sewist chooses, first the names, then the
// guards between them, since an option may exist in one view only.
func (b *builder) choices(sources []Source) {
	var later []func()
	b.each(sources, func(s Source) {
		switch n := s.Node.(type) {
		case *dsl.View:
			b.view(s, n, &later)
		case *dsl.Option:
			o := &Option{Decl: Decl{ID: n.ID.Text, Name: label(n.ID, n.Label), Span: dsl.SpanOf(n.ID.Tokens)}}
			if b.guardable(&guardName{decl: &o.Decl, option: o}) {
				b.Options = append(b.Options, o)
				later = append(later, func() { o.Cond = b.guard(n); b.inside(s, b.noteInto(&o.Notes)) })
			}
		case *dsl.Choice:
			b.choice(s, n, &later)
		}
	})
	b.variables()
	for _, f := range later {
		f()
	}
	b.Valid = b.valid()
}

func label(id *dsl.Name, l *dsl.Label) string {
	if l != nil {
		return dsl.Unquote(l.Text)
	}
	return words(id.Text)
}

func (b *builder) view(s Source, n *dsl.View, later *[]func()) {
	v := &View{Decl: Decl{ID: n.ID.Text, Span: dsl.SpanOf(n.ID.Tokens)}, Index: len(b.Views)}
	if n.Label != nil {
		v.Name = dsl.Unquote(n.Label.Text)
	}
	if !b.guardable(&guardName{decl: &v.Decl, view: v}) {
		return
	}
	b.Views = append(b.Views, v)
	*later = append(*later, func() {
		v.Cond = b.is(v)
		b.inside(s, func(i Source) {
			switch n := i.Node.(type) {
			case *dsl.Figure:
				v.Figures = append(v.Figures, b.figure(n))
			case *dsl.Text:
				b.noteInto(&v.Notes)(i)
			}
		})
	})
}

func (b *builder) choice(s Source, n *dsl.Choice, later *[]func()) {
	c := &Choice{Decl: Decl{ID: n.ID.Text, Name: label(n.ID, n.Label), Span: dsl.SpanOf(n.ID.Tokens)}, Sides: n.Kind == "sides"}
	b.inside(s, func(i Source) {
		values, ok := i.Node.(*dsl.ChoiceValues)
		if !ok {
			return
		}
		for _, v := range values.Values {
			c.Values = append(c.Values, Decl{ID: v.ID.Text, Name: label(v.ID, v.Label), Span: dsl.SpanOf(v.ID.Tokens)})
		}
	})
	if twice := repeated(c.Values); twice != nil {
		b.report(declaredTwice("way", &twice[1], &twice[0]))
		return
	}
	if len(c.Values) < 2 {
		b.report(choiceTooSmall(c))
		return
	}
	if b.guardable(&guardName{decl: &c.Decl, choice: c}) {
		b.Choices = append(b.Choices, c)
		*later = append(*later, func() { c.Cond = b.guard(n); b.inside(s, b.noteInto(&c.Notes)) })
	}
}

func repeated(values []Decl) []Decl {
	for i, v := range values {
		for _, w := range values[:i] {
			if v.ID == w.ID {
				return []Decl{w, v}
			}
		}
	}
	return nil
}

// guardable declares a name that can stand after `when`.
func (b *builder) guardable(g *guardName) bool {
	if old := b.guards[g.decl.ID]; old != nil {
		b.report(declaredTwice("choice", g.decl, old.decl))
		return false
	}
	b.guards[g.decl.ID] = g
	return true
}

// variables gives each choice its variable, in the order that keeps conditions
// small: views, choices, options, and sizes last.
func (b *builder) variables() {
	if len(b.Views) > 0 {
		b.viewVar = b.Space.AddVar(condition.View, "view", ids(b.Views, func(v *View) string { return v.ID })...)
	}
	for _, c := range b.Choices {
		c.Var = b.Space.AddVar(condition.Choice, c.ID, ids(c.Values, func(d Decl) string { return d.ID })...)
	}
	for _, o := range b.Options {
		o.Var = b.Space.AddVar(condition.Option, o.ID)
	}
	if b.Sizes != nil && len(b.Sizes.Sizes) > 0 {
		b.sizeVar = b.Space.AddVar(condition.Size, "size", b.Sizes.Sizes...)
	}
}

func ids[T any](list []T, id func(T) string) (all []string) {
	for _, x := range list {
		all = append(all, id(x))
	}
	return
}

func (b *builder) is(v *View) condition.Cond { return b.Space.Is(b.viewVar, v.Index) }

// valid leaves out what cannot be chosen: an option is not taken, and a choice
// stays at its first way, where it is not offered.
func (b *builder) valid() condition.Cond {
	c := condition.True
	for _, o := range b.Options {
		c = b.Space.And(c, b.Space.Or(o.Cond, b.Space.Is(o.Var, condition.Without)))
	}
	for _, ch := range b.Choices {
		c = b.Space.And(c, b.Space.Or(ch.Cond, b.Space.Is(ch.Var, 0)))
	}
	return c
}

// guard gives the condition of a node: its own guard and those around it.
func (b *builder) guard(node any) condition.Cond {
	g := dsl.GuardOf(node)
	if g == nil {
		return b.around
	}
	b.blind = false
	if c := b.or(g.Or); !b.blind {
		return b.Space.And(b.around, c)
	}
	return b.around
}

func (b *builder) or(g *dsl.GuardOr) condition.Cond {
	c := condition.False
	for _, a := range g.Of {
		c = b.Space.Or(c, b.and(a))
	}
	return c
}

func (b *builder) and(g *dsl.GuardAnd) condition.Cond {
	c := condition.True
	for _, n := range g.Of {
		inner := condition.True
		if n.Group != nil {
			inner = b.or(n.Group)
		} else {
			inner = b.atom(n.Atom)
		}
		if n.Not {
			inner = b.Space.Not(inner)
		}
		c = b.Space.And(c, inner)
	}
	return c
}

// atom gives the condition of one name. A name that means nothing is reported,
// and the whole guard taken to hold, so that it spoils nothing else.
func (b *builder) atom(a *dsl.GuardAtom) condition.Cond {
	g := b.guards[a.Name]
	if g == nil {
		b.blind = true
		if !b.lost[a.Name] {
			f := unknownGuard(a, b.guardNames(), b.anyValue(a.Name))
			if b.anyValue(a.Name) == nil && len(a.Tokens) > 0 {
				f = b.spelt(f, dsl.SpanOf(a.Tokens[:1]), a.Name, b.guardNames())
			}
			b.reportOnce(f, "when "+a.Name)
		}
		return condition.True
	}
	g.decl.Used = true
	switch {
	case g.choice != nil:
		return b.choiceAtom(a, g.choice)
	case a.Is != "":
		b.blind = true
		b.report(isWithoutChoice(a, g.decl))
		return condition.True
	case g.view != nil:
		return b.is(g.view)
	}
	return b.Space.Is(g.option.Var, condition.With)
}

func (b *builder) choiceAtom(a *dsl.GuardAtom, c *Choice) condition.Cond {
	if a.Is == "" {
		if c.Sides && c.Values[0].ID == "none" {
			return b.Space.Not(b.Space.Is(c.Var, 0))
		}
		b.blind = true
		b.report(choiceWithoutIs(a, c))
		return condition.True
	}
	for i := range c.Values {
		if c.Values[i].ID == a.Is {
			c.Values[i].Used = true
			is := b.Space.Is(c.Var, i)
			if a.IsNot {
				return b.Space.Not(is)
			}
			return is
		}
	}
	b.blind = true
	f := unknownWay(a, c)
	if n := len(a.Tokens); n > 0 {
		f = b.spelt(f, dsl.SpanOf(a.Tokens[n-1:]), a.Is, ids(c.Values, func(d Decl) string { return d.ID }))
	}
	b.reportOnce(f, c.ID+" is "+a.Is)
	return condition.True
}

func (b *builder) guardNames() (all []string) {
	for n := range b.guards {
		all = append(all, n)
	}
	return
}

// anyValue finds the choice that has a way of this name, for a message.
func (b *builder) anyValue(name string) *Choice {
	for _, c := range b.Choices {
		for _, v := range c.Values {
			if v.ID == name {
				return c
			}
		}
	}
	return nil
}
