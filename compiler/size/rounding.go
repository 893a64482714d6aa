package size

import (
	"fmt"
	"strings"

	"gopkg.in/yaml.v3"

	"seamwarden/compiler/measure"
)

// Part is the part of a table that a row stands in.
type Part uint8

// The parts.
const (
	BodyPart Part = iota
	FinishedPart
	PatternPart
	ClothPart
)

// partNames are the parts as the table writes them.
var partNames = []string{BodyPart: "body", FinishedPart: "finished", PatternPart: "pattern", ClothPart: "cloth"}

// String is the part's name in the table.
func (p Part) String() string { return partNames[p] }

// kind says how the measures of a part are rounded and in which unit they are
// printed.
func (p Part) kind() measure.Kind {
	switch p {
	case PatternPart:
		return measure.Detail
	case ClothPart:
		return measure.Cloth
	}
	return measure.Body
}

// usual is what is rounded to where the table declares nothing; it is what
// measure's own table says of body measures and of cloth. Common practice, no
// source. Lengths of the pattern have no single step.
var usual = []measure.Steps{
	BodyPart:     {Imperial: measure.Of(1, 4, measure.Inch), Metric: measure.Of(1, 2, measure.Centimetre)},
	FinishedPart: {Imperial: measure.Of(1, 4, measure.Inch), Metric: measure.Of(1, 2, measure.Centimetre)},
	PatternPart:  {},
	ClothPart:    {Imperial: measure.Of(1, 8, measure.Yard), Metric: measure.Of(1, 10, measure.Metre)},
}

// Print gives a length of a row in both systems, "36¼ in" and "92 cm". The one
// that the row is written in is exact, the other obeys the rounding that the table
// declares for the row's part.
func (c *Chart) Print(r *Row, l measure.Length) (imperial, metric string) {
	return c.Rounding[r.Part].Print(l, r.Part.kind(), r.Unit.System(), measure.English)
}

// InTable is [Chart.Print] for a table of inches and one of centimetres, in which
// nothing is in millimetres.
func (c *Chart) InTable(r *Row, l measure.Length) (imperial, metric string) {
	return c.Rounding[r.Part].Print(l, measure.Body, r.Unit.System(), measure.English)
}

// PrintOwn gives what somebody measured for a row: as it was taken, and the other
// system rounded.
func (c *Chart) PrintOwn(r *Row, m measure.Measure) (imperial, metric string) {
	return c.Rounding[r.Part].Print(m.Length, r.Part.kind(), m.Unit.System(), measure.English)
}

// PrintDifference gives how far what somebody measured is from a row, rounded in both
// systems where they are not the same.
func (c *Chart) PrintDifference(r *Row, l measure.Length, own measure.Unit) (imperial, metric string) {
	written := r.Unit.System()
	if own.System() != written {
		written = measure.Computed
	}
	return c.Rounding[r.Part].Print(l, r.Part.kind(), written, measure.English)
}

// rounding reads the steps of each part: rounding: { body: [1/4in, 0.5cm] }.
func (r *reader) rounding(n *yaml.Node) {
	if n.Kind != yaml.MappingNode {
		r.notAMapping(n, "The rounding", "Write a line for each part: body: 1/4in, 0.5cm.")
		return
	}
	for _, e := range r.entries(n, "rounding", partNames) {
		for part, name := range partNames {
			if e.key == name {
				r.steps(Part(part), e.value)
			}
		}
	}
}

// steps reads one or two steps, of different systems.
func (r *reader) steps(part Part, n *yaml.Node) {
	texts := []*yaml.Node{n}
	if n.Kind == yaml.SequenceNode {
		texts = n.Content
	}
	s := &r.chart.Rounding[part]
	given := map[measure.System]bool{}
	for _, t := range texts {
		for _, text := range strings.Split(t.Value, ",") {
			m, err := measure.Parse(strings.TrimSpace(text))
			if t.Kind != yaml.ScalarNode || err != nil || m.Length.Sign() <= 0 || given[m.Unit.System()] {
				r.badStep(t, part, text)
				return
			}
			given[m.Unit.System()] = true
			if m.Unit.System() == measure.Metric {
				s.Metric = m.Length
			} else {
				s.Imperial = m.Length
			}
		}
	}
}

func (r *reader) badStep(n *yaml.Node, part Part, text string) {
	example := "1/4in, 0.5cm"
	if part == ClothPart {
		example = "1/8yd, 0.1m"
	}
	r.cannot(r.node(n), "not a step", fmt.Sprintf("“%s” is no step to which %s measures are rounded.", clip(text), part),
		fmt.Sprintf("Write a length with its unit, one for inches and one for centimetres: %s: %s.", part, example))
}
