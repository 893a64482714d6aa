// Package lay finds how the pieces of a garment lie on the cloth, and how much
// cloth that takes.
//
// In: the outlines of the pieces on a grid of 0.01 mm, what the cutting table says
// of each, and the cloth. Out: a [Lay], which says of each cut part where it lies,
// how it is turned and whether it lies face down, and the length that is needed.
// It knows no pattern: views, options and sizes are the caller's. The search itself
// is in package pack, which knows no cloth.
//
// A lay lies on a strip: x runs along the selvedges from where the cloth begins, y
// across it from the fold or from a selvedge. [Job.Check] looks at a lay from
// outside: it derives what lies where by other means than the search.
package lay

import "fmt"

// Millimetre is a millimetre in units of the grid.
const Millimetre = 100

// Point is a place or a direction, in units of 0.01 mm.
type Point struct{ X, Y int64 }

// Piece is an outline and how it is to be cut.
type Piece struct {
	Number, Name string // for drawings and messages only
	// Outline is a simple ring, in either direction, without a repeated end point,
	// with y upward: the cutting line, as it is seen with its printed side up.
	Outline []Point
	// Grain is the direction of the grain line on the piece, pointing to its upper
	// end, the way the nap is to run.
	Grain Point
	// Drawn parts are cut with the printed side up on the right side of the cloth,
	// Mirrored parts are their reflections, and of Either it does not matter which.
	// A mirrored pair is one Drawn and one Mirrored.
	Drawn, Mirrored, Either int
	// Fold is the straight edge that lies on the fold, nil if none does. Whole
	// parts are then counted by Either, and the other counts are 0.
	Fold *[2]Point
	// Cut says how the grain line lies to the selvedge.
	Cut Angle
	// OneWay pieces are not turned end for end even on cloth that allows it.
	OneWay bool

	memo *memo // nil if nothing is kept of it
}

// Angle is how the grain line of a piece lies to the selvedges.
type Angle uint8

// On the bias a piece is turned by 45° to one side, a reflected one to the other;
// on either bias it may be turned to both.
const (
	Straight Angle = iota
	Bias
	EitherBias
	Crosswise
)

// Cloth is what the pieces are laid on.
type Cloth struct {
	Width int64 // usable, between the selvedges
	// Nap says that all pieces run the same way: nap, pile, or a one-way print.
	Nap bool
	// Clearance is how far pieces stay apart; half of it also from the selvedges
	// and the ends.
	Clearance int64
}

// Way is how the cloth lies on the table.
type Way uint8

// Folded cloth lies with its right sides together, in two layers. Best takes the one
// that needs the shortest cloth.
const (
	Best Way = iota
	SingleLayer
	LengthwiseFold // half as wide; the fold is y = 0
	CrosswiseFold  // half as long; the fold is x = 0
)

var wayNames = [...]string{"best", "single-layer", "lengthwise-fold", "crosswise-fold"}

func (w Way) String() string { return wayNames[w] }

// Words says how the cloth lies, for a person.
func (w Way) Words() string {
	return [...]string{"", "in a single layer", "on a lengthwise fold", "on a crosswise fold"}[w]
}

// ParseWay reads what String gives.
func ParseWay(s string) (Way, bool) {
	for i, name := range wayNames {
		if s == name {
			return Way(i), true
		}
	}
	return 0, false
}

// layers is how many layers lie on each other.
func (w Way) layers() int64 {
	if w == SingleLayer {
		return 1
	}
	return 2
}

// strip is how wide the cloth lies.
func (w Way) strip(width int64) int64 {
	if w == LengthwiseFold {
		return width / 2
	}
	return width
}

// times is how many lengths of the strip make the length of the cloth.
func (w Way) times() int64 {
	if w == CrosswiseFold {
		return 2
	}
	return 1
}

// Job is a lay to be found. Way says how the cloth is to lie.
type Job struct {
	Cloth  Cloth
	Pieces []Piece
	Way    Way
}

