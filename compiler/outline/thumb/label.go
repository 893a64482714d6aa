package thumb

import (
	"math"

	"seamwarden/compiler/figure"
	"seamwarden/compiler/outline"
)

// number writes the number of the piece where there is most room inside, or to the right
// of a piece that has none.
func (c *canvas) number(o *outline.Outline, s string) {
	if s == "" {
		return
	}
	size, wide := float64(text), 0.56*text*float64(len(s))
	at, room := c.roomiest(o)
	if room < math.Hypot(wide, 0.72*size)/2+1 {
		at = figure.Point{X: c.d.Width + wide/2, Y: c.d.Height / 2}
		c.d.Width += wide + 2
	}
	c.d.Height = max(c.d.Height, size)
	c.d.Items = append(c.d.Items, &figure.Label{At: figure.Point{X: at.X, Y: at.Y + 0.36*size}, Text: s, Size: size, Anchor: "middle", Bold: true, Fill: black})
}

// under writes a word below the drawing.
func (c *canvas) under(s string) {
	if s == "" {
		return
	}
	c.d.Width = max(c.d.Width, 0.58*small*float64(len([]rune(s))))
	c.d.Height += small + 3
	c.d.Items = append(c.d.Items, &figure.Label{At: figure.Point{X: c.d.Width / 2, Y: c.d.Height - 3}, Text: s, Size: small, Anchor: "middle", Fill: black})
}

// roomiest looks on a grid for the place inside that is farthest from every line, and
// gives how far that is; of places with room enough, the one nearest the middle.
func (c *canvas) roomiest(o *outline.Outline) (best figure.Point, room float64) {
	ring := c.ring(o)
	middle, most := c.at(o.Centre()), math.Inf(-1)
	const n = 28
	b := o.Bounds()
	low, far := c.at(b.Min), c.at(b.Max)
	for i := 1; i < n; i++ {
		for j := 1; j < n; j++ {
			q := figure.Point{X: low.X + (far.X-low.X)*float64(i)/n, Y: low.Y + (far.Y-low.Y)*float64(j)/n}
			if !inside(ring, q) {
				continue
			}
			d := c.clear(ring, q)
			if score := min(d, 1.2*text) - 0.1*math.Hypot(q.X-middle.X, q.Y-middle.Y); score > most+1e-9 {
				best, room, most = q, d, score
			}
		}
	}
	return
}

// ring is the outline as a polygon on paper.
func (c *canvas) ring(o *outline.Outline) (all []figure.Point) {
	const parts = 8
	for _, e := range o.Edges {
		long := e.Length()
		n := parts * len(e.Curves)
		for i := range n {
			all = append(all, c.at(e.Place(long*float64(i)/float64(n))))
		}
	}
	return
}

// clear is how far a place is from the ring and from what is drawn inside.
func (c *canvas) clear(ring []figure.Point, q figure.Point) float64 {
	best := math.Inf(1)
	for i, a := range ring {
		best = min(best, off(a, ring[(i+1)%len(ring)], q))
	}
	for _, s := range c.busy {
		best = min(best, off(s[0], s[1], q))
	}
	return best
}

func off(a, b, q figure.Point) float64 {
	dx, dy := b.X-a.X, b.Y-a.Y
	t := 0.0
	if long := dx*dx + dy*dy; long > 0 {
		t = min(1, max(0, ((q.X-a.X)*dx+(q.Y-a.Y)*dy)/long))
	}
	return math.Hypot(a.X+t*dx-q.X, a.Y+t*dy-q.Y)
}

func inside(ring []figure.Point, q figure.Point) (in bool) {
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		if (a.Y > q.Y) != (b.Y > q.Y) && q.X < a.X+(q.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			in = !in
		}
	}
	return
}
