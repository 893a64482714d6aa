package outline

import (
	"math"
	"strings"

	"seamwarden/dsl/finding"
)

// The layers that are read; notches of other kinds have layers of their own.
const (
	layerBoundary  = 1
	layerCorner    = 2
	layerNotch     = 4 // V and slit
	layerMirror    = 6
	layerGrain     = 7
	layerCutout    = 11
	layerDrill     = 13
	layerNotchT    = 80
	layerNotchDeep = 81 // castle
	layerNotchTick = 82 // check
	layerNotchU    = 83
)

// piece makes the outline of a block and puts it to the piece of its name.
func (d *dxf) piece(out *Drawing, b *block) {
	name, size, allowance := b.name, "", Included
	var edges []*entity
	for _, e := range b.entities {
		if v, ok := said(e, "piece name"); ok && v != "" {
			name = v
		}
		if v, ok := said(e, "size"); ok {
			size = v
		}
		if v, ok := said(e, "allowance"); ok && strings.EqualFold(v, "none") {
			allowance = Excluded
		}
		if _, ok := said(e, "edge"); ok {
			edges = append(edges, e)
		}
	}
	boundary := b.on(layerBoundary)
	if len(boundary) == 0 {
		return // a block of something else
	}
	if d.units == 0 {
		if !d.notes.bad {
			d.notes.add(unitsNotSaid(finding.Span{File: d.text.file}))
		}
		return
	}
	s := Sized{Outline: &Outline{Allowance: allowance, Span: b.at}}
	if size != "" {
		s.Sizes = []string{size}
	}
	build := builder{notes: &d.notes, tolerance: usualTolerance, size: " of " + clipped(name) + sizesCalled(s.Sizes), out: s.Outline}
	if !build.boundary(d, b, boundary) || !build.sound() {
		return
	}
	build.named(d, edges)
	build.layers(d, b)
	out.take(name, s, b.at)
}

// take puts a size to its piece.
func (out *Drawing) take(name string, s Sized, at finding.Span) {
	for _, p := range out.Pieces {
		if strings.EqualFold(p.Name, name) {
			p.Sizes = append(p.Sizes, s)
			return
		}
	}
	out.Pieces = append(out.Pieces, &Piece{Name: name, Sizes: []Sized{s}, Span: at})
}

func (b *block) on(layer int) (all []*entity) {
	for _, e := range b.entities {
		if e.layer == layer && e.kind != "TEXT" {
			all = append(all, e)
		}
	}
	return
}

// place brings a point to millimetres, with y down.
func (d *dxf) place(p Point) Point { return Point{X: p.X * d.units, Y: -p.Y * d.units} }

// shape turns an entity into curves.
func (d *dxf) shape(e *entity) *shape {
	sh := &shape{at: e.at, parts: 1, closed: e.closed}
	switch e.kind {
	case "LINE":
		sh.add(straight(d.place(e.points[0]), d.place(e.points[1])))
	case "CIRCLE":
		sh.closed = true
		d.arc(sh, e.points[0], e.radius, 0, 2*math.Pi)
	case "ARC":
		from, to := e.angles[0]*math.Pi/180, e.angles[1]*math.Pi/180
		for to <= from {
			to += 2 * math.Pi
		}
		d.arc(sh, e.points[0], e.radius, from, to-from)
	case "POLYLINE", "LWPOLYLINE":
		n := len(e.points)
		for i := 0; i+1 < n || i < n && e.closed; i++ {
			d.stretch(sh, e.points[i], e.points[(i+1)%n], e.bulges[i])
		}
	}
	return sh
}

// stretch adds a straight line, or the arc that a bulge makes of it: the tangent of a
// quarter of the arc's angle, counter-clockwise if positive (DXF reference, group 42).
func (d *dxf) stretch(sh *shape, a, b Point, bulge float64) {
	if bulge == 0 || a == b {
		sh.add(straight(d.place(a), d.place(b)))
		return
	}
	span := 4 * math.Atan(bulge)
	chord := minus(b, a)
	k := (1 - bulge*bulge) / (4 * bulge) // from the middle of the chord to its left, in chords
	c := Point{X: (a.X+b.X)/2 - chord.Y*k, Y: (a.Y+b.Y)/2 + chord.X*k}
	d.arc(sh, c, distance(a, c), math.Atan2(a.Y-c.Y, a.X-c.X), span)
}

