package check

import (
	"fmt"
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "wearer-half-said", Severity: finding.Advice, Category: "safety", FromAbsence: true, run: halfSaid,
		Purpose: "A pattern with children's sizes does not say for whom it is, or one for children does not say what is made.",
		Why:     "The rules on cords, small parts and nightwear are decided from the wearer and the kind of garment; without them they are not checked, or are taken at their strictest."})
	register(Rule{ID: "heights-and-ages-disagree", Severity: finding.Warning, Category: "safety", run: tallForAge,
		Purpose: "The ages that are said and the heights of the sizes are those of different children.",
		Why:     "A rule that goes by age and one that goes by height would be decided for two different children."})
}

func halfSaid(r *run) {
	switch {
	case r.For == nil && r.childSizes() != "":
		r.report(r.Valid, at(r.TitleSpan, "for whom?", fmt.Sprintf("The sizes are those of children (%s), and the pattern does not say for whom it is.", r.childSizes()),
			"Add to its head: `for children, ages 2 to 8 years`, or the ages that are right; and what is made: `kind outerwear`."))
	case r.ForChildren():
		bad := r.Space.Not(r.KindIs(model.KindWords...))
		r.report(bad, at(r.For.Span, "what is made?", "The pattern is for children, and does not say what is made.",
			"Add `kind` to the head, with one of these words: "+strings.Join(model.KindWords, ", ")+"."))
		r.undecided(r.Space.And(r.Space.Not(bad), r.agesUnsaid()), r.For.Span, "ages or heights, since none are said; the strictest are taken.")
	}
}

// childSizes says by what the sizes are children's, "" if nothing shows it.
func (r *run) childSizes() string {
	if r.Sizes == nil {
		return ""
	}
	if row := r.Sizes.BodyRow("height"); row != nil && row.Has(0) && row.Values[0].Cmp(youngTall.Length) <= 0 {
		return "the smallest height is up to 134 cm"
	}
	for i, name := range r.Sizes.Sizes {
		if r.SizeLabel(i).MonthsHigh > 0 || strings.HasSuffix(strings.ToUpper(name), "T") && r.SizeLabel(i).USHigh > 0 {
			return "size " + name
		}
	}
	return ""
}

func (r *run) agesUnsaid() condition.Cond {
	if r.For.FromMonths >= 0 {
		return condition.False
	}
	return r.InSizes(func(i int) bool {
		_, tall := r.HeightOf(i)
		l := r.SizeLabel(i)
		return !tall && l.MonthsHigh == 0 && l.USHigh == 0 && !l.Beyond
	})
}

// medians are heights in millimetres that half of all boys and girls reach, at each
// birthday from 2 to 18: US CDC growth charts of 2000, stature for age, at n years
// and half a month. US Government work, READ in a stored copy.
var medians = [][2]int{{869, 854}, {953, 942}, {1025, 1010}, {1092, 1080}, {1157, 1150}, {1220, 1218}, {1281, 1278}, {1337, 1331}, {1388, 1382},
	{1437, 1443}, {1493, 1515}, {1564, 1573}, {1641, 1605}, {1701, 1619}, {1736, 1626}, {1753, 1629}, {1762, 1631}}

// medianAt gives the smaller and the larger of the two medians at an age in months.
func medianAt(months int) (low, high float64) {
	m := medians[min(max(months/12-2, 0), len(medians)-1)]
	return float64(min(m[0], m[1])), float64(max(m[0], m[1]))
}

// tallForAge finds ages and heights of which the middling child has never both.
func tallForAge(r *run) {
	if !r.ForChildren() || r.For.FromMonths < 24 {
		return
	}
	first, last := 0, 0
	if r.Sizes != nil {
		last = max(len(r.Sizes.Sizes)-1, 0)
	}
	low, ok := r.HeightOf(first)
	high, _ := r.HeightOf(last)
	if !ok {
		return
	}
	if r.For.High != nil && r.For.High.Length.Cmp(high) > 0 {
		high = r.For.High.Length
	}
	youngest, _ := medianAt(r.For.FromMonths)
	_, oldest := medianAt(r.For.ToMonths + 1)
	if high.MM() >= youngest && low.MM() <= oldest {
		return
	}
	f := at(r.For.Span, "ages of other children", fmt.Sprintf("Middling children of these ages are %.0f to %.0f cm tall, and the sizes go from %.0f to %.0f cm.", youngest/10, oldest/10, low.MM()/10, high.MM()/10),
		"Correct the ages, the heights or both.")
	r.report(r.Valid, f)
}
