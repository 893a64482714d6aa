package measure

import (
	"math/big"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// spaced writes a plain space where print has a no-break space, so that the
// tables below can be read.
func spaced(text string) string { return strings.ReplaceAll(text, noBreak, " ") }

func TestPrint(t *testing.T) {
	for _, c := range []struct {
		text             string
		kind             Kind
		imperial, metric string
	}{
		{"5/8in", Detail, "⅝ in", "1.6 cm"},
		{"3/8in", Detail, "⅜ in", "1 cm"},
		{"1/4in", Detail, "¼ in", "6 mm"},
		{"1/8in", Detail, "⅛ in", "3 mm"},
		{"1/2in", Detail, "½ in", "1.3 cm"},
		{"1 1/2in", Detail, "1½ in", "3.8 cm"},
		{"2/4in", Detail, "½ in", "1.3 cm"},
		{"3/16in", Detail, "³⁄₁₆ in", "5 mm"},
		{"1 5/32in", Detail, "1⁵⁄₃₂ in", "2.9 cm"},
		{"1/3in", Detail, "¹⁄₃ in", "8 mm"},
		{"0.01in", Detail, "0.01 in", "1 mm"}, // not nothing
		{"4in", Detail, "4 in", "10 cm"},
		{"6in", Detail, "6 in", "15 cm"},
		{"6 1/4in", Detail, "6¼ in", "16 cm"},
		{"26in", Detail, "26 in", "66 cm"},
		{"1.5cm", Detail, "⅝ in", "1.5 cm"},
		{"15mm", Detail, "⅝ in", "1.5 cm"},
		{"1cm", Detail, "⅜ in", "1 cm"},
		{"6mm", Detail, "¼ in", "6 mm"},
		{"5mm", Detail, "³⁄₁₆ in", "5 mm"}, // no eighth is near enough
		{"2cm", Detail, "¾ in", "2 cm"},
		{"1.25cm", Detail, "½ in", "1.25 cm"},
		{"50cm", Detail, "19¾ in", "50 cm"},
		{"36in", Body, "36 in", "91.5 cm"},
		{"36 1/8in", Body, "36⅛ in", "92 cm"}, // what the author wrote is not rounded
		{"92cm", Body, "36¼ in", "92 cm"},
		{"87.3cm", Body, "34¼ in", "87.3 cm"},
		{"2 1/4yd", Cloth, "2¼ yd", "2.1 m"},
		{"2yd", Cloth, "2 yd", "1.9 m"},
		{"1/8yd", Cloth, "⅛ yd", "0.2 m"},
		{"20in", Cloth, "20 in", "0.6 m"}, // no eighth of a yard
		{"18in", Cloth, "½ yd", "0.5 m"},
		{"2m", Cloth, "2¼ yd", "2 m"},
		{"0.55m", Cloth, "⅝ yd", "0.55 m"},
		{"45in", Width, "45 in", "115 cm"},
		{"60in", Width, "60 in", "150 cm"},
		{"36in", Width, "36 in", "90 cm"},
		{"115cm", Width, "45 in", "115 cm"},
		{"150cm", Width, "60 in", "150 cm"},
		{"90cm", Width, "36 in", "90 cm"},
		{"140cm", Width, "55 in", "140 cm"},
		{"20in", Width, "20 in", "51 cm"},
		{"112cm", Width, "44 in", "112 cm"},
		{"5/8in", Exact, "⅝ in", "1.5875 cm"},
		{"1cm", Exact, "⁵⁰⁄₁₂₇ in", "1 cm"},
		{"0in", Detail, "0 in", "0 mm"},
	} {
		m, err := Parse(c.text)
		if err != nil {
			t.Fatal(err)
		}
		imperial, metric := m.Print(c.kind, English)
		if spaced(imperial) != c.imperial || spaced(metric) != c.metric {
			t.Errorf("%s: %s and %s, want %s and %s", c.text, imperial, metric, c.imperial, c.metric)
		}
	}
}

func TestPrintComputed(t *testing.T) {
	l := Of(19141, 10, Millimetre) // 1914.1 mm
	imperial, metric := Print(l, Cloth, Computed, Style{Decimal: ','})
	if spaced(imperial) != "2⅛ yd" || spaced(metric) != "2 m" {
		t.Errorf("%s and %s", imperial, metric)
	}
	imperial, metric = Print(l.Mul(-1), Body, Computed, Style{Decimal: ','})
	if spaced(imperial) != "−75¼ in" || spaced(metric) != "−191,5 cm" {
		t.Errorf("%s and %s", imperial, metric)
	}
}

// A no-break space keeps a number with its unit.
func TestNoBreakSpace(t *testing.T) {
	if got := InImperial(FromInches(3, 2), Detail, true, English); got != "1½\u00a0in" {
		t.Errorf("%q", got)
	}
	if got := InMetric(FromInches(3, 2), Detail, false, English); got != "3.8\u00a0cm" {
		t.Errorf("%q", got)
	}
}

// drawMeasure draws a measure that a designer may write.
func drawMeasure(t *rapid.T) Measure {
	unit := rapid.SampledFrom(Units).Draw(t, "unit")
	den := rapid.SampledFrom([]int64{1, 2, 3, 4, 8, 16, 32, 64, 10, 100}).Draw(t, "parts")
	l := Of(rapid.Int64Range(0, 300*den).Draw(t, "count"), den, unit)
	return Measure{Length: l, Unit: unit, Text: Source(l, unit)}
}

func TestWrittenReadsTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := drawMeasure(t)
		kind := Kind(rapid.IntRange(int(Exact), int(Width)).Draw(t, "kind"))
		got, err := Parse(m.Text)
		if err != nil || got != m {
			t.Errorf("%s reads as %v, %v", m.Text, got, err)
		}
		printed := InImperial(m.Length, kind, true, English)
		if m.Unit.System() == Metric {
			printed = InMetric(m.Length, kind, true, English)
		}
		if back, err := ParseLoose(printed); err != nil || back.Length != m.Length {
			t.Errorf("%s is printed %s, which reads as %v, %v", m.Text, printed, back.Length, err)
		}
	})
}

