package check

import "strings"

// Trying an expression at every place of every text is the slowest thing that a
// check does, and most texts hold none of its words. stems are letters, small, of
// which a text must hold one for an expression to find anything in it.
type stems []string

// in reports whether a text holds one of the stems, whatever its capitals.
func (list stems) in(text string) bool {
	low := strings.ToLower(text)
	for _, s := range list {
		if strings.Contains(low, s) {
			return true
		}
	}
	return false
}

// The stems of viewNamed, sizeNamed, noSpace and takenOut.
var viewStems, sizeStems, slashStems, basteStems = stems{"view "}, stems{"size"}, stems{"/"}, stems{"bast"}

// claimStems belong to claiming.
var claimStems = stems{"vis", "ppe", "protective", "safety garment", "proof", "resistant", "retardant", "child", "ce mark", "ce-mark", "certified", "complies", "comply",
	"meet", "conform", "tested to"}
