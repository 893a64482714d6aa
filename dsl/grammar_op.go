package dsl

import "github.com/alecthomas/participle/v2/lexer"

// Op is one operation of a step. Verb is set by the reader; the grammar holds
// what follows it.
type Op struct {
	Extent
	Verb    string    `parser:""`
	Count   *Count    `parser:"@@?"`
	Objects *Row      `parser:"((?! 'open' | 'toward' | 'together' | 'apart' | 'by' | 'through' | 'right' | 'wrong' | 'on' | 'at' | 'for' | 'with' | 'to' | 'from' | 'turning' | 'leaving' | 'keeping' | 'catching' | 'along' | 'around' | 'into' | 'over' | 'between' | 'inside' | 'in' | 'as' | 'flat' | 'when') @@)?"`
	Phrases []*Phrase `parser:"(','? @@)*"`
	Guarded
}

// Phrase is a part of an operation that says where, how far or with what. Only
// one of its fields is set.
type Phrase struct {
	Tokens   []lexer.Token
	ByHand   bool      `parser:"( 'by' @('hand' | 'machine')"`
	By       *Amount   `parser:"| 'by' @@"`
	Turning  []*Amount `parser:"| 'turning' @@ (',' @@)*"`
	Toward   *Row      `parser:"| 'toward' @@"`
	ToAmount *Amount   `parser:"| 'to' @@"`
	To       *Row      `parser:"| 'to' @@"`
	Open     bool      `parser:"| @'open'"`
	Flat     bool      `parser:"| @'flat'"`
	Way      string    `parser:"| @('together' | 'apart')"`
	With     *Row      `parser:"| 'with' @@"`
	For      *Row      `parser:"| 'for' (?! 'each') @@"`
	At       *Row      `parser:"| 'at' @@"`
	Only     *Ref      `parser:"| 'on' @@ 'only'"`
	On       *Row      `parser:"| 'on' @@"`
	Leaving  *Amount   `parser:"| 'leaving' @@ 'open'"`
	Gap      *Name     `parser:"   ('as' @@)?"`
	AllLayer bool      `parser:"| 'through' 'all' @'layers'"`
	Through  *Row      `parser:"| 'through' @@"`
	Keeping  *Row      `parser:"| 'keeping' @@ 'clear'"`
	Catching *Row      `parser:"| 'catching' @@"`
	Place    string    `parser:"| @('along' | 'around' | 'into' | 'over' | 'between' | 'inside')"`
	Where    *Row      `parser:"   @@"`
	Round    bool      `parser:"| 'in' 'the' @'round'"`
	Out      string    `parser:"| @('right' | 'wrong') 'side' 'out'"`
	Side     string    `parser:"| 'from' 'the' @('right' | 'wrong') 'side'"`
	From     *Ref      `parser:"| 'from' @@"`
	As       *Label    `parser:"| 'as' @@"`
	Distance *Amount   `parser:"| @@ )"`
}
