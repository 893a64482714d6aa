package measure

import (
	"strings"
	"testing"
)

func TestParse(t *testing.T) {
	for text, want := range map[string]Length{
		"5/8in":        FromInches(5, 8),
		"1 1/2in":      FromInches(3, 2),
		"1½in":         FromInches(3, 2),
		"1 ½in":        FromInches(3, 2),
		"¾in":          FromInches(3, 4),
		"³⁄₁₆in":       FromInches(3, 16),
		"1³⁄₁₆in":      FromInches(19, 16),
		"12⁵⁄₃₂in":     FromInches(389, 32),
		"2/4in":        FromInches(1, 2),
		"1.5cm":        Of(15, 1, Millimetre),
		"15mm":         Of(15, 1, Millimetre),
		"0.125m":       Of(125, 1, Millimetre),
		"2 1/4yd":      FromInches(81, 1),
		"2m":           Of(2000, 1, Millimetre),
		"0in":          {},
		"1\u00a01/2in": FromInches(3, 2),
	} {
		m, err := Parse(text)
		if err != nil || m.Length != want || m.Text != text {
			t.Errorf("%q: %v %q, %v; want %v", text, m.Length, m.Text, err, want)
		}
	}
}

func TestParseLoose(t *testing.T) {
	for text, want := range map[string]Length{
		"5/8 in":        FromInches(5, 8),
		"25.75 in":      FromInches(103, 4),
		"64.8 cm":       Of(648, 1, Millimetre),
		"64,8 cm":       Of(648, 1, Millimetre),
		"0,125 m":       Of(125, 1, Millimetre),
		`3/4"`:          FromInches(3, 4),
		"3/4″":          FromInches(3, 4),
		"1-1/2 in":      FromInches(3, 2),
		"5-inch":        FromInches(5, 1),
		"2 Inches":      FromInches(2, 1),
		"2 1/4 yards":   FromInches(81, 1),
		"1½\u00a0in":    FromInches(3, 2),
		"6\u202fmm":     Of(6, 1, Millimetre),
		"3 millimetres": Of(3, 1, Millimetre),
	} {
		m, err := ParseLoose(text)
		if err != nil || m.Length != want {
			t.Errorf("%q: %v, %v; want %v", text, m.Length, err, want)
		}
	}
}

// Messages are part of what is tested: a designer reads them.
func TestParseSaysWhatIsWrong(t *testing.T) {
	for text, want := range map[string]string{
		"11/2in":                       "11/2in: did you mean 1 1/2in?",
		"115/8in":                      "115/8in: did you mean 11 5/8in?",
		"5/2in":                        "5/2in: the fraction is not less than one; did you mean 2 1/2in?",
		"8/8in":                        "8/8in: the fraction is not less than one; did you mean 1in?",
		"1 5/2in":                      "1 5/2in: the fraction is not less than one; did you mean 3 1/2in?",
		"5/0in":                        "5/0in: nothing can be divided into 0 parts",
		"5/8":                          "5/8: which unit? Write in, yd, mm, cm or m straight after the number, such as 5/8in",
		"5/8inn":                       "5/8inn: inn is not a unit here; did you mean 5/8in?",
		"5/8ni":                        "5/8ni: ni is not a unit here; did you mean 5/8in?",
		"3inches":                      "3inches: inches is not a unit here; did you mean 3in?",
		"3IN":                          "3IN: IN is not a unit here; did you mean 3in?",
		`3"`:                           `3": " is not a unit here; did you mean 3in?`,
		"3yrd":                         "3yrd: yrd is not a unit here; did you mean 3yd?",
		"3ells":                        "3ells: ells is not a unit; the units are in, yd, mm, cm and m",
		"5/8 in":                       "5/8 in: write 5/8in, with no space before the unit",
		".5in":                         ".5in: write 0.5in, with a 0 before the point",
		"":                             "a measure is missing; write a number and its unit, such as 5/8in",
		"wide":                         "wide: not a measure; write a number and its unit, such as 5/8in or 1.5cm",
		"1.5/2in":                      "1.5/2in: not a measure; write a number and its unit, such as 5/8in or 1.5cm",
		"-3in":                         "-3in: not a measure; write a number and its unit, such as 5/8in or 1.5cm",
		"1234567890123m":               "1234567890123m: that number is too long to be a measure",
		"1/1234567890123in":            "1/1234567890123in: that number is too long to be a measure",
		"0.1234567890123in":            "0.1234567890123in: that number is too long to be a measure",
		strings.Repeat("9", 60) + "in": strings.Repeat("9", 40) + "…: that number is too long to be a measure",
	} {
		m, err := Parse(text)
		if err == nil || err.Error() != want {
			t.Errorf("%q: %v, %v; want the message %q", text, m, err, want)
		}
	}
	if _, err := ParseLoose("1,125 in"); err == nil || !strings.Contains(err.Error(), "comma") {
		t.Errorf("a comma before three digits: %v", err)
	}
}

