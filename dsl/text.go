package dsl

import (
	"strings"
	"unicode/utf8"
)

// Unquote gives the text of a string as it is meant, without its quotation marks:
// \" is a quotation mark, \\ is a backslash.
func Unquote(s string) string {
	s = inQuotes(s)
	if !strings.Contains(s, `\`) {
		return s
	}
	var out strings.Builder
	for i := 0; i < len(s); i++ {
		if s[i] == '\\' && i+1 < len(s) {
			i++
		}
		out.WriteByte(s[i])
	}
	return out.String()
}

// inQuotes cuts off the mark that opens a string and the one that closes it, if
// any does.
func inQuotes(s string) string {
	for _, mark := range []string{`"`, "“", "”", "„"} {
		if rest, ok := strings.CutPrefix(s, mark); ok {
			s = rest
			break
		}
	}
	for _, mark := range []string{`"`, "”", "“"} {
		if rest, ok := strings.CutSuffix(s, mark); ok && !escapes(rest) {
			return rest
		}
	}
	return s
}

// escapes reports whether s ends in a backslash that acts on what follows.
func escapes(s string) bool {
	return (len(s)-len(strings.TrimRight(s, `\`)))%2 == 1
}

// straightQuotes writes a string with straight quotation marks.
func straightQuotes(s string) string {
	if s[0] == '"' && s[len(s)-1] == '"' {
		return s
	}
	var out strings.Builder
	out.WriteByte('"')
	body := inQuotes(s)
	for i := 0; i < len(body); i++ {
		switch {
		case body[i] == '\\' && i+1 < len(body):
			out.WriteByte('\\')
			i++
		case body[i] == '"':
			out.WriteByte('\\')
		}
		out.WriteByte(body[i])
	}
	out.WriteByte('"')
	return out.String()
}

// typists writes the fractions that are one sign as a typist does.
var typists = map[rune]string{
	'¼': "1/4", '½': "1/2", '¾': "3/4", '⅐': "1/7", '⅑': "1/9", '⅒': "1/10", '⅓': "1/3", '⅔': "2/3", '⅕': "1/5", '⅖': "2/5",
	'⅗': "3/5", '⅘': "4/5", '⅙': "1/6", '⅚': "5/6", '⅛': "1/8", '⅜': "3/8", '⅝': "5/8", '⅞': "7/8", '\u2044': "/",
}

// plainNumber writes a number, with its unit if it has one, in plain signs and
// with one space before its fraction.
func plainNumber(s string) string {
	var out strings.Builder
	gap := false
	for _, r := range s {
		sign := typists[r]
		switch {
		case blankLen(string(r)) > 0:
			gap = true
			continue
		case sign == "":
			sign = string(r)
		case r != '\u2044':
			gap = true
		}
		if gap && out.Len() > 0 {
			out.WriteByte(' ')
		}
		gap = false
		out.WriteString(sign)
	}
	return out.String()
}

// Dedent gives the text of a prose block without its fences, without the
// indentation that all its lines share and without blanks at the ends of lines.
// starts holds, for each line of the result, the offset in block at which its
// text begins.
func Dedent(block string) (all string, starts []int) {
	body := strings.TrimPrefix(block, fence)
	at := len(block) - len(body)
	body = strings.TrimSuffix(body, fence)
	lines := strings.Split(body, "\n")
	margin := marginOf(lines[1:])
	var out []string
	for i, line := range lines {
		cut := leadBlanks(line)
		if i > 0 {
			cut = marginLen(line[:cut], margin)
		}
		text := strings.TrimRight(line[cut:], " \t\r")
		if strings.TrimSpace(text) == "" {
			text = ""
		}
		out = append(out, text)
		starts = append(starts, at+cut)
		at += len(line) + 1
	}
	for len(out) > 0 && out[0] == "" {
		out, starts = out[1:], starts[1:]
	}
	for len(out) > 0 && out[len(out)-1] == "" {
		out, starts = out[:len(out)-1], starts[:len(out)-1]
	}
	return strings.Join(out, "\n"), starts
}

// marginOf is the smallest indentation of lines that hold text.
func marginOf(lines []string) int {
	margin := -1
	for _, line := range lines {
		if in := leadBlanks(line); strings.TrimSpace(line) != "" && (margin < 0 || width(line[:in]) < margin) {
			margin = width(line[:in])
		}
	}
	return max(margin, 0)
}

// leadBlanks gives the number of bytes of a line's indentation.
func leadBlanks(line string) int { return len(line) - len(strings.TrimLeft(line, " \t")) }

// marginLen gives how many bytes of blanks make up a margin.
func marginLen(blanks string, margin int) int {
	for i := range blanks {
		if width(blanks[:i]) >= margin {
			return i
		}
	}
	return len(blanks)
}

// characters counts the columns that text takes.
func characters(s string) int { return utf8.RuneCountInString(s) }
