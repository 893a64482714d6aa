package outline

import (
	"math"
	"strings"
	"testing"
)

// drawn reads a drawing of one piece in millimetres.
func drawn(t *testing.T, shapes string) *Outline {
	t.Helper()
	d, found := ReadSVG("o.svg", []byte(inMM(shapes)))
	for _, f := range found {
		t.Errorf("%s", f.Headline)
	}
	if d == nil || len(d.Pieces) != 1 || len(d.Pieces[0].Sizes) != 1 {
		t.Fatalf("no outline from %s", shapes)
	}
	return d.Pieces[0].Sizes[0].Outline
}

func inMM(shapes string) string {
	return `<svg xmlns="http://www.w3.org/2000/svg" width="1000mm" height="1000mm" viewBox="0 0 1000 1000" data-allowance="none">` + "\n" + shapes + "\n</svg>"
}

// TestClosedForms compares lengths and areas with closed forms. The perimeter of the
// ellipse is 4aE(e): with a = 2b, e² = 3/4, the complete elliptic integral E at
// m = 0.75 is 1.21105 60275 68459 5 (Abramowitz and Stegun, Handbook of Mathematical
// Functions, table 17.1). Arcs are drawn as curves that stay within a ten-millionth of
// the radius, which bounds the error.
func TestClosedForms(t *testing.T) {
	const e75 = 1.211056027568459
	for _, c := range []struct {
		what, shape  string
		length, area float64
	}{
		{"circle", `<circle id="rim" cx="300" cy="300" r="200"/>`, 2 * math.Pi * 200, math.Pi * 200 * 200},
		{"circle by two arcs", `<path id="rim" d="M100 300A200 200 0 0 1 500 300A200 200 0 0 1 100 300Z"/>`, 2 * math.Pi * 200, math.Pi * 200 * 200},
		{"ellipse", `<ellipse id="rim" cx="500" cy="300" rx="400" ry="200"/>`, 4 * 400 * e75, math.Pi * 400 * 200},
		{"rectangle", `<rect id="rim" x="5" y="6" width="300" height="200"/>`, 1000, 60000},
		{"turned rectangle", `<g transform="rotate(30) scale(.5)"><rect id="rim" x="400" width="300" height="200"/></g>`, 500, 15000},
		{"3-4-5 triangle", `<polygon id="rim" points="0 0 300 0 0 400"/>`, 1200, 60000},
		// y² = 4ax between the ends of its latus rectum is 2a(√2 + ln(1+√2)) long (Bronshtein
		// and Semendyayev, Handbook of Mathematics; recalled from memory), and shuts in 8a²/3.
		{"parabola", `<path id="rim" d="M100 300Q-100 500 100 700Z"/>`, 2*100*(math.Sqrt2+math.Log(1+math.Sqrt2)) + 400, 8 * 100 * 100 / 3.},
	} {
		o := drawn(t, c.shape)
		if got := o.length(); math.Abs(got-c.length) > 1e-6*c.length {
			t.Errorf("%s: %.7f long, want %.7f", c.what, got, c.length)
		}
		if got := o.Area(); math.Abs(got-c.area) > 1e-6*c.area {
			t.Errorf("%s: area %.5f, want %.5f", c.what, got, c.area)
		}
	}
}

// TestUnits checks the sizes of SVG 1.1, 7.8 and 7.10, and CSS 2.1, 4.3.2: 1 in is
// 96 px, 72 pt and 25.4 mm.
func TestUnits(t *testing.T) {
	for _, c := range []struct {
		root string
		mm   float64 // length of one side of a square of 10 user units
	}{
		{`width="100mm" viewBox="0 0 100 100"`, 10},
		{`height="5cm" viewBox="-20 -20 100 100"`, 5},
		{`width="10in" height="10in" viewBox="0 0 100 100"`, 25.4},
		{`width="720pt" viewBox="0 0 100 100"`, 25.4},
		{`width="960" viewBox="0 0 100 100"`, 25.4},
		{`width="960px" height="100%" viewBox="0 0 100 100"`, 25.4},
		{``, 254. / 96},
		{`width="100mm" height="100mm"`, 254. / 96},
		{`width="100mm" height="300mm" viewBox="0 0 100 300"`, 10},
		{`width="100mm" height="200mm" viewBox="0 0 100 100" preserveAspectRatio="xMidYMid slice"`, 20},
	} {
		src := `<svg xmlns="http://www.w3.org/2000/svg" data-allowance="none" ` + c.root + `><path id="a" d="M0 0h10v10h-10z"/></svg>`
		d, found := ReadSVG("o.svg", []byte(src))
		if d == nil {
			t.Errorf("%s: %v", c.root, found)
			continue
		}
		if got := d.Pieces[0].Sizes[0].length(); math.Abs(got-4*c.mm) > 1e-9 {
			t.Errorf("%s: a side is %v mm, want %v", c.root, got/4, c.mm)
		}
	}
}

const skirt = `
<path id="waist" d="M100 100 Q200 130 300 100"/>
<path id="side" d="M340 500 C340 350 320 250 300 100"/>
<path id="hem" d="M340 500L100 500"/>
<path id="centre" d="M100 500L100 100"/>
<line id="grain" x1="200" y1="150" x2="200" y2="450"/>
<circle id="mark-knee" cx="200" cy="300" r="3"/>
<path id="notch-hip" d="M325 300L335 300"/>
<path d="M0 0L999 999"/><text x="200" y="200">Front</text>`

