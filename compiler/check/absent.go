package check

import (
	"fmt"
	"regexp"
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "text-speaks-of-what-is-absent", Severity: finding.Warning, Category: "prose", whole: true, run: speaksOfAbsent,
		Purpose: "The text of a step names a piece or a notion in garments that do not have it.",
		Why:     "Somebody reads of a hood that her garment does not have; a guard is missing on the text."})
}

// speaksOfAbsent looks for the names of pieces and notions that are not in every
// garment. A name that is part of another, longer one that is there says nothing.
func speaksOfAbsent(r *run) {
	type named struct {
		name string
		cond condition.Cond
		decl finding.Span
	}
	var all []named
	conds := map[string]condition.Cond{}
	add := func(name string, c condition.Cond, at finding.Span) {
		name = lower(shortName(name))
		if len(name) < 4 || bodyWords[name] {
			return
		}
		if _, ok := conds[name]; !ok {
			all = append(all, named{name: name, decl: at})
		}
		conds[name] = r.Space.Or(conds[name], c)
	}
	for _, p := range r.Pieces {
		add(p.Name, p.Cond, p.Span)
	}
	for _, n := range r.Notions {
		add(n.Name, n.Cond, n.Span)
	}
	missing, names := all[:0], stems{} // those that some garments do not have
	for _, n := range all {
		if n.cond = r.Space.Diff(r.Valid, conds[n.name]); n.cond != condition.False {
			missing, names = append(missing, n), append(names, n.name)
		}
	}
	for k, t := range r.stepTexts() {
		if !names.in(t.text) {
			continue
		}
		text := withoutBraces(r.smallTexts()[k])
		for _, n := range missing {
			if !strings.Contains(text, n.name) {
				continue
			}
			bad := r.Space.And(t.cond, n.cond)
			if !r.possible(bad) {
				continue
			}
			hit := wholeWord(n.name).FindStringIndex(text)
			if hit == nil || partOfAnother(text, hit, n.name, conds, r, bad) || len(text) != len(t.text) {
				continue
			}
			if fetchedThere(t.text, n.name) {
				continue // the braces beside it are reported
			}
			f := at(t.at(hit[0], hit[1]), "not in all of them", fmt.Sprintf("The text speaks of the %s where there is none.", n.name), "Put the sentence in a block of its own with the same guard.")
			r.report(bad, also(f, n.decl, "declared here"))
		}
	}
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
