package dsl

import (
	"strings"
	"unicode/utf8"
)

// meant gives what a token of a kind is taken for: its text, unless that has one
// of the slips that leave one sensible meaning. They are reported all the same.
func meant(k Kind, text string) string {
	switch k {
	case Word:
		return strings.Map(plainHyphen, text)
	case Number:
		return strings.TrimPrefix(text, "#")
	case Measure:
		n := numberLen(text)
		if unit := unitMeant(text[n:]); unit != "" {
			return text[:n] + unit
		}
	case String:
		return meantString(text)
	}
	return text
}

func plainHyphen(r rune) rune {
	if isDash(r) {
		return '-'
	}
	return r
}

// meantString puts text in apostrophes into quotation marks, and text that was
// broken over lines on one line.
func meantString(text string) string {
	first, n := utf8.DecodeRuneInString(text)
	if isApostrophe(first) {
		_, last := utf8.DecodeLastRuneInString(text)
		return `"` + strings.ReplaceAll(text[n:len(text)-last], `\`, `\\`) + `"`
	}
	if strings.Contains(text, "\n") {
		return strings.Join(strings.Fields(text), " ")
	}
	return text
}