// Every suggestion in a message can be read.
func TestSuggestionsCanBeRead(t *testing.T) {
	for _, text := range []string{"11/2in", "115/8in", "5/2in", "1 5/2in", "5/8inn", "3yrd", "3IN", "3inches", "112/16cm"} {
		_, err := Parse(text)
		_, suggestion, found := strings.Cut(err.Error(), "did you mean ")
		if _, err := Parse(strings.TrimSuffix(suggestion, "?")); !found || err != nil {
			t.Errorf("%s: the suggestion %q cannot be read: %v", text, suggestion, err)
		}
	}
}

// FuzzParse: no text makes the reader fail otherwise than with a message, and
// what it reads it writes so that it reads the same again.
func FuzzParse(f *testing.F) {
	for _, seed := range []string{"5/8in", "1 1/2in", "1.5cm", "2 1/4yd", "1½in", "³⁄₁₆in", "11/2in", "5/0in", "1,5 cm", `3/4"`, "-1in",
		"999999999999yd", "1/999999999999m", "0.000000000001mm", "1⁄2in", "⅟2in", "٣in", "\xff\xfein", "1 1 1/2in"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, parse := range []func(string) (Measure, error){Parse, ParseLoose} {
			m, err := parse(text)
			if err != nil {
				if err.Error() == "" || m != (Measure{}) {
					t.Errorf("%q: message %q beside %v", text, err, m)
				}
				continue
			}
			if m.Length.Sign() < 0 || m.Unit == NoUnit {
				t.Errorf("%q was read as %s %s", text, m.Length, m.Unit)
			}
			again, err := Parse(Source(m.Length, m.Unit))
			if tooLong := err != nil && strings.Contains(err.Error(), "too long"); !tooLong && (err != nil || again.Length != m.Length) {
				t.Errorf("%q is %s, written %q, which reads as %s, %v", text, m.Length, Source(m.Length, m.Unit), again.Length, err)
			}
		}
		FindAll(text)
		FindPairs(text)
	})
}

func TestFindAll(t *testing.T) {
	prose := "Cut 4 in lining. Sew a 5/8 in (1.5 cm) seam, 1½ in apart, 3-5 in long; 2 in from the edge. " +
		"See B4 in the plan, table 1.2.3 m, and a 1/2-inch hem of ³⁄₁₆ in or 11/2 in. Buy 2 1/4 yd/2,1 m. A 3/4\" button."
	want := []string{"4 in?", "5/8 in", "1.5 cm", "1½ in", "5 in", "2 in", "1/2-inch", "³⁄₁₆ in", "11/2 in!", "2 1/4 yd", "2,1 m", `3/4"`}
	var got []string
	for _, f := range FindAll(prose) {
		text := prose[f.Start:f.End]
		if f.Doubtful {
			text += "?"
		}
		if f.Err != nil {
			text += "!"
		} else if f.Text != prose[f.Start:f.End] {
			t.Errorf("%q stands at the place of %q", f.Text, prose[f.Start:f.End])
		}
		got = append(got, text)
	}
	if strings.Join(got, "|") != strings.Join(want, "|") {
		t.Errorf("found %q,\nwant  %q", got, want)
	}
}

func TestFindPairs(t *testing.T) {
	prose := "Allow 5/8 in (2 cm), or 1 cm (3/8 in). Buy 2 yd/1.9 m; 1 in and 3 cm are two things. Hem 1 in (1/2 in)."
	want := []string{"5/8 in = 2 cm: false", "3/8 in = 1 cm: true", "2 yd = 1.9 m: true"}
	var got []string
	for _, p := range FindPairs(prose) {
		agrees := map[bool]string{true: "true", false: "false"}[p.Agrees()]
		got = append(got, p.Imperial.Text+" = "+p.Metric.Text+": "+agrees)
	}
	if strings.Join(got, "|") != strings.Join(want, "|") {
		t.Errorf("found %q, want %q", got, want)
	}
}
