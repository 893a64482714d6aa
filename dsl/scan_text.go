package dsl

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// straight reads a string from a straight quotation mark to the next one on the
// line. Curly ones inside it are text; only where no straight one follows may a
// curly one close it.
func (s *scanner) straight(rest string) {
	if s.onlyCloses(rest) {
		s.emit(String, 1, quoteShut)
		return
	}
	curly := 0
	for i := 1; i < len(rest) && rest[i] != '\n'; {
		r, n := utf8.DecodeRuneInString(rest[i:])
		switch {
		case r == '\\' && i+1 < len(rest) && rest[i+1] != '\n':
			_, escaped := utf8.DecodeRuneInString(rest[i+1:])
			n += escaped
		case r == '"' && opensAgain(rest, i):
			s.emit(String, unfinishedLen(rest[:i]), quoteOpen)
			return
		case r == '"':
			s.emit(String, i+n, "")
			return
		case r == '”' && curly == 0:
			curly = i + n
		}
		i += n
	}
	if curly > 0 {
		s.emit(String, curly, "")
	} else if n := overLines(rest); n > 0 {
		s.emitMended(String, n, quoteOverLines)
	} else {
		s.emit(String, brokenLen(rest), quoteOpen)
	}
}

// onlyCloses reports whether a quotation mark looks like the end of a text and not
// like the beginning of one: right after a word, and not before one.
func (s *scanner) onlyCloses(rest string) bool {
	before, _ := utf8.DecodeLastRuneInString(s.src[:s.at])
	after, _ := utf8.DecodeRuneInString(rest[1:])
	return (inText(before) || before == '.') && !inText(after) && after != '"'
}

func inText(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) }

// longestBroken is how far a text that was broken over lines is looked for.
const longestBroken = 400

// overLines measures a text that somebody broke over two or three lines: nothing
// but words up to the next quotation mark, which ends a word. It gives 0 if the
// text looks otherwise.
func overLines(rest string) int {
	lines := 0
	for i := 1; i < min(len(rest), longestBroken) && lines < 3; i++ {
		switch c := rest[i]; {
		case c == '"':
			after, _ := utf8.DecodeRuneInString(rest[i+1:])
			if rest[i-1] == ' ' || rest[i-1] == '\n' || inText(after) || after == '"' {
				return 0
			}
			return i + 1
		case c == '\n':
			lines++
			if next := strings.TrimLeft(rest[i:], " \t\r\n"); opensSentence(next[:wordLen(next)]) {
				return 0
			}
		case c == '{' || c == '}' || c == '\\' || c == '/' && rest[i-1] == '/':
			return 0
		}
	}
	return 0
}

// curly reads a string that a word processor has set in curly quotation marks.
// A straight mark inside it is the sign for inches, unless no curly one follows.
func (s *scanner) curly(rest string, open int) {
	other, i := 0, open
	for i < len(rest) && rest[i] != '\n' && (other == 0 || s.at+i >= s.curlyless) {
		r, n := utf8.DecodeRuneInString(rest[i:])
		switch {
		case r == '\\' && i+1 < len(rest) && rest[i+1] != '\n':
			_, escaped := utf8.DecodeRuneInString(rest[i+1:])
			n += escaped
		case r == '”':
			s.emit(String, i+n, "")
			return
		case other == 0 && (r == '"' || r == '“'):
			other = i + n
		}
		i += n
	}
	s.curlyless = max(s.curlyless, s.at+i)
	if other > 0 {
		s.emit(String, other, "")
		return
	}
	s.emit(String, brokenLen(rest), quoteOpen)
}

// isApostrophe knows the signs that people take for quotation marks.
func isApostrophe(r rune) bool {
	return r == '\'' || r == '`' || r == '‘' || r == '’' || r == '‚'
}

// apostrophes reads 'text' as the string that it was meant to be.
func (s *scanner) apostrophes(rest string, open int) {
	for i, r := range rest[open:] {
		switch {
		case r == '\n' || r == '"' || r == '{' || r == '}':
			s.emit(Bad, open, strangeSign)
			return
		case isApostrophe(r):
			s.emitMended(String, open+i+utf8.RuneLen(r), apostropheQuotes)
			return
		}
	}
	s.emit(Bad, open, strangeSign)
}

// opensAgain reports whether a quotation mark looks like the beginning of a text
// and not like the end of one: after a blank and right before a letter.
func opensAgain(s string, i int) bool {
	r, _ := utf8.DecodeRuneInString(s[i+1:])
	return i > 1 && s[i-1] == ' ' && inText(r)
}

// unfinishedLen measures a string whose end is missing before another string: up
// to the brace that opens a block, if there is one.
func unfinishedLen(text string) int {
	if i := strings.Index(text, " {"); i > 0 {
		text = text[:i]
	}
	return max(1, len(strings.TrimRight(text, " \t")))
}

// brokenLen measures a string that is not closed. Braces at the end of its line
// are left out, since they close or open blocks that the rest of the file needs.
func brokenLen(rest string) int {
	return 1 + len(strings.TrimRight(rest[1:lineLen(rest)], "{};, \t"))
}

const fence = `"""`

// prose reads a block in triple quotes. A block that is never closed ends before
// the first line that closes a brace further to the left, so that the rest of
// the file is still read.
func (s *scanner) prose(rest string) {
	body := rest[len(fence):]
	if i := strings.Index(body, fence); i >= 0 && !s.runsAway(body[:i]) {
		s.emit(Prose, i+2*len(fence), "")
		return
	}
	end := 0
	for line := range strings.Lines(body) {
		if end > 0 && strings.HasPrefix(strings.TrimLeft(line, " \t"), "}") && indentOf(line) < s.indent {
			break
		}
		end += len(line)
	}
	s.emit(Prose, len(strings.TrimRight(rest[:len(fence)+end], " \t\r\n")), proseOpen)
}

// runsAway reports whether text between two fences has swallowed declarations:
// a brace that closes to the left of the fence, then a new word at the margin.
func (s *scanner) runsAway(text string) bool {
	closed, first := false, true
	for line := range strings.Lines(text) {
		body := strings.TrimSpace(line)
		switch {
		case first:
			first = false
		case body == "" || indentOf(line) >= s.indent:
		case strings.HasPrefix(body, "}"):
			closed = true
		case closed:
			return true
		}
	}
	return false
}
