package outline

import (
	"fmt"
	"strings"
	"testing"
)

// TestFaults shows what is said of every slip, and where (line and column).
func TestFaults(t *testing.T) {
	square := `<path id="square" d="M0 0H100V100H0Z"/>`
	for _, c := range []struct{ in, place, rule, says string }{
		{`<path id="a" d="M0 0H100"/><path id="b" d="M103 0V100"/><path id="c" d="M103 100L0 0"/>`, "2:38", RuleRing, "from the a edge to the b edge there is a gap of 3.0 mm"},
		{`<path id="a" d="M0 0H100"/><path id="b" d="M100 0V100"/>`, "2:11", RuleRing, "from the b edge to the a edge there is a gap of 141.4 mm"},
		{`<path id="a" d="M0 0H100V100"/>`, "2:11", RuleRing, "its ends lie 141.4 mm apart"},
		{`<path id="a" d="M0 0H100V100H50V-50Z"/>`, "2:11", RuleCrosses, "the a edge crosses itself"},
		{`<path id="a" d="M0 0H100"/><path id="b" d="M100 0V100L50 -50"/><path id="c" d="M50 -50L0 0"/>`, "2:38", RuleCrosses, "the a edge crosses the b edge"},
		{`<path id="a" d="M0 0H100"/><path id="a" d="M100 0V100"/>`, "2:38", RuleName, "Two edges of the outline are called “a”"},
		{`<path id="_1" d="M0 0H100V50Z"/>`, "2:11", RuleName, "no name"},
		{`<path id="a" d="M0 0H100V50ZM5 5H6V6Z"/>`, "2:11", RuleRing, "not one line"},
		{square + `<path id="b" d="M5 5H6"/>`, "2:11", RuleRing, "closes in itself"},
		{`<path d="M0 0H100V50Z"/>`, "1:1", RuleRing, "has no edge"},
		{`<path id="a" d="M0 0H100Z"/>`, "2:11", RuleRing, "shut in nothing"},
		{square + `<circle id="corner-a" cx="50" cy="50" r="2"/>`, "2:52", RuleRing, "corner where the a edge begins does not lie on the outline"},
		{square + `<circle id="corner-a" r="2"/><circle id="corner-b" r="3"/>`, "2:81", RuleRing, "The a edge and the b edge begin in one place"},
		{square + `<circle id="corner-a" r="2"/><circle id="corner-a" cx="100" r="3"/>`, "2:81", RuleName, "called “a”"},
		{`<path id="a" d="M0 0H100"/><path id="b" d="M100 0V9L0 0"/><circle id="corner-a" r="2"/>`, "2:71", RuleRing, "not one closed line"},
		{square + `<path id="grain" d="M0 0L9 9L0 50"/>`, "2:50", RuleRing, "grain line is not one straight line"},
		{square + `<path id="grain_1" d="M0 0L9 9"/><path id="grain_2" d="M0 0L9 9"/>`, "2:83", RuleName, "two grain lines"},
		{square + `<path id="fold-a" d="M0 0L9 9L0 50"/>`, "2:50", RuleRing, "fold line is not one straight line"},
		{square + `<path id="opening-a" d="M2 2L9 9L0 50"/>`, "2:50", RuleRing, "opening “a” is not one closed line"},
		{square + `<path id="notch-a" d="M20 20L30 30"/>`, "2:50", RuleDoubtful, "notch “a” lies on no edge"},
		{`<g id="size-9"><g id="size-8">` + square + `</g></g>`, "2:16", RuleName, "inside another size"},
		{`<g id="size-9">` + square + `</g><g data-size="8, 9">` + square + `</g>`, "2:59", RuleName, "Size 9 is drawn twice"},
		{`<g id="size-">` + square + `</g>`, "2:1", RuleName, "does not say which"},
		{`<g id="size-9" data-allowance="yes">` + square + `</g>`, "2:32", RuleAllowance, "“yes”"},
		{`<g id="size-9"><g data-allowance="included">` + square + `</g></g>`, "2:35", RuleAllowance, "inside a size"},
		{square + `<use href="#a"/>`, "2:40", RuleDoubtful, "A copy (<use>)"},
		{square + `<g transform="scale(0)"><path id="x" d="M0 0H5"/></g>`, "2:54", RuleUnreadable, "leaves no area"},
		{`<path id="a" transform="scale(1e5)" d="M0 0H100V50Z"/>`, "2:11", RuleUnreadable, "more than a kilometre"},
		{`<path id="a" d="M0 0H100V50X"/>`, "2:28", RuleUnreadable, "path data (d) of an outline's shape cannot be read"},
		{`<path id="a" d="M0 0H100V50Z"/><g>`, "3:1", RuleUnreadable, "<g> is not closed"},
		{square + `<script/>`, "2:40", RuleActive, "A <script> in an outline is never used"},
		{square + `<path id="a" onclick="x()" d="M0 0"/>`, "2:62", RuleActive, "script in an attribute"},
	} {
		says(t, inMM(c.in), c.place, c.rule, c.says)
	}
	for _, c := range []struct{ root, place, rule, says string }{
		{`data-allowance="none" viewBox="0 0 10 10"`, "1:1", RuleScale, "does not say how large it is"},
		{`data-allowance="none" viewBox="0 0 10 10" width="100%"`, "1:1", RuleScale, "does not say how large it is"},
		{`data-allowance="none" viewBox="0 0 10 10" width="10mm" height="20mm"`, "1:1", RuleDoubtful, "do not go with its view box"},
		{`data-allowance="none" viewBox="0 0 10" width="10mm"`, "1:72", RuleUnreadable, "view box"},
		{`data-allowance="none" data-join="9mm"`, "1:74", RuleUnreadable, "How far the ends of edges may lie apart"},
		{``, "1:1", RuleAllowance, "does not say whether it includes the allowance"},
	} {
		says(t, `<svg xmlns="http://www.w3.org/2000/svg" `+c.root+`>`+square+`</svg>`, c.place, c.rule, c.says)
	}
}

// says wants one finding: where it stands, of which rule, and with which words.
func says(t *testing.T, src, place, rule, words string) {
	t.Helper()
	_, found := ReadSVG("o.svg", []byte(src))
	if len(found) != 1 {
		t.Errorf("%s\n%d findings: %v", src, len(found), found)
		return
	}
	f := found[0]
	if at := fmt.Sprintf("%d:%d", f.Place.Start.Line, f.Place.Start.Column); at != place || f.Rule != rule || !strings.Contains(f.Headline, words) {
		t.Errorf("%s\nat %s, %s: %s\nwant %s, %s: …%s…", src, at, f.Rule, f.Headline, place, rule, words)
	}
}

// TestTolerance: ends that lie nearly together are brought together, and how near is
// said in the file.
func TestTolerance(t *testing.T) {
	shapes := `<path id="a" d="M0 0H100"/><path id="b" d="M100.6 0V100L0 0.1"/>`
	d, _ := ReadSVG("o.svg", []byte(inMM(shapes)))
	if d != nil {
		t.Error("a gap of 0.6 mm passed")
	}
	d, found := ReadSVG("o.svg", []byte(strings.Replace(inMM(shapes), "<svg ", `<svg data-join="1mm" `, 1)))
	if d == nil {
		t.Fatal(found)
	}
	if e := d.Pieces[0].Sizes[0].Edge("a"); e.to() != (Point{X: 100.6}) {
		t.Errorf("the edge ends at %v", e.to())
	}
}
