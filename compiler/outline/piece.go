package outline

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"seamwarden/dsl/finding"
)

// piece makes the outlines of every size.
func (s *svg) piece(n *notes) *Piece {
	p := &Piece{Span: s.root}
	groups := s.groups
	if len(groups) == 0 {
		groups = []*group{s.unsized}
	}
	if s.astray(n) {
		return p
	}
	s.allowancesSaid(groups, n)
	b := builder{notes: n, tolerance: s.tolerance}
	for _, g := range groups {
		all := g.shapes
		if g != s.unsized {
			all = append(slices.Clone(s.unsized.shapes), g.shapes...)
		}
		b.size, b.sizes, b.aside, b.out = sizesCalled(g.sizes), g.sizes, b.aside[:0], &Outline{Allowance: g.allowance, Span: g.span}
		if b.build(all) {
			p.Sizes = append(p.Sizes, Sized{Sizes: g.sizes, Outline: b.out})
		}
	}
	return p
}

// astray looks for an edge outside every size that sizes have of their own: mostly all of a
// size, whose group is not named as one.
func (s *svg) astray(n *notes) bool {
	for _, g := range s.groups {
		for _, own := range g.shapes {
			for _, all := range s.unsized.shapes {
				if own.kind == "" && all.kind == "" && own.name == all.name {
					n.add(outsideSizes(all, own, g.sizes))
					return true
				}
			}
		}
	}
	return false
}

// allowancesSaid looks for sizes that do not say whether the line is cut or sewn along: of
// a file that says it nowhere once.
func (s *svg) allowancesSaid(groups []*group, n *notes) {
	var silent []*group
	for _, g := range groups {
		if g.allowance == NotSaid {
			silent = append(silent, g)
		}
	}
	switch {
	case len(silent) == 0:
	case len(silent) == len(groups):
		n.add(allowanceNotSaid(s.root))
	default:
		for _, g := range silent {
			n.add(allowanceNotSaid(g.span))
		}
	}
}

// builder puts one outline together.
type builder struct {
	notes     *notes
	tolerance float64
	size      string // " in size 12", or ""
	sizes     []string
	out       *Outline
	aside     []*shape // what is drawn and is no edge

	// room for one outline after the other
	edges, corners, rest []*shape
	ring, side           []Point
	of                   []*Edge
}

// add takes a finding about one size. What is found in the same words in another size is
// the same mistake, and only the sizes are added.
func (b *builder) add(f finding.Finding) {
	like := func(words, size string) string {
		return numbers.ReplaceAllString(strings.ReplaceAll(words, size, ""), "#")
	}
	for i := range b.notes.list {
		first := &b.notes.list[i]
		if was := b.notes.sizes[i]; b.size != "" && len(was) > 0 && first.Rule == f.Rule && like(first.Headline, sizesCalled(was)) == like(f.Headline, b.size) {
			first.Headline = strings.Replace(first.Headline, sizesCalled(was), sizesCalled(append(was, b.sizes...)), 1)
			b.notes.sizes[i] = append(was, b.sizes...)
			return
		}
	}
	n := len(b.notes.list)
	if b.notes.add(f); b.size != "" && len(b.notes.list) > n {
		b.notes.of(n, b.sizes)
	}
}

var numbers = regexp.MustCompile(`[0-9]+(\.[0-9]+)?`)

// build is false if there is no ring, which is reported.
func (b *builder) build(all []*shape) bool {
	edges, corners, rest := b.edges[:0], b.corners[:0], b.rest[:0]
	for _, sh := range all {
		switch {
		case sh.kind == decoration:
			b.aside = append(b.aside, sh)
		case sh.kind == "corner":
			corners = append(corners, sh)
		case sh.kind == "":
			edges = append(edges, sh)
		default:
			rest = append(rest, sh)
			b.aside = append(b.aside, sh)
		}
	}
	b.edges, b.corners, b.rest = edges, corners, rest
	ok := false
	if len(corners) > 0 {
		ok = b.divide(edges, corners)
	} else {
		ok = b.join(edges)
	}
	if !ok || !b.sound() {
		return false
	}
	b.out.Marks = make([]Mark, 0, len(rest))
	for _, sh := range rest {
		b.inside(sh)
	}
	return true
}

// sound turns a ring that runs the other way round, and looks whether it is simple.
func (b *builder) sound() bool {
	o := b.out
	if o.signed() < 0 {
		o.reverse()
	}
	ring, of := b.ring[:0], b.of[:0]
	for _, e := range o.Edges {
		b.side = e.outer(b.side[:0], containTolerance)
		for _, p := range b.side {
			if n := len(ring); n == 0 || distance(ring[n-1], p) > 1e-6 {
				ring, of = append(ring, p), append(of, e)
			}
		}
	}
	b.ring, b.of = ring, of
	if n := len(ring); n > 1 && distance(ring[0], ring[n-1]) <= 1e-6 {
		ring, of = ring[:n-1], of[:n-1]
	}
	if i, j, yes := crossing(ring); yes {
		b.add(b.crossed(of[i], of[j]))
		return false
	}
	if o.signed() < 1 {
		b.add(b.noRoom())
		return false
	}
	return true
}

