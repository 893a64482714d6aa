package dsl

import "seamwarden/dsl/finding"

// Sentence is one statement: the words before its brace, the sentences inside,
// and the words after it. A block of prose is a sentence of one token.
type Sentence struct {
	Head        []Token
	HasBody     bool
	Open, Close *Token // the braces, if HasBody
	Body        []*Sentence
	Tail        []Token // a guard after the closing brace
	Node        any     // what the words mean; nil if they could not be read

	Doc       []Token // comments on the lines above, and inside the words
	Trailing  *Token  // comment at the end of the last line
	OpenNote  *Token  // comment after the opening brace
	BodyEnd   []Token // comments before the closing brace
	Blank     bool    // an empty line stands before it
	EndBlank  bool    // an empty line stands before the comments in BodyEnd
	Separator bool    // ended by a semicolon
}

// First is the sentence's first word, misspelling mended; "" for prose.
func (s *Sentence) First() string {
	if len(s.Head) > 0 && s.Head[0].Kind == Word {
		return s.Head[0].Meant()
	}
	return ""
}

// Span covers the words before the brace.
func (s *Sentence) Span(file string) finding.Span {
	if len(s.Head) == 0 {
		return s.opening().Span(file)
	}
	return finding.Span{File: file, Start: s.Head[0].Start, End: s.Head[len(s.Head)-1].End()}
}

// opening is the sentence's first token.
func (s *Sentence) opening() *Token {
	switch {
	case len(s.Head) > 0:
		return &s.Head[0]
	case s.HasBody:
		return s.Open
	}
	return &Token{}
}

// comments lists all comments of the sentence, without those of its body's
// sentences.
func (s *Sentence) comments() []Token {
	all := append([]Token(nil), s.Doc...)
	for _, t := range []*Token{s.OpenNote, s.Trailing} {
		if t != nil {
			all = append(all, *t)
		}
	}
	return append(all, s.BodyEnd...)
}

// A block is named by the word that opens it.
const (
	topBlock     = ""
	unknownBlock = "?"
)

// block names the block that the sentence opens.
func (s *Sentence) block() string {
	if w := s.First(); w != "" {
		return w
	}
	return unknownBlock
}
