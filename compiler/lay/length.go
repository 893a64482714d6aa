package lay

// Shrinkage is how much cloth loses in the first wash, in thousandths of its length.
type Shrinkage int64

// Bought is the length of cloth to buy, so that as much is left after it has shrunk:
// length ÷ (1 - shrinkage), rounded up to a unit.
func (s Shrinkage) Bought(length int64) int64 {
	left := 1000 - int64(s)
	return (length*1000 + left - 1) / left
}

// Sold rounds a length up as the trade sells cloth: to eighths of a yard and to
// tenths of a metre, each from the exact length. Common practice, no source.
func Sold(length int64) (eighthsOfYard, tenthsOfMetre int64) {
	up := func(unit int64) int64 { return (length + unit - 1) / unit }
	return up(EighthOfYard), up(TenthOfMetre)
}
