package dsl

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"seamwarden/dsl/finding"
)

func TestAcceptances(t *testing.T) {
	cases := []struct{ name, src, want string }{
		{"above", "// accept edge-left-raw: felt\npiece a 1 \"A\" { symmetric } when A\noption b", `edge-left-raw "felt" piece a 1 "A" { symmetric } when A`},
		{"after an empty line", "// accept edge-left-raw: felt\n\noption a\n", `edge-left-raw "felt" option a`},
		{"at the end of the line", "option a\noption b // accept name-never-used: for later\noption c\n", `name-never-used "for later" option b`},
		{"after the brace", "piece a {  // accept edge-left-raw: felt\n  symmetric\n}\n", "edge-left-raw \"felt\" piece a {  // accept edge-left-raw: felt\n  symmetric\n}"},
		{"before the closing brace", "piece a {\n  symmetric\n  // accept edge-left-raw: felt\n}\n", "edge-left-raw \"felt\" piece a {\n  symmetric\n  // accept edge-left-raw: felt\n}"},
		{"after the closing brace", "piece a {\n  symmetric\n} // accept edge-left-raw: felt\n", "edge-left-raw \"felt\" piece a {\n  symmetric\n}"},
		{"inside a block", "piece a {\n  // accept edge-left-raw: felt\n  cut 1 main\n}\n", `edge-left-raw "felt" cut 1 main`},
		{"inside a sentence", "seam s joins a to b, // accept seam-never-sewn: shown only\n  c\n", "seam-never-sewn \"shown only\" seam s joins a to b, // accept seam-never-sewn: shown only\n  c"},
		{"above prose", "step \"S\" {\n// accept a-b: c\n\"\"\"\nPress.\n\"\"\"\n}", "a-b \"c\" \"\"\"\nPress.\n\"\"\""},
		{"several", "// accept a-b: c\n// accept d-e: f\noption a // accept g-h: i\n", `a-b "c" option a | d-e "f" option a | g-h "i" option a`},
		{"after everything", "option a\n\n// accept a-b: c\n", `a-b "c" `},
		{"in a sentence that is not understood", "frob a // accept a-b: c\n", `a-b "c" frob a`},
		{"in a block that is never closed", "piece a { // accept a-b: c\n", `a-b "c" piece a { // accept a-b: c` + "\n"},
		{"without a reason", "option a // accept a-b\n", `a-b "" option a`},
		{"with an empty reason", "option a // accept a-b:  \n", `a-b "" option a`},
		{"as people write it", "option a //Accept  Edge-Left-Raw : it is so: felt\n", `edge-left-raw "it is so: felt" option a`},
		{"with a tab", "option a //\taccept\ta-b: c\n", `a-b "c" option a`},
		{"with a no-break space", "option a // accept\u00a0a-b: c\n", `a-b "c" option a`},
		{"by their places", "piece a {\n  symmetric // accept a-b: c\n} // accept d-e: f\n", "a-b \"c\" symmetric | d-e \"f\" piece a {\n  symmetric // accept a-b: c\n}"},
		{"run together", "option a // accepta-b: c\n", ""},
		{"prose", "option a // accept this: it is right\n", ""},
		{"prose with a hyphen", "option a // accept pre-shrunk cloth only\n", ""},
		{"prose with a colon", "option a // accept the hem as-is: it is short\n", ""},
		{"another word", "option a // accepted a-b: c\n", ""},
		{"no word behind", "option a // accept\n", ""},
		{"only a colon", "option a // accept: a-b\n", ""},
		{"only a hyphen", "option a // accept -: c\n", ""},
		{"in text", "option a \"// accept a-b: c\"\n", ""},
		{"in prose", "step \"S\" {\n\"\"\"\n// accept a-b: c\n\"\"\"\n}", ""},
		{"in a comment of other languages", "option a # accept a-b: c\n", ""},
		{"a letter with an accent", "option a // accept é-b: c\n", ""},
	}
	for _, c := range cases {
		f := Parse("a.seam", []byte(c.src))
		var got []string
		for _, a := range Acceptances(f) {
			got = append(got, fmt.Sprintf("%s %q %s", a.Rule, a.Reason, c.src[a.Covers.Start.Offset:a.Covers.End.Offset]))
			checkAcceptance(t, c.src, a)
		}
		if text := strings.Join(got, " | "); text != c.want {
			t.Errorf("%s:\n%s\nwant\n%s", c.name, text, c.want)
		}
	}
}

// checkAcceptance asserts that the places of an acceptance are what they say.
func checkAcceptance(t *testing.T, src string, a finding.Acceptance) {
	t.Helper()
	name := src[a.RuleAt.Start.Offset:a.RuleAt.End.Offset]
	if !strings.EqualFold(name, a.Rule) || !strings.HasPrefix(src[a.At.Start.Offset:a.At.End.Offset], "//") {
		t.Errorf("%q: the name is placed at %q", src, name)
	}
	for _, p := range []finding.Pos{a.RuleAt.Start, a.RuleAt.End, a.At.Start} {
		if place(src, p.Offset) != p {
			t.Errorf("%q: %+v is %+v", src, p, place(src, p.Offset))
		}
	}
}

// TestFormattingKeepsAcceptances puts an acceptance at the end of every line of the
// canonical file in turn, formats, and asks what it covers: the same words.
func TestFormattingKeepsAcceptances(t *testing.T) {
	lines := strings.SplitAfter(string(canonical(t)), "\n")
	tried := 0
	for i, line := range lines {
		if strings.Contains(line, "//") || strings.TrimSpace(line) == "" {
			continue
		}
		noted := slices.Clone(lines)
		noted[i] = strings.TrimSuffix(line, "\n") + " // accept edge-left-raw: ö, it is felt\n"
		before := Parse("a.seam", []byte(strings.Join(noted, "")))
		was := Acceptances(before)
		if len(was) != 1 {
			if len(was) > 1 {
				t.Errorf("line %d has %d acceptances", i+1, len(was))
			}
			continue // inside a text of several lines
		}
		src, ok := Format(before)
		if !ok {
			t.Fatalf("line %d: not formatted", i+1)
		}
		is := Acceptances(Parse("a.seam", src))
		if len(is) != 1 || is[0].Reason != "ö, it is felt" || wordsIn(string(src), is[0].Covers) != wordsIn(before.Source, was[0].Covers) {
			t.Errorf("line %d: %+v became %+v", i+1, was, is)
		}
		tried++
	}
	if tried < 100 {
		t.Errorf("only %d places were tried", tried)
	}
}

// wordsIn gives the words of a stretch without comments and layout.
func wordsIn(src string, s finding.Span) string {
	var out []string
	for _, t := range scan(src[s.Start.Offset:s.End.Offset]) {
		if t.Kind == Word || t.Kind == String {
			out = append(out, t.Text)
		}
	}
	return strings.Join(out, " ")
}
