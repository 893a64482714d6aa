package dsl

import "github.com/alecthomas/participle/v2/lexer"

// Op is one operation of a step. Verb is set by the reader; the grammar holds
// what follows it.
type Op struct {
	Extent
	Verb    string    `parser:""`
	Count   *Count    `parser:"@@?"`
	Objects *Row      `parser:"@@?"`
	Phrases []*Phrase `parser:"((?! EOF | 'when') ','? @@)*"`
	Guarded
}

// Phrase is a part of an operation that says where, how far or with what. Only
// one of its fields is set.
type Phrase struct {
	Tokens   []lexer.Token
	Distance *Amount   `parser:"( @@"`
	ToAmount *Amount   `parser:"| 'to' ( @@"`
	ToSide   string    `parser:"  | @('inside' | 'outside')"`
	To       *Row      `parser:"  | @@ )"`
	Only     *Ref      `parser:"| 'on' ( @@ 'only'"`
	On       *Row      `parser:"  | @@ )"`
	ByHand   bool      `parser:"| 'by' ( @('hand' | 'machine')"`
	By       *Amount   `parser:"  | @@ )"`
	At       *Row      `parser:"| 'at' @@"`
	Away     string    `parser:"| 'toward' ( @('inside' | 'outside')"`
	Toward   *Row      `parser:"  | @@ )"`
	Turning  []*Amount `parser:"| 'turning' @@ (',' @@)*"`
	With     *Row      `parser:"| 'with' @@"`
	Open     bool      `parser:"| @'open'"`
	Flat     bool      `parser:"| @'flat'"`
	Way      string    `parser:"| @('together' | 'apart')"`
	AllLayer bool      `parser:"| 'through' ( 'all' @'layers'"`
	Through  *Row      `parser:"  | @@ )"`
	For      *Row      `parser:"| 'for' (?! 'each') @@"`
	Leaving  *Amount   `parser:"| 'leaving' @@ 'open'"`
	Gap      *Name     `parser:"   ('as' @@)?"`
	As       *Label    `parser:"| 'as' @@"`
	Keeping  *Row      `parser:"| 'keeping' @@ 'clear'"`
	Catching *Row      `parser:"| 'catching' @@"`
	Side     string    `parser:"| 'from' ( 'the' @('right' | 'wrong') 'side'"`
	From     *Ref      `parser:"  | @@ )"`
	Round    bool      `parser:"| 'in' 'the' @'round'"`
	Out      string    `parser:"| @('right' | 'wrong') 'side' 'out'"`
	Place    string    `parser:"| @('along' | 'around' | 'into' | 'over' | 'between' | 'inside')"`
	Where    *Row      `parser:"   @@ )"`
}
