package size

import (
	"fmt"

	"gopkg.in/yaml.v3"

	"seamwarden/compiler/measure"
	"seamwarden/dsl/finding"
)

// A row of cloth says how much of a material to buy in each size, lying so wide:
//
//	cloth:
//	  narrow: { of: main, width: 45in, unit: yd, values: [2, 2 1/4, 2 3/8] }

// rowUnit reads the unit of a row. Cloth is bought in yards or metres.
func (r *reader) rowUnit(n *yaml.Node, part string) measure.Unit {
	if part == "cloth" && n.Kind == yaml.ScalarNode {
		for _, u := range []measure.Unit{measure.Yard, measure.Metre} {
			if n.Value == u.Sign() {
				return u
			}
		}
	}
	return r.unit(n, r.chart.Unit)
}

// width reads how wide a cloth lies, with its unit: 45in.
func (r *reader) width(n *yaml.Node) (measure.Measure, finding.Span) {
	text, span := r.words(n, "width")
	if text == "" {
		return measure.Measure{}, finding.Span{}
	}
	m, err := measure.Parse(text)
	if err != nil || m.Length.Sign() <= 0 {
		r.cannot(span, "not a width", fmt.Sprintf("“%s” is not a width of cloth.", clip(text)), "Write it with its unit: width: 45in, or width: 150cm.")
		return measure.Measure{}, finding.Span{}
	}
	return m, span
}

// clothRow reports a row of cloth without its material, and what belongs to cloth
// in another row.
func (r *reader) clothRow(row *Row, part string) {
	switch {
	case part == "cloth" && row.Of == "":
		r.cannot(row.KeySpan, "of which material?", fmt.Sprintf("The row %s of cloth does not say of which material.", row.Key), "Add the material's name in the pattern: of: main.")
	case part != "cloth" && (row.OfSpan != finding.Span{} || !row.Width.Length.IsZero()):
		r.cannot(row.KeySpan, "not about cloth", fmt.Sprintf("The row %s is not about cloth, so it has no material and no width.", row.Key), "Move it to the part cloth, or take `of` and `width` out.")
	}
}

// ReadCloth reads a table that holds rows of cloth only, and adds them to the chart
// whose sizes they go by. Its numbers are in the unit that it names, else the chart's.
func ReadCloth(file string, src []byte, chart *Chart) []finding.Finding {
	own := chart.empty()
	r := &reader{places: newPlaces(file, src), chart: own}
	root := r.document()
	switch {
	case root == nil:
	case root.Kind != yaml.MappingNode:
		r.notAMapping(root, "The table of cloth", "It has names with a colon after them: cloth:, and its rows below.")
	default:
		r.clothOf(root)
	}
	chart.Cloth = append(chart.Cloth, own.Cloth...)
	return r.sorted()
}

// clothOf reads the two parts that such a table has.
func (r *reader) clothOf(root *yaml.Node) {
	var rows *yaml.Node
	for _, e := range r.entries(root, "a table of cloth", []string{"unit", "cloth"}) {
		switch e.key {
		case "unit":
			r.chart.Unit = r.rowUnit(e.value, "cloth")
		case "cloth":
			rows = e.value
		}
	}
	if rows == nil && len(r.found) == 0 {
		r.missingTop("cloth", "Put the rows below it: cloth:, then NAME: { of: main, width: 45in, values: […] }.")
	}
	r.chart.Cloth = r.part(rows, ClothPart)
}
