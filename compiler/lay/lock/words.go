package lock

import (
	"fmt"
	"strings"

	"seamwarden/dsl/finding"
)

// The rules of remembered lays.
const (
	RuleMissing        = "lay-missing"
	RuleStale          = "lay-stale"
	RuleEdited         = "lay-edited"
	RuleUnused         = "lay-unused"
	RuleLaysUnreadable = "lays-unreadable"
)

const renew = "Run `seamwarden lay`, and keep lays.lock with the pattern."

func trouble(rule string, s finding.Severity, span finding.Span, label, headline, why string) finding.Finding {
	return finding.Finding{Rule: rule, Severity: s, Place: finding.Place{Span: span, Label: label}, Headline: headline, Why: why, Help: renew}
}

// Missing says that lays have not been found yet.
func Missing(span finding.Span, labels []string) finding.Finding {
	lays := "lay is"
	if len(labels) > 1 {
		lays = "lays are"
	}
	return trouble(RuleMissing, finding.Advice, span, "", fmt.Sprintf("%d %s not yet found: %s.", len(labels), lays, few(labels)),
		"How much cloth a garment needs is known only once its pieces have been laid.")
}

// None says that no lay of a pattern has been found yet.
func None(span finding.Span) finding.Finding {
	return trouble(RuleMissing, finding.Advice, span, "", "The pieces are drawn, and how they lie on the cloth is not yet found.",
		"How much cloth a garment needs is known only once its pieces have been laid.")
}

func outOfDate(list []*Entry, labels []string) finding.Finding {
	what := "The remembered lay of " + few(labels) + " is out of date."
	if len(labels) > 1 {
		what = fmt.Sprintf("%d remembered lays are out of date: %s.", len(labels), few(labels))
	}
	return trouble(RuleStale, finding.Warning, list[0].Span, "out of date", what,
		"Pieces, cloth or the way of laying were changed after it was found. It may need more cloth or less, so no amount is printed from it.")
}

func notNeeded(list []*Entry) finding.Finding {
	var labels []string
	for _, e := range list {
		labels = append(labels, e.For...)
	}
	what := "Nothing needs the remembered lay of " + few(labels) + "."
	if len(labels) > 1 {
		what = fmt.Sprintf("Nothing needs %d of the remembered lays: %s.", len(labels), few(labels))
	}
	return trouble(RuleUnused, finding.Advice, list[0].Span, "not needed", what, "The view, size or width that it belongs to is gone, or the lay is there twice.")
}

func edited(e *Entry, label string, why error) finding.Finding {
	return trouble(RuleEdited, finding.Error, e.Span, "does not hold", fmt.Sprintf("The remembered lay of %s does not hold: %v.", finding.OneLine(label), why),
		"The file was changed by hand or damaged, and cut like this the garment could not be made. The lay is not used.")
}

// few names the first of many labels.
func few(labels []string) string {
	const most = 3
	s := strings.Join(labels[:min(len(labels), most)], "; ")
	if n := len(labels) - most; n > 0 {
		s += fmt.Sprintf("; and %d more", n)
	}
	return finding.OneLine(s)
}
