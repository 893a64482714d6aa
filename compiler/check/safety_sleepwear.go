package check

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"strings"
	"sync"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/measure"
	"seamwarden/compiler/size"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "sleepwear-loose-without-caution", Severity: finding.Warning, Category: "safety", FromAbsence: true, run: looseSleepwear,
		Purpose: "A child's nightwear is wider than the figures for a tight fit, or does not state its girths, and no caution speaks of fire.",
		Why:     "Loose nightwear catches fire easily. In the United States nightwear of sizes 9 months to 14 must not burn fast unless it is tight-fitting by a table of girths (16 CFR 1615.1(o) and 1616.2(m)); other countries have rules of their own. Stated girths are no proof: the finished garment is measured."})
	register(Rule{ID: "sleepwear-without-packaging-words", Severity: finding.Advice, Category: "safety", FromAbsence: true, run: packaging,
		Purpose: "A pattern for children's nightwear has no words for its packaging.",
		Why:     "Australia wants a set fire warning on the outside of the packaging of paper patterns for children's nightwear, sizes 00 to 14 (safety standard of 2017, F2017L00452, sections 9 and 10). The words stand in section 10; they are not supplied here."})
}

// girths are the girths of the table, by the key of their row under finished.
var girths = []string{"chest", "waist", "seat", "upper-arm", "thigh", "wrist", "ankle"}

//go:embed tables/tight_fit.csv
var tightFitFile string

// tightFit is the table: for the reading of a size's name and for whom it is, the
// largest girth at each point in each system.
type tightRow struct {
	label size.Label
	sex   string
	most  map[string]map[measure.System]measure.Measure
}

var tightFit = sync.OnceValue(func() (all []tightRow) {
	c := csv.NewReader(strings.NewReader(tightFitFile))
	c.Comment = '#'
	rows, err := c.ReadAll()
	if err != nil {
		panic(err)
	}
	for _, row := range rows[1:] {
		t := tightRow{size.ReadLabel(row[0]), row[1], map[string]map[measure.System]measure.Measure{}}
		for i, p := range girths {
			t.most[p] = map[measure.System]measure.Measure{
				measure.Metric:   mustMeasure(row[2+2*i] + "cm"),
				measure.Imperial: mustMeasure(row[3+2*i] + "in"),
			}
		}
		all = append(all, t)
	}
	return
})

// tightIn gives the row of a size; nil if the table has none. What is not made for
// girls alone is held to the boys' figures (footnote of 16 CFR 1616.2, READ).
func tightIn(l size.Label, who string) *tightRow {
	if l.Letter || l == (size.Label{}) {
		return nil
	}
	sex := "boys"
	if who == "girls" {
		sex = "girls"
	}
	for _, t := range tightFit() {
		if t.label == l && (t.sex == "any" || t.sex == sex) {
			return &t
		}
	}
	return nil
}

func looseSleepwear(r *run) {
	scope := r.Space.Diff(r.KindIs("sleepwear"), r.speaksOf("fire"))
	if !r.ForChildren() || !r.possible(scope) {
		return
	}
	help := "Add a caution: `caution warning about fire \"…\"`. Or state the finished girths under `finished`, with the keys " + strings.Join(girths, ", ") + ", and keep each to the table." + deferral
	bad, wide := r.tooWide()
	if len(wide) == 0 && !r.statesGirths() {
		r.report(scope, at(r.kindSpan("sleepwear"), "nightwear", "Nothing says that this nightwear fits tightly, and no caution speaks of fire.", help))
		return
	}
	f := at(r.kindSpan("sleepwear"), "nightwear", "This nightwear is wider than the figures for a tight fit, and no caution speaks of fire.", help)
	f.Related = wide
	r.report(r.Space.And(scope, bad), f)
	r.undecided(r.Space.Diff(scope, bad), r.kindSpan("sleepwear"),
		"whether this nightwear is tight-fitting as worn: where its trim stands out, how its sleeves, legs and body narrow, where it fastens, and every girth and size that is not stated or not in the table. A pattern is no proof.")
}

// tooWide compares the stated girths with the table, each in the system in which it
// is written: the official pairs are not all of one length.
func (r *run) tooWide() (bad condition.Cond, cells []finding.Place) {
	bad = condition.False
	if r.Sizes == nil {
		return
	}
	for _, p := range girths {
		row := r.Sizes.FinishedRow(p)
		if row == nil {
			continue
		}
		over := r.InSizes(func(i int) bool {
			t := tightIn(r.SizeLabel(i), r.For.Who)
			if t == nil || !row.Has(i) {
				return false
			}
			most := t.most[p][row.Unit.System()]
			if row.Values[i].Cmp(most.Length) <= 0 {
				return false
			}
			if len(cells) < 6 {
				cells = append(cells, finding.Place{Span: row.ValueSpans[i], Label: fmt.Sprintf("size %s: the figure is %s", r.Sizes.Sizes[i], bareMeasure(most))})
			}
			return true
		})
		bad = r.Space.Or(bad, r.Space.And(over, r.RowCond(row)))
	}
	return
}

func bareMeasure(m measure.Measure) string {
	imperial, metric := measure.Print(m.Length, measure.Detail, m.Unit.System(), measure.English)
	if m.Unit.System() == measure.Metric {
		return metric
	}
	return imperial
}

func (r *run) statesGirths() bool {
	for _, p := range girths {
		if r.Sizes != nil && r.Sizes.FinishedRow(p) != nil {
			return true
		}
	}
	return false
}

func (r *run) kindSpan(word string) finding.Span {
	for _, k := range r.Kinds {
		if k.Word == word {
			return k.Span
		}
	}
	return r.TitleSpan
}

func packaging(r *run) {
	if !r.ForChildren() || r.Packaging != nil {
		return
	}
	r.report(r.KindIs("sleepwear"), at(r.kindSpan("sleepwear"), "children's nightwear", "The pattern has no words for the outside of its packaging.",
		"If it is sold in Australia in print, add `packaging \"…\"` to the head with the words that the standard sets."+deferral))
}
