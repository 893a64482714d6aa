package dsl

import "github.com/alecthomas/participle/v2/lexer"

// The smallest nodes are read by hand, in the grammars and in the generated readers
// alike: they are most of every sentence. Each read takes what the comment above its
// type shows, and fails without a fault where that does not begin.

func typeOf(k Kind) lexer.TokenType { return lexer.TokenType(-2 - int(k)) }

// single reads a single token of a kind.
func single(c *cursor, k Kind, toks *[]lexer.Token, text *string) bool {
	at := c.at
	got, ok := c.word(k)
	if ok {
		*toks, *text = c.since(at), got
	}
	return ok
}

func (n *Name) read(c *cursor) bool { return single(c, Word, &n.Tokens, &n.Text) }

func (n *ViewID) read(c *cursor) bool {
	return single(c, Word, &n.Tokens, &n.Text) || single(c, Number, &n.Tokens, &n.Text)
}

func (n *Count) read(c *cursor) bool { return single(c, Number, &n.Tokens, &n.Text) }

func (n *Amount) read(c *cursor) bool { return single(c, Measure, &n.Tokens, &n.Text) }

func (n *Label) read(c *cursor) bool { return single(c, String, &n.Tokens, &n.Text) }

func (n *ProseToken) read(c *cursor) bool { return single(c, Prose, &n.Tokens, &n.Text) }

// Parse reads a word.
func (n *Name) Parse(l *lexer.PeekingLexer) error { return parse(l, n.read) }

// Parse reads a word or a number.
func (n *ViewID) Parse(l *lexer.PeekingLexer) error { return parse(l, n.read) }

// Parse reads a number.
func (n *Count) Parse(l *lexer.PeekingLexer) error { return parse(l, n.read) }

// Parse reads a measure.
func (n *Amount) Parse(l *lexer.PeekingLexer) error { return parse(l, n.read) }

// Parse reads a string.
func (n *Label) Parse(l *lexer.PeekingLexer) error { return parse(l, n.read) }

// Parse reads a block in triple quotes.
func (n *ProseToken) Parse(l *lexer.PeekingLexer) error { return parse(l, n.read) }

// Parse reads words with points between them.
func (r *Ref) Parse(l *lexer.PeekingLexer) error { return parse(l, r.read) }

// Parse reads alternatives with `or`, then the stretch of them that is meant.
func (r *Run) Parse(l *lexer.PeekingLexer) error { return parse(l, r.read) }

// Parse reads runs with commas between them.
func (r *Row) Parse(l *lexer.PeekingLexer) error { return parse(l, r.read) }

func (r *Ref) read(c *cursor) bool {
	at := c.at
	part, ok := c.word(Word)
	if !ok {
		return false
	}
	r.Parts = append(r.Parts, part)
	for c.take(".") {
		if part, ok = c.word(Word); !ok {
			return c.expects("<word>")
		}
		r.Parts = append(r.Parts, part)
	}
	r.Tokens = c.since(at)
	return true
}

func (r *Run) read(c *cursor) bool {
	for {
		ref := &Ref{}
		if !ref.read(c) {
			return len(r.Alt) > 0 && c.fault == nil && c.expects("<word>")
		}
		r.Alt = append(r.Alt, ref)
		if !c.take("or") {
			r.stretch(c)
			return true
		}
	}
}

// stretch reads `from MARK to MARK`; what begins otherwise is left to others, such
// as `from the right side`.
func (r *Run) stretch(c *cursor) {
	at := c.at
	if !c.take("from") {
		return
	}
	from, to := &Ref{}, &Ref{}
	if !c.sees("the") && from.read(c) && c.take("to") && to.read(c) {
		r.From, r.To = from, to
		return
	}
	c.at, c.fault = at, nil
}

// read takes runs with commas between them. A comma that no name follows, or the
// word keeping, is left to others, and so is a word with which a phrase begins.
func (r *Row) read(c *cursor) bool {
	if beginsPhrase[c.peek().Value] {
		return false
	}
	for {
		run := &Run{}
		if !run.read(c) {
			return false
		}
		r.Runs = append(r.Runs, run)
		at := c.at
		if !c.take(",") {
			return true
		}
		if !c.is(Word) || c.sees("keeping") {
			c.at = at
			return true
		}
	}
}
