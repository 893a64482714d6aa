package measure

import (
	"fmt"
	"math/big"
	"strconv"
	"strings"
	"unicode/utf8"
)

// maxDigits is the most digits that one number of a measure may have. Twelve
// digits of millimetres go 25 times round the earth.
const maxDigits = 12

// vulgar gives the fractions that Unicode has as one character, with their
// numerator and denominator (UnicodeData.txt, compatibility decompositions).
var vulgar = map[rune][2]int64{
	'¼': {1, 4}, '½': {1, 2}, '¾': {3, 4}, '⅐': {1, 7}, '⅑': {1, 9}, '⅒': {1, 10},
	'⅓': {1, 3}, '⅔': {2, 3}, '⅕': {1, 5}, '⅖': {2, 5}, '⅗': {3, 5}, '⅘': {4, 5},
	'⅙': {1, 6}, '⅚': {5, 6}, '⅛': {1, 8}, '⅜': {3, 8}, '⅝': {5, 8}, '⅞': {7, 8},
}

const (
	superscripts = "⁰¹²³⁴⁵⁶⁷⁸⁹"
	subscripts   = "₀₁₂₃₄₅₆₇₈₉"
	slash        = '\u2044' // fraction slash
	noBreak      = "\u00a0"
)

var raisedDigits, loweredDigits = digitValues(superscripts), digitValues(subscripts)

// plainNumber rewrites the typographer's characters as a typist would write
// them: "1½" and "1 ½" as "1 1/2", "³⁄₁₆" as "3/16", every kind of space as a
// space. Blanks at both ends are dropped.
func plainNumber(text string) string {
	if !strings.ContainsFunc(text, func(r rune) bool { return r >= utf8.RuneSelf }) {
		return strings.TrimSpace(text) // as nearly all of them are
	}
	var b strings.Builder
	raised := false
	for _, r := range text {
		up, isUp := raisedDigits[r]
		if isUp && !raised {
			b.WriteByte(' ')
		}
		raised = isUp
		switch down, isDown := loweredDigits[r]; {
		case isUp:
			fmt.Fprint(&b, up)
		case isDown:
			fmt.Fprint(&b, down)
		case vulgar[r] != [2]int64{}:
			fmt.Fprintf(&b, " %d/%d", vulgar[r][0], vulgar[r][1])
		case r == slash:
			b.WriteByte('/')
		case isBlank(r):
			b.WriteByte(' ')
		default:
			b.WriteRune(r)
		}
	}
	return strings.TrimSpace(b.String())
}

// digitValues returns the value of each raised or lowered digit.
func digitValues(digits string) map[rune]int {
	values := map[rune]int{}
	for _, d := range digits {
		values[d] = len(values)
	}
	return values
}

// isBlank says whether r is a space that people put into a measure: plain,
// no-break, thin or narrow no-break.
func isBlank(r rune) bool {
	return r == ' ' || r == '\u00a0' || r == '\u2009' || r == '\u202f'
}

// number is what stands before the unit.
type number struct {
	whole, num, den string // digits of "1 5/8"; num and den empty for "1"
	decimals        string // digits after the decimal point
	text            string // as written, for messages
}

// readNumber takes apart a number in plain characters: 12, 1.5, 5/8, 1 5/8 or
// 1-5/8; false if it is none. It reads by hand, since a size table has hundreds.
func readNumber(plain string) (number, bool) {
	n := number{text: plain}
	first, rest := digitsFirst(plain)
	if first == "" {
		return number{}, false
	}
	switch {
	case rest == "":
		n.whole = first
		return n, true
	case rest[0] == '.':
		n.whole = first
		n.decimals, rest = digitsFirst(rest[1:])
		return n, n.decimals != "" && rest == ""
	case rest[0] == '-':
		n.whole = first
		first, rest = digitsFirst(rest[1:])
	case rest[0] == ' ':
		n.whole = first
		first, rest = digitsFirst(strings.TrimLeft(rest, " "))
	}
	if first == "" || rest == "" || rest[0] != '/' {
		return number{}, false
	}
	n.num = first
	n.den, rest = digitsFirst(rest[1:])
	return n, n.den != "" && rest == ""
}

