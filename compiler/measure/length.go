package measure

import (
	"cmp"
	"math"
	"math/big"
)

// Length is an exact length, kept as a fraction of a millimetre. The zero
// value is no length at all. Two equal lengths are equal under ==, so a Length
// can be the key of a map. A length may be negative (an ease, a difference).
type Length struct {
	num   int64  // of the fraction in lowest terms
	under int64  // one less than the denominator, so that the zero value is 0/1
	wide  string // the fraction as text, where it does not fit the two numbers
}

// FromRat returns a length of r units.
func FromRat(r *big.Rat, u Unit) Length {
	return lengthOf(new(big.Rat).Mul(r, u.size()))
}

// Of returns a length of num/den units. It panics if den is 0, as big.NewRat
// does.
func Of(num, den int64, u Unit) Length {
	if f := unitFacts[u.known()]; den > 0 && small(num) && small(den) {
		return reduced(num*f.num, den*f.den)
	}
	return FromRat(big.NewRat(num, den), u)
}

// FromInches returns a length of num/den inches. It panics if den is 0.
func FromInches(num, den int64) Length { return Of(num, den, Inch) }

// FromFloatMM returns the length nearest to mm millimetres, in steps of a
// thousandth of a millimetre, and false if mm is not a number, is infinite or
// is longer than a million kilometres. It is meant for lengths measured on an outline.
func FromFloatMM(mm float64) (Length, bool) {
	if math.IsNaN(mm) || math.Abs(mm) > 1e15 {
		return Length{}, false
	}
	return Of(int64(math.Round(mm*1000)), 1000, Millimetre), true
}

// lengthOf keeps a fraction of a millimetre in the one form that it has.
func lengthOf(mm *big.Rat) Length {
	if mm.Num().IsInt64() && mm.Denom().IsInt64() {
		return Length{num: mm.Num().Int64(), under: mm.Denom().Int64() - 1}
	}
	return Length{wide: mm.RatString()}
}

// short reports whether a length can be reckoned with in whole numbers of 64 bits,
// as nearly every one can: no product of two such numbers, and no sum of two such
// products, is too large for that.
func (l Length) short() bool { return l.wide == "" && small(l.num) && small(l.under+1) }

// small reports whether a number has no more than 31 bits.
func small(n int64) bool {
	const limit = 1 << 31
	return -limit < n && n < limit
}

// reduced keeps num/den millimetres in the one form that they have; den is more
// than 0.
func reduced(num, den int64) Length {
	a, b := max(num, -num), den
	for b != 0 { // Euclid: a becomes the greatest common divisor
		a, b = b, a%b
	}
	return Length{num: num / a, under: den/a - 1}
}

// Rat returns the length in millimetres, as a new fraction.
func (l Length) Rat() *big.Rat {
	if l.wide == "" {
		return big.NewRat(l.num, l.under+1)
	}
	r, _ := new(big.Rat).SetString(l.wide) // written by RatString, so it can be read
	return r
}

// In returns the length counted in units, as a new fraction.
func (l Length) In(u Unit) *big.Rat { return new(big.Rat).Quo(l.Rat(), u.size()) }

// MM returns the length in millimetres as the nearest floating-point number,
// for drawing.
func (l Length) MM() float64 {
	if l.short() { // then both numbers are exact as floating-point numbers, and only the quotient is rounded
		return float64(l.num) / float64(l.under+1)
	}
	f, _ := l.Rat().Float64()
	return f
}

// Cmp returns -1 if l is shorter than m, 0 if they are equal, and 1 if l is
// longer.
func (l Length) Cmp(m Length) int {
	if l == m {
		return 0
	}
	if l.short() && m.short() {
		return cmp.Compare(l.num*(m.under+1), m.num*(l.under+1))
	}
	return l.Rat().Cmp(m.Rat())
}

// Add returns l + m.
func (l Length) Add(m Length) Length {
	if l.short() && m.short() {
		return reduced(l.num*(m.under+1)+m.num*(l.under+1), (l.under+1)*(m.under+1))
	}
	return lengthOf(new(big.Rat).Add(l.Rat(), m.Rat()))
}

// Sub returns l − m.
func (l Length) Sub(m Length) Length {
	if l.short() && m.short() {
		return reduced(l.num*(m.under+1)-m.num*(l.under+1), (l.under+1)*(m.under+1))
	}
	return lengthOf(new(big.Rat).Sub(l.Rat(), m.Rat()))
}

// Mul returns n times l.
func (l Length) Mul(n int64) Length {
	if l.short() && small(n) {
		return reduced(l.num*n, l.under+1)
	}
	return l.MulRat(big.NewRat(n, 1))
}

// MulRat returns r times l.
func (l Length) MulRat(r *big.Rat) Length { return lengthOf(new(big.Rat).Mul(l.Rat(), r)) }

// Abs returns the length without its sign.
func (l Length) Abs() Length {
	if l.Sign() < 0 {
		return l.Mul(-1)
	}
	return l
}

// Sign returns -1, 0 or 1.
func (l Length) Sign() int {
	if l.wide == "" {
		return cmp.Compare(l.num, 0)
	}
	return l.Rat().Sign()
}

// IsZero says whether the length is nothing.
func (l Length) IsZero() bool { return l == Length{} }

// String returns the length in millimetres as an exact fraction, for tests and
// for looking at; what a reader sees comes from Print.
func (l Length) String() string { return l.Rat().RatString() + " mm" }
