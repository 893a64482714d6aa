package measure

import (
	"math/big"
	"strings"
)

// PairAgrees says whether the two halves of a printed pair such as
// "5/8 in (1.5 cm)" mean the same length. Both conversions are exact
// (1 in = 25.4 mm); what may differ is what rounding leaves:
//
//   - half of 1/16 in (0.8 mm) always, as nothing is printed finer;
//   - no more than 6 hundredths of the length otherwise, and within that
//   - half a unit of the last metric digit (at least 1 mm), or two and a half
//     units where the number is rounded to fives: 150 cm, 1.5 cm;
//   - or half a unit of the fraction of an inch that is printed, where 1/4 in
//     counts as the coarsest under 30 in, and a whole inch from there on;
//   - for cloth in yards, rounding up to 0.1 m or to 1/8 yd.
//
// Common practice, no source; the test reads pairs as they are printed.
func PairAgrees(imperial, metric Measure) bool {
	a, b := imperial.Length.Rat(), metric.Length.Rat()
	if within(a, b, halfOf(inches(1, 16))) {
		return true
	}
	if imperial.Unit == Yard && roundedUp(a, b) {
		return true
	}
	if !within(a, b, new(big.Rat).Mul(new(big.Rat).Abs(a), near)) {
		return false
	}
	return within(a, b, metricSlack(metric)) || within(a, b, imperialSlack(imperial))
}

// roundedUp says whether one half is the other rounded up as cloth is.
func roundedUp(yards, metres *big.Rat) bool {
	more := new(big.Rat).Sub(metres, yards)
	if more.Sign() >= 0 {
		return more.Cmp(big.NewRat(100, 1)) < 0
	}
	return more.Neg(more).Cmp(inches(36, 8)) < 0
}

// metricSlack is how far the metric half may be from what was meant.
func metricSlack(m Measure) *big.Rat {
	digits, decimals := lastDigits(m)
	unit := m.Unit.size()
	for i := 0; i < decimals; i++ {
		unit.Quo(unit, big.NewRat(10, 1))
	}
	if tenth := big.NewRat(100, 1); unit.Cmp(tenth) > 0 {
		return halfOf(tenth) // metres: to 0.1 m, as cloth is
	}
	fives := strings.HasSuffix(digits, "5") || (decimals == 0 && strings.HasSuffix(digits, "0"))
	if fives && m.Unit != Metre {
		return halfOf(new(big.Rat).Mul(unit, big.NewRat(5, 1)))
	}
	if slack := halfOf(unit); slack.Cmp(big.NewRat(1, 1)) > 0 {
		return slack
	}
	return big.NewRat(1, 1)
}

// lastDigits returns the digits of a metric number as written and how many of
// them stand after the decimal sign.
func lastDigits(m Measure) (digits string, decimals int) {
	number, _, _ := splitUnit(strings.Replace(plainNumber(m.Text), ",", ".", 1))
	if number == "" {
		number, _ = exactDecimal(m.Length.In(m.Unit), '.')
	}
	number = strings.TrimRight(number, "- ")
	if point := strings.IndexByte(number, '.'); point >= 0 {
		decimals = len(number) - point - 1
	}
	return number, decimals
}

// imperialSlack is how far the imperial half may be from what was meant.
func imperialSlack(m Measure) *big.Rat {
	length := m.Length.In(Inch)
	unit := big.NewRat(1, 4)
	switch den := new(big.Rat).SetFrac(big.NewInt(1), length.Denom()); {
	case length.IsInt() && length.Cmp(big.NewRat(30, 1)) >= 0:
		unit = big.NewRat(1, 1)
	case den.Cmp(unit) < 0:
		unit = den
	}
	return halfOf(unit.Mul(unit, Inch.size()))
}

func halfOf(r *big.Rat) *big.Rat { return new(big.Rat).Quo(r, big.NewRat(2, 1)) }
