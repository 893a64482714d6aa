package check_test

import (
	"fmt"
	"strings"
	"testing"
)

// apronOf is an apron with a double flap or a ruffle in three pieces, whose widths are
// given: the edges of a made-up part lie on each other and count once, those of a row one
// behind the other are added up.
func apronOf(seams, steps string) string {
	return `pattern "Flap Apron" {
  allow 1cm
  finish seams together with overlock, press open
}

fabric main "Main fabric" { widths 140cm }

piece apron 1 "Apron" {
  symmetric
  edges top, side, bottom, other-side
  outline "apron.svg"
  cut 1 main
}

piece flap 2 "Flap" {
  symmetric
  edges attach, end, rim, other-end
  outline "flap.svg"
  cut 2 main as upper, under
}

` + seams + `

step sew "Sew" {
` + steps + `
}
`
}

func rectangle(width int, names ...string) string {
	return svgOf("none", fmt.Sprintf(`<path id="%s" d="M0 0H%[5]d"/><path id="%[2]s" d="M%[5]d 0V200"/><path id="%[3]s" d="M%[5]d 200H0"/><path id="%[4]s" d="M0 200V0"/>`, names[0], names[1], names[2], names[3], width))
}

func TestRowsOfSeveral(t *testing.T) {
	doubled := `seam rim joins flap.upper.rim to flap.under.rim

make whole "Whole flap" from flap.upper, flap.under {
  attach = both attach
}

seam join-line joins whole.attach to apron.top`
	hems := "\n  hem apron.side, apron.other-side, apron.bottom turning 1cm, 1cm"
	ends := "\n  hem flap.end, flap.other-end turning 5mm, 5mm"
	row := "seam join-line joins apron.top to flap.upper.attach, flap.under.attach"
	for _, c := range []struct {
		what, seams, steps string
		apron, flap        int
		says               string
	}{
		{"two layers count once", doubled, "  sew rim\n  trim rim to 5mm\n  turn flap" + ends + "\n  sew join-line" + hems, 300, 300, ""},
		{"two layers, wrong", doubled, "  sew rim\n  trim rim to 5mm\n  turn flap" + ends + "\n  sew join-line" + hems, 300, 150, "`whole.attach` is drawn 15 cm long, `apron.top` 30 cm"},
		{"one behind the other", row, "  sew join-line" + hems + ends + "\n  hem flap.rim turning 5mm, 5mm", 300, 150, ""},
		{"one behind the other, wrong", row, "  sew join-line" + hems + ends + "\n  hem flap.rim turning 5mm, 5mm", 300, 160, "`flap.upper.attach` and `flap.under.attach` 32 cm"},
	} {
		files := map[string]string{"pattern.seam": apronOf(c.seams, c.steps), "apron.svg": rectangle(c.apron, "top", "side", "bottom", "other-side"), "flap.svg": rectangle(c.flap, "attach", "end", "rim", "other-end")}
		found, sources := findings(t, files)
		count := counting(found)
		if c.says == "" && len(count) > 0 || c.says != "" && (len(count) != 1 || count[0].Rule != "seam-lengths-differ" || !strings.Contains(saidOf(count[0]), c.says)) {
			t.Errorf("%s: want %q, got\n%s", c.what, c.says, written(count, sources))
		}
		for _, f := range found {
			if strings.Contains(f.Headline, "the lengths of the two rows") {
				t.Errorf("%s: %s", c.what, f.Headline)
			}
		}
	}
}
