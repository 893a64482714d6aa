package dsl

import (
	"strings"
	"testing"
)

func TestUnquote(t *testing.T) {
	for in, want := range map[string]string{
		`"Over front"`: "Over front", `""`: "", `“Over front”`: "Over front", `„Over front“`: "Over front", `”Over front”`: "Over front",
		`"The “magic” pocket"`: "The “magic” pocket", `"Button, 3/4\""`: `Button, 3/4"`, `“Button, 3/4"”`: `Button, 3/4"`, `"a \\"`: `a \`,
		`"not closed`: "not closed", `"closed \"`: `closed "`, `“a"`: "a",
	} {
		if got := Unquote(in); got != want {
			t.Errorf("%s: got %q, want %q", in, got, want)
		}
		if strings.HasSuffix(in, `\"`) || in == `"not closed` {
			continue
		}
		straight := straightQuotes(in)
		if got := Unquote(straight); got != want {
			t.Errorf("%s: straight quotes give %s, which is %q, want %q", in, straight, got, want)
		}
		if toks := scan(straight); len(toks) != 2 || toks[0].Text != straight || toks[0].Fault() != "" {
			t.Errorf("%s: straight quotes give %s, which is read as %v", in, straight, toks)
		}
	}
}

// The fractions are those of UnicodeData.txt, compatibility decompositions
// (recalled from memory).
func TestPlainNumber(t *testing.T) {
	for in, want := range map[string]string{
		"1½in": "1 1/2in", "½in": "1/2in", "1 ½in": "1 1/2in", "1   1/2in": "1 1/2in", "1\u00a01/2in": "1 1/2in", "5/8in": "5/8in", "5⁄8in": "5/8in",
		"1.5cm": "1.5cm", "12": "12", "2⅞yd": "2 7/8yd", "3%": "3%",
	} {
		if got := plainNumber(in); got != want {
			t.Errorf("%s: got %q, want %q", in, got, want)
		}
		toks := scan(in)
		if len(toks) != 2 || toks[0].Text != in || toks[0].Fault() != "" {
			t.Errorf("%s is read as %v", in, toks)
		}
	}
}

func TestDedent(t *testing.T) {
	for in, want := range map[string]string{
		"\"\"\"\"\"\"": "", "\"\"\" One. \"\"\"": "One.", "\"\"\"\n  One.\n  Two.\n  \"\"\"": "One.\nTwo.",
		"\"\"\"\r\n  One.\r\n\r\n    two  \r\n  \"\"\"": "One.\n\n  two", "\"\"\"One.\n    Two.\n  three\"\"\"": "One.\n  Two.\nthree",
		"\"\"\"\n\tOne.\n\t\ttwo\n\"\"\"": "One.\n\ttwo", "\"\"\"\n\n  \n  One.\n\n  \n\"\"\"": "One.",
		"\"\"\"\n    One.\n\ttwo\n\"\"\"": "One.\ntwo",
	} {
		got, starts := Dedent(in)
		if got != want {
			t.Errorf("%q: got %q, want %q", in, got, want)
		}
		checkStarts(t, in, got, starts)
	}
}

// checkStarts asserts that each line of a dedented text stands where it should.
func checkStarts(t failer, block, text string, starts []int) {
	t.Helper()
	lines := strings.Split(text, "\n")
	if text == "" && len(starts) == 0 {
		return
	}
	if len(lines) != len(starts) {
		t.Fatalf("%q: %d lines, %d starts", block, len(lines), len(starts))
	}
	for i, line := range lines {
		if !strings.HasPrefix(block[starts[i]:], line) {
			t.Fatalf("%q: line %q does not stand at %d", block, line, starts[i])
		}
	}
}
