package measure

import "math/big"

// The small sums of the cutting table. All are exact until their last line,
// which says how it rounds.

// BiasLength returns how much bias strip a square gives: area of the square /
// width of the strip as cut. It returns nothing if the strip has no width.
func BiasLength(squareSide, cutWidth Length) Length {
	if cutWidth.Sign() <= 0 {
		return Length{}
	}
	side := squareSide.Rat()
	return lengthOf(side.Quo(side.Mul(side, side), cutWidth.Rat()))
}

// BiasSquareSide returns the side of the square that gives so much bias strip:
// the root of length · width of the strip as cut, rounded up to a whole inch.
func BiasSquareSide(length, cutWidth Length) Length {
	area := new(big.Rat).Mul(length.In(Inch), cutWidth.In(Inch))
	if area.Sign() <= 0 {
		return Length{}
	}
	whole := ceil(area)
	side := new(big.Int).Sqrt(whole)
	if new(big.Int).Mul(side, side).Cmp(whole) < 0 {
		side.Add(side, big.NewInt(1))
	}
	return FromRat(new(big.Rat).SetInt(side), Inch)
}

// GatherFlat returns how long an edge is cut that is to be gathered: finished
// length · ratio + an allowance at each end.
func GatherFlat(finished Length, ratio *big.Rat, endAllowance Length) Length {
	return finished.MulRat(ratio).Add(endAllowance.Mul(2))
}

// KnifePleats divides a section into pleats of about the wished width:
// count = section / width to the nearest whole number, at least one; width =
// section / count; flat = section + 2 · depth · count.
func KnifePleats(section, wished, depth Length) (count int64, width, flat Length) {
	if section.Sign() <= 0 || wished.Sign() <= 0 {
		return 0, Length{}, section
	}
	n := toStep(section.Rat(), wished.Rat(), false)
	n.Quo(n, wished.Rat())
	if !n.Num().IsInt64() {
		return 0, Length{}, section
	}
	count = n.Num().Int64()
	width = section.MulRat(big.NewRat(1, count))
	return count, width, section.Add(depth.Mul(2 * count))
}

// BoxPleatsFlat returns the flat length of a section with box or inverted
// pleats, each of which is two knife pleats: section + 4 · depth · count.
func BoxPleatsFlat(section, depth Length, count int64) Length {
	return section.Add(depth.Mul(4 * count))
}

// Strips returns how many strips across the cloth make up a flat length:
// flat / (width of the cloth − seam allowance), rounded up; 0 if the cloth is
// no wider than the allowance.
func Strips(flat, clothWidth, allowance Length) int64 {
	each := clothWidth.Sub(allowance)
	if each.Sign() <= 0 || flat.Sign() <= 0 {
		return 0
	}
	n := ceil(new(big.Rat).Quo(flat.Rat(), each.Rat()))
	if !n.IsInt64() {
		return 0
	}
	return n.Int64()
}

// YardsUp returns the length rounded up to an eighth of a yard, as cloth is
// bought.
func YardsUp(l Length) Length { return Round(l, Cloth, Imperial) }

// MetresUp returns the length rounded up to a tenth of a metre.
func MetresUp(l Length) Length { return Round(l, Cloth, Metric) }

// ceil returns the least whole number that is not less than r.
func ceil(r *big.Rat) *big.Int {
	n, rest := wholeAndRest(r)
	if rest.Sign() > 0 {
		n.Add(n, big.NewInt(1))
	}
	return n
}
