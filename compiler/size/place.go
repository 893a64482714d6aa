package size

import (
	"bytes"
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"

	"seamwarden/dsl/finding"
)

// places turns the lines and columns of YAML nodes into places in the file.
//
// YAML counts more characters as line ends than an editor does (NEL, and the
// Unicode separators), so its lines are only used to find the byte; lines and
// columns that people see are then counted by line feeds.
type places struct {
	file  string
	src   []byte // with its byte-order mark, if it has one
	yaml  []int  // where each of YAML's lines begins
	lines []int  // where each line begins

	// What was asked for last, to count on from in a long line: a table may stand
	// in one.
	lastPos  finding.Pos
	lastNode finding.Pos // by YAML's lines
}

var byteOrderMark = []byte("\xef\xbb\xbf")

func newPlaces(file string, src []byte) *places {
	first := 0
	if bytes.HasPrefix(src, byteOrderMark) {
		first = len(byteOrderMark)
	}
	p := &places{file: file, src: src, yaml: []int{first}, lines: []int{first}}
	for i := first; i < len(src); {
		r, n := utf8.DecodeRune(src[i:])
		i += n
		cut := r == '\r' && i < len(src) && src[i] == '\n' // the line ends with the line feed
		if strings.ContainsRune("\n\r\u0085\u2028\u2029", r) && !cut {
			p.yaml = append(p.yaml, i)
		}
		if r == '\n' {
			p.lines = append(p.lines, i)
		}
	}
	return p
}

// pos is the place of a byte.
func (p *places) pos(offset int) finding.Pos {
	offset = max(p.lines[0], min(offset, len(p.src)))
	line := len(p.lines) - 1
	for lo, hi := 0, len(p.lines); lo < hi; {
		mid := (lo + hi) / 2
		if p.lines[mid] <= offset {
			line, lo = mid, mid+1
		} else {
			hi = mid
		}
	}
	from := finding.Pos{Offset: p.lines[line], Line: line + 1, Column: 1}
	if p.lastPos.Line == from.Line && p.lastPos.Offset <= offset {
		from = p.lastPos
	}
	from.Column += utf8.RuneCount(p.src[from.Offset:offset])
	from.Offset = offset
	p.lastPos = from
	return from
}

func (p *places) span(from, to int) finding.Span {
	return finding.Span{File: p.file, Start: p.pos(from), End: p.pos(max(from, to))}
}

// line is the whole of one of YAML's lines, without blanks around it.
func (p *places) line(number int) finding.Span {
	number = max(1, min(number, len(p.yaml)))
	from, to := p.yaml[number-1], len(p.src)
	if number < len(p.yaml) {
		to = p.yaml[number]
	}
	text := p.src[from:to]
	from += len(text) - len(bytes.TrimLeft(text, " \t"))
	return p.span(from, from+len(bytes.TrimSpace(text)))
}

// offset is the byte at which a node begins.
func (p *places) offset(n *yaml.Node) int {
	line := max(1, min(n.Line, len(p.yaml)))
	from := finding.Pos{Offset: p.yaml[line-1], Line: line, Column: 1}
	if p.lastNode.Line == line && p.lastNode.Column <= n.Column {
		from = p.lastNode
	}
	for ; from.Column < n.Column; from.Column++ {
		_, size := utf8.DecodeRune(p.src[from.Offset:])
		from.Offset += size
	}
	p.lastNode = from
	return from.Offset
}

// node is the place of a node: all of a scalar on one line, the first
// character of anything larger.
func (p *places) node(n *yaml.Node) finding.Span {
	from := p.offset(n)
	return p.span(from, from+p.length(n, from))
}

// text is the place of a scalar without its quotation marks.
func (p *places) text(n *yaml.Node) finding.Span {
	from := p.offset(n)
	length := p.length(n, from)
	if quoted(n) && length >= 2 {
		return p.span(from+1, from+length-1)
	}
	return p.span(from, from+length)
}

// length is how many bytes of the file a node takes.
func (p *places) length(n *yaml.Node, from int) int {
	rest := p.src[from:]
	switch {
	case n.Kind == yaml.ScalarNode && quoted(n):
		return quotedLength(rest)
	case n.Kind == yaml.ScalarNode && n.Value != "" && bytes.HasPrefix(rest, []byte(n.Value)):
		return len(n.Value)
	case len(rest) > 0 && rest[0] >= ' ':
		_, size := utf8.DecodeRune(rest)
		return size
	}
	return 0
}

// quotedLength measures a quoted scalar with its quotation marks, up to the end
// of its first line.
func quotedLength(rest []byte) int {
	for i := 1; i < len(rest) && rest[i] != '\n'; i++ {
		switch {
		case rest[0] == '"' && rest[i] == '\\':
			i++
		case rest[i] == rest[0] && rest[0] == '\'' && i+1 < len(rest) && rest[i+1] == '\'':
			i++
		case rest[i] == rest[0]:
			return i + 1
		}
	}
	return min(1, len(rest))
}

func quoted(n *yaml.Node) bool {
	return n.Style&(yaml.DoubleQuotedStyle|yaml.SingleQuotedStyle) != 0
}
