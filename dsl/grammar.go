package dsl

import (
	"github.com/alecthomas/participle/v2/lexer"
)

// The nodes below are the meanings of sentences. Each is the grammar of its
// sentence as well, in participle's notation, and ends with the guard. After a
// change go generate ./dsl makes the readers of them anew.

// Extent is the stretch of tokens that a node was read from.
type Extent struct{ Tokens []lexer.Token }

// The nodes up to GuardAtom are read by hand, see leaf.go.

// Ref names a declared thing by a path of words, over-front.wrap: Word ('.' Word)*.
type Ref struct {
	Tokens []lexer.Token
	Parts  []string
}

// Run is one or more alternatives of which a garment has one, and the stretch of
// them that is meant: Ref ('or' Ref)* ('from' Ref 'to' Ref)?.
type Run struct {
	Alt  []*Ref
	From *Ref
	To   *Ref
}

// Row is a list of runs in order: Run (',' Run)*.
type Row struct {
	Runs []*Run
}

// Amount is a measure as written.
type Amount struct {
	Tokens []lexer.Token
	Text   string
}

// Count is a whole number as written.
type Count struct {
	Tokens []lexer.Token
	Text   string
}

// Name is a declared name: a word.
type Name struct {
	Tokens []lexer.Token
	Text   string
}

// Label is text in quotes; Text keeps the quotes.
type Label struct {
	Tokens []lexer.Token
	Text   string
}

// Guard says for which garments a sentence holds: 'when' GuardOr.
type Guard struct {
	Tokens []lexer.Token
	Or     *GuardOr
}

// GuardOr, GuardAnd and GuardNot are its parts, loosest first.
type (
	// GuardOr is GuardAnd ('or' GuardAnd)*.
	GuardOr struct {
		Of []*GuardAnd
	}
	// GuardAnd is GuardNot ('and' GuardNot)*.
	GuardAnd struct {
		Of []*GuardNot
	}
	// GuardNot is 'not'? ('(' GuardOr ')' | GuardAtom).
	GuardNot struct {
		Not   bool
		Group *GuardOr
		Atom  *GuardAtom
	}
)

// GuardAtom is a view, an option, or a choice with its value:
// (Word | Number) ('is' 'not'? Word)?.
type GuardAtom struct {
	Tokens []lexer.Token
	Name   string
	IsNot  bool
	Is     string
}

// Guarded is the end of every declaration.
type Guarded struct {
	Guard   *Guard `parser:"@@?"`
	ForEach *Name  `parser:"('for' 'each' @@"`
	Late    *Guard `parser:"@@?)?"`
}
