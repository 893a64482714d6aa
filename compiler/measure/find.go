package measure

import (
	"regexp"
	"strings"
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

var firstWord = regexp.MustCompile(`^[A-Za-z]+`)

var inProse = regexp.MustCompile(aNumber + unitOrSign)

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
	for _, at := range inProse.FindAllStringIndex(prose, -1) {
		start, end := at[0], at[1]
		start += len(prose[start:end]) - len(strings.TrimLeftFunc(prose[start:end], isBlank))
		if insideWord(prose[:start]) {
			continue
		}
		f := Found{Start: start, End: end}
		f.Measure, f.Err = ParseLoose(prose[start:end])
		f.Doubtful = f.Err == nil && mayBePreposition(prose[start:end], prose[end:])
		all = append(all, f)
	}
	return all
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
	next := firstWord.FindString(after[1:])
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
