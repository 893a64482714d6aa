package dsl

import (
	"sort"
	"strings"
)

// Name tells which phrase it is, by the words of phraseForms.
func (p *Phrase) Name() string {
	switch {
	case p.ByHand:
		return "hand"
	case p.By != nil:
		return "by"
	case p.Turning != nil:
		return "turning"
	case p.Toward != nil, p.Away != "":
		return "toward"
	case p.ToAmount != nil, p.To != nil, p.ToSide != "":
		return "to"
	case p.Open:
		return "open"
	case p.Flat:
		return "flat"
	case p.Way != "":
		return "together"
	case p.With != nil:
		return "with"
	case p.For != nil:
		return "for"
	case p.At != nil:
		return "at"
	case p.Only != nil:
		return "only"
	case p.On != nil:
		return "on"
	case p.Leaving != nil:
		return "leaving"
	case p.AllLayer, p.Through != nil:
		return "through"
	case p.Keeping != nil:
		return "keeping"
	case p.Catching != nil:
		return "catching"
	case p.Place == "along", p.Place == "into", p.Place == "over", p.Place == "between":
		return p.Place
	case p.Place != "":
		return "at"
	case p.Round:
		return "round"
	case p.Out != "":
		return "out"
	case p.Side != "":
		return "side"
	case p.From != nil:
		return "from"
	case p.As != nil:
		return "as"
	}
	return "distance"
}

// takes reports whether a verb goes with a phrase.
func takes(verb, phrase string) bool {
	return phrase == "from" || listed(verbs[verb], phrase) || listed(everyVerb, phrase)
}

// listed reports whether a word stands in a list of words.
func listed(words, word string) bool {
	for w := range strings.FieldsSeq(words) {
		if w == word {
			return true
		}
	}
	return false
}

// form writes how an operation is written, for messages.
func form(verb string) string {
	var parts []string
	for _, p := range strings.Fields(verbs[verb]) {
		parts = append(parts, "["+phraseForms[p]+"]")
	}
	sort.Strings(parts)
	return verb + " WHAT " + strings.Join(parts, " ")
}
