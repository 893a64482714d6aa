package measure

import (
	"math/big"
	"testing"

	"pgregory.net/rapid"
)

// Lengths whose numbers are small are reckoned with in whole numbers of 64 bits; they
// are the same as in fractions of any size, and where the numbers are not small those
// are used.
func TestWholeNumbersAgreeWithFractions(t *testing.T) {
	number := rapid.OneOf(rapid.Int64Range(-3000, 3000), rapid.Int64Range(-1<<31-2, 1<<31+2), rapid.Int64())
	rapid.Check(t, func(t *rapid.T) {
		num, unit := number.Draw(t, "num"), rapid.SampledFrom(Units).Draw(t, "unit")
		den := max(1, number.Draw(t, "den"))
		l := Of(num, den, unit)
		if want := FromRat(big.NewRat(num, den), unit); l != want {
			t.Fatalf("%d/%d %s is %v, in fractions %v", num, den, unit, l, want)
		}
		if want, _ := l.Rat().Float64(); l.MM() != want {
			t.Fatalf("%v is %v mm, in fractions %v", l, l.MM(), want)
		}
		n := number.Draw(t, "times")
		if want := l.MulRat(big.NewRat(n, 1)); l.Mul(n) != want {
			t.Fatalf("%d times %v is %v, in fractions %v", n, l, l.Mul(n), want)
		}
		m := Of(number.Draw(t, "other"), 8, unit)
		s := Steps{Imperial: Of(1+max(0, number.Draw(t, "step")%64), 8, Inch)}
		if want := within(l.Rat(), m.Rat(), halfOf(s.Imperial.Rat())); s.Within(l, m, Imperial) != want {
			t.Fatalf("%v within %v of %v: in fractions %v", l, s.Imperial, m, want)
		}
	})
}
