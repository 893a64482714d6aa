package dsl

import "seamwarden/dsl/finding"

// Kind tells what a token is.
type Kind uint8

// The kinds of token. A Number has no unit, a Measure has one; Prose is a whole
// block in triple quotes; Bad is text that belongs to no other kind.
const (
	EOF Kind = iota
	Word
	Number
	Measure
	String
	Prose
	Punct
	Comment
	Bad
)

// Token is a piece of source text. Text is as written, quotes included.
type Token struct {
	Kind       Kind
	First      bool // the first token of its line
	Blank      bool // an empty line stands before it
	Text       string
	Start, End finding.Pos
	Indent     int    // width of the blanks before the first token of its line
	Fault      string // what is wrong with it, in plain words; "" if nothing is
	Mend       string // what it is taken for in spite of its fault; "" is Text
}

// Is reports whether the token is the given word or punctuation mark.
func (t Token) Is(text string) bool {
	return t.Text == text && (t.Kind == Word || t.Kind == Punct)
}

// Meant is the token's text with its slip mended.
func (t Token) Meant() string {
	if t.Mend != "" {
		return t.Mend
	}
	return t.Text
}

// Span gives the place of the token in the named file.
func (t Token) Span(file string) finding.Span {
	return finding.Span{File: file, Start: t.Start, End: t.End}
}

// Scan cuts source into tokens, the last of which is EOF. It never fails.
func Scan(src []byte) []Token { return scan(string(src)) }
