package measure

import "math/big"

// Kind says what a length is, and so how it is rounded and in which unit it is
// printed.
type Kind uint8

// The kinds.
const (
	Exact  Kind = iota // not rounded at all
	Detail             // allowances, turnings, stitching distances, other small lengths
	Body               // body and finished measures
	Cloth              // cloth to buy: rounded up, so that it is enough
	Width              // how wide a cloth lies
)

// band rounds every length shorter than its limit, and every length if it has
// no limit. Sizes are in millimetres.
type band struct {
	under *big.Rat // nil: no limit
	step  *big.Rat // the printed value is a multiple of this
	finer *big.Rat // used instead where step misses by more than near; nil: never
}

// rule is how one kind is rounded when it is printed in a system in which it
// was not written.
type rule struct {
	imperial, metric []band
	up               bool // never less than the length itself
}

// near is the part of a length by which a rounded value may miss it before a
// reader would see another length: six hundredths.
var near = big.NewRat(6, 100)

// rules is the one table of rounding. It is common practice on printed
// patterns; no source.
//
// Detail: authors think in eighths of an inch; 1.5 cm is printed as 5/8 in and
// 6 mm as 1/4 in, but 5 mm as 3/16 in, which no eighth is near enough to.
// Width: 45 in is sold as 115 cm, 60 in as 150 cm, 36 in as 90 cm; what is
// narrower than 30 in is a fusible or a tape, where 5 cm would be too much.
var rules = map[Kind]rule{
	Detail: {
		imperial: []band{{under: inches(12, 1), step: inches(1, 8), finer: inches(1, 16)}, {step: inches(1, 4)}},
		metric:   []band{{under: big.NewRat(100, 1), step: big.NewRat(1, 1)}, {step: big.NewRat(5, 1)}},
	},
	Body: {
		imperial: []band{{step: inches(1, 4)}},
		metric:   []band{{step: big.NewRat(5, 1)}},
	},
	Cloth: {
		imperial: []band{{step: inches(36, 8)}},
		metric:   []band{{step: big.NewRat(100, 1)}},
		up:       true,
	},
	Width: {
		imperial: []band{{under: inches(30, 1), step: inches(1, 4)}, {step: inches(1, 1)}},
		metric:   []band{{under: inches(30, 1), step: big.NewRat(10, 1)}, {step: big.NewRat(50, 1)}},
	},
}

// usualWidths are the widths in inches by which cloth is sold. A width in
// centimetres that one of them is printed as is printed back as that width:
// 150 cm is 60 in, not 59. Common practice, no source.
var usualWidths = []int64{36, 45, 54, 60}

func inches(num, den int64) *big.Rat { return FromInches(num, den).Rat() }

// Round returns the length as it is printed in a system in which it was not
// written. Nothing but nothing is rounded to nothing: the least value is one
// step.
func Round(l Length, kind Kind, system System) Length {
	r, ok := rules[kind]
	if !ok || l.IsZero() {
		return l
	}
	if l.Sign() < 0 {
		return Round(l.Mul(-1), kind, system).Mul(-1)
	}
	if system == Metric {
		return lengthOf(roundBands(l.Rat(), r.metric, r.up))
	}
	if usual, ok := usualWidth(l, kind); ok {
		return usual
	}
	return lengthOf(roundBands(l.Rat(), r.imperial, r.up))
}

// usualWidth returns the usual width in inches that is sold as this many
// centimetres.
func usualWidth(l Length, kind Kind) (Length, bool) {
	if kind != Width {
		return Length{}, false
	}
	for _, n := range usualWidths {
		usual := FromInches(n, 1)
		if Round(usual, Width, Metric) == l {
			return usual, true
		}
	}
	return Length{}, false
}

func roundBands(mm *big.Rat, bands []band, up bool) *big.Rat {
	for _, b := range bands {
		if b.under != nil && mm.Cmp(b.under) >= 0 {
			continue
		}
		r := toStep(mm, b.step, up)
		if b.finer != nil && !within(r, mm, new(big.Rat).Mul(r, near)) {
			r = toStep(mm, b.finer, up)
		}
		return r
	}
	return mm
}

// toStep returns the multiple of step that is nearest to mm, halves upward, or
// the next one that is not less; at least one step. mm is positive.
func toStep(mm, step *big.Rat, up bool) *big.Rat {
	steps := new(big.Rat).Quo(mm, step)
	n, rest := wholeAndRest(steps)
	if (up && rest.Sign() > 0) || (!up && rest.Cmp(big.NewRat(1, 2)) >= 0) || n.Sign() == 0 {
		n.Add(n, big.NewInt(1))
	}
	return new(big.Rat).Mul(step, new(big.Rat).SetInt(n))
}

// within says whether a and b differ by no more than limit.
func within(a, b, limit *big.Rat) bool {
	d := new(big.Rat).Sub(a, b)
	return d.Abs(d).Cmp(limit) <= 0
}
