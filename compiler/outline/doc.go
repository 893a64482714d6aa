// Package outline reads the drawing of a pattern piece and measures it.
//
// In: the bytes of an SVG or DXF file. Out: for each piece and size an [Outline] of
// one closed ring of named edges, with marks, grain and fold lines, in millimetres;
// and findings with their places. It knows nothing of patterns: which edges a piece
// ought to have, and how wide its allowances are, the caller says.
//
// Coordinates are as on the paper: x to the right, y down. A ring runs clockwise as
// it is seen, so that the piece lies on the right hand of whoever walks along it.
// Curves are kept as they are drawn (cubic Béziers; arcs within a ten-millionth of
// their radius), and lengths and areas are integrated, not added up from chords.
//
// An SVG file holds one piece (svg.go, join.go); a DXF file one piece and size in each
// block (dxf.go, block.go). How both are drawn is told in dsl/LANGUAGE.md.
package outline

import (
	"path"
	"strings"

	"seamwarden/compiler/figure"
	"seamwarden/dsl/finding"
)

// Point is a place in millimetres.
type Point = figure.Point

// Drawing is what a file holds.
type Drawing struct{ Pieces []*Piece }

// Piece is one piece in the sizes in which it is drawn. Name is that of the block in
// a DXF file, "" in an SVG file, which holds one piece.
type Piece struct {
	Name  string
	Sizes []Sized
	Span  finding.Span
}

// Sized is the outline for some sizes by name; none named means every size.
type Sized struct {
	Sizes []string
	*Outline
}

// Outline is a piece in one size.
type Outline struct {
	Edges     []*Edge   // clockwise; each begins where the one before it ends
	Openings  [][]Curve // rings that are cut out inside
	Marks     []Mark
	Folds     []Line // fold lines
	Grain     *Line  // nil if none is drawn
	Allowance Allowance
	Span      finding.Span
}

// Edge is a stretch of the ring.
type Edge struct {
	Name   string
	Curves []Curve
	Span   finding.Span
}

// Curve is a cubic Bézier curve from P[0] to P[3]; of a straight one the two points
// between lie on the line, a third of it apart.
type Curve struct {
	P        [4]Point
	Straight bool
}

// Line is a straight line inside a piece.
type Line struct {
	Name     string
	From, To Point
	Span     finding.Span
}

// Mark is a notch or a sign inside. Edge is the edge on which it lies, At millimetres
// from its beginning; nil for a mark inside. Notch says that it was drawn as a notch.
type Mark struct {
	Name  string
	Notch bool
	Place Point
	Edge  *Edge
	At    float64
	Span  finding.Span
}

// Allowance says whether an outline is the line to cut along or the line to sew along.
type Allowance uint8

// Included is the cutting line, Excluded the sewing line.
const (
	NotSaid Allowance = iota
	Included
	Excluded
)

// Readable reports whether a file's name is that of an outline.
func Readable(file string) bool {
	ext := strings.ToLower(path.Ext(file))
	return ext == ".svg" || ext == ".dxf"
}

// Read reads an outline by what its name ends in.
func Read(file string, src []byte) (*Drawing, []finding.Finding) {
	if strings.EqualFold(path.Ext(file), ".dxf") {
		return ReadDXF(file, src)
	}
	return ReadSVG(file, src)
}

// Piece finds a piece by one of its names, whatever the case of its letters; the only
// piece of a file needs none. It is nil if there is none.
func (d *Drawing) Piece(names ...string) *Piece {
	for _, p := range d.Pieces {
		for _, name := range names {
			if p.Name != "" && strings.EqualFold(p.Name, name) {
				return p
			}
		}
	}
	if len(d.Pieces) == 1 {
		return d.Pieces[0]
	}
	return nil
}

// Of gives the outline for a size, nil if there is none.
func (p *Piece) Of(size string) *Outline {
	for _, s := range p.Sizes {
		if len(s.Sizes) == 0 {
			return s.Outline
		}
		for _, name := range s.Sizes {
			if name == size {
				return s.Outline
			}
		}
	}
	return nil
}

// Edge finds an edge by name, nil if there is none.
func (o *Outline) Edge(name string) *Edge {
	for _, e := range o.Edges {
		if e.Name == name {
			return e
		}
	}
	return nil
}
