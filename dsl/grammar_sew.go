package dsl

import "github.com/alecthomas/participle/v2/lexer"

// Sentences of what is sewn, and of all that surrounds the steps.
type (
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
	// Caught is a thing that lies between the layers of a seam, or whichever of
	// several there is.
	Caught struct {
		Count *Count `parser:"@@?"`
		What  []*Ref `parser:"@@ ('or' @@)*"`
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
		About  *Name  `parser:"('about' @@)?"`
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
