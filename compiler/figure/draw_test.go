package figure

import (
	"math"
	"testing"
)

func TestShapes(t *testing.T) {
	for _, c := range []struct{ section, in, want string }{
		{"SVG 1.1, 9.2", `<rect x="1" y="2" width="30" height="20"/>`, "M1 2L31 2L31 22L1 22Z"},
		{"9.2: one radius stands for both, at most half the side", `<rect width="20" height="10" rx="50" ry="0"/>`, "M0 0L20 0L20 10L0 10Z"},
		{"9.5", `<line x1="1" y1="2" x2="3" y2="4" stroke="black"/>`, "M1 2L3 4"},
		{"9.6", `<polyline points="1,2 3,4-5,6"/>`, "M1 2L3 4L-5 6"},
		{"9.7", `<polygon points=" 1 2,3 4 , 5 6 "/>`, "M1 2L3 4L5 6Z"},
		{"7.10 units: 1in = 96px = 72pt = 2.54cm = 25.4mm = 6pc", `<polygon points="0 0 1 1"/>`, "M0 0L1 1Z"},
		{"CSS 2.1, 4.3.2", `<line x1="1in" y1="72pt" x2="2.54cm" y2="25.4mm" stroke="black" />`, "M96 96L96 96"},
		{"CSS 2.1, 4.3.2", `<line x1="6pc" y1="2px" x2="2em" y2="0" font-size="3" stroke="black" />`, "M96 2L6 0"},
		{"7.10: percent of the view box", `<rect width="100%" height="50%"/>`, "M0 0L200 0L200 50L0 50Z"},
	} {
		if got := data(onePath(t, c.in).Commands); got != c.want {
			t.Errorf("%s: %s\n got %s\nwant %s", c.section, c.in, got, c.want)
		}
	}
}

// TestRoundShapesLieOnTheirEllipse checks circle, ellipse and rounded corners
// against the equation of the ellipse.
func TestRoundShapesLieOnTheirEllipse(t *testing.T) {
	for _, c := range []struct {
		in         string
		cx, cy     float64
		rx, ry     float64
		everywhere bool
	}{
		{`<circle cx="60" cy="50" r="40"/>`, 60, 50, 40, 40, true},
		{`<circle cx="60" cy="50" r="10%"/>`, 60, 50, math.Sqrt((200*200+100*100)/2) / 10, math.Sqrt((200*200+100*100)/2) / 10, true}, // 7.10
		{`<ellipse cx="60" cy="50" rx="50" ry="20"/>`, 60, 50, 50, 20, true},
		{`<rect x="10" y="20" width="100" height="60" rx="50" ry="30"/>`, 60, 50, 50, 30, true},
		{`<rect x="10" y="20" width="100" height="60" rx="500" ry="300"/>`, 60, 50, 50, 30, true},
		{`<rect x="10" y="20" width="100" height="60" rx="20"/>`, 90, 60, 20, 20, false}, // its last corner only
	} {
		for _, p := range along(onePath(t, c.in).Commands) {
			if !c.everywhere && (p.X < c.cx || p.Y < c.cy) {
				continue
			}
			if e := math.Hypot((p.X-c.cx)/c.rx, (p.Y-c.cy)/c.ry); math.Abs(e-1) > 1e-3 {
				t.Errorf("%s: %v is off: %v", c.in, p, e)
			}
		}
	}
}

func TestEmptyShapesDrawNothing(t *testing.T) {
	for _, in := range []string{`<rect width="0" height="5"/>`, `<circle/>`, `<ellipse rx="4"/>`, `<polyline points="1 2"/>`, `<polygon/>`, `<path/>`,
		`<line x2="5"/>`, `<rect width="5" height="5" fill="none"/>`, `<rect width="5" height="5" fill="none" stroke="red" stroke-width="0"/>`,
		`<g transform="scale(0)"><rect width="5" height="5"/></g>`, `<rect width="5" height="5" style="display:none"/>`,
		`<rect width="5" height="5" visibility="hidden"/>`, `<rect width="5" height="5" opacity="0"/>`,
		`<rect width="5" height="5" fill-opacity="0"/>`, `<g opacity="0%"><rect width="5" height="5"/></g>`} {
		if d := read(t, svg(in)); len(d.Items) != 0 {
			t.Errorf("%s: %d items", in, len(d.Items))
		}
	}
}

