package measure

import (
	"math/big"
	"strings"
)

// Style is how numbers are written in a language.
type Style struct {
	Decimal rune // the decimal sign; 0 stands for a point
}

// English writes a decimal point.
var English = Style{Decimal: '.'}

// minus is the minus sign of typography.
const minus = "−"

// Print returns the length in both systems, each with its unit after a
// no-break space, such as "1½ in" and "3.8 cm". The half in the system that it
// was written in is exact; the other is rounded for its kind. A computed
// length is rounded in both.
func Print(l Length, kind Kind, written System, style Style) (imperial, metric string) {
	return InImperial(l, kind, written == Imperial, style), InMetric(l, kind, written == Metric, style)
}

// InImperial returns the length in inches, or for cloth to buy in yards;
// rounded for its kind unless it is to be exact. An exact length of cloth that
// is no number of sixteenths of a yard is given in inches.
func InImperial(l Length, kind Kind, exact bool, style Style) string {
	if !exact {
		l = Round(l, kind, Imperial)
	}
	unit := Inch
	if kind == Cloth && !l.IsZero() && isSixteenths(l.In(Yard)) {
		unit = Yard
	}
	return withUnit(l, unit, func(r *big.Rat) string { return mixed(r, style) })
}

// InMetric returns the length in metric units: cloth to buy in metres, body
// measures and widths in centimetres, other lengths in millimetres under 1 cm
// and in centimetres from there on; rounded for its kind unless it is to be
// exact.
func InMetric(l Length, kind Kind, exact bool, style Style) string {
	if !exact {
		l = Round(l, kind, Metric)
	}
	return withUnit(l, metricUnit(l, kind), func(r *big.Rat) string { return decimal(r, style) })
}

func metricUnit(l Length, kind Kind) Unit {
	switch {
	case kind == Cloth:
		return Metre
	case kind == Body || kind == Width:
		return Centimetre
	case l.Abs().Cmp(Of(1, 1, Centimetre)) < 0:
		return Millimetre
	}
	return Centimetre
}

func withUnit(l Length, u Unit, write func(*big.Rat) string) string {
	sign := ""
	if l.Sign() < 0 {
		sign = minus
	}
	return sign + write(l.Abs().In(u)) + noBreak + u.Sign()
}

// Source returns the length as a designer writes it in that unit: "1 1/2in",
// "1.5cm". Parse reads it back.
func Source(l Length, u Unit) string {
	sign := ""
	if l.Sign() < 0 {
		sign = "-"
	}
	r := l.Abs().In(u)
	if u.System() == Metric {
		if text, ok := exactDecimal(r, '.'); ok {
			return sign + text + u.Sign()
		}
	}
	return sign + mixedPlain(r) + u.Sign()
}

// mixed writes a number as a whole number and a fraction, "1½"; a fraction
// finer than 64ths as a decimal where that is exact.
func mixed(r *big.Rat, style Style) string {
	if r.Denom().Cmp(big.NewInt(64)) > 0 {
		if text, ok := exactDecimal(r, style.sign()); ok {
			return text
		}
	}
	whole, rest := wholeAndRest(r)
	text := fraction(rest)
	if whole.Sign() != 0 || text == "" {
		text = whole.String() + text
	}
	return text
}

// decimal writes a number with decimals, all of them; one that has no end is
// written as a fraction.
func decimal(r *big.Rat, style Style) string {
	if text, ok := exactDecimal(r, style.sign()); ok {
		return text
	}
	whole, rest := wholeAndRest(r)
	if whole.Sign() == 0 {
		return fraction(rest)
	}
	return whole.String() + fraction(rest)
}

func (s Style) sign() rune {
	if s.Decimal == 0 {
		return '.'
	}
	return s.Decimal
}

// exactDecimal writes a number with as many decimals as it has; false if they
// have no end.
func exactDecimal(r *big.Rat, sign rune) (string, bool) {
	places, exact := r.FloatPrec()
	if !exact {
		return "", false
	}
	return strings.Replace(r.FloatString(places), ".", string(sign), 1), true
}

// fraction writes a proper fraction in lowest terms as print does: the
// halves, quarters and eighths have a character each, others are raised and
// lowered digits about a fraction slash. Nothing is written for 0.
func fraction(r *big.Rat) string {
	if r.Sign() == 0 {
		return ""
	}
	num, den := r.Num(), r.Denom()
	if den.IsInt64() && (den.Int64() == 2 || den.Int64() == 4 || den.Int64() == 8) {
		for char, f := range vulgar {
			if f == [2]int64{num.Int64(), den.Int64()} {
				return string(char)
			}
		}
	}
	return digitsIn(num.String(), superscripts) + string(slash) + digitsIn(den.String(), subscripts)
}

func digitsIn(digits, alphabet string) string {
	signs := []rune(alphabet)
	var b strings.Builder
	for _, d := range digits {
		b.WriteRune(signs[d-'0'])
	}
	return b.String()
}

func isSixteenths(r *big.Rat) bool {
	return new(big.Rat).Mul(r, big.NewRat(16, 1)).IsInt()
}
