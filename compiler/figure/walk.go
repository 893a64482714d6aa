package figure

import "seamwarden/dsl/finding"

// What reads SVG for another purpose than a drawing to be printed meets the elements
// of a file one by one, and shares with a figure the XML, the shapes, the transforms
// and the units.

// Visitor meets the elements of a file in their order. What stands between tags
// comes as Text. A Tag and what it gives are good until the next one.
type Visitor interface {
	Start(t *Tag)
	Text(text string)
	End()
}

// Tag is a start tag; Point and Command are in user units.
type Tag struct {
	r *reader
	t *tag
}

// Transform is an affine map.
type Transform struct{ m matrix }

// Walk lets a visitor meet the elements of an SVG file. It begins anew, with a new
// visitor, if the file is not as plain as most. Walk is false if the file cannot be
// read to its end; the findings have places in file and the names of figures' rules.
// Arcs become curves within a ten-millionth of their radius.
func Walk(file string, src []byte, begin func() Visitor) (bool, []finding.Finding) {
	r := readBy(func() *reader {
		r := newReader(file, src)
		r.step, r.visit = sixteenth, begin()
		return r
	})
	return !r.stopped, r.notes.all(file)
}

// visited hands an element to the visitor, unless it runs or loads something.
func (r *reader) visited(t *tag) {
	r.dangerous(t)
	r.met = Tag{r: r, t: t}
	r.visit.Start(&r.met)
}

// Name is the element's name; "" if it is not SVG's own.
func (t *Tag) Name() string {
	if !t.t.own() {
		return ""
	}
	return t.t.name
}

// Span is the place of the tag's name.
func (t *Tag) Span() finding.Span { return t.t.span() }

// Attr gives the value of an attribute, and whether it is there.
func (t *Tag) Attr(name string) (string, bool) {
	a, ok := t.t.attr(name)
	return a.value, ok
}

// AttrSpan is the place of an attribute's value, that of the tag if there is none.
func (t *Tag) AttrSpan(name string) finding.Span {
	if a, ok := t.t.attr(name); ok {
		return a.span()
	}
	return t.Span()
}

// Shape gives the commands of a path or of one of the basic shapes, without the
// element's own transform; false if it draws nothing or cannot be read, which is
// reported.
func (t *Tag) Shape() ([]Command, bool) {
	commands := shapeReader(t.Name())
	if commands == nil {
		return nil, false
	}
	t.r.bare.style.size = 16
	c, ok := commands(t.r, t.t, &t.r.bare)
	return c, ok && draws(c)
}

// Decoration gives the commands of a path in which nothing is looked for but where it runs:
// false if it is long or cannot be read, of which nothing is said.
func (t *Tag) Decoration() ([]Command, bool) {
	const most = 4096 // bytes
	a, ok := t.t.attr("d")
	if !ok || t.Name() != "path" || len(a.value) > most {
		return nil, false
	}
	c, bad := parsePath(a.value, most, t.r.step, nil)
	return c, bad == nil && draws(c)
}

// Place is Shape for where something lies, and not for its line: a circle in four
// curves.
func (t *Tag) Place() ([]Command, bool) {
	defer func(step float64) { t.r.step = step }(t.r.step)
	t.r.step = quarter
	return t.Shape()
}

// Transform reads the element's transform; one that cannot be read is reported, and
// false.
func (t *Tag) Transform() (Transform, bool) {
	a, there := t.t.attr("transform")
	if !there {
		return Transform{identity}, true
	}
	m, bad := parseTransform(a.value)
	if bad != nil {
		t.r.badValue(a, bad, "what it moves was left out")
	}
	return Transform{m}, bad == nil
}

// Length reads an attribute that is a length, in millimetres; 0 if it is not there
// or relative to something outside. One that cannot be read is reported, and false.
func (t *Tag) Length(name string) (mm float64, ok bool) {
	a, there := t.t.attr(name)
	if !there || relative(a.value) {
		return 0, true
	}
	n, bad := parseLength(a.value, none, measures{})
	if bad != nil {
		t.r.badValue(a, bad, "not used")
	}
	return n * millimetresPerPixel, bad == nil
}

// Numbers reads an attribute that is a list of numbers; nil if it is not there. One
// that cannot be read is reported, and false.
func (t *Tag) Numbers(name string) ([]float64, bool) {
	a, there := t.t.attr(name)
	if !there {
		return nil, true
	}
	v, bad := parseList(a.value)
	if bad != nil {
		t.r.badValue(a, bad, "not used")
	}
	return v, bad == nil
}

// Percentages sets what the percentages of shapes are parts of, in user units.
func (t *Tag) Percentages(width, height float64) { t.r.box.width, t.r.box.height = width, height }

// Scaling is a map that makes things larger.
func Scaling(x, y float64) Transform { return Transform{scaling(x, y)} }

// Then does n first and m afterwards, as nested groups do: the outer one is m.
func (m Transform) Then(n Transform) Transform { return Transform{m.m.then(n.m)} }

// Apply moves a point.
func (m Transform) Apply(p Point) Point { return m.m.apply(p) }

// Fit reports whether no number of the map is too large to hold, and it leaves an area.
func (m Transform) Fit() bool { return m.m.finite() && m.m.det() != 0 }
