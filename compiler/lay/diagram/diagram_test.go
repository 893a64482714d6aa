package diagram

import (
	"bytes"
	"reflect"
	"strings"
	"testing"

	"seamwarden/compiler/figure"
	"seamwarden/compiler/lay"
)

func ring(mm ...int64) []lay.Point {
	var r []lay.Point
	for i := 0; i < len(mm); i += 2 {
		r = append(r, lay.Point{X: mm[i] * lay.Millimetre, Y: mm[i+1] * lay.Millimetre})
	}
	return r
}

// shirt is an invented top: front and back on the fold, sleeves, cuffs, and a bias strip.
func shirt(way lay.Way, nap bool) lay.Job {
	up := lay.Point{Y: 1}
	fold := func(top int64) *[2]lay.Point { return &[2]lay.Point{{}, {Y: top * lay.Millimetre}} }
	return lay.Job{Way: way, Cloth: lay.Cloth{Width: 1400 * lay.Millimetre, Nap: nap}, Pieces: []lay.Piece{
		{Number: "1", Name: "Front", Outline: ring(0, 0, 280, 0, 265, 420, 215, 480, 200, 600, 80, 640, 60, 580, 0, 550), Grain: up, Either: 1, Fold: fold(550)},
		{Number: "2", Name: "Back", Outline: ring(0, 0, 280, 0, 265, 420, 225, 480, 205, 620, 80, 650, 50, 630, 0, 625), Grain: up, Either: 1, Fold: fold(625)},
		{Number: "3", Name: "Sleeve", Outline: ring(60, 0, 340, 0, 400, 400, 330, 450, 250, 520, 190, 530, 120, 500, 60, 430, 0, 400), Grain: up, Drawn: 1, Mirrored: 1},
		{Number: "4", Name: "Cuff", Outline: ring(0, 0, 240, 0, 240, 110, 0, 110), Grain: lay.Point{X: 1}, Drawn: 2, Mirrored: 2},
		{Number: "5", Name: "Neck binding", Outline: ring(0, 0, 40, 0, 40, 500, 0, 500), Grain: up, Either: 1, Cut: lay.Bias},
	}}
}

func draw(t *testing.T, j lay.Job) *figure.Drawing {
	t.Helper()
	l, err := j.Find(lay.Effort{Work: 150_000})
	if err != nil {
		t.Fatal(err)
	}
	w := English()
	w.Title, w.Desc = "View A, size 10, cloth 140 cm wide", "How the pieces lie."
	d, err := Draw(j, l, w)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// A drawing passes through the reader of figures without a word, and keeps all it shows.
func TestADrawingIsAFigure(t *testing.T) {
	for _, c := range []struct {
		job   lay.Job
		words []string
	}{
		{shirt(lay.LengthwiseFold, false), []string{"Fold", "Selvedges"}},
		{shirt(lay.LengthwiseFold, true), []string{"Fold", "Selvedges"}},
		{shirt(lay.SingleLayer, false), []string{"Selvedge", "Shaded: printed side down."}},
		{shirt(lay.CrosswiseFold, false), []string{"Fold", "Selvedges", "cut one layer only"}},
	} {
		d := draw(t, c.job)
		var b bytes.Buffer
		if err := d.WriteSVG(&b, "lay"); err != nil {
			t.Fatal(err)
		}
		again, found := figure.Read("lay.svg", b.Bytes())
		if len(found) > 0 || len(again.Items) != len(d.Items) {
			t.Errorf("%v; %d items of %d", found, len(again.Items), len(d.Items))
		}
		for _, it := range d.Items {
			if l, ok := it.(*figure.Label); ok && (l.At.X < 0 || l.At.Y < 0 || l.At.X > d.Width || l.At.Y > d.Height) {
				t.Errorf("%q is off the paper", l.Text)
			}
		}
		for _, word := range append(c.words, ">1<", ">2<", ">3<", ">4<", "Front", "Sleeve") {
			if !strings.Contains(b.String(), word) {
				t.Errorf("%s: no %q", c.job.Way, word)
			}
		}
	}
}

// With a nap each grain line has one head, else two; heads are the only black shapes.
func TestHeadsOfGrainLines(t *testing.T) {
	for _, nap := range []bool{false, true} {
		d := draw(t, shirt(lay.LengthwiseFold, nap))
		lines, heads := 0, 0
		for _, it := range d.Items {
			if p, ok := it.(*figure.Path); ok && p.Width == 1 {
				lines++
			} else if ok && p.Fill == black {
				heads++
			}
		}
		want := 2
		if nap {
			want = 1
		}
		if lines == 0 || heads != want*lines {
			t.Errorf("nap %t: %d heads on %d lines", nap, heads, lines)
		}
	}
}

func TestTheSameLayGivesTheSameDrawing(t *testing.T) {
	j := shirt(lay.Best, false)
	if a, b := draw(t, j), draw(t, j); !reflect.DeepEqual(a, b) {
		t.Error("two drawings differ")
	}
}
