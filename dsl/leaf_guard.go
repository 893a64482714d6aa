package dsl

import (
	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"
)

// Parse reads `when` and a condition.
func (g *Guard) Parse(l *lexer.PeekingLexer) (err error) {
	start := l.RawCursor()
	if !take(l, "when") {
		return participle.NextMatch
	}
	g.Or, err = readOr(l)
	g.Tokens = l.Range(start, l.RawCursor())
	return err
}

func readOr(l *lexer.PeekingLexer) (*GuardOr, error) {
	or := &GuardOr{}
	for {
		and, err := readAnd(l)
		or.Of = append(or.Of, and)
		if err != nil || !take(l, "or") {
			return or, err
		}
	}
}

func readAnd(l *lexer.PeekingLexer) (*GuardAnd, error) {
	and := &GuardAnd{}
	for {
		not, err := readNot(l)
		and.Of = append(and.Of, not)
		if err != nil || !take(l, "and") {
			return and, err
		}
	}
}

func readNot(l *lexer.PeekingLexer) (not *GuardNot, err error) {
	not = &GuardNot{Not: take(l, "not")}
	if !take(l, "(") {
		not.Atom, err = readAtom(l)
		return not, err
	}
	if not.Group, err = readOr(l); err == nil && !take(l, ")") {
		err = expecting(l, `")"`)
	}
	return not, err
}

// readAtom reads a view, an option, or a choice with `is`, `is not` and its value.
func readAtom(l *lexer.PeekingLexer) (*GuardAtom, error) {
	start := l.RawCursor()
	if t := l.Peek().Type; t != typeOf(Word) && t != typeOf(Number) {
		return nil, expecting(l, "GuardAtom")
	}
	atom := &GuardAtom{Name: meant(Word, l.Next().Value)}
	if take(l, "is") {
		atom.IsNot = take(l, "not")
		if l.Peek().Type != typeOf(Word) {
			return nil, expecting(l, "<word>")
		}
		atom.Is = meant(Word, l.Next().Value)
	}
	atom.Tokens = l.Range(start, l.RawCursor())
	return atom, nil
}
