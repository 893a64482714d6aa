package finding

import (
	"fmt"
	"slices"
)

// Acceptance is an author's remark that a finding is meant to be so.
type Acceptance struct {
	Rule   string
	Reason string // "" if none is given
	At     Span   // the remark
	RuleAt Span   // the name of the rule in it
	Covers Span   // where it holds; the zero Start and End are nowhere
}

// Accepted is a finding that its author has accepted, with the remark.
type Accepted struct {
	Finding
	By Acceptance
}

// The rules about acceptances themselves. None of them can be accepted.
const (
	AcceptanceUnused        = "acceptance-unused"
	AcceptanceWithoutReason = "acceptance-without-reason"
	AcceptanceUnknown       = "acceptance-of-unknown-rule"
)

// Accept parts findings by the acceptances that cover them. kept are those that
// stand; more are findings about the acceptances: of a rule that is not among
// known, which accepts nothing; of what is not found there; without a reason,
// which accepts, and leaves this warning in place of what it accepts.
//
// complete says that everything could be read. Where it is not, many rules do not
// run, and no acceptance is called unused.
//
// A finding is covered if its first place begins inside the stretch. Of several
// acceptances that cover it, it is accepted by the innermost, and all are used.
func Accept(fs []Finding, as []Acceptance, known []string, complete bool) (kept []Finding, accepted []Accepted, more []Finding) {
	names := map[string]bool{}
	for _, k := range known {
		names[k] = true
	}
	used := make([]bool, len(as))
	for _, f := range fs {
		by := -1
		for i, a := range as {
			if a.Rule != f.Rule || !names[a.Rule] || !covers(a.Covers, f.Place.Span) {
				continue
			}
			used[i] = true
			if by < 0 || length(a.Covers) < length(as[by].Covers) {
				by = i
			}
		}
		if by < 0 {
			kept = append(kept, f)
		} else {
			accepted = append(accepted, Accepted{Finding: f, By: as[by]})
		}
	}
	return kept, accepted, aboutAcceptances(as, used, known, complete)
}

// aboutAcceptances says what is wrong with acceptances, one thing of each.
func aboutAcceptances(as []Acceptance, used []bool, known []string, complete bool) (more []Finding) {
	for i, a := range as {
		switch {
		case !slices.Contains(known, a.Rule):
			more = append(more, acceptsUnknown(a, known))
		case !used[i] && complete:
			more = append(more, acceptsNothing(a))
		case a.Reason == "":
			more = append(more, acceptsWithoutReason(a))
		}
	}
	Sort(more)
	return more
}

// covers reports whether a place begins inside a stretch. An empty place may also
// stand at its end, as where something is missing.
func covers(stretch, place Span) bool {
	if stretch.File != place.File || place.Start.Line == 0 {
		return false
	}
	from, to := stretch.Start.Offset, stretch.End.Offset
	at := place.Start.Offset
	return from <= at && (at < to || at == to && from < to && place.End.Offset <= at)
}

func length(s Span) int { return s.End.Offset - s.Start.Offset }

func acceptsUnknown(a Acceptance, known []string) Finding {
	f := Finding{Rule: AcceptanceUnknown, Severity: Warning,
		Headline: fmt.Sprintf("There is no finding %s that can be accepted.", a.Rule),
		Place:    Place{Span: a.RuleAt, Label: "no such name"},
		Why:      "The remark looks as if it accepted something, and does not.",
		Help:     "Write the name that stands in brackets behind the finding."}
	if near := Nearest(a.Rule, known); near != "" {
		f.Help = fmt.Sprintf("Did you mean %s?", near)
		f.Edits = []Edit{{Span: a.RuleAt, New: near, Title: "Accept " + near}}
	}
	return f
}

func acceptsNothing(a Acceptance) Finding {
	return Finding{Rule: AcceptanceUnused, Severity: Warning,
		Headline: fmt.Sprintf("Nothing is found here that %s could accept.", a.Rule),
		Place:    Place{Span: a.At, Label: "accepts nothing"},
		Why:      "Left in place, it would hide the mistake when somebody makes it.",
		Help:     "Delete the remark, or move it above the sentence that it is about.",
		Edits:    []Edit{{Span: a.At, Title: "Delete the remark"}}}
}

func acceptsWithoutReason(a Acceptance) Finding {
	return Finding{Rule: AcceptanceWithoutReason, Severity: Warning,
		Headline: fmt.Sprintf("No reason is given why %s is accepted here.", a.Rule),
		Place:    Place{Span: a.At, Label: "no reason"},
		Why:      "Whoever works on the pattern next cannot tell whether it is still right.",
		Help:     fmt.Sprintf("Write the reason behind a colon: // accept %s: why it is meant.", a.Rule)}
}