// TestTransforms checks where (10, 20) goes. The expected places are worked out
// by hand from the matrices of SVG 1.1, 7.6.
func TestTransforms(t *testing.T) {
	h := math.Sqrt2 / 2
	for _, c := range []struct {
		transform string
		x, y      float64
	}{
		{"matrix(1 2 3 4 5 6)", 1*10 + 3*20 + 5, 2*10 + 4*20 + 6},
		{"translate(3)", 13, 20},
		{"translate(3,-4)", 13, 16},
		{"scale(2)", 20, 40},
		{"scale(2 -3)", 20, -60},
		{"rotate(90)", -20, 10},
		{"rotate(90, 10, 0)", -10, 0},                 // about (10, 0): (0, 20) becomes (-20, 0)
		{"skewX(45)", 30, 20},                         // x + y·tan 45°
		{"skewY(45)", 10, 30},                         // y + x·tan 45°
		{"translate(5 6) scale(2)", 25, 46},           // the right one first
		{"scale(2) , translate(5 6)", 30, 52},         //
		{" rotate(180)\n\ttranslate( 1 , 2 ) ", 0, 0}, // set below
		{"translate(50,90) rotate(-45) translate(130,160)", 50 + h*140 + h*180, 90 - h*140 + h*180}, // 7.4, the nested example
		{"none", 10, 20},
		{"", 10, 20},
	} {
		if c.transform[:min(1, len(c.transform))] == " " {
			c.x, c.y = -11, -22
		}
		m, bad := parseTransform(c.transform)
		if bad != nil {
			t.Errorf("%q: %s", c.transform, bad.say)
			continue
		}
		if p := m.apply(Point{10, 20}); math.Abs(p.X-c.x) > 1e-9 || math.Abs(p.Y-c.y) > 1e-9 {
			t.Errorf("%q: (10, 20) goes to %v, want (%v, %v)", c.transform, p, c.x, c.y)
		}
	}
}

func TestBadTransforms(t *testing.T) {
	for _, s := range []string{"rotate", "rotate()", "rotate(1 2)", "scale(1,,2)", "matrix(1 2 3)", "translate(1 2 3)", "spin(3)", "scale(2),",
		"rotate(45deg)", "scale(1e999)", "rotate(10", "translate(1 2 3 4 5 6 7)", "scale(1e200) scale(1e200)"} {
		if _, bad := parseTransform(s); bad == nil {
			t.Errorf("%q was taken", s)
		}
	}
}

func TestNestedTransformsAndStroke(t *testing.T) {
	p := onePath(t, `<g transform="translate(5 6)"><g transform="scale(2)"><path transform="translate(1 0)" d="M0 0L10 0" stroke="red" stroke-width="3" stroke-dasharray="1 2"/></g></g>`)
	if got := data(p.Commands); got != "M7 6L27 6" || p.Width != 6 || p.Dash[0] != 2 || p.Dash[1] != 4 {
		t.Errorf("%s, width %v, dash %v", got, p.Width, p.Dash)
	}
	// Not a similarity: the root of 4 × 9 = 36.
	if p := onePath(t, `<line transform="scale(4 9)" x2="1" stroke="red" stroke-width=".5"/>`); p.Width != 3 {
		t.Errorf("stroke under scale(4 9): %v, want 3", p.Width)
	}
}

