package size

import (
	"fmt"
	"strings"

	"gopkg.in/yaml.v3"

	"seamwarden/compiler/measure"
	"seamwarden/dsl/finding"
)

// The wording of the findings about numbers. That of the findings about the
// file stands in filewords.go.

func (r *reader) sizeTwice(n *yaml.Node, first finding.Span) {
	r.report(finding.Finding{Rule: "size-repeated", Headline: fmt.Sprintf("Size %s stands twice.", clip(n.Value)),
		Place: place(r.node(n), "the second"), Related: []finding.Place{place(first, "the first")},
		Why: "Nobody can tell which of the two columns holds.", Help: "Delete one of them, or give it its own name."})
}

func (r *reader) sameSize(i int) {
	c := r.chart
	r.report(finding.Finding{Rule: "size-repeated", Headline: fmt.Sprintf("%s and %s are the same size.", c.Sizes[i-1], c.Sizes[i]),
		Place: place(c.SizeSpans[i], "the second"), Related: []finding.Place{place(c.SizeSpans[i-1], "the first")},
		Why: "Both names count the same number of steps.", Help: "Delete one of them, or give it its own name."})
}

func (r *reader) outOfOrder(i int) {
	c := r.chart
	r.report(finding.Finding{Rule: "size-out-of-order", Headline: fmt.Sprintf("Size %s stands after size %s.", c.Sizes[i], c.Sizes[i-1]),
		Place: place(c.SizeSpans[i], "smaller than the one before"), Related: []finding.Place{place(c.SizeSpans[i-1], "larger")},
		Why:  "Sizes run from the smallest to the largest; lists of values follow their order.",
		Help: "Put the sizes in order, and the values of each list with them."})
}

// shortList reports a list that ends early.
func (r *reader) shortList(at *yaml.Node, row *Row, have int) {
	c := r.chart
	missing := sizeNames(c.Sizes[have:])
	r.report(finding.Finding{Rule: "size-missing-cell",
		Headline: fmt.Sprintf("%s has no value for %s.", row.Name, missing),
		Place:    place(r.node(at), fmt.Sprintf("%s for %s", values(have), count(len(c.Sizes), "size"))),
		Related:  []finding.Place{place(c.SizeSpans[have], "the first size without a value")},
		Why:      "Every row has one value for each size, in the order of the sizes.",
		Help:     "Add what is missing, or write the values by size: { " + c.Sizes[0] + ": … }."})
}

func (r *reader) missingSizes(row *Row, missing []int) {
	c := r.chart
	var names []string
	for _, i := range missing {
		names = append(names, c.Sizes[i])
	}
	r.report(finding.Finding{Rule: "size-missing-cell", Headline: fmt.Sprintf("%s has no value for %s.", row.Name, sizeNames(names)),
		Place: place(row.KeySpan, "a size is missing here"), Related: []finding.Place{place(c.SizeSpans[missing[0]], "the first size without a value")},
		Why: "Every row has one value for each size.", Help: "Add the missing value."})
}

func (r *reader) noValues(row *Row) {
	r.report(finding.Finding{Rule: "size-missing-cell", Headline: row.Name + " has no values.",
		Place: place(row.KeySpan, "nothing measured"), Why: "Every row has one value for each size.",
		Help: "Add values: […], with one number for each size."})
}

func (r *reader) emptyCell(n *yaml.Node, row *Row, i int) {
	r.report(finding.Finding{Rule: "size-missing-cell", Headline: fmt.Sprintf("%s has no value for size %s.", row.Name, r.chart.Sizes[i]),
		Place: place(r.node(n), "nothing here"), Related: r.neighbour(row, i),
		Why: "Every row has one value for each size.", Help: "Write the number."})
}

func (r *reader) extraCells(first *yaml.Node, row *Row, have int) {
	c := r.chart
	last := len(c.Sizes) - 1
	r.report(finding.Finding{Rule: "size-extra-cell", Headline: fmt.Sprintf("%s has %s for %s.", row.Name, values(have), count(len(c.Sizes), "size")),
		Place: place(r.node(first), "belongs to no size"), Related: []finding.Place{place(c.SizeSpans[last], "the last size")},
		Why: "Every row has one value for each size, in the order of the sizes.", Help: "Delete what is too much, or add the size."})
}

// unknownSize reports a value for a size that is not there, and gives the number
// of the size that was meant, -1 if that is not clear.
func (r *reader) unknownSize(key *yaml.Node, row *Row) int {
	help := "Write one of " + strings.Join(r.chart.Sizes, ", ") + ", or add the size to the sizes."
	near := finding.Nearest(key.Value, r.chart.Sizes)
	if near != "" {
		help = "Did you mean " + near + "?"
	}
	r.report(finding.Finding{Rule: "size-extra-cell", Headline: fmt.Sprintf("%s has a value for “%s”, which is no size of this table.", row.Name, clip(key.Value)),
		Place: place(r.node(key), "no such size"), Related: []finding.Place{place(r.chart.SizeSpans[0], "the sizes begin here")}, Help: help})
	return r.chart.Index(near)
}

func (r *reader) badCell(n *yaml.Node, row *Row, i int, help string) {
	what := "This"
	if n.Kind == yaml.ScalarNode {
		what = "“" + clip(n.Value) + "”"
	}
	if help == "" {
		help = "Write one number for each size."
	}
	r.report(finding.Finding{Rule: "size-not-a-number", Headline: fmt.Sprintf("%s is not a measure of %s in size %s.", what, row.Name, r.chart.Sizes[i]),
		Place: place(r.node(n), "not a number"), Related: r.neighbour(row, i), Help: help})
}

