package figure

import (
	"math"
	"strconv"
	"strings"
)

// colours are the 17 names of CSS 2.1 (4.3.6) and the greys of CSS Color 3 (4.3)
// in both spellings.
var colours = map[string]uint32{
	"black": 0x000000, "silver": 0xc0c0c0, "gray": 0x808080, "white": 0xffffff, "maroon": 0x800000, "red": 0xff0000,
	"purple": 0x800080, "fuchsia": 0xff00ff, "green": 0x008000, "lime": 0x00ff00, "olive": 0x808000, "yellow": 0xffff00,
	"navy": 0x000080, "blue": 0x0000ff, "teal": 0x008080, "aqua": 0x00ffff, "orange": 0xffa500,
	"darkgray": 0xa9a9a9, "dimgray": 0x696969, "lightgray": 0xd3d3d3, "slategray": 0x708090, "darkslategray": 0x2f4f4f,
	"lightslategray": 0x778899,
}

// noPaint is the absence of colour.
var noPaint = Paint{None: true}

// parseColour reads a colour without its fallbacks; the value is lower case.
func parseColour(v string) (Paint, bool) {
	switch {
	case v == "none", v == "transparent":
		return noPaint, true
	case v == "currentcolor":
		return Paint{}, true
	case strings.HasPrefix(v, "#"):
		return hexColour(v[1:])
	case strings.HasPrefix(v, "rgb(") && strings.HasSuffix(v, ")"):
		return rgbColour(v[4 : len(v)-1])
	}
	rgb, ok := colours[strings.Replace(v, "grey", "gray", 1)]
	return Paint{R: uint8(rgb >> 16), G: uint8(rgb >> 8), B: uint8(rgb)}, ok
}

// hexColour reads the three or six digits after "#".
func hexColour(h string) (Paint, bool) {
	if len(h) == 3 {
		h = string([]byte{h[0], h[0], h[1], h[1], h[2], h[2]})
	}
	n, err := strconv.ParseUint(h, 16, 32)
	if len(h) != 6 || err != nil {
		return Paint{}, false
	}
	return Paint{R: uint8(n >> 16), G: uint8(n >> 8), B: uint8(n)}, true
}

// rgbColour reads "255, 0, 0" or "100%, 0%, 0%"; what is out of range is
// brought into it, as CSS says.
func rgbColour(args string) (Paint, bool) {
	s := scanner{s: args}
	var c [3]uint8
	for i := range c {
		s.space()
		if i > 0 {
			s.comma()
		}
		n, ok := s.number()
		if !ok {
			return Paint{}, false
		}
		if s.take('%') {
			n = n * 255 / 100
		}
		c[i] = uint8(math.Round(max(0, min(255, n))))
	}
	s.space()
	return Paint{R: c[0], G: c[1], B: c[2]}, s.done()
}
