package check

import (
	"fmt"
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "said-twice", Severity: finding.Advice, Category: "prose", ahead: -3, run: saidTwice,
		Purpose: "Two texts or two figures of a step say nearly the same in the same garments.",
		Why:     "They are two ways of one thing, and the guard that parts them is missing; or one was copied and left over."})
	register(Rule{ID: "two-zips-in-one-place", Severity: finding.Warning, Category: "seams", run: twoZips,
		Purpose: "A seam catches the same half of two zips in the same garment.",
		Why:     "One of them lies on the other; where there are two to choose from, each has its guard."})
}

// sameWords is how long a run of words has to be, or how many of a hundred words
// two figures have to share, to be the same sentence and no turn of phrase. Both
// were found by trying: nothing to be cited.
const (
	sameWords = 8
	sameShare = 65
)

// saidTwice compares the texts of each step with each other, and its figures. A
// figure may begin as another one does, since both look at the same place, so the
// whole of their words is compared.
func saidTwice(r *run) {
	for _, s := range r.Steps() {
		var texts, figures []stepText
		for _, i := range s.Items {
			switch x := i.(type) {
			case *model.Prose:
				texts = append(texts, stepText{s, x.Text, x.Cond, placesIn(x)})
			case *model.Figure:
				if x.Body != nil {
					figures = append(figures, stepText{s, x.Body.Text, x.Cond, placesIn(x.Body)})
				}
			}
		}
		r.twins(texts, "texts", func(a, b []string) bool { return sharedRun(a, b) >= sameWords })
		r.twins(figures, "figures", func(a, b []string) bool { return share(a, b) >= sameShare })
	}
}

// twins reports each text that is like an earlier one.
func (r *run) twins(all []stepText, what string, alike func(a, b []string) bool) {
	if len(all) < 2 {
		return
	}
	words := make([][]string, len(all))
	of := func(i int) []string { // most texts meet no other one
		if words[i] == nil {
			words[i] = strings.FieldsFunc(strings.ToLower(all[i].text), func(c rune) bool { return !(c >= 'a' && c <= 'z' || c == '{' || c == '}') })
		}
		return words[i]
	}
	for i := range all {
		for j := range i {
			bad := r.Space.All(all[i].cond, all[j].cond, r.Valid)
			if bad == condition.False || r.explained(bad) || !alike(of(i), of(j)) {
				continue
			}
			f := at(all[i].at(0, 0), "much the same", fmt.Sprintf("Two %s of this step say nearly the same in the same garments.", what), "Guard each as it is meant, or say it once.")
			r.report(bad, also(f, all[j].at(0, 0), "as here"))
			break
		}
	}
}

// sharedRun gives the length of the longest run of words that two texts share.
func sharedRun(a, b []string) (longest int) {
	above := make([]int, len(b)+1)
	for _, x := range a {
		before := 0
		for j, y := range b {
			here := 0
			if x == y {
				here = before + 1
			}
			before, above[j+1] = above[j+1], here
			longest = max(longest, here)
		}
	}
	return longest
}

// share gives how many of a hundred words two texts have in common.
func share(a, b []string) int {
	has := map[string]int{}
	for _, w := range a {
		has[w] |= 1
	}
	for _, w := range b {
		has[w] |= 2
	}
	both := 0
	for _, in := range has {
		if in == 3 {
			both++
		}
	}
	return 100 * both / max(1, len(has))
}

// twoZips looks at what each seam catches. Seams that catch the same two are one
// finding, as the two sides of a front are.
func twoZips(r *run) {
	bad := condition.False
	var first, second *model.Target
	for _, s := range r.Seams {
		for i, a := range s.Catching {
			for _, b := range s.Catching[:i] {
				if !sameHalf(a, b) {
					continue
				}
				if c := r.Space.All(s.Cond, a.Target.Cond, b.Target.Cond); r.possible(c) {
					if first == nil {
						first, second = b.Target, a.Target
					}
					bad = r.Space.Or(bad, c)
				}
			}
		}
	}
	if first == nil {
		return
	}
	f := at(second.Span, "in the same place", fmt.Sprintf("%s and %s are caught in one seam, on the same side.", Upper(the(first.Notion.Name)), the(second.Notion.Name)),
		"Guard each of them, so that a garment has one; or catch them at marks of their own.")
	r.report(bad, also(also(f, first.Notion.Span, "this one"), second.Notion.Span, "and this"))
}

// sameHalf reports whether two caught things are the same half of two zips, with
// nothing that gives them different places.
func sameHalf(a, b *model.Caught) bool {
	x, y := a.Target, b.Target
	if x.Notion == nil || y.Notion == nil || x.Notion == y.Notion || x.NotionBit == "" || x.NotionBit != y.NotionBit || a.At != nil || b.At != nil {
		return false
	}
	return !x.Notion.Set && !y.Notion.Set
}
