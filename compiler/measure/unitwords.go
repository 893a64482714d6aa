package measure

import (
	"fmt"
	"strings"
)

// unitWords gives the words and signs, other than its own sign, that people
// write for a unit in prose.
var unitWords = map[string]Unit{
	"inch": Inch, "inches": Inch, "\"": Inch, "″": Inch, "”": Inch, "in.": Inch, "ins": Inch,
	"yard": Yard, "yards": Yard, "yds": Yard, "yd.": Yard,
	"millimetre": Millimetre, "millimetres": Millimetre, "millimeter": Millimetre, "millimeters": Millimetre,
	"centimetre": Centimetre, "centimetres": Centimetre, "centimeter": Centimetre, "centimeters": Centimetre,
	"metre": Metre, "metres": Metre, "meter": Metre, "meters": Metre,
}

// signOf returns the unit with this sign, or NoUnit.
func signOf(sign string) Unit {
	for _, u := range Units {
		if u.Sign() == sign {
			return u
		}
	}
	return NoUnit
}

// wordOf returns the unit that a sign or a word of prose stands for.
func wordOf(word string) Unit {
	if u := signOf(word); u != NoUnit {
		return u
	}
	return unitWords[strings.ToLower(word)]
}

// unknownUnit says that the unit is missing or not known, and names the one
// that was probably meant.
func unknownUnit(number, unit string) error {
	if unit == "" {
		return fmt.Errorf("which unit? Write in, yd, mm, cm or m straight after the number, such as %sin", number)
	}
	if near := nearUnit(unit); near != NoUnit {
		return fmt.Errorf("%s is not a unit here; did you mean %s%s?", shown(unit), number, near.Sign())
	}
	return fmt.Errorf("%s is not a unit; the units are in, yd, mm, cm and m", shown(unit))
}

// nearUnit returns the unit that a misspelt one was probably meant to be: a
// word for it, its sign in capitals, or a sign that is one letter away.
func nearUnit(unit string) Unit {
	if u := wordOf(strings.ToLower(unit)); u != NoUnit {
		return u
	}
	if len(unit) < 2 {
		return NoUnit
	}
	for _, u := range Units {
		if len(u.Sign()) > 1 && oneLetterAway(strings.ToLower(unit), u.Sign()) {
			return u
		}
	}
	return NoUnit
}

// oneLetterAway says whether one letter added, left out, changed or swapped
// with its neighbour turns a into b.
func oneLetterAway(a, b string) bool {
	if len(a) > len(b) {
		a, b = b, a
	}
	i := 0
	for i < len(a) && a[i] == b[i] {
		i++
	}
	if len(a) < len(b) {
		return len(b) == len(a)+1 && a[i:] == b[i+1:]
	}
	if i >= len(a)-1 {
		return true
	}
	swapped := a[i] == b[i+1] && a[i+1] == b[i] && a[i+2:] == b[i+2:]
	return swapped || a[i+1:] == b[i+1:]
}
