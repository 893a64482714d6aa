package html

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"seamwarden/compiler/figure"
)

// palette holds the colours of the drawings other than black and white, by
// their CSS name. Each becomes a variable of the style sheet with a value for the
// light scheme and one for the dark.
type palette map[string]figure.Paint

// Black line art takes the colour of the text around it and white covers with
// the colour of the page, so that both stay readable in the dark.
const (
	ink   = "currentColor"
	paper = "var(--paper)"
)

// use gives the value of a fill or stroke attribute and notes its colour.
func (p palette) use(c figure.Paint) string {
	switch {
	case c.None:
		return "none"
	case c == figure.Paint{}:
		return ink
	case c == figure.Paint{R: 255, G: 255, B: 255}:
		return paper
	}
	name := fmt.Sprintf("--art-%02x%02x%02x", c.R, c.G, c.B)
	p[name] = c
	return "var(" + name + ")"
}

// css defines the colours, in the order of their names.
func (p palette) css() string {
	if len(p) == 0 {
		return ""
	}
	names := make([]string, 0, len(p))
	for name := range p {
		names = append(names, name)
	}
	slices.Sort(names)
	var light, dark strings.Builder
	for _, name := range names {
		c := p[name]
		fmt.Fprintf(&light, "%s:#%02x%02x%02x;", name, c.R, c.G, c.B)
		d := inDark(c)
		fmt.Fprintf(&dark, "%s:#%02x%02x%02x;", name, d.R, d.G, d.B)
	}
	return ":root{" + light.String() + "}\n" +
		"@media screen and (prefers-color-scheme:dark) and (forced-colors:none){:root{" + dark.String() + "}}\n"
}

// darkPaper is the page of the dark scheme, as the style sheet has it.
var darkPaper = figure.Paint{R: 0x16, G: 0x18, B: 0x1b}

// inDark is the colour for the dark scheme: of the same hue, as far in contrast
// from the dark page as the colour is from white, or as near that as it can be.
// So a faint shading stays faint and a strong line stays strong.
func inDark(c figure.Paint) figure.Paint {
	contrast := 1.05 / (luminance(c) + 0.05)
	want := contrast*(luminance(darkPaper)+0.05) - 0.05
	end := figure.Paint{} // towards which the colour is mixed
	if want > luminance(c) {
		end = figure.Paint{R: 255, G: 255, B: 255}
	}
	best := c
	for part := 1; part <= 255; part++ {
		m := mix(c, end, part)
		if math.Abs(luminance(m)-want) < math.Abs(luminance(best)-want) {
			best = m
		}
	}
	return best
}

// mix puts part/255 of the second colour into the first.
func mix(a, b figure.Paint, part int) figure.Paint {
	m := func(x, y uint8) uint8 { return uint8((int(x)*(255-part) + int(y)*part) / 255) }
	return figure.Paint{R: m(a.R, b.R), G: m(a.G, b.G), B: m(a.B, b.B)}
}

// luminance is the relative luminance of an sRGB colour, 0 for black to 1 for
// white, as WCAG 2.2 defines it; the contrast of two is (L1+0.05)/(L2+0.05).
func luminance(c figure.Paint) float64 {
	linear := func(v uint8) float64 {
		s := float64(v) / 255
		if s <= 0.04045 {
			return s / 12.92
		}
		return math.Pow((s+0.055)/1.055, 2.4)
	}
	return 0.2126*linear(c.R) + 0.7152*linear(c.G) + 0.0722*linear(c.B)
}
