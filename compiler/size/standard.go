package size

import (
	"fmt"
	"slices"
	"strings"

	"seamwarden/compiler/measure"
	"seamwarden/dsl/finding"
)

// The rules that compare a table's body measures with the standard that it says it
// follows. A measure agrees if rounding may have made it of the standard's.
const (
	offStandard = "body-off-standard"
	offRecalled = "body-off-recalled-standard"
)

// standard compares each version of the chart.
func (r *reader) standard() {
	top := r.chart
	if top.Follows == "" {
		return
	}
	std := standardOf(top.Follows)
	if std == nil {
		r.report(finding.Finding{Rule: "not-checked", Severity: finding.Unchecked, Place: place(top.FollowsSpan, "this standard"),
			Headline: fmt.Sprintf("Not checked yet: body measures against “%s”.", clip(top.Follows)),
			Help:     "EN 13402-3 for women, men or children, and GB/T 1335.2 can be compared."})
		return
	}
	for _, d := range top.Versions() {
		c := &compared{reader: r, chart: d.Chart, std: std}
		c.letters()
		for _, b := range std.blocks {
			c.block(b)
		}
	}
}

var menWord, childWord = lazily(`(?i)\bmen\b|\bmen's\b|\bmale`), lazily(`(?i)child|boys|girls|toddler|baby|babies|infant`)

// standardOf finds the standard that words name, nil for one that is not known here.
func standardOf(follows string) *standard {
	who := ""
	switch {
	case childWord().MatchString(follows):
		who = "children"
	case menWord().MatchString(follows):
		who = "men"
	}
	for i := range standards {
		if s := &standards[i]; strings.Contains(follows, s.sign) && s.who == who {
			return s
		}
	}
	return nil
}

// compared is one version of a chart beside its standard.
type compared struct {
	*reader
	chart *Chart
	std   *standard
}

func mm(v int) measure.Length { return measure.Of(int64(v), 1, measure.Millimetre) }

// near says whether a row's value may be the standard's.
func (c *compared) near(row *Row, l measure.Length, v int) bool {
	return c.chart.Rounding[BodyPart].Within(l, mm(v), row.Unit.System())
}

// rowOf finds the row that measures one of the keys. In a draft, a row from above is
// looked at once, in the first draft.
func (c *compared) rowOf(keys []string) *Row {
	for _, k := range keys {
		if row := c.chart.BodyRow(k); row != nil && row.complete() {
			return row
		}
	}
	return nil
}

// lettered gives the class of each size that is called by a letter, nil if one of the
// sizes is not.
func (c *compared) lettered() (classes []*letterClass) {
	for _, s := range c.chart.Sizes {
		i := slices.IndexFunc(c.std.letters, func(l letterClass) bool { return sameLetter(l.letter, s) })
		if i < 0 {
			return nil
		}
		classes = append(classes, &c.std.letters[i])
	}
	return
}

func sameLetter(a, b string) bool {
	if strings.ContainsAny(b, "/-") {
		return false
	}
	x, _ := letterRank(a)
	y, _ := letterRank(b)
	return x != nil && y != nil && x.Cmp(y) == 0
}

// letters compares sizes that are called by letters with the girths of the letters.
func (c *compared) letters() {
	keys := []string{"bust", "chest"}
	if c.std.who == "men" {
		keys = []string{"chest"}
	}
	row := c.rowOf(keys)
	if row == nil {
		return
	}
	for i, l := range c.lettered() {
		if v := row.Values[i]; v.Cmp(mm(l.from)) < 0 || v.Cmp(mm(l.to)) >= 0 {
			c.off(offStandard, row, i, 0, fmt.Sprintf("In %s, %s is for %s to %s.", c.std.name, l.letter, inCM(l.from), inCM(l.to)))
			return
		}
	}
}

// block compares the rows of the chart that stand in a block of the standard: the
// first of them finds the line, the others must have that line's measures.
func (c *compared) block(b block) {
	if c.lettered() != nil {
		return // a letter holds several of the standard's sizes
	}
	var lines []int // of each size, -1 for none
	anchor := ""
	for _, s := range b {
		row := c.rowOf(s.keys)
		switch {
		case row == nil:
		case lines == nil:
			lines, anchor = c.linesOf(row, s), row.Name
		default:
			c.beside(row, s, lines, anchor)
		}
	}
}

// linesOf finds each size in a series, and reports the first that is not in it and a
// size that is left out.
func (c *compared) linesOf(row *Row, s series) (lines []int) {
	for _, l := range row.Values {
		lines = append(lines, slices.IndexFunc(s.values, func(v int) bool { return c.near(row, l, v) }))
	}
	for i, at := range lines {
		if at < 0 {
			c.off(s.rule(len(s.values)), row, i, count1(lines, -1), fmt.Sprintf("The nearest of %s are %s.", c.std.name, s.around(row.Values[i])))
			return
		}
		if i > 0 && lines[i-1] >= 0 && at-lines[i-1] > 1 && slices.ContainsFunc(steps(lines), func(n int) bool { return n == 1 }) {
			c.off(s.rule(at), row, i, 0, fmt.Sprintf("Size %s goes before it, so %s of %s is left out.", c.chart.Sizes[i-1], inCM(s.values[at-1]), c.std.name))
			return
		}
	}
	c.classes(row, s, lines)
	return
}

