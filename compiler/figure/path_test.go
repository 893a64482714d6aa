package figure

import (
	"fmt"
	"math"
	"strings"
	"testing"
)

// grammarCases are path data and the same written out. The sections are those of
// SVG 1.1 (Second Edition); the examples marked "text" stand in them.
var grammarCases = []struct{ section, in, want string }{
	{"8.3.9 text", "M 100-200L0 0", "M100 -200L0 0"},
	{"8.3.9 text", "M 0.6.5L0 0", "M0.6 0.5L0 0"},
	{"8.3.1 text", "M 100 100 L 200 200", "M100 100L200 200"},
	{"8.3.1 text", "M100 100L200 200", "M100 100L200 200"},
	{"8.3.1 text", "M 100 200 L 200 100 -100 -200", "M100 200L200 100L-100 -200"},
	{"8.3.2: further pairs after M are lines", "M1 2 3 4 5 6", "M1 2L3 4L5 6"},
	{"8.3.2: further pairs after m are relative lines; the first m is absolute", "m1 2 3 4", "M1 2L4 6"},
	{"8.3.2: a later m is relative", "M10 10l1 1m2 3l1 1", "M10 10L11 11M13 14L14 15"},
	{"8.3.3: after z the next subpath starts where the last one did", "M10 20 30 40 z l5 5", "M10 20L30 40ZM10 20L15 25"},
	{"8.3.3: m after z is relative to the start", "m10 20 5 5zm1 1l1 0", "M10 20L15 25ZM11 21L12 21"},
	{"8.3.4", "M1 1H5h2 3V9v-1-2", "M1 1L5 1L7 1L10 1L10 9L10 8L10 6"},
	{"8.3.6 text, cubic01", "M100,200 C100,100 250,100 250,200 S400,300 400,200", "M100 200C100 100 250 100 250 200C250 300 400 300 400 200"},
	{"8.3.6: S after another command takes the pen's place", "M0 0L10 0S20 10 30 0", "M0 0L10 0C10 0 20 10 30 0"},
	{"8.3.6: s is relative to the pen", "M0 0c0 5 5 10 10 10s10 5 10 10", "M0 0C0 5 5 10 10 10C15 10 20 15 20 20"},
	{"8.3.7", "M0 0Q3 6 6 0", "M0 0C2 4 4 4 6 0"},
	{"8.3.7 text, quad01, with control points two thirds of the way", "M200,300 Q400,50 600,300 T1000,300",
		"M200 300C333.333 133.333 466.667 133.333 600 300C733.333 466.667 866.667 466.667 1000 300"},
	{"8.3.7: T after another command is a straight curve", "M0 0L3 0T9 0", "M0 0L3 0C3 0 5 0 9 0"},
	{"8.3.7: t chains", "M0 0q3 6 6 0t6 0", "M0 0C2 4 4 4 6 0C8 -4 10 -4 12 0"},
	{"8.3.9: exponents and signs", "M1e1+2E0L-.5e+1.25e-1", "M10 2L-5 0.025"},
	{"8.3.9: a point without digits after it", "M1.,2.L3 4", "M1 2L3 4"},
	{"8.3.9: all white space, comma with space around", "M\t1\n,\r2 L 3 , 4", "M1 2L3 4"},
	{"8.3.9: no space between letters and numbers", "M.5.5l.5.5.5.5", "M0.5 0.5L1 1L1.5 1.5"},
	{"8.3.8, F.6.2: a radius of nothing is a line", "M0 0A0 5 0 0 1 10 0", "M0 0L10 0"},
	{"8.3.8, F.6.2: ends that are the same draw nothing", "M5 5L6 6A3 3 0 0 1 6 6", "M5 5L6 6"},
	{"8.3.8, F.6.2: the same after z", "M5 5L6 6zA3 3 0 0 1 5 5L1 1", "M5 5L6 6ZM5 5L1 1"},
	{"8.3.9: z twice", "M0 0L1 0ZzL5 5", "M0 0L1 0ZM0 0L5 5"},
}

func TestPathGrammar(t *testing.T) {
	for _, c := range grammarCases {
		p := onePath(t, `<path d="`+c.in+`"/>`)
		if got := data(p.Commands); got != c.want {
			t.Errorf("%s: %q\n got %s\nwant %s", c.section, c.in, got, c.want)
		}
	}
}

func TestEmptyPathsDrawNothing(t *testing.T) { // SVG 1.1, 8.3.9: the grammar allows an empty string; SVG 2, 9.3.2: none
	for _, d := range []string{"", "  ", "none", "M1 2", "M1 2 M3 4"} {
		if n := len(read(t, svg(`<path d="`+d+`"/>`)).Items); n != 0 {
			t.Errorf("%q: %d items", d, n)
		}
	}
}

// TestBadPathData checks that what is wrong is found at its character; ^ in the
// data marks where.
func TestBadPathData(t *testing.T) {
	for _, d := range []string{
		"^L1 2", "M1^", "M1 2 L^", "M1 2 L3^", "M1 2L3 4^,", "M^,1 2", "M1,^,2", "M1 2 ^X3", "M1 2^,L3 4",
		"M1 2C1 2 3 4 5^", "M1 2A5 5 0 ^2 1 3 4", "M1 2A5 5 0 1^-1 3 4", "M0 0L1 ^1e999", "M0 0L^NaN 1", "M0 0L^Infinity 1", "M1 2^;L3 4", "M1 2L3 4^é",
		"^1 2", "M 1 2 L ^#",
	} {
		mark := strings.IndexByte(d, '^')
		// the reference to a space is five bytes in the file and one in the value
		src := svg("\n" + `<path stroke='red' d = "&#32;` + strings.Replace(d, "^", "", 1) + `"/>`)
		_, fs := Read("f.svg", []byte(src))
		if len(fs) != 1 || fs[0].Rule != ruleUnreadable {
			t.Errorf("%q: %d findings", d, len(fs))
			continue
		}
		want := 1 + len(`<path stroke='red' d = "&#32;`) + mark
		if got := fs[0].Place.Start; got.Line != 2 || got.Column != want {
			t.Errorf("%q: at %d:%d, want 2:%d (%s)", d, got.Line, got.Column, want, fs[0].Headline)
		}
	}
}

