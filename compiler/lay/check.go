package lay

import (
	"errors"
	"fmt"
	"math"

	"seamwarden/compiler/lay/verify"
)

// Check looks at a lay from outside: that no two outlines overlap and all lie on the
// cloth, exactly, by package verify; and that the lay keeps what the trade demands of
// each piece, from where its corners and its grain line come to lie. It gives the
// length of the strip that the lay takes, which may be less than it says, or a
// sentence that names the first fault.
func (j Job) Check(l Lay) (length int64, err error) {
	if err := j.check(); err != nil {
		return 0, err
	}
	if l.Way != SingleLayer && l.Way != LengthwiseFold && l.Way != CrosswiseFold {
		return 0, fmt.Errorf("it does not say how the cloth lies")
	}
	if j.Way != Best && j.Way != l.Way {
		return 0, fmt.Errorf("the cloth is to lie otherwise: %s, not %s", j.Way, l.Way)
	}
	if l.Way == CrosswiseFold && j.Cloth.Nap {
		return 0, fmt.Errorf("the cloth has a nap and lies folded crosswise")
	}
	placed, err := j.Placed(l)
	if err != nil {
		return 0, err
	}
	for i, p := range l.Places {
		if err := j.keeps(l, p, placed[i].Ring); err != nil {
			return 0, fmt.Errorf("%s: %w", j.Pieces[p.Piece].title(), err)
		}
	}
	if err := j.complete(l); err != nil {
		return 0, err
	}
	var laid []verify.Laid
	for i, p := range placed {
		one := verify.Laid{AtEdge: l.Places[i].Folded}
		for _, v := range p.Kept {
			one.Outline = append(one.Outline, verify.Point(v))
			length = max(length, v.X)
		}
		laid = append(laid, one)
	}
	return length, j.named(l, verify.Lay(l.Way.strip(j.Cloth.Width), l.Length, laid))
}

// named tells a fault of places by the pieces that lie there.
func (j Job) named(l Lay, err error) error {
	var f *verify.Fault
	if !errors.As(err, &f) {
		return err
	}
	one := j.Pieces[l.Places[f.One].Piece].title()
	if f.Other < 0 {
		return fmt.Errorf("%s %s", one, f.Why)
	}
	return fmt.Errorf("%s and %s %s", one, j.Pieces[l.Places[f.Other].Piece].title(), f.Why)
}

// Placed is an outline where it lies: Ring of the piece, Kept with its clearance.
type Placed struct{ Ring, Kept []Point }

// Placed gives what lies at each place of a lay. It fails if a piece lies as it may not.
func (j Job) Placed(l Lay) ([]Placed, error) {
	bare := j
	bare.Cloth.Clearance = 0
	with, err := j.groups(l.Way)
	if err != nil {
		return nil, err
	}
	without, err := bare.groups(l.Way)
	if err != nil {
		return nil, err
	}
	var all []Placed
	for _, p := range l.Places {
		kept, at := find(with, p)
		ring, _ := find(without, p)
		if kept == nil || ring == nil {
			return nil, fmt.Errorf("a piece lies as it may not: piece %d turned by %d°", p.Piece+1, p.Turn)
		}
		if max(abs(p.At.X), abs(p.At.Y)) > 1<<28 {
			return nil, fmt.Errorf("a piece lies farther off than any cloth: piece %d", p.Piece+1)
		}
		by := Point{p.At.X - at.X, p.At.Y - at.Y}
		all = append(all, Placed{moved(ring, by), moved(kept, by)})
	}
	return all, nil
}

func find(groups []group, p Place) (outline []Point, corner Point) {
	for _, g := range groups {
		for _, o := range g.poses {
			q := o.place
			q.At = p.At
			if q == p {
				return o.outline, o.corner
			}
		}
	}
	return nil, Point{}
}

// keeps checks one place by what follows from the words of the trade: it turns the
// piece as drawn by plain trigonometry and looks at the result.
func (j Job) keeps(l Lay, at Place, ring []Point) error {
	p := j.Pieces[at.Piece]
	if at.Folded != (p.Fold != nil && !at.Opened) {
		return fmt.Errorf("it is cut on the fold, and does not lie there, nor opened out")
	}
	if at.Folded && l.Way != LengthwiseFold {
		return fmt.Errorf("it lies on a fold, and there is none along the cloth")
	}
	where := p.trace(at)
	if err := p.grainKept(where, at, j.Cloth.Nap || p.OneWay); err != nil {
		return err
	}
	if at.Folded {
		for _, end := range p.Fold {
			if y := where(realOf(end)).y; math.Abs(y) > near {
				return fmt.Errorf("its fold edge lies %.2f mm from the fold", y/Millimetre)
			}
		}
	}
	for _, v := range p.Outline {
		ends := []real{where(realOf(v))}
		if at.Opened {
			ends = append(ends, where(p.across(v)))
		}
		for _, q := range ends {
			if !holds(ring, q) {
				return fmt.Errorf("a corner of it lies outside its own outline")
			}
		}
	}
	return nil
}

// grainKept checks the direction in which the grain line comes to lie.
func (p Piece) grainKept(where func(real) real, at Place, oneWay bool) error {
	from, to := where(real{}), where(realOf(p.Grain))
	h := math.Hypot(to.x-from.x, to.y-from.y)
	g := real{(to.x - from.x) / h, (to.y - from.y) / h}
	const straight = 2e-3 // a line as drawn may be off by this
	across := g.y         // of a crosswise piece, the way up
	if at.Mirrored {
		across = -across
	}
	switch p.Cut {
	case Straight:
		if math.Abs(g.y) > straight {
			return fmt.Errorf("its grain line does not run along the cloth")
		}
	case Bias, EitherBias:
		if math.Abs(math.Abs(g.x)-math.Abs(g.y)) > straight {
			return fmt.Errorf("its grain line does not lie on the bias")
		}
		if p.Cut == Bias && (g.x*g.y < 0) != at.Mirrored {
			return fmt.Errorf("it lies on the other bias")
		}
	case Crosswise:
		if math.Abs(g.x) > straight {
			return fmt.Errorf("its grain line does not run across the cloth")
		}
		if oneWay && across < 0 {
			return fmt.Errorf("it lies upside down on cloth that runs one way")
		}
	}
	if oneWay && p.Cut != Crosswise && g.x < 0 {
		return fmt.Errorf("it lies upside down on cloth that runs one way")
	}
	return nil
}
