package outline

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestContaining(t *testing.T) {
	for _, in := range []string{skirt, `<circle id="r" cx="100" cy="100" r="90"/>`, `<circle id="r" cx="100" cy="100" r="3"/>`, `<rect id="r" width="50" height="60"/>`,
		`<path id="r" d="M0 0C100 300 200 -200 300 0V200C250 0 100 400 0 200Z"/>`, `<path id="r" d="M0 0H10A90 90 0 0 0 190 0H200V200H0Z"/>`} {
		contains(t, drawn(t, in))
	}
	ring, err := drawn(t, `<rect id="r" width="50" height="60"/>`).Containing()
	if err != nil || len(ring) != 4 {
		t.Errorf("a rectangle becomes %v, %v", ring, err)
	}
}

// TestRandomContaining draws rings of random curves about a centre.
func TestRandomContaining(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		n := rapid.IntRange(3, 9).Draw(rt, "n")
		at := func(i int, r float64, share float64) Point {
			a := 2 * math.Pi * (float64(i) + share) / float64(n)
			return Point{X: 500 + r*math.Cos(a), Y: 500 + r*math.Sin(a)}
		}
		radius := func(name string) float64 { return rapid.Float64Range(100, 400).Draw(rt, name) }
		var ends []Point
		for i := range n {
			ends = append(ends, at(i, radius("end"), 0))
		}
		d := fmt.Sprintf("M%f %f", ends[0].X, ends[0].Y)
		for i := range n {
			p, q, to := at(i, radius("p"), 1./3), at(i, radius("q"), 2./3), ends[(i+1)%n]
			d += fmt.Sprintf("C%f %f %f %f %f %f", p.X, p.Y, q.X, q.Y, to.X, to.Y)
		}
		contains(rt, drawn(t, `<path id="r" d="`+d+`Z"/>`))
	})
}

type failing interface{ Errorf(string, ...any) }

// contains walks along the ring: every place lies inside the polygon or on it, and
// every corner of the polygon lies near the ring, but for sharp corners, whose mitres
// reach out by the grid's allowance.
func contains(t failing, o *Outline) {
	ring, err := o.Containing()
	if err != nil {
		t.Errorf("%v", err)
		return
	}
	var points []Point
	for _, g := range ring {
		points = append(points, Point{X: float64(g.X) * GridMM, Y: float64(g.Y) * GridMM})
	}
	if a := areaOf(points); a < o.Area() || a > o.Area()+o.length()*0.2+1 {
		t.Errorf("area %v for %v", a, o.Area())
	}
	for _, e := range o.Edges {
		for i := range e.Curves {
			for k := range 100 {
				if p := e.Curves[i].at(float64(k) / 100); !insideOf(points, p) {
					t.Errorf("%v of %s lies outside", p, e.Name)
					return
				}
			}
		}
	}
	for _, p := range points {
		if at := o.nearest(p, 1); at.edge == nil || at.off > containTolerance+0.05 {
			t.Errorf("%v lies %v off", p, at.off)
		}
	}
}

// insideOf counts the sides to the right of a place.
func insideOf(ring []Point, p Point) (yes bool) {
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(p.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			yes = !yes
		}
	}
	return
}

// TestWidened checks the area of offset shapes: A + Pw + (4 or π)w² for a square with
// mitred corners and for a circle, which has none.
func TestWidened(t *testing.T) {
	square := `<path id="top" d="M100 100H300"/><path id="right" d="M300 100V300"/><path id="bottom" d="M300 300H100"/><path id="left" d="M100 300V100"/>`
	every := func(w float64) func(*Edge) float64 { return func(*Edge) float64 { return w } }
	own := func(e *Edge) float64 {
		return map[string]float64{"top": 10, "right": 20, "bottom": 30, "left": 0}[e.Name]
	}
	for _, c := range []struct {
		in    string
		width func(*Edge) float64
		area  float64
	}{
		{square, every(15), 230 * 230},
		{square, every(-15), 170 * 170},
		{square, own, 220 * 240},
		{`<path id="a" d="M0 0H100"/><path id="b" d="M100 0H200V50H0V0"/>`, func(e *Edge) float64 { return map[string]float64{"a": 10, "b": 5}[e.Name] }, 210*60 + 105*5}, // a step in the top
		{`<circle id="r" cx="300" cy="300" r="200"/>`, every(15), math.Pi * 215 * 215},
		{`<path id="r" d="M0 0H200V200H100V100H0Z"/>`, every(10), 30000 + 800*10 + 400}, // five corners out, one in
	} {
		ring, err := drawn(t, c.in).Widened(c.width)
		if err != nil {
			t.Errorf("%s: %v", c.in, err)
			continue
		}
		if got := areaOf(ring); math.Abs(got-c.area) > 1e-3*c.area {
			t.Errorf("%s: area %v, want %v", c.in, got, c.area)
		}
	}
	if _, err := drawn(t, square).Widened(every(-110)); !errors.Is(err, ErrTooNarrow) {
		t.Errorf("an allowance wider than the piece: %v", err)
	}
	// A hollow narrower than twice the width is filled.
	ring, err := drawn(t, `<path id="r" d="M0 0H90A10 10 0 0 0 110 0H200V200H0Z"/>`).Widened(every(25))
	if err != nil || math.Abs(areaOf(ring)-250*250) > 1e-6 {
		t.Errorf("a hollow narrower than the allowance: %v, %v", areaOf(ring), err)
	}
}

// BenchmarkReadSVG reads a piece in eleven sizes.
func BenchmarkReadSVG(b *testing.B) {
	var shapes string
	for i := range 11 {
		shapes += fmt.Sprintf(`<g id="size-%d" transform="scale(1.0%d)">%s</g>`, i, i, skirt)
	}
	src := []byte(inMM(shapes))
	b.SetBytes(int64(len(src)))
	b.ReportAllocs()
	for b.Loop() {
		if d, _ := ReadSVG("o.svg", src); d == nil {
			b.Fatal("not read")
		}
	}
}
