package lay

import (
	"fmt"
	"math"
)

// half is the outline of a piece that is cut on the fold, turned so that the fold
// edge lies on y = 0 and the piece above it, and grain is where its grain line then
// points to. It contains the piece as drawn, and the fold edge stays where it is.
type half struct {
	ring  []Point
	grain Point
	// below says that the piece would lie below its fold edge if its grain line
	// pointed along x.
	below bool
}

// along reports whether the grain line runs along the fold, so that the piece can
// lie at a lengthwise fold with its grain straight: within a thousandth, as drawn
// lines are rounded.
func (h half) along() bool { return abs(h.grain.Y)*1000 <= abs(h.grain.X) }

func (p Piece) half() (half, error) {
	r := counterClockwise(p.Outline)
	from, to := p.Fold[0], p.Fold[1]
	d := Point{to.X - from.X, to.Y - from.Y}
	if (d == Point{}) {
		return half{}, fmt.Errorf("its fold edge has no length")
	}
	t := turnOf(d, 0)
	zero := t.of(real{float64(from.X), float64(from.Y)})
	fine := make([]real, len(r))
	high, low := 0.0, 0.0
	for i, v := range r {
		q := t.of(real{float64(v.X), float64(v.Y)})
		fine[i] = real{q.x - zero.x, q.y - zero.y}
		if math.Abs(fine[i].y) < 1 {
			fine[i].y = 0
		}
		high, low = max(high, fine[i].y), min(low, fine[i].y)
	}
	g := t.of(real{float64(p.Grain.X), float64(p.Grain.Y)})
	if high > 0 && low < 0 {
		return half{}, fmt.Errorf("it lies on both sides of its fold edge")
	}
	below := (low < 0) != (g.x < 0)
	if low < 0 { // turned over about the fold: the whole piece stays the same
		for i, j := 0, len(fine)-1; i <= j; i, j = i+1, j-1 {
			fine[i], fine[j] = real{fine[j].x, -fine[j].y}, real{fine[i].x, -fine[i].y}
		}
		g.y = -g.y
	}
	// A direction is kept to a part in a million.
	k := 1e6 / max(math.Abs(g.x), math.Abs(g.y))
	h := half{grain: Point{int64(math.Round(g.x * k)), int64(math.Round(g.y * k))}, below: below}
	onFold := func(i int) bool { return fine[i].y == 0 && fine[(i+1)%len(fine)].y == 0 }
	if t.exact {
		h.ring = rounded(fine)
	} else {
		h.ring = grown(fine, func(i int) float64 {
			if onFold(i) {
				return 0
			}
			return 1
		})
		for i, v := range h.ring { // a sharp end at the fold must not reach across it
			h.ring[i].Y = max(0, v.Y)
		}
	}
	for i, v := range h.ring {
		if w := h.ring[(i+1)%len(h.ring)]; v.Y == 0 && w.Y == 0 && v.X < w.X {
			return h, nil
		}
	}
	return half{}, fmt.Errorf("its outline has no edge on the fold")
}

// opened is the whole piece, both halves, as one outline.
func (h half) opened() []Point {
	n := len(h.ring)
	for i, v := range h.ring {
		if w := h.ring[(i+1)%n]; v.Y == 0 && w.Y == 0 && v.X < w.X {
			var whole []Point
			for k := range n {
				whole = append(whole, h.ring[(i+1+k)%n])
			}
			// The chain runs from the far end of the fold edge over the piece to its
			// near end, and back reflected.
			for k := n - 2; k > 0; k-- {
				whole = append(whole, Point{whole[k].X, -whole[k].Y})
			}
			return counterClockwise(whole)
		}
	}
	return nil
}
