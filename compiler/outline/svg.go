package outline

import (
	"math"
	"strings"

	"seamwarden/compiler/figure"
	"seamwarden/dsl/finding"
)

// ReadSVG reads the outline of a piece from an SVG file, one group for each size:
//
//	<svg width="300mm" viewBox="0 0 300 500" data-allowance="none">
//	  <g id="size-12"><path id="hem_12" d="…"/> … <line id="grain_12" …/></g>
//
// Shapes outside every group of a size belong to all sizes. The drawing is nil if
// nothing can be measured in it; the findings say why.
func ReadSVG(file string, src []byte) (*Drawing, []finding.Finding) {
	var s *svg
	_, found := figure.Walk(file, src, func() figure.Visitor {
		s = &svg{file: file}
		return s
	})
	notes := notes{list: ofOutlines(found)}
	if len(found) > 0 && worst(found) == finding.Error {
		return nil, notes.all()
	}
	notes.list = append(notes.list, s.notes.list...)
	if s.notes.bad {
		return nil, notes.all()
	}
	piece := s.piece(&notes)
	if notes.bad {
		return nil, notes.all()
	}
	return &Drawing{Pieces: []*Piece{piece}}, notes.all()
}

// svg gathers the shapes of a file by size.
type svg struct {
	file      string
	stack     []layer
	root      finding.Span
	tolerance float64 // how far ends of edges may lie apart, in millimetres
	groups    []*group
	unsized   *group // what stands outside every group of a size
	notes     notes
}

// layer is one open element.
type layer struct {
	m     figure.Transform
	in    *group
	aside bool // nothing in it is looked at
}

// group is the shapes of one size, or those of all.
type group struct {
	sizes     []string
	shapes    []*shape
	allowance Allowance
	span      finding.Span
}

// shape is a drawn thing with its name, in millimetres.
type shape struct {
	kind   string // corner, mark, notch, grain, fold, opening or "" for an edge
	name   string
	curves []Curve
	closed bool
	shared bool // it belongs to several sizes, of which none may change its curves
	parts  int  // how many lines it is made of
	at     finding.Span
}

// decoration is the kind of a shape without a name. Nothing is read from it, but where an
// edge is missing it may be the one that lost its name.
const decoration = "decoration"

// usualTolerance is how far the ends of two edges may lie apart where the file says
// nothing: what rounding in drawing programs leaves.
const usualTolerance = 0.2

func (s *svg) Text(string) {}
func (s *svg) End()        { s.stack = s.stack[:len(s.stack)-1] }

// Start takes an element.
func (s *svg) Start(t *figure.Tag) {
	if len(s.stack) == 0 {
		s.begin(t)
		return
	}
	l := s.stack[len(s.stack)-1]
	if !l.aside {
		s.element(t, &l)
	}
	s.stack = append(s.stack, l)
}

// begin reads the outermost element: how large a unit is, and what holds for all.
func (s *svg) begin(t *figure.Tag) {
	s.root = t.Span()
	s.unsized = &group{span: s.root, allowance: s.allowance(t, NotSaid)}
	s.stack = append(s.stack, layer{in: s.unsized, m: s.unit(t)})
	s.tolerance = usualTolerance
	if v, ok := t.Attr("data-join"); ok {
		mm, ok := t.Length("data-join")
		if ok && mm > 0 && mm <= 5 {
			s.tolerance = mm
		} else if ok {
			s.notes.add(tooLoose(t.AttrSpan("data-join"), v))
		}
	}
}

// unit finds how many millimetres a user unit is, from the size and the view box as
// SVG 1.1, 7.8 (SVG 2, 8.2) says: as large as fits unless the file says otherwise.
func (s *svg) unit(t *figure.Tag) figure.Transform {
	width, ok := t.Length("width")
	height, also := t.Length("height")
	box, read := t.Numbers("viewBox")
	if !ok || !also || !read {
		s.notes.bad = true // the walk has said it
		return figure.Scaling(1, 1)
	}
	const pixel = 25.4 / 96
	if box == nil {
		t.Percentages(width/pixel, height/pixel)
		return figure.Scaling(pixel, pixel)
	}
	if len(box) != 4 || !(box[2] > 0 && box[3] > 0) {
		s.notes.add(badViewBox(t.AttrSpan("viewBox")))
		return figure.Scaling(1, 1)
	}
	t.Percentages(box[2], box[3])
	x, y := width/box[2], height/box[3]
	switch fit, _ := t.Attr("preserveAspectRatio"); {
	case x <= 0 && y <= 0:
		s.notes.add(sizeNotSaid(s.root))
		return figure.Scaling(1, 1)
	case x <= 0:
		x = y
	case y <= 0:
		y = x
	case strings.Contains(fit, "none"):
	case strings.Contains(fit, "slice"):
		x, y = max(x, y), max(x, y)
	default:
		if math.Abs(x/y-1) > 1e-3 {
			s.notes.add(disproportioned(s.root))
		}
		x, y = min(x, y), min(x, y)
	}
	return figure.Scaling(x, y)
}

// element reads what stands below the root.
func (s *svg) element(t *figure.Tag, l *layer) {
	switch name := t.Name(); name {
	case "g", "a", "path", "line", "polyline", "polygon", "rect", "circle", "ellipse":
		m, ok := t.Transform()
		l.m = l.m.Then(m)
		if !ok || !l.m.Fit() {
			l.aside = true
			if ok {
				s.notes.add(noArea(t.AttrSpan("transform")))
			}
			return
		}
		if name == "g" || name == "a" {
			s.group(t, l)
			return
		}
		s.shape(t, l)
		l.aside = true
	case "use", "svg", "image":
		s.notes.add(notMeasured(t.Span(), name))
		l.aside = true
	default:
		l.aside = true
	}
}

