package figure

import (
	"math"
	"strings"
)

// unitPixels is how many pixels (user units) a unit is, and whether it is one: CSS 2.1,
// 4.3.2, in which an inch is 96 pixels.
func unitPixels(unit string) (float64, bool) {
	switch strings.ToLower(unit) {
	case "", "px":
		return 1, true
	case "pt":
		return 96. / 72, true
	case "pc":
		return 16, true
	case "in":
		return 96, true
	case "cm":
		return 96 / 2.54, true
	case "mm":
		return 96 / 25.4, true
	}
	return 0, false
}

const millimetresPerPixel = 25.4 / 96

// measures is what relative lengths are relative to.
type measures struct {
	font          float64 // font size, for em
	width, height float64 // view box, for %
}

// axis says which measure a percentage takes a part of.
type axis uint8

const (
	across axis = iota
	down
	both // SVG 1.1, 7.10: the diagonal divided by √2
	none // percentages have no meaning
)

func (m measures) of(a axis) float64 {
	switch a {
	case across:
		return m.width
	case down:
		return m.height
	}
	return math.Sqrt((m.width*m.width + m.height*m.height) / 2)
}

// parseLength reads one length in user units.
func parseLength(v string, a axis, m measures) (float64, *fault) {
	s := scanner{s: v}
	s.space()
	n, ok := s.number()
	if !ok {
		return 0, &fault{s.i, "here a number was expected"}
	}
	unit := strings.TrimRight(s.s[s.i:], " \t\r\n\f")
	px, known := unitPixels(unit)
	switch {
	case known:
		n *= px
	case unit == "em":
		n *= m.font
	case unit == "%" && a != none:
		n *= m.of(a) / 100
	default:
		return 0, &fault{s.i, "“" + clip(unit) + "” is not a unit that figures know (px, mm, cm, in, pt, pc, em)"}
	}
	if math.IsInf(n, 0) || math.IsNaN(n) {
		return 0, &fault{0, "the number is too large"}
	}
	return n, nil
}
