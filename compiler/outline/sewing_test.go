package outline

import (
	"math"
	"strings"
	"testing"
)

// TestSewLength compares the stitching lines of cutting lines with shapes whose lines
// inside are known: rectangle, trapezium and a quarter of a disc.
func TestSewLength(t *testing.T) {
	square := `<path id="top" d="M0 0H300"/><path id="right" d="M300 0V200"/><path id="bottom" d="M300 200H0"/><path id="left" d="M0 200V0"/>`
	own := map[string]float64{"top": 10, "right": 20, "bottom": 30, "left": 5, "a": 10, "b": 10, "c": 10, "rim": 10, "up": 0, "flat": 0}
	for _, c := range []struct {
		in   string
		want map[string]float64
	}{
		{square, map[string]float64{"top": 275, "right": 160, "bottom": 275, "left": 160}},
		// A 3-4-5 triangle inset by 10: its inner circle shrinks from 100 to 90 (r = 100 for 300, 400, 500).
		{`<path id="a" d="M0 0L300 0"/><path id="b" d="M300 0L0 400"/><path id="c" d="M0 400L0 0"/>`, map[string]float64{"a": 270, "b": 450, "c": 360}},
		// A quarter of a disc, whose straight edges are not moved: the rim's stitching line is a quarter of a smaller circle.
		{`<path id="up" d="M0 0L0 -100"/><path id="rim" d="M0 -100A100 100 0 0 1 100 0"/><path id="flat" d="M100 0L0 0"/>`, map[string]float64{"rim": math.Pi / 2 * 90, "up": 90}},
	} {
		d, found := ReadSVG("o.svg", []byte(strings.Replace(inMM(c.in), `"none"`, `"included"`, 1)))
		if d == nil {
			t.Fatal(found)
		}
		o := d.Pieces[0].Sizes[0].Outline
		for name, want := range c.want {
			if got := o.SewLength(o.Edge(name), func(e *Edge) float64 { return own[e.Name] }); math.Abs(got-want) > 1e-3 {
				t.Errorf("%s: %v, want %v", name, got, want)
			}
		}
	}
	o := drawn(t, square)
	if got := o.SewLength(o.Edge("top"), func(*Edge) float64 { return 10 }); got != 300 {
		t.Errorf("a stitching line is %v along itself", got)
	}
}

// TestSewPlace follows places from cutting lines to stitching lines: along a straight
// edge they move by what the neighbour cuts off, along the rim of a disc they keep their
// angle on the smaller circle.
func TestSewPlace(t *testing.T) {
	read := func(shapes string) *Outline {
		d, found := ReadSVG("o.svg", []byte(strings.Replace(inMM(shapes), `"none"`, `"included"`, 1)))
		if d == nil {
			t.Fatal(found)
		}
		return d.Pieces[0].Sizes[0].Outline
	}
	square := read(`<path id="top" d="M0 0H300"/><path id="right" d="M300 0V200"/><path id="bottom" d="M300 200H0"/><path id="left" d="M0 200V0"/>`)
	rim := read(`<path id="up" d="M0 0L0 -100"/><path id="rim" d="M0 -100A100 100 0 0 1 100 0"/><path id="flat" d="M100 0L0 0"/>`)
	ten := func(e *Edge) float64 {
		if e.Name == "up" || e.Name == "flat" {
			return 0
		}
		return 10
	}
	for _, c := range []struct {
		of             *Outline
		edge           string
		at, want, near float64
	}{
		{square, "top", 100, 90, 1e-9},
		{square, "top", 0, 0, 1e-9},
		{square, "top", 300, 280, 1e-9},
		{rim, "rim", math.Pi / 3 * 100, math.Pi / 3 * 90, 1e-3},
		{rim, "rim", math.Pi / 2 * 100, math.Pi / 2 * 90, 1e-3},
	} {
		if got := c.of.SewPlace(c.of.Edge(c.edge), c.at, ten); math.Abs(got-c.want) > c.near {
			t.Errorf("%s at %v: %v, want %v", c.edge, c.at, got, c.want)
		}
	}
}
