package model

import (
	"seamwarden/compiler/condition"
	"seamwarden/dsl/finding"
)

// TargetKind tells what a reference led to.
type TargetKind uint8

// The kinds of thing that a reference can lead to.
const (
	ToNothing TargetKind = iota
	ToSeam
	ToPiece // instances of a piece
	ToEdge  // edges of instances
	ToMark
	ToNotion
	ToBit
	ToPart
	ToPartEdge
	ToGap
	ToShaping
	ToMaterial
	ToTechnique // overlock, zigzag
	ToSide
	ToAlternative // one of several, whichever is there
)

// Target is what a reference means. Cond says where it is there.
type Target struct {
	Kind      TargetKind
	Path      string // as written
	Span      finding.Span
	Cond      condition.Cond
	Seam      *Seam
	Piece     *Piece
	Instances []*Instance
	Edge      *Edge
	Uses      []*EdgeUse
	Mark      *Mark
	Notion    *Notion
	NotionBit string // a half or a side of it
	Bit       *Bit
	Part      *Part
	PartEdge  *PartEdge
	Shaping   *Shaping
	Material  *Material
	Side      Side   // the side that was named, or Neither
	In        string // the cloth or the copies in which a seam is meant
	Gap       *Gap
	Alt       []*Target
	From, To  *Target // the stretch that is meant
}

// Gap is an opening that a seam leaves.
type Gap struct {
	Decl
	Seam *Seam
	Wide *Amount
}

// each calls f for a target and for the alternatives it stands for.
func (t *Target) each(f func(*Target)) {
	if t == nil {
		return
	}
	if t.Kind == ToAlternative {
		for _, a := range t.Alt {
			a.each(f)
		}
		return
	}
	f(t)
}

// Each calls f for a target, or for each of the alternatives it stands for.
func (t *Target) Each(f func(*Target)) { t.each(f) }

// Parts lists the cut parts that a target touches: those it names, or those of
// the piece that a mark lies on.
func (t *Target) Parts() []*Instance {
	if t.Mark != nil && len(t.Instances) == 0 {
		return t.Mark.Piece.Cloths()
	}
	return t.Instances
}
