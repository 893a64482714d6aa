package check

import (
	"regexp"
	"slices"
	"sync"
)

// expression is compiled when it is first tried, since most runs try few of them.
func expression(text string) func() *regexp.Regexp {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(text) })
}

// Trying an expression at every place of every text is the slowest thing that a
// check does, and most texts hold none of its words. stems are letters, small, of
// which a text must hold one for an expression to find anything in it.
type stems []string

// in reports whether a text holds one of the stems, whatever its capitals.
func (list stems) in(text string) bool {
	for range list.places(text, false) {
		return true
	}
	return false
}

// beginnings gives the places where a word of a text begins with one of the stems.
func (list stems) beginnings(text string) func(yield func(int) bool) { return list.places(text, true) }

// places goes through a text once; at most places a look at one letter is enough.
func (list stems) places(text string, atWord bool) func(yield func(int) bool) {
	return func(yield func(int) bool) {
		var first [256]bool
		for _, s := range list {
			first[s[0]] = true
		}
		inWord := false
		for i := range len(text) {
			c := small(text[i])
			if first[c] && !(atWord && inWord) && slices.ContainsFunc(list, func(s string) bool { return hasStem(text[i:], s) }) && !yield(i) {
				return
			}
			inWord = c >= 'a' && c <= 'z' || c >= '0' && c <= '9' || c == '_'
		}
	}
}

func hasStem(text, stem string) bool {
	if len(text) < len(stem) {
		return false
	}
	for i := range len(stem) {
		if small(text[i]) != stem[i] {
			return false
		}
	}
	return true
}

func small(c byte) byte {
	if c >= 'A' && c <= 'Z' {
		return c + 'a' - 'A'
	}
	return c
}

// The stems of viewNamed, sizeNamed, noSpace and takenOut.
var viewStems, sizeStems, slashStems, basteStems = stems{"view "}, stems{"size"}, stems{"/"}, stems{"bast"}

// claimStems are how the words begin with which a claim begins.
var claimStems = stems{"high-v", "high v", "hi-v", "hi v", "hiv", "ppe", "protective", "safety garment", "flame", "fire", "choke", "child", "ce-", "ce ", "certified",
	"complies", "comply", "meet", "conform", "tested"}
