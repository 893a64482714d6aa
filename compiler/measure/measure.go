// Package measure holds exact lengths: how a designer writes them, how they
// are rounded, and how both unit systems are printed.
//
// In comes text such as "5/8in" or "1.5 cm"; out come exact lengths, and text
// for the reader such as "⅝ in" and "1.6 cm". Inside, a length is an exact
// fraction of a millimetre, so nothing is lost before it is printed. Rounding
// is declared once, in the table of round.go.
//
// The package does not know what a length belongs to. The caller names its
// kind (an allowance, a body measure, cloth to buy, a width of cloth), and the
// kind decides the rounding.
package measure

import "math/big"

// Unit is a unit that a designer may write.
type Unit uint8

// The units. NoUnit is the zero value and stands for none.
const (
	NoUnit Unit = iota
	Inch
	Yard
	Millimetre
	Centimetre
	Metre
)

// Units lists every unit in the order in which messages name them.
var Units = []Unit{Inch, Yard, Millimetre, Centimetre, Metre}

// System is a system of units, or none where a value was worked out rather
// than written.
type System uint8

// The systems. Computed is the zero value: nobody wrote the value, so both of
// its printed halves are rounded.
const (
	Computed System = iota
	Imperial
	Metric
)

// unitFacts gives each unit's sign, system and size in millimetres as a
// fraction. 1 in = 25.4 mm exactly and 1 yd = 36 in = 914.4 mm exactly:
// NIST Handbook 44, Appendix C.
var unitFacts = [...]struct {
	sign     string
	system   System
	num, den int64
}{
	NoUnit:     {"", Computed, 1, 1},
	Inch:       {"in", Imperial, 127, 5},
	Yard:       {"yd", Imperial, 4572, 5},
	Millimetre: {"mm", Metric, 1, 1},
	Centimetre: {"cm", Metric, 10, 1},
	Metre:      {"m", Metric, 1000, 1},
}

// Sign returns the sign of the unit as it is written and printed: "in", "cm".
func (u Unit) Sign() string { return unitFacts[u.known()].sign }

// String returns the sign of the unit.
func (u Unit) String() string { return u.Sign() }

// System returns the system that the unit belongs to.
func (u Unit) System() System { return unitFacts[u.known()].system }

// size returns the unit's length in millimetres, as a new fraction.
func (u Unit) size() *big.Rat {
	f := unitFacts[u.known()]
	return big.NewRat(f.num, f.den)
}

func (u Unit) known() Unit {
	if int(u) >= len(unitFacts) {
		return NoUnit
	}
	return u
}

// Measure is a length as somebody wrote it.
type Measure struct {
	Length Length
	Unit   Unit
	Text   string // as written, for example "1 1/2in"
}

// String returns the measure as it was written, or as a designer would write
// it if it was not read from text.
func (m Measure) String() string {
	if m.Text != "" {
		return m.Text
	}
	return Source(m.Length, m.Unit)
}

// Print returns both printed halves of the measure; the half in the unit
// system that was written is exact, the other one is rounded for its kind.
func (m Measure) Print(kind Kind, style Style) (imperial, metric string) {
	return Print(m.Length, kind, m.Unit.System(), style)
}