// along gives points of a path, many for each curve.
func along(c []Command) []Point {
	var out []Point
	var cur Point
	for _, k := range c {
		switch k.Op {
		case 'M', 'L':
			cur = k.Points[0]
			out = append(out, cur)
		case 'C':
			for i := 0; i <= 64; i++ {
				t := float64(i) / 64
				u := 1 - t
				w := [...]float64{u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t}
				p := [...]Point{cur, k.Points[0], k.Points[1], k.Points[2]}
				var q Point
				for n := range w {
					q.X, q.Y = q.X+w[n]*p[n].X, q.Y+w[n]*p[n].Y
				}
				out = append(out, q)
			}
			cur = k.Points[2]
		}
	}
	return out
}

// TestArcsLieOnTheirCircle draws the four arcs between two points of a circle
// with a known centre and checks distance, end, direction and length of turn
// against the analytic circle (SVG 1.1, 8.3.8, picture arcs02).
func TestArcsLieOnTheirCircle(t *testing.T) {
	const r = 50.0
	// A circle about (100, 50): from the angle 200° to 320° is 120° with the sweep.
	at := func(deg float64) Point {
		s, c := math.Sincos(deg * math.Pi / 180)
		return Point{100 + r*c, 50 + r*s}
	}
	a, b := at(200), at(320)
	this := Point{100, 50}
	other := Point{a.X + b.X - this.X, a.Y + b.Y - this.Y} // the other circle through both
	for _, c := range []struct {
		large, sweep int
		centre       Point
		turn         float64
	}{{0, 1, this, 120}, {1, 0, this, -240}, {0, 0, other, -120}, {1, 1, other, 240}} {
		centre := c.centre
		in := fmt.Sprintf("M%v %vA50 50 17 %d%d%v %v", a.X, a.Y, c.large, c.sweep, b.X, b.Y)
		cmds, bad := parsePath(in, 100, quarter, nil)
		if bad != nil {
			t.Fatal(bad.say)
		}
		pts := along(cmds)
		turned, prev := 0.0, math.Atan2(a.Y-centre.Y, a.X-centre.X)
		for _, p := range pts {
			if d := math.Hypot(p.X-centre.X, p.Y-centre.Y); math.Abs(d-r) > 1e-3*r {
				t.Errorf("%s: %v is %v from the centre", in, p, d)
			}
			now := math.Atan2(p.Y-centre.Y, p.X-centre.X)
			turned += math.Remainder(now-prev, 2*math.Pi)
			prev = now
		}
		if got := turned * 180 / math.Pi; math.Abs(got-c.turn) > 0.01 {
			t.Errorf("%s: turns %v°, want %v°", in, got, c.turn)
		}
		if end := pts[len(pts)-1]; end != b {
			t.Errorf("%s: ends at %v, want %v", in, end, b)
		}
	}
}

// TestTurnedEllipse checks a turned elliptical arc against the ellipse's own
// equation, and radii that are too small against SVG 1.1, F.6.6: they grow until
// the ends are a diameter apart.
func TestTurnedEllipse(t *testing.T) {
	const turn = 30 * math.Pi / 180
	laid := matrix{math.Cos(turn), math.Sin(turn), -math.Sin(turn), math.Cos(turn), 70, 40}
	start, to := laid.apply(Point{40, 0}), laid.apply(Point{0, 20})
	cmds, _ := parsePath(fmt.Sprintf("M%v %va40 20 30 0 1 %v %v", start.X, start.Y, to.X-start.X, to.Y-start.Y), 100, quarter, nil)
	for _, p := range along(cmds) {
		x, y := p.X-70, p.Y-40
		u, v := (x*math.Cos(turn)+y*math.Sin(turn))/40, (y*math.Cos(turn)-x*math.Sin(turn))/20
		if e := math.Hypot(u, v); math.Abs(e-1) > 1e-3 {
			t.Errorf("%v is off the ellipse: %v", p, e)
		}
	}
	cmds, _ = parsePath("M0 0A1 1 0 0 1 30 40", 100, quarter, nil)
	for _, p := range along(cmds) {
		if d := math.Hypot(p.X-15, p.Y-20); math.Abs(d-25) > 1e-3*25 {
			t.Errorf("grown radius: %v is %v from the middle, want 25", p, d)
		}
	}
	cmds, _ = parsePath("M300,200 h-150 a150,150 0 1,0 150,-150 z", 100, quarter, nil) // arcs01: three quarters about (300, 200)
	for _, p := range along(cmds)[2:] {
		if d := math.Hypot(p.X-300, p.Y-200); math.Abs(d-150) > 1e-3*150 {
			t.Errorf("arcs01: %v is %v from the centre", p, d)
		}
	}
}

func TestNegativeRadiiAreTakenPositive(t *testing.T) { // SVG 1.1, F.6.6 step 1
	a, _ := parsePath("M0 0A-5-5 0 0 1 8 0", 9, quarter, nil)
	b, _ := parsePath("M0 0A5 5 0 0 1 8 0", 9, quarter, nil)
	if data(a) != data(b) {
		t.Errorf("%s\n%s", data(a), data(b))
	}
}
