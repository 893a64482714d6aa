package figure

import (
	"math"
	"slices"
	"strings"
)

// style is what groups hand down to their shapes. Lengths are in user units.
type style struct {
	fill, stroke             Paint
	fillUnseen, strokeUnseen bool // fully see-through
	evenOdd                  bool
	width                    float64
	dash                     []float64
	dashStart                float64
	cap, join                string
	mitre                    float64
	size                     float64
	anchor                   string
	bold, italic             bool
	hidden                   bool // visibility; shapes inside may show again
}

// firstStyle is what SVG gives a shape of which nothing is said.
func firstStyle() style {
	return style{stroke: noPaint, width: 1, cap: "butt", join: "miter", mitre: 4, size: 16, anchor: "start"}
}

// mostDashes bounds a dash list: each shape has a copy of its own.
const mostDashes = 32

// restyle applies the attributes of an element to the style it inherits. It is
// false where the element and all in it cannot be seen.
func (r *reader) restyle(st *style, t *tag) (seen bool) {
	seen = true
	for _, a := range r.declarations(t) {
		word := strings.ToLower(a.value)
		if word == "inherit" || word == "unset" {
			continue
		}
		if a.name == "display" && word == "none" || a.name == "opacity" && isZero(word) {
			seen = false
			continue
		}
		r.property(st, a, word)
	}
	return seen
}

func isZero(word string) bool {
	n, bad := parseLength(strings.TrimSuffix(word, "%"), none, measures{})
	return bad == nil && n <= 0
}

// declarations gives the settings of an element: its style attribute beats its
// other attributes, a later declaration an earlier one. The font size comes
// first, because other lengths may be in em. They are good until those of the next
// element are asked for.
func (r *reader) declarations(t *tag) []attr {
	const few = 16 // for which looking is faster than a table
	out := r.declared[:0]
	var index map[string]int // of those after the first few
	put := func(a attr) {
		i := slices.IndexFunc(out[:min(len(out), few)], func(b attr) bool { return b.name == a.name })
		if later, ok := index[a.name]; ok {
			i = later
		}
		if i >= 0 {
			out[i] = a
			return
		}
		out = append(out, a)
		last := len(out) - 1
		if a.name == "font-size" {
			out[0], out[last] = a, out[0]
		}
		if last >= few {
			if index == nil {
				index = map[string]int{}
			}
			index[out[last].name] = last
		}
	}
	for _, a := range t.attrs {
		if a.space == "" && isProperty(a.name) {
			put(a.trimmed())
		}
	}
	if s, ok := t.attr("style"); ok {
		for _, a := range r.splitStyle(s) {
			private := a.name == "" || a.name[0] == '-'
			if !private && !(t.name == "svg" && pageProperties()[a.name]) {
				put(a)
			}
		}
	}
	r.declared = out
	return out
}

// splitStyle parts the declarations of a style attribute.
func (r *reader) splitStyle(s attr) []attr {
	text := blankComments(s.value)
	var out []attr
	for from := 0; from < len(text); {
		to := from + declarationEnd(text[from:])
		if part := text[from:to]; strings.TrimSpace(part) != "" {
			if a, ok := declaration(s, part, from); ok {
				out = append(out, a)
			} else {
				r.badValue(s, &fault{from + leading(part), "a style is written as “name: value”, parted by semicolons"}, "this part is not used")
			}
		}
		from = to + 1
	}
	return out
}

// declaration reads "name: value" that begins from bytes into s.
func declaration(s attr, part string, from int) (attr, bool) {
	colon := strings.IndexByte(part, ':')
	if colon < 0 {
		return attr{}, false
	}
	a := s
	a.name = strings.ToLower(strings.TrimSpace(part[:colon]))
	value := part[colon+1:]
	a.lead, a.value = s.lead+from+colon+1, value
	a = a.trimmed()
	if bang := strings.LastIndexByte(a.value, '!'); bang >= 0 {
		a.value = strings.TrimSpace(a.value[:bang])
	}
	return a, true
}

// trimmed is the attribute without white space around its value.
func (a attr) trimmed() attr {
	a.lead += leading(a.value)
	a.value = strings.TrimSpace(a.value)
	return a
}

func leading(s string) int { return len(s) - len(strings.TrimLeft(s, " \t\r\n\f")) }

// declarationEnd finds the semicolon that is in no quotes and no brackets.
func declarationEnd(s string) int {
	depth, quote := 0, byte(0)
	for i := 0; i < len(s); i++ {
		c := s[i]
		switch {
		case quote != 0:
			if c == quote {
				quote = 0
			}
		case c == '"' || c == '\'':
			quote = c
		case c == '(':
			depth++
		case c == ')':
			depth--
		case c == ';' && depth <= 0:
			return i
		}
	}
	return len(s)
}

// blankComments puts spaces in place of CSS comments, so that places stay true.
func blankComments(s string) string {
	var b strings.Builder
	for {
		before, after, found := strings.Cut(s, "/*")
		b.WriteString(before)
		if !found {
			return b.String()
		}
		comment, rest, closed := strings.Cut(after, "*/")
		length := len("/*") + len(comment)
		if closed {
			length += len("*/")
		}
		b.WriteString(strings.Repeat(" ", length))
		s = rest
	}
}

// dashes scales a dash list to drawing units. A list that sums to nothing is a
// solid line (SVG 1.1, 11.4); the start is brought into the first run.
func dashes(list []float64, start, scale float64) ([]float64, float64) {
	var out []float64
	sum := 0.
	for _, v := range list {
		out = append(out, min(round(v*scale), farthest))
		sum += out[len(out)-1]
	}
	if !(sum > 0) {
		return nil, 0
	}
	if len(out)%2 == 1 {
		sum *= 2
	}
	if start = math.Mod(start*scale, sum); start < 0 {
		start += sum
	}
	if start = round(start); !(start < sum) {
		start = 0
	}
	return out, start
}
