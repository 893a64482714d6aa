package check

import (
	"fmt"
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "sentence-too-long", Severity: finding.Advice, Category: "prose", Asked: true, run: longSentences,
		Purpose: "A sentence has more words than somebody can hold who looks back at her hands.",
		Why:     "A sentence that tells one thing to do is read once, and done. Simplified technical English allows it 20 words, and 25 where nothing is to be done."})
}

// How many words a sentence may have, where it tells what to do and where it only
// describes. Source: ASD-STE100 Simplified Technical English, the rules on the
// length of sentences in procedures (20 words) and in descriptions (25 words);
// recalled from memory.
const (
	wordsToDo       = 20
	wordsToDescribe = 25
)

// longSentences reads the texts of the steps as procedures, and figures, notes and
// explanations as descriptions.
func longSentences(r *run) {
	for _, t := range r.stepTexts() {
		r.measureSentences(t.text, t.cond, t.at, wordsToDo)
	}
	describe := func(p *model.Prose, c condition.Cond) {
		if p != nil {
			r.measureSentences(p.Text, c, placesIn(p), wordsToDescribe)
		}
	}
	for _, s := range r.Steps() {
		for _, i := range s.Items {
			if f, ok := i.(*model.Figure); ok {
				describe(f.Body, f.Cond)
			}
		}
	}
	for _, p := range r.Pieces {
		for _, n := range p.Notes {
			describe(n, n.Cond)
		}
	}
	for _, t := range r.Terms {
		describe(t.Body, condition.True)
	}
}

func (r *run) measureSentences(text string, c condition.Cond, place func(int, int) finding.Span, most int) {
	for _, s := range sentencesIn(text) {
		if n := wordCount(text[s[0]:s[1]]); n > most {
			r.report(c, at(place(s[0], s[1]), fmt.Sprintf("%d words", n), fmt.Sprintf("This sentence has %d words; %d are easily held.", n, most),
				"Say one thing in each sentence: what to do first, then the next."))
		}
	}
}

// sentenceEnds stand between sentences, and between the points of a list.
var sentenceEnds = expression(`[.!?]["”)]*(?:\s+|$)|\n\s*\n|\n\s*(?:[-*]|\d+\.)\s+`)

// sentencesIn gives the stretches of a text that are sentences.
func sentencesIn(text string) (all [][2]int) {
	from := 0
	add := func(to int) {
		if strings.TrimSpace(text[from:to]) != "" {
			all = append(all, [2]int{from, to})
		}
	}
	for _, end := range sentenceEnds().FindAllStringIndex(text, -1) {
		add(end[0])
		from = end[1]
	}
	add(len(text))
	return all
}

// wordCount counts words as ASD-STE100 does: what a hyphen joins is one, and so
// are a number and what braces fetch. What stands in brackets is a sentence of its
// own there, and is left out. Recalled from memory.
func wordCount(sentence string) (n int) {
	sentence = bracketed().ReplaceAllString(bracesOut().ReplaceAllString(sentence, "x"), "")
	for _, w := range strings.Fields(sentence) {
		if strings.ContainsFunc(w, func(c rune) bool {
			return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c > 127 && c != '–' && c != '—'
		}) {
			n++
		}
	}
	return n
}

var bracketed = expression(`\([^()]*\)`)
