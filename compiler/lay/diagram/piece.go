package diagram

import (
	"math"
	"unicode/utf8"

	"seamwarden/compiler/figure"
	"seamwarden/compiler/lay"
)

// piece draws an outline with its number, name and grain line.
func (c *canvas) piece(j lay.Job, at lay.Place, ring []lay.Point, note string) {
	p := j.Pieces[at.Piece]
	r := make([]figure.Point, len(ring))
	for i, v := range ring {
		r[i] = c.at(v)
	}
	fill := white
	if at.Mirrored && !symmetric(j, at) {
		fill = shade
	}
	c.add(fill, black, 1.4, nil, true, r...)
	middle, room := pole(r)
	low := c.caption(r, middle, room, p)
	if note != "" {
		c.label(figure.Point{X: middle.X, Y: middle.Y + low + 0.6*small}, note, 0.8*small, "middle", 0, false)
		low += small
	}
	c.grain(r, middle, low, p, at)
}

// caption writes number and name about the roomiest point, and gives half the height
// that they take. A name that does not fit is left out: the number is in the list.
func (c *canvas) caption(r []figure.Point, at figure.Point, room float64, p lay.Piece) float64 {
	size := math.Min(large, math.Max(9, room))
	wide := 0.6 * small * float64(utf8.RuneCountInString(p.Name))
	one := figure.Point{X: at.X, Y: at.Y + size*0.36}
	if p.Name == "" || wide > 2*reach(r, at, 1, 0) || room < small*1.2 {
		c.label(one, p.Number, size, "middle", 0, true)
		return size * 0.6
	}
	if p.Number == "" {
		c.label(one, p.Name, small, "middle", 0, false)
		return small * 0.6
	}
	c.label(figure.Point{X: at.X, Y: at.Y - 3}, p.Number, size, "middle", 0, true)
	c.label(figure.Point{X: at.X, Y: at.Y + small}, p.Name, small, "middle", 0, false)
	return small * 1.4
}

// grain draws the grain line beside the words: an arrow at both ends, or at the upper
// end only where the piece must not be turned. It is as long as there is room, and left
// out where there is none.
func (c *canvas) grain(r []figure.Point, at figure.Point, clear float64, p lay.Piece, place lay.Place) {
	turn := float64(place.Turn) * math.Pi / 180
	a, b := c.at2(0, 0), c.at2(math.Cos(turn), math.Sin(turn))
	d := figure.Point{X: (b.X - a.X) / c.scale, Y: (b.Y - a.Y) / c.scale}
	side := figure.Point{X: -d.Y, Y: d.X}
	if side.Y < 0 || side.Y == 0 && side.X < 0 {
		side = figure.Point{X: -side.X, Y: -side.Y}
	}
	off := clear + 6
	if math.Abs(side.X) > 0.5 {
		off = 0.35*small*float64(utf8.RuneCountInString(p.Name)) + 8
	}
	for _, half := range []float64{70, 50, 35, 24, 16} {
		if along := half + text; half < 50 { // before or after the words, in a narrow piece
			for _, k := range []float64{along, -along} {
				m := figure.Point{X: at.X + k*d.X, Y: at.Y + k*d.Y}
				if fits(r, m, d, half+5) {
					c.arrow(m, d, half, c.nap || p.OneWay)
					return
				}
			}
		}
		for _, k := range []float64{off, -off, 0.7 * off, -0.7 * off} {
			m := figure.Point{X: at.X + k*side.X, Y: at.Y + k*side.Y}
			if fits(r, m, d, half+5) {
				c.arrow(m, d, half, c.nap || p.OneWay)
				return
			}
		}
	}
}

// arrow is a line with a head at its upper end, and at the lower if it is not one way.
func (c *canvas) arrow(m, d figure.Point, half float64, oneWay bool) {
	up := figure.Point{X: m.X + half*d.X, Y: m.Y + half*d.Y}
	down := figure.Point{X: m.X - half*d.X, Y: m.Y - half*d.Y}
	c.add(none, black, 1, nil, false, down, up)
	head := func(tip figure.Point, k float64) {
		back := figure.Point{X: tip.X - 8*k*d.X, Y: tip.Y - 8*k*d.Y}
		c.add(black, none, 0, nil, true, tip, figure.Point{X: back.X - 3*d.Y, Y: back.Y + 3*d.X}, figure.Point{X: back.X + 3*d.Y, Y: back.Y - 3*d.X})
	}
	head(up, 1)
	if !oneWay {
		head(down, -1)
	}
}

// fits reports whether a line of so much to both sides lies inside a ring, with a
// little air.
func fits(r []figure.Point, m, d figure.Point, half float64) bool {
	for i := -4; i <= 4; i++ {
		q := figure.Point{X: m.X + half*float64(i)/4*d.X, Y: m.Y + half*float64(i)/4*d.Y}
		if !inside(r, q) || distance(r, q) < 4 {
			return false
		}
	}
	return true
}

// reach is how far one can go from a point both ways without leaving a ring.
func reach(r []figure.Point, from figure.Point, dx, dy float64) float64 {
	far := 0.0
	for far < 1000 {
		far += 3
		for _, s := range []float64{-1, 1} {
			if !inside(r, figure.Point{X: from.X + s*far*dx, Y: from.Y + s*far*dy}) {
				return far - 3
			}
		}
	}
	return far
}

// pole is a point well inside a ring, and how far it is from the nearest edge: of the
// points of a grid one that is far from the edges, and of those that leave room enough
// for words one near the middle.
func pole(r []figure.Point) (best figure.Point, room float64) {
	low, far := r[0], r[0]
	for _, p := range r {
		low = figure.Point{X: math.Min(low.X, p.X), Y: math.Min(low.Y, p.Y)}
		far = figure.Point{X: math.Max(far.X, p.X), Y: math.Max(far.Y, p.Y)}
	}
	const n = 40
	middle := figure.Point{X: (low.X + far.X) / 2, Y: (low.Y + far.Y) / 2}
	best = middle
	most := math.Inf(-1)
	for i := 1; i < n; i++ {
		for k := 1; k < n; k++ {
			q := figure.Point{X: low.X + (far.X-low.X)*float64(i)/n, Y: low.Y + (far.Y-low.Y)*float64(k)/n}
			if !inside(r, q) {
				continue
			}
			d := distance(r, q)
			if score := math.Min(d, 3*small) - 0.1*math.Hypot(q.X-middle.X, q.Y-middle.Y); score > most+1e-6 {
				best, room, most = q, d, score
			}
		}
	}
	return best, room
}

func inside(r []figure.Point, q figure.Point) (in bool) {
	for i, a := range r {
		b := r[(i+1)%len(r)]
		if (a.Y > q.Y) != (b.Y > q.Y) && q.X < a.X+(q.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			in = !in
		}
	}
	return in
}

// distance is how far a point is from the nearest edge.
func distance(r []figure.Point, q figure.Point) float64 {
	best := math.Inf(1)
	for i, a := range r {
		b := r[(i+1)%len(r)]
		dx, dy := b.X-a.X, b.Y-a.Y
		t := math.Min(1, math.Max(0, ((q.X-a.X)*dx+(q.Y-a.Y)*dy)/(dx*dx+dy*dy)))
		best = math.Min(best, math.Hypot(a.X+t*dx-q.X, a.Y+t*dy-q.Y))
	}
	return best
}
