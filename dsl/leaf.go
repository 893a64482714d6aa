package dsl

import (
	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"
)

// The smallest nodes are read by hand: they are most of every sentence, and
// participle takes ten times as long for them. Each method reads what the comment
// above its type shows, gives participle.NextMatch where that does not begin, and
// leaves the reader behind its last word.

func typeOf(k Kind) lexer.TokenType { return lexer.TokenType(-2 - int(k)) }

// one reads a single token of a kind.
func one(l *lexer.PeekingLexer, k Kind) (toks []lexer.Token, text string, err error) {
	if l.Peek().Type != typeOf(k) {
		return nil, "", participle.NextMatch
	}
	start := l.RawCursor()
	text = meant(k, l.Next().Value)
	return l.Range(start, l.RawCursor()), text, nil
}

// Parse reads a word.
func (n *Name) Parse(l *lexer.PeekingLexer) (err error) {
	n.Tokens, n.Text, err = one(l, Word)
	return err
}

// Parse reads a word or a number.
func (n *ViewID) Parse(l *lexer.PeekingLexer) (err error) {
	if n.Tokens, n.Text, err = one(l, Word); err != nil {
		n.Tokens, n.Text, err = one(l, Number)
	}
	return err
}

// Parse reads a number.
func (n *Count) Parse(l *lexer.PeekingLexer) (err error) {
	n.Tokens, n.Text, err = one(l, Number)
	return err
}

// Parse reads a measure.
func (n *Amount) Parse(l *lexer.PeekingLexer) (err error) {
	n.Tokens, n.Text, err = one(l, Measure)
	return err
}

// Parse reads a string.
func (n *Label) Parse(l *lexer.PeekingLexer) (err error) {
	n.Tokens, n.Text, err = one(l, String)
	return err
}

// Parse reads a block in triple quotes.
func (n *ProseToken) Parse(l *lexer.PeekingLexer) (err error) {
	n.Tokens, n.Text, err = one(l, Prose)
	return err
}

// Parse reads words with points between them.
func (r *Ref) Parse(l *lexer.PeekingLexer) error {
	if l.Peek().Type != typeOf(Word) {
		return participle.NextMatch
	}
	start := l.RawCursor()
	r.Parts = append(r.Parts, meant(Word, l.Next().Value))
	for take(l, ".") {
		if l.Peek().Type != typeOf(Word) {
			return expecting(l, "<word>")
		}
		r.Parts = append(r.Parts, meant(Word, l.Next().Value))
	}
	r.Tokens = l.Range(start, l.RawCursor())
	return nil
}

// take reads the given sign or word, if it comes next.
func take(l *lexer.PeekingLexer, text string) bool {
	if t := l.Peek(); t.Value != text || t.Type != typeOf(Word) && t.Type != typeOf(Punct) {
		return false
	}
	l.Next()
	return true
}

func expecting(l *lexer.PeekingLexer, what string) error {
	return &participle.UnexpectedTokenError{Unexpected: *l.Peek(), Expect: what}
}

// Parse reads alternatives with `or`, then the stretch of them that is meant.
func (r *Run) Parse(l *lexer.PeekingLexer) error {
	for {
		ref := &Ref{}
		if err := ref.Parse(l); err == participle.NextMatch && len(r.Alt) > 0 {
			return expecting(l, "<word>")
		} else if err != nil {
			return err
		}
		r.Alt = append(r.Alt, ref)
		if !take(l, "or") {
			return r.stretch(l)
		}
	}
}

// stretch reads `from MARK to MARK`; what begins otherwise is left to others.
func (r *Run) stretch(l *lexer.PeekingLexer) error {
	back := l.MakeCheckpoint()
	from, to := &Ref{}, &Ref{}
	if take(l, "from") && !isThe(l) && from.Parse(l) == nil && take(l, "to") && to.Parse(l) == nil {
		r.From, r.To = from, to
		return nil
	}
	l.LoadCheckpoint(back)
	return nil
}

// isThe tells `from the right side` from a mark.
func isThe(l *lexer.PeekingLexer) bool { return l.Peek().Value == "the" }

// Parse reads runs with commas between them. A comma that no name follows, or the
// word keeping, is left to others, and so is a word with which a phrase begins.
func (r *Row) Parse(l *lexer.PeekingLexer) error {
	if beginsPhrase[l.Peek().Value] {
		return participle.NextMatch
	}
	for {
		run := &Run{}
		if err := run.Parse(l); err != nil {
			return err
		}
		r.Runs = append(r.Runs, run)
		back := l.MakeCheckpoint()
		if !take(l, ",") {
			return nil
		}
		if t := l.Peek(); t.Type != typeOf(Word) || t.Value == "keeping" {
			l.LoadCheckpoint(back)
			return nil
		}
	}
}
