package wanted

import (
	"math"

	"seamwarden/compiler/lay"
)

// coarse is by how much, in units of the grid, a ring may be widened to have fewer
// corners: half a millimetre, about what shears leave (common practice, no source). The
// search takes as long as there are corners.
const coarse = lay.Millimetre / 2

// coarser gives a ring that contains another, clockwise as seen with y upward, and has
// fewer corners. Corners for which keep holds stay, with the edges between them. A
// hollow corner is bridged, and an edge between two corners that stand out is left out
// where its neighbours meet close by.
func coarser(ring []lay.Point, keep func(lay.Point) bool) []lay.Point {
	r := &rounder{keep: keep}
	for _, p := range ring {
		r.at = append(r.at, corner{p, 0})
	}
	for r.bridge() || r.extend() {
	}
	var out []lay.Point
	for _, c := range r.at {
		out = append(out, c.Point)
	}
	if len(out) < 3 || crosses(out) {
		return ring
	}
	return out
}

// corner is a corner with how far the ring has been widened at it.
type corner struct {
	lay.Point
	off float64
}

type rounder struct {
	at   []corner
	keep func(lay.Point) bool
}

func (r *rounder) get(i int) corner { return r.at[(i+len(r.at))%len(r.at)] }

// turn is negative at a corner that stands out: the ring runs clockwise.
func turn(a, b, c lay.Point) int64 { return (b.X-a.X)*(c.Y-b.Y) - (b.Y-a.Y)*(c.X-b.X) }

// bridge leaves out hollow corners; it reports whether there was one.
func (r *rounder) bridge() (done bool) {
	for i := 0; i < len(r.at) && len(r.at) > 4; i++ {
		a, b, c := r.get(i-1), r.get(i), r.get(i+1)
		if turn(a.Point, b.Point, c.Point) < 0 || r.keep(b.Point) {
			continue
		}
		off := b.off + distance(b.Point, a.Point, c.Point)
		if off > coarse {
			continue
		}
		n := len(r.at)
		r.at[(i+n-1)%n].off, r.at[(i+1)%n].off = max(a.off, off), max(c.off, off)
		r.at = append(r.at[:i], r.at[i+1:]...)
		done = true
	}
	return
}

// extend lets the neighbours of an edge meet outside it; it reports whether there was
// such an edge.
func (r *rounder) extend() (done bool) {
	for i := 0; i < len(r.at) && len(r.at) > 4; i++ {
		a, b, c, d := r.get(i-1), r.get(i), r.get(i+1), r.get(i+2)
		if turn(a.Point, b.Point, c.Point) >= 0 || turn(b.Point, c.Point, d.Point) >= 0 {
			continue
		}
		if r.keep(a.Point) || r.keep(b.Point) || r.keep(c.Point) || r.keep(d.Point) {
			continue
		}
		p, ok := meeting(a.Point, b.Point, c.Point, d.Point)
		if !ok {
			continue
		}
		off := max(b.off, c.off) + distance(p, b.Point, c.Point)
		if off > coarse {
			continue
		}
		n := len(r.at)
		r.at[i] = corner{p, off}
		k := (i + 1) % n
		r.at = append(r.at[:k], r.at[k+1:]...)
		done = true
	}
	return
}

// meeting is a point of the grid where the lines from a over b and from d over c meet,
// moved outward by the unit that rounding may lose.
func meeting(a, b, c, d lay.Point) (p lay.Point, ok bool) {
	ux, uy := float64(b.X-a.X), float64(b.Y-a.Y)
	vx, vy := float64(c.X-d.X), float64(c.Y-d.Y)
	k := ux*vy - uy*vx
	if math.Abs(k) < 1 {
		return p, false
	}
	t := (float64(d.X-a.X)*vy - float64(d.Y-a.Y)*vx) / k
	s := (float64(d.X-a.X)*uy - float64(d.Y-a.Y)*ux) / k
	if t <= 1 || s <= 1 {
		return p, false // they meet on the other side
	}
	x, y := float64(a.X)+t*ux, float64(a.Y)+t*uy
	mx, my := float64(b.X+c.X)/2, float64(b.Y+c.Y)/2
	h := math.Hypot(x-mx, y-my)
	if h < 1e-9 {
		return p, false
	}
	best := math.Inf(1)
	for dx := -2.0; dx <= 2; dx++ { // the nearest point from which both old corners are inside
		for dy := -2.0; dy <= 2; dy++ {
			q := lay.Point{X: int64(math.Round(x + dx)), Y: int64(math.Round(y + dy))}
			if turn(a, b, q) < 0 || turn(q, c, d) < 0 { // b or c would stick out
				continue
			}
			if e := math.Hypot(float64(q.X)-x, float64(q.Y)-y); e < best {
				best, p, ok = e, q, true
			}
		}
	}
	return p, ok
}

// distance is how far a point lies from the line through two others.
func distance(p, a, b lay.Point) float64 {
	dx, dy := float64(b.X-a.X), float64(b.Y-a.Y)
	if dx == 0 && dy == 0 {
		return math.Hypot(float64(p.X-a.X), float64(p.Y-a.Y))
	}
	return math.Abs(float64(p.X-a.X)*dy-float64(p.Y-a.Y)*dx) / math.Hypot(dx, dy)
}

// crosses reports whether two edges of a ring that are no neighbours have a point in
// common.
func crosses(ring []lay.Point) bool {
	n := len(ring)
	sign := func(v int64) int {
		switch {
		case v > 0:
			return 1
		case v < 0:
			return -1
		}
		return 0
	}
	for i := range ring {
		a, b := ring[i], ring[(i+1)%n]
		for k := i + 2; k < n; k++ {
			if i == 0 && k == n-1 {
				continue
			}
			c, d := ring[k], ring[(k+1)%n]
			if sign(turn(a, b, c))*sign(turn(a, b, d)) <= 0 && sign(turn(c, d, a))*sign(turn(c, d, b)) <= 0 {
				return true
			}
		}
	}
	return false
}
