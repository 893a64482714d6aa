package outline

import (
	"fmt"
	"math"
	"os"
	"strings"
	"testing"
)

func patch(t *testing.T) string {
	t.Helper()
	src, err := os.ReadFile("testdata/patch.dxf")
	if err != nil {
		t.Fatal(err)
	}
	return string(src)
}

// TestDXF reads an invented patch: a rectangle with half a circle on top (a bulge of 1
// is half a circle, DXF reference, group 42), written as POLYLINE in size S and as
// LWPOLYLINE in size M.
func TestDXF(t *testing.T) {
	d, found := ReadDXF("patch.dxf", []byte(patch(t)))
	if d == nil || len(found) > 0 || len(d.Pieces) != 1 || d.Pieces[0].Name != "Patch" {
		t.Fatalf("%v, %v", d, found)
	}
	for size, c := range map[string]struct{ w, h float64 }{"S": {80, 100}, "M": {100, 120}} {
		o := d.Pieces[0].Of(size)
		if o == nil {
			t.Fatalf("no size %s", size)
		}
		for name, want := range map[string]float64{"side": c.h, "other-side": c.h, "base": c.w, "top": math.Pi * c.w / 2} {
			if e := o.Edge(name); e == nil || math.Abs(e.Length()-want) > 1e-5 {
				t.Errorf("size %s: %s is %v", size, name, e)
			}
		}
		if want := c.w*c.h + math.Pi*c.w*c.w/8 - math.Pi*25; math.Abs(o.Area()-want) > 1e-3 {
			t.Errorf("size %s: area %v, want %v", size, o.Area(), want)
		}
		var names []string
		for _, e := range o.Edges {
			names = append(names, e.Name)
		}
		if got := strings.Join(names, " "); !strings.Contains(got+" "+got, "side top other-side base") {
			t.Errorf("size %s: clockwise %s", size, got)
		}
		if o.Grain == nil || len(o.Marks) != 2 || o.Marks[0].Edge != o.Edge("other-side") || math.Abs(o.Marks[0].At-c.h*3/4) > 1e-6 || o.Marks[1].Edge != nil {
			t.Errorf("size %s: grain %v, marks %+v", size, o.Grain, o.Marks)
		}
		if o.Allowance != Included || !o.Clockwise() || o.Edge("top").Form() != Convex {
			t.Errorf("size %s: allowance %v, clockwise %v, top %v", size, o.Allowance, o.Clockwise(), o.Edge("top").Form())
		}
	}
}

// TestDXFUnits takes the unit from the header, else from a text outside the blocks.
func TestDXFUnits(t *testing.T) {
	header, text := "  9\n$INSUNITS\n 70\n4\n", "  0\nTEXT\n  8\n15\n  1\nUnits: %s\n  0\nINSERT\n"
	for _, c := range []struct {
		with string
		unit float64
	}{{"METRIC", 1}, {"ENGLISH", 25.4}} {
		src := strings.Replace(strings.Replace(patch(t), header, "", 1), "  0\nINSERT\n", fmt.Sprintf(text, c.with), 1)
		d, found := ReadDXF("patch.dxf", []byte(src))
		if d == nil {
			t.Fatal(found)
		}
		if got := d.Pieces[0].Of("S").Edge("base").Length(); math.Abs(got-80*c.unit) > 1e-9 {
			t.Errorf("%s: %v", c.with, got)
		}
	}
}

// TestDXFPieces reads lines and arcs, and keeps blocks without a cutting line out.
func TestDXFPieces(t *testing.T) {
	at := func(kind, layer string, values ...any) string {
		s := "0\n" + kind + "\n8\n" + layer + "\n"
		for i := 0; i < len(values); i += 2 {
			s += fmt.Sprintf("%v\n%v\n", values[i], values[i+1])
		}
		return s
	}
	src := "9\r\n$INSUNITS\r\n70\r\n5\r\n" + "0\nBLOCK\n2\nempty\n0\nENDBLK\n0\nBLOCK\n2\nhalf\n" +
		at("LINE", "1", 10, 0, 20, 0, 11, 10, 21, 0) + at("ARC", "1", 10, 5, 20, 0, 40, 5, 50, 0, 51, 180) +
		at("LINE", "6", 10, 0, 20, 0, 11, 10, 21, 0) + at("TEXT", "15", 1, "Allowance: none") + "0\nENDBLK\n0\nEOF\n"
	d, found := ReadDXF("half.dxf", []byte(src))
	if d == nil || len(d.Pieces) != 1 {
		t.Fatalf("%v %v", d, found)
	}
	o := d.Pieces[0].Of("any")
	if a := o.Area(); math.Abs(a-math.Pi*50*50/2) > 1e-3 || len(o.Folds) != 1 || o.Allowance != Excluded || d.Pieces[0].Name != "half" {
		t.Errorf("area %v, folds %v, %v", a, o.Folds, d.Pieces[0].Name)
	}
}

func TestDXFFaults(t *testing.T) {
	src := patch(t)
	for _, c := range []struct{ from, to, rule, says string }{
		{"  9\n$INSUNITS\n 70\n4\n", "", RuleScale, "in which unit"},
		{"  8\n1\n", "  8\n99\n", RuleUnreadable, "no piece"},
		{" 10\n80\n", " 10\neighty\n", RuleUnreadable, "“eighty”"},
		{" 66\n", "sixty-six\n", RuleUnreadable, "“sixty-six”"},
		{"Edge: base", "Edge: side", RuleName, "Two edges of the outline are called “side”"},
		{"EOF\n", "EOF\n  9\n", RuleUnreadable, "ends in the middle"},
	} {
		n := 1
		if c.rule == RuleUnreadable {
			n = -1
		}
		if !strings.Contains(src, c.from) {
			t.Fatalf("%q is not in the file", c.from)
		}
		_, found := ReadDXF("patch.dxf", []byte(strings.Replace(src, c.from, c.to, n)))
		if len(found) == 0 || found[0].Rule != c.rule || !strings.Contains(found[0].Headline, c.says) {
			t.Errorf("%q for %q: %v", c.to, c.from, found)
		}
	}
	for _, src := range []string{"", "\x00\x01", "0\nEOF\n", "AutoCAD Binary DXF\r\n"} {
		if d, found := ReadDXF("x.dxf", []byte(src)); d != nil || len(found) != 1 {
			t.Errorf("%q: %v", src, found)
		}
	}
}
