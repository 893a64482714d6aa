package lay

import (
	"fmt"
	"math/big"

	"seamwarden/compiler/measure"
)

// Measure is a length of the grid as an exact length.
func Measure(units int64) measure.Length {
	return measure.FromRat(big.NewRat(units, Millimetre), measure.Millimetre)
}

// Shrinkage is how much cloth loses along its length in the first wash, in thousandths.
type Shrinkage int64

// Need is the length of cloth for a lay before it shrinks: length ÷ (1 - shrinkage),
// exactly. In the trade it is rounded up, by [measure.YardsUp] and [measure.MetresUp],
// each from this. It fails if nothing is left of the cloth, or it is to grow.
func (s Shrinkage) Need(cloth int64) (measure.Length, error) {
	if s < 0 || s >= 1000 {
		return measure.Length{}, fmt.Errorf("cloth that shrinks by %d in 1000 cannot be bought", s)
	}
	return measure.FromRat(big.NewRat(cloth*1000, Millimetre*(1000-int64(s))), measure.Millimetre), nil
}
