package lay

import (
	"math"
	"reflect"
	"testing"

	"pgregory.net/rapid"
)

// star draws a ring about the origin whose corners lie at growing angles.
func star(t *rapid.T) []Point {
	n := rapid.IntRange(3, 9).Draw(t, "corners")
	var r []Point
	for i := range n {
		a := (float64(i) + rapid.Float64Range(0, 0.8).Draw(t, "angle")) * 2 * math.Pi / float64(n)
		d := rapid.Float64Range(4, 20).Draw(t, "far") * cm
		r = append(r, Point{int64(d * math.Cos(a)), int64(d * math.Sin(a))})
	}
	return r
}

// onFold makes a piece whose fold edge lies at any angle, the piece on either side of it.
func onFold(t *rapid.T) Piece {
	w, h := rapid.Float64Range(5, 25).Draw(t, "wide"), rapid.Float64Range(5, 60).Draw(t, "long")
	in := rapid.Float64Range(-2, 4).Draw(t, "in")
	side := float64(rapid.SampledFrom([]int{-1, 1}).Draw(t, "side"))
	a := rapid.SampledFrom([]float64{0, math.Pi / 2, math.Pi, rapid.Float64Range(0, 6).Draw(t, "slant")}).Draw(t, "angle")
	to := func(x, y float64) Point {
		x, y = x*cm, y*cm*side
		return Point{int64(math.Round(x*math.Cos(a) - y*math.Sin(a))), int64(math.Round(x*math.Sin(a) + y*math.Cos(a)))}
	}
	r := []Point{to(0, 0), to(h, 0), to(h+in, w), to(h/2, w/2+2), to(-in, w)}
	p := Piece{Outline: r, Either: rapid.IntRange(1, 2).Draw(t, "count"), Fold: &[2]Point{r[0], r[1]}}
	p.Grain = Point{r[1].X - r[0].X, r[1].Y - r[0].Y}
	if rapid.Bool().Draw(t, "down") {
		p.Grain = Point{-p.Grain.X, -p.Grain.Y}
	}
	return p
}

func randomPiece(t *rapid.T) Piece {
	if rapid.IntRange(0, 2).Draw(t, "fold") == 0 {
		return onFold(t)
	}
	p := Piece{Outline: star(t)}
	p.Grain = rapid.SampledFrom([]Point{{0, 1}, {1, 0}, {-7, 0}, {3, 4}, {-5, 2}}).Draw(t, "grain")
	p.Cut = rapid.SampledFrom([]Angle{Straight, Straight, Bias, EitherBias, Crosswise}).Draw(t, "cut")
	p.Drawn, p.Mirrored, p.Either = rapid.IntRange(0, 2).Draw(t, "drawn"), rapid.IntRange(0, 2).Draw(t, "mirrored"), rapid.IntRange(0, 1).Draw(t, "either")
	if p.Drawn+p.Mirrored == 0 {
		p.Either = 1
	}
	p.OneWay = rapid.IntRange(0, 4).Draw(t, "one way") == 0
	return p
}

func randomJob(t *rapid.T) Job {
	j := Job{Cloth: Cloth{Width: 150 * cm, Nap: rapid.Bool().Draw(t, "nap")}}
	j.Cloth.Clearance = rapid.SampledFrom([]int64{0, 0, 300, 777}).Draw(t, "clearance")
	for range rapid.IntRange(1, 4).Draw(t, "pieces") {
		j.Pieces = append(j.Pieces, randomPiece(t))
	}
	j.Way = rapid.SampledFrom(j.Ways()).Draw(t, "way")
	return j
}

func TestEveryLayIsSound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := randomJob(t)
		l, err := j.Find(Effort{Work: 3000})
		if err != nil {
			t.Fatal(err)
		}
		n, err := j.Check(l)
		if err != nil {
			t.Fatalf("%v: %v", l, err)
		}
		if n > l.Length || l.Length < l.Bound || l.Cloth() < j.Area() {
			t.Fatalf("%d, %d, limits %d and %d", n, l.Length, l.Bound, j.Area())
		}
		again, err := j.Find(Effort{Work: 3000})
		if err != nil || !reflect.DeepEqual(l, again) {
			t.Fatalf("the second time %v, %v", again, err)
		}
	})
}

// The check of a lay must see each thing that is done to a sound one.
func TestASpoiltLayIsSeen(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := randomJob(t)
		j.Cloth.Nap = true
		if j.Way == CrosswiseFold {
			j.Way = SingleLayer
		}
		l, err := j.Find(Effort{Work: 2000})
		if err != nil {
			t.Fatal(err)
		}
		k := rapid.IntRange(0, len(l.Places)-1).Draw(t, "which")
		p := &l.Places[k]
		switch rapid.IntRange(0, 5).Draw(t, "how") {
		case 0:
			p.Turn = (p.Turn + 180) % 360
		case 1:
			p.Turn += 7
		case 2:
			p.At.Y += j.Cloth.Width
		case 3:
			l.Places = append(l.Places[:k], l.Places[k+1:]...)
		case 4:
			p.At.X -= l.Length
		case 5:
			p.Opened = !p.Opened
		}
		if _, err := j.Check(l); err == nil {
			t.Fatalf("nothing was seen in %v", l)
		}
	})
}

// A ring that is turned off the grid contains what was turned: each corner and each
// edge, looked at in 40 places, lies inside or on it. Turned by right angles it is the
// same ring.
func TestATurnedRingContainsTheOldOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := counterClockwise(star(t))
		grain := rapid.SampledFrom([]Point{{1, 0}, {0, 1}, {3, 4}, {-5, 2}, {999, 1}}).Draw(t, "grain")
		deg := 45 * rapid.IntRange(0, 7).Draw(t, "turn")
		k := turnOf(grain, deg)
		out := k.turned(r)
		if k.exact && area2(out) != area2(r) {
			t.Fatalf("%v became %v", r, out)
		}
		for i, a := range r {
			b := r[(i+1)%len(r)]
			for n := range 41 {
				f := float64(n) / 40
				q := k.of(real{float64(a.X) + f*float64(b.X-a.X), float64(a.Y) + f*float64(b.Y-a.Y)})
				if off := outside(out, q); off > 1e-3 {
					t.Fatalf("%v lies %g units outside of %v", q, off, out)
				}
			}
		}
		low, far := corner(out)
		oldLow, oldFar := corner(r)
		if !k.exact && area2(out) > area2(r)+2*8*(far.X-low.X+far.Y-low.Y+oldFar.X-oldLow.X+oldFar.Y-oldLow.Y)*int64(len(r)) {
			t.Fatal("it grew by more than a few units")
		}
	})
}

// outside is how far a point is from a ring, 0 inside.
func outside(ring []Point, q real) float64 {
	best, in := math.Inf(1), false
	for i, v := range ring {
		a, b := realOf(v), realOf(ring[(i+1)%len(ring)])
		dx, dy := b.x-a.x, b.y-a.y
		f := math.Min(1, math.Max(0, ((q.x-a.x)*dx+(q.y-a.y)*dy)/(dx*dx+dy*dy)))
		best = math.Min(best, math.Hypot(a.x+f*dx-q.x, a.y+f*dy-q.y))
		if (a.y > q.y) != (b.y > q.y) && q.x < a.x+(q.y-a.y)/dy*dx {
			in = !in
		}
	}
	if in {
		return 0
	}
	return best
}
