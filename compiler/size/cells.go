package size

import (
	"strings"
	"unicode"

	"gopkg.in/yaml.v3"

	"seamwarden/compiler/measure"
	"seamwarden/dsl/finding"
)

// sizes reads the list of sizes.
func (r *reader) sizes(n *yaml.Node) {
	if n.Kind != yaml.SequenceNode || len(n.Content) == 0 {
		r.badSizes(n)
		return
	}
	c := r.chart
	for i, s := range n.Content {
		if i == mostSizes {
			r.tooManySizes(s)
			return
		}
		if doubt := sizeDoubt(s); doubt != "" {
			r.badSize(s, doubt)
			continue
		}
		if at := c.Index(s.Value); at >= 0 {
			r.sizeTwice(s, c.SizeSpans[at])
			continue
		}
		c.Sizes = append(c.Sizes, s.Value)
		c.SizeSpans = append(c.SizeSpans, r.node(s))
	}
	r.order()
}

// What other programs take for something else than a word.
var (
	otherWords = []string{"y", "n", "yes", "no", "on", "off", "true", "false", "null"}

	leadNought = lazily(`^0+[1-9]`)
	endNought  = lazily(`^\d+\.\d*0$`)
	otherForm  = lazily(`^(?i:\d{4}-\d\d?-\d\d?|0x[0-9a-f]+|0o[0-7]+|[\d.]+e[+-]?\d+)$`)
)

// longestSize is the most characters of a size's name.
const longestSize = 20

// sizeForm is what a size may be called: 8, XS, 36C, 98/104, 8-10, 2T, 12½. It has
// letters and digits, a few signs between them, and ends with one or with + or ½.
func sizeForm(name string) bool {
	n, last := 0, rune(0)
	for _, c := range name {
		switch {
		case unicode.IsLetter(c) || unicode.IsNumber(c):
		case n == 0 || !strings.ContainsRune(" .,/+-", c):
			return false
		}
		n, last = n+1, c
	}
	return n > 0 && n <= longestSize && (unicode.IsLetter(last) || unicode.IsNumber(last) || last == '+')
}

// plainNumber says whether a text is a whole number without doubt, as most sizes are.
func plainNumber(text string) bool {
	for _, c := range text {
		if c < '0' || c > '9' {
			return false
		}
	}
	return text != "" && text[0] != '0'
}

// sizeDoubt says why a node is no good name of a size, or "". In quotation
// marks a word is what it is; without them other programs, and people, may take
// it for something else.
func sizeDoubt(n *yaml.Node) string {
	v := n.Value
	switch {
	case n.Kind != yaml.ScalarNode || n.Tag == "!!null" && !quoted(n):
		return "a size is a short word or a number"
	case quoted(n) && sizeForm(v):
		return ""
	case plainNumber(v) && sizeForm(v):
		return ""
	case contains(otherWords, strings.ToLower(v)):
		return "many programs read this word as yes, no or nothing"
	case otherForm().MatchString(v):
		return "many programs read this as a date or a number of another kind"
	case leadNought().MatchString(v):
		return "it begins with 0, and may be read as another number"
	case endNought().MatchString(v):
		return "many programs read the same number without its last 0"
	case !sizeForm(v):
		return "a size has letters, digits and at most a few signs such as / or -, up to 20 in all"
	}
	return ""
}

// values reads the cells of a row.
func (r *reader) values(row *Row, n *yaml.Node) {
	switch {
	case n == nil || n.Kind == yaml.ScalarNode && n.Tag == "!!null":
		r.noValues(row)
	case n.Kind == yaml.SequenceNode:
		r.list(row, n)
	case n.Kind == yaml.MappingNode:
		r.bySize(row, n)
	default:
		r.badValues(n, row)
	}
}

// list reads values in the order of the sizes.
func (r *reader) list(row *Row, n *yaml.Node) {
	sizes := r.chart.Sizes
	for i, cell := range n.Content {
		if i < len(sizes) {
			r.cell(row, i, cell)
		}
	}
	if len(n.Content) > len(sizes) {
		r.extraCells(n.Content[len(sizes)], row, len(n.Content))
	}
	if len(n.Content) < len(sizes) {
		at := n
		if len(n.Content) > 0 {
			at = n.Content[len(n.Content)-1]
		}
		r.shortList(at, row, len(n.Content))
	}
}

// bySize reads values that name their size.
func (r *reader) bySize(row *Row, n *yaml.Node) {
	seen := map[int]finding.Span{}
	for k := 0; k+1 < len(n.Content); k += 2 {
		if r.full() {
			return
		}
		key, cell := n.Content[k], n.Content[k+1]
		i := r.chart.Index(key.Value)
		first, twice := seen[i]
		switch {
		case key.Kind != yaml.ScalarNode || i < 0:
			if meant := r.unknownSize(key, row); meant >= 0 {
				seen[meant] = r.node(key) // one mistake, one finding
			}
		case twice:
			r.sizeTwice(key, first)
		default:
			seen[i] = r.node(key)
			r.cell(row, i, cell)
		}
	}
	var missing []int
	for i := range r.chart.Sizes {
		if _, ok := seen[i]; !ok {
			missing = append(missing, i)
		}
	}
	if len(missing) > 0 {
		r.missingSizes(row, missing)
	}
}

// cell reads one value.
func (r *reader) cell(row *Row, i int, n *yaml.Node) {
	switch {
	case n.Kind == yaml.ScalarNode && n.Tag == "!!null" && !quoted(n):
		r.emptyCell(n, row, i)
		return
	case n.Kind != yaml.ScalarNode:
		r.badCell(n, row, i, "")
		return
	}
	l, help := number(n.Value, row.Unit)
	if help != "" {
		r.badCell(n, row, i, help)
		return
	}
	row.Values[i], row.ValueSpans[i], row.texts[i] = l, r.node(n), strings.TrimSpace(n.Value)
}

// number reads a value in a unit, or says how it would be written.
func number(text string, u measure.Unit) (measure.Length, string) {
	text = strings.TrimSpace(text)
	if strings.HasPrefix(text, "0") && leadNought().MatchString(text) {
		return measure.Length{}, "Leave out the 0 at its beginning: some programs count such numbers in eights."
	}
	m, err := measure.Parse(text + u.Sign())
	switch {
	case err == nil && m.Length.IsZero():
		return measure.Length{}, "A measure of nothing needs no row; is a digit missing?"
	case err == nil:
		return m.Length, ""
	case decimalComma().MatchString(text):
		return measure.Length{}, "Write a decimal point: " + strings.Replace(text, ",", ".", 1) + "."
	case meantFraction(text, u) != "":
		return measure.Length{}, meantFraction(text, u)
	}
	if _, err := measure.ParseLoose(text); err == nil {
		return measure.Length{}, "Write the number alone; its unit stands in the table's unit, or in a unit of the row."
	}
	return measure.Length{}, "Write it as 26, 26.5 or 26 1/2."
}

var decimalComma = lazily(`^\d+,\d+$`)

// meantFraction passes on what the reader of measures suggests.
func meantFraction(text string, u measure.Unit) string {
	_, err := measure.Parse(text + u.Sign())
	_, meant, ok := strings.Cut(err.Error(), "did you mean ")
	if !ok {
		return ""
	}
	return "Did you mean " + strings.TrimSuffix(strings.TrimSuffix(meant, "?"), u.Sign()) + "?"
}
