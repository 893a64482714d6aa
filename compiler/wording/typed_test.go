package wording

import (
	"strings"
	"testing"

	"seamwarden/compiler/booklet"
)

// 1 in = 25.4 mm exactly (NIST Handbook 44, Appendix C; recalled); the pairs are
// those that are commonly printed.
func TestTypedMeasuresAreGivenInBothSystems(t *testing.T) {
	for in, want := range map[string]string{
		"Button, 3/4 in":                     "Button, ¾ in (1.9 cm)",
		"Tape, finished width 1 cm":          "Tape, finished width 1 cm (⅜ in)",
		"Tape, 1/2 in (13 mm) wide":          "Tape, 1/2 in (13 mm) wide",
		"Universal needle, 80/12":            "Universal needle, 80/12",
		"Cut 4 in lining":                    "Cut 4 in lining",
		"Webbing, 1 1/2 in, and cord, 5 mm.": "Webbing, 1½ in (3.8 cm), and cord, 5 mm (³⁄₁₆ in).",
		"":                                   "",
	} {
		if got := strings.ReplaceAll(booklet.Plain(typed(in)), "\u00a0", " "); got != want {
			t.Errorf("%q is printed %q, want %q", in, got, want)
		}
	}
}
