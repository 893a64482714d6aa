package dsl

import (
	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"
)

// cursor goes along the words of one sentence. It serves the generated readers,
// which have all the words, and participle's grammars, from which it takes one word
// after the other.
type cursor struct {
	toks []lexer.Token
	at   int
	more *lexer.PeekingLexer // what lies behind toks; nil if nothing does
	from lexer.RawCursor     // where toks begins in it

	// fault is what stands in the way after a node has begun; nil if the node did
	// not begin.
	fault error
}

var behind = lexer.EOFToken(lexer.Position{})

// peek gives the next word, or one that is EOF.
func (c *cursor) peek() *lexer.Token {
	if c.at < len(c.toks) {
		return &c.toks[c.at]
	}
	if c.more == nil {
		return &behind
	}
	t := c.more.Peek()
	if !t.EOF() {
		c.more.Next()
		c.toks = c.more.Range(c.from, c.more.RawCursor())
	}
	return t
}

// is reports whether a token of a kind comes next.
func (c *cursor) is(k Kind) bool { return c.peek().Type == typeOf(k) }

// sees reports whether one of some words comes next.
func (c *cursor) sees(words ...string) bool {
	next := c.peek().Value
	for _, w := range words {
		if next == w {
			return true
		}
	}
	return false
}

// take reads the given sign or word, if it comes next.
func (c *cursor) take(text string) bool {
	t := c.peek()
	if t.Value != text || t.EOF() {
		return false
	}
	c.at++
	return true
}

// word reads a token of a kind, if one comes next, and gives what it is taken for.
func (c *cursor) word(k Kind) (text string, ok bool) {
	t := c.peek()
	if t.Type != typeOf(k) {
		return "", false
	}
	c.at++
	return meant(k, t.Value), true
}

// since gives the words from a place up to here.
func (c *cursor) since(at int) []lexer.Token { return c.toks[at:c.at:c.at] }

// expects notes what should come next, and does not.
func (c *cursor) expects(what string) bool {
	c.fault = &participle.UnexpectedTokenError{Unexpected: *c.peek(), Expect: what}
	return false
}

// readable is a node that is read from its words. What read took when it fails, its
// caller puts back.
type readable[T any] interface {
	*T
	read(*cursor) bool
}

// node reads a node into a field.
func node[T any, P readable[T]](c *cursor, field *P) bool {
	at, n := c.at, P(new(T))
	if !n.read(c) {
		c.at = at
		return false
	}
	*field = n
	return true
}

// another reads a node to the end of a list.
func another[T any, P readable[T]](c *cursor, list *[]P) bool {
	var n P
	if !node(c, &n) {
		return false
	}
	*list = append(*list, n)
	return true
}

// one reads one of some words into a field.
func (c *cursor) one(field *string, words ...string) bool {
	if !c.sees(words...) {
		return false
	}
	*field = c.toks[c.at].Value
	c.at++
	return true
}

// mark notes in a field that one of some words was read.
func (c *cursor) mark(field *bool, words ...string) bool {
	if !c.sees(words...) {
		return false
	}
	*field = true
	c.at++
	return true
}

// add reads one of some words to the end of a list.
func (c *cursor) add(list *[]string, words ...string) bool {
	var word string
	if !c.one(&word, words...) {
		return false
	}
	*list = append(*list, word)
	return true
}

// maybe is true whether something was read or not.
func maybe(bool) bool { return true }

// parse lets participle read a node as its grammars want it: NextMatch where the
// node does not begin, and the words left behind it.
func parse(l *lexer.PeekingLexer, read func(*cursor) bool) error {
	begin, from := l.MakeCheckpoint(), l.RawCursor()
	c := &cursor{more: l, from: from}
	ok := read(c)
	l.LoadCheckpoint(begin)
	for range c.at {
		l.Next()
	}
	switch {
	case ok:
		return nil
	case c.fault != nil:
		return c.fault
	}
	return participle.NextMatch
}