// TestRing checks that edges find their order and direction by their ends.
func TestRing(t *testing.T) {
	o := drawn(t, skirt)
	var names []string
	for i, e := range o.Edges {
		names = append(names, e.Name)
		if next := o.Edges[(i+1)%len(o.Edges)]; e.to() != next.from() {
			t.Errorf("%s ends at %v, %s begins at %v", e.Name, e.to(), next.Name, next.from())
		}
	}
	if got := strings.Join(names, " "); got != "waist side hem centre" || !o.Clockwise() {
		t.Errorf("%s, clockwise %v", got, o.Clockwise())
	}
	for name, want := range map[string]Form{"waist": Hollow, "side": Convex, "hem": Straight, "centre": Straight} {
		if got := o.Edge(name).Form(); got != want {
			t.Errorf("%s is %s, want %s", name, got, want)
		}
	}
	if o.Grain == nil || len(o.Marks) != 2 || o.Marks[0].Edge != nil || o.Marks[1].Edge != o.Edge("side") {
		t.Errorf("grain %v, marks %+v", o.Grain, o.Marks)
	}
	// from the centre, going up, into the waist, which leaves at 3 in 10 downwards
	if got, want := o.Corner(0), 90+math.Atan(0.3)*180/math.Pi; math.Abs(got-want) > 1e-9 {
		t.Errorf("the corner at the waist turns by %v", got)
	}
	along, across := o.BoundsAlongGrain()
	if math.Abs(along-400) > 1e-9 || math.Abs(across-240) > 1e-9 {
		t.Errorf("%v along the grain, %v across", along, across)
	}
}

// TestCorners divides one closed line at circles, wherever it begins and whichever way
// it runs.
func TestCorners(t *testing.T) {
	corners := `<circle id="corner-top" cx="100.1" cy="100" r="2"/><circle id="corner-right" cx="300" cy="99.8" r="2"/><circle id="corner-low" cx="300" cy="200" r="2"/>`
	for _, d := range []string{"M100 100H300V300H100Z", "M100 100V300H300V100Z", "M200 300H100V100H300V300Z", "M300 150V300H100V100H300Z"} {
		o := drawn(t, `<path id="outline" d="`+d+`"/>`+corners)
		for name, want := range map[string]float64{"top": 200, "right": 100, "low": 500} {
			if e := o.Edge(name); e == nil || math.Abs(e.Length()-want) > 1e-6 {
				t.Errorf("%s: %s is %v", d, name, e)
			}
		}
		if a := o.Area(); math.Abs(a-40000) > 1e-6 {
			t.Errorf("%s: area %v", d, a)
		}
	}
}

// TestSizes shares what stands outside the groups, and keeps ids apart with _.
func TestSizes(t *testing.T) {
	src := inMM(`<path id="base" d="M0 0H100"/>
<g id="size-S"><path id="rest_S" d="M100 0V50H0V0"/></g>
<g data-size="M, L" data-allowance="included"><path id="rest_M" d="M100 0V80H0V0"/></g>`)
	d, found := ReadSVG("o.svg", []byte(src))
	if len(found) > 0 {
		t.Fatal(found)
	}
	p := d.Pieces[0]
	for size, want := range map[string]float64{"S": 5000, "M": 8000, "L": 8000} {
		if o := p.Of(size); o == nil || o.Area() != want {
			t.Errorf("size %s: %v", size, o)
		}
	}
	if p.Of("XL") != nil || p.Of("S").Allowance != Excluded || p.Of("L").Allowance != Included {
		t.Error("a size that is not drawn, or an allowance of the wrong group")
	}
}

// TestBending tells curves from corners: half a circle turns by 180 degrees, a tab with a
// point has three corners and no curve.
func TestBending(t *testing.T) {
	o := drawn(t, `<path id="rim" d="M0 0H100V60L50 90L0 60Z"/>`)
	if out, in := o.Edge("rim").Bending(); out > 1e-9 || in > 1e-9 {
		t.Errorf("the tab bends by %v and %v", out, in)
	}
	o = drawn(t, `<path id="round" d="M0 0A50 50 0 0 1 100 0V40"/><path id="rest" d="M100 40H0V0"/>`)
	if out, in := o.Edge("round").Bending(); math.Abs(out-180) > 0.1 || in > 0.1 {
		t.Errorf("half a circle bends by %v and %v", out, in)
	}
}

// TestHolds asks for places inside and beside half a circle, with the ends of its lines
// level with some of them.
func TestHolds(t *testing.T) {
	o := drawn(t, `<path id="round" d="M0 50A50 50 0 0 1 100 50"/><path id="base" d="M100 50H0"/>`)
	for _, c := range []struct {
		x, y   float64
		inside bool
	}{{50, 25, true}, {50, 1, true}, {2, 49, true}, {5, 5, false}, {50, 51, false}, {-10, 49, false}, {110, 25, false}} {
		if got := o.Holds(Point{X: c.x, Y: c.y}); got != c.inside {
			t.Errorf("%v, %v: inside %v", c.x, c.y, got)
		}
	}
}
