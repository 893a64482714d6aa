package dsl

import (
	"github.com/alecthomas/participle/v2/lexer"
)

// The nodes below are the meanings of sentences. Each is the grammar of its
// sentence as well, in participle's notation, and ends with the guard.

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

type (
	// Pattern opens the head of a pattern.
	Pattern struct {
		Title *Label `parser:"'pattern' @@"`
	}
	// Setting is a line of the head with text.
	Setting struct {
		Key   *Name  `parser:"@@"`
		Value *Label `parser:"@@"`
		Guarded
	}
	// AllowSetting is the seam allowance of every seam that names no other.
	AllowSetting struct {
		Amount *Amount `parser:"'allow' @@"`
	}
	// FinishSetting is what is done to every seam that says nothing else.
	FinishSetting struct {
		How    string `parser:"'finish' 'seams' @('together' | 'apart')?"`
		With   *Name  `parser:"('with' @@)?"`
		Open   bool   `parser:"(','? 'press' ( @'open'"`
		Toward *Name  `parser:"| 'toward' @@ ))?"`
	}
	// View is one garment that the pattern makes.
	View struct {
		ID    *ViewID `parser:"'view' @@"`
		Label *Label  `parser:"@@?"`
		Guarded
	}
	// ViewID may be a letter or a number; see leaf.go.
	ViewID struct {
		Tokens []lexer.Token
		Text   string
	}
	// Option is something the sewist may leave out.
	Option struct {
		ID    *Name  `parser:"'option' @@"`
		Label *Label `parser:"@@?"`
		Guarded
	}
	// Choice offers ways of which she takes one; Sides is a choice of sides.
	Choice struct {
		Kind  string `parser:"@('choice' | 'sides')"`
		ID    *Name  `parser:"@@"`
		Label *Label `parser:"@@?"`
		Guarded
	}
	// ChoiceValues are the ways.
	ChoiceValues struct {
		Values []*ChoiceValue `parser:"@@ (',' @@)*"`
	}
	// ChoiceValue is one way with its words.
	ChoiceValue struct {
		ID    *Name  `parser:"@@"`
		Label *Label `parser:"@@?"`
	}
	// Material is cloth or interfacing.
	Material struct {
		Kind  string   `parser:"@('fabric' | 'interfacing')"`
		ID    *Name    `parser:"@@"`
		Label *Label   `parser:"@@?"`
		Flags []string `parser:"@('fusible' | 'sew-in' | 'stretch' | 'one-way' | 'two-faced')*"`
		Guarded
	}
	// Widths are the widths in which a material is sold.
	Widths struct {
		Of []*Amount `parser:"'widths' @@ (',' @@)*"`
	}
	// NoRightSide says that both faces of a material are alike.
	NoRightSide struct {
		Yes bool `parser:"'no' 'right' @'side'"`
	}
	// Shrinks is what a material loses in the wash, in per cent.
	Shrinks struct {
		By *Amount `parser:"'shrinks' @@"`
	}
	// Notion is what is bought by the piece or by length.
	Notion struct {
		Kind   string  `parser:"@('notion' | 'tape' | 'elastic' | 'webbing' | 'cord')"`
		ID     *Name   `parser:"@@"`
		Count  *Count  `parser:"@@?"`
		Label  *Label  `parser:"@@?"`
		Amount *Amount `parser:"@@?"`
		Guarded
	}
	// Supply is a tool or thread, used without being counted.
	Supply struct {
		Kind  string `parser:"@('thread' | 'needle' | 'tool')"`
		ID    *Name  `parser:"@@?"`
		Label *Label `parser:"@@"`
		Guarded
	}
	// Property is a measure of a notion: length, width, diameter, thickness.
	Property struct {
		Key    *Name   `parser:"@@"`
		Amount *Amount `parser:"( @@"`
		Ref    *Ref    `parser:"| @@ )"`
		Guarded
	}
	// Parts are the halves of a fastening or the sides of a zip.
	Parts struct {
		Set   bool    `parser:"( @'set' 'of' | 'sides' )"`
		Names []*Name `parser:"@@ (',' @@)*"`
	}
	// CutLengths cuts a notion that is bought by length.
	CutLengths struct {
		Count  *Count  `parser:"'cut' @@ 'of'"`
		Amount *Amount `parser:"( @@"`
		Ref    *Ref    `parser:"| @@ )"`
		Names  []*Name `parser:"('as' @@ (',' @@)*)?"`
		Guarded
	}
	// Strip is a piece cut by measure, and what it is cut into.
	Strip struct {
		ID     *Name       `parser:"'strip' @@"`
		Number *Count      `parser:"@@?"`
		Width  *Amount     `parser:"@@ 'x'"`
		Length *Amount     `parser:"@@"`
		Label  *Label      `parser:"@@?"`
		Count  *Count      `parser:"'cut' @@"`
		From   *Name       `parser:"@@"`
		Lay    []*Lay      `parser:"@@*"`
		Into   []*StripBit `parser:"('into' @@ (',' @@)*)?"`
		Guarded
	}
	// StripBit is a part of a strip: a name, or so many of a length.
	StripBit struct {
		Count  *Count  `parser:"( @@ 'of'"`
		Amount *Amount `parser:"@@ ('as'"`
		As     *Name   `parser:"@@)?"`
		ID     *Name   `parser:"| @@ )"`
	}
	// Piece opens a pattern piece.
	Piece struct {
		ID     *Name  `parser:"'piece' @@"`
		Number *Count `parser:"@@?"`
		Label  *Label `parser:"@@?"`
		Guarded
	}
	// Edges lists a piece's edges clockwise as drawn, with marks between them.
	Edges struct {
		Of []*Edge `parser:"'edges' @@ (',' @@)*"`
	}
	// Edge is an edge or, with Mark, a mark that divides one.
	Edge struct {
		Mark bool  `parser:"@'mark'?"`
		ID   *Name `parser:"@@"`
		Guarded
	}
	// Marks are signs on an edge or inside a piece.
	Marks struct {
		Of []*Mark `parser:"'marks' @@ (',' @@)*"`
		Guarded
	}
	// Mark is one, or several of a kind.
	Mark struct {
		Count  *Count `parser:"@@?"`
		ID     *Name  `parser:"@@"`
		On     *Ref   `parser:"( 'on' @@"`
		Inside bool   `parser:"| @'inside' )?"`
	}
	// Cut is a line of the cutting list.
	Cut struct {
		Extent
		Count    *Count `parser:"'cut' @@"`
		Material *Name  `parser:"@@"`
		Lay      []*Lay `parser:"@@*"`
		Guarded
	}
	// Lay is how a cut lies on the cloth, or the names of its copies.
	Lay struct {
		Mirrored   bool    `parser:"( @'mirrored'"`
		Alike      bool    `parser:"| @'alike'"`
		Fold       bool    `parser:"| 'on' @'fold'"`
		FoldEdge   *Name   `parser:"   ((?! 'right' | 'wrong' | 'glue' | 'on' | 'as' | 'when' | 'mirrored' | 'alike' | 'for' | 'into') @@)?"`
		Side       string  `parser:"| @('right' | 'wrong') 'side' 'up'"`
		Glue       string  `parser:"| 'glue' 'side' @('up' | 'down')"`
		Bias       bool    `parser:"| 'on' @'bias'"`
		Crossgrain bool    `parser:"| 'on' @'crossgrain'"`
		As         []*Name `parser:"| 'as' @@ (',' @@)* )"`
	}
	// CutAt shortens a piece at a line for some views.
	CutAt struct {
		Line *Name `parser:"'cut' 'at' @@"`
		Guarded
	}
	// Drawn says which hand the printed side of a piece is.
	Drawn struct {
		As string `parser:"'drawn' 'as' @('left' | 'right')"`
	}
	// Worn says whether a layer looks out or in.
	Worn struct {
		Face string `parser:"'worn' 'face' @('in' | 'out')"`
	}
	// SameShape says that a piece copies another's shape along an edge.
	SameShape struct {
		As      *Ref `parser:"'same' 'shape' 'as' @@"`
		Flipped bool `parser:"(','? @'flipped')?"`
	}
	// Trait is a word that stands alone: symmetric, template.
	Trait struct {
		Extent
		Word string `parser:"@('symmetric' | 'template' | 'separate')"`
	}
	// FoldLine is a line inside a piece along which it is folded.
	FoldLine struct {
		ID *Name `parser:"'fold' 'line' @@"`
		Guarded
	}
	// Left says that edges are left raw, or are selvage.
	Left struct {
		As    string  `parser:"@('raw' | 'selvage')"`
		Edges []*Name `parser:"@@ (',' @@)*"`
		Guarded
	}
	// Outline is the drawing of a piece.
	Outline struct {
		File *Label `parser:"'outline' @@"`
		Guarded
	}
	// Seam joins edges.
	Seam struct {
		Extent
		ID     *Name      `parser:"'seam' @@"`
		Label  *Label     `parser:"@@?"`
		Joins  *Row       `parser:"'joins' @@"`
		Itself bool       `parser:"'to' ( @'itself'"`
		To     *Row       `parser:"  | @@ )"`
		Clause []*SeamBit `parser:"@@*"`
		Guarded
	}
	// SeamBit is what else is said of a seam.
	SeamBit struct {
		Catching []*Caught `parser:"( 'catching' @@ (',' @@)*"`
		In       []*Name   `parser:"| 'in' @@ (',' @@)*"`
		None     bool      `parser:"| 'allow' @'none'"`
		Allow    *Amount   `parser:"| 'allow' @@"`
		AllowTo  *Amount   `parser:"   ('to' @@)?"`
		Ease     *Amount   `parser:"| 'with' 'ease' @@"`
		Gathered bool      `parser:"| @'gathered' )"`
	}
	// Caught is a thing that lies between the layers of a seam.
	Caught struct {
		Count *Count `parser:"@@?"`
		What  *Ref   `parser:"@@"`
		At    *Ref   `parser:"('at' @@)?"`
	}
	// Shaping is a dart, pleat or tuck.
	Shaping struct {
		Kind  string  `parser:"@('dart' | 'pleat' | 'tuck')"`
		ID    *Name   `parser:"@@"`
		In    *Ref    `parser:"'in' @@"`
		Takes *Amount `parser:"('takes' @@)?"`
		Long  *Amount `parser:"(',' @@ 'long')?"`
		To    *Ref    `parser:"(',' 'sewn' 'to' @@)?"`
		Guarded
	}
	// Make names an assembly and its edges.
	Make struct {
		ID    *Name  `parser:"'make' @@"`
		Label *Label `parser:"@@?"`
		From  *Row   `parser:"'from' @@"`
		Guarded
	}
	// MakeEdge is an edge of it.
	MakeEdge struct {
		ID   *Name `parser:"@@ '='"`
		Both bool  `parser:"@'both'?"`
		Of   *Row  `parser:"@@"`
		Guarded
	}
	// Overlap lays an edge on another, after which they act as one.
	Overlap struct {
		Over *Run `parser:"@@ 'lies' 'on'"`
		Base *Run `parser:"@@"`
		Guarded
	}
	// Section is a chapter of the steps.
	Section struct {
		Label *Label `parser:"'section' @@"`
		Guarded
	}
	// Step is a numbered step.
	Step struct {
		ID    *Name  `parser:"'step' @@?"`
		Label *Label `parser:"@@"`
		Guarded
	}
	// Method is a part of a pattern with parameters.
	Method struct {
		ID     *Name   `parser:"'method' @@"`
		Params []*Name `parser:"('(' (@@ (',' @@)*)? ')')?"`
	}
	// UseMethod calls for it.
	UseMethod struct {
		ID   *Name       `parser:"'use' 'method' @@"`
		Args []*Argument `parser:"('(' (@@ (',' @@)*)? ')')?"`
		Guarded
	}
	// Argument is a parameter's value.
	Argument struct {
		Param *Name `parser:"@@ ':'"`
		Value *Ref  `parser:"@@"`
	}
	// Include reads another file of the same folder.
	Include struct {
		File *Label `parser:"'include' @@"`
	}
	// Caution is a safety message.
	Caution struct {
		Signal string `parser:"'caution' @('danger' | 'warning' | 'caution' | 'notice')?"`
		Text   *Label `parser:"@@"`
		Guarded
	}
	// Term is an entry of the glossary.
	Term struct {
		Word  *Label      `parser:"'word' @@"`
		Text  *Label      `parser:"( @@"`
		Prose *ProseToken `parser:"| @@ )?"`
	}
	// ProseToken is a block in triple quotes; see leaf.go.
	ProseToken struct {
		Tokens []lexer.Token
		Text   string
	}
	// Text is a paragraph of the author's.
	Text struct {
		Block *ProseToken `parser:"@@"`
		Guarded
	}
	// Change tells what an edition changed.
	Change struct {
		Edition *Label `parser:"'change' @@"`
		Text    *Label `parser:"@@?"`
		Guarded
	}
	// Needs is a promise of how much cloth is enough.
	Needs struct {
		Extent
		Amount   *Amount `parser:"( 'needs' @@ 'of'"`
		Material *Name   `parser:"  @@"`
		View     *ViewID `parser:"  ('in' 'view' @@)?"`
		Size     *ViewID `parser:"  (',' 'size' @@)?"`
		Width    *Amount `parser:"  (',' 'width' @@)?"`
		File     *Label  `parser:"| 'needs' @@ )"`
		Guarded
	}
	// Figure is a drawing with its description.
	Figure struct {
		File  *Label `parser:"'figure' @@"`
		Label *Label `parser:"@@?"`
		Guarded
	}
	// TryOn is a stop for fitting.
	TryOn struct {
		Text *Label `parser:"'try' 'on' @@?"`
		Guarded
	}
	// OnOnly holds operations that are done on one side.
	OnOnly struct {
		Extent
		Side *Ref `parser:"'on' @@ 'only'"`
		Guarded
	}
)
