package model

import "seamwarden/dsl/finding"

// span gives the place where the thing a target led to was declared.
func (t *Target) span() finding.Span {
	switch {
	case t.Seam != nil:
		return t.Seam.Span
	case t.Edge != nil:
		return t.Edge.Span
	case t.Mark != nil:
		return t.Mark.Span
	case t.Piece != nil:
		return t.Piece.Span
	case t.Notion != nil:
		return t.Notion.Span
	case t.Bit != nil:
		return t.Bit.Span
	case t.PartEdge != nil:
		return t.PartEdge.Span
	case t.Part != nil:
		return t.Part.Span
	case t.Shaping != nil:
		return t.Shaping.Span
	case t.Material != nil:
		return t.Material.Span
	case t.Gap != nil:
		return t.Gap.Span
	}
	return finding.Span{}
}

// describe names the thing a target led to.
func (t *Target) describe() string {
	switch t.Kind {
	case ToSeam:
		return "the " + t.Seam.Called()
	case ToPiece:
		return "the piece " + t.Piece.Name
	case ToEdge:
		return "the " + t.Edge.Called() + " of " + t.Piece.Name
	case ToMark:
		return "the mark " + t.Mark.Name
	case ToNotion:
		return t.Notion.Name
	case ToBit:
		return "the strip " + t.Bit.Name
	case ToPart:
		return "the part " + t.Part.Name
	case ToPartEdge:
		return "the " + edgeWords(t.PartEdge.Name) + " of " + t.Part.Name
	case ToShaping:
		return "the " + t.Shaping.Kind + " " + t.Shaping.Name
	case ToMaterial:
		return t.Material.Name
	case ToGap:
		return "the opening " + t.Gap.Name
	case ToSide:
		return "the " + t.Side.String() + " side"
	}
	return t.Path
}

// Describe names the thing a target led to.
func (t *Target) Describe() string { return t.describe() }

// Declared gives the place where it was declared.
func (t *Target) Declared() finding.Span { return t.span() }
