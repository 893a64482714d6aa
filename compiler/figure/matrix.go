package figure

import "math"

// matrix is an affine map: x' = a·x + c·y + e, y' = b·x + d·y + f, the six
// numbers in the order in which SVG's matrix() takes them.
type matrix struct{ a, b, c, d, e, f float64 }

var identity = matrix{a: 1, d: 1}

func translation(x, y float64) matrix { return matrix{1, 0, 0, 1, x, y} }
func scaling(x, y float64) matrix     { return matrix{x, 0, 0, y, 0, 0} }

// rotation turns by deg degrees, from the x axis towards the y axis.
func rotation(deg float64) matrix {
	sin, cos := math.Sincos(deg * math.Pi / 180)
	return matrix{cos, sin, -sin, cos, 0, 0}
}

// then gives the map that does n first and m afterwards, as nested groups do:
// the outer one is m.
func (m matrix) then(n matrix) matrix {
	return matrix{
		m.a*n.a + m.c*n.b, m.b*n.a + m.d*n.b,
		m.a*n.c + m.c*n.d, m.b*n.c + m.d*n.d,
		m.a*n.e + m.c*n.f + m.e, m.b*n.e + m.d*n.f + m.f,
	}
}

func (m matrix) apply(p Point) Point {
	return Point{m.a*p.X + m.c*p.Y + m.e, m.b*p.X + m.d*p.Y + m.f}
}

func (m matrix) det() float64 { return m.a*m.d - m.b*m.c }

// size is the factor by which lengths grow: exact for a similarity, the mean
// (the root of the factor for areas) for anything else.
func (m matrix) size() float64 { return math.Sqrt(math.Abs(m.det())) }

// upright says whether letters keep their shape: turned, moved and scaled
// alike in both directions, but neither slanted, stretched nor mirrored.
func (m matrix) upright() bool {
	near := 1e-9 * (math.Abs(m.a) + math.Abs(m.b))
	return math.Abs(m.a-m.d) <= near && math.Abs(m.b+m.c) <= near
}

func (m matrix) finite() bool {
	for _, v := range [...]float64{m.a, m.b, m.c, m.d, m.e, m.f} {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return false
		}
	}
	return true
}

// parseTransform reads the value of a transform attribute (SVG 1.1, 7.6): a list
// of functions of which the first is the outermost.
func parseTransform(s string) (matrix, *fault) {
	m := identity
	sc := scanner{s: s}
	sc.space()
	if sc.rest() == "none" {
		return m, nil
	}
	for !sc.done() {
		one, bad := sc.transformFunction()
		if bad != nil {
			return m, bad
		}
		m = m.then(one)
		if sc.comma() && sc.done() {
			return m, &fault{sc.i - 1, "a further transform is missing after the comma"}
		}
	}
	if !m.finite() {
		return m, &fault{0, "the numbers are too large"}
	}
	return m, nil
}

// transformFunction reads one "name(numbers)".
func (s *scanner) transformFunction() (matrix, *fault) {
	at := s.i
	name := s.word()
	s.space()
	if name == "" || !s.take('(') {
		return identity, &fault{at, "a transform is written as a name and numbers in brackets, such as rotate(45)"}
	}
	s.space()
	var args []float64
	for !s.take(')') {
		if len(args) > 0 {
			s.comma()
		}
		n, ok := s.number()
		if !ok || len(args) == 6 {
			return identity, &fault{s.i, "here a number or the closing bracket of " + name + " is missing"}
		}
		args = append(args, n)
		s.space()
	}
	m, ok := transformOf(name, args)
	if !ok {
		return identity, &fault{at, "“" + clip(name) + "” with this many numbers is not a transform"}
	}
	return m, nil
}

// transformOf gives the matrix of one function, or false if the name or the
// count of its numbers is not in the standard.
func transformOf(name string, v []float64) (matrix, bool) {
	switch n := len(v); {
	case name == "matrix" && n == 6:
		return matrix{v[0], v[1], v[2], v[3], v[4], v[5]}, true
	case name == "translate" && n == 1:
		return translation(v[0], 0), true
	case name == "translate" && n == 2:
		return translation(v[0], v[1]), true
	case name == "scale" && n == 1:
		return scaling(v[0], v[0]), true
	case name == "scale" && n == 2:
		return scaling(v[0], v[1]), true
	case name == "rotate" && n == 1:
		return rotation(v[0]), true
	case name == "rotate" && n == 3:
		return translation(v[1], v[2]).then(rotation(v[0])).then(translation(-v[1], -v[2])), true
	case name == "skewX" && n == 1:
		return matrix{1, 0, math.Tan(v[0] * math.Pi / 180), 1, 0, 0}, true
	case name == "skewY" && n == 1:
		return matrix{1, math.Tan(v[0] * math.Pi / 180), 0, 1, 0, 0}, true
	}
	return identity, false
}
