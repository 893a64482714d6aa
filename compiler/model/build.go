package model

import (
	"seamwarden/compiler/condition"
	"seamwarden/compiler/measure"
	"seamwarden/compiler/size"
	"seamwarden/dsl"
	"seamwarden/dsl/finding"
)

// Source is a sentence at the top of a pattern, includes already put in place.
type Source struct {
	*dsl.Sentence
	File string
}

// builder holds what is known while a pattern is put together.
type builder struct {
	*Pattern
	names  map[string]any        // pieces, seams, notions … by name
	taken  map[string]*Decl      // the declaration of each of those names
	guards map[string]*guardName // views, options, choices by name
	steps  map[string]*Step
	uses   map[useKey]*EdgeUse
	instID int
	later  []func() // what waits until every piece is known
	gaps   map[string]*Gap
	here   finding.Span    // where a name stands that has no tokens of its own, in text
	once   map[string]int  // what means nothing and is reported, by its place in Findings
	around condition.Cond  // the guards around the sentence being read
	lost   map[string]bool // names of declarations that could not be read
	blind  bool            // the guard being read has a name that means nothing
	want   []TargetKind    // what the names being read can lead to; empty for anything
}

type useKey struct {
	instance *Instance
	edge     *Edge
	side     Side
}

// Build makes a pattern of its sentences and its size table (nil for none). It
// always gives a Pattern; what means nothing is left out of it and reported in
// its Findings.
func Build(sources []Source, sizes *size.Chart, sizesFile Text) *Pattern {
	b := &builder{
		Pattern: &Pattern{Space: condition.NewSpace(), Sizes: sizes, SizesFile: sizesFile, Lang: "en"},
		names:   map[string]any{}, taken: map[string]*Decl{}, guards: map[string]*guardName{},
		steps: map[string]*Step{}, uses: map[useKey]*EdgeUse{}, gaps: map[string]*Gap{}, once: map[string]int{}, around: condition.True,
	}
	b.lose(sources)
	b.choices(sources)
	b.each(sources, b.header)
	b.each(sources, b.stock)
	b.each(sources, b.pieces)
	b.rows()
	b.promises(sources)
	b.chooseFor()
	for _, f := range b.later {
		f()
	}
	for _, p := range b.Pieces {
		p.gather()
	}
	b.each(sources, b.parts)
	b.each(sources, b.seams)
	b.eachStep(sources)
	b.each(sources, b.notes)
	b.resolveProse()
	for _, s := range b.Seams {
		s.gather()
	}
	finding.Sort(b.Findings)
	return b.Pattern
}

// each calls f for the sentences that could be read.
func (b *builder) each(sources []Source, f func(Source)) {
	for _, s := range sources {
		if s.Node != nil {
			f(s)
		}
	}
}

// inside calls f for the readable sentences of a block.
func (b *builder) inside(s Source, f func(Source)) {
	for _, inner := range s.Body {
		if inner.Node != nil {
			f(Source{inner, s.File})
		}
	}
}

// within runs f with one more guard around what it reads.
func (b *builder) within(c condition.Cond, f func()) {
	save := b.around
	b.around = b.Space.And(save, c)
	f()
	b.around = save
}

func (b *builder) report(f finding.Finding) { b.Findings = append(b.Findings, f) }

func (b *builder) unchecked(what string, at finding.Span) {
	b.Unchecked = append(b.Unchecked, Unchecked{what, at})
}

// name declares a thing under its name; false if the name is taken.
func (b *builder) name(d *Decl, thing any, what string) bool {
	if old := b.taken[d.ID]; old != nil {
		b.report(declaredTwice(what, d, old))
		return false
	}
	b.taken[d.ID], b.names[d.ID] = d, thing
	return true
}

// decl makes the common part of a declaration.
func (b *builder) decl(id *dsl.Name, label *dsl.Label, g any) Decl {
	d := Decl{ID: id.Text, Span: dsl.SpanOf(id.Tokens), Cond: b.guard(g)}
	d.Name = words(id.Text)
	if label != nil {
		d.Name = dsl.Unquote(label.Text)
	}
	return d
}

// amount reads a measure; nil and a finding if it is none.
func (b *builder) amount(a *dsl.Amount) *Amount {
	if a == nil {
		return nil
	}
	m, err := measure.Parse(a.Text)
	if err != nil {
		b.report(badMeasure(dsl.SpanOf(a.Tokens), err))
		return nil
	}
	return &Amount{m, dsl.SpanOf(a.Tokens)}
}

func (b *builder) amounts(list []*dsl.Amount) (all []Amount) {
	for _, a := range list {
		if m := b.amount(a); m != nil {
			all = append(all, *m)
		}
	}
	return
}

// count reads a whole number of at least one; 0 and a finding if it is none.
func (b *builder) count(c *dsl.Count) int {
	if c == nil {
		return 0
	}
	n := 0
	for _, r := range c.Text {
		if r < '0' || r > '9' || n > 9999 {
			n = 0
			break
		}
		n = n*10 + int(r-'0')
	}
	if n == 0 {
		b.report(badCount(dsl.SpanOf(c.Tokens), c.Text))
	}
	return n
}

func text(l *dsl.Label) Text {
	if l == nil {
		return Text{}
	}
	return Text{dsl.Unquote(l.Text), dsl.SpanOf(l.Tokens)}
}
