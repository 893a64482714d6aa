package pack

import "testing"

func ring(xy ...int64) (r []Point) {
	for i := 0; i < len(xy); i += 2 {
		r = append(r, Point{xy[i], xy[i+1]})
	}
	return
}

// The worked cases were done by hand. A funnel is 2 wide below and 10 above, a cone
// 10 wide below and 2 above, both 4 high with the same slope: a funnel and a cone
// lie 6 behind one another (their slanting sides touch), two funnels or two cones
// 10. So funnel, cone: 6 + 10; funnel, cone, funnel: 6 + 6 + 10; two funnels: 20.
func TestBoundsAgainstCasesDoneByHand(t *testing.T) {
	funnel := ring(4, 0, 6, 0, 10, 4, 0, 4)
	cone := ring(0, 0, 10, 0, 6, 4, 4, 4)
	edge := func(kind int, r []Point) Shape { return Shape{kind, []Pose{{r, true}}} }
	free := func(kind int, r ...[]Point) Shape {
		s := Shape{Kind: kind}
		for _, o := range r {
			s.Poses = append(s.Poses, Pose{Outline: o})
		}
		return s
	}
	for _, c := range []struct {
		name   string
		width  int64
		shapes []Shape
		want   Limits
	}{
		{"area: 24 + 24 at 5 wide, rounded up", 5, []Shape{free(0, funnel), free(0, funnel)}, Limits{Area: 10, Longest: 10}},
		{"the longest may lie across", 9, []Shape{free(0, ring(0, 0, 8, 0, 8, 2, 0, 2), ring(0, 0, 2, 0, 2, 8, 0, 8))}, Limits{Area: 2, Longest: 2}},
		{"funnel and cone", 100, []Shape{edge(0, funnel), edge(1, cone)}, Limits{Area: 1, Longest: 10, Row: 16}},
		{"two funnels and a cone", 100, []Shape{edge(0, funnel), edge(0, funnel), edge(1, cone)}, Limits{Area: 1, Longest: 10, Row: 22}},
		{"two funnels", 100, []Shape{edge(0, funnel), edge(0, funnel)}, Limits{Area: 1, Longest: 10, Row: 20}},
		{"a funnel that may not leave the edge, one that may", 100, []Shape{edge(0, funnel), free(1, funnel)}, Limits{Area: 1, Longest: 10, Row: 10}},
		{"two halves of a rectangle", 100,
			[]Shape{edge(0, ring(0, 0, 8, 0, 0, 4)), edge(1, ring(0, 4, 8, 0, 8, 4))}, Limits{Area: 1, Longest: 8, Row: 8}},
	} {
		got, err := Bound(Problem{Width: c.width, Shapes: c.shapes})
		if err != nil || got != c.want {
			t.Errorf("%s: %+v, %v; want %+v", c.name, got, err, c.want)
		}
	}
}

// Thirteen squares at the edge: twelve are looked at, and the bound stays below
// what they need.
func TestTheBoundOfALongRowStaysBelowIt(t *testing.T) {
	p := Problem{Width: 100}
	for range 13 {
		p.Shapes = append(p.Shapes, Shape{0, []Pose{{ring(0, 0, 10, 0, 10, 10, 0, 10), true}}})
	}
	if got, err := Bound(p); err != nil || got.Row != 120 {
		t.Errorf("%+v, %v; want a row of 120", got, err)
	}
}
