package main

import (
	"maps"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"

	"seamwarden/compiler"
)

// longestStem is the most bytes of a title that go into a file's name. File
// systems stop at 255, and some count two or four for a letter.
const longestStem = 100

// fileName makes the name of a booklet's files, without their endings, from the
// title and from what was chosen.
func fileName(title string, c compiler.Choice) string {
	parts := []string{slug(title)}
	if parts[0] == "" || reserved(parts[0]) {
		parts[0] = strings.TrimSuffix("pattern-"+parts[0], "-")
	}
	add := func(word, value string) {
		if value != "" {
			parts = append(parts, word, value)
		}
	}
	add("view", c.View)
	add("size", c.Size)
	for _, option := range slices.Sorted(slices.Values(c.With)) {
		add("with", option)
	}
	for _, option := range slices.Sorted(slices.Values(c.Without)) {
		add("without", option)
	}
	for _, choice := range slices.Sorted(maps.Keys(c.Ways)) {
		add(choice, c.Ways[choice])
	}
	return strings.TrimSuffix(parts[0]+"-"+slug(strings.Join(parts[1:], " ")), "-")
}

// slug keeps the letters and digits of a text, in lower case, and puts a hyphen
// wherever anything else stood between them.
func slug(text string) string {
	var out strings.Builder
	gap := false
	for _, r := range norm.NFKC.String(text) {
		r = unicode.ToLower(r)
		switch {
		case unicode.IsMark(r), r == '\'', r == '’':
		case r == utf8.RuneError || !unicode.IsLetter(r) && !unicode.IsDigit(r):
			gap = true
		case out.Len()+utf8.RuneLen(r) >= longestStem:
			return out.String()
		default:
			if gap && out.Len() > 0 {
				out.WriteByte('-')
			}
			gap = false
			out.WriteRune(r)
		}
	}
	return out.String()
}

// reserved reports the names that one file system keeps for devices, whatever
// their ending.
func reserved(name string) bool {
	base := strings.TrimRight(name, "0123456789")
	return slices.Contains([]string{"con", "prn", "aux", "nul"}, name) || (base == "com" || base == "lpt") && len(name) == 4
}
