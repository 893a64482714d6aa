package measure

import (
	"strings"
	"testing"
)

// TestPrintedPairsAreDeclaredRoundings: each pair of inch_metric_printed_pairs.csv (one READ,
// the others RECALLED common practice) is what rounding to one of three usual steps makes of
// the inches, but for three that round the other way: 1/4 in as 7 mm, 3/8 in as 9 mm and
// 1/2 in as 12 mm.
func TestPrintedPairsAreDeclaredRoundings(t *testing.T) {
	steps := []Steps{{Metric: Of(1, 1, Millimetre)}, {Metric: Of(1, 2, Centimetre)}, {Metric: Of(1, 1, Centimetre)}}
	other := map[string]bool{"1/4 7 mm": true, "3/8 9 mm": true, "1/2 12 mm": true}
	for _, row := range readTable(t, "inch_metric_printed_pairs.csv") {
		inch, printed := loose(t, row[0]+" in"), loose(t, row[2])
		made := false
		for _, s := range steps {
			made = made || s.Round(inch.Length, Detail, Metric) == printed.Length
		}
		if made == other[row[0]+" "+row[2]] {
			t.Errorf("%s in as %s: made by a step %v", row[0], row[2], made)
		}
	}
}

// TestDeclaredSteps: the half that is written is exact, the other obeys the steps; a number
// stands apart from its unit by a no-break space (SI Brochure 5.4, recalled).
func TestDeclaredSteps(t *testing.T) {
	s := Steps{Imperial: Of(1, 8, Inch), Metric: Of(1, 2, Centimetre)}
	for _, c := range []struct {
		l        Length
		kind     Kind
		written  System
		imp, met string
	}{
		{Of(92, 1, Centimetre), Body, Metric, "36¼ in", "92 cm"},
		{Of(913, 10, Centimetre), Body, Metric, "36 in", "91.3 cm"}, // 35.94
		{FromInches(73, 2), Body, Imperial, "36½ in", "92.5 cm"},    // 92.71
		{FromInches(-73, 2), Body, Imperial, "−36½ in", "−92.5 cm"}, // an ease may be negative
		{FromInches(1, 16), Body, Imperial, "¹⁄₁₆ in", "0.5 cm"},    // nothing but nothing becomes nothing
		{Of(127, 10, Millimetre), Body, Computed, "½ in", "1.5 cm"}, // 12.7: both halves rounded
		{Of(112, 10, Millimetre), Body, Computed, "½ in", "1 cm"},   // 11.2 = 0.44 in
		{Of(11, 10, Metre), Cloth, Metric, "43⅜ in", "1.1 m"},       // 43.307 in, up to the next 1/8 in
		{Length{}, Body, Metric, "0 in", "0 cm"},
	} {
		i, m := s.Print(c.l, c.kind, c.written, English)
		if want := [2]string{strings.ReplaceAll(c.imp, " ", noBreak), strings.ReplaceAll(c.met, " ", noBreak)}; i != want[0] || m != want[1] {
			t.Errorf("%v is printed %q and %q, want %q", c.l, i, m, want)
		}
	}
	if got := (Steps{}).Round(Of(92, 1, Centimetre), Body, Imperial); got != FromInches(145, 4) {
		t.Errorf("without steps 92 cm becomes %v", got)
	}
	if near := Of(922, 10, Centimetre); !s.Within(near, Of(92, 1, Centimetre), Metric) || s.Within(near, Of(91, 1, Centimetre), Metric) {
		t.Error("half of 0.5 cm is 2.5 mm")
	}
}
