package dsl

import "github.com/alecthomas/participle/v2/lexer"

// Parse reads `when` and a condition.
func (g *Guard) Parse(l *lexer.PeekingLexer) error { return parse(l, g.read) }

func (g *Guard) read(c *cursor) bool {
	at := c.at
	if !c.take("when") {
		return false
	}
	g.Or = &GuardOr{}
	ok := g.Or.read(c)
	g.Tokens = c.since(at)
	return ok
}

func (or *GuardOr) read(c *cursor) bool {
	for {
		and := &GuardAnd{}
		or.Of = append(or.Of, and)
		if !and.read(c) {
			return false
		}
		if !c.take("or") {
			return true
		}
	}
}

func (and *GuardAnd) read(c *cursor) bool {
	for {
		not := &GuardNot{}
		and.Of = append(and.Of, not)
		if !not.read(c) {
			return false
		}
		if !c.take("and") {
			return true
		}
	}
}

func (not *GuardNot) read(c *cursor) bool {
	not.Not = c.take("not")
	if !c.take("(") {
		not.Atom = &GuardAtom{}
		return not.Atom.read(c)
	}
	not.Group = &GuardOr{}
	return not.Group.read(c) && (c.take(")") || c.expects(`")"`))
}

// read takes a view, an option, or a choice with `is`, `is not` and its value.
func (atom *GuardAtom) read(c *cursor) (ok bool) {
	at := c.at
	if !c.is(Word) && !c.is(Number) {
		return c.expects("GuardAtom")
	}
	atom.Name = meant(Word, c.peek().Value)
	c.at++
	if c.take("is") {
		atom.IsNot = c.take("not")
		if atom.Is, ok = c.word(Word); !ok {
			return c.expects("<word>")
		}
	}
	atom.Tokens = c.since(at)
	return true
}
