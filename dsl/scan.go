package dsl

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"seamwarden/dsl/finding"
)

// scanner walks over the source once. It never fails: what it cannot place
// becomes a token with a Fault in plain words. Each search ahead is bounded by
// what it then takes, or is remembered, so that time grows with the file and no
// faster, whatever the file holds.
type scanner struct {
	src       string
	at        int // offset of the next character
	line      int
	lineStart int
	wide      int // bytes on this line that are not the first of a character
	indent    int
	fresh     bool // no token yet on this line
	blank     bool
	curlyless int  // no ” stands before this offset
	starless  bool // no */ stands in the rest of the file
	out       []Token
}

const byteOrderMark = "\ufeff"

// scan cuts source into tokens; the last one is EOF. It stops after maxTokens.
func scan(src string) []Token {
	s := &scanner{src: src, line: 1, fresh: true, out: make([]Token, 0, min(len(src)/5, maxTokens)+8)}
	if strings.HasPrefix(src, byteOrderMark) {
		s.at, s.lineStart = len(byteOrderMark), len(byteOrderMark)
	}
	for s.next() && len(s.out) < maxTokens {
	}
	return s.out
}

func (s *scanner) pos() finding.Pos {
	return finding.Pos{Offset: s.at, Line: s.line, Column: s.at - s.lineStart - s.wide + 1}
}

// newline moves past a line end that has just been read.
func (s *scanner) newline() {
	s.line++
	s.lineStart, s.wide = s.at, 0
}

// skip moves n bytes on, keeping count of lines and characters.
func (s *scanner) skip(n int) {
	for end := s.at + n; s.at < end; {
		c := s.src[s.at]
		s.at++
		switch {
		case c == '\n':
			s.newline()
		case c >= 0x80 && c < 0xC0:
			s.wide++
		}
	}
}

// space moves over white space and notes line starts, blank lines and how far
// the line is indented.
func (s *scanner) space() {
	for s.at < len(s.src) {
		if s.src[s.at] == '\n' {
			if s.fresh && s.line > 1 {
				s.blank = true
			}
			s.at++
			s.newline()
			s.fresh = true
			continue
		}
		n := blankLen(s.src[s.at:])
		if n == 0 {
			break
		}
		s.skip(n)
	}
	if s.fresh {
		s.indent = width(s.src[s.lineStart:s.at])
	}
}

// blankLen measures one blank that does not end a line: a space, a tab, the
// no-break and thin spaces that a word processor leaves behind.
func blankLen(s string) int {
	if s == "" || s[0] == '\n' {
		return 0
	}
	if s[0] < 0x80 {
		if s[0] == ' ' || s[0] >= '\t' && s[0] <= '\r' {
			return 1
		}
		return 0
	}
	if r, n := utf8.DecodeRuneInString(s); unicode.IsSpace(r) {
		return n
	}
	return 0
}

// width measures an indentation. A tab goes to the next multiple of four, so that
// a line with one tab more stands further in than its neighbour with spaces.
func width(blanks string) int {
	n := 0
	for _, r := range blanks {
		if r == '\t' {
			n += 4 - n%4
		} else {
			n++
		}
	}
	return n
}

// indentOf measures how far the first word of a line stands from the margin.
func indentOf(line string) int {
	n := 0
	for n < len(line) && blankLen(line[n:]) > 0 {
		n += blankLen(line[n:])
	}
	return width(line[:n])
}

