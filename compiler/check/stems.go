package check

import (
	"regexp"
	"sync"
)

// expression is compiled when it is first tried, since most runs try few of them.
func expression(text string) func() *regexp.Regexp {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(text) })
}

// Trying an expression at every place of every text is the slowest thing that a
// check does, and most texts hold none of its words. stems are letters, small, of
// which a text must hold one for an expression to find anything in it.
type stems struct {
	list  []string
	begin func() *[1024]bool // made when it is first wanted
}

func stemsOf(list ...string) *stems {
	s := &stems{list: list}
	s.begin = sync.OnceValue(s.firstTwo)
	return s
}

// in reports whether a text holds one of the stems, whatever its capitals.
func (s *stems) in(text string) bool {
	for range s.places(text, false) {
		return true
	}
	return false
}

// beginnings gives the places where a word of a text begins with one of the stems.
func (s *stems) beginnings(text string) func(yield func(int) bool) { return s.places(text, true) }

// places goes through a text once; at most places a look at two letters is enough.
func (s *stems) places(text string, atWord bool) func(yield func(int) bool) {
	return func(yield func(int) bool) {
		begins := s.begin()
		inWord := false
		for i := range len(text) {
			if !(atWord && inWord) && begins[twoAt(text, i)] && s.at(text[i:]) && !yield(i) {
				return
			}
			if atWord {
				c := small(text[i])
				inWord = c >= 'a' && c <= 'z' || c >= '0' && c <= '9' || c == '_'
			}
		}
	}
}

// twoAt folds two letters of a text into a small number, whatever their capitals.
func twoAt(text string, i int) int {
	two := int(text[i]&31) << 5
	if i+1 < len(text) {
		two |= int(text[i+1] & 31)
	}
	return two
}

// firstTwo marks the two letters that each stem begins with; after a stem of one any
// letter may follow.
func (s *stems) firstTwo() *[1024]bool {
	var begins [1024]bool
	for _, one := range s.list {
		if len(one) > 1 {
			begins[twoAt(one, 0)] = true
			continue
		}
		for next := range 32 {
			begins[twoAt(one, 0)|next] = true
		}
	}
	return &begins
}

// at reports whether a text begins with one of the stems.
func (s *stems) at(text string) bool {
	for _, one := range s.list {
		if hasStem(text, one) {
			return true
		}
	}
	return false
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
var viewStems, sizeStems, slashStems, basteStems = stemsOf("view "), stemsOf("size"), stemsOf("/"), stemsOf("bast")

// claimStems are how the words begin with which a claim begins.
var claimStems = stemsOf("high-v", "high v", "hi-v", "hi v", "hiv", "ppe", "protective", "safety garment", "flame", "fire", "choke", "child", "ce-", "ce ", "certified",
	"complies", "comply", "meet", "conform", "tested")
