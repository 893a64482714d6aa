package figure

import "math"

// shapeReader gives what makes the commands of a drawing element, in user units; nil
// if nothing does. It is false where nothing is to be drawn: the shape is empty, or was
// reported.
func shapeReader(element string) func(*reader, *tag, *frame) ([]Command, bool) {
	switch element {
	case "path":
		return (*reader).pathData
	case "rect":
		return (*reader).rect
	case "circle":
		return (*reader).circle
	case "ellipse":
		return (*reader).ellipse
	case "line":
		return (*reader).lineShape
	case "polyline":
		return (*reader).polyline
	case "polygon":
		return (*reader).polygon
	}
	return nil
}

// counted keeps count of commands and stops at the limit.
func (r *reader) counted(t *tag, c []Command) ([]Command, bool) {
	r.commands += len(c)
	if r.commands > mostCommands {
		r.pathTooLong(t)
		return nil, false
	}
	return c, true
}

func (r *reader) pathTooLong(t *tag) {
	r.overLimit(t.span(), "more than 200,000 path commands")
}

func (r *reader) pathData(t *tag, f *frame) ([]Command, bool) {
	a, ok := t.attr("d")
	if !ok {
		return nil, false
	}
	c, bad := parsePath(a.value, mostCommands-r.commands, r.step, r.room)
	if r.visit != nil {
		r.room = c[:0] // a drawing keeps its own
	}
	switch {
	case bad == tooMany:
		r.pathTooLong(t)
	case bad != nil:
		r.badValue(a, bad, "this path was left out")
	default:
		return r.counted(t, c)
	}
	return nil, false
}

// number reads a coordinate or a size; one that is missing is 0.
func (r *reader) number(t *tag, f *frame, name string, ax axis, ok *bool) float64 {
	a, there := t.attr(name)
	if !there || a.value == "auto" {
		return 0
	}
	n, bad := parseLength(a.value, ax, r.measures(&f.style))
	if bad != nil {
		r.badValue(a, bad, "this shape was left out")
		*ok = false
	}
	return n
}

// extent is number for what cannot be negative.
func (r *reader) extent(t *tag, f *frame, name string, ax axis, ok *bool) float64 {
	n := r.number(t, f, name, ax, ok)
	if n < 0 {
		a, _ := t.attr(name)
		r.badValue(a, negative, "this shape was left out")
		*ok = false
	}
	return n
}

// rect draws a rectangle, clockwise from the left end of its top side, with
// rounded corners as SVG 1.1, 9.2 says: one radius given stands for both, and
// neither is more than half the side.
func (r *reader) rect(t *tag, f *frame) ([]Command, bool) {
	ok := true
	x, y := r.number(t, f, "x", across, &ok), r.number(t, f, "y", down, &ok)
	w, h := r.extent(t, f, "width", across, &ok), r.extent(t, f, "height", down, &ok)
	rx, ry := r.extent(t, f, "rx", across, &ok), r.extent(t, f, "ry", down, &ok)
	if !ok || w == 0 || h == 0 {
		return nil, false
	}
	if !given(t, "rx") {
		rx = ry
	} else if !given(t, "ry") {
		ry = rx
	}
	rx, ry = min(rx, w/2), min(ry, h/2)
	if rx == 0 || ry == 0 {
		return r.counted(t, polygonOf([]float64{x, y, x + w, y, x + w, y + h, x, y + h}, true))
	}
	c := []Command{lineTo('M', x+rx, y)}
	corner := func(cx, cy, begin float64) {
		c = append(c, turns(matrix{rx, 0, 0, ry, cx, cy}, begin, math.Pi/2, r.step)...)
	}
	c = append(c, lineTo('L', x+w-rx, y))
	corner(x+w-rx, y+ry, -math.Pi/2)
	c = append(c, lineTo('L', x+w, y+h-ry))
	corner(x+w-rx, y+h-ry, 0)
	c = append(c, lineTo('L', x+rx, y+h))
	corner(x+rx, y+h-ry, math.Pi/2)
	c = append(c, lineTo('L', x, y+ry))
	corner(x+rx, y+ry, math.Pi)
	return r.counted(t, append(c, Command{Op: 'Z'}))
}

// given says whether an attribute is there and is not "auto".
func given(t *tag, name string) bool {
	a, ok := t.attr(name)
	return ok && a.value != "auto"
}

func (r *reader) circle(t *tag, f *frame) ([]Command, bool) {
	ok := true
	cx, cy := r.number(t, f, "cx", across, &ok), r.number(t, f, "cy", down, &ok)
	radius := r.extent(t, f, "r", both, &ok)
	return r.oval(t, cx, cy, radius, radius, ok)
}

func (r *reader) ellipse(t *tag, f *frame) ([]Command, bool) {
	ok := true
	cx, cy := r.number(t, f, "cx", across, &ok), r.number(t, f, "cy", down, &ok)
	rx, ry := r.extent(t, f, "rx", across, &ok), r.extent(t, f, "ry", down, &ok)
	return r.oval(t, cx, cy, rx, ry, ok)
}

// oval draws from three o'clock, clockwise.
func (r *reader) oval(t *tag, cx, cy, rx, ry float64, ok bool) ([]Command, bool) {
	if !ok || rx == 0 || ry == 0 {
		return nil, false
	}
	round := turns(matrix{rx, 0, 0, ry, cx, cy}, 0, 2*math.Pi, r.step)
	c := append(make([]Command, 0, len(round)+2), lineTo('M', cx+rx, cy))
	return r.counted(t, append(append(c, round...), Command{Op: 'Z'}))
}

func (r *reader) lineShape(t *tag, f *frame) ([]Command, bool) {
	ok := true
	v := []float64{
		r.number(t, f, "x1", across, &ok), r.number(t, f, "y1", down, &ok),
		r.number(t, f, "x2", across, &ok), r.number(t, f, "y2", down, &ok),
	}
	if !ok {
		return nil, false
	}
	return r.counted(t, polygonOf(v, false))
}

func (r *reader) polyline(t *tag, f *frame) ([]Command, bool) { return r.pointList(t, false) }
func (r *reader) polygon(t *tag, f *frame) ([]Command, bool)  { return r.pointList(t, true) }

func (r *reader) pointList(t *tag, closed bool) ([]Command, bool) {
	a, _ := t.attr("points")
	v, bad := parseList(a.value)
	if bad == nil && len(v)%2 == 1 {
		bad = &fault{max(0, len(a.value)-1), "the last point has only one number"}
	}
	if bad != nil {
		r.badValue(a, bad, "this shape was left out")
		return nil, false
	}
	if len(v) < 4 {
		return nil, false
	}
	return r.counted(t, polygonOf(v, closed))
}

// polygonOf joins points, given as x and y in turn, with straight lines.
func polygonOf(v []float64, closed bool) []Command {
	c := append(make([]Command, 0, len(v)/2+1), lineTo('M', v[0], v[1]))
	for i := 2; i < len(v); i += 2 {
		c = append(c, lineTo('L', v[i], v[i+1]))
	}
	if closed {
		c = append(c, Command{Op: 'Z'})
	}
	return c
}

func lineTo(op byte, x, y float64) Command {
	return Command{Op: op, Points: [3]Point{{x, y}}}
}