func (s *scanner) next() bool {
	s.space()
	if s.at >= len(s.src) {
		s.emit(EOF, 0, "")
		return false
	}
	rest := s.src[s.at:]
	c := rest[0]
	r, size := utf8.DecodeRuneInString(rest)
	switch {
	case strings.HasPrefix(rest, "//"):
		s.emit(Comment, lineLen(rest), "")
	case c == '#' && digits(rest[1:]) > 0:
		s.emitMended(Number, 1+digits(rest[1:]), hashNumber)
	case c == '#':
		s.emit(Comment, lineLen(rest), hashComment)
	case strings.HasPrefix(rest, "/*"):
		s.starComment(rest)
	case strings.HasPrefix(rest, `"""`):
		s.prose(rest)
	case c == '"':
		s.straight(rest)
	case r == '“' || r == '”' || r == '„':
		s.curly(rest, size)
	case isApostrophe(r):
		s.apostrophes(rest, size)
	case c >= '0' && c <= '9' || isFraction(r):
		s.number(rest)
	case unicode.IsLetter(r) || c == '_':
		s.word(rest)
	case strings.IndexByte("{}(),;=.:", c) >= 0:
		s.emit(Punct, 1, "")
	default:
		s.emit(Bad, badLen(rest), strangeSign)
	}
	return true
}

func (s *scanner) emit(k Kind, n int, fault string) {
	t := Token{Kind: k, Text: s.src[s.at : s.at+n], Start: s.pos(), First: s.fresh, Indent: int32(s.indent), Blank: s.blank}
	if fault != "" {
		t.flaw = &flaw{fault: fault}
	}
	s.skip(n)
	s.fresh, s.blank = false, false
	s.out = append(s.out, t)
}

// emitMended makes a token that is taken for something else than it says.
func (s *scanner) emitMended(k Kind, n int, fault string) {
	s.emit(k, n, fault)
	t := &s.out[len(s.out)-1]
	t.mendAs(meant(k, t.Text))
}

// lineLen measures the rest of the line without blanks at its end.
func lineLen(s string) int {
	if i := strings.IndexByte(s, '\n'); i >= 0 {
		s = s[:i]
	}
	return len(strings.TrimRight(s, " \t\r"))
}

// starComment reads a comment as other languages write it.
func (s *scanner) starComment(rest string) {
	n := lineLen(rest)
	if !s.starless {
		if i := strings.Index(rest[2:], "*/"); i >= 0 {
			n = 2 + i + 2
		} else {
			s.starless = true
		}
	}
	s.emit(Comment, n, starComment)
}

// word reads a name. A dash that stands where the hyphen of a name should, as in
// over–front, is taken for it.
func (s *scanner) word(rest string) {
	n := wordLen(rest)
	plain := true
	for n < len(rest) {
		r, size := utf8.DecodeRuneInString(rest[n:])
		next, _ := utf8.DecodeRuneInString(rest[n+size:])
		if !isDash(r) || !unicode.IsLetter(next) && !unicode.IsDigit(next) {
			break
		}
		plain = false
		n += size + wordLen(rest[n+size:])
	}
	if plain {
		s.emit(Word, n, "")
		return
	}
	s.emitMended(Word, n, dashInName)
}

// isDash knows the dashes and hyphens of Unicode other than the plain one.
func isDash(r rune) bool { return r >= '\u2010' && r <= '\u2015' || r == '\u2212' }

// wordLen measures a name: letters, digits and hyphens, as in over-front.
func wordLen(s string) int {
	n := 0
	for n < len(s) && plainInWord[s[n]] {
		n++
	}
	if n == len(s) || s[n] < utf8.RuneSelf {
		return n
	}
	for i, r := range s {
		if !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '-' && r != '_' && !unicode.IsMark(r) {
			return i
		}
	}
	return len(s)
}

// plainInWord are the plain letters, digits and signs of a name; most names have
// no others, and looking them up is faster than asking unicode.
var plainInWord = func() (in [256]bool) {
	for c := range in {
		in[c] = c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c == '-' || c == '_'
	}
	return in
}()

// badLen takes a run of strange signs together, so that one slip gives one report.
func badLen(s string) int {
	for i, r := range s {
		if i > 0 && !isStrange(r) {
			return i
		}
	}
	return len(s)
}

// isStrange reports whether a sign belongs to no token of the language.
func isStrange(r rune) bool {
	switch {
	case unicode.IsLetter(r), unicode.IsSpace(r), isFraction(r), isApostrophe(r), r >= '0' && r <= '9':
		return false
	}
	return !strings.ContainsRune("{}(),;=.:\"/_#“”„", r)
}
