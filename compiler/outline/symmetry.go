package outline

import "math"

// alikeWithin is how far apart, in millimetres, two lines may lie that count as the
// same: half of what is cut with shears (common practice, no source).
const alikeWithin = 0.5

// Axis is a line about which a piece may be its own mirror image.
type Axis struct {
	Through Point
	Angle   float64 // from the x axis, in radians
	Along   bool    // it runs along the grain, straight down if none is drawn
	Across  bool    // it runs at right angles to the grain
}

// Symmetric finds the axes about which the ring is its own mirror image: at most one
// along the grain, one across it and one at another angle, in this order. Every such
// axis runs through the middle of the area and meets the ring in a corner or half way
// between two; so these are tried, and those of the grain.
func (o *Outline) Symmetric() (axes []Axis) {
	ring := o.sampled()
	c := o.Centre()
	grain := o.grainAngle()
	have := func(angle float64) bool { return ring.mirrors(c, angle) }
	if have(grain) {
		axes = append(axes, Axis{Through: c, Angle: grain, Along: true})
	}
	if have(grain + math.Pi/2) {
		axes = append(axes, Axis{Through: c, Angle: grain + math.Pi/2, Across: true})
	}
	for _, p := range o.axisPoints() {
		angle := math.Atan2(p.Y-c.Y, p.X-c.X)
		if math.Abs(math.Sin(2*(angle-grain))) < 1e-3 || distance(p, c) < 1 {
			continue // along or across, or no direction
		}
		if have(angle) {
			return append(axes, Axis{Through: c, Angle: angle})
		}
	}
	return
}

// Centre is the middle of the area inside the ring (its centre of gravity), integrated
// exactly like the area: the integrand is of the eighth degree.
func (o *Outline) Centre() Point {
	var x, y float64
	for _, e := range o.Edges {
		for i := range e.Curves {
			c := &e.Curves[i]
			x += integral(0, 1, func(t float64) float64 { p := c.at(t); return p.X * cross(p, c.speed(t)) })
			y += integral(0, 1, func(t float64) float64 { p := c.at(t); return p.Y * cross(p, c.speed(t)) })
		}
	}
	a := 3 * o.signed()
	return Point{X: x / a, Y: y / a}
}

// axisPoints are the places where an axis may meet the ring: where curves join, and the
// middle of the way between one joint and each other one.
func (o *Outline) axisPoints() []Point {
	all := o.joints()
	const most = 24 // for more joints than that, those of the edges must do
	if len(all) > most {
		all = all[:0]
		for _, e := range o.Edges {
			all = append(all, e.from())
		}
	}
	n := len(all)
	for i := range n {
		for j := range i {
			all = append(all, mix(all[i], all[j], 0.5))
		}
	}
	return all
}

// joints are the places where curves join.
func (o *Outline) joints() (all []Point) {
	for _, e := range o.Edges {
		for i := range e.Curves {
			all = append(all, e.Curves[i].from())
		}
	}
	return
}

// sampled is a ring as many short straight lines, with the places at its joints.
type sampled struct{ points []Point }

// sampledEvery is the largest step along a ring, in millimetres, and fewest the number
// of steps of each curve; the chord of a curve of 100 mm radius lies 0.03 mm off.
const (
	sampledEvery = 5
	fewest       = 4
)

func (o *Outline) sampled() *sampled {
	s := &sampled{}
	for _, e := range o.Edges {
		s.add(e)
	}
	return s
}

func (s *sampled) add(e *Edge) {
	for i := range e.Curves {
		c := &e.Curves[i]
		n := 1
		if !c.Straight {
			n = max(fewest, int(c.Length()/sampledEvery))
		}
		for k := range n {
			s.points = append(s.points, c.at(float64(k)/float64(n)))
		}
	}
}

// mirrors reports whether the ring, mirrored about a line through c, lies on itself.
func (s *sampled) mirrors(c Point, angle float64) bool {
	sin, cos := math.Sincos(2 * angle)
	return s.covers(s, func(p Point) Point {
		x, y := p.X-c.X, p.Y-c.Y
		return Point{X: c.X + cos*x + sin*y, Y: c.Y + sin*x - cos*y}
	})
}

// covers reports whether every place of other, moved, lies on this ring. Since both
// shut in the same area where it is asked, that is enough.
func (s *sampled) covers(other *sampled, move func(Point) Point) bool {
	for _, p := range other.points {
		if !s.near(move(p)) {
			return false
		}
	}
	return true
}