// Place is a piece on the cloth. The piece is drawn with its grain line along x; if it
// is Mirrored, it is turned over about the grain line; then it is turned
// counter-clockwise by Turn degrees; and then moved until the lower left corner of
// the box round it is At. What is Folded lies with half on the fold; of what is
// Opened the whole lies there, both halves.
type Place struct {
	Piece          int // its index
	Turn           int
	Mirrored       bool
	Folded, Opened bool
	At             Point
}

// Lay is where everything lies. Length is that of the strip; Bound is a length below
// which none can come that lies this way, 0 if it was not asked for.
type Lay struct {
	Way    Way
	Length int64
	Bound  int64
	Places []Place
}

// Cloth is the length of cloth that the lay needs.
func (l Lay) Cloth() int64 { return l.Length * l.Way.times() }

// ClothBound is the length of cloth below which no lay of this way can come.
func (l Lay) ClothBound() int64 { return l.Bound * l.Way.times() }

// Density is the share of the cloth that goes into cut parts, from 0 to 1.
func (j Job) Density(l Lay) float64 {
	return float64(j.area2()) / 2 / (float64(j.Cloth.Width) * float64(l.Cloth()))
}

// Area is the length of cloth that the cut parts would fill without a gap: area ÷
// width, rounded up. No lay of any way is shorter.
func (j Job) Area() int64 {
	return (j.area2() + 2*j.Cloth.Width - 1) / (2 * j.Cloth.Width)
}

// area2 is twice the area of all cut parts.
func (j Job) area2() (sum int64) {
	for _, p := range j.Pieces {
		a := int64(p.Drawn+p.Mirrored+p.Either) * abs(area2(p.Outline))
		if p.Fold != nil {
			a *= 2
		}
		sum += a
	}
	return sum
}

// check tells what is wrong with a job, nil if nothing is.
func (j Job) check() error {
	if j.Cloth.Width < 2 || j.Cloth.Clearance < 0 {
		return fmt.Errorf("the cloth has no width, or a clearance below nothing")
	}
	if len(j.Pieces) == 0 {
		return fmt.Errorf("there is nothing to lay")
	}
	for _, p := range j.Pieces {
		if err := p.check(); err != nil {
			return fmt.Errorf("%s: %w", p.title(), err)
		}
	}
	return nil
}

func (p Piece) title() string {
	switch {
	case p.Number == "":
		return "piece " + p.Name
	case p.Name == "":
		return "piece " + p.Number
	}
	return "piece " + p.Number + " (" + p.Name + ")"
}

func (p Piece) check() error {
	switch {
	case len(p.Outline) < 3 || area2(p.Outline) == 0:
		return fmt.Errorf("its outline has no area")
	case p.Grain == Point{}:
		return fmt.Errorf("it has no grain line")
	case min(p.Drawn, p.Mirrored, p.Either) < 0 || p.Drawn+p.Mirrored+p.Either == 0:
		return fmt.Errorf("it is not cut")
	case p.Fold != nil && p.Drawn+p.Mirrored > 0:
		return fmt.Errorf("what is cut on the fold has no hand")
	}
	for _, v := range p.Outline {
		if max(abs(v.X), abs(v.Y)) > limit {
			return fmt.Errorf("its outline is larger than %d m", limit/(1000*Millimetre))
		}
	}
	if p.Fold != nil {
		_, err := p.half()
		return err
	}
	return nil
}

// Possible says why the job cannot be laid, nil if it can: something is wider than the
// cloth in every way of laying it.
func (j Job) Possible() error {
	err := j.check()
	if err != nil {
		return err
	}
	for _, w := range j.Ways() {
		if w == CrosswiseFold && j.Cloth.Nap {
			err = errNapFolded
		} else if _, _, err = j.problem(w); err == nil {
			return nil
		}
	}
	return err
}

// limit is the largest coordinate of an outline.
const limit = 1 << 26

// Strip is how wide the cloth lies.
func (l Lay) Strip(c Cloth) int64 { return l.Way.strip(c.Width) }
