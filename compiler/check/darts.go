package check

import (
	"fmt"
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "dart-never-pressed", Severity: finding.Advice, Category: "seams", FromAbsence: true, run: dartUnpressed,
		Purpose: "A dart, or a pleat whose edge goes into a seam, is sewn and no step presses it.",
		Why:     "Its fold lies to one side in the seam at its end. Pressed first, it lies flat and the same way along its whole length, and on both halves of the body."})
}

// dartUnpressed leaves pleats and tucks alone whose edge goes into no seam, or of
// which a text says how they lie: they may be meant to be soft.
func dartUnpressed(r *run) {
	for _, x := range r.Shapings {
		sewn, pressed := condition.False, condition.False
		for _, op := range r.Ops() {
			for _, o := range op.Objects {
				switch {
				case o.Shaping != x:
				case op.Verb == "press" || op.Verb == "steam":
					pressed = r.Space.Or(pressed, op.Cond)
				case op.Row.Sews && (op.Phrase("toward") == nil || x.Kind == "dart"):
					sewn = r.Space.Or(sewn, op.Cond)
				}
			}
		}
		bad := r.Space.Diff(sewn, pressed)
		if !r.possible(bad) || x.Kind != "dart" && (!r.intoSeam(x) || r.pleatInText(x)) {
			continue
		}
		r.report(bad, at(x.Span, "never pressed", fmt.Sprintf("No step presses the %s.", shapingName(x)), fmt.Sprintf("Add `press %s toward centre`, or the way its fold shall lie.", x.ID)))
	}
}

// intoSeam reports whether the edge of a pleat lies in a seam.
func (r *run) intoSeam(x *model.Shaping) bool {
	for _, s := range r.Seams {
		if x.In != nil && x.In.Edge != nil && takesEdge(s, x.In.Edge) {
			return true
		}
	}
	return false
}

var lies = expression(`(?i)\b(?:press(?:ed)?|toward|towards|lies?|points?|lay|soft|unpressed)\b`)

// pleatInText reports whether a sentence of the author says how a pleat lies.
func (r *run) pleatInText(x *model.Shaping) bool {
	for _, t := range r.stepTexts() {
		for _, sentence := range strings.Split(strings.ToLower(t.text), ".") {
			if strings.Contains(sentence, x.Kind) && lies().MatchString(sentence) {
				return true
			}
		}
	}
	return false
}
