package size

import (
	"math/big"
	"strings"
)

// order checks that the sizes run from small to large, where their names say so:
// all numbers (also with the same letters behind them, and ranges such as 98/104
// by their first number), or all letters. Other names have no order.
func (r *reader) order() {
	for _, rank := range []func(string) (*big.Rat, string){numberRank, letterRank} {
		if ranks, ok := ranksOf(r.chart.Sizes, rank); ok {
			r.firstStepDown(ranks)
			return
		}
	}
}

// ranksOf ranks every size; false if one has no rank or another kind of name.
func ranksOf(sizes []string, rank func(string) (*big.Rat, string)) ([]*big.Rat, bool) {
	var out []*big.Rat
	kind := ""
	for i, s := range sizes {
		value, k := rank(s)
		if value == nil || i > 0 && k != kind {
			return nil, false
		}
		out, kind = append(out, value), k
	}
	return out, true
}

// firstStepDown reports the first size that is not larger than the one before:
// in a list that is turned round all others follow from it.
func (r *reader) firstStepDown(ranks []*big.Rat) {
	for i := 1; i < len(ranks); i++ {
		switch ranks[i].Cmp(ranks[i-1]) {
		case 0:
			r.sameSize(i)
			return
		case -1:
			r.outOfOrder(i)
			return
		}
	}
}

var numberName = lazily(`^(\d+(?:\.\d+)?)(½?)([ ]?\p{L}*)(?:[-/]\d.*)?$`)

// numberRank ranks a size by its number; its kind is what stands behind. The
// sizes 0, 00 and 000 run downwards, as is usual (common practice, no source).
func numberRank(size string) (*big.Rat, string) {
	m := []string{size, size, "", ""}
	if !plainNumber(size) {
		m = numberName().FindStringSubmatch(size)
	}
	if m == nil {
		return nil, ""
	}
	if len(m[1]) > 1 && strings.Trim(m[1], "0") == "" {
		return big.NewRat(int64(1-len(m[1])), 1), m[3]
	}
	value, _ := new(big.Rat).SetString(m[1]) // digits and one point
	if m[2] != "" {
		value.Add(value, big.NewRat(1, 2))
	}
	return value, strings.ToUpper(strings.TrimSpace(m[3]))
}

var letterName = lazily(`^(\d*)(X*)([SML])(?:[-/].*)?$`)

// letterRank ranks a size by its letters: XXS < XS < S < M < L < XL < XXL < 3XL
// (EN 13402-3). A number before XL counts the X: 3XL is XXXL.
func letterRank(size string) (*big.Rat, string) {
	m := letterName().FindStringSubmatch(strings.ToUpper(size))
	if m == nil || len(m[1]) > 2 || m[1] != "" && m[2] != "X" || m[3] == "M" && m[2] != "" {
		return nil, ""
	}
	n := int64(len(m[2]))
	if count, ok := new(big.Int).SetString(m[1], 10); ok {
		n = count.Int64()
	}
	switch m[3] {
	case "S":
		return big.NewRat(-1-n, 1), "letters"
	case "L":
		return big.NewRat(1+n, 1), "letters"
	}
	return new(big.Rat), "letters"
}
