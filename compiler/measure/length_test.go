package measure

import (
	"fmt"
	"math/big"
	"testing"

	"pgregory.net/rapid"
)

// Lengths are reckoned with in whole numbers where these are small, and exactly in
// any case: math/big is the oracle.
func TestReckoning(t *testing.T) {
	short, long := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string) (Length, *big.Rat) {
			most := rapid.SampledFrom([]int64{20, 1 << 31, 1 << 32, 1 << 62}).Draw(t, name+" most")
			r := big.NewRat(rapid.Int64Range(-most, most).Draw(t, name), rapid.Int64Range(1, most).Draw(t, name+" under"))
			return lengthOf(r), r
		}
		a, x := draw("a")
		b, y := draw("b")
		if a.short() && b.short() {
			short++
		} else {
			long++
		}
		if got := a.Cmp(b); got != x.Cmp(y) {
			t.Fatalf("%v against %v is %d", a, b, got)
		}
		if got, want := a.Add(b), lengthOf(new(big.Rat).Add(x, y)); got != want {
			t.Fatalf("%v and %v are %v and should be %v", a, b, got, want)
		}
		if got, want := a.Sub(b), lengthOf(new(big.Rat).Sub(x, y)); got != want {
			t.Fatalf("%v less %v is %v and should be %v", a, b, got, want)
		}
		if a.Sign() != x.Sign() {
			t.Fatalf("the sign of %v is %d", a, a.Sign())
		}
	})
	if short == 0 || long == 0 {
		t.Errorf("%d pairs were short and %d long", short, long)
	}
}

// A number that is read in whole numbers is the one that math/big makes of it.
func TestPlainNumbers(t *testing.T) {
	plain := 0
	rapid.Check(t, func(t *rapid.T) {
		digits := func(name string) string { return rapid.StringMatching(`[0-9]{1,8}`).Draw(t, name) }
		text := rapid.SampledFrom([]string{
			digits("whole"), digits("whole") + "." + digits("decimals"), digits("num") + "/" + digits("den"), digits("whole") + " " + digits("num") + "/" + digits("den"),
			fmt.Sprintf("%d %d/%d", rapid.IntRange(0, 30).Draw(t, "a"), rapid.IntRange(0, 15).Draw(t, "b"), rapid.IntRange(0, 16).Draw(t, "c")),
		}).Draw(t, "text")
		n, ok := readNumber(text)
		if !ok {
			t.Fatalf("%q is no number", text)
		}
		num, den, ok := n.plain()
		if !ok {
			return
		}
		plain++
		if want, err := n.value("in"); err != nil || big.NewRat(num, den).Cmp(want) != 0 {
			t.Fatalf("%q became %d/%d and should be %v, %v", text, num, den, want, err)
		}
	})
	if plain == 0 {
		t.Error("no number was plain")
	}
}
