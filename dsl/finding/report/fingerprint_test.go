package report

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"seamwarden/dsl/finding"
)

// on makes a folder with one file and a finding at each place where text stands.
func on(src, rule, text string) Folder {
	f := Folder{Path: "p", Sources: map[string]string{"a.seam": src}}
	for from := 0; ; {
		i := strings.Index(src[from:], text)
		if i < 0 {
			return f
		}
		from += i
		at := finding.Pos{Offset: from, Line: 1 + strings.Count(src[:from], "\n"), Column: 1}
		f.Findings = append(f.Findings, finding.Finding{Rule: rule, Place: finding.Place{Span: finding.Span{File: "a.seam", Start: at}}})
		from += len(text)
	}
}

func TestFingerprintsStay(t *testing.T) {
	const src = "cut 3 main\npiece a {\n  cut 1 main\n  cut 2 lining\n}\npiece b {\n  cut 1 main\n}\n"
	was := on(src, "r", "cut").prints().findings
	for name, changed := range map[string]string{
		"lines above":      "// new\n\n" + src,
		"other blanks":     strings.ReplaceAll(src, "  cut", "\tcut  "),
		"Windows endings":  strings.ReplaceAll(src, "\n", "\r\n"),
		"byte order mark":  "\ufeff" + src,
		"no last line end": strings.TrimSuffix(src, "\n"),
	} {
		if is := on(changed, "r", "cut").prints().findings; !slices.Equal(is, was) {
			t.Errorf("%s: %v became %v", name, was, is)
		}
	}
	renamed := on(src, "r", "cut")
	renamed.Path = "q/r"
	if is := renamed.prints().findings; !slices.Equal(is, was) {
		t.Errorf("moving the folder changed %v to %v", was, is)
	}
}

func TestFingerprintsDiffer(t *testing.T) {
	const src = "cut 1 main\ncut 1 main\ncut 2 main, cut 2 main\n"
	f := on(src, "r", "cut")
	f.Findings = append(f.Findings, on(src, "other-rule", "cut").Findings...)
	elsewhere := on(src, "r", "cut").Findings[0]
	elsewhere.Place.File = "b.seam"
	whole := finding.Finding{Rule: "r", Place: finding.Place{Span: finding.Span{File: "a.seam"}}}
	f.Findings = append(f.Findings, elsewhere, whole, whole, finding.Finding{Rule: "r"})
	all := f.prints().findings
	seen := map[string]int{}
	for i, p := range all {
		if before, twice := seen[p]; twice {
			t.Errorf("findings %d and %d have the fingerprint %s", before, i, p)
		}
		seen[p] = i
	}
	if len(all) != 4+4+4 {
		t.Errorf("%d fingerprints", len(all))
	}
}

func TestAcceptingOneLeavesTheOthersAlone(t *testing.T) {
	const src = "cut 1 main\ncut 1 main\ncut 1 main\n"
	f := on(src, "r", "cut")
	was := f.prints().findings
	f.Accepted = []finding.Accepted{{Finding: f.Findings[1]}}
	f.Findings = slices.Delete(f.Findings, 1, 2)
	is := f.prints()
	if !slices.Equal(is.findings, []string{was[0], was[2]}) || !slices.Equal(is.accepted, was[1:2]) {
		t.Errorf("%v became %+v", was, is)
	}
}

// TestFingerprintsMoveWithTheirLines shuffles the lines of a file, all different:
// each line keeps its fingerprint.
func TestFingerprintsMoveWithTheirLines(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lines := rapid.SliceOfNDistinct(rapid.StringMatching(`x [a-z]{1,6}`), 1, 8, rapid.ID[string]).Draw(t, "lines")
		moved := rapid.Permutation(lines).Draw(t, "moved")
		byLine := func(lines []string) map[string]string {
			marks := on(strings.Join(lines, "\n"), "r", "x ").prints().findings
			m := map[string]string{}
			for i, l := range lines {
				m[l] = marks[i]
			}
			return m
		}
		was, is := byLine(lines), byLine(moved)
		for l, mark := range was {
			if is[l] != mark {
				t.Fatalf("the line %q has another fingerprint", l)
			}
		}
	})
}

func TestHashDoesNotRunTogether(t *testing.T) {
	if hash("ab", "c") == hash("a", "bc") || hash("a") == hash("a", "") {
		t.Error("two lists have one hash")
	}
	if got := hash("1", "r"); len(got) != 32 {
		t.Errorf("%q", got)
	}
}
