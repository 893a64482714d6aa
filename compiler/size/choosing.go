package size

import (
	"fmt"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"seamwarden/compiler/measure"
	"seamwarden/dsl/finding"
)

// Between says which size somebody takes whose measure lies between those of two.
type Between string

// The ways.
const (
	Nearest Between = "nearest" // the size that is nearer, the larger from half way on
	Larger  Between = "larger"  // the larger size, as soon as the smaller one is passed
	Smaller Between = "smaller" // the smaller size, until the larger one is reached
)

// Choosing is what the table says of how a size is chosen.
type Choosing struct {
	By       string  // the body row that leads, "" if it does not say
	Between  Between // "" if it does not say
	Children bool    // the pattern is for children; the table does not know it
	Span     finding.Span
}

var chooseKeys = []string{"by", "between"}

// choosing reads choose: { by: bust, between: nearest }.
func (r *reader) choosing(n *yaml.Node) {
	if n.Kind != yaml.MappingNode {
		r.notAMapping(n, "The part choose", "Write choose: { by: bust }.")
		return
	}
	for _, e := range r.entries(n, "the part choose", chooseKeys) {
		text, span := r.words(e.value, e.key)
		switch ways := []string{string(Nearest), string(Larger), string(Smaller)}; {
		case e.key == "by" && text != "":
			r.chooseBy(text, span)
		case e.key == "between" && slices.Contains(ways, text):
			r.chart.Choose.Between = Between(text)
		case e.key == "between" && text != "":
			r.cannot(span, "not a way", fmt.Sprintf("“%s” is no way to choose between two sizes.", clip(text)), "Write nearest, larger or smaller.")
		}
	}
}

// chooseBy takes the leading measure, which every draft must have.
func (r *reader) chooseBy(key string, span finding.Span) {
	c := r.chart
	if c.everywhere(key) {
		c.Choose.By, c.Choose.Span = key, span
		return
	}
	var keys []string
	for _, row := range c.Versions()[0].Body {
		if c.everywhere(row.Key) {
			keys = append(keys, row.Key)
		}
	}
	help := "Body rows are " + strings.Join(keys, ", ") + "."
	switch near := finding.Nearest(key, keys); {
	case near != "":
		help = "Did you mean " + near + "?"
	case len(keys) == 0:
		help = "Add the row under body:."
	}
	r.report(finding.Finding{Rule: "size-choice-unknown", Headline: fmt.Sprintf("The size is chosen by “%s”, which is no body measure.", clip(key)),
		Place: place(span, "no such row under body"), Why: "Whoever chooses a size looks for this measure in the table.", Help: help})
}

// limits reads where the classes of a body row begin and end.
func (r *reader) limits(row *Row, n *yaml.Node) {
	if n == nil {
		return
	}
	sizes := len(r.chart.Sizes)
	if row.Part != BodyPart || n.Kind != yaml.SequenceNode || len(n.Content) != sizes+1 {
		r.cannot(r.node(n), "not the limits of the sizes", fmt.Sprintf("The limits of %s are not %s.", row.Name, count(sizes+1, "number")),
			"In a body row, list where each size begins, and where the last one ends.")
		return
	}
	var out []measure.Length
	for i, cell := range n.Content {
		l, help := number(cell.Value, row.Unit)
		if cell.Kind != yaml.ScalarNode || help != "" {
			r.cannot(r.node(cell), "not a number", fmt.Sprintf("“%s” is not a limit of %s.", clip(cell.Value), row.Name), help)
			return
		}
		if outside := i > 0 && l.Cmp(out[i-1]) <= 0 || i > 0 && row.Has(i-1) && l.Cmp(row.Values[i-1]) < 0 || i < sizes && row.Has(i) && l.Cmp(row.Values[i]) > 0; outside {
			r.limitOut(row, cell, i)
			return
		}
		out = append(out, l)
	}
	row.Limits, row.LimitsSpan = out, r.node(n)
}

// limitOut reports a limit that does not lie between the values of the sizes that
// it divides.
func (r *reader) limitOut(row *Row, cell *yaml.Node, i int) {
	c := r.chart
	k := min(i, len(c.Sizes)-1)
	r.report(finding.Finding{Rule: "size-limit-out-of-place", Headline: fmt.Sprintf("The limit %s of %s does not part the sizes on its two sides.", clip(cell.Value), row.Name),
		Place: place(r.node(cell), "out of place"), Related: []finding.Place{place(row.ValueSpans[k], "size "+c.Sizes[k])},
		Why: "A size reaches from its limit to the next, and its own measure lies between them.", Help: "Look for a slip in this number, or in the value beside it."})
}

// leads are the measures that lead where the table does not say, first the one
// that comes before the others: bust for women's tops and dresses, chest for men's,
// hip for skirts and trousers (ISO 8559-2:2017, table 1, read in a public note);
// the rest is common practice, no source.
var leads = []string{"bust", "chest", "hip", "hips", "waist", "underbust", "neck", "head", "hand", "foot"}

// Lead gives the body row by which a size is chosen, "" if the table has none that
// all drafts have: the one that the table names; else the one whose measures the
// sizes are called by, as size 92 has a bust of 92 cm; else height for children;
// else the first of bust, chest, hip, waist and so on; else the first row.
func (c *Chart) Lead() string {
	if c.Choose.By != "" && c.complete(c.Choose.By) {
		return c.Choose.By
	}
	for i := range c.Body {
		if c.namesSizes(&c.Body[i]) {
			return c.Body[i].Key
		}
	}
	body := c.Versions()[0].Body
	order := leads
	if c.Choose.Children {
		order = append([]string{"height"}, leads...)
	}
	for i := range body {
		order = append(order[:len(order):len(order)], body[i].Key)
	}
	for _, key := range order {
		if c.complete(key) {
			return key
		}
	}
	return ""
}

// namesSizes says whether the sizes are called by the measures of a row.
func (c *Chart) namesSizes(row *Row) bool {
	for i, name := range c.Sizes {
		if !row.Has(i) || row.texts[i] != name {
			return false
		}
	}
	return true
}

// Way is how the table chooses between two sizes. Children grow into the larger
// size where the height leads; others take the nearer one. Common practice, no
// source.
func (c *Chart) Way() Between {
	switch {
	case c.Choose.Between != "":
		return c.Choose.Between
	case c.Lead() == "height":
		return Larger
	}
	return Nearest
}
