package draft

import "math"

// Curve is a cubic Bézier curve from P[0] to P[3].
type Curve struct {
	P        [4]Point
	Straight bool
}

// Path is curves, each beginning where the one before it ends.
type Path []Curve

// Line is the straight way from point to point.
func Line(points ...Point) (p Path) {
	for i := 1; i < len(points); i++ {
		a, b := points[i-1], points[i]
		p = append(p, Curve{P: [4]Point{a, a.Between(b, 1./3), a.Between(b, 2./3), b}, Straight: true})
	}
	return
}

// Bezier is the curve from a to d that is pulled toward b and c.
func Bezier(a, b, c, d Point) Path { return Path{{P: [4]Point{a, b, c, d}}} }

// Flow is a curve that leaves a in one direction and reaches b in another. Its handles
// are a fraction of the way from a to b long: 0.35 bends evenly, more is fuller.
func Flow(a, leaving, b, arriving Point, fullness float64) Path {
	h := fullness * b.Minus(a).Length()
	return Bezier(a, a.Plus(leaving.Unit().Times(h)), b.Minus(arriving.Unit().Times(h)), b)
}

// Arc is a part of a circle, from one direction as seen from its middle to another, in
// degrees clockwise from the right; it runs clockwise if to is more than from.
func Arc(middle Point, radius, from, to float64) (p Path) {
	n := math.Ceil(math.Abs(to-from)/90 - 1e-9)
	step := (to - from) / n
	h := radius * 4 / 3 * math.Tan(step*math.Pi/720) // the usual handle: off by 1/3700 of the radius at a quarter
	for i := range int(n) {
		a, b := Heading(from+step*float64(i)), Heading(from+step*float64(i+1))
		p = append(p, Bezier(middle.Plus(a.Times(radius)), middle.Plus(a.Times(radius)).Plus(a.Right().Times(h)),
			middle.Plus(b.Times(radius)).Minus(b.Right().Times(h)), middle.Plus(b.Times(radius)))...)
	}
	return
}

// Then goes on with other paths.
func (p Path) Then(more ...Path) Path {
	out := append(Path(nil), p...)
	for _, m := range more {
		out = append(out, m...)
	}
	return out
}

// Start is where a path begins.
func (p Path) Start() Point { return p[0].P[0] }

// End is where it ends.
func (p Path) End() Point { return p[len(p)-1].P[3] }

// Leaving is its direction at the start, Arriving that at the end.
func (p Path) Leaving() Point { return p[0].direction(0) }

// Arriving is the direction at the end.
func (p Path) Arriving() Point { return p[len(p)-1].direction(1) }

// Reversed is the path walked the other way.
func (p Path) Reversed() Path {
	out := make(Path, 0, len(p))
	for i := len(p) - 1; i >= 0; i-- {
		q := p[i].P
		out = append(out, Curve{P: [4]Point{q[3], q[2], q[1], q[0]}, Straight: p[i].Straight})
	}
	return out
}

// each moves every point.
func (p Path) each(move func(Point) Point) Path {
	out := append(Path(nil), p...)
	for i := range out {
		for k := range out[i].P {
			out[i].P[k] = move(out[i].P[k])
		}
	}
	return out
}

// Moved shifts a path.
func (p Path) Moved(by Point) Path { return p.each(by.Plus) }

// Turned turns a path about a point, clockwise in degrees.
func (p Path) Turned(about Point, degrees float64) Path {
	return p.each(func(q Point) Point { return about.Plus(q.Minus(about).Turned(degrees)) })
}

// Mirrored is the mirror image about the line upright through x, walked the other way,
// so that the piece stays on the right hand.
func (p Path) Mirrored(x float64) Path {
	return p.each(func(q Point) Point { return At(2*x-q.X, q.Y) }).Reversed()
}

func (c *Curve) at(t float64) Point {
	s := 1 - t
	return c.P[0].Times(s * s * s).Plus(c.P[1].Times(3 * s * s * t)).Plus(c.P[2].Times(3 * s * t * t)).Plus(c.P[3].Times(t * t * t))
}

func (c *Curve) speed(t float64) Point {
	s := 1 - t
	return c.P[1].Minus(c.P[0]).Times(3 * s * s).Plus(c.P[2].Minus(c.P[1]).Times(6 * s * t)).Plus(c.P[3].Minus(c.P[2]).Times(3 * t * t))
}

func (c *Curve) direction(t float64) Point {
	if v := c.speed(t); v.Length() > 1e-9 {
		return v.Unit()
	}
	return c.P[3].Minus(c.P[0]).Unit()
}

// split parts a curve in two (de Casteljau).
func (c *Curve) split(t float64) (a, b Curve) {
	ab, bc, cd := c.P[0].Between(c.P[1], t), c.P[1].Between(c.P[2], t), c.P[2].Between(c.P[3], t)
	abc, bcd := ab.Between(bc, t), bc.Between(cd, t)
	m := abc.Between(bcd, t)
	return Curve{P: [4]Point{c.P[0], ab, abc, m}, Straight: c.Straight}, Curve{P: [4]Point{m, bcd, cd, c.P[3]}, Straight: c.Straight}
}
