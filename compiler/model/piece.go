package model

import (
	"slices"
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/dsl/finding"
)

// Piece is a pattern piece.
type Piece struct {
	Decl
	Number     int // 0 if it has none
	NumberSpan finding.Span
	DrawnLeft  bool // printed side up, it is the wearer's left one
	DrawnSaid  bool
	WornIn     bool // its face looks at the body
	Symmetric  bool
	Separate   bool // an item of its own, not sewn to the rest
	Template   bool // a guide that is not sewn
	Edges      []*Edge
	Marks      []*Mark
	FoldLines  []*Mark
	Cuts       []*Cut
	SameAs     *Target
	Flipped    bool
	Notes      []*Prose
	Outlines   []*Drawn
	instances  []*Instance // as Instances lists them; nil until they are known
	cloths     []*Instance // as Cloths lists them
	doubt      bool        // a line of it could not be read, or contradicts itself
	told       bool        // it is reported that its parts do not fit what is said of them
}

// Edge is a named edge, in clockwise order as drawn.
type Edge struct {
	Decl
	Piece    *Piece
	Index    int
	Fold     []condition.Cond // where a cut lays it on the fold
	LeftRaw  condition.Cond   // where it is declared left raw, or is selvage
	Dividing []*Mark          // marks that divide it, in order
}

// Mark is a sign on an edge or inside a piece. Between is set for a mark that
// divides a smooth line into the edges before and after it.
type Mark struct {
	Decl
	Piece   *Piece
	Count   int  // on each cut part
	Said    bool // the number is written
	On      *Edge
	Between bool
}

// Lay is how a cut lies on the cloth.
type Lay struct {
	Mirrored, Alike, Fold bool
	FoldEdge              *Edge
	Up                    Face
	Bias, Crossgrain      bool
	Names                 []string
	Span                  finding.Span
}

// Face says which face of the cloth is up when it is cut.
type Face int8

// FaceUp is the right side, or the glue side of a fusible; FaceDown its other
// side; NotSaid leaves it open.
const (
	NotSaid  Face = 0
	FaceUp   Face = 1
	FaceDown Face = -1
)

// Cut is a line of the cutting list: so many of a piece from a material.
type Cut struct {
	Piece     *Piece
	Material  *Material
	Count     int
	Lay       Lay
	Glue      bool // the side that is up was called the glue side
	Deduced   bool // Lay.Up was worked out, not written
	Cond      condition.Cond
	Span      finding.Span
	CountSpan finding.Span
	UpSpan    finding.Span // of the word after `glue side`; the zero Span without it
	Instances []*Instance
}

// Side is the wearer's side.
type Side uint8

// Neither is for what is worn in the middle or on no side in particular.
const (
	Neither Side = iota
	Left
	Right
)

func (s Side) String() string { return [...]string{"", "left", "right"}[s] }

// Other is the other side of the body.
func (s Side) Other() Side {
	switch s {
	case Left:
		return Right
	case Right:
		return Left
	}
	return Neither
}

// Instance is one cut part. Hand is +1 if its face and the printed side of the
// piece were both up or both down when it was cut, -1 if one of them was down,
// and 0 if it may be either.
type Instance struct {
	ID    int
	Piece *Piece
	Cut   *Cut
	Side  Side
	Copy  string
	Hand  int8
	Cond  condition.Cond
}

// Path names the instance as a designer would write it.
func (i *Instance) Path() string {
	parts := []string{i.Piece.ID}
	if i.Piece.mixed() {
		parts = append(parts, i.Cut.Material.ID)
	}
	if i.Copy != "" {
		parts = append(parts, i.Copy)
	}
	if i.Side != Neither {
		parts = append(parts, i.Side.String())
	}
	return strings.Join(parts, ".")
}

// Cloth reports whether the instance is cloth, not interfacing.
func (i *Instance) Cloth() bool { return !i.Cut.Material.Interfacing }

// mixed reports whether a piece is cut from more than one cloth, so that its
// instances need the material's name.
func (p *Piece) mixed() bool {
	var first *Material
	for _, c := range p.Cuts {
		if c.Material == nil || c.Material.Interfacing {
			continue
		}
		if first != nil && first != c.Material {
			return true
		}
		first = c.Material
	}
	return false
}

// Instances lists every cut part of the piece. The list is shared.
func (p *Piece) Instances() (all []*Instance) {
	if p.instances != nil {
		return p.instances
	}
	for _, c := range p.Cuts {
		all = append(all, c.Instances...)
	}
	return slices.Clip(all)
}

// gather makes the lists that are asked for again and again, once everything that
// is cut of the piece is known.
func (p *Piece) gather() {
	p.instances = p.Instances()
	p.cloths = slices.Clip(p.Cloths())
}

// Cloths lists the cut parts that are cloth. The list is shared.
func (p *Piece) Cloths() (all []*Instance) {
	if p.cloths != nil {
		return p.cloths
	}
	for _, i := range p.Instances() {
		if i.Cloth() {
			all = append(all, i)
		}
	}
	return
}

// Interfacings lists the cut parts that are interfacing.
func (p *Piece) Interfacings() (all []*Instance) {
	for _, i := range p.Instances() {
		if !i.Cloth() {
			all = append(all, i)
		}
	}
	return
}

// Edge finds an edge by name.
func (p *Piece) Edge(name string) *Edge {
	for _, e := range p.Edges {
		if e.ID == name {
			return e
		}
	}
	return nil
}

// Mark finds a mark or fold line by name.
func (p *Piece) Mark(name string) *Mark {
	for _, list := range [][]*Mark{p.Marks, p.FoldLines} {
		for _, m := range list {
			if m.ID == name {
				return m
			}
		}
	}
	return nil
}

// EdgeUse is one edge of one cut part: what a seam really joins. Side is the
// wearer's side it lies on; a part cut on the fold has an edge away from the
// fold twice.
type EdgeUse struct {
	Instance *Instance
	Edge     *Edge
	Side     Side
	Cond     condition.Cond
}

// Path names the use as a designer would write it.
func (u *EdgeUse) Path() string {
	s := u.Instance.Path()
	if u.Side != Neither && u.Instance.Side == Neither {
		s += "." + u.Side.String()
	}
	return s + "." + u.Edge.ID
}

// Twice reports whether a reference to the edge means two of them on one part,
// one on each side of the fold.
func (e *Edge) Twice(t *Target) bool {
	for _, i := range t.Instances {
		if e.Doubled(i.Cut) && t.Side == Neither {
			return true
		}
	}
	return false
}