// arc adds a circular arc in curves of at most a sixteenth of a turn.
func (d *dxf) arc(sh *shape, c Point, r, from, span float64) {
	n := max(1, math.Ceil(math.Abs(span)/(math.Pi/8)-1e-9))
	step := span / n
	handle := 4. / 3 * math.Tan(step/4) * r
	at := func(a float64) (Point, Point) {
		sin, cos := math.Sincos(a)
		return Point{X: c.X + r*cos, Y: c.Y + r*sin}, Point{X: -sin * handle, Y: cos * handle}
	}
	for i := range int(n) {
		p, v := at(from + step*float64(i))
		q, w := at(from + step*float64(i+1))
		sh.add(Curve{P: [4]Point{d.place(p), d.place(Point{X: p.X + v.X, Y: p.Y + v.Y}), d.place(Point{X: q.X - w.X, Y: q.Y - w.Y}), d.place(q)}})
	}
}

// boundary joins the lines of the cutting line and parts them at the corners.
func (b *builder) boundary(d *dxf, of *block, list []*entity) bool {
	var shapes []*shape
	for _, e := range list {
		if sh := d.shape(e); len(sh.curves) > 0 {
			sh.name = "boundary"
			if !sh.fit() {
				b.add(tooLarge(e.at))
				return false
			}
			shapes = append(shapes, sh)
		}
	}
	if len(shapes) == 0 {
		b.add(b.noEdges())
		return false
	}
	ring, ok := b.chain(shapes)
	if !ok {
		return false
	}
	whole := &Edge{Span: list[0].at}
	for i, sh := range ring {
		moveEnd(sh.curves, ring[(i+1)%len(ring)].from())
		whole.Curves = append(whole.Curves, sh.curves...)
	}
	b.out.Edges = []*Edge{whole}
	var cuts []cut
	for _, e := range of.on(layerCorner) {
		if c, off := place(whole.Curves, d.place(e.points[0])); off <= nearJoint {
			c.shape = &shape{at: e.at}
			cuts = append(cuts, c)
		}
	}
	if cuts = inOrder(cuts); len(cuts) > 1 {
		b.out.Edges = whole.cutAt(cuts)
	}
	return true
}

// named gives each edge the annotation nearest to its middle.
func (b *builder) named(d *dxf, list []*entity) {
	for _, e := range list {
		name, _ := said(e, "edge")
		at, best, far := d.place(e.points[0]), (*Edge)(nil), math.Inf(1)
		for _, o := range b.out.Edges {
			if r := distance(at, o.along(o.Length()/2)); r < far {
				best, far = o, r
			}
		}
		if first := b.out.Edge(name); first != nil {
			b.add(b.edgeTwice(&shape{name: name, at: e.at}, first.Span))
			return
		}
		if best.Name != "" {
			b.add(b.edgeNamedTwice(e.at, best.Name, name))
			return
		}
		best.Name, best.Span = name, e.at
	}
}

// layers takes what is not the boundary.
func (b *builder) layers(d *dxf, of *block) {
	for _, e := range of.entities {
		sh := d.shape(e)
		if len(sh.curves) == 0 && e.kind != "POINT" {
			continue
		}
		switch e.layer {
		case layerGrain:
			sh.kind = "grain"
		case layerMirror:
			sh.kind = "fold"
		case layerCutout:
			sh.kind = "opening"
		case layerNotch, layerNotchT, layerNotchDeep, layerNotchTick, layerNotchU:
			sh.kind = "notch"
		case layerDrill:
			sh.kind = "mark"
		default:
			continue
		}
		if e.kind != "POINT" {
			b.inside(sh)
			continue
		}
		if sh.kind != "notch" && sh.kind != "mark" {
			continue // a point is no line
		}
		p := d.place(e.points[0])
		m := Mark{Notch: sh.kind == "notch", Place: p, Span: e.at}
		at := b.out.nearest(p, onEdge)
		m.Edge, m.At = at.edge, at.along()
		b.out.Marks = append(b.out.Marks, m)
	}
}