// TestStyle checks inheritance and which setting wins (SVG 1.1, 6.4: a style
// attribute beats presentation attributes; both beat what is inherited).
func TestStyle(t *testing.T) {
	red, green := Paint{R: 255}, Paint{G: 128}
	for _, c := range []struct {
		in           string
		fill, stroke Paint
	}{
		{`<path d="M0 0L1 1"/>`, Paint{}, noPaint},
		{`<g fill="red"><path d="M0 0L1 1"/></g>`, red, noPaint},
		{`<g fill="red"><g><path fill="green" d="M0 0L1 1"/></g></g>`, green, noPaint},
		{`<path fill="red" style="fill:green" d="M0 0L1 1"/>`, green, noPaint},
		{`<path style="fill:green;" fill="red" d="M0 0L1 1"/>`, green, noPaint},
		{`<g style="fill : red ; stroke:none!important"><path style="fill:inherit" fill="green" d="M0 0L1 1"/></g>`, red, noPaint},
		{`<path style="/* fill:red; */fill:rgb(0, 128,0);stroke:#F00" d="M0 0L1 1"/>`, green, red},
		{`<path style="font-family:'a;b';stroke:rgb(100%,0%,0%)" fill="#ff0000" d="M0 0L1 1"/>`, red, red},
		{`<path fill="currentColor" color="red" stroke="RED" d="M0 0L1 1"/>`, Paint{}, red},
		{`<path fill="DarkSlateGrey" stroke="lightgray" d="M0 0L1 1"/>`, Paint{R: 0x2f, G: 0x4f, B: 0x4f}, Paint{R: 0xd3, G: 0xd3, B: 0xd3}},
		{`<path fill="transparent" stroke="orange" d="M0 0L1 1"/>`, noPaint, Paint{R: 255, G: 165}},
		{`<path fill="rgb(300,-5,12.4)" d="M0 0L1 1"/>`, Paint{R: 255, B: 12}, noPaint},
		{`<path fill="rgb(100%,50%,0%)" d="M0 0L1 1"/>`, Paint{R: 255, G: 128}, noPaint}, // as a browser shows it
		{`<line x2="5" fill="red" stroke="red"/>`, noPaint, red},
	} {
		p := onePath(t, c.in)
		if p.Fill != c.fill || p.Stroke != c.stroke {
			t.Errorf("%s: fill %v, stroke %v", c.in, p.Fill, p.Stroke)
		}
	}
}

func TestPenSettings(t *testing.T) {
	p := onePath(t, `<g font-size="10" style="stroke:navy;stroke-width:0.5em;stroke-linecap:round;stroke-linejoin:bevel;stroke-dasharray:4,2;stroke-dashoffset:-1;fill-rule:evenodd">
		<path d="M0 0L9 0L9 9z"/></g>`)
	if p.Width != 5 || p.Cap != "round" || p.Join != "bevel" || p.DashStart != 5 || !p.EvenOdd || len(p.Dash) != 2 {
		t.Errorf("%+v", p)
	}
	if p := onePath(t, `<line x2="5" stroke="red" stroke-dasharray="0 0"/>`); p.Dash != nil { // SVG 1.1, 11.4
		t.Errorf("a dash list of nothing: %v", p.Dash)
	}
	if p := onePath(t, `<line x2="5" stroke="red" stroke-width="0.00001"/>`); p.Width != 0.001 {
		t.Errorf("a hairline became %v", p.Width)
	}
}

func TestSizes(t *testing.T) {
	for _, c := range []struct {
		in      string
		w, h, n float64
	}{
		{`<svg viewBox="10 20 200 100"/>`, 200, 100, 0},
		{`<svg viewBox="0,0,200,100" width="100mm"/>`, 200, 100, 100},
		{`<svg viewBox="0 0 200 100" width="5cm" height="2.5cm"/>`, 200, 100, 50},
		{`<svg viewBox="0 0 200 100" height="1in"/>`, 200, 100, 50.8},
		{`<svg viewBox="0 0 200 100" width="100mm" height="10mm"/>`, 200, 100, 20}, // as large as fits
		{`<svg viewBox="0 0 200 100" width="100%" height="auto"/>`, 200, 100, 0},
		{`<svg width="960" height="480px"/>`, 960, 480, 254},
		{`<svg width="144pt" height="72pt"/>`, 192, 96, 50.8},
		{`<svg viewBox="0 0 2 1"/>`, 200, 100, 0}, // enlarged to keep three decimals
		{`<svg viewBox="0 0 99.9 10" width="10mm"/>`, 999, 100, 10},
	} {
		d := read(t, c.in)
		if d.Width != c.w || d.Height != c.h || d.NaturalWidth != c.n {
			t.Errorf("%s: %v × %v, %v mm", c.in, d.Width, d.Height, d.NaturalWidth)
		}
	}
	d := read(t, `<svg viewBox="10 20 200 100"><path d="M10 20L30 40"/></svg>`)
	if got := data(d.Items[0].(*Path).Commands); got != "M0 0L20 20" {
		t.Errorf("the view box's corner is not (0, 0): %s", got)
	}
}

func TestTitles(t *testing.T) {
	d := read(t, svg("<title>\n  Front  view </title><desc>One<!-- --> &amp; two</desc><title>No</title><g><title>Layer</title></g><metadata><a><b>x</b></a></metadata><defs/>"))
	if d.Title != "Front view" || d.Desc != "One & two" {
		t.Errorf("title %q, description %q", d.Title, d.Desc)
	}
}
