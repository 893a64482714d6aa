package size

import (
	"math/big"
	"testing"

	"seamwarden/compiler/measure"
)

// TestBetweenLiesRoundTheLimits: EN 13402-3 gives each size an interval that reaches half
// a step to either side of its girth (columns bust-from and bust-to, READ in a secondary
// source), so nobody measures more than half a step beside her size. Who lies within a
// quarter of a step of such a limit is told that she is between two sizes; the quarter is
// our own choice, as the standard knows no such zone.
func TestBetweenLiesRoundTheLimits(t *testing.T) {
	block := blocks(t, "size_en13402_3_women_girths_cm.csv")[0]
	girths := columnsOf(block, "code-size-bust-cm")[0]
	uppers := columnsOf(block, "bust-upper")[0]
	chart, found := Read("sizes.yaml", []byte(table(girths, girths.values)))
	if chart == nil || len(girths.values) != len(uppers.values) {
		t.Fatal(found)
	}
	row := &chart.Body[0]
	cm := func(r *big.Rat) measure.Length { return measure.FromRat(r, measure.Centimetre) }
	hair := measure.Of(1, 10, measure.Millimetre)
	for i := range girths.values[1:] {
		low, limit := cm(girths.values[i]), cm(uppers.values[i])
		step := cm(girths.values[i+1]).Sub(low)
		quarter := step.MulRat(big.NewRat(1, 4))
		if limit.Sub(low).Mul(2) != step {
			t.Errorf("size %s ends %v above its girth, the step is %v", girths.values[i].RatString(), limit.Sub(low), step)
		}
		middle := low.Add(quarter.Mul(2))
		for x, want := range map[measure.Length]bool{
			low: false, middle: true,
			middle.Sub(quarter): true, middle.Add(quarter): true,
			middle.Sub(quarter).Sub(hair): false, middle.Add(quarter).Add(hair): false,
		} {
			if f := fitOf(row, Nearest, x); f.Between != want || want && f.Lower != i {
				t.Errorf("%v: between %v, want %v", x, f.Between, want)
			}
		}
	}
}