// What is printed as a pair is a pair that agrees.
func TestPrintedPairIsAccepted(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := drawMeasure(t)
		kind := rapid.SampledFrom([]Kind{Exact, Detail, Body, Width}).Draw(t, "kind")
		least := map[Kind]int64{Exact: 0, Detail: 1, Body: 100, Width: 100}[kind]
		if m.Length.Cmp(Of(least, 1, Millimetre)) < 0 {
			return
		}
		imperial, metric := m.Print(kind, English)
		a, errA := ParseLoose(imperial)
		b, errB := ParseLoose(metric)
		if errA != nil || errB != nil || !PairAgrees(a, b) {
			t.Errorf("%s is printed %s and %s, which disagree (%v, %v)", m.Text, imperial, metric, errA, errB)
		}
	})
}

// Cloth is rounded up, and by less than one step; the rest to the nearest.
func TestRounding(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := drawMeasure(t).Length
		for _, c := range []struct {
			system System
			step   Length
		}{{Imperial, Of(1, 8, Yard)}, {Metric, Of(1, 10, Metre)}} {
			up := Round(l, Cloth, c.system)
			if up.Cmp(l) < 0 || up.Sub(l).Cmp(c.step) >= 0 {
				t.Errorf("%s of cloth is rounded to %s", l, up)
			}
			if Round(up, Cloth, c.system) != up {
				t.Errorf("%s is rounded again", up)
			}
		}
		body := Round(l, Body, Metric)
		if miss := body.Sub(l).Abs(); !l.IsZero() && l.Cmp(Of(1, 4, Centimetre)) > 0 && miss.Cmp(Of(1, 4, Centimetre)) > 0 {
			t.Errorf("body measure %s is rounded to %s", l, body)
		}
		if !l.IsZero() && body.IsZero() {
			t.Errorf("%s is rounded to nothing", l)
		}
	})
}

func TestLengthArithmetic(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawMeasure(t).Length, drawMeasure(t).Length
		n := rapid.Int64Range(-9, 9).Draw(t, "n")
		if a.Cmp(b) != -b.Cmp(a) || (a.Cmp(b) == 0) != (a == b) || a.Cmp(b) != a.Sub(b).Sign() {
			t.Errorf("%s and %s: Cmp %d, difference %s", a, b, a.Cmp(b), a.Sub(b))
		}
		if a.Add(b) != b.Add(a) || a.Add(b).Sub(b) != a || a.Sub(a) != (Length{}) {
			t.Errorf("%s and %s do not add up", a, b)
		}
		sum := Length{}
		for i := int64(0); i < n; i++ {
			sum = sum.Add(a)
		}
		if n >= 0 && a.Mul(n) != sum || a.Mul(-n) != a.Mul(n).Mul(-1) {
			t.Errorf("%d times %s is %s", n, a, a.Mul(n))
		}
		if FromRat(a.In(Yard), Yard) != a {
			t.Errorf("%s in yards and back is %s", a, FromRat(a.In(Yard), Yard))
		}
	})
}

// A length whose fraction does not fit two machine words is still exact, and
// equal lengths are still ==.
func TestWideLengths(t *testing.T) {
	sum, primes := Length{}, []int64{999999937, 999999929, 999999893, 999999883}
	for _, p := range primes {
		sum = sum.Add(FromInches(1, p))
	}
	want := new(big.Rat)
	for _, p := range primes {
		want.Add(want, new(big.Rat).Quo(big.NewRat(127, 5), big.NewRat(p, 1)))
	}
	if sum.Rat().Cmp(want) != 0 || sum.Sign() != 1 || sum.Cmp(Length{}) != 1 {
		t.Errorf("the sum is %s, want %s mm", sum, want.RatString())
	}
	for _, p := range primes[1:] {
		sum = sum.Sub(FromInches(1, p))
	}
	if sum != FromInches(1, primes[0]) {
		t.Errorf("what is left is %s", sum)
	}
}

func TestFromFloatMM(t *testing.T) {
	if l, ok := FromFloatMM(15.8754); !ok || l != Of(15875, 1000, Millimetre) || l.MM() != 15.875 {
		t.Errorf("%s, %v", l, ok)
	}
	zero := 0.0
	for _, bad := range []float64{zero / zero, 1 / zero, -1 / zero, 1e300} {
		if l, ok := FromFloatMM(bad); ok {
			t.Errorf("%v mm was taken as %s", bad, l)
		}
	}
}
