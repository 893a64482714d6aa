package pack

import (
	"math/rand/v2"
	"testing"
)

// star makes a simple ring that is not convex: points at rising angles.
func star(r *rand.Rand, size int64) []Point {
	dirs := []Point{{4, 0}, {4, 1}, {3, 3}, {1, 4}, {0, 4}, {-2, 4}, {-4, 3}, {-4, 0}, {-3, -2}, {-2, -4}, {0, -4}, {2, -3}, {4, -1}}
	var ring []Point
	for _, d := range dirs {
		k := 1 + size/8 + r.Int64N(size)
		ring = append(ring, Point{d.X * k, d.Y * k})
	}
	return ring
}

// overlap decides by the triangles of both rings whether their insides meet, by
// separating lines: another way than the one under test.
func overlap(a, b []Point, d Point) bool {
	ta, _ := ears(straightened(a))
	tb, _ := ears(straightened(b))
	for _, p := range ta {
		for _, q := range tb {
			moved := []Point{q[0].plus(d), q[1].plus(d), q[2].plus(d)}
			if !separated(p, moved) && !separated(moved, p) {
				return true
			}
		}
	}
	return false
}

func separated(p, q []Point) bool {
	for i := range p {
		out := true
		for _, v := range q {
			if turn(p[i], p[(i+1)%len(p)], v) > 0 {
				out = false
			}
		}
		if out {
			return true
		}
	}
	return false
}

func TestDepthIsThereJustWhereTwoRingsOverlap(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	in, out := 0, 0
	for range 150 {
		a, b := star(r, 1+r.Int64N(400)), star(r, 1+r.Int64N(400))
		pa, err := convexParts(a)
		if err != nil {
			t.Fatal(err, a)
		}
		pb, err := convexParts(b)
		if err != nil {
			t.Fatal(err, b)
		}
		p := newPair(pa, pb, 24)
		try := func(d Point) {
			want := overlap(a, b, d)
			if got := p.depth(d.X, d.Y) > 0; got != want {
				t.Fatalf("%v and %v, %v apart: overlap %v, want %v", a, b, d, got, want)
			}
			if want {
				in++
			} else {
				out++
			}
		}
		for range 200 {
			try(Point{p.min.X - 2 + r.Int64N(p.w+4), p.min.Y - 2 + r.Int64N(p.h+4)})
		}
		for _, c := range p.contacts {
			try(c)
			try(c.plus(Point{r.Int64N(3) - 1, r.Int64N(3) - 1}))
		}
	}
	t.Logf("%d places overlap, %d do not", in, out)
}
