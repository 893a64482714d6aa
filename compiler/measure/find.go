package measure

import (
	"regexp"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"
)

// Found is a measure that stands in prose.
type Found struct {
	Measure
	Start, End int   // bytes of the prose, End not included
	Err        error // what is wrong with it, as ParseLoose says it; nil if it could be read

	// Doubtful is set for a whole number before the word "in" where it may
	// just as well be a preposition: "cut 4 in lining".
	Doubtful bool
}

const (
	gap        = "[ \u00a0\u2009\u202f]"
	aNumber    = `(?:\d+(?:[.,]\d+)?(?:` + gap + `+|-)\d+[/⁄]\d+|\d+[/⁄]\d+|\d*` + gap + `?(?:[¼½¾⅐-⅞]|[⁰¹²³⁴-⁹]+⁄[₀-₉]+)|\d+[.,]\d+|\.\d+|\d+)`
	aUnit      = `(?:in(?:ch(?:es)?)?|y(?:ar)?ds?|mm|cm|m|(?:milli|centi)?met(?:re|er)s?)`
	unitOrSign = `(?:` + gap + `*["″”]|(?:` + gap + `*|-)` + aUnit + `\b)`
)

var firstWord = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^[A-Za-z]+`) })

// atNumber reads a measure that begins a text.
var atNumber = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^(?:` + aNumber + unitOrSign + `)`) })

// afterInches are words that follow inches: "4 in long", "2 in from the edge".
var afterInches = words(`long wide deep high apart square from to above below of and or seam allowance
	hem by away past beyond along on at strip strips longer shorter wider narrower more less each finished
	turning turnings over under into up down for if is are than folded bias elastic tape`)

func words(text string) map[string]bool {
	set := map[string]bool{}
	for _, w := range strings.Fields(text) {
		set[w] = true
	}
	return set
}

// FindAll returns the measures that stand in prose, in their order: numbers
// with a unit, in any of the ways that ParseLoose reads.
func FindAll(prose string) []Found {
	var all []Found
	for start := nextNumber(prose, 0); start < len(prose); {
		at := atNumber().FindStringIndex(prose[start:])
		if at == nil {
			start = nextNumber(prose, start+1)
			continue
		}
		end := start + at[1]
		if !insideWord(prose[:start]) {
			f := Found{Start: start, End: end}
			f.Measure, f.Err = ParseLoose(prose[start:end])
			f.Doubtful = f.Err == nil && mayBePreposition(prose[start:end], prose[end:])
			all = append(all, f)
		}
		start = nextNumber(prose, end)
	}
	return all
}

// nextNumber gives where, from a place on, the next number may begin; the length
// of the text if none does. Most text has no number, and the expression for one is
// slow to try everywhere.
func nextNumber(text string, from int) int {
	for i := from; i < len(text); i++ {
		switch c := text[i]; {
		case c >= '0' && c <= '9', c == '.' && i+1 < len(text) && text[i+1] >= '0' && text[i+1] <= '9':
			return i
		case c >= utf8.RuneSelf && utf8.RuneStart(c):
			if r, _ := utf8.DecodeRuneInString(text[i:]); strings.ContainsRune("¼½¾⁰¹²³", r) || r >= '⅐' && r <= '⅞' || r >= '⁴' && r <= '⁹' {
				return i
			}
		}
	}
	return len(text)
}

// insideWord says whether what follows the text would be a part of its last
// word or number: "B4", "1.2".
func insideWord(before string) bool {
	last, size := utf8.DecodeLastRuneInString(before)
	if last != '.' && last != '/' {
		return last == '_' || unicode.IsLetter(last) || unicode.IsDigit(last)
	}
	ahead, _ := utf8.DecodeLastRuneInString(before[:len(before)-size])
	return unicode.IsDigit(ahead)
}

// mayBePreposition says whether "4 in" before these words may mean four
// pieces in something.
func mayBePreposition(text, after string) bool {
	plain := plainNumber(text)
	number, unit, spaced := splitUnit(plain)
	if unit != "in" || !spaced || strings.ContainsAny(number, "./,") || !strings.HasPrefix(after, " ") {
		return false
	}
	next := firstWord().FindString(after[1:])
	return next != "" && !afterInches[next]
}

// Pair is two measures that prose gives as the same length, one in each
// system: "5/8 in (1.5 cm)".
type Pair struct {
	Imperial, Metric Found
}

// Agrees says whether the two halves mean the same length.
func (p Pair) Agrees() bool { return PairAgrees(p.Imperial.Measure, p.Metric.Measure) }

// FindPairs returns the pairs in prose: two measures of different systems with
// only an opening bracket, a slash or an equals sign between them. Measures
// that could not be read are passed over.
func FindPairs(prose string) []Pair {
	var pairs []Pair
	all := FindAll(prose)
	for i := 0; i+1 < len(all); i++ {
		a, b := all[i], all[i+1]
		between := strings.TrimSpace(prose[a.End:b.Start])
		if a.Err != nil || b.Err != nil || between == "" || !strings.Contains("([/=", between) {
			continue
		}
		switch {
		case a.Unit.System() == Imperial && b.Unit.System() == Metric:
			pairs = append(pairs, Pair{Imperial: a, Metric: b})
		case a.Unit.System() == Metric && b.Unit.System() == Imperial:
			pairs = append(pairs, Pair{Imperial: b, Metric: a})
		}
	}
	return pairs
}
