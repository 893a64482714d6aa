package dsl

import (
	"io"

	"github.com/alecthomas/participle/v2/lexer"

	"seamwarden/dsl/finding"
)

// feed hands the tokens of one sentence to the readers and to participle.
type feed struct {
	file string
	toks []Token
	end  finding.Pos
	at   int
	room []lexer.Token // where the words of a file stand one behind the other
}

func (f *feed) Next() (lexer.Token, error) {
	if f.at == len(f.toks) {
		return lexer.EOFToken(f.position(f.end)), nil
	}
	f.at++
	return f.word(&f.toks[f.at-1]), nil
}

// word gives a token as participle has it.
func (f *feed) word(t *Token) lexer.Token {
	value := t.Text // the leaves mend it, so that places are those of the text as written
	if t.Mend() != "" && t.Fault() == "" {
		value = t.Mend() // a misspelt first word
	}
	return lexer.Token{Type: typeOf(t.Kind), Value: value, Pos: f.position(t.Start)}
}

// all gives the words of the sentence.
func (f *feed) all() []lexer.Token {
	if f.room == nil {
		f.room = make([]lexer.Token, 0, len(f.toks))
	}
	from := len(f.room)
	for i := range f.toks {
		f.room = append(f.room, f.word(&f.toks[i]))
	}
	return f.room[from:len(f.room):len(f.room)]
}

func (f *feed) position(p finding.Pos) lexer.Position {
	return lexer.Position{Filename: f.file, Offset: p.Offset, Line: p.Line, Column: p.Column}
}

// definition names the kinds of token for participle's grammars.
type definition struct{}

var symbols = func() map[string]lexer.TokenType {
	m := map[string]lexer.TokenType{"EOF": lexer.EOF}
	for name, k := range map[string]Kind{"Word": Word, "Number": Number, "Measure": Measure, "String": String, "Prose": Prose, "Punct": Punct, "Comment": Comment, "Bad": Bad} {
		m[name] = typeOf(k)
	}
	return m
}()

func (definition) Symbols() map[string]lexer.TokenType { return symbols }

func (definition) Lex(file string, r io.Reader) (lexer.Lexer, error) {
	src, err := io.ReadAll(r)
	if err != nil {
		return nil, err
	}
	toks := scan(string(src))
	return &feed{file: file, toks: toks[:len(toks)-1], end: toks[len(toks)-1].End()}, nil
}

// SpanOf gives the place of the tokens that a node was read from.
func SpanOf(toks []lexer.Token) finding.Span {
	if len(toks) == 0 {
		return finding.Span{}
	}
	first, last := &toks[0], &toks[len(toks)-1]
	return finding.Span{File: first.Pos.Filename, Start: posOf(first), End: behindText(posOf(last), last.Value)}
}

func posOf(t *lexer.Token) finding.Pos {
	return finding.Pos{Offset: t.Pos.Offset, Line: t.Pos.Line, Column: t.Pos.Column}
}
