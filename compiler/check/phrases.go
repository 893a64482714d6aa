package check

import "strings"

// What a word stands between is looked at by hand: an expression is tried at every
// letter of a text and costs some twenty times as much, which a check that is
// awaited can be felt to take. Texts are in small letters; a word ends where in an
// expression \b would end it.

// phrases are words, or several with a blank between, that stand whole in a text.
type phrases []string

// in reports whether a text holds one of the phrases.
func (list phrases) in(text string) bool {
	start, _ := list.first(text, 0)
	return start >= 0
}

// first gives the first place from one on where one of the phrases stands, -1 if
// none does.
func (list phrases) first(text string, from int) (start, end int) {
	for i := from; i < len(text); i++ {
		if !wordByte(text[i]) || i > 0 && wordByte(text[i-1]) {
			continue
		}
		if n := list.begin(text[i:]); n > 0 {
			return i, i + n
		}
	}
	return -1, -1
}

// begin gives the length of the phrase that a text begins with, 0 if it begins with
// none.
func (list phrases) begin(text string) int {
	for _, p := range list {
		if text[0] == p[0] && strings.HasPrefix(text, p) && atEdge(text, len(p)) {
			return len(p)
		}
	}
	return 0
}

// wholeWord gives the first place from one on where a name stands whole, also in
// the plural, -1 if it does not.
func wholeWord(text, name string, from int) (start, end int) {
	for at := from; ; {
		i := strings.Index(text[at:], name)
		if i < 0 {
			return -1, -1
		}
		start, end = at+i, at+i+len(name)
		if atEdge(text, start) {
			if end < len(text) && text[end] == 's' && atEdge(text, end+1) {
				return start, end + 1
			}
			if atEdge(text, end) {
				return start, end
			}
		}
		at = start + 1
	}
}

// asNoun gives the first place from one on where a word is a noun that speaks of
// something that is there: with an article before it, or in the plural.
func asNoun(text, word string, from int) (start, end int) {
	for at := from; ; {
		i := strings.Index(text[at:], word)
		if i < 0 {
			return -1, -1
		}
		start, end = at+i, at+i+len(word)
		many := end < len(text) && text[end] == 's' && atEdge(text, end+1)
		if many {
			end++
		}
		if many || atEdge(text, end) {
			if a := articleBefore(text, start); a >= from {
				return a, end
			}
			if many && atEdge(text, start) && !actsAsVerb[word] {
				return start, end
			}
		}
		at = start + 1
	}
}

// articles are the words after which a word is a noun.
var articles = phrases{"the", "each", "every", "both", "this", "that", "these", "its", "their", "your", "a", "an", "one", "two", "three",
	"left", "right", "upper", "lower", "whole", "free", "finished"}

// articleBefore gives where the article begins after which a place stands, -1 if
// none stands there.
func articleBefore(text string, at int) int {
	if at == 0 || text[at-1] != ' ' {
		return -1
	}
	start := at - 1
	for start > 0 && wordByte(text[start-1]) {
		start--
	}
	if start < at-1 && articles.begin(text[start:]) == at-1-start {
		return start
	}
	return -1
}

// seamCalled gives the first place from one on where a seam is called by a word of
// its name, "the yoke seam", and the word; -1 if there is none.
func seamCalled(text string, from int) (start, end int, word string) {
	for at := from; ; {
		i := strings.Index(text[at:], " seam")
		if i < 0 {
			return -1, -1, ""
		}
		at += i + len(" seam")
		first := at - len(" seam")
		for first > 0 && letter(text[first-1]) {
			first--
		}
		word, start, end = text[first:at-len(" seam")], first-len("the "), at
		if word == "" || start < from || text[start:first] != "the " || !atEdge(text, start) {
			continue
		}
		if end < len(text) && text[end] == 's' {
			end++
		}
		if atEdge(text, end) {
			return start, end, word
		}
	}
}

// atEdge reports whether a word begins or ends at a place.
func atEdge(text string, at int) bool {
	return (at > 0 && wordByte(text[at-1])) != (at < len(text) && wordByte(text[at]))
}

func letter(c byte) bool { return c >= 'a' && c <= 'z' }

func wordByte(c byte) bool {
	return letter(c) || c >= '0' && c <= '9' || c >= 'A' && c <= 'Z' || c == '_'
}
