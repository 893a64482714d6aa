package model

import (
	"seamwarden/compiler/condition"
	"seamwarden/compiler/outline"
)

// Drawn names the drawing of a piece. Art is filled by the front door; it is nil until
// the file has been read, and if it cannot be.
type Drawn struct {
	File Text
	Cond condition.Cond
	Art  *outline.Piece
}

// Outline gives the outline for the size with the number i, nil if there is none. A
// pattern without sizes asks for -1, and is given the only one that is drawn.
func (d *Drawn) Outline(p *Pattern, i int) *outline.Outline {
	switch {
	case d.Art == nil:
		return nil
	case i >= 0:
		return d.Art.Of(p.Sizes.Sizes[i])
	case len(d.Art.Sizes) == 1:
		return d.Art.Sizes[0].Outline
	}
	return d.Art.Of("")
}
