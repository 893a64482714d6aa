package dsl

import "strings"

// manyLines are the blocks that are always set on several lines.
var manyLines = set("pattern piece section step method make")

// oneLine gives a sentence with its block as one line, if that is how it is set:
// a block that holds no comment and no text, and is short enough.
func (p *printer) oneLine(s *Sentence, indent int) (line string, fits bool) {
	if !s.HasBody || len(s.Body) == 0 {
		return "", false
	}
	l := &lineBuilder{room: oneLineWidth - indent}
	if l.sentence(s) {
		return l.out.String(), true
	}
	return "", false
}

// lineBuilder tries to set a sentence on one line of limited room.
type lineBuilder struct {
	out  strings.Builder
	room int
}

func (l *lineBuilder) add(text string) bool {
	l.room -= characters(text)
	l.out.WriteString(text)
	return l.room >= 0
}

// sentence adds a sentence, or gives up.
func (l *lineBuilder) sentence(s *Sentence) bool {
	if s.OpenNote != nil || len(s.BodyEnd) > 0 || s.HasBody && !mayBeOneLine(s) || !l.words(s.Head) {
		return false
	}
	if !s.HasBody {
		return true
	}
	if len(s.Head) > 0 && !l.add(" ") || !l.add("{ ") {
		return false
	}
	for i, inner := range s.Body {
		if len(inner.Doc) > 0 || inner.Trailing != nil || i > 0 && !l.add("; ") || !l.sentence(inner) {
			return false
		}
	}
	if len(s.Body) > 0 && !l.add(" ") || !l.add("}") {
		return false
	}
	return len(s.Tail) == 0 || l.add(" ") && l.words(s.Tail)
}

func (l *lineBuilder) words(toks []Token) bool {
	for i, t := range toks {
		if t.Kind == Prose || i > 0 && spaced(toks[i-1], t) && !l.add(" ") || !l.add(plain(t)) {
			return false
		}
	}
	return true
}

// mayBeOneLine reports whether a block is of a kind that is set on one line. One
// that the language does not know stays as its author set it.
func mayBeOneLine(s *Sentence) bool {
	if w := s.First(); manyLines[w] {
		return false
	} else if opensBlock[w] {
		return true
	}
	return len(s.Body) == 0 || s.Open.Start.Line == s.Close.Start.Line
}

// segment writes words that stay on one line. at is how many words of the
// sentence stand before them.
func (p *printer) segment(toks []Token, at, indent int) {
	for i, t := range toks {
		if i > 0 && spaced(toks[i-1], t) {
			p.write(" ")
		}
		switch {
		case t.Kind != Prose:
			p.write(plain(t))
		case at+i == 0:
			p.prose(t, indent, indent)
		default:
			p.prose(t, indent, indent+indentStep)
		}
	}
}

// prose writes a text block: its fences at the indentation of the sentence, its
// text at that or, where the sentence has other words before it, a step further in.
func (p *printer) prose(t Token, indent, textIndent int) {
	p.write(fence)
	text, _ := Dedent(t.Text)
	for line := range strings.SplitSeq(text, "\n") {
		if line == "" {
			if text != "" {
				p.gap()
			}
			continue
		}
		p.line(textIndent)
		p.write(line)
	}
	p.line(indent)
	p.write(fence)
}

// plain gives a token as it is printed.
func plain(t Token) string {
	switch {
	case t.Fault() != "":
		return t.Text
	case t.Kind == String:
		return straightQuotes(t.Text)
	case t.Kind == Number || t.Kind == Measure:
		return plainNumber(t.Text)
	}
	return t.Text
}

// spaced reports whether a space stands between two neighbours.
func spaced(before, t Token) bool {
	switch {
	case t.Kind == Prose:
		return true
	case before.Is("."):
		return t.Kind != Word && t.Kind != Punct
	case before.Is("("):
		return false
	case t.Kind == Punct:
		return t.Is("(") || t.Is("=")
	}
	return true
}
