package outline

import "math"

// SewLength is the length of an edge along its stitching line, in millimetres. Where
// the drawing is the cutting line, width gives how far inside each edge that line lies:
// a bulging edge is shorter there and a hollow one longer, by the width times the angle
// through which it turns, and both its ends are cut off by the neighbours' stitching
// lines. That is exact while no curve is tighter than the width.
func (o *Outline) SewLength(e *Edge, width func(*Edge) float64) float64 {
	long := o.inside(e, e, e.Length(), width)
	if i := o.index(e); o.Allowance == Included && i >= 0 && len(o.Edges) > 1 {
		long -= cutOff(width(e), width(o.beside(i, 1)), o.Corner((i+1)%len(o.Edges)))
	}
	return long
}

// SewPlace is how far along the stitching line of an edge the place lies that is at
// millimetres along its drawn line, straight across from it: 0 at the beginning of the
// one and of the other, SewLength at the end.
func (o *Outline) SewPlace(e *Edge, at float64, width func(*Edge) float64) float64 {
	const end = 1e-6
	switch {
	case at <= end:
		return 0
	case at >= e.Length()-end:
		return o.SewLength(e, width)
	case o.Allowance != Included:
		return at
	}
	return o.inside(e, e.upTo(at), at, width)
}

// inside is the length along the stitching line of the part of an edge from its
// beginning that has the given length as drawn.
func (o *Outline) inside(e, part *Edge, long float64, width func(*Edge) float64) float64 {
	if o.Allowance != Included {
		return long
	}
	w := width(e)
	out, in := part.Turning()
	long -= w * (out - in) * math.Pi / 180
	if i := o.index(e); i >= 0 && len(o.Edges) > 1 {
		long -= cutOff(w, width(o.beside(i, -1)), o.Corner(i))
	}
	return long
}

func (o *Outline) index(e *Edge) int {
	for i, other := range o.Edges {
		if other == e {
			return i
		}
	}
	return -1
}

// beside is the edge so many places further round the ring.
func (o *Outline) beside(i, step int) *Edge {
	n := len(o.Edges)
	return o.Edges[(i+step+n)%n]
}

// Neighbours are the edges before and behind an edge, clockwise.
func (o *Outline) Neighbours(e *Edge) (before, behind *Edge) {
	i := max(0, o.index(e))
	return o.beside(i, -1), o.beside(i, 1)
}

// upTo is the part of an edge from its beginning, so many millimetres long.
func (e *Edge) upTo(mm float64) *Edge {
	part := &Edge{Name: e.Name}
	for i := range e.Curves {
		c := e.Curves[i]
		long := c.Length()
		if mm < long {
			c, _ = c.split(c.parameter(mm, long))
			long = mm
		}
		part.Curves = append(part.Curves, c)
		if mm -= long; mm <= 0 {
			break
		}
	}
	return part
}

// cutOff is how much of a stitching line, w inside its edge, lies beyond that of a
// neighbour, other inside its own, at a corner that turns by so many degrees.
func cutOff(w, other, degrees float64) float64 {
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	if math.Abs(sin) < 0.1 { // a smooth joint: the lines run on into one another, or a step
		return 0
	}
	return (other - w*cos) / sin
}
