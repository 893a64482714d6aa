package pdf

import (
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"
)

var bboxWord = regexp.MustCompile(`<word xMin="([\d.]+)" yMin="[\d.]+" xMax="([\d.]+)" yMax="[\d.]+">([^<]+)</word>`)

// TestWordsStandWherePopplerFindsThem compares the ends of lines as laid out with
// those that poppler measures from the file's own tables of widths.
func TestWordsStandWherePopplerFindsThem(t *testing.T) {
	needTool(t, "pdftotext")
	// A run that ends in a space is left out, for poppler measures words.
	b := chapterOf(para(txt(long(40) + " ⅝ in (1.6 cm) Zickzack.")...))
	d := mustLayOut(t, b, A4)
	out := runTool(t, "pdftotext", "-bbox", save(t, mustRender(t, b, Options{}).Bytes), "-")
	var ends []float64
	for _, m := range bboxWord.FindAllStringSubmatch(out, -1) {
		var x0, x1 float64
		fmt.Sscan(m[1], &x0)
		fmt.Sscan(m[2], &x1)
		ends = append(ends, x1)
	}
	checked := 0
	for _, m := range d.pages[len(d.pages)-1].items {
		x, ok := m.(textMark)
		text := string(x.run.text)
		if !ok || x.run.size != newTheme().text.size || !strings.Contains(text, " ") || strings.HasSuffix(text, " ") {
			continue
		}
		end, near := x.x+x.run.width, math.Inf(1)
		for _, e := range ends {
			near = min(near, math.Abs(e-end))
		}
		checked++
		if near > 0.05 {
			t.Errorf("%q ends at %.2f; poppler finds no word that ends within %.2f of it", text, end, near)
		}
	}
	if checked < 5 {
		t.Errorf("only %d lines were compared", checked)
	}
}
