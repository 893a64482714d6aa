package check

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// Whatever an expression finds, one of its stems is in the text.
func TestStems(t *testing.T) {
	words := map[string][]string{
		"claims": {"high", "hi", "-", "vis", "visibility", "PPE", "ppe", "zipper", "protective", "clothing", "wear", "safety", "garment", "Flame", "fire", "proof", "resistant",
			"retardant", "choke", "child", "safe", "CE", "ce", "mark", "marked", "Certified", "complies", "comply", "with", "meets", "meet", "conform to", "tested to", "the",
			"standard", "EN", "iso", "CPSIA", ".", "not"},
		"views":  {"view", "View", "views", "A", "B", "2", "re", "the"},
		"sizes":  {"size", "Size", "sizes", "8", "XXL", "M", "12", "the", "needle"},
		"spaces": {"11/2", "1", "12/4", " in", "in", "inch", "inches", "″", "\"", "of", "21/8 in"},
		"baste":  {"baste", "Basting", "BASTED", "take out", "the", "bas"},
	}
	claimed := regexp.MustCompile(`(?i)\b` + claimWords)
	for _, c := range []struct {
		name  string
		form  *regexp.Regexp
		stems *stems
	}{{"claims", claimed, claimStems}, {"views", viewNamed(), viewStems}, {"sizes", sizeNamed(), sizeStems}, {"spaces", noSpace(), slashStems}, {"baste", takenOut(), basteStems}} {
		found := 0
		rapid.Check(t, func(t *rapid.T) {
			gap := rapid.SampledFrom([]string{" ", ""}).Draw(t, "gap")
			text := strings.Join(rapid.SliceOfN(rapid.SampledFrom(words[c.name]), 1, 10).Draw(t, "words"), gap)
			if c.form.MatchString(text) {
				found++
				if !c.stems.in(text) {
					t.Fatalf("%s: %q is found, and has no stem", c.name, text)
				}
				at := c.form.FindStringIndex(text)[0]
				if places := slices.Collect(c.stems.beginnings(text)); c.name == "claims" && !slices.Contains(places, at) {
					t.Fatalf("%q: a claim begins at %d, and stems at %v", text, at, places)
				}
			}
		})
		if found == 0 {
			t.Errorf("%s: nothing was found in any text", c.name)
		}
	}
}

// A text without its braces is what the expression for them makes of it.
func TestWithoutBraces(t *testing.T) {
	found := 0
	rapid.Check(t, func(t *rapid.T) {
		text := strings.Join(rapid.SliceOfN(rapid.SampledFrom([]string{"{", "}", "allow side", "é", "\n", " of "}), 0, 10).Draw(t, "text"), "")
		want := bracesOut().ReplaceAllStringFunc(text, func(s string) string { return strings.Repeat(" ", len(s)) })
		if got := withoutBraces(text); got != want {
			t.Fatalf("%q became %q and should be %q", text, got, want)
		}
		if want != text {
			found++
		}
	})
	if found == 0 {
		t.Error("no text had braces")
	}
}
