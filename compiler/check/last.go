package check

import (
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "pins-never-looked-for", Severity: finding.Advice, Category: "prose", FromAbsence: true, run: pinsLeft,
		Purpose: "The pattern speaks of pins, and no step tells to look for those that were left.",
		Why:     "A pin that stays in a seam hurts whoever wears the garment first. A last look costs a minute."})
}

// pinsSpoken are pins and clips as things; pinsSought is how a step sends somebody
// to look for them.
var (
	pinsSpoken = expression(`\bpins?\b`)
	pinsSought = expression(`\b(feel|look|check|search|count|run|go over|see that|make sure|remove|take out|free of|forgotten)\b[^.]*\bpins?\b|\bpins?\b[^.]*\b(left|forgotten|remain|stay)`)
)

// pinsLeft looks in the steps alone: a caution in the front of the booklet is read
// before there are any pins. Common practice of the sewing room, no source.
func pinsLeft(r *run) {
	spoken, sought := condition.False, condition.False
	var first finding.Span
	for _, t := range r.written() {
		text := strings.ToLower(t.text)
		hit := pinsSpoken().FindStringIndex(text)
		if hit == nil || safetyPin(text) {
			continue
		}
		if t.step != nil && pinsSought().MatchString(text) {
			sought = r.Space.Or(sought, t.cond)
			continue
		}
		if spoken == condition.False && len(text) == len(t.text) {
			first = t.at(hit[0], hit[1])
		}
		spoken = r.Space.Or(spoken, t.cond)
	}
	r.report(r.Space.Diff(spoken, sought), at(first, "pins go in here", "No step tells to look for pins before the garment is worn.",
		"Say so in the last step: feel along the seams and edges for pins."))
}

// safetyPin reports whether the only pins of a text are safety pins, or it does
// without them.
func safetyPin(text string) bool {
	for _, p := range pinsSpoken().FindAllStringIndex(text, -1) {
		if before := text[:p[0]]; !strings.HasSuffix(before, "safety ") && !strings.HasSuffix(before, "in place of ") && !strings.HasSuffix(before, "no ") && !strings.HasSuffix(before, "without ") {
			return false
		}
	}
	return true
}
