package measure

import (
	"errors"
	"fmt"
	"strings"
)

// maxText is the most bytes that are read as one measure.
const maxText = 200

var errTooLong = errors.New("that number is too long to be a measure")

// Parse reads a measure as it is written in a pattern's source: a number with
// its unit and no space between them, such as "5/8in", "1 1/2in", "1½in",
// "1.5cm", "15mm", "2 1/4yd" or "2m". An error says in plain words what to
// write instead; its text begins with the measure itself.
func Parse(text string) (Measure, error) {
	if len(text) > maxText {
		return Measure{}, about(text, errTooLong)
	}
	number, unit, spaced := splitUnit(plainNumber(text))
	m, err := build(text, number, unit, signOf)
	if err == nil && spaced {
		err = fmt.Errorf("write %s%s, with no space before the unit", number, unit)
	}
	if err != nil {
		return Measure{}, about(text, err)
	}
	return m, nil
}

// ParseLoose reads a measure as people write it in prose: what Parse reads,
// and with a space before the unit, with the inch sign ″ or ", with the unit
// as a word ("2 inches"), with a hyphen ("1-1/2 in", "5-inch") and with a
// decimal comma ("1,5 cm").
func ParseLoose(text string) (Measure, error) {
	if len(text) > maxText {
		return Measure{}, about(text, errTooLong)
	}
	plain, err := decimalPoint(plainNumber(text))
	if err != nil {
		return Measure{}, about(text, err)
	}
	number, unit, _ := splitUnit(plain)
	number = strings.TrimSuffix(number, "-")
	m, err := build(text, number, unit, wordOf)
	if err != nil {
		return Measure{}, about(text, err)
	}
	return m, nil
}

// splitUnit parts "5/8 in" into its number and its unit, and says whether a
// space stood between them.
func splitUnit(plain string) (number, unit string, spaced bool) {
	end := 0
	for end < len(plain) && strings.IndexByte("0123456789./ -", plain[end]) >= 0 {
		end++
	}
	number = strings.TrimRight(plain[:end], " ")
	return number, plain[end:], len(number) < end && end < len(plain)
}

// build makes a measure of a number and a unit, or says what is wrong. The
// function names the unit that a word stands for.
func build(text, numberText, unitText string, unitOf func(string) Unit) (Measure, error) {
	n, ok := readNumber(numberText)
	switch {
	case strings.HasPrefix(numberText, ".") && unitText != "":
		return Measure{}, fmt.Errorf("write 0%s%s, with a 0 before the point", numberText, unitText)
	case !ok:
		return Measure{}, errors.New("not a measure; write a number and its unit, such as 5/8in or 1.5cm")
	}
	unit := unitOf(unitText)
	if num, den, ok := n.plain(); ok && unit != NoUnit {
		f := unitFacts[unit]
		return Measure{Length: reduced(num*f.num, den*f.den), Unit: unit, Text: text}, nil
	}
	value, err := n.value(unitText)
	if err != nil {
		return Measure{}, err
	}
	if unit == NoUnit {
		return Measure{}, unknownUnit(numberText, unitText)
	}
	return Measure{Length: FromRat(value, unit), Unit: unit, Text: text}, nil
}

// about puts the measure before what is wrong with it.
func about(text string, err error) error {
	if shown(text) == "" {
		return errors.New("a measure is missing; write a number and its unit, such as 5/8in")
	}
	return fmt.Errorf("%s: %w", shown(text), err)
}

// shown shortens a text for a message.
func shown(text string) string {
	const most = 40
	if r := []rune(text); len(r) > most {
		return string(r[:most]) + "…"
	}
	return strings.TrimSpace(text)
}

// decimalPoint turns a decimal comma into a point. Three digits after a comma
// may also mean thousands, which is refused.
func decimalPoint(plain string) (string, error) {
	comma := strings.IndexByte(plain, ',')
	if comma < 0 {
		return plain, nil
	}
	digits := 0
	for _, r := range plain[comma+1:] {
		if r < '0' || r > '9' {
			break
		}
		digits++
	}
	if digits == 3 && plain[:comma] != "0" {
		return "", errors.New("the comma can mean two things; write a decimal point, or no comma")
	}
	return plain[:comma] + "." + plain[comma+1:], nil
}
