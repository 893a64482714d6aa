package dsl

// Sentences of a piece.
type (
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
		Word string `parser:"@('symmetric' | 'template' | 'separate' | 'fill')"`
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
)
