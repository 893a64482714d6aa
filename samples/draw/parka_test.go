package main

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"seamwarden/compiler/outline"
)

// drawnCoat is the coat as it is drawn in the files, in one size.
type drawnCoat struct {
	t    *testing.T
	size string
	all  map[string]*outline.Piece
}

func readParka(t *testing.T) (*table, map[string]*outline.Piece) {
	t.Helper()
	sizes, err := readTable("../gale-parka/sizes.yaml")
	if err != nil {
		t.Fatal(err)
	}
	files, _ := filepath.Glob("../gale-parka/outlines/*.svg")
	all := map[string]*outline.Piece{}
	for _, file := range files {
		src, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		d, found := outline.ReadSVG(file, src)
		if d == nil || len(found) > 0 {
			t.Fatalf("%s: %v", file, found)
		}
		all[strings.TrimSuffix(filepath.Base(file), ".svg")] = d.Pieces[0]
	}
	if len(all) < 40 {
		t.Fatalf("only %d drawings", len(all))
	}
	return sizes, all
}

func (c drawnCoat) piece(name string) *outline.Outline {
	if p := c.all[name]; p != nil && p.Of(c.size) != nil {
		return p.Of(c.size)
	}
	c.t.Fatalf("%s is not drawn in size %s", name, c.size)
	return nil
}

// long adds up edges, written as file.edge.
func (c drawnCoat) long(edges ...string) (sum float64) {
	for _, name := range edges {
		file, edge, _ := strings.Cut(name, ".")
		e := c.piece(file).Edge(edge)
		if e == nil {
			c.t.Fatalf("%s has no edge %s", file, edge)
		}
		sum += e.Length()
	}
	return
}

// wide is how far a corner lies from the centre: the edges that begin at both.
func (c drawnCoat) wide(file, corner, centre string) float64 {
	o := c.piece(file)
	return math.Abs(o.Edge(corner).Curves[0].P[0].X - o.Edge(centre).Curves[0].P[0].X)
}

// The finished measures of the table are those of the drawn pieces, in every size. The
// fronts meet edge to edge.
func TestParkaFinishedMeasures(t *testing.T) {
	sizes, all := readParka(t)
	for i, size := range sizes.Sizes {
		c := drawnCoat{t, size, all}
		lower := []string{"front-a.hem", "front-a.corner", "back-a.hem"}
		panels := []string{"centre-front-b.hem", "centre-front-b.corner", "side-front-b.hem", "back-b.hem"}
		for _, m := range []struct {
			key   string
			drawn float64
		}{
			{"chest", 2 * (c.wide("front-a", "raglan", "corner") + c.wide("back-a", "side", "centre"))},
			{"chest", 2 * (c.wide("front-c", "raglan", "corner") + c.wide("lower-back", "side", "centre"))},
			{"seat", 2 * c.long(lower...)},
			{"seat", 2 * c.long(panels...)},
			{"seat", 2 * c.long("hem-band.base", "hem-band.corner")},
			{"sleeve", c.long("front-sleeve.overarm")},
			{"sleeve", c.long("back-sleeve-lining.overarm", "cuff-facing.front-end")},
			{"wrist-width", c.long("front-sleeve.wrist", "back-sleeve.wrist") / 2},
			{"back-a", c.long("back-a.centre")},
			{"back-b", c.long("back-b.centre")},
			{"back-c", c.long("back-yoke.centre", "lower-back.centre", "hem-band.centre")},
			{"front-a", c.long("front-a.front-edge")},
			{"front-b", c.long("centre-front-b.front-edge")},
			{"front-c", c.long("front-c.front-edge", "hem-band.end", "collar.end")},
		} {
			if want := sizes.finished(m.key, i); math.Abs(m.drawn-want) > 1 {
				t.Errorf("size %s: %s is drawn %.1f mm, and %.1f mm in the table", size, m.key, m.drawn, want)
			}
		}
	}
}

