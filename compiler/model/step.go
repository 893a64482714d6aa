package model

import (
	"seamwarden/compiler/condition"
	"seamwarden/dsl"
	"seamwarden/dsl/finding"
)

// Section is a chapter of the steps.
type Section struct {
	Title    Text
	Cond     condition.Cond
	Notes    []*Prose
	Cautions []*Caution
	Figures  []*Figure
	Steps    []*Step
}

// Step is a numbered step; Items are in the author's order.
type Step struct {
	Decl
	Title Text
	Items []Item
}

// Item is an *Op, *Prose, *Figure, *Caution or *TryOn of a step.
type Item interface{ Where() condition.Cond }

// TryOn is a stop for fitting.
type TryOn struct {
	Text Text
	Body *Prose
	Cond condition.Cond
}

// Prose is a block of the author's text; Braces are the declared values that it
// fetches, in order.
type Prose struct {
	Text   string // Markdown, common indentation removed
	Source string // as it stands in the file, from the start of Span
	Span   finding.Span
	Cond   condition.Cond
	Braces []*Brace
}

// At gives the place of a stretch of Source, in bytes.
func (p *Prose) At(start, end int) finding.Span {
	return finding.Span{File: p.Span.File, Start: advance(p.Span.Start, p.Source, start), End: advance(p.Span.Start, p.Source, end)}
}

// Brace is one {…} in prose: Word says what is fetched, Target of what.
type Brace struct {
	Start, End int // offsets in Prose.Text
	Word       string
	Args       []string
	Span       finding.Span
	Target     *Target
	Row        string // the key of a row in the size table
	Step       *Step
}

// Op is a resolved operation.
type Op struct {
	Verb    string
	Row     *Operation
	Step    *Step
	Count   int // 1 if not said
	Counted bool
	Objects []*Target
	Phrases []*Phrase
	Only    Side // done on one side only
	Cond    condition.Cond
	Said    condition.Cond // what the guards alone say
	As      *Text          // a sentence that stands in its place, as written
	Instead *Prose         // the same, with its braces
	Span    finding.Span
	Node    *dsl.Op
}

// Phrase is a part of an operation, resolved.
type Phrase struct {
	Name    string // as dsl.Phrase.Name
	Place   string // along, around, into, over, between, inside
	Amounts []Amount
	Targets []*Target
	Word    string // together, apart, a technique, hand, machine, right, wrong
	Gap     string
	Span    finding.Span
}

// Phrase finds a phrase by name.
func (o *Op) Phrase(name string) *Phrase {
	for _, p := range o.Phrases {
		if p.Name == name {
			return p
		}
	}
	return nil
}

// Overlocks reports whether an overlock stitch is named, which trims and shuts the raw
// edges as it sews.
func (o *Op) Overlocks() bool {
	p := o.Phrase("with")
	return p != nil && p.Word == "overlock"
}

// Where gives the condition under which an item is part of its step.
func (o *Op) Where() condition.Cond      { return o.Cond }
func (p *Prose) Where() condition.Cond   { return p.Cond }
func (f *Figure) Where() condition.Cond  { return f.Cond }
func (c *Caution) Where() condition.Cond { return c.Cond }
func (t *TryOn) Where() condition.Cond   { return t.Cond }

// Steps lists every step in order.
func (p *Pattern) Steps() (all []*Step) {
	n := 0
	for _, s := range p.Sections {
		n += len(s.Steps)
	}
	all = make([]*Step, 0, n)
	for _, s := range p.Sections {
		all = append(all, s.Steps...)
	}
	return
}

// Ops lists every operation in order.
func (p *Pattern) Ops() (all []*Op) {
	n := 0
	for _, s := range p.Sections {
		for _, st := range s.Steps {
			n += len(st.Items)
		}
	}
	all = make([]*Op, 0, n)
	for _, s := range p.Sections {
		for _, st := range s.Steps {
			for _, i := range st.Items {
				if op, ok := i.(*Op); ok {
					all = append(all, op)
				}
			}
		}
	}
	return
}
