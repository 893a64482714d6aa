package outline

import "math"

// straight is the line from a to b as a curve.
func straight(a, b Point) Curve {
	return Curve{P: [4]Point{a, mix(a, b, 1./3), mix(a, b, 2./3), b}, Straight: true}
}

func mix(a, b Point, t float64) Point { return Point{X: a.X + (b.X-a.X)*t, Y: a.Y + (b.Y-a.Y)*t} }

func minus(a, b Point) Point { return Point{X: a.X - b.X, Y: a.Y - b.Y} }

// distance needs no care for numbers too large to square: a piece fits into a kilometre.
func distance(a, b Point) float64 {
	x, y := a.X-b.X, a.Y-b.Y
	return math.Sqrt(x*x + y*y)
}

// cross is positive if b turns clockwise from a, as it is seen with y down.
func cross(a, b Point) float64 { return a.X*b.Y - a.Y*b.X }

func dot(a, b Point) float64 { return a.X*b.X + a.Y*b.Y }

func (c *Curve) from() Point { return c.P[0] }
func (c *Curve) to() Point   { return c.P[3] }

// at is the point with the parameter t from 0 to 1.
func (c *Curve) at(t float64) Point {
	if c.Straight {
		return mix(c.P[0], c.P[3], t)
	}
	u := 1 - t
	a, b, d, e := u*u*u, 3*u*u*t, 3*u*t*t, t*t*t
	return Point{
		X: a*c.P[0].X + b*c.P[1].X + d*c.P[2].X + e*c.P[3].X,
		Y: a*c.P[0].Y + b*c.P[1].Y + d*c.P[2].Y + e*c.P[3].Y,
	}
}

// speed is the first derivative at t.
func (c *Curve) speed(t float64) Point {
	u := 1 - t
	p, q, r := minus(c.P[1], c.P[0]), minus(c.P[2], c.P[1]), minus(c.P[3], c.P[2])
	a, b, d := 3*u*u, 6*u*t, 3*t*t
	return Point{X: a*p.X + b*q.X + d*r.X, Y: a*p.Y + b*q.Y + d*r.Y}
}

// split cuts the curve at t (de Casteljau).
func (c *Curve) split(t float64) (Curve, Curve) {
	if c.Straight {
		m := c.at(t)
		return straight(c.P[0], m), straight(m, c.P[3])
	}
	a, b, d := mix(c.P[0], c.P[1], t), mix(c.P[1], c.P[2], t), mix(c.P[2], c.P[3], t)
	e, f := mix(a, b, t), mix(b, d, t)
	m := mix(e, f, t)
	return Curve{P: [4]Point{c.P[0], a, e, m}}, Curve{P: [4]Point{m, f, d, c.P[3]}}
}

func (c *Curve) reversed() Curve {
	return Curve{P: [4]Point{c.P[3], c.P[2], c.P[1], c.P[0]}, Straight: c.Straight}
}

// leaves is the direction in which the curve begins, arrives that in which it ends;
// nothing for a curve of one point. They look past control points that lie on the end.
func (c *Curve) leaves() Point {
	for i := 1; i < len(c.P); i++ {
		if distance(c.P[i], c.P[0]) > 1e-9 {
			return minus(c.P[i], c.P[0])
		}
	}
	return Point{}
}

func (c *Curve) arrives() Point {
	for i := len(c.P) - 2; i >= 0; i-- {
		if distance(c.P[i], c.P[3]) > 1e-9 {
			return minus(c.P[3], c.P[i])
		}
	}
	return Point{}
}

// gauss are the places and weights of the Gauss-Legendre rule with five points on
// -1 to 1, exact for polynomials of the ninth degree (Abramowitz and Stegun, Handbook
// of Mathematical Functions, table 25.4).
var gauss = [5][2]float64{
	{0, 0.568888888888889},
	{-0.538469310105683, 0.478628670499366}, {0.538469310105683, 0.478628670499366},
	{-0.906179845938664, 0.236926885056189}, {0.906179845938664, 0.236926885056189},
}

