package pdf

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"seamwarden/compiler/booklet"
	"seamwarden/compiler/figure"
)

func TestNumbersAreWrittenAsPDFWantsThem(t *testing.T) {
	// ISO 32000-1, 7.3.3: no exponents, no words.
	for v, want := range map[float64]string{0: "0", -0.0001: "0", 1.5: "1.5", 100: "100", 1e-9: "0", 1e12: "30000",
		math.Inf(-1): "-30000", 2.0004: "2", -3.25: "-3.25"} {
		if got := num(v); got != want {
			t.Errorf("%v is written %q, want %q", v, got, want)
		}
	}
	if got := num(math.NaN()); got != "0" {
		t.Errorf("not a number is written %q", got)
	}
}

func TestOperatorsOfAPath(t *testing.T) {
	w := newWriter(sheet{width: 100, height: 100}, about{}, fixedDate)
	red := figure.Paint{R: 255}
	for _, c := range []struct {
		path figure.Path
		want string
	}{
		{figure.Path{Fill: none, Stroke: black}, "S"}, {figure.Path{Fill: red, Stroke: none}, "f"},
		{figure.Path{Fill: red, Stroke: none, EvenOdd: true}, "f*"}, {figure.Path{Fill: red, Stroke: red, EvenOdd: true}, "B*"},
		{figure.Path{Fill: red, Stroke: red}, "B"}, {figure.Path{Fill: none, Stroke: none}, ""},
		{figure.Path{Fill: none, Stroke: red, EvenOdd: true}, "S"},
	} {
		if got := paintOp(&c.path); got != c.want {
			t.Errorf("%+v is painted with %q, want %q", c.path, got, c.want)
		}
	}
	got := w.shape(10, 10, []figure.Command{lineTo(1, 2), lineTo(3, 4), curveTo(pt(5, 6), pt(7, 8), pt(9, 0)), closed})
	if want := "11 88 m 11 88 l 13 86 l 15 84 17 82 19 90 c h "; got != want {
		t.Errorf("shape %q, want %q", got, want)
	}
	ops := strokeOps(&figure.Path{Stroke: red, Width: 2, Dash: []float64{3, 1}, DashStart: 1, Cap: "round", Join: "bevel"})
	if want := "1 0 0 RG 2 w 4 M 1 J 2 j [3 1] 1 d"; ops != want {
		t.Errorf("stroke %q, want %q", ops, want)
	}
}

func TestDashesThatPDFForbidsAreSolid(t *testing.T) {
	for _, d := range [][]float64{{0, 0}, {-1, 2}, {}, nil} {
		if got := scaledDash(d, 2); got != nil {
			t.Errorf("%v becomes %v", d, got)
		}
	}
	if got := scaledDash([]float64{1, 2, 3}, 2); fmt.Sprint(got) != "[2 4 6]" {
		t.Errorf("got %v", got)
	}
}

func TestArtKeepsItsSizeAndShape(t *testing.T) {
	d := &figure.Drawing{Width: 100, Height: 50, NaturalWidth: 25.4}
	for _, c := range []struct{ width, height, natural, want float64 }{
		{400, 400, 25.4, 0.72}, // one inch is 72 points
		{400, 400, 0, 4}, {36, 400, 25.4, 0.36}, {400, 18, 25.4, 0.36},
	} {
		d.NaturalWidth = c.natural
		if got := scaleFor(d, c.width, c.height); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("in %.0f × %.0f: %.3f points a unit, want %.3f", c.width, c.height, got, c.want)
		}
	}
}

// TestArtAsPopplerDrawsIt draws the page with poppler and looks at single points: the
// ring is black and hollow (even-odd), the ground grey, outside is white.
func TestArtAsPopplerDrawsIt(t *testing.T) {
	needTool(t, "pdftoppm")
	b := chapterOf(fig("art", "Ring", seamArt(160*25.4/72))) // one unit is one point
	d := mustLayOut(t, b, A4)
	at := d.places["art"]
	dir := t.TempDir()
	file := save(t, mustRender(t, b, Options{}).Bytes)
	n := fmt.Sprint(at.page)
	runTool(t, "pdftoppm", "-r", "144", "-gray", "-f", n, "-l", n, "-singlefile", file, filepath.Join(dir, "page"))
	img, err := os.ReadFile(filepath.Join(dir, "page.pgm"))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name string
		x, y float64
		want int
	}{
		{"ring", 22.5, 30, 0}, {"hole", 30, 30, 205}, {"ground", 60, 90, 205}, {"outside", 5, 5, 255},
	} {
		got := pixel(t, img, (d.sheet.left+c.x)*2, (at.y+c.y)*2)
		if got < c.want-2 || got > c.want+2 {
			t.Errorf("%s is %d, want %d", c.name, got, c.want)
		}
	}
}

// pixel reads one grey value of a PGM file (netpbm format P5).
func pixel(t *testing.T, img []byte, x, y float64) int {
	t.Helper()
	var w, h, most int
	if _, err := fmt.Sscanf(string(img[:32]), "P5\n%d %d\n%d\n", &w, &h, &most); err != nil {
		t.Fatal(err)
	}
	data := img[bytes.Index(img, []byte("\n255\n"))+5:]
	return int(data[int(y)*w+int(x)])
}

func TestFiguresStandBesideOrBelow(t *testing.T) {
	wideStrip := &figure.Drawing{Width: 400, Height: 60}
	for _, c := range []struct {
		name   string
		art    *figure.Drawing
		beside bool
		blocks []booklet.Block
	}{
		{"small", seamArt(40), true, nil},
		{"no size", seamArt(0), true, nil},
		{"wide strip", wideStrip, false, nil},
		{"large", seamArt(150), false, nil},
		{"next to a table", seamArt(40), false, []booklet.Block{bigTable(2, 2)}},
	} {
		step := &booklet.Step{ID: "s", Number: 1, Title: "Join", Blocks: append(c.blocks, para(txt(long(10))...)),
			Figures: []*booklet.Figure{fig("f", "Cap.", c.art)}}
		d := mustLayOut(t, chapterOf(step), A4)
		// Beside the text the figure belongs to the first piece of the step.
		if got := d.places["f"] == d.places["s"]; got != c.beside {
			t.Errorf("%s: beside is %v", c.name, got)
		}
	}
}

func TestLabelsStayInTheArt(t *testing.T) {
	b := chapterOf(fig("art", "", &figure.Drawing{Width: 100, Height: 100, NaturalWidth: 50, Items: []figure.Item{
		&figure.Label{At: pt(98, 2), Text: "too far right", Size: 10},
		&figure.Label{At: pt(0, 50), Text: strings.Repeat("far too long ", 20), Size: 10, Angle: 45},
	}}))
	d := mustLayOut(t, b, A4)
	at := d.places["art"]
	side := 50 * 72 / 25.4
	for _, m := range d.pages[at.page-1].items {
		x, ok := m.(textMark)
		if !ok || !strings.HasPrefix(string(x.run.text), "too") && !strings.HasPrefix(string(x.run.text), "far") {
			continue
		}
		r := x.box()
		if r.x < d.sheet.left-slack || r.y < at.y-slack || r.x+r.w > d.sheet.left+side+slack || r.y+r.h > at.y+side+slack {
			t.Errorf("%q stands at %.1f", string(x.run.text), r)
		}
	}
}
