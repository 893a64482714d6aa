package size

import (
	"bytes"
	"errors"
	"io"
	"strconv"
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"

	"seamwarden/dsl/finding"
)

// Limits of one table, far above any real one.
const (
	mostBytes    = 1 << 20
	mostSizes    = 100
	mostRows     = 500 // in one part of the table
	mostFindings = 200
)

// document gives the one YAML document in the file, nil if it cannot be read.
func (r *reader) document() *yaml.Node {
	src := bytes.TrimPrefix(r.src, byteOrderMark)
	switch {
	case len(src) > mostBytes:
		r.wholeFile("The table of sizes is larger than 1 MB.", "Is it really a table of sizes?")
	case !utf8.Valid(src):
		r.notUTF8()
	default:
		return r.decode(src)
	}
	return nil
}

// decode parses. The parser is not ours, and any panic in it is a file that
// cannot be read, never the end of the program.
func (r *reader) decode(src []byte) (root *yaml.Node) {
	defer func() {
		if recover() != nil {
			root = nil
			r.wholeFile("The table of sizes cannot be read.", "")
		}
	}()
	var doc, second yaml.Node
	dec := yaml.NewDecoder(bytes.NewReader(src))
	switch err := dec.Decode(&doc); {
	case errors.Is(err, io.EOF):
		r.wholeFile("The table of sizes is empty.", "It begins with its unit and its sizes: unit: in, and sizes: [8, 10, 12].")
		return nil
	case err != nil:
		r.malformed(err)
		return nil
	}
	if doc.Kind != yaml.DocumentNode || len(doc.Content) != 1 || r.anchored(&doc) {
		return nil
	}
	switch err := dec.Decode(&second); {
	case err == nil:
		r.secondTable(&second)
		return nil
	case !errors.Is(err, io.EOF):
		r.malformed(err)
		return nil
	}
	return doc.Content[0]
}

// anchored reports the first anchor, alias or tag: they make text that stands
// in one place count in others, or change what it is.
func (r *reader) anchored(n *yaml.Node) bool {
	switch {
	case n.Kind == yaml.AliasNode || n.Anchor != "":
		r.reference(n)
		return true
	case n.Style&yaml.TaggedStyle != 0:
		r.tagged(n)
		return true
	}
	for _, c := range n.Content {
		if r.anchored(c) {
			return true
		}
	}
	return false
}

var (
	errorLine    = lazily(`line (\d+): `)
	unknownAlias = lazily(`unknown anchor '(.*)' referenced`)
)

// trouble is the place that a message of the parser speaks of. It counts its
// lines from 0 where it parses and from 1 where it scans, and names none for the
// first line, for an unknown alias, or for a character that text cannot have.
func (r *reader) trouble(err error) finding.Span {
	msg := err.Error()
	if m := unknownAlias().FindStringSubmatch(msg); m != nil {
		if at := bytes.Index(r.src, []byte("*"+m[1])); at >= 0 {
			return r.span(at, at+1+len(m[1]))
		}
	}
	if strings.Contains(msg, "control characters") {
		at := max(0, bytes.IndexFunc(r.src, isControl))
		return r.span(at, at+1)
	}
	line := 1
	if m := errorLine().FindStringSubmatch(msg); m != nil {
		line, _ = strconv.Atoi(m[1]) // only digits; too large a number is held to the last line
		if strings.Contains(msg, "did not find expected") {
			line++
		}
	}
	return r.line(line)
}

// isControl says which characters YAML text cannot have (YAML 1.1, 5.1).
func isControl(c rune) bool {
	return c < ' ' && c != '\t' && c != '\n' && c != '\r' || c >= 0x7f && c < 0xa0 && c != 0x85 || c == 0xfffe || c == 0xffff
}

// entry is a key of a mapping with its value.
type entry struct {
	key   string
	node  *yaml.Node
	value *yaml.Node
}

// entries gives the keys of a mapping in their order. A key that stands twice,
// is not text or is not among those allowed is reported and left out; allowed
// is nil where any name will do.
func (r *reader) entries(n *yaml.Node, where string, allowed []string) []entry {
	var out []entry
	seen := map[string]*yaml.Node{}
	for i := 0; i+1 < len(n.Content); i += 2 {
		if r.full() {
			break
		}
		k, v := n.Content[i], n.Content[i+1]
		switch first := seen[k.Value]; {
		case k.Kind != yaml.ScalarNode || allowed == nil && !keyForm(k.Value):
			r.badKey(k, where)
		case first != nil:
			r.repeatedKey(k, first)
		case allowed != nil && !contains(allowed, k.Value):
			r.unknownKey(k, where, allowed)
		default:
			seen[k.Value] = k
			out = append(out, entry{k.Value, k, v})
		}
	}
	return out
}

// keyForm is how the source can name a row, sizes.back-length: a letter, then
// letters and digits, with single hyphens between them.
func keyForm(key string) bool {
	before := '-'
	for i, c := range key {
		switch {
		case c >= 'a' && c <= 'z', c >= 'A' && c <= 'Z':
		case i > 0 && c >= '0' && c <= '9':
		case i > 0 && c == '-' && before != '-':
		default:
			return false
		}
		before = c
	}
	return before != '-'
}
