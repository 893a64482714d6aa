package check_test

import (
	"fmt"
	"strings"
	"testing"

	"seamwarden/dsl/finding"
)

// skirtOf is a skirt with a band: the front is cut on the fold, so that its waist is
// drawn as its half, and the band goes round it once.
func skirtOf(seam, cut string) string {
	return fmt.Sprintf(`pattern "Garden Skirt" {
  sizes "sizes.yaml"
  allow 1cm
  finish seams together with overlock, press open
}

fabric main "Main fabric" { widths 140cm }

piece front 1 "Front" {
  edges waist, side, hem, centre
  outline "front.svg"
  cut 1 main on fold centre
}

piece band 2 "Band" {
  edges top, end, bottom, other-end
  outline "band.svg"
  cut 1 main %s
}

seam waist joins front.waist to band.bottom%s

step sew "Sew the band" {
  sew waist
  finish front.side with overlock
  hem front.hem turning 1cm, 1cm
  hem band.top, band.end, band.other-end turning 5mm, 5mm
}
`, cut, seam)
}

const twoSizes = "unit: cm\nsizes: [S, M]\npattern:\n  hang: { name: Length, values: [60, 62] }\n"

func svgOf(allowance, shapes string) string {
	return `<svg xmlns="http://www.w3.org/2000/svg" width="900mm" viewBox="0 0 900 900" data-allowance="` + allowance + `">` + shapes + `</svg>`
}

// frontOf draws the half in two sizes, with a waist of 150 and 170 mm.
func frontOf(allowance string) string {
	var b strings.Builder
	for _, s := range []struct {
		name string
		w    int
	}{{"S", 150}, {"M", 170}} {
		fmt.Fprintf(&b, `<g id="size-%s"><path id="waist_%[1]s" d="M0 0H%[2]d"/><path id="side_%[1]s" d="M%[2]d 0V600"/><path id="hem_%[1]s" d="M%[2]d 600H0"/><path id="centre_%[1]s" d="M0 600V0"/></g>`, s.name, s.w)
	}
	return svgOf(allowance, b.String())
}

func bandOf(allowance string, lengths ...int) string {
	var b strings.Builder
	for i, w := range lengths {
		fmt.Fprintf(&b, `<g id="size-%s"><path id="top_%[1]s" d="M0 0H%[2]d"/><path id="end_%[1]s" d="M%[2]d 0V80"/><path id="bottom_%[1]s" d="M%[2]d 80H0"/><path id="other-end_%[1]s" d="M0 80V0"/></g>`, []string{"S", "M"}[i], w)
	}
	return svgOf(allowance, b.String())
}

// TestRowsFit compares a waist of two halves with a band, as stitching lines and as
// cutting lines, of which 1 cm is lost at every end but the fold.
func TestRowsFit(t *testing.T) {
	for _, c := range []struct {
		what, seam  string
		front, band string
		says        string // "" for nothing
	}{
		{"the band is as long as both halves", "", frontOf("none"), bandOf("none", 300, 340), ""},
		{"within 2 mm", "", frontOf("none"), bandOf("none", 302, 339), ""},
		{"one size is wrong", "", frontOf("none"), bandOf("none", 300, 350), "does not fit: `front.waist` is drawn 34 cm long, `band.bottom` 35 cm. in size M"},
		{"both sizes are wrong, the second more", "", frontOf("none"), bandOf("none", 305, 350), "in size M"},
		{"cutting lines lose their allowances", "", frontOf("included"), bandOf("included", 300, 340), ""},
		{"stitching line to cutting line", "", frontOf("none"), bandOf("included", 320, 360), ""},
		{"stitching line to cutting line, wrong", "", frontOf("none"), bandOf("included", 300, 340), "in size S: `front.waist` is drawn 30 cm long, `band.bottom` 28 cm"},
		{"the ease covers it", " with ease 1cm", frontOf("none"), bandOf("none", 310, 350), ""},
		{"the ease does not cover it", " with ease 1cm", frontOf("none"), bandOf("none", 310, 365), "in size M"},
		{"gathered", " gathered", frontOf("none"), bandOf("none", 200, 220), ""},
	} {
		files := map[string]string{"pattern.seam": skirtOf(c.seam, "right side up"), "sizes.yaml": twoSizes, "front.svg": c.front, "band.svg": c.band}
		found, sources := findings(t, files)
		found = counting(found)
		switch {
		case c.says == "" && len(found) == 0:
		case c.says != "" && len(found) == 1 && found[0].Rule == "seam-lengths-differ" && strings.Contains(saidOf(found[0]), c.says):
		default:
			t.Errorf("%s: want %q, got\n%s", c.what, c.says, written(found, sources))
		}
	}
}

