package dsl

import (
	"bytes"
	"os"
	"slices"
	"strings"
	"testing"
)

const canonicalFile = "../testdata/canonical.seam"

func canonical(t testing.TB) []byte {
	t.Helper()
	src, err := os.ReadFile(canonicalFile)
	if err != nil {
		t.Fatal(err)
	}
	return src
}

// checkFormat asserts what holds for every file that can be formatted.
func checkFormat(t failer, src string) (formatted string) {
	t.Helper()
	f := Parse("a.seam", []byte(src))
	out, ok := Format(f)
	if !ok {
		if string(out) != src {
			t.Fatalf("a file that is not formatted was changed:\n%q\n%q", src, out)
		}
		return src
	}
	again := Parse("a.seam", out)
	twice, ok := Format(again)
	if !ok || !bytes.Equal(twice, out) {
		t.Fatalf("formatted twice is not formatted once (ok %v):\n%q\n%q\n%q", ok, src, out, twice)
	}
	if err := equalMeaning(f, again); err != nil {
		t.Fatalf("the meaning changed: %v\n%q\n%q", err, src, out)
	}
	comments, others := scanned(src)
	if got := commentsOf(f); !slices.Equal(got, comments) {
		t.Fatalf("comments were lost in reading: %q has %q", src, got)
	}
	if got := commentsOf(again); !slices.Equal(got, comments) {
		t.Fatalf("comments were lost in formatting: %q became %q", comments, got)
	}
	if got := flat(again.Sentences); !slices.Equal(got, others) {
		t.Fatalf("words were lost: %q became %q", others, got)
	}
	return string(out)
}

func TestLayoutCases(t *testing.T) {
	for _, c := range layoutCases {
		t.Run(c.name, func(t *testing.T) {
			if got := checkFormat(t, c.in); got != c.want {
				t.Errorf("got\n%s\nwant\n%s", got, c.want)
			}
			if got := checkFormat(t, c.want); got != c.want {
				t.Errorf("the canonical form is not kept:\n%s", got)
			}
		})
	}
}

func TestCanonicalFileStays(t *testing.T) {
	src := canonical(t)
	f := Parse("canonical.seam", src)
	for _, x := range f.Findings {
		t.Errorf("line %d: %s %s", x.Place.Start.Line, x.Headline, x.Help)
	}
	if got := checkFormat(t, string(src)); got != string(src) {
		t.Errorf("formatting changes the canonical file:\n%s", firstChange(string(src), got))
	}
}

func firstChange(a, b string) string {
	x, y := strings.Split(a, "\n"), strings.Split(b, "\n")
	for i := 0; i < min(len(x), len(y)); i++ {
		if x[i] != y[i] {
			return "- " + x[i] + "\n+ " + y[i]
		}
	}
	return "one is longer"
}

// TestTornFilesStay reads files whose shape is in doubt.
func TestTornFilesStay(t *testing.T) {
	for name, src := range map[string]string{
		"brace not closed": "piece a {\n   symmetric\n", "brace too many": "piece a { }\n }\n", "quotation mark": "option   a \"A\n",
		"text block": "step \"A\" {\n   \"\"\"\n text\n}\n", "byte": "option   a \xff\n", "zero byte": "option  a\x00", "too deep": strings.Repeat("a{", 50) + strings.Repeat("}", 50),
		"apostrophe": "option   a 'A\n", "comment": "/*  a\noption  a",
	} {
		f := Parse("a.seam", []byte(src))
		if out, ok := Format(f); ok || string(out) != src || len(f.Findings) == 0 {
			t.Errorf("%s: formatted (%v) to %q, %d findings", name, ok, out, len(f.Findings))
		}
	}
}

// TestLinesJoin asserts that the formatter ends lines only where the reader goes on.
func TestLinesJoin(t *testing.T) {
	for w := range breaks {
		if !joins[w] {
			t.Errorf("%s may begin a line, but does not join it", w)
		}
	}
	for w := range clauses {
		if !breaks[w] {
			t.Errorf("%s is a clause, but no line ends before it", w)
		}
	}
	for w := range asks {
		if !reserved[w] {
			t.Errorf("%s asks for more, but could be a name", w)
		}
	}
}

func FuzzFormat(f *testing.F) {
	seeds(f)
	f.Fuzz(func(t *testing.T, src string) { checkFormat(t, src) })
}
