package size

import (
	"strings"

	"gopkg.in/yaml.v3"

	"seamwarden/compiler/measure"
	"seamwarden/dsl/finding"
)

// Read reads a table of sizes and checks it. The chart is nil if not even its
// sizes could be read; otherwise it holds every row that could be, and what
// could not be has a finding. Findings stand in the order of their places.
func Read(file string, src []byte) (*Chart, []finding.Finding) {
	r := &reader{places: newPlaces(file, src)}
	if root := r.document(); root != nil && r.top(root) {
		r.check()
	} else {
		r.chart = nil
	}
	return r.chart, r.sorted()
}

// reader reads one file.
type reader struct {
	*places
	chart *Chart
	found []finding.Finding
}

var (
	topKeys = []string{"unit", "sizes", "woven", "stretch", "follows", "rounding", "choose", "body", "finished", "pattern", "cloth", "drafts"}
	rowKeys = []string{"name", "values", "unit", "note", "when", "over", "of", "width", "limits"}
)

// top reads the outermost mapping; false if it has no sizes to read rows by.
func (r *reader) top(root *yaml.Node) bool {
	if root.Kind != yaml.MappingNode {
		r.notAMapping(root, "The table of sizes", "It has names with a colon after them, such as unit: in.")
		return false
	}
	got := map[string]*yaml.Node{}
	for _, e := range r.entries(root, "a table of sizes", topKeys) {
		got[e.key] = e.value
	}
	r.chart = &Chart{Unit: measure.Inch, Woven: true, Rounding: [4]measure.Steps(usual)}
	if n := got["unit"]; n != nil {
		r.chart.Unit = r.unit(n, measure.Inch)
	} else {
		r.missingTop("unit", "Say once what the numbers are: unit: in, or unit: cm.")
	}
	if got["sizes"] == nil {
		r.missingTop("sizes", "List them, smallest first: sizes: [8, 10, 12].")
		return false
	}
	r.sizes(got["sizes"])
	if len(r.chart.Sizes) == 0 {
		return false
	}
	r.rest(got)
	return true
}

// rest reads what needs the sizes.
func (r *reader) rest(got map[string]*yaml.Node) {
	r.cloth(got["woven"], got["stretch"])
	if n := got["follows"]; n != nil {
		r.chart.Follows, r.chart.FollowsSpan = r.words(n, "follows")
	}
	if n := got["rounding"]; n != nil {
		r.rounding(n)
	}
	for part, rows := range r.chart.parts() {
		*rows = r.part(got[partNames[part]], Part(part))
	}
	if n := got["drafts"]; n != nil {
		r.drafts(n)
	}
	if n := got["choose"]; n != nil {
		r.choosing(n)
	}
}

// unit reads the name of a unit.
func (r *reader) unit(n *yaml.Node, fallback measure.Unit) measure.Unit {
	for _, u := range []measure.Unit{measure.Inch, measure.Centimetre, measure.Millimetre} {
		if n.Kind == yaml.ScalarNode && n.Value == u.Sign() {
			return u
		}
	}
	r.badUnit(n)
	return fallback
}

// words reads a line of text.
func (r *reader) words(n *yaml.Node, what string) (string, finding.Span) {
	if n.Kind != yaml.ScalarNode || n.Tag == "!!null" {
		r.notText(n, what)
		return "", finding.Span{}
	}
	return strings.Join(strings.Fields(n.Value), " "), r.text(n)
}

// cloth reads whether the cloth gives.
func (r *reader) cloth(woven, stretch *yaml.Node) {
	w, hasWoven := r.yesNo(woven, "woven")
	s, hasStretch := r.yesNo(stretch, "stretch")
	switch {
	case hasWoven && hasStretch && w == s:
		r.bothCloths(woven, stretch)
	case hasWoven:
		r.chart.Woven = w
	case hasStretch:
		r.chart.Woven = !s
	}
}

func (r *reader) yesNo(n *yaml.Node, what string) (value, ok bool) {
	switch {
	case n == nil:
		return false, false
	case n.Kind == yaml.ScalarNode && n.Value == "true":
		return true, true
	case n.Kind == yaml.ScalarNode && n.Value == "false":
		return false, true
	}
	r.notYesNo(n, what)
	return false, false
}

// part reads the rows of one part of the table.
func (r *reader) part(n *yaml.Node, part Part) []Row {
	name := part.String()
	if n == nil || n.Kind == yaml.ScalarNode && n.Tag == "!!null" {
		return nil
	}
	if n.Kind != yaml.MappingNode {
		r.notAMapping(n, "The part "+name, "Each row has a key: waist: { name: Waist girth, values: [25, 26 1/2, 28] }.")
		return nil
	}
	var rows []Row
	for _, e := range r.entries(n, "the part "+name, nil) {
		if len(rows) == mostRows {
			r.tooManyRows(e.node, name)
			break
		}
		rows = append(rows, r.row(e, part))
	}
	return rows
}

// row reads one row. Without a name it is called by its key.
func (r *reader) row(e entry, in Part) Row {
	part := in.String()
	row := Row{Part: in, Key: e.key, Name: nameOf(e.key), KeySpan: r.node(e.node), Unit: r.chart.Unit}
	n := len(r.chart.Sizes)
	row.Values, row.ValueSpans, row.texts = make([]measure.Length, n), make([]finding.Span, n), make([]string, n)
	if e.value.Kind != yaml.MappingNode {
		r.notAMapping(e.value, "The row "+e.key, "Write "+e.key+": { name: …, values: […] }.")
		return row
	}
	got := map[string]*yaml.Node{}
	for _, f := range r.entries(e.value, "a row", rowKeys) {
		got[f.key] = f.value
		r.field(&row, f)
	}
	r.clothRow(&row, part)
	r.values(&row, got["values"])
	r.limits(&row, got["limits"])
	return row
}

// field reads what a row says besides its values.
func (r *reader) field(row *Row, f entry) {
	part := row.Part.String()
	switch f.key {
	case "name":
		if text, _ := r.words(f.value, "name"); text != "" {
			row.Name = text
		}
	case "note":
		row.Note, _ = r.words(f.value, "note")
	case "when":
		row.When, row.WhenSpan = r.guard(f.value)
	case "unit":
		row.Unit = r.rowUnit(f.value, part)
	case "over":
		row.Over, row.OverSpan = r.words(f.value, "over")
		if part != "finished" {
			r.overElsewhere(f.node, part)
			row.Over = ""
		}
	case "of":
		row.Of, row.OfSpan = r.words(f.value, "of")
	case "width":
		row.Width, row.WidthSpan = r.width(f.value)
	}
}

// guard reads the text of a guard without changing it, so that places inside it
// hold.
func (r *reader) guard(n *yaml.Node) (string, finding.Span) {
	text, span := r.words(n, "when")
	if text == "" {
		return "", finding.Span{}
	}
	return n.Value, span
}

// nameOf makes a name of a key: back-length is called "Back length".
func nameOf(key string) string {
	words := strings.ReplaceAll(key, "-", " ")
	return strings.ToUpper(words[:1]) + words[1:]
}
