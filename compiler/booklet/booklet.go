// Package booklet is the worded document: what a renderer sets, and all that a
// renderer may know of a garment.
//
// In: nothing, it is only types. Out: the value that compiler/wording fills and
// the renderers set. Every text in it is final, in the reader's language, with
// its numbers in both systems, so that print and web cannot disagree.
package booklet

import "seamwarden/compiler/figure"

// Booklet is one document. Chapters stand in reading order; the cover comes
// before them.
type Booklet struct {
	Lang     string // BCP 47 tag of the text, e.g. "en"
	Title    string
	Maker    string
	Edition  string
	Scope    string // the garments it covers, in words: "View B, size 12, with side pockets"; "" is all of them
	Cover    Cover
	Chapters []Chapter
	Labels   Labels
}

// Cover is the first page.
type Cover struct {
	About []Inline
	Facts []Fact // level, sizes, what it is made of
	Views []CoverView
}

// Fact is a name and its value on the cover.
type Fact struct {
	Name  string
	Value []Inline
}

// CoverView is the line art of one view; Figure is nil where there is none.
type CoverView struct {
	ID, Name, Title string // "view-a", "View A", "Straight wrap"
	Figure          *Figure
}

// Labels are the words that belong to the page, not to the pattern.
type Labels struct {
	Contents, Continued, Figure, Step, Edition, Page, PageOf, BackToTop, Views string
}

// Chapter is a heading of the first level and what stands under it. ID is unique
// in the document and safe as an HTML id.
type Chapter struct {
	ID, Title string
	Blocks    []Block
}

// Block is one of *Heading, *Paragraph, *List, *Table, *Figure, *Step, *Caution,
// *Terms and *Group.
type Block interface{ block() }

// Heading opens a part of a chapter. Level is 2 (a section of steps, a table's
// group) or 3.
type Heading struct {
	ID    string
	Level int
	Title string
}

// Paragraph is running text.
type Paragraph struct{ Text []Inline }

// List is a bulleted or, if Ordered, a numbered list.
type List struct {
	Ordered bool
	Items   [][]Block
}

// Table has one head row. If RowHead is set the first cell of each row is that
// row's heading. Rows never split over pages; the head repeats.
type Table struct {
	ID, Caption string
	Columns     []Column
	RowHead     bool
	Rows        []Row
}

// Column is a head cell; Numeric columns align their figures.
type Column struct {
	Head    []Inline
	Numeric bool
}

// Row is a table row. A Group row has one cell, spans the table and heads the
// rows after it. Tick rows begin with an empty box to tick off; When says for
// which garments the row holds, "" for all.
type Row struct {
	Group bool
	Tick  bool
	When  string
	Cells []Cell
}

// Cell is the content of a table cell: text, or small drawings beside each other, each
// with its title and description in its Art and without a caption.
type Cell struct {
	Text    []Inline
	Figures []*Figure
}

// Figure is line art. Caption describes it for everybody and is its text
// alternative as well. Art is never nil.
type Figure struct {
	ID      string
	Caption []Inline
	Art     *figure.Drawing
}

// Step is one numbered step: a tick box, a number, a title, what is done, and
// the figures that stand beside it. When is "" if it belongs to every garment.
type Step struct {
	ID      string
	Number  int
	Title   string
	When    string
	Blocks  []Block
	Figures []*Figure
}

// Caution is a safety message with its signal word ("Warning", "Caution").
type Caution struct {
	Signal string
	Text   []Inline
}

// Terms is a list of words explained.
type Terms struct{ Items []Term }

// Term is one of them.
type Term struct {
	ID, Word string
	Blocks   []Block
}

// Group holds blocks that belong to some garments only; When says which.
type Group struct {
	When   string
	Blocks []Block
}

func (*Heading) block()   {}
func (*Paragraph) block() {}
func (*List) block()      {}
func (*Table) block()     {}
func (*Figure) block()    {}
func (*Step) block()      {}
func (*Caution) block()   {}
func (*Terms) block()     {}
func (*Group) block()     {}

// Inline is one of Text, Strong, Emphasis, Link, Measure and Break.
type Inline interface{ inline() }

// Text is plain text; it is never markup.
type Text string

// Strong and Emphasis wrap text that is set bold or italic.
type (
	Strong   struct{ Text []Inline }
	Emphasis struct{ Text []Inline }
)

// Link leads to the block, chapter or term with the id To.
type Link struct {
	To   string
	Text []Inline
}

// Measure is one length in both systems, each already rounded and with its unit
// ("⅝ in", "1.6 cm"), joined by a no-break space. The system the author wrote
// comes first; the other follows in brackets.
type Measure struct {
	Imperial, Metric string
	MetricFirst      bool
}

// Break is a line break inside a paragraph.
type Break struct{}

func (Text) inline()     {}
func (Strong) inline()   {}
func (Emphasis) inline() {}
func (Link) inline()     {}
func (Measure) inline()  {}
func (Break) inline()    {}

// String gives the measure as it is printed.
func (m Measure) String() string {
	if m.MetricFirst {
		return m.Metric + " (" + m.Imperial + ")"
	}
	return m.Imperial + " (" + m.Metric + ")"
}

// Plain gives the text of inlines without markup.
func Plain(in []Inline) string {
	var s string
	for _, i := range in {
		switch x := i.(type) {
		case Text:
			s += string(x)
		case Strong:
			s += Plain(x.Text)
		case Emphasis:
			s += Plain(x.Text)
		case Link:
			s += Plain(x.Text)
		case Measure:
			s += x.String()
		case Break:
			s += " "
		}
	}
	return s
}
