package check

import (
	"fmt"
	"strings"

	"seamwarden/compiler/measure"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "unit-pair-disagrees", Severity: finding.Error, Category: "prose", ahead: 1, run: pairs,
		Purpose: "A measure is given in both systems, and the two are not the same length.",
		Why:     "Whoever works in the other system cuts a different garment."})
}

func pairs(r *run) {
	for _, t := range r.Proses {
		for _, p := range measure.FindPairs(t.Text) {
			if p.Agrees() {
				continue
			}
			from, to := pairIn(t.Text, p)
			_, right := measure.Print(p.Imperial.Length, measure.Detail, measure.Imperial, measure.English)
			f := at(placesIn(t)(from, to), "two lengths", fmt.Sprintf("“%s” gives two different lengths: %s is %s.", t.Text[from:to], p.Imperial.Text, right),
				"Fetch the measure with braces, such as {allow side}: then both are printed and always agree.")
			r.report(t.Cond, f)
			r.tell(t.Text, t.Cond)
		}
	}
}

// pairIn gives the stretch of a text that holds both halves, with the bracket
// that closes after them.
func pairIn(text string, p measure.Pair) (from, to int) {
	from, to = min(p.Imperial.Start, p.Metric.Start), max(p.Imperial.End, p.Metric.End)
	if strings.Contains(text[from:to], "(") && strings.HasPrefix(text[to:], ")") {
		to++
	}
	return
}
