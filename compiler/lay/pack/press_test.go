package pack

import (
	"math/rand/v2"
	"testing"
)

// The least of the highest of some planes over a box: the answer must lie on the
// highest plane, and no point of the box may lie lower.
func TestAProgramFindsTheLowestPoint(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 60 {
		type plane struct{ a, b, c float64 }
		var planes []plane
		p := newProgram(3)
		for v := range 2 {
			p.low[v], p.up[v], p.value[v] = -10, 10, 0
		}
		p.low[2], p.up[2], p.value[2] = -1000, 1000, -1000
		for range 3 + r.IntN(8) {
			q := plane{r.Float64()*4 - 2, r.Float64()*4 - 2, r.Float64() * 20}
			planes = append(planes, q)
			p.atLeast(q.c, term{2, 1}, term{0, -q.a}, term{1, -q.b}) // z - ax - by >= c
		}
		if !p.solve(100) {
			t.Fatal("not solved")
		}
		height := func(x, y float64) (z float64) {
			z = -1000
			for _, q := range planes {
				z = max(z, q.a*x+q.b*y+q.c)
			}
			return
		}
		x, y, z := p.value[0], p.value[1], p.value[2]
		if x < -10.01 || x > 10.01 || y < -10.01 || y > 10.01 || height(x, y) > z+0.01 || height(x, y) < z-0.01 {
			t.Fatalf("%v, %v at %v, the planes are %v high there", x, y, z, height(x, y))
		}
		for range 500 {
			if h := height(r.Float64()*20-10, r.Float64()*20-10); h < z-0.01 {
				t.Fatalf("%v high, and there is a point %v high", z, h)
			}
		}
	}
}

func TestAProgramWithoutAnAnswerSaysSo(t *testing.T) {
	p := newProgram(2)
	p.low[0], p.up[0], p.value[0] = -1, 1, 0
	p.low[1], p.up[1], p.value[1] = 0, 10, 0
	p.atLeast(2, term{0, 1})
	if p.solve(100) {
		t.Errorf("%v is at least 2 and at most 1", p.value[0])
	}
}

// Two triangles that make a square of 3000 and a box behind it, done by hand: with gaps
// or small overlaps they are pressed to 3000 + 2000.
func TestPressingFreesAndShortens(t *testing.T) {
	p := Problem{Width: 3000, Shapes: []Shape{
		{0, []Pose{{Outline: ring(0, 0, 3000, 0, 0, 3000)}}},
		{1, []Pose{{Outline: ring(3000, 0, 3000, 3000, 0, 3000)}}},
		{2, []Pose{{Outline: ring(0, 0, 2000, 0, 2000, 3000, 0, 3000)}}},
	}}
	for _, x := range [][3]int64{{0, 0, 3000}, {0, 40, 3090}, {0, -30, 2950}, {60, 20, 3050}} {
		table, items, err := tableOf(p)
		if err != nil {
			t.Fatal(err)
		}
		table.prepare(nil)
		f := &finder{state: newState(table, items, p.Width, 1)}
		f.length = 5200
		for i := range items {
			f.put(i, spot{0, max(0, x[i]), 0})
		}
		f.measureAll()
		if !f.press(5100) || f.loss() > 0 || f.length > 5002 {
			t.Errorf("from %v: %d long, overlaps %d", x, f.length, f.loss())
			continue
		}
		f.best = f.save()
		sound(t, p, f.layout())
	}
}

// BenchmarkPress presses the invented lay as it was built.
func BenchmarkPress(b *testing.B) {
	p := invented()
	t, items, err := tableOf(p)
	if err != nil {
		b.Fatal(err)
	}
	t.prepare(nil)
	f := &finder{state: newState(t, items, p.Width, 1)}
	f.build()
	for b.Loop() {
		f.restore(f.best)
		f.press(f.length)
	}
}