// digitsFirst parts the digits at the beginning from the rest.
func digitsFirst(s string) (digits, rest string) {
	end := 0
	for end < len(s) && s[end] >= '0' && s[end] <= '9' {
		end++
	}
	return s[:end], s[end:]
}

// plain works a number out in whole numbers, as num/den; false if it is too long for
// that, or there is something to say about it.
func (n number) plain() (num, den int64, ok bool) {
	if len(n.whole)+len(n.decimals) > 6 || len(n.num) > 4 || len(n.den) > 4 {
		return 0, 0, false
	}
	whole, den := wholeOf(n.whole+n.decimals), int64(1)
	if n.num == "" {
		for range n.decimals {
			den *= 10
		}
		return whole, den, true
	}
	num, den = wholeOf(n.num), wholeOf(n.den)
	return whole*den + num, den, num < den
}

// wholeOf gives the value of a few digits.
func wholeOf(digits string) (n int64) {
	for i := range len(digits) {
		n = n*10 + int64(digits[i]-'0')
	}
	return
}

// value works the number out, or says in plain words what is wrong with it.
// The unit is only there to write a suggestion with.
func (n number) value(unit string) (*big.Rat, error) {
	for _, digits := range []string{n.whole + n.decimals, n.num, n.den} {
		if len(digits) > maxDigits {
			return nil, errTooLong
		}
	}
	if n.num == "" {
		tens := new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(len(n.decimals))), nil)
		return new(big.Rat).SetFrac(digitsOf(n.whole+n.decimals), tens), nil
	}
	num, den := digitsOf(n.num), digitsOf(n.den)
	if den.Sign() == 0 {
		return nil, fmt.Errorf("nothing can be divided into 0 parts")
	}
	r := new(big.Rat).SetFrac(num, den)
	total := new(big.Rat).Add(r, new(big.Rat).SetInt(digitsOf(n.whole)))
	if num.Cmp(den) < 0 {
		return total, nil
	}
	if split, ok := n.missingSpace(); ok {
		return nil, fmt.Errorf("did you mean %s%s?", split, unit)
	}
	return nil, fmt.Errorf("the fraction is not less than one; did you mean %s%s?", mixedPlain(total), unit)
}

// missingSpace reads "11/2" as "1 1/2": the shortest numerator at the end that
// makes a proper fraction.
func (n number) missingSpace() (string, bool) {
	if n.whole != "" {
		return "", false
	}
	for i := len(n.num) - 1; i > 0; i-- {
		num := digitsOf(n.num[i:])
		if num.Sign() > 0 && n.num[i] != '0' && num.Cmp(digitsOf(n.den)) < 0 {
			return n.num[:i] + " " + n.num[i:] + "/" + n.den, true
		}
	}
	return "", false
}

// digitsOf returns the value of a row of digits; an empty row is 0.
func digitsOf(digits string) *big.Int {
	if small, err := strconv.ParseInt(digits, 10, 64); err == nil {
		return big.NewInt(small)
	}
	n := new(big.Int)
	n.SetString(digits, 10)
	return n
}

// mixedPlain writes a fraction that is not negative as a designer types it:
// "1 1/2", "3/4", "2".
func mixedPlain(r *big.Rat) string {
	whole, rest := wholeAndRest(r)
	switch {
	case rest.Sign() == 0:
		return whole.String()
	case whole.Sign() == 0:
		return rest.RatString()
	}
	return whole.String() + " " + rest.RatString()
}

// wholeAndRest splits a fraction that is not negative into its whole part and
// the proper fraction that is left.
func wholeAndRest(r *big.Rat) (*big.Int, *big.Rat) {
	whole := new(big.Int).Quo(r.Num(), r.Denom())
	return whole, new(big.Rat).Sub(r, new(big.Rat).SetInt(whole))
}
