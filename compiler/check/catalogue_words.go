package check

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/dsl/finding"
)

// What the author's words say of views, sizes and measures.
func init() {
	register(Rule{ID: "text-names-another-view", Severity: finding.Warning, Category: "prose", whole: true, run: otherView,
		Purpose: "The text or title of a step speaks of a view that does not exist, or in which it is not printed.",
		Why:     "It was moved or copied from another view, or the views were renamed."})
	register(Rule{ID: "text-names-another-size", Severity: finding.Warning, Category: "prose", run: otherSize,
		Purpose: "The text of a step speaks of a size that the table does not have.",
		Why:     "It is left over from another range of sizes, and nobody is meant by it."})
	register(Rule{ID: "fraction-without-space", Severity: finding.Warning, Category: "prose", ahead: 2, run: runTogether,
		Purpose: "A whole number and a fraction are written without a space between.",
		Why:     "11/2 in is read as one and a half, or as eleven halves."})
	register(Rule{ID: "edition-not-in-the-changes", Severity: finding.Advice, Category: "prose", FromAbsence: true, run: editionUntold,
		Purpose: "The list of changes says nothing of the edition that the head names.",
		Why:     "Whoever has the edition before wants to know what is new, and whether the number was meant to change."})
	register(Rule{ID: "change-after-this-edition", Severity: finding.Warning, Category: "prose", run: changeAhead,
		Purpose: "The list of changes tells of a later edition than the head names.",
		Why:     "One of the two was not brought up to date: the cover shows the old number on the new pattern, or the change is not made yet."})
}

var viewNamed = expression(`\b[Vv]iew ([A-Z]|[0-9]+)\b`)

// viewIs gives where a view is made, and false if there is none of that name.
func (r *run) viewIs(id string) (condition.Cond, bool) {
	for v := range r.Space.Vars() {
		x := r.Space.Var(condition.VarID(v))
		if i := slices.Index(x.Values, id); x.Kind == condition.View && i >= 0 {
			return r.Space.Is(condition.VarID(v), i), true
		}
	}
	return condition.False, false
}

func otherView(r *run) {
	if len(r.Views) == 0 {
		return
	}
	texts := r.stepTexts()
	for _, s := range r.Steps() {
		texts = append(texts, stepText{s, s.Title.Text, s.Cond, func(int, int) finding.Span { return s.Title.Span }})
	}
	for _, t := range texts {
		if !viewStems.in(t.text) {
			continue
		}
		for _, m := range viewNamed().FindAllStringSubmatchIndex(t.text, -1) {
			id := t.text[m[2]:m[3]]
			c, ok := r.viewIs(id)
			switch here := r.Space.And(t.cond, r.Valid); {
			case !ok:
				r.report(t.cond, at(t.at(m[0], m[1]), "no such view", fmt.Sprintf("The text speaks of view %s, and there is none.", id), "Write {view NAME} for its letter: then a view that is renamed is followed."))
			case !r.Space.Overlaps(here, c):
				r.report(t.cond, at(t.at(m[0], m[1]), "not printed in this view", fmt.Sprintf("The text speaks of view %s and is printed in other views only.", id), "Guard it as what it says is guarded, or change the letter."))
			}
		}
	}
}

var (
	sizeNamed = expression(`\b[Ss]izes? (\d{1,3}|X{0,3}[SL]|M|\dXL)\b( [a-z]+)?`)
	// soldBySize are things that have sizes of their own.
	soldBySize = expression(`^ (needles?|buttons?|snaps?|hooks?|eyelets?|pins?|thread|zips?|zippers?|overlock|stitch|foot|to|mm|cm|in)$`)
	ownSizes   = expression(`(?i)(needle|button|snap|hook|pin|shoe)s?[^.]{0,20}$`)
)

func otherSize(r *run) {
	if r.Sizes == nil || len(r.Sizes.Sizes) == 0 {
		return
	}
	for _, t := range r.stepTexts() {
		if !sizeStems.in(t.text) {
			continue
		}
		for _, m := range sizeNamed().FindAllStringSubmatchIndex(t.text, -1) {
			id, next := t.text[m[2]:m[3]], ""
			if m[4] >= 0 {
				next = t.text[m[4]:m[5]]
			}
			if slices.Contains(r.Sizes.Sizes, id) || soldBySize().MatchString(next) || ownSizes().MatchString(t.text[:m[0]]) || strings.HasPrefix(t.text[m[3]:], "/") {
				continue
			}
			r.report(t.cond, at(t.at(m[0], m[3]), "no such size", fmt.Sprintf("The text speaks of size %s, and the table has none.", id), fmt.Sprintf("The sizes are %s.", listed(r.Sizes.Sizes))))
		}
	}
}

var noSpace = expression(`\b([1-9]\d*)([1-9]\d?)/(2|4|8|16)(?: ?in\b| inch(?:es)?\b|[″"])`)

// runTogether keeps the rule for bare measures from judging the same text.
func runTogether(r *run) {
	for _, t := range r.stepTexts() {
		if !slashStems.in(t.text) {
			continue
		}
		for _, m := range noSpace().FindAllStringSubmatchIndex(t.text, -1) {
			over, _ := strconv.Atoi(t.text[m[4]:m[5]])
			under, _ := strconv.Atoi(t.text[m[6]:m[7]])
			if over >= under {
				continue // 11/2 is split as 1 and 1/2; what cannot be split so is plain
			}
			whole := t.text[m[2]:m[3]]
			r.report(t.cond, at(t.at(m[0], m[1]), "which of the two?", fmt.Sprintf("“%s” can be read in two ways.", t.text[m[0]:m[1]]), fmt.Sprintf("Write a space: %s %d/%d in; or fetch the measure with braces.", whole, over, under)))
			r.tell(t.text, t.cond)
		}
	}
}

func editionUntold(r *run) {
	if len(r.Changes) == 0 {
		return
	}
	for _, c := range r.Changes {
		if c.Edition.Text == r.Edition || laterThan(c.Edition.Text, r.Edition) {
			return
		}
	}
	first := r.Changes[0].Edition
	headline := fmt.Sprintf("The head names edition %s, and the list of changes says nothing of it.", r.Edition)
	if r.Edition == "" {
		headline = "There is a list of changes, and the head names no edition."
	}
	r.report(condition.True, at(first.Span, "the last that is told", headline, "Say what is new: change \"EDITION\" \"…\"; and see that the head names the edition that you hand on."))
}

func changeAhead(r *run) {
	for _, c := range r.Changes {
		if r.Edition != "" && laterThan(c.Edition.Text, r.Edition) {
			r.report(condition.True, at(c.Edition.Span, "later", fmt.Sprintf("The changes tell of edition %s, and the head names %s.", c.Edition.Text, r.Edition), "Bring the head up to date, or take the change out until it is made."))
			return
		}
	}
}

// laterThan compares editions that are numbers with points between them. Others
// have no order.
func laterThan(a, b string) bool {
	x, y := strings.Split(a, "."), strings.Split(b, ".")
	for i := range max(len(x), len(y)) {
		n, m := 0, 0
		var err1, err2 error
		if i < len(x) {
			n, err1 = strconv.Atoi(x[i])
		}
		if i < len(y) {
			m, err2 = strconv.Atoi(y[i])
		}
		if err1 != nil || err2 != nil {
			return false
		}
		if n != m {
			return n > m
		}
	}
	return false
}
