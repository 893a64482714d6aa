package dsl

import "strings"

// The measures of the canonical form, in characters.
const (
	indentStep   = 2   // for each block
	hangStep     = 4   // a line that goes on with the sentence above it
	lineWidth    = 110 // a longer sentence goes on in the next line
	oneLineWidth = 100 // a longer block is set on several lines
)

// Format writes a file in its one canonical form. It works from tokens, so that a
// sentence that could not be read is printed as it stands and no comment is lost.
// A file with a brace, a quotation mark or a text block that has no partner, or
// one that could not be read at all, is given back as it was and ok is false.
func Format(f *File) (out []byte, ok bool) {
	if f.torn {
		return []byte(f.Source), false
	}
	p := &printer{}
	p.block(topBlock, f.Sentences, f.End, f.EndBlank, 0)
	return []byte(p.out.String()), true
}

// printer writes lines. column is how many characters the current one has.
type printer struct {
	out    strings.Builder
	column int
}

func (p *printer) write(s string) {
	p.out.WriteString(s)
	p.column += characters(s)
}

// line ends the current line and indents the next one.
func (p *printer) line(indent int) {
	if p.out.Len() > 0 {
		p.out.WriteByte('\n')
	}
	p.out.WriteString(strings.Repeat(" ", indent))
	p.column = indent
}

// gap leaves a line empty.
func (p *printer) gap() { p.out.WriteByte('\n') }

// block writes sentences and the comments after them, each on lines of its own,
// and ends the last line.
func (p *printer) block(name string, body []*Sentence, rest []Token, restBlank bool, indent int) {
	p.sentences(name, body, indent)
	for i, c := range rest {
		blank := restBlank
		if i > 0 {
			blank = c.Blank
		} else if len(body) > 0 && holdsPieces(name) {
			blank = blank || p.spread(body[len(body)-1], indent)
		}
		if blank && (i > 0 || len(body) > 0) {
			p.gap()
		}
		p.line(indent)
		p.write(comment(c))
	}
	if name == topBlock && p.out.Len() > 0 {
		p.out.WriteByte('\n')
	}
}

func (p *printer) sentences(name string, body []*Sentence, indent int) {
	var before *Sentence
	apart := false
	for i, s := range body {
		oneLine, fits := p.oneLine(s, indent)
		spread := spreads(s, fits)
		if before != nil && (s.Blank || holdsPieces(name) && (apart || spread) || name == "section" && s.First() == "step") {
			p.gap()
		}
		p.lead(s, indent)
		p.line(indent)
		switch {
		case fits:
			p.write(oneLine)
		default:
			p.sentence(s, indent)
		}
		if i+1 < len(body) && needsStop(name, s, body[i+1]) {
			p.write(";")
		}
		if s.Trailing != nil {
			p.write("  " + comment(*s.Trailing))
		}
		before, apart = s, spread
	}
}

// lead writes the comments above a sentence: its own, then those that stood
// between its words.
func (p *printer) lead(s *Sentence, indent int) {
	first := s.opening()
	own := 0
	for i, c := range s.Doc {
		inside := c.Start.Offset > first.Start.Offset
		if !inside {
			own++
		}
		blank := c.Blank && !inside
		if inside && i == own {
			blank = first.Blank
		}
		if i > 0 && blank {
			p.gap()
		}
		p.line(indent)
		p.write(comment(c))
	}
	if own > 0 && own == len(s.Doc) && first.Blank {
		p.gap()
	}
}

// sentence writes a sentence that takes several lines or has no block.
func (p *printer) sentence(s *Sentence, indent int) {
	if !s.HasBody {
		p.words(s.Head, indent, true, "")
		return
	}
	p.words(s.Head, indent, true, "{")
	if len(s.Body) == 0 && s.OpenNote == nil && len(s.BodyEnd) == 0 {
		p.write(" }")
	} else {
		if s.OpenNote != nil {
			p.write("  " + comment(*s.OpenNote))
		}
		p.block(s.block(), s.Body, s.BodyEnd, s.EndBlank, indent+indentStep)
		p.line(indent)
		p.write("}")
	}
	if len(s.Tail) > 0 {
		p.write(" ")
		p.words(s.Tail, indent, false, "")
	}
}

// comment gives a comment as written, with plain line ends.
func comment(c Token) string { return strings.ReplaceAll(c.Text, "\r\n", "\n") }

// spread reports whether a sentence is set on several lines for its block or its
// text, and so stands apart from its neighbours.
func (p *printer) spread(s *Sentence, indent int) bool {
	_, fits := p.oneLine(s, indent)
	return spreads(s, fits)
}

func spreads(s *Sentence, fits bool) bool {
	return !fits && (s.HasBody && (len(s.Body) > 0 || s.OpenNote != nil || len(s.BodyEnd) > 0)) || hasProse(s.Head) || hasProse(s.Tail)
}

func hasProse(toks []Token) bool {
	for _, t := range toks {
		if t.Kind == Prose {
			return true
		}
	}
	return false
}

// needsStop reports whether a sentence would swallow the next one if it did not
// end in a semicolon.
func needsStop(block string, s, next *Sentence) bool {
	words := s.Head
	if s.HasBody {
		words = s.Tail
	}
	if len(next.Head) == 0 {
		return !s.HasBody
	}
	if len(words) == 0 || !endsOpen(words) {
		return false
	}
	second := Token{First: true}
	if len(next.Head) > 1 {
		second = next.Head[1]
		second.First = false
	}
	return !begins(block, next.Head[0], second)
}
