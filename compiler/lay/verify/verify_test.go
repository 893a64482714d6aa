package verify

import (
	"math/rand/v2"
	"strings"
	"testing"
)

func square(x, y, size int64) []Point {
	return []Point{{x, y}, {x + size, y}, {x + size, y + size}, {x, y + size}}
}

func TestInsidesThatMeetAndThatOnlyTouch(t *testing.T) {
	l := []Point{{0, 0}, {6, 0}, {6, 2}, {2, 2}, {2, 6}, {0, 6}}
	for _, c := range []struct {
		name string
		a, b []Point
		want bool
	}{
		{"apart", square(0, 0, 2), square(5, 5, 2), false},
		{"a whole edge touches", square(0, 0, 2), square(2, 0, 2), false},
		{"a corner touches", square(0, 0, 2), square(2, 2, 2), false},
		{"one unit over", square(0, 0, 3), square(2, 2, 3), true},
		{"the very same", square(0, 0, 2), square(0, 0, 2), true},
		{"the same, begun elsewhere", square(0, 0, 2), []Point{{2, 2}, {0, 2}, {0, 0}, {2, 0}}, true},
		{"one within the other", square(0, 0, 9), square(3, 3, 2), true},
		{"within, along an edge", square(0, 0, 9), square(0, 3, 2), true},
		{"a cross: no corner of one is inside the other", []Point{{0, 4}, {9, 4}, {9, 5}, {0, 5}}, []Point{{4, 0}, {5, 0}, {5, 9}, {4, 9}}, true},
		{"through corners only", square(0, 0, 4), []Point{{2, -2}, {6, 2}, {2, 6}, {-2, 2}}, true},
		{"fills the notch", l, square(2, 2, 4), false},
		{"in the notch, too big", l, square(1, 2, 4), true},
		{"bounds meet, insides do not", l, square(3, 3, 5), false},
		{"enters through a corner only", square(0, 0, 4), []Point{{0, 0}, {4, 4}, {8, 4}}, true},
		{"along the diagonal, from a corner", square(0, 0, 4), []Point{{4, 4}, {8, 4}, {8, 8}}, false},
	} {
		if got := Meet(c.a, c.b); got != c.want {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
		if got := Meet(c.b, c.a); got != c.want {
			t.Errorf("%s, seen from the other: %v, want %v", c.name, got, c.want)
		}
	}
}

// Unit squares of a raster are another way to tell for rings of right angles: two
// overlap if they share a square.
func TestStaircasesMeetWhereTheyShareASquare(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	met := 0
	for range 4000 {
		a, ha := staircase(r)
		b, hb := staircase(r)
		dx, dy := r.Int64N(12)-6, r.Int64N(12)-6
		for i := range b {
			b[i].X, b[i].Y = b[i].X+dx, b[i].Y+dy
		}
		want := false
		for x := range int64(len(ha)) {
			k := x - dx
			if k >= 0 && k < int64(len(hb)) && min(ha[x], hb[k]+dy) > max(0, dy) {
				want = true
			}
		}
		if got := Meet(a, b); got != want {
			t.Fatalf("%v and %v: %v, want %v", a, b, got, want)
		}
		if want {
			met++
		}
	}
	if met < 500 || met > 3500 {
		t.Errorf("%d of 4000 met: too one-sided to tell anything", met)
	}
}

// staircase is the outline under some columns, each one wide.
func staircase(r *rand.Rand) (ring []Point, heights []int64) {
	n := 1 + r.Int64N(5)
	ring = []Point{{0, 0}, {n, 0}}
	for range n {
		heights = append(heights, 1+r.Int64N(5))
	}
	for x := n - 1; x >= 0; x-- {
		ring = append(ring, Point{x + 1, heights[x]}, Point{x, heights[x]})
	}
	return
}

func TestLaysThatAreWrong(t *testing.T) {
	for _, c := range []struct {
		laid Laid
		want string
	}{
		{Laid{Outline: square(2, 0, 2)}, ""},
		{Laid{Outline: square(1, 0, 2)}, "overlap"},
		{Laid{Outline: square(9, 0, 2)}, "beyond an end"},
		{Laid{Outline: square(4, -1, 2)}, "beyond a side"},
		{Laid{Outline: square(4, 4, 2)}, "beyond a side"},
		{Laid{Outline: square(4, 1, 2), AtEdge: true}, "does not lie on the fold"},
		{Laid{Outline: square(4, 0, 2), AtEdge: true}, ""},
		{Laid{Outline: square(4, 0, 2)[:2]}, "has no area"},
		{Laid{Outline: square(1<<40, 0, 2)}, "farther off"},
	} {
		err := Lay(5, 10, []Laid{{Outline: square(0, 0, 2)}, c.laid})
		if c.want == "" && err != nil || c.want != "" && (err == nil || !strings.Contains(err.Error(), c.want)) {
			t.Errorf("%v: %v, want %q", c.laid, err, c.want)
		}
	}
}