// reverse lets the ring run the other way round.
func (o *Outline) reverse() {
	for i, j := 0, len(o.Edges)-1; i < j; i, j = i+1, j-1 {
		o.Edges[i], o.Edges[j] = o.Edges[j], o.Edges[i]
	}
	for _, e := range o.Edges {
		e.Curves = backwards(e.Curves)
	}
}

func backwards(list []Curve) []Curve {
	out := make([]Curve, len(list))
	for i := range list {
		out[len(list)-1-i] = list[i].reversed()
	}
	return out
}

// inside takes a shape that is not part of the ring.
func (b *builder) inside(sh *shape) {
	switch sh.kind {
	case "grain":
		switch {
		case len(sh.curves) != 1 || !sh.curves[0].Straight || distance(sh.from(), sh.to()) < 1:
			b.add(b.grainBent(sh.at))
		case b.out.Grain != nil:
			b.add(b.grainTwice(sh.at, b.out.Grain.Span))
		default:
			b.out.Grain = &Line{From: sh.from(), To: sh.to(), Span: sh.at}
		}
	case "fold":
		if len(sh.curves) != 1 || !sh.curves[0].Straight {
			b.add(b.foldBent(sh.at))
			return
		}
		b.out.Folds = append(b.out.Folds, Line{Name: sh.name, From: sh.from(), To: sh.to(), Span: sh.at})
	case "opening":
		if sh.parts != 1 || distance(sh.from(), sh.to()) > b.tolerance {
			b.add(b.openOpening(sh))
			return
		}
		b.out.Openings = append(b.out.Openings, sh.curves)
	default:
		b.mark(sh)
	}
}

// onEdge is how near a mark must lie to the ring to be a mark on it, in millimetres:
// half the width of a drawn notch (common practice, no source).
const onEdge = 2

// mark places a notch or sign: a circle where its centre is, a line or wedge where it
// touches the ring.
func (b *builder) mark(sh *shape) {
	m := Mark{Name: sh.name, Notch: sh.kind == "notch", Span: sh.at}
	places := append(b.side[:0], sh.middle())
	if !sh.closed {
		places = sh.along(places)
	}
	b.side = places
	var found onRing
	best := math.Inf(1)
	for _, p := range places {
		if at := b.out.nearest(p, min(onEdge, best)); at.edge != nil && at.off < best {
			found, m.Place, best = at, p, at.off
		}
	}
	if m.Edge, m.At = found.edge, found.along(); m.Edge == nil {
		m.Place = places[0]
		if sh.kind == "notch" {
			b.add(b.notchInside(sh.at, sh.name))
		}
	}
	b.out.Marks = append(b.out.Marks, m)
}

// along gives places along a short line, close enough together that one of them lies
// near the edge that it crosses.
func (sh *shape) along(all []Point) []Point {
	const parts = 8
	for i := range sh.curves {
		for k := 0; k <= parts; k++ {
			all = append(all, sh.curves[i].at(float64(k)/parts))
		}
	}
	return all
}

// onRing is a place on the ring: the edge, which of its curves, the parameter there, and
// how far off the place is for which it was looked for.
type onRing struct {
	edge  *Edge
	curve int
	t     float64
	off   float64
}

// along is how far it is from the beginning of the edge.
func (r onRing) along() (sum float64) {
	if r.edge == nil {
		return 0
	}
	for i := range r.curve {
		sum += r.edge.Curves[i].Length()
	}
	return sum + r.edge.Curves[r.curve].lengthTo(r.t)
}

// nearest finds the place of the ring closest to another; with no edge if none is within
// reach.
func (o *Outline) nearest(p Point, reach float64) onRing {
	found := onRing{off: reach}
	for _, e := range o.Edges {
		for i := range e.Curves {
			if t, d := e.Curves[i].nearest(p, found.off); d <= found.off {
				found = onRing{e, i, t, d}
			}
		}
	}
	return found
}

// nearest gives the parameter of the place of the curve nearest to p, and how far off
// it is; a curve whose control points all lie out of reach is not looked at closely.
func (c *Curve) nearest(p Point, reach float64) (t, off float64) {
	if c.beyond(p, reach) {
		return 0, math.Inf(1)
	}
	if c.Straight {
		d := minus(c.P[3], c.P[0])
		t = max(0, min(1, dot(minus(p, c.P[0]), d)/dot(d, d)))
		return t, distance(c.at(t), p)
	}
	const parts = 16
	off = math.Inf(1)
	for i := 0; i <= parts; i++ {
		if d := distance(c.at(float64(i)/parts), p); d < off {
			t, off = float64(i)/parts, d
		}
	}
	for step := 0.5 / parts; step > 1e-9; step /= 2 {
		for _, u := range [...]float64{max(0, t-step), min(1, t+step)} {
			if d := distance(c.at(u), p); d < off {
				t, off = u, d
			}
		}
	}
	return
}

// beyond reports whether all control points lie out of reach, on one side of p.
func (c *Curve) beyond(p Point, reach float64) bool {
	left, right, above, below := true, true, true, true
	for i := range c.P {
		q := &c.P[i]
		left, right = left && q.X < p.X-reach, right && q.X > p.X+reach
		above, below = above && q.Y < p.Y-reach, below && q.Y > p.Y+reach
	}
	return left || right || above || below
}

func millimetres(v float64) string { return strconv.FormatFloat(v, 'f', 1, 64) + " mm" }
