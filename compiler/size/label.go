package size

import (
	"strconv"
	"strings"
)

// Label is what the name of a child's size says by itself. A name that covers
// several sizes, 12-14 or 134/140, has two ends. What is not said is nothing.
//
// The letters are those of 16 CFR 1120.3(b)(2) (read): L is 12, XL is 16, and what
// is smaller than L lies below 12. What a letter beyond XL means is not said there.
type Label struct {
	USLow, USHigh         float64 // sizes of US children's wear; 6X stands between 6 and 7
	Beyond                bool    // a letter larger than XL
	Letter                bool    // the size is a letter
	MonthsLow, MonthsHigh int     // a size in months or years of age; four years are the months 48 to 59
	CmLow, CmHigh         int     // a size that is a body height
}

var (
	labelParts  = lazily(`\s*(?:-|–|/|\bthrough\b|\bto\b)\s*`)
	labelAge    = lazily(`([0-9])\s*(months?|mos?\.?|m|years?|yrs?\.?|y)$`)
	labelNumber = lazily(`^([1-9][0-9]*)\s*([tx]?)$`)
	labelLetter = map[string]float64{"xs": 4, "s": 6, "m": 8, "l": 12, "xl": 16}
)

// heightsFrom is the smallest whole number that is taken for a height in
// centimetres, usNo the first that is no size of US children's wear: an own
// reading, since no rule says how sizes are named.
const heightsFrom, usNo = 44, 21

// ReadLabel reads the name of a size.
func ReadLabel(name string) (l Label) {
	name = strings.ToLower(strings.TrimSpace(name))
	unit := ""
	if m := labelAge().FindStringSubmatch(name); m != nil {
		unit, name = m[2][:1], strings.TrimSpace(name[:len(name)-len(m[2])])
	}
	for _, part := range labelParts().Split(name, 2) {
		l.part(strings.TrimSpace(part), unit)
	}
	return l
}

// part reads one end of a name; unit is m for months of age, y for years.
func (l *Label) part(text, unit string) {
	if v, ok := labelLetter[text]; ok {
		l.Letter = true
		l.us(v)
		return
	}
	if strings.HasSuffix(text, "xl") {
		l.Letter, l.Beyond = true, true
		return
	}
	m := labelNumber().FindStringSubmatch(text)
	if m == nil {
		return
	}
	n, _ := strconv.Atoi(m[1])
	switch {
	case unit == "m":
		l.MonthsLow, l.MonthsHigh = ends(l.MonthsLow, l.MonthsHigh, n)
	case unit == "y":
		low, _ := ends(l.MonthsLow, l.MonthsHigh, 12*n)
		_, high := ends(l.MonthsLow, l.MonthsHigh, 12*n+11)
		l.MonthsLow, l.MonthsHigh = low, high
	case m[2] == "x":
		l.us(float64(n) + 0.5)
	case n < usNo:
		l.us(float64(n))
	case n >= heightsFrom:
		l.CmLow, l.CmHigh = ends(l.CmLow, l.CmHigh, n)
	}
}

func (l *Label) us(v float64) { l.USLow, l.USHigh = ends(l.USLow, l.USHigh, v) }

// ends widens a range to hold a number; a range of nothing holds none.
func ends[N int | float64](low, high, n N) (N, N) {
	if high == 0 {
		return n, n
	}
	return min(low, n), max(high, n)
}
