package outline

import "math"

// Area is the area of the piece in square millimetres, without its openings.
func (o *Outline) Area() float64 {
	sum := o.signed()
	for _, hole := range o.Openings {
		sum -= math.Abs(sweptBy(hole))
	}
	return sum
}

// signed is the area inside the ring, positive if it runs clockwise.
func (o *Outline) signed() (sum float64) {
	for _, e := range o.Edges {
		sum += sweptBy(e.Curves)
	}
	return
}

func sweptBy(ring []Curve) (sum float64) {
	for i := range ring {
		sum += ring[i].swept()
	}
	return
}

// Length is the length of the edge in millimetres.
func (e *Edge) Length() (sum float64) {
	for i := range e.Curves {
		sum += e.Curves[i].Length()
	}
	return
}

func (e *Edge) from() Point { return e.Curves[0].from() }
func (e *Edge) to() Point   { return e.Curves[len(e.Curves)-1].to() }

// Chord is the distance between the ends of the edge.
func (e *Edge) Chord() float64 { return distance(e.from(), e.to()) }

// Box is a rectangle along the axes.
type Box struct{ Min, Max Point }

// Bounds is the smallest rectangle around the piece, along the axes of the paper.
func (o *Outline) Bounds() Box { return o.bounds(0) }

// BoundsAlongGrain gives how long the piece is along the grain, and how wide across
// it; along y without a grain line.
func (o *Outline) BoundsAlongGrain() (along, across float64) {
	b := o.bounds(-o.grainAngle())
	return b.Max.X - b.Min.X, b.Max.Y - b.Min.Y
}

// grainAngle is the direction of the grain from the x axis, towards y; straight down
// without one.
func (o *Outline) grainAngle() float64 {
	if o.Grain == nil {
		return math.Pi / 2
	}
	d := minus(o.Grain.To, o.Grain.From)
	return math.Atan2(d.Y, d.X)
}

// bounds is the box of the outline turned about the origin.
func (o *Outline) bounds(turn float64) Box {
	sin, cos := math.Sincos(turn)
	b := Box{Min: Point{X: math.Inf(1), Y: math.Inf(1)}, Max: Point{X: math.Inf(-1), Y: math.Inf(-1)}}
	for _, e := range o.Edges {
		for _, c := range e.Curves {
			for i, p := range c.P {
				c.P[i] = Point{X: cos*p.X - sin*p.Y, Y: sin*p.X + cos*p.Y}
			}
			b.take(c.P[0])
			for _, t := range c.extremes() {
				b.take(c.at(t))
			}
		}
	}
	return b
}

func (b *Box) take(p Point) {
	b.Min.X, b.Min.Y = min(b.Min.X, p.X), min(b.Min.Y, p.Y)
	b.Max.X, b.Max.Y = max(b.Max.X, p.X), max(b.Max.Y, p.Y)
}

// Corner is the angle in degrees by which the ring turns at the beginning of an edge:
// positive at a corner that stands out, negative at a hollow one, 0 where it is smooth.
func (o *Outline) Corner(i int) float64 {
	before := o.Edges[(i+len(o.Edges)-1)%len(o.Edges)]
	return turn(before.Curves[len(before.Curves)-1].arrives(), o.Edges[i].Curves[0].leaves())
}

// turn is the angle from a to b in degrees, over -180 up to 180, clockwise as seen.
func turn(a, b Point) float64 { return math.Atan2(cross(a, b), dot(a, b)) * 180 / math.Pi }

// Form is how an edge runs, seen from the piece.
type Form uint8

// The forms: Wavy stands out in one place and is hollow in another.
const (
	Straight Form = iota
	Convex
	Hollow
	Wavy
)

func (f Form) String() string {
	return [...]string{"straight", "convex", "hollow", "wavy"}[f]
}

// What is so slightly bent is drawn or cut no better than that, and counts as straight
// (common practice, no source).
const (
	slightTurn = 4.0   // degrees, over the whole edge
	slightBow  = 0.005 // of the length, away from the line between the ends
)