// TestEdgesOfADrawing shows what is said of edges that differ.
func TestEdgesOfADrawing(t *testing.T) {
	band := func(shapes string) string { return svgOf("none", shapes) }
	for _, c := range []struct{ band, says string }{
		{`<path id="top" d="M0 0H300"/><path id="end" d="M300 0V80"/><path id="bottom" d="M300 80H0"/><path id="other-end" d="M0 80V0"/><path d="M0 0H5"/>`, "in size M"}, // right, but for the second size
		{`<path id="top" d="M300 0H0"/><path id="end" d="M0 0V80"/><path id="bottom" d="M0 80H300"/><path id="other-end" d="M300 80V0"/>`, "runs the other way round than its `edges`"},
		{`<path id="top" d="M0 0H300"/><path id="bottom" d="M300 0V80"/><path id="end" d="M300 80H0"/><path id="other-end" d="M0 80V0"/>`, "in another order"},
		{`<path id="top" d="M0 0H300"/><path id="end" d="M300 0V80"/><path id="bottom" d="M300 80H0V0"/>`, "has no edge “other-end”"},
		{`<path id="top" d="M0 0H150"/><path id="more" d="M150 0H300"/><path id="end" d="M300 0V80"/><path id="bottom" d="M300 80H0"/><path id="other-end" d="M0 80V0"/>`, "has “more”, which the `edges` of the piece do not name"},
	} {
		files := map[string]string{"pattern.seam": skirtOf("", "right side up"), "sizes.yaml": twoSizes, "front.svg": frontOf("none"), "band.svg": band(c.band)}
		found, sources := findings(t, files)
		if found = counting(found); len(found) != 1 || !strings.Contains(saidOf(found[0]), c.says) {
			t.Errorf("want %q, got\n%s", c.says, written(found, sources))
		}
	}
}

// TestDrawnCurves: a facing is turned along an edge. Whether that is curved says the
// drawing, whatever the name.
func TestDrawnCurves(t *testing.T) {
	text := `pattern "Bib" {
  allow 1cm
  finish seams together with overlock, press open
}

fabric main "Main fabric" { widths 140cm }

piece bib 1 "Bib" {
  edges curve, side, hem, centre
  outline "bib.svg"
  cut 1 main on fold centre
}

piece facing 2 "Facing" {
  worn face in
  edges attach, end, inner, centre
  cut 1 main on fold centre
}

seam neckline joins facing.attach to bib.curve

step face "Face the neckline" {
  sew neckline
  grade neckline
  turn facing to inside
  finish facing.inner, facing.end with overlock
  hem bib.side, bib.hem turning 1cm, 1cm
}

word "grade" "Trim each layer of an allowance to a different width."
`
	for _, c := range []struct{ line, says string }{
		{"L200 0", ""},
		{"L180 80 200 0", ""}, // a corner is trimmed, not clipped
		{"L140 76 170 62 190 38 200 0", "It is drawn hollow: add `clip neckline`"}, // a curve in short lines
		{"Q180 80 200 0", "It is drawn hollow: add `clip neckline`"},
		{"Q120 0 200 0", "It is drawn bulging: add `notch out neckline`"},
	} {
		svg := svgOf("none", `<path id="curve" d="M100 80`+c.line+`"/><path id="side" d="M200 0L260 300"/><path id="hem" d="M260 300H100"/><path id="centre" d="M100 300V80"/>`)
		found, sources := findings(t, map[string]string{"pattern.seam": text, "bib.svg": svg})
		found = counting(found)
		if c.says == "" && len(found) > 0 || c.says != "" && (len(found) != 1 || !strings.Contains(found[0].Help, c.says)) {
			t.Errorf("%s: want %q, got\n%s", c.line, c.says, written(found, sources))
		}
	}
}

// saidOf is the headline with the garments in which it holds, in plain spaces.
func saidOf(f finding.Finding) string {
	return strings.ReplaceAll(f.Headline+" "+f.When, "\u00a0", " ")
}

// TestOutlineFiles shows what is said where the front door finds no outline, and that a
// DXF file without names of edges is listed as not checked.
func TestOutlineFiles(t *testing.T) {
	dxf := "9\n$INSUNITS\n70\n4\n0\nBLOCK\n2\n%s\n0\nLWPOLYLINE\n8\n1\n70\n1\n10\n0\n20\n0\n10\n300\n20\n0\n10\n300\n20\n80\n10\n0\n20\n80\n0\nENDBLK\n"
	for _, c := range []struct{ file, text, rule, says string }{
		{"band.txt", "", "outline-unreadable", "neither an SVG nor a DXF file"},
		{"../band.svg", "", "file-outside-the-folder", ""},
		{"gone.svg", "", "file-unreadable", "The outline gone.svg cannot be opened"},
		{"band.dxf", fmt.Sprintf(dxf, "band"), "not-checked", "the edges of the band, which its drawing does not name"},
		{"band.dxf", fmt.Sprintf(dxf, "Cuff") + fmt.Sprintf(dxf, "Tab"), "outline-name-unclear", "no piece called Band in band.dxf"},
		{"band.dxf", "0\nEOF\n", "outline-unreadable", "There is no piece in the DXF file"},
	} {
		files := map[string]string{"sizes.yaml": twoSizes, "front.svg": frontOf("none")}
		if c.text != "" {
			files[c.file] = c.text
		}
		files["pattern.seam"] = strings.Replace(skirtOf("", "right side up"), `"band.svg"`, `"`+c.file+`"`, 1)
		found, sources := findings(t, files)
		ok := false
		for _, f := range found {
			ok = ok || f.Rule == c.rule && strings.Contains(f.Headline, c.says)
		}
		if !ok || len(counting(found)) > 1 {
			t.Errorf("%s: want %s, %q, got\n%s", c.file, c.rule, c.says, written(found, sources))
		}
	}
}
