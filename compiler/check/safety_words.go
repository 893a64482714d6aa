package check

import (
	"fmt"
	"regexp"
	"strings"

	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "claim-of-protection", Severity: finding.Warning, Category: "safety", run: claims,
		Purpose: "The text claims that what is made protects, does not burn, or meets a standard.",
		Why:     "Such words have a meaning in law, and a garment has to be tested for them: high-visibility clothing, for one, by EN ISO 20471 (recalled, not read). A pattern cannot promise it."})
	register(Rule{ID: "caution-after-the-work", Severity: finding.Warning, Category: "safety", run: lateCautions,
		Purpose: "A caution stands after the work that it belongs to.",
		Why:     "She reads it when she has burnt herself. A caution comes before the step or at its head; common practice of instructions, no standard read."})
}

// claimWords are the words of a claim; claiming finds them at the beginning of a word.
const claimWords = `(?:high[- ]vis(?:ibility)?|hi[- ]?vis(?:ibility)?|ppe|protective (?:clothing|garment|wear)|safety garment|` +
	`(?:flame|fire)[- ]?(?:proof|resistant|retardant)|choke[- ]?proof|child[- ]?safe|ce[- ]mark(?:ed)?|certified|compl(?:ies|y) with|` +
	`(?:meets?|conforms? to|tested to) (?:the )?(?:standard|safety standards|EN|ASTM|ISO|BS|DIN|CPSIA)\b)`

var claiming = expression(`(?i)^` + claimWords)

var (
	denying  = expression(`(?i)\b(?:not|no|never|neither|nor|cannot|without|isn't|doesn't|don't)\b`)
	notOnly  = expression(`(?i)\bnot (?:only|just)\b`)
	ofACloth = expression(`(?i)^\s+(?:[a-z-]+\s+)?(?:cloth|fabric|cotton|wool|fleece|lining|material|thread|tape|interfacing|wadding)\b`)
)

func claims(r *run) {
	for _, p := range r.Proses {
		if hit := claimIn(p.Text); hit != nil {
			r.report(p.Cond, claimed(placesIn(p)(hit[0], hit[1]), p.Text[hit[0]:hit[1]]))
		}
	}
	if hit := claimIn(r.Title); hit != nil {
		r.report(r.Valid, claimed(r.TitleSpan, r.Title[hit[0]:hit[1]]))
	}
}

func claimed(at_ finding.Span, words string) finding.Finding {
	return at(at_, "a claim", fmt.Sprintf("“%s” claims what only a test can show.", words),
		"Say what the thing is, such as “with reflective trim”, and that it is no more than that."+deferral)
}

// claimIn finds the first claiming words of a text that their own sentence does not
// deny and that do not ask for a cloth. Where one sentence claims twice, it is one.
func claimIn(text string) []int {
	end := 0 // of the words that were found last
	for at := range claimStems.beginnings(text) {
		hit := claiming().FindStringIndex(text[at:])
		if hit == nil || at < end {
			continue
		}
		hit[0], hit[1] = at, at+hit[1]
		end = hit[1]
		from := 0
		if i := lastStop(text[:hit[0]]); i >= 0 {
			from = i
		}
		before := notOnly().ReplaceAllString(text[from:hit[0]], "")
		if !denying().MatchString(before) && !ofACloth().MatchString(text[hit[1]:]) {
			return hit
		}
	}
	return nil
}

// lastStop finds where the sentence begins that a text ends in.
func lastStop(text string) int {
	last := -1
	for _, stop := range []string{". ", "! ", "? ", ".\n", "\n\n", ": "} {
		if i := strings.LastIndex(text, stop); i >= 0 {
			last = max(last, i+len(stop))
		}
	}
	return last
}

// hazardWords find what a caution is about that does not say so.
var hazardWords = map[string]func() *regexp.Regexp{
	"iron":   expression(`(?i)\b(?:iron|steam|burns?)\b`),
	"blade":  expression(`(?i)\b(?:blades?|knife|shears|scissors|cutters?|seam ripper)\b`),
	"needle": expression(`(?i)\b(?:needles?|pins?)\b`),
}

// brings tells whether an operation works with what a hazard comes from.
func brings(hazard string, row *model.Operation) bool {
	switch hazard {
	case "iron":
		return row.Heat
	case "blade":
		return row.Blade
	case "needle", "pins":
		return row.Sews || row.Class == model.Decorate || row.Class == model.Attach
	}
	return false
}

func lateCautions(r *run) {
	for _, s := range r.Steps() {
		var done []*model.Op
		for _, i := range s.Items {
			switch x := i.(type) {
			case *model.Op:
				done = append(done, x)
			case *model.Caution:
				if op := worksWith(x, done); op != nil {
					f := at(x.Text.Span, "too late", "This caution stands after the work that it is about.", "Put it at the head of the step.")
					r.report(r.Space.And(x.Cond, op.Cond), also(f, op.Span, "the work"))
				}
			}
		}
	}
}

// worksWith finds the first of some operations that a caution is about.
func worksWith(c *model.Caution, done []*model.Op) *model.Op {
	for _, op := range done {
		if c.About != "" {
			if brings(c.About, op.Row) {
				return op
			}
			continue
		}
		for hazard, words := range hazardWords {
			if words().MatchString(c.Text.Text) && brings(hazard, op.Row) {
				return op
			}
		}
	}
	return nil
}