func (r *reader) bodyShrinks(row *Row, i int) {
	c := r.chart
	r.report(finding.Finding{Rule: "body-measure-shrinks",
		Headline: fmt.Sprintf("%s falls from %s in size %s to %s in size %s.", row.Name, r.written(row, i-1), c.Sizes[i-1], r.written(row, i), c.Sizes[i]),
		Place:    place(row.ValueSpans[i], "less than in the size before"), Related: r.neighbour(row, i),
		Why:  "A body of a larger size is nowhere smaller; a sewist between the two could not choose.",
		Help: "Look for a slip of the keys in one of the two numbers."})
}

// oneCellOut reports the cell of size i, before and after which the step is out
// of line.
func (r *reader) oneCellOut(row *Row, i int, steps []measure.Length) {
	c := r.chart
	related := r.neighbour(row, i)
	related = append(related, place(row.ValueSpans[i+1], "size "+c.Sizes[i+1]))
	r.report(finding.Finding{Rule: "grade-jump", Severity: finding.Warning,
		Headline: fmt.Sprintf("%s in size %s breaks the run: %s from size %s, then %s to size %s.",
			row.Name, c.Sizes[i], signed(steps[i-1], row.Unit), c.Sizes[i-1], signed(steps[i], row.Unit), c.Sizes[i+1]),
		Place: place(row.ValueSpans[i], "out of line with both neighbours"), Related: related,
		Why:  "Grading grows in even steps, or in steps that change once and then hold.",
		Help: "Look for a slip in this number; if it is meant, a word to the sewist helps."})
}

// stepOut reports step i, which leads from size i to size i+1.
func (r *reader) stepOut(row *Row, i int, steps []measure.Length) {
	c := r.chart
	var beside []string
	for _, k := range []int{i - 1, i + 1} {
		if k >= 0 && k < len(steps) {
			beside = append(beside, signed(steps[k], row.Unit))
		}
	}
	r.report(finding.Finding{Rule: "grade-jump", Severity: finding.Warning,
		Headline: fmt.Sprintf("%s changes by %s from size %s to size %s; beside it the step is %s.",
			row.Name, signed(steps[i], row.Unit), c.Sizes[i], c.Sizes[i+1], strings.Join(beside, " and ")),
		Place: place(row.ValueSpans[i+1], "size "+c.Sizes[i+1]), Related: r.neighbour(row, i+1),
		Why:  "Grading grows in even steps, or in steps that change once and then hold.",
		Help: "Look for a slip in one of the two numbers; if it is meant, a word to the sewist helps."})
}

func (r *reader) negativeEase(row, body *Row, tight []int) {
	c := r.chart
	i := tight[0]
	var names []string
	for _, k := range tight {
		names = append(names, c.Sizes[k])
	}
	r.report(finding.Finding{Rule: "negative-ease",
		Headline: fmt.Sprintf("%s is smaller than the body in %s: %s over %s.", row.Name, sizeNames(names), r.written(row, i), r.written(body, i)),
		Place:    place(row.ValueSpans[i], "the garment"), Related: []finding.Place{place(body.ValueSpans[i], "the body")},
		Why:  "A woven cloth does not give: the garment would not close.",
		Help: "Make the finished measure larger, or write stretch: true if the cloth gives."})
}

func (r *reader) overUnknown(row *Row) {
	var keys []string
	for _, b := range r.chart.Body {
		keys = append(keys, b.Key)
	}
	help := "Body rows are " + strings.Join(keys, ", ") + "."
	if near := finding.Nearest(row.Over, keys); near != "" {
		help = "Did you mean " + near + "?"
	} else if len(keys) == 0 {
		help = "Add the row under body:, or leave over: out."
	}
	r.report(finding.Finding{Rule: "ease-over-unknown", Headline: fmt.Sprintf("%s lies over “%s”, which is no body measure.", row.Name, clip(row.Over)),
		Place: place(row.OverSpan, "no such row under body"), Why: "Ease is what a garment is larger than the body by.", Help: help})
}

// neighbour is the value of the size before, or of the size after the first.
func (r *reader) neighbour(row *Row, i int) []finding.Place {
	for _, k := range []int{i - 1, i + 1} {
		if row.Has(k) {
			return []finding.Place{place(row.ValueSpans[k], "size "+r.chart.Sizes[k])}
		}
	}
	return []finding.Place{place(r.chart.SizeSpans[i], "the size")}
}

// written is a value as it stands in the file, with its unit.
func (r *reader) written(row *Row, i int) string { return row.texts[i] + " " + row.Unit.Sign() }

// signed writes a step with its sign: +1 1/2 in.
func signed(l measure.Length, u measure.Unit) string {
	text := strings.TrimSuffix(measure.Source(l.Abs(), u), u.Sign()) + " " + u.Sign()
	switch l.Sign() {
	case 1:
		return "+" + text
	case -1:
		return "−" + text
	}
	return "nothing"
}

func place(s finding.Span, label string) finding.Place { return finding.Place{Span: s, Label: label} }

// sizeNames writes "size 8", "sizes 8, 10 and 12", and no more than six of them.
func sizeNames(names []string) string {
	const most = 6
	switch n := len(names); {
	case n == 1:
		return "size " + names[0]
	case n > most:
		return fmt.Sprintf("%d sizes, %s the first of them", n, names[0])
	default:
		return "sizes " + strings.Join(names[:n-1], ", ") + " and " + names[n-1]
	}
}

func values(n int) string { return count(n, "value") }

func count(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// clip shortens text from the file before it is quoted.
func clip(s string) string {
	const most = 40
	s = strings.Join(strings.Fields(s), " ")
	if r := []rune(s); len(r) > most {
		return string(r[:most]) + "…"
	}
	return s
}
