package figure

import (
	"bytes"
	"encoding/xml"
	"sort"
	"strconv"
	"unicode/utf8"

	"seamwarden/dsl/finding"
)

// byteOrderMark is what some editors put before UTF-8 text.
var byteOrderMark = []byte("\xef\xbb\xbf")

// source turns byte offsets of the file into places that a person can find.
type source struct {
	file  string
	src   []byte
	lines []int       // where each line begins; nil until a place is asked for
	last  finding.Pos // the place asked for last, to count on from in a long line
}

func newSource(file string, src []byte) *source {
	return &source{file: file, src: src}
}

// divide finds the lines.
func (s *source) divide() {
	s.lines = append(make([]int, 0, bytes.Count(s.src, []byte("\n"))+1), 0)
	for at := 0; ; {
		i := bytes.IndexByte(s.src[at:], '\n')
		if i < 0 {
			return
		}
		at += i + 1
		s.lines = append(s.lines, at)
	}
}

func (s *source) pos(offset int) finding.Pos {
	if s.lines == nil {
		s.divide()
	}
	offset = max(0, min(offset, len(s.src)))
	line := s.line(offset)
	from := finding.Pos{Offset: s.lines[line], Line: line + 1, Column: 1}
	if line == 0 && bytes.HasPrefix(s.src[:offset], byteOrderMark) {
		from.Offset = len(byteOrderMark)
	}
	if s.last.Line == from.Line && s.last.Offset >= from.Offset && s.last.Offset <= offset {
		from = s.last
	}
	from.Column += utf8.RuneCount(s.src[from.Offset:offset])
	from.Offset = offset
	s.last = from
	return from
}

// line gives the number of the line, from 0, in which an offset lies. Most places that
// are asked for lie on the line of the one before.
func (s *source) line(offset int) int {
	if last := s.last.Line; last > 0 && s.lines[last-1] <= offset && (last == len(s.lines) || offset < s.lines[last]) {
		return last - 1
	}
	return sort.SearchInts(s.lines, offset+1) - 1
}

func (s *source) span(from, to int) finding.Span {
	return finding.Span{File: s.file, Start: s.pos(from), End: s.pos(max(from, to))}
}

// tag is a start tag with the places of its parts.
type tag struct {
	text        *source
	space, name string
	from, to    int // "<name"
	attrs       []attr
}

func (t *tag) span() finding.Span { return t.text.span(t.from, t.to) }

// attr finds an attribute that has no namespace.
func (t *tag) attr(name string) (attr, bool) {
	for _, a := range t.attrs {
		if a.space == "" && a.name == name {
			return a, true
		}
	}
	return attr{}, false
}

// attr is an attribute, or one declaration inside a style attribute. Value is
// decoded; from and to are where the whole attribute's value stands in the
// file, lead is how many decoded bytes of it come before Value.
type attr struct {
	text        *source
	space, name string
	value       string
	from, to    int
	lead        int
}

// span is the place of the value.
func (a attr) span() finding.Span { return a.spanAt(0, len(a.value)) }

// spanAt is the place of the bytes from i up to j of the value.
func (a attr) spanAt(i, j int) finding.Span {
	raw := a.text.src[a.from:a.to]
	return a.text.span(a.from+rawIndex(raw, a.lead+i), a.from+rawIndex(raw, a.lead+j))
}

// rawIndex finds where the decoded byte with the number n stands in the text as
// it was written, in which "&amp;" is five bytes and a line end may be two.
func rawIndex(raw []byte, n int) int {
	i := 0
	for n > 0 && i < len(raw) {
		switch {
		case raw[i] == '&':
			name, _, _ := bytes.Cut(raw[i+1:], []byte(";"))
			n -= decodedLength(name)
			i = min(i+len(name)+2, len(raw))
		case raw[i] == '\r' && i+1 < len(raw) && raw[i+1] == '\n':
			i, n = i+2, n-1
		default:
			i, n = i+1, n-1
		}
	}
	return i
}

// decodedLength is how many bytes a character reference stands for.
func decodedLength(name []byte) int {
	digits, base := bytes.TrimPrefix(name, []byte("#")), 10
	if len(digits) == len(name) || len(digits) == 0 {
		return 1 // the five named ones
	}
	if digits[0] == 'x' {
		digits, base = digits[1:], 16
	}
	r, err := strconv.ParseUint(string(digits), base, 32)
	if err != nil || utf8.RuneLen(rune(r)) < 0 {
		return 1
	}
	return utf8.RuneLen(rune(r))
}

// newTag joins a start tag with the places of its attributes. The bytes from
// from to to are the tag, which the decoder has already found well formed.
func newTag(text *source, el xml.StartElement, from, to int) tag {
	raw := text.src[from:to]
	nameEnd := 1 + bytes.IndexAny(raw[1:], " \t\r\n/>")
	t := tag{text: text, space: el.Name.Space, name: el.Name.Local, from: from, to: from + max(1, nameEnd), attrs: make([]attr, 0, len(el.Attr))}
	at := max(1, nameEnd)
	for _, a := range el.Attr {
		start, end := valuePlace(raw, at)
		t.attrs = append(t.attrs, attr{text: text, space: a.Name.Space, name: a.Name.Local, value: a.Value, from: from + start, to: from + end})
		at = min(end+1, len(raw))
	}
	return t
}

// valuePlace finds the next quoted value at or after at.
func valuePlace(raw []byte, at int) (start, end int) {
	open := bytes.IndexAny(raw[at:], `"'`)
	if open < 0 {
		return at, at
	}
	start = at + open + 1
	length := bytes.IndexByte(raw[start:], raw[start-1])
	if length < 0 {
		return start, len(raw)
	}
	return start, start + length
}
