package model

import (
	"seamwarden/compiler/condition"
	"seamwarden/dsl"
	"seamwarden/dsl/finding"
)

// One mistake gives one report. What follows from a mistake that is reported is
// taken on trust: a declaration that could not be read is known by its name, a
// piece whose cut line could not be read may have any side, copy and edge, and a
// guard with an unknown name holds.

// lose notes the names of declarations that could not be read.
func (b *builder) lose(sources []Source) {
	b.lost = map[string]bool{}
	for _, s := range sources {
		if s.Node == nil && len(s.Head) > 1 && s.Head[1].Kind == dsl.Word {
			b.lost[s.Head[1].Text] = true
		}
	}
}

// doubtful says that a piece could not be read in full, so that nobody knows what
// parts it has.
func (p *Piece) doubtful(why bool) {
	if p != nil {
		p.doubt = p.doubt || why
	}
}

// unreadable reports whether a block holds a sentence that could not be read.
func unreadable(s Source) bool {
	for _, inner := range s.Body {
		if inner.Node == nil {
			return true
		}
	}
	return false
}

// trusted gives what a reference to a piece in doubt can mean: the edge or mark
// that it names, of no part in particular; nil for a word that may have been lost.
func (b *builder) trusted(t *Target, p *Piece, rest []string) *Target {
	t.Kind, t.Piece, t.Cond = ToPiece, p, p.Cond
	if len(rest) == 0 {
		return t
	}
	last := rest[len(rest)-1]
	switch e, m := p.Edge(last), p.Mark(last); {
	case e != nil:
		e.Used = true
		t.Kind, t.Edge, t.Cond = ToEdge, e, b.Space.And(p.Cond, e.Cond)
	case m != nil:
		m.Used = true
		t.Kind, t.Mark = ToMark, m
	case sideNamed(last) != Neither:
		t.Side = sideNamed(last)
	default:
		return nil
	}
	return t
}

// deadTarget reports whether a seam names a part that no garment has; that is
// reported where it is cut.
func (b *builder) deadTarget(x *Seam) bool {
	dead := false
	for _, t := range append(append([]*Target(nil), x.Joins...), x.To...) {
		t.each(func(a *Target) {
			there := condition.False
			for _, i := range a.Instances {
				there = b.Space.Or(there, i.Cond)
			}
			dead = dead || len(a.Instances) > 0 && b.Space.And(there, b.Valid) == condition.False
		})
	}
	return dead
}

// aboutPiece reports that the parts of a piece do not fit what is said of them,
// once for the piece: the number or the lay in its cut line may be the slip.
func (b *builder) aboutPiece(p *Piece, f finding.Finding) {
	if p == nil {
		b.report(f)
	} else if !p.told {
		p.told = true
		b.report(f)
	}
}
