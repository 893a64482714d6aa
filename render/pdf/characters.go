package pdf

import (
	"strings"
	"unicode"
)

// printable takes out the characters that are never drawn and puts in their
// place the ones that are drawn for others.
func printable(rs []rune) []rune {
	out := make([]rune, 0, len(rs))
	for _, r := range rs {
		switch {
		case ignorable(r):
		case r == nbHyphen: // the fonts lack it; it looks like a hyphen
			out = append(out, '\u2010')
		case unicode.IsControl(r) || r == '\u2028' || r == '\u2029':
			out = append(out, ' ')
		default:
			out = append(out, r)
		}
	}
	return out
}

const (
	nbHyphen   = '\u2011'
	softHyphen = '\u00AD'
	zeroSpace  = '\u200B'
)

// ignorable tells whether a character has no shape of its own: soft hyphens,
// joiners, direction marks and variation selectors (Unicode property
// Default_Ignorable_Code_Point, the members that text may hold; listed from memory).
func ignorable(r rune) bool {
	switch {
	case r == softHyphen, r == '\u034F', r == '\u061C', r == '\uFEFF':
		return true
	case r >= '\u200B' && r <= '\u200F', r >= '\u202A' && r <= '\u202E':
		return true
	case r >= '\u2060' && r <= '\u206F', r >= '\uFE00' && r <= '\uFE0F':
		return true
	}
	return r >= 0xE0000 && r <= 0xE0FFF
}

const (
	superscripts = "⁰¹²³⁴⁵⁶⁷⁸⁹"
	subscripts   = "₀₁₂₃₄₅₆₇₈₉"
	fractionBar  = '\u2044'
)

// clusterEnd gives the end of what must come from one font and begins at i: a
// fraction, or a character with its accents.
func clusterEnd(rs []rune, i int) (end int, fraction bool) {
	if end := fractionEnd(rs, i); end > i {
		return end, true
	}
	i++
	for i < len(rs) && unicode.Is(unicode.Mn, rs[i]) {
		i++
	}
	return i, false
}

// fractionEnd gives the end of a fraction: one character (½), or raised digits, bar
// and lowered digits. It gives start if none begins there.
func fractionEnd(rs []rune, start int) int {
	if vulgar(rs[start]) {
		return start + 1
	}
	i := skip(rs, start, superscripts)
	if i == start || i >= len(rs) || rs[i] != fractionBar {
		return start
	}
	end := skip(rs, i+1, subscripts)
	if end == i+1 {
		return start
	}
	return end
}

// vulgar tells whether a character is a whole fraction (Unicode: Latin-1 and
// Number Forms blocks).
func vulgar(r rune) bool {
	return r >= '¼' && r <= '¾' || r >= '⅐' && r <= '⅞' || r == '↉'
}

func skip(rs []rune, i int, set string) int {
	for i < len(rs) && strings.ContainsRune(set, rs[i]) {
		i++
	}
	return i
}

// breakKind is what a character does to the line.
type breakKind int

const (
	noBreak    breakKind = iota
	breakSpace           // a space: the line may end here and the space goes
	breakLine            // the line must end here
	breakAfter           // the line may end after it: a hyphen or dash between letters
	breakHere            // an invisible place for a line's end
	breakSoft            // the same, with a hyphen if it is used
)

// breakAt says what the character at i does to the line. U+00A0, U+202F, U+2007
// and U+2011 never allow a line to end (UAX #14, class GL).
func breakAt(rs []rune, i int) breakKind {
	switch r := rs[i]; {
	case r == '\u2028' || r == '\u2029':
		return breakLine
	case r == '\u00A0' || r == '\u202F' || r == '\u2007':
		return noBreak
	case unicode.IsSpace(r):
		return breakSpace
	case r == zeroSpace:
		return breakHere
	case r == softHyphen:
		return breakSoft
	case strings.ContainsRune("-/\u2010\u2013\u2014", r) && betweenLetters(rs, i):
		return breakAfter
	}
	return noBreak
}

func betweenLetters(rs []rune, i int) bool {
	return i > 0 && i+1 < len(rs) && unicode.IsLetter(rs[i-1]) && unicode.IsLetter(rs[i+1])
}
