package html

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"seamwarden/compiler/booklet"
	"seamwarden/compiler/figure"
)

func TestDrawingsAreNamedAndDescribed(t *testing.T) {
	root := setPage(t, fixture())
	arts := withClass(root, "art")
	if len(arts) != 6 {
		t.Fatalf("%d drawings, want 6", len(arts))
	}
	for _, svg := range arts {
		title := elements(svg, "title")[0]
		ids := strings.Fields(attr(svg, "aria-labelledby"))
		if attr(svg, "role") != "img" || ids[0] != attr(title, "id") || textOf(title) == "" {
			t.Errorf("the drawing %q is not named", textOf(svg))
		}
		if desc := elements(svg, "desc"); len(desc) != len(ids)-1 || len(desc) == 1 && attr(desc[0], "id") != ids[1] {
			t.Errorf("the drawing %q is not described", textOf(title))
		}
	}
	own, given := elements(byID(root, "art-view-a"), "svg")[0], elements(byID(root, "fig-1"), "svg")[0]
	if textOf(elements(own, "title")[0]) != "Skirt, front" || textOf(elements(own, "desc")[0]) != "View A from the front" {
		t.Error("a drawing with a title only does not take its description from the caption")
	}
	if !strings.HasPrefix(textOf(elements(given, "title")[0]), "A row of stitches") || !strings.HasPrefix(textOf(elements(given, "desc")[0]), "The front lies") {
		t.Error("a drawing with a description only does not take its name from the caption")
	}
	if attr(own, "viewbox") == "" && attr(own, "viewBox") != "0 0 62 96" || attr(own, "width") != "50mm" {
		t.Errorf("view box %q, width %q", attr(own, "viewBox"), attr(own, "width"))
	}
}

func TestShapes(t *testing.T) {
	set := func(i figure.Item) string {
		w := &svgWriter{colours: palette{}}
		if err := w.item(i); err != nil {
			t.Fatal(err)
		}
		return w.out.String()
	}
	curve := &figure.Path{Fill: red, EvenOdd: true, Stroke: none, Commands: []figure.Command{
		{Op: 'M', Points: [3]figure.Point{{X: 0.5, Y: math.Copysign(0, -1)}}},
		{Op: 'C', Points: [3]figure.Point{{X: 1, Y: 2}, {X: -3.25, Y: 4}, {X: 1.0 / 3, Y: 1234.5678}}}, {Op: 'Z'}}}
	square := line(none, 0, 0, 1, 1)
	square.Cap, square.Join = "square", "bevel"
	plain := line(white, 0, 0, 1, 1)
	plain.Cap, plain.Join = "butt", "miter"
	for _, c := range []struct{ got, want string }{
		{set(curve), `<path d="M0.5 0C1 2 -3.25 4 0.333333 1234.57Z" fill="var(--art-c02020)" fill-rule="evenodd"/>`},
		{set(dashed(square)), `<path d="M0 0L1 1" fill="none" stroke="currentColor" stroke-width="0.8" stroke-dasharray="2 1.5" stroke-dashoffset="0.5" stroke-linecap="square" stroke-linejoin="bevel"/>`},
		{set(plain), `<path d="M0 0L1 1Z" fill="var(--paper)" stroke="currentColor" stroke-width="0.8"/>`},
		{set(&figure.Label{At: figure.Point{X: 3, Y: 4}, Text: "a < b", Size: 2, Anchor: "end", Angle: -90, Bold: true, Italic: true}),
			`<text x="3" y="4" font-size="2" text-anchor="end" font-weight="bold" font-style="italic" transform="rotate(-90 3 4)" fill="currentColor">a &lt; b</text>`},
		{set(&figure.Label{Text: "s", Size: 1, Anchor: "start", Fill: white}), `<text x="0" y="0" font-size="1" fill="var(--paper)">s</text>`},
	} {
		if c.got != c.want {
			t.Errorf("shape\n got %s\nwant %s", c.got, c.want)
		}
	}
}

