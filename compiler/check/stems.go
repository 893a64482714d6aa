package check

// Trying an expression at every place of every text is the slowest thing that a
// check does, and most texts hold none of its words. stems are letters, small, of
// which a text must hold one for an expression to find anything in it.
type stems []string

// in reports whether a text holds one of the stems, whatever its capitals.
func (list stems) in(text string) bool { return list.found(text, false) }

// begin reports whether a word of a text begins with one of the stems.
func (list stems) begin(text string) bool { return list.found(text, true) }

// found goes through a text once; at most places a look at one letter is enough.
func (list stems) found(text string, atWord bool) bool {
	var first [256]bool
	for _, s := range list {
		first[s[0]] = true
	}
	inWord := false
	for i := range len(text) {
		c := small(text[i])
		if first[c] && !(atWord && inWord) {
			for _, s := range list {
				if s[0] == c && hasStem(text[i:], s) {
					return true
				}
			}
		}
		inWord = c >= 'a' && c <= 'z' || c >= '0' && c <= '9' || c == '_'
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
var viewStems, sizeStems, slashStems, basteStems = stems{"view "}, stems{"size"}, stems{"/"}, stems{"bast"}

// claimStems are how the words begin with which a claim begins.
var claimStems = stems{"high-v", "high v", "hi-v", "hi v", "hiv", "ppe", "protective", "safety garment", "flame", "fire", "choke", "child", "ce-", "ce ", "certified",
	"complies", "comply", "meet", "conform", "tested"}
