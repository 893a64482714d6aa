package check

import (
	"fmt"
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/measure"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "unit-pair-disagrees", Severity: finding.Error, Category: "prose", ahead: 1, run: pairs,
		Purpose: "A measure is given in both systems, and the two are not the same length.",
		Why:     "Whoever works in the other system cuts a different garment."})
}

// placed is a text of the author's with the place of each stretch of it.
type placed struct {
	text string
	at   func(start, end int) finding.Span
}

// texts lists every text of the author's: prose, labels, cautions, terms.
func texts(p *model.Pattern) (all []placed) {
	add := func(t model.Text) {
		if t.Text != "" {
			all = append(all, placed{t.Text, func(int, int) finding.Span { return t.Span }})
		}
	}
	seen := map[finding.Span]bool{}
	for _, x := range p.Proses {
		all = append(all, placed{x.Text, placesIn(x)})
		seen[x.Span] = true
	}
	for _, c := range p.Cautions {
		if !seen[c.Text.Span] {
			add(c.Text)
		}
	}
	for _, s := range p.Steps() {
		for _, i := range s.Items {
			switch x := i.(type) {
			case *model.Caution:
				if !seen[x.Text.Span] {
					add(x.Text)
				}
			case *model.Figure:
				if !seen[x.Label.Span] {
					add(x.Label)
				}
			}
		}
	}
	return
}

func pairs(r *run) {
	for _, t := range texts(r.Pattern) {
		for _, p := range measure.FindPairs(t.text) {
			if p.Agrees() {
				continue
			}
			from, to := pairIn(t.text, p)
			_, right := measure.Print(p.Imperial.Length, measure.Detail, measure.Imperial, measure.English)
			f := at(t.at(from, to), "two lengths", fmt.Sprintf("“%s” gives two different lengths: %s is %s.", t.text[from:to], p.Imperial.Text, right),
				"Fetch the measure with braces, such as {allow side}: then both are printed and always agree.")
			r.report(condition.True, f)
			r.tell(t.text, condition.True)
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
