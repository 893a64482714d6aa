package outline

// Supposed is the outline as it would be if it were drawn so many times as large, and if
// its lines were meant as said. Of what lies inside only the edges are kept: it serves to
// ask what is wrong with a drawing that does not fit.
func (o *Outline) Supposed(times float64, a Allowance) *Outline {
	out := &Outline{Allowance: a, Span: o.Span}
	for _, e := range o.Edges {
		other := &Edge{Name: e.Name, Span: e.Span}
		for _, c := range e.Curves {
			for i := range c.P {
				c.P[i] = Point{X: c.P[i].X * times, Y: c.P[i].Y * times}
			}
			other.Curves = append(other.Curves, c)
		}
		out.Edges = append(out.Edges, other)
	}
	for _, m := range o.Marks {
		m.Place, m.At = Point{X: m.Place.X * times, Y: m.Place.Y * times}, m.At*times
		if m.Edge != nil {
			m.Edge = out.Edge(m.Edge.Name)
		}
		out.Marks = append(out.Marks, m)
	}
	return out
}