func TestTheFigureWordNamesADrawingWithoutWords(t *testing.T) {
	b := fixture()
	b.Chapters[0].Blocks = []booklet.Block{&booklet.Figure{Art: &figure.Drawing{Width: 1, Height: 1}}}
	b.Chapters = b.Chapters[:1]
	chapter := byID(setPage(t, b), "before")
	if svg := elements(chapter, "svg")[0]; textOf(svg) != "Figure" || len(elements(chapter, "figcaption")) != 0 {
		t.Errorf("the drawing is called %q", textOf(svg))
	}
}

// contrast is the contrast ratio of WCAG 2.2, worked from its definition here
// apart from the code under test.
func contrast(a, b figure.Paint) float64 {
	lum := func(p figure.Paint) (l float64) {
		for i, v := range []uint8{p.R, p.G, p.B} {
			s := float64(v) / 255
			if s > 0.04045 {
				s = math.Pow((s+0.055)/1.055, 2.4)
			} else {
				s /= 12.92
			}
			l += s * []float64{0.2126, 0.7152, 0.0722}[i]
		}
		return l
	}
	x, y := lum(a)+0.05, lum(b)+0.05
	return max(x, y) / min(x, y)
}

func TestContrastIsThatOfTheStandard(t *testing.T) {
	// 21 is the ratio WCAG 2.2 gives for black on white. #767676 is the lightest
	// grey that reaches 4.5 on white and #949494 the lightest that reaches 3
	// (known values, recalled from memory).
	g := func(v uint8) figure.Paint { return figure.Paint{R: v, G: v, B: v} }
	if c := contrast(black, white); math.Abs(c-21) > 1e-9 {
		t.Errorf("black on white is %v", c)
	}
	for _, c := range []struct {
		grey  uint8
		least float64
	}{{0x76, 4.5}, {0x94, 3}} {
		if contrast(g(c.grey), white) < c.least || contrast(g(c.grey+1), white) >= c.least {
			t.Errorf("%#x is not the lightest grey with %v", c.grey, c.least)
		}
	}
}

func TestDarkSchemeKeepsTheContrastOfShadings(t *testing.T) {
	for _, c := range []figure.Paint{grey, red, {R: 0x44, G: 0x44, B: 0x44}, {R: 0xf4, G: 0xf4, B: 0xf4}, {B: 0xd0}, {R: 0xff, G: 0xe0, B: 0x80}} {
		light, dark := contrast(c, white), contrast(inDark(c), darkPaper)
		if math.Abs(light-dark) > 0.08*light {
			t.Errorf("%v has a contrast of %.2f in the light and, as %v, %.2f in the dark", c, light, inDark(c), dark)
		}
	}
	// The darkest cannot be met on a page that is not quite black: it is white.
	if d := inDark(figure.Paint{R: 1}); contrast(d, white) > 1.05 {
		t.Errorf("nearly black became %v", d)
	}
}

func TestEveryVariableIsDefined(t *testing.T) {
	root := setPage(t, fixture())
	style := textOf(elements(root, "style")[0])
	n := 0
	for _, e := range elements(root, "path", "text") {
		for _, name := range []string{"fill", "stroke"} {
			v := strings.TrimSuffix(strings.TrimPrefix(attr(e, name), "var("), ")")
			if strings.HasPrefix(v, "--") {
				n++
				if c := strings.Count(style, v+":"); c < 2 {
					t.Errorf("%s is defined %d times, want it for light and dark", v, c)
				}
			} else if v != "" && v != "none" && v != "currentColor" {
				t.Errorf("the colour %q stays as it is in the dark", v)
			}
		}
	}
	if n == 0 || !strings.Contains(style, fmt.Sprintf("--art-%02x%02x%02x:", grey.R, grey.G, grey.B)) {
		t.Error("no drawing uses a variable")
	}
}
