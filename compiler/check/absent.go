package check

import (
	"fmt"
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "text-speaks-of-what-is-absent", Severity: finding.Warning, Category: "prose", whole: true, ahead: -3, run: speaksOfAbsent,
		Purpose: "A text, a title, a figure or a caution speaks of something in garments that do not have it.",
		Why:     "Somebody reads of a hood that her garment does not have; a guard is missing on the text."})
}

// spoken is a place where a text speaks of what is not there.
type spoken struct {
	name string
	at   finding.Span
	decl finding.Span
}

// speaksOfAbsent looks for what is not in every garment, by its name and by the
// word that says what it is. A name that is part of another, longer one that is
// there says nothing. What is said of the same garments is reported together, and
// not where something else is found in just these: then the guard of the thing
// itself may be wrong.
func speaksOfAbsent(r *run) {
	v := r.vocabulary()
	if len(v.names) == 0 {
		return
	}
	groups := map[condition.Cond][]spoken{}
	var order []condition.Cond
	note := func(bad condition.Cond, s spoken) {
		bad = r.Space.And(bad, r.Valid)
		if groups[bad] == nil && !r.explained(bad) {
			order = append(order, bad)
		}
		groups[bad] = append(groups[bad], s)
	}
	small := r.smallWritten()
	for i, t := range r.written() {
		text := withoutBraces(small[i])
		if len(text) == len(t.text) && r.possible(t.cond) {
			v.listen(t, text, note)
		}
	}
	for _, bad := range order {
		r.reportSpoken(bad, groups[bad])
	}
}

// reportSpoken makes one finding of what is said of the same garments.
func (r *run) reportSpoken(bad condition.Cond, all []spoken) {
	first := all[0]
	f := also(at(first.at, "not in all of them", fmt.Sprintf("The text speaks of the %s where there is none.", first.name), "Put the sentence in a block of its own with the same guard."), first.decl, "declared here")
	var others []finding.Span
	for _, s := range all[1:] {
		f = also(f, s.at, "and of the "+s.name+" here")
		others = append(others, s.at)
	}
	r.report(bad, f, others...)
}

// listen notes what one text speaks of, each thing in the garments in which no
// other is noted.
func (v *vocabulary) listen(t stepText, text string, note func(condition.Cond, spoken)) {
	left := t.cond
	try := func(c condition.Cond, find func(bad condition.Cond) []int, name string, decl finding.Span) {
		bad := v.r.Space.Diff(left, c)
		if !v.r.possible(bad) {
			return
		}
		if hit := find(bad); hit != nil {
			left = v.r.Space.And(left, c)
			note(bad, spoken{name, t.at(hit[0], hit[1]), decl})
		}
	}
	for _, k := range v.maybeIn(text) {
		n := v.names[k]
		try(n.cond, func(bad condition.Cond) []int { return v.spokenOf(t.text, text, n, bad) }, n.name, n.decl)
	}
	for start, end, word := seamCalled(text, 0); start >= 0; start, end, word = seamCalled(text, end) {
		m := []int{start, end}
		word = singular(word)
		c, known := v.words[word]
		if !known || bodyWords[word] || supposing.in(sentenceAt(text, start)) || oneOfSeveral(text, m) {
			continue
		}
		try(c, func(condition.Cond) []int { return m }, word+" seam", finding.Span{})
	}
}

// spokenOf gives the first place where a text speaks of a thing as if it were
// there. The text is small letters, with blanks for its braces; the rule for
// braces reports what they fetch.
func (v *vocabulary) spokenOf(source, text string, n spokenName, bad condition.Cond) []int {
	if fetchedThere(source, n.name) {
		return nil
	}
	for start, end := n.find(text, 0); start >= 0; start, end = n.find(text, end) {
		hit := []int{start, end}
		sentence := sentenceAt(text, start)
		switch {
		case partOfAnother(text, hit, n.name, v.conds, v.r, bad), ofATool(text[end:]), supposing.in(sentence), oneOfSeveral(text, hit), onCondition(sentence, text[end:], n.name), strings.HasSuffix(text[:start], " no "):
		case n.alone && text[start] == 'a' && deniedThere.in(sentence):
		default:
			return hit
		}
	}
	return nil
}

// onCondition reports whether a sentence begins by naming what it holds for: "With
// pockets, sew from the waist to the bag."
func onCondition(sentence, after, name string) bool {
	sentence = strings.TrimSpace(sentence)
	for _, begin := range []string{"with ", "with a ", "with the ", "for a ", "for the "} {
		if strings.HasPrefix(sentence, begin+name) {
			rest := strings.TrimPrefix(after, "s")
			return strings.HasPrefix(rest, ",") || strings.HasPrefix(rest, ":")
		}
	}
	return false
}

// oneOfSeveral reports whether a thing is named beside another one that may stand
// in its place: the hood or the collar.
func oneOfSeveral(text string, hit []int) bool {
	return strings.HasPrefix(text[hit[1]:], " or ") || strings.HasSuffix(text[:hit[0]], " or ")
}

// bracesOut finds what text fetches, which has a rule of its own.
var bracesOut = expression(`\{[^{}]*\}`)

// withoutBraces puts blanks where bracesOut finds something, so that every other
// word keeps its place.
func withoutBraces(text string) string {
	if !strings.Contains(text, "{") {
		return text
	}
	out, open := []byte(text), -1
	for i, c := range out {
		switch {
		case c == '{':
			open = i
		case c == '}' && open >= 0:
			for k := open; k <= i; k++ {
				out[k] = ' '
			}
			open = -1
		}
	}
	return string(out)
}

// fetchedThere reports whether the text fetches the same thing in braces.
func fetchedThere(text, name string) bool {
	if !strings.Contains(text, "{") {
		return false
	}
	for _, b := range bracesOut().FindAllString(text, -1) {
		for _, word := range strings.FieldsFunc(strings.ToLower(b), func(c rune) bool { return !(c >= 'a' && c <= 'z') }) {
			if strings.Contains(name, word) && len(word) > 3 {
				return true
			}
		}
	}
	return false
}

// bodyWords name a place on the body as well as a piece: "level with the front".
var bodyWords = map[string]bool{"front": true, "back": true, "side": true, "body": true, "sleeve": true, "band": true, "edge": true, "loop": true, "strap": true,
	"neck": true, "waist": true, "shoulder": true, "lining": true, "pocket": true}

// shortName leaves the size out of a name: "Snap, 15 mm" is a snap.
func shortName(name string) string {
	if i := strings.IndexByte(name, ','); i > 0 {
		return name[:i]
	}
	return name
}

// partOfAnother reports whether the words belong to the longer name of something
// that is there.
func partOfAnother(text string, hit []int, name string, conds map[string]condition.Cond, r *run, bad condition.Cond) bool {
	for other, c := range conds {
		if other == name || !strings.Contains(other, name) || !strings.Contains(text, other) || r.possible(r.Space.Diff(bad, c)) {
			continue
		}
		for start, end := wholeWord(text, other, 0); start >= 0; start, end = wholeWord(text, other, end) {
			if start <= hit[0] && end >= hit[1] {
				return true
			}
		}
	}
	return false
}
