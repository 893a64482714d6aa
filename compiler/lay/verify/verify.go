// Package verify checks a finished lay, by other means than those that found it.
//
// In: the outlines where they lie, in whole units, and the size of the strip. Out:
// nothing, or what is wrong. It shares no code with the search, and decides with
// whole numbers and fractions only, so that its word is exact.
package verify

import "fmt"

// Point is a place on the strip, in whole units.
type Point struct{ X, Y int64 }

// Laid is an outline where it lies: a simple ring, in either direction, without a
// repeated end point.
type Laid struct {
	Outline []Point
	// AtEdge says that its lowest point must be on the edge y = 0.
	AtEdge bool
}

// limit is the largest coordinate: a product of two differences, less another,
// then stays within 63 bits.
const limit = 1 << 29

// Lay checks that all outlines lie in the strip 0 <= x <= length, 0 <= y <= width,
// that those bound to the edge lie on it, and that no two insides meet; outlines
// may touch. The error names the first fault, shapes counted from 0.
func Lay(width, length int64, laid []Laid) error {
	for i, l := range laid {
		if err := l.inStrip(width, length); err != nil {
			return fmt.Errorf("shape %d: %w", i, err)
		}
	}
	boxes := make([]box, len(laid))
	for i, l := range laid {
		boxes[i] = boxOf(l.Outline)
		for j := range i {
			if meet(laid[j].Outline, l.Outline, boxes[j], boxes[i]) {
				return fmt.Errorf("shapes %d and %d overlap", j, i)
			}
		}
	}
	return nil
}

func (l Laid) inStrip(width, length int64) error {
	if len(l.Outline) < 3 {
		return fmt.Errorf("an outline of %d points", len(l.Outline))
	}
	low := l.Outline[0].Y
	for _, p := range l.Outline {
		if max(p.X, -p.X, p.Y, -p.Y) > limit {
			return fmt.Errorf("a point at %d, %d; coordinates go to %d", p.X, p.Y, limit)
		}
		if p.X < 0 || p.X > length || p.Y < 0 || p.Y > width {
			return fmt.Errorf("the point %d, %d is off the strip, which is %d long and %d wide", p.X, p.Y, length, width)
		}
		low = min(low, p.Y)
	}
	if l.AtEdge && low != 0 {
		return fmt.Errorf("it should lie at the edge and is %d away from it", low)
	}
	return nil
}
