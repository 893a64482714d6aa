package wording_test

import (
	"strings"
	"testing"
	"testing/fstest"

	"seamwarden/compiler"
	"seamwarden/compiler/booklet"
)

const smallSkirt = `pattern "Slip Skirt" {
  sizes "sizes.yaml"
  allow 1cm
  finish seams together with overlock, press open
}

fabric main "Main fabric" { widths 140cm }

fabric lining "Lining" { widths 140cm }

piece skirt 3 "Skirt" {
  edges waist, side, hem, centre
  marks hip on side
  outline "skirt.svg"
  cut 1 main on fold centre
  cut 1 lining on fold centre
}

seam back joins skirt.main.left.side to skirt.main.right.side

step sew "Sew" {
  sew back
}
`

// TestDrawingsOfPieces: a booklet for all sizes shows the middle one, one for a size that
// one; a piece that is cut twice is drawn once, and described for whoever listens.
func TestDrawingsOfPieces(t *testing.T) {
	size := func(name, w string) string {
		return `<g id="size-` + name + `"><path id="waist_` + name + `" d="M0 0H` + w + `"/><path id="side_` + name + `" d="M` + w + ` 0V500"/><path id="hem_` + name + `" d="M` + w + ` 500H0"/><path id="centre_` + name + `" d="M0 500V0"/><circle id="notch-hip_` + name + `" cx="` + w + `" cy="200" r="1"/></g>`
	}
	r, err := compiler.Compile(fstest.MapFS{
		"pattern.seam": {Data: []byte(smallSkirt)},
		"sizes.yaml":   {Data: []byte("unit: cm\nsizes: [S, M, L]\npattern:\n  hang: { name: Length, values: [50, 50, 50] }\n")},
		"skirt.svg":    {Data: []byte(`<svg xmlns="http://www.w3.org/2000/svg" width="900mm" viewBox="0 0 900 900" data-allowance="none">` + size("S", "200") + size("M", "220") + size("L", "300") + `</svg>`)},
	})
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		choice compiler.Choice
		size   string
		wide   float64 // millimetres at 1:20, without the air around
	}{{compiler.Choice{}, "M", 11}, {compiler.Choice{Size: "L"}, "L", 15}} {
		a, err := compiler.Choose(r.Pattern, c.choice)
		if err != nil {
			t.Fatal(err)
		}
		b, err := compiler.Booklet(r.Pattern, a)
		if err != nil {
			t.Fatal(err)
		}
		var figures []*booklet.Figure
		legend := ""
		for _, ch := range b.Chapters {
			for _, x := range ch.Blocks {
				switch x := x.(type) {
				case *booklet.Paragraph:
					if s := booklet.Plain(x.Text); strings.Contains(s, "small drawings") {
						legend = s
					}
				case *booklet.Table:
					for _, row := range x.Rows {
						for _, cell := range row.Cells {
							figures = append(figures, cell.Figures...)
						}
					}
				}
			}
		}
		if !strings.Contains(legend, "in size "+c.size+" at a scale of 1\u00a0:\u00a020.") || len(figures) != 1 {
			t.Errorf("size %s: %q, %d drawings", c.size, legend, len(figures))
			continue
		}
		art := figures[0].Art
		if art.Title != "Piece 3, skirt" || art.Desc != "Edges, clockwise: waist, side, hem, centre; the centre edge lies on the fold; notches on the side edge." {
			t.Errorf("%q, %q", art.Title, art.Desc)
		}
		if off := art.NaturalWidth - c.wide; off < 0 || off > 3 {
			t.Errorf("size %s: it is %v mm wide", c.size, art.NaturalWidth)
		}
	}
}
