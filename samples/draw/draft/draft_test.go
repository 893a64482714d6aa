package draft

import (
	"math"
	"strings"
	"testing"

	"seamwarden/compiler/outline"
)

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s is %.4f, not %.4f", what, got, want)
	}
}

// A circle's circumference and a quarter's handle are known (Euclid; the handle of a
// quarter is 4/3·tan(π/8) radii).
func TestLengthOfCircle(t *testing.T) {
	whole := Arc(At(10, 20), 100, 0, 360)
	near(t, "a circle of 100 mm radius", whole.Length(), 200*math.Pi, 0.1)
	near(t, "its end", whole.End().Minus(whole.Start()).Length(), 0, 1e-9)
	place, way := Arc(At(0, 0), 100, 0, 90).At(50 * math.Pi / 2)
	near(t, "half a quarter, x", place.X, 100/math.Sqrt2, 0.05)
	near(t, "its direction, y", way.Y, 1/math.Sqrt2, 0.01)
}

func TestCutAndReverse(t *testing.T) {
	p := Line(At(0, 0), At(0, 100)).Then(Flow(At(0, 100), Downward, At(80, 220), Rightward, 0.4))
	for _, mm := range []float64{1, 60, 100, 140} {
		a, b := p.Cut(mm)
		near(t, "the first part", a.Length(), mm, 0.01)
		near(t, "both parts", a.Length()+b.Length(), p.Length(), 0.01)
		near(t, "their joint", b.Start().Minus(a.End()).Length(), 0, 1e-6)
	}
	near(t, "backwards", p.Reversed().Length(), p.Length(), 1e-9)
	near(t, "mirrored twice", p.Mirrored(7).Mirrored(7).End().Minus(p.End()).Length(), 0, 1e-9)
}

func TestOfLength(t *testing.T) {
	p := OfLength(150, 0, 90, func(x float64) Path { return Flow(At(0, 0), Rightward, At(100, x), Downward, 0.4) })
	near(t, "the curve", p.Length(), 150, 1e-3)
}

// What runs beside a circle is a circle.
func TestBesideCircle(t *testing.T) {
	for _, mm := range []float64{-60, 30, 60} {
		near(t, "beside a circle", Arc(At(0, 0), 100, 0, 90).Beside(mm).Length(), (100-mm)*math.Pi/2, 0.1)
	}
}

func TestCrossing(t *testing.T) {
	along, other := Line(At(0, 0), At(100, 0)).Meeting(Arc(At(0, 0), 40, -90, 90))
	near(t, "along the line", along, 40, 0.05)
	near(t, "along the arc", other, 40*math.Pi/2, 0.1)
}

// What is written is read by the reader of outlines as it was drawn.
func TestWrittenAndRead(t *testing.T) {
	piece := func(w float64) *Piece {
		hem := Flow(At(w, 300), At(-1, 0.1), At(0, 310), Leftward, 0.35)
		p := New(Edge{"top", Line(At(0, 0), At(w, 0))}, Edge{"side", Line(At(w, 0), At(w, 300))}, Edge{"hem", hem}, Edge{"centre", Line(At(0, 310), At(0, 0))})
		return p.Notch("hip", "side", 120).Mark("pocket", At(40, 50)).Mark("pocket", At(40, 90)).GrainLine(At(60, 40), At(60, 240)).Fold("middle", At(20, 0), At(20, 300))
	}
	d := Drawing{Title: "A <piece>", Sizes: []Sized{{"8", piece(100)}, {"10", piece(110)}, {"12", piece(110)}}}
	src, err := d.SVG()
	if err != nil {
		t.Fatal(err)
	}
	read, found := outline.ReadSVG("a.svg", src)
	if len(found) > 0 || read == nil {
		t.Fatalf("found %v in\n%s", found, src)
	}
	notches := 0
	for _, s := range d.Sizes {
		o := read.Pieces[0].Of(s.Size)
		for _, e := range s.Edges {
			near(t, s.Size+" "+e.Name, o.Edge(e.Name).Length(), e.Path.Length(), 0.15)
		}
		if len(o.Marks) != 3 || o.Grain == nil || len(o.Folds) != 1 {
			t.Errorf("size %s has %d marks, grain %v, %d folds", s.Size, len(o.Marks), o.Grain, len(o.Folds))
		}
		for _, m := range o.Marks {
			if m.Name == "hip" && m.Edge != nil {
				near(t, "the notch", m.At, 120, 0.1)
				notches++
			}
		}
	}
	if notches != len(d.Sizes) {
		t.Errorf("%d notches lie on the side, not %d", notches, len(d.Sizes))
	}
	if n := strings.Count(string(src), "<g "); n != 2 {
		t.Errorf("%d groups, not 2: sizes that are alike share one\n%s", n, src)
	}
}

func TestOpenPieceIsRefused(t *testing.T) {
	p := New(Edge{"a", Line(At(0, 0), At(10, 0))}, Edge{"b", Line(At(11, 0), At(0, 10), At(0, 0))})
	if _, err := (&Drawing{Title: "Open", Sizes: []Sized{{"M", p}}}).SVG(); err == nil || !strings.Contains(err.Error(), "from a to b there is a gap of 1.00 mm") {
		t.Errorf("an open piece gives %v", err)
	}
}
