package finding

import (
	"strings"
	"unicode"

	"golang.org/x/text/width"
)

// clean gives a text as one line that is safe to show: what would move the
// cursor, change the direction of the text or not be seen at all is shown as the
// replacement character.
func clean(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\n' || r == '\t' || unicode.In(r, unicode.Zl, unicode.Zp):
			return ' '
		case unicode.IsControl(r), unicode.Is(unicode.Cf, r) && !joiner(r):
			return unicode.ReplacementChar
		}
		return r
	}, s)
}

// joiner reports the two unseen characters that some scripts are spelt with.
func joiner(r rune) bool { return r == '\u200c' || r == '\u200d' }

// sourceLine finds the line that holds a position.
func sourceLine(src string, p Pos) (string, bool) {
	if src == "" || p.Line == 0 {
		return "", false
	}
	for range p.Line - 1 {
		_, rest, more := strings.Cut(src, "\n")
		if !more {
			return "", false
		}
		src = rest
	}
	line, _, _ := strings.Cut(src, "\n")
	return strings.TrimRight(strings.TrimPrefix(line, "\ufeff"), "\r"), true
}

// widest is how many characters of a line are shown.
const widest = 120

// window cuts a long line to what stands around a place, with tabs as single
// spaces so that the marks stand under what they mean. pad is what stands before
// the marks, across how many cells of a terminal they take.
func window(line string, s Span) (text, pad string, across int) {
	r := []rune(clean(line))
	from, to := reach(s, len(r))
	lo, hi, before, after := 0, len(r), "", ""
	if len(r) > widest {
		lo = max(0, from-widest/3)
		hi = min(len(r), lo+widest)
		if lo > 0 {
			before = "…"
		}
		if hi < len(r) {
			after = "…"
		}
	}
	text = before + string(r[lo:hi]) + after
	pad = strings.Repeat(" ", cells([]rune(before))+cells(r[lo:from]))
	return text, pad, cells(r[from:min(to, hi)])
}

// reach gives the part of a line of n characters that a span covers, from
// inclusive, to exclusive.
func reach(s Span, n int) (from, to int) {
	from = min(max(0, s.Start.Column-1), n)
	switch {
	case s.End.Line == 0:
		return from, from
	case s.End.Line > s.Start.Line:
		return from, n
	}
	return from, min(max(s.End.Column-1, from), n)
}

// cells is how wide characters are in a terminal.
func cells(rs []rune) (n int) {
	for _, r := range rs {
		switch {
		case joiner(r), unicode.In(r, unicode.Mn, unicode.Me):
		case wide(r):
			n += 2
		default:
			n++
		}
	}
	return
}

// wide reports the characters that take two cells (Unicode Standard Annex #11).
func wide(r rune) bool {
	k := width.LookupRune(r).Kind()
	return k == width.EastAsianWide || k == width.EastAsianFullwidth
}
