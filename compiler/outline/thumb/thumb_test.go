package thumb

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"seamwarden/compiler/figure"
	"seamwarden/compiler/outline"
)

func read(t *testing.T, shapes string) *outline.Outline {
	t.Helper()
	d, found := outline.ReadSVG("o.svg", []byte(`<svg xmlns="http://www.w3.org/2000/svg" width="1000mm" viewBox="0 0 1000 1000" data-allowance="none">`+shapes+`</svg>`))
	if d == nil || len(found) > 0 {
		t.Fatal(found)
	}
	return d.Pieces[0].Sizes[0].Outline
}

func box(w, h int) string {
	return fmt.Sprintf(`<path id="top" d="M0 0H%d"/><path id="end" d="M%[1]d 0V%d"/><path id="bottom" d="M%[1]d %[2]dH0"/><path id="start" d="M0 %[2]dV0"/>`, w, h)
}

// TestDrawing: what is drawn is a figure that its reader takes without a word, with every
// label on the paper, the fold in strokes, a notch that points into the piece, and two
// heads on the grain.
func TestDrawing(t *testing.T) {
	o := read(t, box(300, 500)+`<line id="grain" x1="100" y1="100" x2="100" y2="400"/><circle id="notch-hip" cx="300" cy="200" r="2"/>`)
	d := Draw(o, Look{Number: "12", Under: "View A", Fold: "start", Scale: 20, Title: "Piece 12, front", Desc: "Edges: four."})
	var b bytes.Buffer
	if err := d.WriteSVG(&b, "t"); err != nil {
		t.Fatal(err)
	}
	again, found := figure.Read("t.svg", b.Bytes())
	if len(found) > 0 || len(again.Items) != len(d.Items) || again.Title != d.Title {
		t.Errorf("%v; %d items of %d", found, len(again.Items), len(d.Items))
	}
	dashed, filled, notch := 0, 0, false
	for _, it := range d.Items {
		switch x := it.(type) {
		case *figure.Label:
			if x.At.X < 0 || x.At.X > d.Width || x.At.Y-0.72*x.Size < 0 || x.At.Y > d.Height {
				t.Errorf("%q lies off the paper", x.Text)
			}
		case *figure.Path:
			if len(x.Dash) == 4 {
				dashed++
			}
			if !x.Fill.None {
				filled++
			}
			from, to := x.Commands[0].Points[0], x.Commands[len(x.Commands)-1].Points[0]
			notch = notch || len(x.Commands) == 2 && from.X > to.X && from.Y == to.Y && from.X-to.X == 5
		}
	}
	if dashed != 1 || filled != 2 || !notch {
		t.Errorf("%d fold edges, %d heads, notch inwards %t", dashed, filled, notch)
	}
	if w := d.NaturalWidth; w < 15 || w > 18 { // 300 mm at 1:20 and the air around
		t.Errorf("it is %v mm wide", w)
	}
	if s := b.String(); !strings.Contains(s, ">12<") || !strings.Contains(s, ">View A<") {
		t.Error("a word is missing")
	}
}

// TestNumberBesideANarrowPiece: where there is no room inside, the number stands beside.
func TestNumberBesideANarrowPiece(t *testing.T) {
	o := read(t, box(800, 40))
	wide := Draw(o, Look{Scale: 40})
	d := Draw(o, Look{Scale: 40, Number: "7"})
	l, ok := d.Items[len(d.Items)-1].(*figure.Label)
	if !ok || l.At.X <= wide.Width || d.Width <= wide.Width {
		t.Errorf("the number stands at %v of %v", l, d.Width)
	}
}

func TestScale(t *testing.T) {
	coat, tab := read(t, box(400, 900)), read(t, box(60, 90))
	if s := Scale([]*outline.Outline{coat, tab}); s != 40 { // 900 mm in 26 mm
		t.Errorf("1:%v", s)
	}
	if !TooSmall(tab, 40) || TooSmall(coat, 40) {
		t.Error("a tab of 2 mm can be made out, or a coat cannot")
	}
}
