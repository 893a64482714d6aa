package wording_test

import (
	"fmt"
	"strings"
	"testing"
	"testing/fstest"

	"seamwarden/compiler"
	"seamwarden/compiler/booklet"
)

const frilled = `pattern "Frilled Apron" {
  sizes "sizes.yaml"
  allow 1cm
  finish seams together with overlock, press open
}

fabric main "Main fabric" { widths 140cm }

piece apron 1 "Apron" {
  edges waist, side, hem, centre
  outline "apron.svg"
  cut 1 main on fold centre
}

piece frill 2 "Frill" {
  symmetric
  edges top, end, bottom, other-end
  outline "frill.svg"
  cut 1 main
}

seam frill-line joins frill.top to apron.hem gathered

step sew "Sew the frill on" {
  gather frill.top
  sew frill-line
}

word "gather" "Draw an edge up on long stitches."
`

// TestGathersArePrinted: a booklet for one size tells both lengths, one for all sizes the
// part that is left, if it is the same in all.
func TestGathersArePrinted(t *testing.T) {
	drawing := func(edges ...string) []byte {
		s := `<svg xmlns="http://www.w3.org/2000/svg" width="1200mm" viewBox="0 0 1200 1200" data-allowance="none">`
		for i, size := range []string{"S", "M"} {
			s += fmt.Sprintf(`<g id="size-%s">%s</g>`, size, edges[i])
		}
		return []byte(s + "</svg>")
	}
	half := func(w int) string {
		return fmt.Sprintf(`<path data-edge="waist" d="M0 0H200"/><path data-edge="side" d="M200 0L%d 400"/><path data-edge="hem" d="M%[1]d 400H0"/><path data-edge="centre" d="M0 400V0"/>`, w)
	}
	frill := func(w int) string {
		return fmt.Sprintf(`<path data-edge="top" d="M0 0H%d"/><path data-edge="end" d="M%[1]d 0V100"/><path data-edge="bottom" d="M%[1]d 100H0"/><path data-edge="other-end" d="M0 100V0"/>`, w)
	}
	for _, c := range []struct {
		frills [2]int
		choice compiler.Choice
		says   string
	}{
		{[2]int{800, 880}, compiler.Choice{Size: "S"}, "Gather the top edge of the frill. Draw up 80 cm (31½ in) to 50 cm (19¾ in)."},
		{[2]int{800, 880}, compiler.Choice{}, "Gather the top edge of the frill. Draw up to about 65 % of the length."},
		{[2]int{800, 1150}, compiler.Choice{}, "Gather the top edge of the frill."},
	} {
		r, err := compiler.Compile(fstest.MapFS{
			"pattern.seam": {Data: []byte(frilled)}, "apron.svg": {Data: drawing(half(250), half(275))}, "frill.svg": {Data: drawing(frill(c.frills[0]), frill(c.frills[1]))},
			"sizes.yaml": {Data: []byte("unit: cm\nsizes: [S, M]\npattern:\n  hang: { name: Length, values: [50, 50] }\n")},
		})
		if err != nil {
			t.Fatal(err)
		}
		a, err := compiler.Choose(r.Pattern, c.choice)
		if err != nil {
			t.Fatal(err)
		}
		b, err := compiler.Booklet(r.Pattern, a)
		if err != nil {
			t.Fatal(err)
		}
		said := ""
		for _, ch := range b.Chapters {
			for _, x := range ch.Blocks {
				if s, ok := x.(*booklet.Step); ok {
					said = booklet.Plain(s.Blocks[0].(*booklet.Paragraph).Text)
				}
			}
		}
		if said = strings.ReplaceAll(said, "\u00a0", " "); said != c.says {
			t.Errorf("%v: %q", c.choice, said)
		}
	}
}