// integral adds up f over t from a to b.
func integral(a, b float64, f func(t float64) float64) (sum float64) {
	half, middle := (b-a)/2, (a+b)/2
	for _, g := range gauss {
		sum += g[1] * f(middle+half*g[0])
	}
	return sum * half
}

// swept is the area between the origin and the curve (Green's theorem), positive if it
// runs clockwise about it. The integrand is a polynomial of the fifth degree, so the
// rule is exact for it.
func (c *Curve) swept() float64 {
	if c.Straight {
		return cross(c.P[0], c.P[3]) / 2
	}
	return integral(0, 1, func(t float64) float64 { return cross(c.at(t), c.speed(t)) }) / 2
}

// lengthError is how far, in millimetres, the length of a curve may be off.
const lengthError = 1e-6

// Length is the length of the curve in millimetres.
func (c *Curve) Length() float64 { return c.lengthTo(1) }

// lengthTo is the length up to the parameter t. A stretch is halved until its halves
// add up to what it gave itself; the rule's own error is then far below the difference.
func (c *Curve) lengthTo(t float64) float64 {
	if c.Straight {
		return distance(c.P[0], c.P[3]) * t
	}
	return c.stretch(0, t, c.rough(0, t), 12)
}

func (c *Curve) rough(a, b float64) float64 {
	return integral(a, b, func(t float64) float64 { v := c.speed(t); return math.Sqrt(v.X*v.X + v.Y*v.Y) })
}

func (c *Curve) stretch(a, b, whole float64, depth int) float64 {
	m := (a + b) / 2
	left, right := c.rough(a, m), c.rough(m, b)
	if depth == 0 || math.Abs(left+right-whole) < lengthError {
		return left + right
	}
	return c.stretch(a, m, left, depth-1) + c.stretch(m, b, right, depth-1)
}

// extremes gives the parameters inside the curve at which a coordinate turns round.
func (c *Curve) extremes() (all []float64) {
	if c.Straight {
		return nil
	}
	for _, of := range [...]func(Point) float64{func(p Point) float64 { return p.X }, func(p Point) float64 { return p.Y }} {
		p, q, r := of(minus(c.P[1], c.P[0])), of(minus(c.P[2], c.P[1])), of(minus(c.P[3], c.P[2]))
		all = append(all, roots(p-2*q+r, 2*(q-p), p)...)
	}
	return
}

// bends gives the parameters inside the curve at which it stops turning one way and
// begins to turn the other: speed and its change are parallel there.
func (c *Curve) bends() []float64 {
	if c.Straight {
		return nil
	}
	// with the origin at the beginning, after the derivation of the cubic's Wronskian
	a, b, d := minus(c.P[1], c.P[0]), minus(c.P[2], c.P[1]), minus(c.P[3], c.P[2])
	u, v := minus(b, a), minus(minus(d, b), minus(b, a)) // half the second, and the third difference
	// speed/3 = a + 2ut + vt², its change/6 = u + vt
	return roots(cross(u, v), cross(a, v), cross(a, u))
}

// roots solves at² + bt + c = 0 for t inside 0 to 1.
func roots(a, b, c float64) (all []float64) {
	size := math.Abs(a) + math.Abs(b) + math.Abs(c)
	inside := func(t float64) {
		if t > 1e-9 && t < 1-1e-9 {
			all = append(all, t)
		}
	}
	if math.Abs(a) <= 1e-12*size {
		if math.Abs(b) > 1e-12*size {
			inside(-c / b)
		}
		return
	}
	d := b*b - 4*a*c
	if d < 0 {
		return nil
	}
	q := -(b + math.Copysign(math.Sqrt(d), b)) / 2 // no difference of near numbers
	inside(q / a)
	if q != 0 {
		inside(c / q)
	}
	return
}
