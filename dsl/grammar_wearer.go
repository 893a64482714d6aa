package dsl

// Sentences that say for whom a garment is, what it is, and where on the body a
// cord or a tie is worn. The rules of safety are decided from them.
type (
	// For says for whom the garment is, by body height, by age or by both.
	For struct {
		Extent
		Who  string    `parser:"'for' @('children' | 'girls' | 'boys' | 'adults')"`
		Bits []*ForBit `parser:"(',' @@)*"`
	}
	// ForBit is a range of heights or of ages; the second end may be left out.
	ForBit struct {
		Low  *Amount `parser:"( 'heights' @@"`
		High *Amount `parser:"   ('to' @@)?"`
		From *Count  `parser:"| 'ages' @@"`
		To   *Count  `parser:"   ('to' @@)?"`
		In   string  `parser:"   @('years' | 'months') )"`
	}
	// GarmentKind says what is made. What no rule asks about is `other`.
	GarmentKind struct {
		What *Name `parser:"'kind' @@"`
		Guarded
	}
	// Wear says where on the body something is worn that could catch, and what it
	// does there.
	Wear struct {
		Extent
		Place string     `parser:"'wear' @('hood' | 'neck' | 'waist' | 'hem' | 'sleeve' | 'back' | 'elsewhere')"`
		Bits  []*WearBit `parser:"(',' @@)*"`
		Guarded
	}
	// WearBit tells what it does, what its ends are like, and how far they hang out
	// of their channel when the garment lies at its full width.
	WearBit struct {
		Draws    bool    `parser:"( @'draws' 'up'"`
		How      string  `parser:"| @('ties' | 'trims' | 'binds')"`
		Ends     string  `parser:"| 'ends' @('free' | 'fixed' | 'toggle' | 'knot')"`
		Loop     bool    `parser:"| 'one' @'loop'"`
		Retracts bool    `parser:"| @'retractable'"`
		Outside  *Amount `parser:"| 'outside' @@ )"`
	}
)