// Notches of seams that run over several pieces lie equally far from the neck, and the
// opening of the pocket is as long as its zip, its welt and its bag.
func TestParkaNotchesMeet(t *testing.T) {
	sizes, all := readParka(t)
	for _, size := range sizes.Sizes {
		c := drawnCoat{t, size, all}
		front := c.long("front-a.raglan") - c.at("front-a", "front-notch")
		back := c.at("back-a", "back-notch")
		for name, got := range map[string][2]float64{
			"side front":          {c.long("centre-front-a.raglan", "side-front-a.raglan") - c.at("side-front-a", "front-notch"), front},
			"front sleeve":        {c.at("front-sleeve", "front-notch"), front},
			"front lining":        {c.long("front-facing-a.raglan", "front-lining-a.raglan") - c.at("front-lining-a", "front-notch"), front},
			"front sleeve lining": {c.at("front-sleeve-lining", "front-notch"), front},
			"lower back":          {c.long("back-yoke.raglan") + c.at("lower-back", "back-notch"), back},
			"back sleeve":         {c.long("back-sleeve.raglan") - c.at("back-sleeve", "back-notch"), back},
			"back lining":         {c.long("neck-facing.raglan") + c.at("back-lining-c", "back-notch"), back},
			"back sleeve lining":  {c.long("back-sleeve-lining.raglan") - c.at("back-sleeve-lining", "back-notch"), back},
			"opening":             {c.at("centre-front-c", "pocket-top") - c.at("centre-front-c", "pocket-end"), pocketLong},
			"opening, side":       {c.at("side-front-c", "pocket-end") - c.at("side-front-c", "pocket-top"), pocketLong},
			"opening below":       {c.long("side-front-a.panel") - c.at("side-front-a", "pocket-top"), c.at("centre-front-a", "pocket-top")},
			"welt":                {c.long("pocket-welt.attach"), pocketLong},
			"bag":                 {c.long("pocket-bag.opening"), pocketLong},
			"peak":                {c.long("hood-peak.attach"), c.long("hood-centre.face")},
			"flap, view C":        {c.long("storm-flap-c.outer"), c.long("front-facing-c.attach", "inner-collar.end")},
		} {
			if math.Abs(got[0]-got[1]) > 1 {
				t.Errorf("size %s: %s: %.1f mm and %.1f mm", size, name, got[0], got[1])
			}
		}
		if c.at("centre-front-c", "pocket-end") < 36 { // the bag hangs so far below the opening
			t.Errorf("size %s: the pocket bag hangs into the hem band", size)
		}
	}
}

// at is how far along its edge a mark lies.
func (c drawnCoat) at(file, mark string) float64 {
	for _, m := range c.piece(file).Marks {
		if m.Name == mark && m.Edge != nil {
			return m.At
		}
	}
	c.t.Fatalf("%s has no %s on an edge", file, mark)
	return 0
}

// Where two pieces meet at the end of a seam, their outer edges run on into one another:
// the corners there add up to a straight line.
func TestParkaRunsOnAcrossSeams(t *testing.T) {
	sizes, all := readParka(t)
	for _, size := range sizes.Sizes {
		c := drawnCoat{t, size, all}
		for _, pair := range [][2]string{
			{"front-a.neck", "front-sleeve.raglan"}, {"back-a.raglan", "back-sleeve.neck"}, {"front-sleeve.neck", "back-sleeve.overarm"},
			{"front-a.raglan", "back-a.side"}, {"front-a.side", "back-a.hem"}, {"front-sleeve.underarm", "back-sleeve.raglan"},
			{"front-sleeve.wrist", "back-sleeve.underarm"}, {"front-sleeve.overarm", "back-sleeve.wrist"},
			{"hood-side.face", "hood-centre.crown"}, {"hood-side.crown", "hood-centre.neck"}, {"back-yoke.base", "lower-back.raglan"},
			{"centre-front-a.raglan", "side-front-a.panel"}, {"neck-facing.base", "back-lining-a.raglan"}, {"front-lining-a.front", "front-facing-a.raglan"},
			{"back-a.neck", "back-a.neck"}, {"hood-centre.face", "hood-centre.face"}, {"collar.neck", "front-a.front-edge"},
		} {
			if sum := c.corner(pair[0]) + c.corner(pair[1]); math.Abs(sum-180) > 12 {
				t.Errorf("size %s: the corners at the beginning of %s and %s add up to %.0f degrees", size, pair[0], pair[1], sum)
			}
		}
	}
}

// corner is the angle inside a piece where an edge begins, in degrees.
func (c drawnCoat) corner(name string) float64 {
	file, edge, _ := strings.Cut(name, ".")
	o := c.piece(file)
	for i, e := range o.Edges {
		if e.Name == edge {
			return 180 - o.Corner(i)
		}
	}
	c.t.Fatalf("%s has no edge %s", file, edge)
	return 0
}
