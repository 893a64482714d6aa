package figure

import (
	"math"
	"strings"
)

// line gathers the words of a <text> until a new place begins. Without the
// widths of letters a place inside a line cannot be known, so a line has one
// place and one style: those of its first word.
type line struct {
	tag    tag // without its attributes
	m      matrix
	x, y   float64 // in user units
	text   strings.Builder
	styled bool // a word has been seen
	style  style
}

// textElement opens a line of words.
func (r *reader) textElement(t *tag, f *frame) {
	if !r.placed(t, f) {
		return
	}
	f.mode = lettered
	r.line = line{tag: *t, m: f.m}
	r.line.tag.attrs = nil
	r.words = &r.line
	r.position(t, f)
}

// inText handles what stands inside a <text>.
func (r *reader) inText(t *tag, f *frame) {
	switch key := elementFeature[t.name]; {
	case t.name == "title" || t.name == "desc":
		f.mode = ignored
	case t.name == "tspan" || t.name == "a":
		if t.name == "a" {
			r.link(t)
		}
		if a, ok := t.attr("transform"); ok {
			r.feature("moved-run", a.span())
		}
		if !r.restyle(&f.style, t) {
			f.mode = unseen
			return
		}
		r.position(t, f)
	case key != "":
		f.mode = unseen
		r.feature(key, t.span())
	default:
		f.mode = unseen
		r.unknownElement(t)
	}
}

// position reads x, y, dx and dy. An x begins a new line of words; a shift
// counts only before the first word.
func (r *reader) position(t *tag, f *frame) {
	x, hasX := r.firstPlace(t, f, "x", across)
	y, hasY := r.firstPlace(t, f, "y", down)
	dx, _ := r.firstPlace(t, f, "dx", across)
	dy, _ := r.firstPlace(t, f, "dy", down)
	w := r.words
	if hasX {
		w.flush(r)
		w.x = x
	}
	if w.styled {
		if hasY || dx != 0 || dy != 0 {
			r.feature("run", t.span())
		}
		return
	}
	if hasY {
		w.y = y
	}
	w.x, w.y = w.x+dx, w.y+dy
	for _, name := range [...]string{"rotate", "textLength"} {
		if a, ok := t.attr(name); ok && !isZero(a.value) {
			r.feature("letters", a.span())
		}
	}
}

// firstPlace reads the first of a list of coordinates: further ones would place
// the letters one by one.
func (r *reader) firstPlace(t *tag, f *frame, name string, ax axis) (float64, bool) {
	a, ok := t.attr(name)
	if !ok {
		return 0, false
	}
	list := strings.FieldsFunc(a.value, func(c rune) bool { return c == ',' || isSpace(c) })
	if len(list) == 0 {
		return 0, false
	}
	if len(list) > 1 {
		r.feature("letters", a.span())
	}
	n, bad := parseLength(list[0], ax, r.measures(&f.style))
	if bad != nil {
		r.badValue(a, bad, "taken as 0")
	}
	return n, true
}

// add takes words in the style of f.
func (w *line) add(r *reader, f *frame, text string) {
	blank := strings.TrimFunc(text, isSpace) == ""
	if !blank && f.style.hidden {
		return
	}
	w.text.WriteString(text)
	switch {
	case blank:
	case !w.styled:
		w.style, w.styled = f.style, true
	case !sameType(&w.style, &f.style):
		r.feature("run", r.text.span(f.from, f.to))
	}
}

// sameType says whether words of two styles look alike.
func sameType(a, b *style) bool {
	return a.size == b.size && a.bold == b.bold && a.italic == b.italic && a.fill == b.fill && a.fillUnseen == b.fillUnseen
}

// flush makes a label of the words so far and begins anew.
func (w *line) flush(r *reader) {
	text := strings.Join(strings.FieldsFunc(w.text.String(), isSpace), " ")
	st := w.style
	w.text.Reset()
	w.styled = false
	if text == "" {
		return
	}
	if outlined := !st.stroke.None && !st.strokeUnseen && st.width > 0; outlined {
		r.feature("outlined", w.tag.span())
	}
	if st.fill.None || st.fillUnseen {
		return
	}
	if !w.m.upright() {
		r.feature("slant", w.tag.span())
	}
	l := &Label{At: w.m.apply(Point{w.x, w.y}), Text: text, Size: round(st.size * w.m.size()), Anchor: st.anchor,
		Angle: turned(w.m), Bold: st.bold, Italic: st.italic, Fill: st.fill}
	if !(math.Abs(l.At.X) <= farthest && math.Abs(l.At.Y) <= farthest && l.Size <= farthest) {
		r.tooFar(w.tag.span())
		return
	}
	l.At = Point{round(l.At.X), round(l.At.Y)}
	if l.Size > 0 {
		r.emit(l, &w.tag)
	}
}

// turned is the angle by which a map turns the x axis, over -180 up to 180.
func turned(m matrix) float64 {
	a := round(math.Atan2(m.b, m.a) * 180 / math.Pi)
	if a == -180 {
		return 180
	}
	return a
}
