package wanted

import (
	"math"
	"math/rand/v2"
	"testing"

	"seamwarden/compiler/lay"
)

// A ring of waves and bulges: what is coarser has fewer corners, no corner of the old
// ring outside it, and lies nowhere much more than half a millimetre off.
func TestACoarserRingContainsTheOld(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	for n := range 200 {
		var ring []lay.Point
		corners := 40 + random.IntN(160)
		wave := float64(random.IntN(4000))
		for i := range corners { // clockwise with y upward
			a := -2 * math.Pi * float64(i) / float64(corners)
			r := 20000 + wave*math.Sin(5*a+float64(n))
			ring = append(ring, lay.Point{X: int64(r * math.Cos(a)), Y: int64(r * math.Sin(a))})
		}
		out := coarser(ring, func(lay.Point) bool { return false })
		if len(out) > len(ring) {
			t.Fatalf("%d corners of %d", len(out), len(ring))
		}
		for _, p := range ring {
			inside, off := contains(out, p)
			if !inside && off > 0 {
				t.Fatalf("%d: %v lies %.2f outside", n, p, off)
			}
			if off > 1.5*coarse {
				t.Fatalf("%d: %v lies %.1f inside", n, p, off)
			}
		}
	}
}

// contains reports whether a point lies in a ring, and how far from its edge.
func contains(ring []lay.Point, p lay.Point) (in bool, off float64) {
	off = math.Inf(1)
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		if (a.Y > p.Y) != (b.Y > p.Y) && float64(p.X) < float64(a.X)+float64(p.Y-a.Y)/float64(b.Y-a.Y)*float64(b.X-a.X) {
			in = !in
		}
		dx, dy := float64(b.X-a.X), float64(b.Y-a.Y)
		t := min(1, max(0, (float64(p.X-a.X)*dx+float64(p.Y-a.Y)*dy)/(dx*dx+dy*dy)))
		off = min(off, math.Hypot(float64(a.X)+t*dx-float64(p.X), float64(a.Y)+t*dy-float64(p.Y)))
	}
	return
}

func TestARingThatCannotBeCoarserStays(t *testing.T) {
	square := []lay.Point{{}, {Y: 1000}, {X: 1000, Y: 1000}, {X: 1000}}
	if out := coarser(square, func(lay.Point) bool { return false }); len(out) != 4 {
		t.Errorf("%v", out)
	}
}
