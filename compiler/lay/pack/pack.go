// Package pack lays polygons on a strip of given width so that the strip is short.
//
// In: outlines in whole units of a grid, the ways in which each may lie, the width
// of the strip, an amount of work and a seed. Out: where each lies, and the length.
// It knows nothing of cloth: that a piece lies on a fold, or only one way up, is
// told by the poses that it is given.
//
// Every decision whether two outlines overlap is exact, in whole numbers, so that a
// layout that is returned has no overlap at all, and the same work with the same
// seed gives the same layout on every machine.
//
// Method: the length is fixed and shapes may overlap; moving one shape at a time
// to a better place, with a weight for each pair that grows as long as the pair
// overlaps (guided local search), removes the overlap; where little is left, a linear
// program moves all shapes at once (press.go). Then the strip is made shorter. After J. Egeblad, B. Nielsen, A. Odgaard, "Fast neighborhood search for
// two- and three-dimensional nesting problems", European Journal of Operational
// Research 183 (2007), and later work on overlap minimisation.
package pack

import "fmt"

// Pose is one way in which a shape may lie: an outline, counter-clockwise, without
// a repeated end point, in units of the grid.
type Pose struct {
	Outline []Point
	// AtEdge keeps the lowest point of the outline on the edge of the strip at
	// y = 0: a piece whose edge lies on the fold.
	AtEdge bool
}

// Shape is something to be laid once: any one of its poses. Shapes of one kind
// have the same poses in the same order; Kind tells them apart.
type Shape struct {
	Kind  int
	Poses []Pose
}

// Problem is what is to be laid on a strip 0 <= y <= Width.
type Problem struct {
	Width  int64
	Shapes []Shape
}

// Placement says which pose a shape takes, and where the origin of its outline is.
type Placement struct {
	Pose int
	At   Point
}

// Layout is a place for each shape, in their order.
type Layout struct {
	Length int64
	Places []Placement
}

// limit is the largest coordinate: products of two differences, added up, then
// stay within 63 bits.
const limit = 1 << 28

// check tells what is wrong with a problem, nil if nothing is.
func (p Problem) check() error {
	if p.Width <= 0 || p.Width > limit {
		return fmt.Errorf("the strip is %d wide; it must be between 1 and %d", p.Width, limit)
	}
	if len(p.Shapes) == 0 {
		return fmt.Errorf("there is nothing to lay")
	}
	for i, s := range p.Shapes {
		if len(s.Poses) == 0 {
			return fmt.Errorf("shape %d has no pose", i)
		}
		for _, pose := range s.Poses {
			if err := checkRing(pose.Outline); err != nil {
				return fmt.Errorf("shape %d: %w", i, err)
			}
			if b := boundsOf(pose.Outline); b.Max.Y-b.Min.Y > p.Width {
				return fmt.Errorf("shape %d is %d high, and the strip is %d wide", i, b.Max.Y-b.Min.Y, p.Width)
			}
		}
	}
	return nil
}
