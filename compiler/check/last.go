package check

import (
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "pins-never-looked-for", Severity: finding.Advice, Category: "prose", FromAbsence: true, run: pinsLeft,
		Purpose: "The pattern speaks of pins, and no step tells to look for those that were left.",
		Why:     "A pin that stays in a seam hurts whoever wears or uses the thing first. A last look costs a minute."})
}

// pinsSpoken are pins and clips as things; seeks and leftThere are how a step sends
// somebody to look for them.
var (
	pinsSpoken = phrases{"pin", "pins"}
	seeks      = phrases{"feel", "look", "check", "search", "count", "run", "go over", "see that", "make sure", "remove", "take out", "free of", "forgotten"}
	leftThere  = stemsOf("left", "forgotten", "remain", "stay")
)

// pinsLeft looks in the steps alone: a caution in the front of the booklet is read
// before there are any pins. Common practice of the sewing room, no source.
func pinsLeft(r *run) {
	spoken, sought := condition.False, condition.False
	var first finding.Span
	small := r.smallWritten()
	for i, t := range r.written() {
		text := small[i]
		hit := loosePin(text)
		if hit == nil {
			continue
		}
		if t.step != nil && pinsSought(text) {
			sought = r.Space.Or(sought, t.cond)
			continue
		}
		if spoken == condition.False && len(text) == len(t.text) {
			first = t.at(hit[0], hit[1])
		}
		spoken = r.Space.Or(spoken, t.cond)
	}
	r.report(r.Space.Diff(spoken, sought), at(first, "pins go in here", "No step tells to look for pins at the end.",
		"Say so in the last step: feel along the seams and edges for pins."))
}

// pinsSought reports whether a sentence of a text sends to look for pins, or speaks
// of pins that are left.
func pinsSought(text string) bool {
	for sentence := range strings.SplitSeq(text, ".") {
		start, end := pinsSpoken.first(sentence, 0)
		if start < 0 {
			continue
		}
		if _, sought := seeks.first(sentence, 0); sought >= 0 {
			if pin, _ := pinsSpoken.first(sentence, sought); pin >= 0 {
				return true
			}
		}
		for at := range leftThere.beginnings(sentence) {
			if at >= end {
				return true
			}
		}
	}
	return false
}

// loosePin gives the first pin of a text that is no safety pin, and that it does not
// do without.
func loosePin(text string) []int {
	for start, end := pinsSpoken.first(text, 0); start >= 0; start, end = pinsSpoken.first(text, end) {
		if before := text[:start]; !strings.HasSuffix(before, "safety ") && !strings.HasSuffix(before, "in place of ") && !strings.HasSuffix(before, "no ") && !strings.HasSuffix(before, "without ") {
			return []int{start, end}
		}
	}
	return nil
}
