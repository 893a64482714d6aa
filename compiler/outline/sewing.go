package outline

import "math"

// SewLength is the length of an edge along its stitching line, in millimetres. Where
// the drawing is the cutting line, width gives how far inside each edge that line lies:
// a bulging edge is shorter there and a hollow one longer, by the width times the angle
// through which it turns, and both its ends are cut off by the neighbours' stitching
// lines. That is exact while no curve is tighter than the width.
func (o *Outline) SewLength(e *Edge, width func(*Edge) float64) float64 {
	long := e.Length()
	if o.Allowance != Included {
		return long
	}
	w := width(e)
	out, in := e.Turning()
	long -= w * (out - in) * math.Pi / 180
	n := len(o.Edges)
	for i, other := range o.Edges {
		if other == e {
			if n == 1 {
				return long
			}
			long -= cutOff(w, width(o.Edges[(i+n-1)%n]), o.Corner(i)) + cutOff(w, width(o.Edges[(i+1)%n]), o.Corner((i+1)%n))
		}
	}
	return long
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
