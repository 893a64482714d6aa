package figure

import (
	"bytes"
	"strings"
	"unicode/utf8"
)

// plain reads drawings as most are written: SVG's own elements without prefixes,
// and text without references. It gives the reader what encoding/xml would, with
// the same places, in a tenth of the time; where anything else stands it gives up,
// and the file is read again with encoding/xml, which knows all of XML and says
// what is wrong.
type plain struct {
	r     *reader
	src   string
	at    int
	space string   // the namespace of the elements
	open  []string // the elements around this place
	tag   tag      // the start tag that is read; good until the next one
	attrs []attr   // room for its attributes
}

// readPlain is false, and leaves the reader in no good state, if the file is not
// plain.
func (r *reader) readPlain(src []byte) bool {
	if !plainBytes(src) {
		return false
	}
	p := &plain{r: r, src: string(src)}
	p.declaration()
	for !r.stopped {
		from := p.at
		p.at += cut(p.src[p.at:], "<")
		if p.at > from {
			r.characters(src[from:p.at:p.at], from, p.at)
		}
		if p.at == len(p.src) {
			return len(p.open) == 0 && r.out != nil
		}
		if !r.stopped && !p.markup() {
			return false
		}
	}
	return true
}

// plainBytes reports whether every byte of a file may stand in plain text: no
// control characters, no reference, no line end that is not a single \n, no end of a
// CDATA section, and no character from U+F000 up, where some are forbidden.
func plainBytes(src []byte) bool {
	if bytes.Contains(src, []byte("]]>")) {
		return false
	}
	for _, c := range src {
		if c < ' ' && c != '\n' && c != '\t' || c == '&' || c == 0xef {
			return false
		}
	}
	return true
}

// cut gives how far it is to a text, or to the end.
func cut(s, text string) int {
	if i := strings.Index(s, text); i >= 0 {
		return i
	}
	return len(s)
}

// declaration passes over the declaration that XML may begin with, as it is usually
// written.
func (p *plain) declaration() {
	for _, encoding := range [...]string{"UTF-8", "utf-8"} {
		text := `<?xml version="1.0" encoding="` + encoding + `"?>`
		if strings.HasPrefix(p.src, text) {
			p.at = len(text)
		}
	}
}

func (p *plain) take(text string) bool {
	if !strings.HasPrefix(p.src[p.at:], text) {
		return false
	}
	p.at += len(text)
	return true
}

// markup reads a tag or a comment.
func (p *plain) markup() bool {
	switch {
	case p.take("<!--"):
		p.at += cut(p.src[p.at:], "--")
		return p.take("-->")
	case p.take("</"):
		return p.close()
	}
	return p.start()
}

// close reads an end tag behind its first two signs.
func (p *plain) close() bool {
	last := len(p.open) - 1
	name := p.name()
	p.blanks()
	if last < 0 || name != p.open[last] || !p.take(">") {
		return false
	}
	p.end()
	return true
}

func (p *plain) end() {
	p.open = p.open[:len(p.open)-1]
	p.r.end()
}

// start reads a start tag. Its place outlives it, its attributes do not.
func (p *plain) start() bool {
	p.tag, p.attrs = tag{text: p.r.text, from: p.at}, p.attrs[:0]
	t := &p.tag
	p.at++
	t.name = p.name()
	t.to = p.at
	if t.name == "" || p.r.finished {
		return false
	}
	for p.blanks() {
		if c := p.peek(); c == '>' || c == '/' {
			break
		}
		if !p.attribute() {
			return false
		}
	}
	t.attrs = p.attrs
	empty := p.take("/")
	if !p.take(">") || !p.namespace(t) {
		return false
	}
	p.open = append(p.open, t.name)
	p.r.start(t)
	if empty && !p.r.stopped {
		p.end()
	}
	return true
}

// namespace takes the namespace from the outermost tag; elsewhere none may be named.
func (p *plain) namespace(t *tag) bool {
	if a, ok := t.attr("xmlns"); ok {
		if len(p.open) > 0 || a.value != svgSpace {
			return false
		}
		p.space = svgSpace
	}
	t.space = p.space
	return true
}

// attribute reads a name and a quoted value.
func (p *plain) attribute() bool {
	a := attr{text: p.r.text, name: p.name()}
	p.blanks()
	if a.name == "" || !p.take("=") {
		return false
	}
	p.blanks()
	quote := p.peek()
	if quote != '"' && quote != '\'' {
		return false
	}
	p.at++
	a.from = p.at
	length := strings.IndexByte(p.src[p.at:], quote)
	if length < 0 {
		return false
	}
	a.to = a.from + length
	a.value = p.src[a.from:a.to]
	p.at = a.to + 1
	p.attrs = append(p.attrs, a)
	return strings.IndexByte(a.value, '<') < 0
}

// name reads a name in plain letters, without a prefix; "" if none stands here.
func (p *plain) name() string {
	from := p.at
	for ; p.at < len(p.src); p.at++ {
		c := p.src[p.at]
		if !isLetter(c) && c != '_' && (p.at == from || !isDigit(c) && c != '-' && c != '.') {
			break
		}
	}
	if c := p.peek(); c == ':' || c >= utf8.RuneSelf {
		return ""
	}
	return p.src[from:p.at]
}

// blanks passes over white space, and says whether there was any.
func (p *plain) blanks() bool {
	from := p.at
	for c := p.peek(); c == ' ' || c == '\n' || c == '\t'; c = p.peek() {
		p.at++
	}
	return p.at > from
}

// peek is the next byte, 0 at the end.
func (p *plain) peek() byte {
	if p.at == len(p.src) {
		return 0
	}
	return p.src[p.at]
}
