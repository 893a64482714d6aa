package check_test

import (
	"fmt"
	"strings"
	"testing"
)

// tunicOf is a plain tunic, front and back on the fold, with what stands in %s.
func tunicOf(seams, steps string) string {
	word := ""
	if strings.Contains(steps, "ease ") {
		word = "\nword \"ease\" \"Work a little extra length into a seam.\"\n"
	}
	return `pattern "Plain Tunic" {
  allow 1cm
  finish seams together with overlock, press open
}

fabric main "Main fabric" { widths 140cm }

piece front 1 "Front" {
  edges neck, shoulder, side, hem, centre
  marks slit on side
  outline "front.svg"
  cut 1 main on fold centre
}

piece back 2 "Back" {
  edges centre, hem, side, shoulder, neck
  marks slit on side
  outline "back.svg"
  cut 1 main on fold centre
}

seam shoulder joins front.shoulder to back.shoulder

` + seams + `

step sew "Sew" {
  mark front.slit, back.slit
` + steps + `
  sew shoulder
  hem front.neck, back.neck turning 5mm, 5mm
  hem front.hem, back.hem turning 1cm, 1cm
}
` + word
}

// half draws a half, the back one as a mirror image: the shoulder is 100 long by its
// slope, the side as long as is said, the notch so far from its upper end.
func half(back bool, shoulder, side, slit float64) string {
	x := func(v float64) float64 {
		if back {
			return 400 - v
		}
		return v
	}
	return svgOf("none", fmt.Sprintf(`<path id="neck" d="M%v 100L%v 40"/><path id="shoulder" d="M%v 40H%v"/><path id="side" d="M%v 40V%v"/><path id="hem" d="M%v %vH%v"/><path id="centre" d="M%v %vV100"/><circle id="notch-slit" cx="%v" cy="%v" r="1"/>`,
		x(0), x(60), x(60), x(60+shoulder), x(60+shoulder), 40+side, x(60+shoulder), 40+side, x(0), x(0), 40+side, x(60+shoulder), 40+slit))
}

// TestLengthsOfStretches compares what of an edge lies in a seam, from a mark to an end.
func TestLengthsOfStretches(t *testing.T) {
	upper := "seam upper joins front.side to back.side from shoulder to slit"
	lower := "seam lower joins front.side to back.side from slit to hem"
	whole := "seam side joins front.side to back.side"
	for _, c := range []struct {
		what, seams, steps string
		front, back        string
		says               string // "" for nothing
	}{
		{"as long above and below", upper + "\n\n" + lower, "  sew upper\n  sew lower", half(false, 100, 500, 300), half(true, 100, 500, 300), ""},
		{"within 2 mm", upper + "\n\n" + lower, "  sew upper\n  sew lower", half(false, 100, 500, 300), half(true, 100, 501, 301.5), ""},
		{"the mark is in another place", upper + "\n\n" + lower, "  sew upper\n  sew lower", half(false, 100, 500, 300), half(true, 100, 500, 320),
			"The upper seam does not fit: `front.side from shoulder to slit` is drawn 30 cm long, `back.side from shoulder to slit` 32 cm."},
		{"one side is longer", upper + "\n\n" + lower, "  sew upper\n  sew lower", half(false, 100, 500, 300), half(true, 100, 520, 300), "The lower seam does not fit"},
		{"a mark inside a whole seam", whole, "  sew side", half(false, 100, 500, 300), half(true, 100, 500, 320), "notch"},
		{"it agrees", whole, "  sew side", half(false, 100, 500, 300), half(true, 100, 500, 301), ""},
		{"eased, and longer", whole, "  ease back.side\n  sew side", half(false, 100, 500, 300), half(true, 100, 520, 310), ""},
		{"eased, and shorter", whole, "  ease front.side\n  sew side", half(false, 100, 500, 300), half(true, 100, 520, 310), "`front.side` is drawn shorter than what it is eased to: `front.side` is 50 cm long, `back.side` 52 cm."},
		{"far too much to ease", whole, "  ease back.side\n  sew side", half(false, 100, 500, 300), half(true, 100, 600, 360), "eases in more than an eighth"},
		{"less than is declared", whole + " with ease 2cm", "  ease back.side\n  sew side", half(false, 100, 500, 300), half(true, 100, 510, 306), ""},
		{"more than is declared", whole + " with ease 5mm", "  ease back.side\n  sew side", half(false, 100, 500, 300), half(true, 100, 520, 306), "Declared is an ease of"},
	} {
		found, sources := findings(t, map[string]string{"pattern.seam": tunicOf(c.seams, c.steps), "front.svg": c.front, "back.svg": c.back})
		found = counting(found)
		switch {
		case c.says == "" && len(found) == 0:
		case c.says != "" && len(found) == 1 && strings.Contains(strings.ReplaceAll(found[0].Headline+" "+found[0].Help, "\u00a0", " "), c.says):
		default:
			t.Errorf("%s: want %q, got\n%s", c.what, c.says, written(found, sources))
		}
	}
}

// TestMarksOfADrawing shows what is said of marks and fold lines beside a drawing.
func TestMarksOfADrawing(t *testing.T) {
	whole := "seam side joins front.side to back.side"
	right := half(true, 100, 500, 300)
	for _, c := range []struct{ what, front, says string }{
		{"right", half(false, 100, 500, 300), ""},
		{"left out", strings.Replace(half(false, 100, 500, 300), `id="notch-slit"`, `class="dot"`, 1), "The mark slit on the side edge of the front is not drawn."},
		{"on another edge", strings.Replace(half(false, 100, 500, 300), `cx="160" cy="340"`, `cx="100" cy="540"`, 1), "The mark slit of the front is drawn on the hem, and the piece has it on the side edge."},
		{"off every edge", strings.Replace(half(false, 100, 500, 300), `cx="160" cy="340"`, `cx="100" cy="340"`, 1), "lies on no edge"},
		{"a fold line too many", strings.Replace(half(false, 100, 500, 300), "</svg>", `<line id="fold-tuck" x1="80" y1="100" x2="80" y2="300"/></svg>`, 1), "The drawing of the front has the fold line tuck, which the piece does not declare."},
		{"the fold of the cloth", strings.Replace(half(false, 100, 500, 300), "</svg>", `<line id="fold" x1="3" y1="120" x2="3" y2="500"/></svg>`, 1), ""},
	} {
		found, sources := findings(t, map[string]string{"pattern.seam": tunicOf(whole, "  sew side"), "front.svg": c.front, "back.svg": right})
		found = counting(found)
		switch {
		case c.says == "" && len(found) == 0:
		case c.says != "" && len(found) == 1 && strings.Contains(strings.ReplaceAll(found[0].Headline, "\u00a0", " "), c.says):
		default:
			t.Errorf("%s: want %q, got\n%s", c.what, c.says, written(found, sources))
		}
	}
}