func (s *sampled) near(p Point) bool {
	n := len(s.points)
	for i, a := range s.points {
		b := s.points[(i+1)%n]
		if p.X < min(a.X, b.X)-alikeWithin || p.X > max(a.X, b.X)+alikeWithin || p.Y < min(a.Y, b.Y)-alikeWithin || p.Y > max(a.Y, b.Y)+alikeWithin {
			continue
		}
		line := straight(a, b)
		if a == b {
			continue
		}
		if _, d := line.nearest(p, alikeWithin); d <= alikeWithin {
			return true
		}
	}
	return false
}

// Same tells whether two pieces have the same shape: as drawn, moved and turned at will,
// and flipped, as a mirror image. Both are true for a symmetric piece. The farthest
// joint of curves of one must lie on a joint of the other, as it does in copies.
func Same(a, b *Outline) (asDrawn, flipped bool) {
	if area := a.signed(); math.Abs(area-b.signed()) > alikeWithin*a.length() {
		return false, false
	}
	pa, pb := a.sampled(), b.sampled()
	ca, cb := a.Centre(), b.Centre()
	from := minus(a.farthest(ca), ca)
	reach := math.Hypot(from.X, from.Y)
	for _, to := range b.joints() {
		d := minus(to, cb)
		if math.Abs(math.Hypot(d.X, d.Y)-reach) > alikeWithin {
			continue
		}
		sin, cos := math.Sincos(math.Atan2(d.Y, d.X) - math.Atan2(from.Y, from.X))
		asDrawn = asDrawn || pb.covers(pa, func(p Point) Point {
			x, y := p.X-ca.X, p.Y-ca.Y
			return Point{X: cb.X + cos*x - sin*y, Y: cb.Y + sin*x + cos*y}
		})
		sin, cos = math.Sincos(math.Atan2(d.Y, d.X) + math.Atan2(from.Y, from.X))
		flipped = flipped || pb.covers(pa, func(p Point) Point {
			x, y := p.X-ca.X, p.Y-ca.Y
			return Point{X: cb.X + cos*x + sin*y, Y: cb.Y + sin*x - cos*y}
		})
	}
	return
}

func (o *Outline) length() (sum float64) {
	for _, e := range o.Edges {
		sum += e.Length()
	}
	return
}

// farthest is the joint of the ring that lies farthest from a place.
func (o *Outline) farthest(c Point) (found Point) {
	far := -1.0
	for _, p := range o.joints() {
		if d := distance(p, c); d > far {
			found, far = p, d
		}
	}
	return
}

// SameEdge tells whether two edges have the same line, with the piece on the same side:
// as drawn, both walked clockwise, and flipped, as a facing that is traced turned over.
func SameEdge(a, b *Edge) (asDrawn, flipped bool) {
	if math.Abs(a.Length()-b.Length()) > 2*alikeWithin {
		return false, false
	}
	asDrawn, flipped = true, true
	const parts = 32
	pa, pb := a.profile(parts), b.profile(parts)
	long := pb[parts].X
	for i := range pa {
		asDrawn = asDrawn && distance(pa[i], pb[i]) <= 2*alikeWithin
		other := pb[parts-i]
		flipped = flipped && distance(pa[i], Point{X: long - other.X, Y: other.Y}) <= 2*alikeWithin
	}
	return
}

// profile gives places at equal steps along the edge, seen from the line between its
// ends: x along that line from the beginning, y off it.
func (e *Edge) profile(parts int) (out []Point) {
	from := e.from()
	d := minus(e.to(), from)
	size := math.Hypot(d.X, d.Y)
	if size < 1e-9 {
		d, size = Point{X: 1}, 1
	}
	for i := range parts + 1 {
		p := minus(e.along(float64(i)/float64(parts)*e.Length()), from)
		out = append(out, Point{X: dot(p, d) / size, Y: cross(d, p) / size})
	}
	return
}

// along is the place so many millimetres from the beginning of the edge.
func (e *Edge) along(mm float64) Point {
	for i := range e.Curves {
		c := &e.Curves[i]
		long := c.Length()
		if mm > long && i+1 < len(e.Curves) {
			mm -= long
			continue
		}
		return c.at(c.parameter(mm, long))
	}
	return e.to()
}

// parameter is where a curve has run so many millimetres of its length, by halving.
func (c *Curve) parameter(mm, long float64) float64 {
	if c.Straight || mm <= 0 || mm >= long {
		return max(0, min(1, mm/max(long, 1e-9)))
	}
	low, high := 0.0, 1.0
	for high-low > 1e-6 {
		m := (low + high) / 2
		if c.rough(0, m) < mm {
			low = m
		} else {
			high = m
		}
	}
	return (low + high) / 2
}
