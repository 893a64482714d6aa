package check

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// What is looked up by hand is what an expression finds: the judge is package
// regexp.
func TestPhrasesAsExpressions(t *testing.T) {
	each := func(find func(text string, from int) (int, int)) func(string) [][]int {
		return func(text string) (all [][]int) {
			for start, end := find(text, 0); start >= 0; start, end = find(text, end) {
				all = append(all, []int{start, end})
			}
			return
		}
	}
	mark := outcome{}
	of := func(word, many string) string {
		return `\b(?:the|each|every|both|this|that|these|its|their|your|an?|one|two|three|left|right|upper|lower|whole|free|finished) (?:` + word + `s?)\b` + many
	}
	words := []string{"the", "a", "an", "one", "left", "free", "tab", "tabs", "tie", "ties", "yoke", "seam", "seams", "mark", "marks", "if", "as", "for", "view", "views", "where",
		"it", "is", "there", "it has", " ", " ", " ", " ", ", ", ". ", "-", "é", "_", "7", "\n", "s", "loop place", "pins", "look", "go over", "forgotten", "remains", "."}
	for name, c := range map[string]struct {
		form string
		find func(string) [][]int
		own  string // words that are found, and come often
	}{
		"whole":    {`\b(?:loop place)s?\b`, each(func(text string, from int) (int, int) { return wholeWord(text, "loop place", from) }), "loop place"},
		"one word": {`\b(?:tab)s?\b`, each(func(text string, from int) (int, int) { return wholeWord(text, "tab", from) }), "tab"},
		"noun":     {of("tab", `|\b(?:tabs)\b`), each(func(text string, from int) (int, int) { return asNoun(text, "tab", from) }), "the tab"},
		"article":  {of("left", `|\b(?:lefts)\b`), each(func(text string, from int) (int, int) { return asNoun(text, "left", from) }), "a left"},
		"verb":     {of("tie", ""), each(func(text string, from int) (int, int) { return asNoun(text, "tie", from) }), "the tie"},
		"marks":    {`\b(?:the|its|their|each|every|both|two) (?:[a-z]+ )?marks?\b`, each(mark.find), "two marks"},
		"sought": {`(?s)^.*(?:\b(feel|look|check|search|count|run|go over|see that|make sure|remove|take out|free of|forgotten)\b[^.]*\bpins?\b|\bpins?\b[^.]*\b(left|forgotten|remain|stay)).*$`, func(text string) [][]int {
			if pinsSought(text) {
				return [][]int{{0, len(text)}}
			}
			return nil
		}, "pins are left"},
		"pins":      {`\bpins?\b`, each(pinsSpoken.first), "pin"},
		"supposing": {`\b(if|unless|whether|without|views?|instead|as for|like|option|options|leave out|left out|chose|chosen|(where|when) (there|you|your|one|it has|it is there))\b`, each(supposing.first), "where it has"},
		"seams":     {`\bthe ([a-z]+) seams?\b`, each(func(text string, from int) (int, int) { a, b, _ := seamCalled(text, from); return a, b }), "the yoke seam"},
	} {
		t.Run(name, func(t *testing.T) {
			form := regexp.MustCompile(c.form)
			rapid.Check(t, func(t *rapid.T) {
				list := rapid.SliceOfN(rapid.SampledFrom(slices.Concat(words, slices.Repeat([]string{c.own}, 5))), 1, 40).Draw(t, "text")
				text := strings.Join(list, rapid.SampledFrom([]string{"", " "}).Draw(t, "gap"))
				want, got := form.FindAllStringIndex(text, -1), c.find(text)
				if !slices.EqualFunc(want, got, slices.Equal) {
					t.Fatalf("in %q: found %v, and the expression finds %v", text, got, want)
				}
			})
			if got := c.find(c.own); len(got) != 1 {
				t.Errorf("%q: found %v, want one place", c.own, got)
			}
		})
	}
}

// The verbs of a title are those that an expression finds; the judge is package
// regexp.
func TestPromisesAsExpression(t *testing.T) {
	form := regexp.MustCompile(`(?:^|,? and |, )([a-z]+)(?: the\b| a\b| an\b| each\b| every\b| all\b| both\b| it\b| them\b| its\b| their\b| your\b|,? and [a-z])`)
	words := []string{"press", "turn", "baste", "sew", "the", "them", "a", "hem", " and ", ", and ", ", ", " ", " ", " ", "andy", ". ", "-"}
	wanted := func(title string) (want []string) {
		for from := 0; ; {
			m := form.FindStringSubmatchIndex(title[from:])
			if m == nil {
				return
			}
			if verb := title[from+m[2] : from+m[3]]; doneBy[verb] != nil && (from == 0 || m[0] > 0 || title[from] == ' ' || title[from] == ',') {
				want = append(want, verb)
			}
			from += m[3]
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		title := strings.Join(rapid.SliceOfN(rapid.SampledFrom(words), 1, 20).Draw(t, "title"), "")
		if got, want := promises(title), wanted(title); !slices.Equal(got, want) {
			t.Fatalf("%q promises %v, and the expression finds %v", title, got, want)
		}
	})
	for title, want := range map[string][]string{"press the hem": {"press"}, "turn and press the hem": {"turn", "press"}, "the press": nil} {
		if got := promises(title); !slices.Equal(got, want) || !slices.Equal(wanted(title), want) {
			t.Errorf("%q promises %v, and is to promise %v", title, got, want)
		}
	}
}
