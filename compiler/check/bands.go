package check

import (
	"slices"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

// band is what is bought or cut by length and goes along edges: a tape, elastic, cord or
// zip, or a part of a strip.
type band struct {
	notion  *model.Notion // nil for a strip
	bit     *model.Bit    // nil for a notion
	decl    *model.Decl
	uses    []bandUse
	other   bool         // it is used in a way of which no length is known
	lost    bool         // it goes along something that is not known
	lengths []rowLengths // what its uses take (row 0) and what is declared (row 1)
}

// bandUse is one operation or seam that takes a length of it. layers is how many times
// it goes along each edge; once says that it is there for each side of the body.
type bandUse struct {
	op     *model.Op   // nil for what a seam catches
	seam   *model.Seam // nil for edges
	along  *model.Target
	cond   condition.Cond
	layers float64
	draws  bool // through a casing
	once   bool
}

func (u *bandUse) span() finding.Span {
	if u.op != nil {
		return u.op.Span
	}
	return u.seam.Span
}

// bands lists what goes along edges, with what it goes along.
func (r *run) bands() (all []*band) {
	known := map[any]*band{}
	get := func(t *model.Target) *band {
		var key any = t.Notion
		b := &band{notion: t.Notion}
		switch {
		case t.Notion != nil:
			b.decl = &t.Notion.Decl
		case t.Bit != nil:
			key, b = t.Bit, &band{bit: t.Bit, decl: &t.Bit.Decl}
		default:
			return nil
		}
		if known[key] == nil {
			known[key] = b
			all = append(all, b)
		}
		return known[key]
	}
	for _, op := range r.Ops() {
		r.bandsOf(op, get)
	}
	for _, s := range r.Seams {
		for _, k := range s.Catching {
			k.Target.Each(func(t *model.Target) {
				if b := get(t); b != nil {
					b.caught(r, s, t)
				}
			})
		}
	}
	return
}

// bandsOf notes what an operation does with a band: binds or covers edges with it, draws
// it into a casing, or something else.
func (r *run) bandsOf(op *model.Op, get func(*model.Target) *band) {
	if with := op.Phrase("with"); with != nil && oneOf(op.Verb, []string{"bind", "cover"}) {
		for _, w := range with.Targets {
			w.Each(func(t *model.Target) {
				if b := get(t); b != nil {
					b.along(r, op, op.Objects, r.Space.And(op.Cond, t.Cond), false)
				}
			})
		}
		return
	}
	for _, o := range op.Objects {
		o.Each(func(t *model.Target) {
			b := get(t)
			switch {
			case b == nil || oneOf(op.Verb, []string{"open", "knot", "join", "test", "cut", "press", "pin", "baste", "mark"}):
			case op.Verb == "thread":
				b.along(r, op, r.casings(op), r.Space.And(op.Cond, t.Cond), true)
			default:
				b.other = true
			}
		})
	}
}

// along notes the edges and seams along which a band goes; of anything else no length is
// known.
func (b *band) along(r *run, op *model.Op, list []*model.Target, c condition.Cond, draws bool) {
	if len(list) == 0 {
		b.other, b.lost = true, true
	}
	for _, o := range list {
		o.Each(func(t *model.Target) {
			u := bandUse{op: op, along: t, cond: r.Space.And(c, t.Cond), layers: 1, draws: draws}
			switch {
			case t.Seam != nil:
				if u.seam = t.Seam; saysApart(op) {
					u.layers = 2
				}
			case len(t.Uses) == 0:
				b.other, b.lost = true, true
				return
			}
			b.uses = append(b.uses, u)
		})
	}
}

func saysApart(op *model.Op) bool {
	return slices.ContainsFunc(op.Phrases, func(p *model.Phrase) bool { return p.Word == "apart" })
}

// caught notes a seam that catches a band along its whole length, as it does one side of
// a zip. A tape may lie across the seam, as a loop.
func (b *band) caught(r *run, s *model.Seam, t *model.Target) {
	if t.NotionBit == "" || b.notion == nil || b.notion.Set || b.notion.Parts[0] != t.NotionBit {
		b.other = b.other || t.NotionBit == ""
		return
	}
	b.uses = append(b.uses, bandUse{seam: s, cond: r.Space.And(s.Cond, t.Cond), layers: 1, once: true})
}

// casings are the edges and seams through which something is drawn: those that are
// named, or those that are hemmed where the opening is left by which it goes in.
func (r *run) casings(op *model.Op) (all []*model.Target) {
	for _, p := range op.Phrases {
		if p.Name != "into" && p.Place != "into" && p.Name != "through" {
			continue
		}
		for _, t := range p.Targets {
			if t.Gap == nil {
				all = append(all, t)
				continue
			}
			for _, hem := range r.Ops() {
				if l := hem.Phrase("leaving"); l != nil && l.Gap == t.Gap.ID && !hem.Row.Sews {
					all = append(all, hem.Objects...)
				}
			}
		}
	}
	return
}