// Form tells how the edge runs. Corners inside it count like curves.
func (e *Edge) Form() Form {
	out, in := e.Turning()
	if out < slightTurn && in < slightTurn || e.bow() < slightBow*e.Chord() && max(out, in) < 45 {
		return Straight
	}
	switch slight := max(slightTurn, 0.05*(out+in)); {
	case in < slight:
		return Convex
	case out < slight:
		return Hollow
	}
	return Wavy
}

// Turning adds up the degrees by which the edge turns clockwise, standing out from the
// piece, and those by which it turns the other way, into it.
func (e *Edge) Turning() (out, in float64) { return e.turning(180) }

// sharp is how many degrees two curves turn at their joint before it is a corner, and
// not a curve that was drawn in short lines (common practice, no source).
const sharp = 30

// Bending is the same without the corners: what the curves of the edge turn by.
func (e *Edge) Bending() (out, in float64) { return e.turning(sharp) }

// turning leaves out the joints that turn by more than so many degrees.
func (e *Edge) turning(most float64) (out, in float64) {
	last := e.Curves[0].leaves()
	step := func(d Point, most float64) {
		if d == (Point{}) {
			return
		}
		if a := turn(last, d); math.Abs(a) <= most {
			out, in = out+max(a, 0), in+max(-a, 0)
		}
		last = d
	}
	for i := range e.Curves {
		c := &e.Curves[i]
		step(c.leaves(), most)
		if c.Straight {
			continue
		}
		const parts = 8 // between them no curve that bends one way turns by half a circle
		for k, marks := 0, append([]float64{0}, c.cuts()...); k < len(marks); k++ {
			end := 1.0
			if k+1 < len(marks) {
				end = marks[k+1]
			}
			for n := 1; n <= parts; n++ {
				if t := marks[k] + (end-marks[k])*float64(n)/parts; t < 1 {
					step(c.speed(t), 180)
				}
			}
		}
		step(c.arrives(), 180)
	}
	return
}

// cuts gives the bends of a curve in their order.
func (c *Curve) cuts() []float64 {
	all := c.bends()
	if len(all) == 2 && all[0] > all[1] {
		all[0], all[1] = all[1], all[0]
	}
	return all
}

// bow is the farthest that the edge lies from the line between its ends, looked at in a
// few places; without end for one that ends where it begins.
func (e *Edge) bow() (most float64) {
	from, along := e.from(), minus(e.to(), e.from())
	size := math.Hypot(along.X, along.Y)
	if size < 1e-9 {
		return math.Inf(1)
	}
	for i := range e.Curves {
		for _, t := range [...]float64{0.25, 0.5, 0.75, 1} {
			most = max(most, math.Abs(cross(along, minus(e.Curves[i].at(t), from)))/size)
		}
	}
	return
}

// Clockwise reports whether the ring runs clockwise, as every ring that was read does.
func (o *Outline) Clockwise() bool { return o.signed() > 0 }

// Off is how far a place lies from the edge, in millimetres.
func (e *Edge) Off(p Point) float64 {
	off := math.Inf(1)
	for i := range e.Curves {
		if _, d := e.Curves[i].nearest(p, off); d < off {
			off = d
		}
	}
	return off
}

// Place is the place so many millimetres along the edge.
func (e *Edge) Place(mm float64) Point { return e.along(mm) }

// Direction is the direction of length 1 in which the edge runs there; the piece lies to
// the right of it.
func (e *Edge) Direction(mm float64) Point {
	for i := range e.Curves {
		c := &e.Curves[i]
		long := c.Length()
		if mm > long && i+1 < len(e.Curves) {
			mm -= long
			continue
		}
		t := c.parameter(mm, long)
		v := c.speed(t)
		if t <= 0 || v == (Point{}) {
			v = c.leaves()
		}
		if size := math.Hypot(v.X, v.Y); size > 0 {
			return Point{X: v.X / size, Y: v.Y / size}
		}
	}
	return Point{X: 1}
}
