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

// Fault is what is wrong with a lay: with one outline, or with two that overlap.
type Fault struct {
	One, Other int // their indices; Other is -1 if there is none
	Why        string
}

func (f *Fault) Error() string {
	if f.Other >= 0 {
		return fmt.Sprintf("shapes %d and %d %s", f.One, f.Other, f.Why)
	}
	return fmt.Sprintf("shape %d %s", f.One, f.Why)
}

// Lay checks that all outlines lie in the strip 0 <= x <= length, 0 <= y <= width,
// that those bound to the edge lie on it, and that no two insides meet; outlines
// may touch. The error is the first [Fault].
func Lay(width, length int64, laid []Laid) error {
	for i, l := range laid {
		if why := l.inStrip(width, length); why != "" {
			return &Fault{i, -1, why}
		}
	}
	boxes := make([]box, len(laid))
	for i, l := range laid {
		boxes[i] = boxOf(l.Outline)
		for j := range i {
			if meet(laid[j].Outline, l.Outline, boxes[j], boxes[i]) {
				return &Fault{j, i, "overlap"}
			}
		}
	}
	return nil
}

// inStrip says what is wrong with where an outline lies, "" if nothing is.
func (l Laid) inStrip(width, length int64) string {
	if len(l.Outline) < 3 {
		return "has no area"
	}
	low := l.Outline[0].Y
	for _, p := range l.Outline {
		switch {
		case max(p.X, -p.X, p.Y, -p.Y) > limit:
			return "lies farther off than can be reckoned"
		case p.X < 0 || p.X > length:
			return "reaches beyond an end of the cloth"
		case p.Y < 0 || p.Y > width:
			return "reaches beyond a side of the cloth"
		}
		low = min(low, p.Y)
	}
	if l.AtEdge && low != 0 {
		return "does not lie on the fold"
	}
	return ""
}