// classes compares declared limits with the standard's.
func (c *compared) classes(row *Row, s series, lines []int) {
	if row.Limits == nil || s.limits == nil || row.Inherited {
		return
	}
	for i, at := range lines {
		for k, limit := range []int{s.limits[at], s.limits[at+1]} {
			if !c.near(row, row.Limits[i+k], limit) {
				c.off(s.rule(at), row, i, 0, fmt.Sprintf("Its limits are not those of %s: %s to %s.", c.std.name, inCM(s.limits[at]), inCM(s.limits[at+1])))
				return
			}
		}
	}
}

// beside compares a row with what stands in the standard beside the first one.
func (c *compared) beside(row *Row, s series, lines []int, anchor string) {
	first, others, at := -1, -1, 0
	for i, line := range lines {
		if line >= 0 && line < len(s.values) && !c.near(row, row.Values[i], s.values[line]) {
			if others++; first < 0 {
				first, at = i, line
			}
		}
	}
	if first >= 0 {
		c.off(s.rule(at), row, first, others, fmt.Sprintf("%s has %s beside that %s.", c.std.name, inCM(s.values[at]), lowerFirst(anchor)))
	}
}

// off reports a measure that is not the standard's; others is how many more sizes of
// the row are not.
func (c *compared) off(rule string, row *Row, i, others int, says string) {
	if row.Inherited && len(c.reader.chart.Drafts) > 0 && c.chart != c.reader.chart.Drafts[0].Chart {
		return // it was looked at in the first draft
	}
	f := differs(offStandard, finding.Warning, "Correct the measure, or do not say that the table follows this standard.")
	if rule == offRecalled {
		f = differs(offRecalled, finding.Advice, "The standard's number is recalled from memory here: look it up before you change yours.")
	}
	f.Headline = fmt.Sprintf("%s of size %s is %s. %s", row.Name, c.chart.Sizes[i], c.reader.written(row, i), says)
	f.Place, f.Related = place(row.ValueSpans[i], "not the standard's"), []finding.Place{place(c.reader.chart.FollowsSpan, "said to be followed")}
	if others > 0 {
		f.Headline = strings.TrimSuffix(f.Headline, ".") + fmt.Sprintf("; %s of the row %s too.", count(others, "other size"), map[bool]string{true: "differs", false: "differ"}[others == 1])
	}
	c.instead(f)
}

func differs(rule string, severity finding.Severity, help string) finding.Finding {
	return finding.Finding{Rule: rule, Severity: severity, Why: "Whoever knows her size in a standard takes that size.", Help: help}
}

// instead reports a finding, in place of a jump of the grade that the same cell makes if
// the standard was read: it says more. Otherwise what is said of the cell already is
// enough.
func (c *compared) instead(f finding.Finding) {
	at := slices.IndexFunc(c.found, func(x finding.Finding) bool { return x.Place.Span == f.Place.Span })
	switch {
	case at < 0:
		c.report(f)
	case f.Rule == offStandard && c.found[at].Rule == "grade-jump":
		c.found[at] = f
	}
}

// rule is the rule for a value: what is recalled is no authority.
func (s *series) rule(at int) string {
	if at < s.read || at == len(s.values) && s.read > 0 {
		return offStandard
	}
	return offRecalled
}

// around words the values of a series on both sides of a length.
func (s *series) around(l measure.Length) string {
	at := 0
	for at < len(s.values) && mm(s.values[at]).Cmp(l) < 0 {
		at++
	}
	switch at {
	case 0:
		return inCM(s.values[0]) + " and more"
	case len(s.values):
		return inCM(s.values[at-1]) + " and less"
	}
	return inCM(s.values[at-1]) + " and " + inCM(s.values[at])
}

func inCM(v int) string {
	return strings.TrimSuffix(measure.Source(mm(v), measure.Centimetre), "cm") + " cm"
}

// count1 counts a number in a list beyond the first.
func count1(list []int, n int) (more int) {
	more = -1
	for _, x := range list {
		if x == n {
			more++
		}
	}
	return
}

func steps(lines []int) (all []int) {
	for i := 1; i < len(lines); i++ {
		if lines[i] >= 0 && lines[i-1] >= 0 {
			all = append(all, lines[i]-lines[i-1])
		}
	}
	return
}

func lowerFirst(s string) string { return strings.ToLower(s[:1]) + s[1:] }
