package check

import (
	"slices"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/measure"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

// What the rules of safety share: whose garment it is, by the readings that the
// laws give. Each says that a rule may apply to what is made, and never that a
// garment meets one. Words that are marked READ in a comment were read in a stored
// copy of the official text or on the authority's page; RECALLED is from memory;
// OWN is a reading of ours where the text says nothing.

// deferral ends what a finding of these rules asks for.
const deferral = " Ask for the rules of the country where it will be worn or sold: a pattern is no proof that a garment meets them."

// reach says how surely something lies within a rule.
type reach uint8

const (
	outside reach = iota
	maybe
	within
)

// usReach tells whether a size lies within a US rule for children's sizes from 2T
// to most. 16 CFR 1120.3(b)(2), READ: a label with one size within is within; L is
// 12, XL is 16, smaller letters lie below; a larger letter alone decides nothing.
func usReach(p *model.Pattern, i int, most float64) reach {
	l := p.SizeLabel(i)
	switch {
	case l.USHigh > 0 && l.USLow <= most && l.USHigh >= 2:
		return within
	case l.Letter && (l.Beyond || l.USLow > most):
		return maybe
	}
	return outside
}

// smallest height above which, and age from which, a child is of the older group:
// up to 134 cm or 7 years it is of the young one (Finnish safety authority on EN
// 14682, READ; the standard itself was not read). A label across the limit takes the
// stricter rule (a consultancy's page, READ; no authority).
var (
	youngTall   = mustMeasure("134cm")
	youngMonths = 8 * 12
	olderMonths = 15 * 12 // EN 14682 goes to 14 years (published scope, READ)
)

func mustMeasure(text string) measure.Measure {
	m, err := measure.Parse(text)
	if err != nil {
		panic(err)
	}
	return m
}

// euYoung tells whether a size is of the young group of EN 14682: by height, else
// by a size that is an age, else by the ages that are said. Where only a size name of
// another system is known it is not decided; where nothing at all is known the
// stricter reading is taken (OWN).
func euYoung(p *model.Pattern, i int) bool {
	if h, ok := p.HeightOf(i); ok {
		return h.Cmp(youngTall.Length) <= 0
	}
	if from, ok := agedFrom(p, i); ok {
		return from < youngMonths
	}
	l := p.SizeLabel(i)
	return l.USHigh == 0 && !l.Beyond
}

// agedFrom gives the age in months at which a size begins: of its name, else of the
// ages that are said for all.
func agedFrom(p *model.Pattern, i int) (months int, ok bool) {
	if l := p.SizeLabel(i); l.MonthsHigh > 0 {
		return l.MonthsLow, true
	}
	return p.For.FromMonths, p.For.FromMonths >= 0
}

// euOlder tells whether a size is of the older group.
func euOlder(p *model.Pattern, i int) bool {
	if euYoung(p, i) {
		return false
	}
	if from, ok := agedFrom(p, i); ok {
		return from < olderMonths
	}
	_, tall := p.HeightOf(i)
	return tall
}

// clothes is where something is made that the rules on cords in children's clothes
// cover; what is not said may be covered.
func (r *run) clothes() condition.Cond {
	return r.Space.Not(r.KindIs(append(slices.Clone(model.NoClothes), "apron")...))
}

// usSizes is where a US rule up to a size is reached in that way.
func (r *run) usSizes(most float64, how reach) condition.Cond {
	return r.InSizes(func(i int) bool { return usReach(r.Pattern, i, most) == how })
}

// cautions lists every caution of the designer's.
func (r *run) cautions() []*model.Caution {
	all := slices.Clone(r.Cautions)
	for _, s := range r.Sections {
		all = append(all, s.Cautions...)
		for _, st := range s.Steps {
			for _, i := range st.Items {
				if c, ok := i.(*model.Caution); ok {
					all = append(all, c)
				}
			}
		}
	}
	return all
}

// speaksOf is where some caution says that it is about a hazard.
func (r *run) speaksOf(hazard string) condition.Cond {
	c := condition.False
	for _, x := range r.cautions() {
		if x.About == hazard {
			c = r.Space.Or(c, x.Cond)
		}
	}
	return c
}

// undecided lists something that these rules could not decide.
func (r *run) undecided(c condition.Cond, at finding.Span, what string) {
	r.report(c, finding.Finding{Rule: "not-checked", Severity: finding.Unchecked, Place: finding.Place{Span: at}, Headline: "Not checked: " + what})
}
