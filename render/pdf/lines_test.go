package pdf

import (
	"bytes"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/jung-kurt/gofpdf"
	"golang.org/x/text/unicode/norm"

	"seamwarden/compiler/booklet"
)

func newTestSetter(t testing.TB) *setter {
	t.Helper()
	s, err := newSetter()
	if err != nil {
		t.Fatal(err)
	}
	return s
}

var plain = style{family: serif, size: 12}

// setLines breaks text into lines and gives them as strings.
func setLines(t *testing.T, s *setter, in []booklet.Inline, width float64) []string {
	t.Helper()
	a, err := s.atoms(in, plain)
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for _, l := range breakLines(s, a, width) {
		if sum(l.runs) > width+slack || math.Abs(sum(l.runs)-l.width) > slack {
			t.Errorf("line %q is %.2f wide, said to be %.2f, in a column of %.2f", textOf(l.runs), sum(l.runs), l.width, width)
		}
		out = append(out, textOf(l.runs))
	}
	return out
}

func textOf(rs []run) string {
	var s strings.Builder
	for _, r := range rs {
		s.WriteString(string(r.text))
	}
	return s.String()
}

func TestLinesBreakWhereTheyMay(t *testing.T) {
	s := newTestSetter(t)
	wide := sum(s.shape("Stitch along", plain, ""))
	for _, c := range []struct {
		name, text string
		width      float64
		want       []string
	}{
		{"spaces", "Stitch along  the edge", wide, []string{"Stitch along", "the edge"}},
		{"just too narrow", "Stitch along the edge", wide - 0.1, []string{"Stitch", "along the", "edge"}},
		{"no-break space", "Stitch 10\u00A0mm", wide - 5, []string{"Stitch", "10\u00A0mm"}},
		{"narrow no-break space", "Stitch 10\u202Fmm", wide - 12, []string{"Stitch", "10\u202Fmm"}},
		{"no-break hyphen", "Stitch a\u2011line", wide - 12, []string{"Stitch", "a\u2010line"}},
		{"hyphen", "Stitch-along", wide - 5, []string{"Stitch-", "along"}},
		{"size range", "Sizes 6-28", sum(s.shape("Sizes 6-", plain, "")), []string{"Sizes", "6-28"}},
		{"minus", "Stitches -5", sum(s.shape("Stitches -", plain, "")), []string{"Stitches", "-5"}},
		{"soft hyphen used", "Stitch\u00ADalong", wide - 5, []string{"Stitch\u2010", "along"}},
		{"soft hyphen unused", "Stitch\u00ADalong", wide, []string{"Stitchalong"}},
		{"soft hyphen without room", "Stitch\u00ADalong", sum(s.shape("Stitch\u2010", plain, "")), []string{"Stitch\u2010", "along"}},
		{"zero width space", "Stitch\u200Balong", wide - 5, []string{"Stitch", "along"}},
		{"white space of a source file", "Stitch\n\talong", wide, []string{"Stitch along"}},
		{"line separator", "a\u2028b", wide, []string{"a", "b"}},
		{"nothing", "", wide, nil},
		{"only spaces", "   ", wide, nil},
		{"accents apart", "cafe\u0301", wide, []string{"café"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := setLines(t, s, txt(c.text), c.width); !slices.Equal(got, c.want) {
				t.Errorf("lines %q, want %q", got, c.want)
			}
		})
	}
}

func TestMeasureStaysWithItsUnit(t *testing.T) {
	s := newTestSetter(t)
	for _, m := range []booklet.Measure{{Imperial: "1 ³⁄₁₆ in", Metric: "3 cm"}, {Imperial: "⅝\u00A0in", Metric: "1.6\u202Fcm", MetricFirst: true}} {
		for width := 40.0; width < 200; width += 3 {
			in := []booklet.Inline{booklet.Text("Stitch at "), m, booklet.Text(" from it")}
			text := strings.Join(setLines(t, s, in, width), "|")
			if strings.Contains(text, "|in") || strings.Contains(text, "|cm") || strings.Contains(text, "|³") {
				t.Errorf("at width %.0f: %q", width, text)
			}
		}
	}
}

func TestLongWordIsCutNotLost(t *testing.T) {
	s := newTestSetter(t)
	word := strings.Repeat("seam", 50)
	in := []booklet.Inline{booklet.Text("a " + word[:30]), booklet.Strong{Text: txt(word[30:])}, booklet.Text(" b")}
	if got := strings.Join(setLines(t, s, in, 60), ""); got != "a"+word+"b" && got != "a"+word+" b" {
		t.Errorf("got %q", got)
	}
	a, err := s.atoms(txt("WWW"), plain)
	if err != nil {
		t.Fatal(err)
	}
	if got := breakLines(s, a, 3); len(got) != 3 { // no room even for one: one a line
		t.Errorf("%d lines", len(got))
	}
}

func TestFractionComesFromOneFont(t *testing.T) {
	s := newTestSetter(t)
	for _, f := range []string{"³⁄₁₆", "¹⁰⁄₃₂", "½", "⅝", "⅙", "⁰⁄₉"} {
		for _, st := range []style{plain, {family: sans, size: 11, bold: true}, {family: serif, italic: true, size: 9}} {
			rs := s.shape(f, st, "")
			if len(rs) != 1 || string(rs[0].text) != f {
				t.Errorf("%s is set as %d runs: %q", f, len(rs), textOf(rs))
			}
		}
	}
	if len(s.missing) > 0 {
		t.Errorf("no font has %q", string(s.missingRunes()))
	}
}

// TestWidthsAgreeWithTheWriter compares the widths that layout reads from the
// fonts with those that the PDF package reads from them and writes into the file.
func TestWidthsAgreeWithTheWriter(t *testing.T) {
	s := newTestSetter(t)
	f := gofpdf.New("P", "pt", "A4", "")
	all := []*face{}
	for _, fam := range s.faces.text {
		all = append(all, fam[:]...)
	}
	all = append(all, s.faces.fallback[:]...)
	all = append(all, s.faces.fraction[0][0], s.faces.fraction[1][1])
	for _, fc := range all {
		f.AddUTF8FontFromBytes(fc.name, "", bytes.Clone(fc.ttf))
		f.SetFont(fc.name, "", 10)
		known := 0
		for r := rune(' '); r < 0x2700; r++ {
			w := s.advance(fc, r)
			if w == noGlyph {
				continue
			}
			known++
			if got := f.GetStringSymbolWidth(string(r)); got != w {
				t.Fatalf("%s: %q is %d wide here and %d in the file", fc.name, r, w, got)
			}
		}
		if known < 300 {
			t.Errorf("%s has only %d characters", fc.name, known)
		}
	}
}

// Default_Ignorable_Code_Point and canonical equivalence, asked of x/text for the
// characters that text of this trade may hold.
func TestPrintableKeepsWhatIsSeen(t *testing.T) {
	for r := rune(0x21); r < 0x2000; r++ {
		got := string(printable([]rune{r}))
		switch {
		case r >= 0x7F && r <= 0x9F:
			if got != " " {
				t.Errorf("control %U becomes %q", r, got)
			}
		case r == 0xAD || r == 0x34F || r == 0x61C:
			if got != "" {
				t.Errorf("%U is drawn", r)
			}
		case got != string(r):
			t.Errorf("%U becomes %q", r, got)
		}
	}
	if norm.NFC.String("½³⁄₁₆") != "½³⁄₁₆" {
		t.Error("fractions are not kept by composing")
	}
}
