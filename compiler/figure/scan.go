package figure

import (
	"math"
	"strconv"
	"strings"
)

// fault is what is wrong inside one attribute's value: how many bytes into it,
// and what to say.
type fault struct {
	at  int
	say string
}

// scanner reads the small grammars inside attributes: numbers, lists, path data.
type scanner struct {
	s string
	i int
}

func (s *scanner) done() bool   { return s.i >= len(s.s) }
func (s *scanner) rest() string { return strings.TrimRight(s.s[s.i:], " \t\r\n\f") }

// peek is the next byte, 0 at the end.
func (s *scanner) peek() byte {
	if s.done() {
		return 0
	}
	return s.s[s.i]
}

func (s *scanner) take(c byte) bool {
	if s.peek() == c && !s.done() {
		s.i++
		return true
	}
	return false
}

// space skips white space as SVG 2 counts it.
func (s *scanner) space() {
	for !s.done() && isBlank(s.s[s.i]) {
		s.i++
	}
}

// comma skips white space with at most one comma in it, and says whether there
// was one.
func (s *scanner) comma() bool {
	s.space()
	if !s.take(',') {
		return false
	}
	s.space()
	return true
}

// word takes letters.
func (s *scanner) word() string {
	from := s.i
	for c := s.peek() | 0x20; c >= 'a' && c <= 'z'; c = s.peek() | 0x20 {
		s.i++
	}
	return s.s[from:s.i]
}

// startsNumber says whether a number may begin here.
func (s *scanner) startsNumber() bool {
	c := s.peek()
	return isDigit(c) || c == '.' || c == '-' || c == '+'
}

// number takes one number and nothing more, so that "1.5.5" is 1.5 and then .5,
// and "10-5" is 10 and then -5 (SVG 1.1, 8.3.9). It fails, and stays where it
// was, if there is none or if it is too large to hold.
func (s *scanner) number() (float64, bool) {
	from := s.i
	if c := s.peek(); c == '-' || c == '+' {
		s.i++
	}
	n := s.digits()
	if s.take('.') {
		n += s.digits()
	}
	if n == 0 {
		s.i = from
		return 0, false
	}
	s.exponent()
	v, err := strconv.ParseFloat(s.s[from:s.i], 64)
	if err != nil || math.IsInf(v, 0) {
		s.i = from
		return 0, false
	}
	return v, true
}

// exponent takes "e3" or "E-3" but leaves the unit "em".
func (s *scanner) exponent() {
	from := s.i
	if !s.take('e') && !s.take('E') {
		return
	}
	if c := s.peek(); c == '-' || c == '+' {
		s.i++
	}
	if s.digits() == 0 {
		s.i = from
	}
}

func (s *scanner) digits() int {
	from := s.i
	for isDigit(s.peek()) {
		s.i++
	}
	return s.i - from
}

// flag takes one digit 0 or 1: the flags of an arc need no separator after them.
func (s *scanner) flag() (float64, bool) {
	c := s.peek()
	if c != '0' && c != '1' {
		return 0, false
	}
	s.i++
	return float64(c - '0'), true
}

func isBlank(c byte) bool { return c == ' ' || c == '\t' || c == '\r' || c == '\n' || c == '\f' }

func isDigit(c byte) bool { return c >= '0' && c <= '9' }

// parseList reads numbers parted by spaces or commas.
func parseList(text string) ([]float64, *fault) {
	s := scanner{s: text}
	s.space()
	var list []float64
	for !s.done() {
		n, ok := s.number()
		if !ok {
			return nil, &fault{s.i, "here a number was expected"}
		}
		list = append(list, n)
		if s.comma() && s.done() {
			return nil, &fault{s.i - 1, "a number is missing after the comma"}
		}
	}
	return list, nil
}

// clip shortens text from a file before it is quoted in a message.
func clip(s string) string {
	const most = 40
	if r := []rune(s); len(r) > most {
		return string(r[:most]) + "…"
	}
	return s
}
