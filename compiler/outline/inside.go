package outline

// Holds reports whether a place lies inside the ring: a ray from it to the right meets
// the ring an odd number of times.
func (o *Outline) Holds(p Point) (inside bool) {
	ring := o.sampled().points
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(p.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			inside = !inside
		}
	}
	return
}
