package dsl

import (
	"strings"

	"seamwarden/dsl/finding"
)

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

// Token is a piece of source text. Text is as written, quotes included. There is one
// for every word of a pattern, so what few have is kept apart and what follows from the
// rest is not kept.
type Token struct {
	Kind   Kind
	First  bool  // the first token of its line
	Blank  bool  // an empty line stands before it
	put    bool  // it was put where one is missing, and covers nothing
	Indent int32 // width of the blanks before the first token of its line
	Text   string
	Start  finding.Pos
	flaw   *flaw // nil if nothing is wrong
}

// flaw is what is wrong with a token, in plain words, and what it is taken for all the
// same; a misspelt first word has no fault of its own.
type flaw struct{ fault, mend string }

// Fault is what is wrong with the token, in plain words; "" if nothing is.
func (t *Token) Fault() string {
	if t.flaw == nil {
		return ""
	}
	return t.flaw.fault
}

// Mend is what the token is taken for in spite of its fault; "" is Text.
func (t *Token) Mend() string {
	if t.flaw == nil {
		return ""
	}
	return t.flaw.mend
}

// mendAs notes what the token is taken for.
func (t *Token) mendAs(text string) { t.flaw = &flaw{t.Fault(), text} }

// End is the place behind the token.
func (t *Token) End() finding.Pos {
	if t.put {
		return t.Start
	}
	return behindText(t.Start, t.Text)
}

// behindText gives the place behind a text, which may be of several lines.
func behindText(start finding.Pos, text string) finding.Pos {
	end := finding.Pos{Offset: start.Offset + len(text), Line: start.Line, Column: start.Column}
	if i := strings.LastIndexByte(text, '\n'); i >= 0 {
		end.Line += strings.Count(text, "\n")
		end.Column, text = 1, text[i+1:]
	}
	end.Column += characters(text)
	return end
}

// Is reports whether the token is the given word or punctuation mark.
func (t *Token) Is(text string) bool {
	return t.Text == text && (t.Kind == Word || t.Kind == Punct)
}

// Meant is the token's text with its slip mended.
func (t *Token) Meant() string {
	if mend := t.Mend(); mend != "" {
		return mend
	}
	return t.Text
}

// Span gives the place of the token in the named file.
func (t *Token) Span(file string) finding.Span {
	return finding.Span{File: file, Start: t.Start, End: t.End()}
}

// Scan cuts source into tokens, the last of which is EOF. It never fails.
func Scan(src []byte) []Token { return scan(string(src)) }
