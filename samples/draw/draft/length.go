package draft

import (
	"fmt"
	"math"
)

// Length is how long a path is.
func (p Path) Length() (sum float64) {
	for i := range p {
		sum += p[i].length(1)
	}
	return
}

// length is how long a curve is up to t, by Simpson's rule in 32 parts; for curves
// that run on without loops that is off by less than a hundredth of a millimetre.
func (c *Curve) length(t float64) float64 {
	if c.Straight {
		return c.P[3].Minus(c.P[0]).Length() * t
	}
	const parts = 32
	sum := c.speed(0).Length() + c.speed(t).Length()
	for i := 1; i < parts; i++ {
		sum += c.speed(t*float64(i)/parts).Length() * float64(2+2*(i%2))
	}
	return sum * t / (3 * parts)
}

// find gives the curve and the parameter so many millimetres along the path; a place
// beyond its end is its end.
func (p Path) find(mm float64) (i int, t float64) {
	for i := range p {
		long := p[i].length(1)
		if mm <= long {
			return i, Solve(0, 1, mm, p[i].length)
		}
		mm -= long
	}
	return len(p) - 1, 1
}

// At is the place so many millimetres along a path, and the direction there.
func (p Path) At(mm float64) (place, direction Point) {
	i, t := p.find(mm)
	return p[i].at(t), p[i].direction(t)
}

// Cut parts a path so many millimetres from its start.
func (p Path) Cut(mm float64) (before, after Path) {
	i, t := p.find(mm)
	a, b := p[i].split(t)
	before, after = append(Path(nil), p[:i]...), append(Path(nil), p[i+1:]...)
	if a.length(1) > 1e-6 {
		before = append(before, a)
	}
	if b.length(1) > 1e-6 {
		after = append(Path{b}, after...)
	}
	return
}

// Crossing is how many millimetres along a path it first meets another, and how far
// along the other; ok is false if they do not meet.
func (p Path) Crossing(q Path) (along, other float64, ok bool) {
	const parts = 64
	for i := range p {
		for k := range parts {
			a, b := p[i].at(float64(k)/parts), p[i].at(float64(k+1)/parts)
			for j := range q {
				for m := range parts {
					s, t, met := meet(a, b, q[j].at(float64(m)/parts), q[j].at(float64(m+1)/parts))
					if met {
						return p[:i].Length() + p[i].length((float64(k)+s)/parts), q[:j].Length() + q[j].length((float64(m)+t)/parts), true
					}
				}
			}
		}
	}
	return 0, 0, false
}

// Meeting is the same of paths that must meet. It panics if they do not: then the draft
// is wrong.
func (p Path) Meeting(q Path) (along, other float64) {
	along, other, ok := p.Crossing(q)
	if !ok {
		panic(fmt.Sprintf("draft: the path from %v to %v never meets that from %v to %v", p.Start(), p.End(), q.Start(), q.End()))
	}
	return along, other
}

// meet is where the line from a to b meets that from c to d, as shares of both.
func meet(a, b, c, d Point) (s, t float64, ok bool) {
	u, v, w := b.Minus(a), d.Minus(c), c.Minus(a)
	det := u.X*v.Y - u.Y*v.X
	if math.Abs(det) < 1e-12 {
		return 0, 0, false
	}
	s, t = (w.X*v.Y-w.Y*v.X)/det, (w.X*u.Y-w.Y*u.X)/det
	const slack = 1e-9
	return s, t, s >= -slack && s <= 1+slack && t >= -slack && t <= 1+slack
}

// Solve finds the number between low and high at which a steadily growing or steadily
// shrinking f is what is wanted. It panics if f is never so between the two: then the
// draft is wrong, and no drawing is better than a bad one.
func Solve(low, high, wanted float64, f func(float64) float64) float64 {
	a, b := f(low)-wanted, f(high)-wanted
	const near = 1e-6
	switch {
	case math.Abs(a) <= near:
		return low
	case math.Abs(b) <= near:
		return high
	case a*b > 0 || math.IsNaN(a+b):
		panic(fmt.Sprintf("draft: between %.2f and %.2f there is %.2f to %.2f, and never %.2f", low, high, a+wanted, b+wanted, wanted))
	}
	for high-low > 1e-9*(1+math.Abs(low)) {
		m := (low + high) / 2
		if v := f(m) - wanted; v*a > 0 {
			low = m
		} else {
			high = m
		}
	}
	return (low + high) / 2
}

// OfLength is the path of a family that is as long as wanted.
func OfLength(wanted, low, high float64, family func(float64) Path) Path {
	return family(Solve(low, high, wanted, func(x float64) float64 { return family(x).Length() }))
}

// Beside is the path at a distance to the right of another (to the left if it is less
// than nothing), as the inner edge of a facing is. Each curve is halved three times and
// each part redrawn with the same directions at its ends.
func (p Path) Beside(mm float64) (out Path) {
	for i := range p {
		if p[i].Straight {
			side := p[i].direction(0).Right().Times(mm)
			out = append(out, Line(p[i].P[0].Plus(side), p[i].P[3].Plus(side))...)
			continue
		}
		rest := p[i]
		const parts = 8
		for k := parts; k > 0; k-- {
			first, after := rest.split(1 / float64(k))
			out, rest = append(out, first.beside(mm)), after
		}
	}
	return
}

// beside moves one short curve; its handles grow or shrink with its chord.
func (c *Curve) beside(mm float64) Curve {
	from, to := c.direction(0), c.direction(1)
	a, d := c.P[0].Plus(from.Right().Times(mm)), c.P[3].Plus(to.Right().Times(mm))
	scale := d.Minus(a).Length() / c.P[3].Minus(c.P[0]).Length()
	return Curve{P: [4]Point{a, a.Plus(c.P[1].Minus(c.P[0]).Times(scale)), d.Minus(c.P[3].Minus(c.P[2]).Times(scale)), d}}
}
