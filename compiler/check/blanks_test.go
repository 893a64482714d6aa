package check_test

import (
	"strings"
	"testing"

	"seamwarden/dsl/finding"
)

// TestWhatIsNotMeasuredIsListed: as soon as one piece is drawn, seams and tapes that could
// not be measured are listed, each once, and nothing is if nothing is drawn.
func TestWhatIsNotMeasuredIsListed(t *testing.T) {
	whole := "seam side joins front.side to back.side"
	text := tunicOf(whole, "  sew side")
	tape := "tape binding \"Bias binding\" { length 2m }\n\npiece front 1"
	for _, c := range []struct {
		what, text string
		says       []string
	}{
		{"both are drawn", text, nil},
		{"one is not", strings.Replace(text, "  outline \"back.svg\"\n", "", 1), []string{"the lengths of the two rows of the shoulder and side seams, where a piece has no outline"}},
		{"none is", strings.Replace(strings.Replace(text, "  outline \"back.svg\"\n", "", 1), "  outline \"front.svg\"\n", "", 1), nil},
		{"one has an ease", strings.Replace(strings.Replace(text, whole, whole+" with ease 1cm", 1), "  outline \"back.svg\"\n", "", 1),
			[]string{"the ease of the side seam", "the lengths of the two rows of the shoulder seam, where"}},
		{"pleated", strings.Replace(text, "  sew side", "  pleat back.side\n  sew side", 1), []string{"the side seam, where it is not known what of an edge is sewn or taken up"}},
		{"a tape along an edge that is not drawn", strings.NewReplacer("piece front 1", tape, "  outline \"back.svg\"\n", "", "  hem front.hem, back.hem turning 1cm, 1cm", "  bind front.hem, back.hem with binding").Replace(text),
			[]string{"the shoulder and side seams", "whether the bias binding is as long as what it goes along"}},
	} {
		found, sources := findings(t, map[string]string{"pattern.seam": c.text, "front.svg": half(false, 100, 500, 300), "back.svg": half(true, 100, 500, 300)})
		var list []finding.Finding
		for _, f := range found {
			if f.Severity == finding.Unchecked && (strings.Contains(f.Headline, "lengths") || strings.Contains(f.Headline, "ease") || strings.Contains(f.Headline, "as long as")) || strings.Contains(f.Rule, "length") {
				list = append(list, f)
			}
		}
		if len(list) != len(c.says) {
			t.Errorf("%s: %d are listed:\n%s", c.what, len(list), written(list, sources))
			continue
		}
		for _, say := range c.says {
			if !strings.Contains(written(list, sources), say) {
				t.Errorf("%s: want %q, got\n%s", c.what, say, written(list, sources))
			}
		}
	}
}
