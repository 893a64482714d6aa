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
	register(Rule{ID: "unit-pair-disagrees", Severity: finding.Error, Category: "prose", run: pairs,
		Purpose: "A measure is given in both systems, and the two are not the same length.",
		Why:     "Whoever works in the other system cuts a different garment."})
}

// Texts lists every text of the author's: prose, labels, cautions, terms.
func texts(p *model.Pattern) (all []model.Text) {
	add := func(t model.Text) {
		if t.Text != "" {
			all = append(all, t)
		}
	}
	prose := func(list ...*model.Prose) {
		for _, x := range list {
			if x != nil {
				add(model.Text{Text: x.Text, Span: x.Span})
			}
		}
	}
	for _, t := range p.Terms {
		prose(t.Body)
	}
	for _, c := range p.Cautions {
		add(c.Text)
	}
	for _, c := range p.Changes {
		prose(c.Body)
	}
	for _, x := range p.Pieces {
		prose(x.Notes...)
	}
	for _, m := range p.Materials {
		prose(m.Notes...)
	}
	for _, s := range p.Sections {
		prose(s.Notes...)
		for _, st := range s.Steps {
			for _, i := range st.Items {
				switch x := i.(type) {
				case *model.Prose:
					prose(x)
				case *model.Caution:
					add(x.Text)
				case *model.Figure:
					add(x.Label)
				case *model.TryOn:
					add(x.Text)
				case *model.Op:
					if x.As != nil {
						add(*x.As)
					}
				}
			}
		}
	}
	return
}

func pairs(r *run) {
	for _, t := range texts(r.Pattern) {
		for _, p := range measure.FindPairs(t.Text) {
			if p.Agrees() {
				continue
			}
			_, right := measure.Print(p.Imperial.Length, measure.Detail, measure.Imperial, measure.English)
			f := at(t.Span, "in this text", fmt.Sprintf("“%s” gives two different lengths: %s is %s.", pairText(t.Text, p), p.Imperial.Text, right),
				"Fetch the measure with braces, such as {allow side}: then both are printed and always agree.")
			r.report(condition.True, f)
		}
	}
}

// pairText quotes both halves, with the bracket that closes after them.
func pairText(text string, p measure.Pair) string {
	from, to := min(p.Imperial.Start, p.Metric.Start), max(p.Imperial.End, p.Metric.End)
	if strings.Contains(text[from:to], "(") && strings.HasPrefix(text[to:], ")") {
		to++
	}
	return text[from:to]
}
