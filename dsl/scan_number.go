package dsl

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// number reads 5, 5/8, 1 1/2, 1.5 and 1½, with the unit that follows at once.
func (s *scanner) number(rest string) {
	n := numberLen(rest)
	u := unitLen(rest[n:])
	if u == 0 {
		s.emit(Number, n, "")
		return
	}
	unit := rest[n : n+u]
	if units[unit] {
		s.emit(Measure, n+u, "")
		return
	}
	if unitMeant(unit) == "" {
		s.emit(Measure, n+u, runTogether)
		return
	}
	s.emitMended(Measure, n+u, unitElse)
}

// numberLen measures a number with its fraction.
func numberLen(s string) int {
	n := digits(s)
	r, size := utf8.DecodeRuneInString(s[n:])
	slash := slashLen(s[n:])
	switch {
	case isFraction(r):
		return n + size
	case slash > 0 && digits(s[n+slash:]) > 0:
		return n + slash + digits(s[n+slash:])
	case strings.HasPrefix(s[n:], ".") && digits(s[n+1:]) > 0:
		return n + 1 + digits(s[n+1:])
	}
	return n + mixed(s[n:])
}

func digits(s string) int {
	n := 0
	for n < len(s) && s[n] >= '0' && s[n] <= '9' {
		n++
	}
	return n
}

// slashLen measures the line in a fraction, as typed or as set by a printer.
func slashLen(s string) int {
	switch {
	case strings.HasPrefix(s, "/"):
		return 1
	case strings.HasPrefix(s, "\u2044"):
		return len("\u2044")
	}
	return 0
}

// mixed measures the " 1/2" of "1 1/2", or gives 0.
func mixed(s string) int {
	n := 0
	for n < len(s) && blankLen(s[n:]) > 0 {
		n += blankLen(s[n:])
	}
	if n == 0 {
		return 0
	}
	if r, size := utf8.DecodeRuneInString(s[n:]); isFraction(r) {
		return n + size
	}
	num := digits(s[n:])
	if num == 0 {
		return 0
	}
	slash := slashLen(s[n+num:])
	if slash == 0 {
		return 0
	}
	den := digits(s[n+num+slash:])
	if den == 0 {
		return 0
	}
	return n + num + slash + den
}

// unitLen measures what stands at once after a number: a word, or the signs for
// inches, feet and per cent.
func unitLen(s string) int {
	if s == "" || strings.HasPrefix(s, fence) {
		return 0
	}
	for _, sign := range []string{"''", "’’", "′′"} {
		if strings.HasPrefix(s, sign) {
			return len(sign)
		}
	}
	r, n := utf8.DecodeRuneInString(s)
	if strings.ContainsRune("\"'%″′”’", r) {
		return n
	}
	if !unicode.IsLetter(r) {
		return 0
	}
	return wordLen(s)
}

// units are the units as they are written.
var units = set("in yd mm cm m %")

// unitWords gives the unit that people mean by another word or sign.
var unitWords = map[string]string{
	`"`: "in", "″": "in", "”": "in", "''": "in", "’’": "in", "′′": "in", "inch": "in", "inches": "in", "ins": "in",
	"yds": "yd", "yard": "yd", "yards": "yd",
	"millimetre": "mm", "millimetres": "mm", "millimeter": "mm", "millimeters": "mm",
	"centimetre": "cm", "centimetres": "cm", "centimeter": "cm", "centimeters": "cm", "cms": "cm",
	"metre": "m", "metres": "m", "meter": "m", "meters": "m",
	"percent": "%",
}

// unitMeant gives the unit that a word or sign stands for, "" for none.
func unitMeant(word string) string {
	low := strings.ToLower(word)
	if units[low] {
		return low
	}
	return unitWords[low]
}

func isFraction(r rune) bool {
	return r >= '¼' && r <= '¾' || r >= '⅐' && r <= '⅞'
}
