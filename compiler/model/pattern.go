package model

import (
	"seamwarden/compiler/condition"
	"seamwarden/compiler/figure"
	"seamwarden/compiler/measure"
	"seamwarden/compiler/size"
	"seamwarden/dsl/finding"
)

// Pattern is a whole pattern. Slices are in the order of the source.
type Pattern struct {
	Title, Edition, Maker, About, Level, Lang string
	AboutBody                                 *Prose
	For                                       *Wearer        // nil if it is not said
	Kinds                                     []*GarmentKind // what is made, by garment
	Wearings                                  []*Wearing
	Packaging                                 *Prose // what has to stand on the outside of a printed pattern
	TitleSpan                                 finding.Span

	Space *condition.Space
	Valid condition.Cond // the garments that can be chosen

	Views     []*View
	Options   []*Option
	Choices   []*Choice
	Sizes     *size.Chart // nil for a pattern without sizes
	SizesFile Text        // the name of its table, "" without one
	viewVar   condition.VarID
	sizeVar   condition.VarID

	Allow        *Amount   // nil if the pattern names none
	Finish       *Policy   // nil if it names none
	CoverFigures []*Figure // the pattern's own, for one without views
	Terms        []*Term
	Cautions     []*Caution
	Changes      []*Change

	Spare    *Spare     // how much more than the lay takes may be promised; nil if it does not say
	Promises []*Promise // how much cloth is said to be enough

	Materials  []*Material
	Notions    []*Notion
	Supplies   []*Supply
	Strips     []*Strip
	Pieces     []*Piece
	Seams      []*Seam
	Parts      []*Part // made-up parts
	Overlaps   []*Overlap
	Shapings   []*Shaping
	Sections   []*Section
	Proses     []*Prose    // every block of text
	Gaps       []*Gap      // openings left for turning
	Unchecked  []Unchecked // sentences whose meaning is not decided here
	Findings   []finding.Finding
	rowConds   map[*size.Row]condition.Cond
	draftConds map[string]condition.Cond
	rowCloth   map[*size.Row]*Material
	Absences   []Absence // text that speaks of what is not there

	// Layings gives the lays that the pattern needs; nil until the front door has filled
	// it. It waits until the remembered ones have been looked at.
	Layings func() []*Laying

	// Kept is what a pass worked out of the pattern and a later one can use as it is;
	// nil if something has changed since. Nothing here reads it.
	Kept any
}

// Absence is a finding that holds in some garments only; the checks word where.
type Absence struct {
	Finding finding.Finding
	Cond    condition.Cond
}

// Text is a piece of text with its place.
type Text struct {
	Text string
	Span finding.Span
}

// Amount is an exact length as the author wrote it.
type Amount struct {
	measure.Measure
	Span finding.Span
}

// Decl is what every declared thing has: its name in the source, its words for
// the reader, the place of its name, and where it is there.
type Decl struct {
	ID, Name string
	Span     finding.Span
	Cond     condition.Cond
	Used     bool // something refers to it
}

// View, Option and Choice are what the sewist chooses.
type (
	View struct {
		Decl
		Figures []*Figure
		Notes   []*Prose
		Index   int
	}
	Option struct {
		Decl
		Var   condition.VarID
		Notes []*Prose
	}
	Choice struct {
		Decl
		Sides  bool // its values are sides of the body
		Values []Decl
		Var    condition.VarID
		Notes  []*Prose
	}
)

// Policy is what is done to every seam that says nothing else.
type Policy struct {
	Together, Apart bool
	With            string
	Open            bool
	Toward          string
	Span            finding.Span
}

// Material is cloth or interfacing.
type Material struct {
	Decl
	Interfacing bool
	Fusible     bool
	Stretch     bool
	OneWay      bool
	NoRightSide bool
	Widths      []Amount
	Suggested   string
	Shrinks     *Text
	LayRules    LayRules
	Notes       []*Prose
}

// NotionKind tells how a notion is counted.
type NotionKind uint8

// Counted notions are bought by number, the others by length.
const (
	Counted NotionKind = iota
	ByLength
)

// Notion is what is bought by the piece or by length. Listed is how many the
// pattern says, 0 if it leaves that to be counted.
type Notion struct {
	Decl
	Word   string // notion, tape, elastic, webbing, cord
	Kind   NotionKind
	Listed int
	Count  finding.Span // place of the listed number
	Length *Amount
	BySize string   // the row of the size table that holds its length
	Parts  []string // halves of a set, or sides
	Set    bool
	Fill   bool // loose filling
	Cuts   []NotionCut
	Props  map[string]Amount
	Notes  []*Prose
}

// NotionCut is a length cut from a notion that is bought by length.
type NotionCut struct {
	Count  int
	Length *Amount
	BySize string
	Cond   condition.Cond
}

// Supply is a tool, needle or thread.
type Supply struct {
	Decl
	Word string
}

// Strip is cut by measure; Bits are what it is cut into.
type Strip struct {
	Decl
	Number        int
	Width, Length Amount
	Count         int
	Lay           Lay
	Material      *Material
	Bits          []*Bit
}

// Bit is a part of a strip: Count of them, each Length long (nil: the rest).
type Bit struct {
	Decl
	Strip  *Strip
	Count  int
	Length *Amount
}

// Part is a made-up part: pieces that are sewn to one another and then act as
// one, with names for its edges.
type Part struct {
	Decl
	Of    []*Target
	Edges []*PartEdge
}

// PartEdge is an edge of a made-up part: the uses of edges that lie together.
type PartEdge struct {
	Decl
	Part *Part
	Of   []*Target
}

// Overlap lays one edge on another, after which they act as one.
type Overlap struct {
	Over, Base *Target
	Span       finding.Span
	Cond       condition.Cond
}

// Shaping is a dart, pleat or tuck.
type Shaping struct {
	Decl
	Kind  string
	In    *Target
	Takes *Amount
	Long  *Amount
}

// Term is a glossary entry; Caution a safety message; Change what an edition
// brought.
type (
	Term struct {
		Word Text
		Body *Prose
	}
	Caution struct {
		Signal string // "", danger, warning, caution or notice
		About  string // the hazard that it speaks of, of [Hazards]; "" if not said
		Text   Text
		Body   *Prose
		Cond   condition.Cond
	}
	Change struct {
		Edition Text
		Body    *Prose
	}
)

// Figure is a drawing with its description; Art is filled by the front door.
type Figure struct {
	File, Label Text
	Body        *Prose // the label with its braces; nil without one
	Cond        condition.Cond
	Art         *figure.Drawing // nil until it has been read, and if it cannot be
}

// Unchecked is a sentence that was read and whose meaning nothing here decides.
type Unchecked struct {
	What string
	Span finding.Span
}
