package check

import (
	"fmt"
	"regexp"
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
	for _, t := range r.written() {
		text := withoutBraces(strings.ToLower(t.text))
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
	for _, n := range v.names {
		if strings.Contains(text, n.name) {
			try(n.cond, func(bad condition.Cond) []int { return v.spokenOf(t.text, text, n, bad) }, n.name, n.decl)
		}
	}
	for _, m := range seamWords().FindAllStringSubmatchIndex(text, -1) {
		word := singular(text[m[2]:m[3]])
		c, known := v.words[word]
		if !known || bodyWords[word] || supposing().MatchString(sentenceAt(text, m[0])) || oneOfSeveral(text, m) {
			continue
		}
		try(c, func(condition.Cond) []int { return m[:2] }, word+" seam", finding.Span{})
	}
}

// spokenOf gives the first place where a text speaks of a thing as if it were
// there. The text is small letters, with blanks for its braces; the rule for
// braces reports what they fetch.
func (v *vocabulary) spokenOf(source, text string, n spokenName, bad condition.Cond) []int {
	if fetchedThere(source, n.name) {
		return nil
	}
	for _, hit := range n.find().FindAllStringIndex(text, -1) {
		sentence := sentenceAt(text, hit[0])
		switch {
		case partOfAnother(text, hit, n.name, v.conds, v.r, bad), ofATool().MatchString(text[hit[1]:]), supposing().MatchString(sentence), oneOfSeveral(text, hit), strings.HasSuffix(text[:hit[0]], " no "):
		case n.alone && text[hit[0]] == 'a' && deniedThere().MatchString(sentence):
		default:
			return hit
		}
	}
	return nil
}

// oneOfSeveral reports whether a thing is named beside another one that may stand
// in its place: the hood or the collar.
func oneOfSeveral(text string, hit []int) bool {
	return strings.HasPrefix(text[hit[1]:], " or ") || strings.HasSuffix(text[:hit[0]], " or ")
}

// seamWords finds a seam that is called by a word of its name: the yoke seam.
var seamWords = expression(`\bthe ([a-z]+) seams?\b`)

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

func wholeWord(name string) *regexp.Regexp {
	return regexp.MustCompile(`\b` + regexp.QuoteMeta(name) + `s?\b`)
}

// partOfAnother reports whether the words belong to the longer name of something
// that is there.
func partOfAnother(text string, hit []int, name string, conds map[string]condition.Cond, r *run, bad condition.Cond) bool {
	for other, c := range conds {
		if other == name || !strings.Contains(other, name) || r.possible(r.Space.Diff(bad, c)) {
			continue
		}
		for _, h := range wholeWord(other).FindAllStringIndex(text, -1) {
			if h[0] <= hit[0] && h[1] >= hit[1] {
				return true
			}
		}
	}
	return false
}