// group begins a size if the group names one.
func (s *svg) group(t *figure.Tag, l *layer) {
	id, _ := t.Attr("id")
	sizes, listed := t.Attr("data-size")
	if !listed {
		name, ok := strings.CutPrefix(id, "size-")
		if !ok {
			if v := s.allowance(t, l.in.allowance); v != l.in.allowance {
				s.notes.add(allowanceInside(t.AttrSpan("data-allowance")))
			}
			return
		}
		sizes = name
	}
	if l.in != s.unsized {
		s.notes.add(sizeInSize(t.Span()))
		return
	}
	g := &group{span: t.Span(), allowance: s.allowance(t, s.unsized.allowance)}
	for _, name := range strings.Split(sizes, ",") {
		name = strings.TrimSpace(name)
		if name == "" {
			s.notes.add(sizeWithoutName(t.Span()))
			continue
		}
		if first := s.sized(name); first != nil {
			s.notes.add(sizeTwice(t.Span(), name, first.span))
		}
		g.sizes = append(g.sizes, name)
	}
	s.groups, l.in = append(s.groups, g), g
}

func (s *svg) sized(name string) *group {
	for _, g := range s.groups {
		for _, n := range g.sizes {
			if n == name {
				return g
			}
		}
	}
	return nil
}

// allowance reads whether the drawn line is cut or sewn along.
func (s *svg) allowance(t *figure.Tag, otherwise Allowance) Allowance {
	switch v, there := t.Attr("data-allowance"); {
	case !there:
		return otherwise
	case v == "included":
		return Included
	case v == "none":
		return Excluded
	default:
		s.notes.add(allowanceUnknown(t.AttrSpan("data-allowance"), v))
		return Included
	}
}

// shape takes a shape that has a name; what has none is decoration.
func (s *svg) shape(t *figure.Tag, l *layer) {
	named := "data-edge"
	id, ok := t.Attr(named)
	kind := ""
	if !ok {
		named, kind = "", decoration
		if id, ok = t.Attr("id"); ok {
			named = "id"
			id, _, _ = strings.Cut(id, "_")
			kind, id = kindOf(id)
		}
	}
	at := t.Span()
	if named != "" {
		at = t.AttrSpan(named)
	}
	read := t.Shape
	if round := t.Name() == "circle" || t.Name() == "ellipse"; kind == decoration {
		read = t.Decoration
	} else if round && isPlace(kind) {
		read = t.Place
	}
	commands, ok := read()
	if !ok {
		return
	}
	sh := &shape{kind: kind, name: id, at: at, shared: l.in == s.unsized}
	sh.take(commands, l.m)
	if !sh.fit() {
		if kind != decoration {
			s.notes.add(tooLarge(at))
		}
		return
	}
	l.in.shapes = append(l.in.shapes, sh)
}

// isPlace reports whether what is drawn with an id of this kind only says where.
func isPlace(kind string) bool { return kind == "corner" || kind == "notch" || kind == "mark" }

// kindOf parts an id into what it marks and its name.
func kindOf(id string) (kind, name string) {
	switch kind, name, _ := strings.Cut(id, "-"); kind {
	case "corner", "notch", "mark", "opening":
		if name != "" {
			return kind, name
		}
	}
	if id == "grain" {
		return "grain", ""
	}
	if id == "fold" || strings.HasPrefix(id, "fold-") {
		return "fold", strings.TrimPrefix(strings.TrimPrefix(id, "fold"), "-")
	}
	return "", id
}

// take turns commands into curves in millimetres. Stretches of no length are left out.
func (sh *shape) take(commands []figure.Command, m figure.Transform) {
	var pen, start Point
	sh.curves = make([]Curve, 0, drawing(commands))
	for _, c := range commands {
		p := c.Points
		for i := range p {
			p[i] = m.Apply(p[i])
		}
		switch c.Op {
		case 'M':
			pen, start = p[0], p[0]
			sh.parts++
		case 'L':
			sh.add(straight(pen, p[0]))
			pen = p[0]
		case 'C':
			sh.add(Curve{P: [4]Point{pen, p[0], p[1], p[2]}})
			pen = p[2]
		case 'Z':
			if distance(pen, start) > 1e-9 {
				sh.add(straight(pen, start))
			}
			pen, sh.closed = start, true
		}
	}
}

// drawing counts the commands that draw a line.
func drawing(commands []figure.Command) (n int) {
	for i := range commands {
		if commands[i].Op != 'M' {
			n++
		}
	}
	return n
}

func (sh *shape) add(c Curve) {
	if c.P[0] != c.P[3] || !c.Straight && (c.P[0] != c.P[1] || c.P[0] != c.P[2]) {
		sh.curves = append(sh.curves, c)
	}
}

// farthest is how far from the origin a piece may lie, in millimetres: a kilometre.
const farthest = 1e6

func (sh *shape) fit() bool {
	for _, c := range sh.curves {
		for _, p := range c.P {
			if !(math.Abs(p.X) <= farthest && math.Abs(p.Y) <= farthest) {
				return false
			}
		}
	}
	return true
}

func (sh *shape) from() Point { return sh.curves[0].from() }
func (sh *shape) to() Point   { return sh.curves[len(sh.curves)-1].to() }

// middle is the centre of the box of the shape's ends: of a circle its centre.
func (sh *shape) middle() Point {
	b := Box{Min: sh.from(), Max: sh.from()}
	for _, c := range sh.curves {
		b.take(c.to())
	}
	return mix(b.Min, b.Max, 0.5)
}
