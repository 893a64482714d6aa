package dsl

import (
	"testing"

	"seamwarden/dsl/finding"
)

// edited applies the edits of a file's findings until there are none.
func edited(t *testing.T, src string) (string, []finding.Finding) {
	t.Helper()
	for range 10 {
		f := Parse("x.seam", []byte(src))
		var edits []finding.Edit
		for _, x := range f.Findings {
			for _, e := range x.Edits {
				if !e.Certain || e.Title == "" {
					t.Errorf("%s: an edit is not certain or has no title: %v", x.Headline, e)
				}
				edits = append(edits, e)
			}
		}
		if len(edits) == 0 {
			return src, f.Findings
		}
		out, err := finding.Apply(src, edits)
		if err != nil {
			t.Fatalf("%q: %v", src, err)
		}
		src = out
	}
	t.Fatalf("no end of edits: %q", src)
	return "", nil
}

func TestEditsMend(t *testing.T) {
	for _, c := range []struct{ src, want string }{
		{"patern \"Tote\" { alow 1cm }\n", "pattern \"Tote\" { allow 1cm }\n"},
		{"Piece front 1 \"Front\" { edges a, b; Symmetric }\n", "piece front 1 \"Front\" { edges a, b; symmetric }\n"},
		{"pattern \"Tote\" { allow 5/8 in }\n", "pattern \"Tote\" { allow 5/8in }\n"},
		{"pattern \"Tote\" { allow 1 1/2 inches }\n", "pattern \"Tote\" { allow 1 1/2in }\n"},
		{"pattern \"Tote\" { allow .5in }\n", "pattern \"Tote\" { allow 0.5in }\n"},
		{"pattern \"Tote\" { allow 1-1/2in }\n", "pattern \"Tote\" { allow 1 1/2in }\n"},
		{"pattern \"Tote\" { allow 15MM }\n", "pattern \"Tote\" { allow 15mm }\n"},
		{"piece front #1 ‘Front’ { edges a, b }\n", "piece front 1 \"Front\" { edges a, b }\n"},
		{"piece over–front 1 \"Over front\"\n", "piece over-front 1 \"Over front\"\n"},
		{"step a \"A\" { pres side towrd back }\n", "step a \"A\" { press side toward back }\n"},
		{"step a \"A\" { swe side. }\n", "step a \"A\" { sew side }\n"},
		{"seam side joyns front.side to back.side\n", "seam side joins front.side to back.side\n"},
	} {
		got, left := edited(t, c.src)
		if got != c.want || len(left) > 0 {
			t.Errorf("%q becomes %q, want %q; left: %v", c.src, got, c.want, left)
		}
	}
}

// Where more than one thing can have been meant, there is no edit.
func TestNoEditInDoubt(t *testing.T) {
	for _, src := range []string{
		"pattern \"Tote\" { allow 5/8 }\n",                     // inches or centimetres
		"zip front \"Zip\"\n",                                  // another word for it, with a form of its own
		"step a \"A\" { overlock side }\n",                     // and with what
		"piece front 1 \"Front\" if pockets or straps\n",       // a guard is more than one word
		"piece front 1 \"Front { edges a, b }\nseam a joyns\n", // the text has no end
		"piece front 1 'Front' { edges a, b\n",                 // the block has no end
		"pattern \"Tote\" { allow 5ft }\n",
		"step a \"A\" { sew side 5x }\n",
	} {
		for _, x := range Parse("x.seam", []byte(src)).Findings {
			if len(x.Edits) > 0 {
				t.Errorf("%q: %s has the edit %v", src, x.Headline, x.Edits)
			}
		}
	}
}
