package dsl

import "github.com/alecthomas/participle/v2/lexer"

// Sentences of the head of a pattern, and what is chosen and bought.
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
	// Spare is how much more cloth than a lay takes may be promised, in per cent.
	Spare struct {
		By *Amount `parser:"'spare' @@"`
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
	// Selvedges is how much at each selvedge is not cut into.
	Selvedges struct {
		Wide *Amount `parser:"'selvedges' @@"`
	}
	// Clearance is how far cut parts stay apart on the cloth.
	Clearance struct {
		By *Amount `parser:"'clearance' @@"`
	}
	// Laying says how pieces are laid on a material.
	Laying struct {
		How []*LayHow `parser:"'lay' @@ (',' @@)*"`
	}
	// LayHow is with or without nap, or the way in which the cloth lies.
	LayHow struct {
		Nap   string `parser:"( @('with' | 'without') 'nap'"`
		Layer bool   `parser:"| @'single' 'layer'"`
		Fold  string `parser:"| 'on' @('lengthwise' | 'crosswise') 'fold' )"`
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
)
