package figure

import (
	"fmt"
	"math"
	"strings"

	"seamwarden/dsl/finding"
)

const (
	svgSpace   = "http://www.w3.org/2000/svg"
	xhtmlSpace = "http://www.w3.org/1999/xhtml"
	xlinkSpace = "http://www.w3.org/1999/xlink"
)

// start pushes the frame of a start tag and handles the tag.
func (r *reader) start(t *tag) {
	around := len(r.stack)
	r.stack = append(r.stack, frame{name: t.name, from: t.from, to: t.to, mode: ignored})
	f := r.top()
	switch {
	case around >= mostNesting:
		r.stop(t.span(), fmt.Sprintf("The figure is nested deeper than %d elements", mostNesting), "too deep", "", "Take groups apart in the drawing program.")
	case r.repeatedAttribute(t):
	case around == 0:
		r.root(t, f)
	case r.visit != nil:
		r.visited(t)
	default:
		r.inside(t, f, &r.stack[around-1])
	}
}

// repeatedAttribute stops at an attribute given twice, which XML forbids and
// the decoder lets pass.
func (r *reader) repeatedAttribute(t *tag) bool {
	const few = 16              // for which looking is faster than a table
	var seen map[[2]string]bool // those after the first few
	for n, a := range t.attrs {
		twice := n >= few && seen[[2]string{a.space, a.name}]
		for _, b := range t.attrs[:min(n, few)] {
			twice = twice || a.name == b.name && a.space == b.space
		}
		if twice {
			r.stop(a.span(), "An attribute stands twice in one tag: "+clip(a.name), "the second", "", "Delete one of them.")
			return true
		}
		if n >= few {
			if seen == nil {
				seen = map[[2]string]bool{}
			}
			seen[[2]string{a.space, a.name}] = true
		}
	}
	return false
}

// own says whether an element is SVG's: some programs leave the namespace out.
func (t *tag) own() bool { return t.space == svgSpace || t.space == "" }

// inside handles an element below the root.
func (r *reader) inside(t *tag, f, parent *frame) {
	f.mode, f.style, f.m = parent.mode, parent.style, parent.m
	if parent.mode == ignored || parent.mode == titles || parent.mode == rules {
		f.mode = ignored
		return
	}
	if r.dangerous(t) {
		f.mode = ignored
		return
	}
	switch {
	case !t.own():
		f.mode = unseen
	case t.name == "style":
		f.mode, f.title = rules, &title{}
	case parent.mode == drawn:
		r.element(t, f)
	case parent.mode == lettered:
		r.inText(t, f)
	}
}

// dangerous looks for what runs or loads something. It is true if the element
// itself must not be looked at further.
func (r *reader) dangerous(t *tag) bool {
	if activeElements[t.name] && (t.own() || t.space == xhtmlSpace) {
		r.active(t.span(), "A <"+t.name+">", "it was left out")
		return true
	}
	if !t.own() {
		return false
	}
	leave := false
	for _, a := range t.attrs {
		switch {
		case a.space == "" && len(a.name) > 2 && strings.EqualFold(a.name[:2], "on"):
			r.active(a.span(), "A script in an attribute ("+clip(a.name)+")", "the shape was kept without it")
		case leadsOut(t, a):
			r.active(a.span(), "An address outside the file", "what it leads to was left out")
			leave = leave || t.name != "a" && t.name != "linearGradient" && t.name != "radialGradient"
		case a.space == "" && urlLeadsOut(a.value) && (a.name == "style" || isProperty(a.name)):
			r.active(a.span(), "An address outside the file", "what it leads to was left out")
		}
	}
	return leave
}

// leadsOut says whether an attribute is a reference that leaves the file. A
// picture held in the file itself does not.
func leadsOut(t *tag, a attr) bool {
	linked := a.space == "" || a.space == xlinkSpace || a.space == "xlink"
	if !linked || a.name != "href" && a.name != "src" {
		return false
	}
	v := strings.ToLower(strings.TrimSpace(a.value))
	inside := v == "" || strings.HasPrefix(v, "#") || t.name == "image" && strings.HasPrefix(v, "data:image/")
	return !inside
}

// urlLeadsOut says whether a url(…) in a style leaves the file.
func urlLeadsOut(v string) bool {
	if strings.IndexByte(v, '(') < 0 && strings.IndexByte(v, '@') < 0 {
		return false
	}
	v = strings.ToLower(v)
	for {
		_, after, ok := strings.Cut(v, "url(")
		if !ok {
			return strings.Contains(v, "@import")
		}
		if target := strings.TrimLeft(after, " \t\r\n\f'\""); !strings.HasPrefix(target, "#") {
			return true
		}
		v = after
	}
}

// element handles one of SVG's elements where things are drawn.
func (r *reader) element(t *tag, f *frame) {
	switch key := elementFeature[t.name]; {
	case t.name == "defs" || t.name == "metadata":
		f.mode = unseen
	case t.name == "title" || t.name == "desc":
		r.titleElement(t, f)
	case key != "":
		f.mode = unseen
		r.feature(key, t.span())
	case t.name == "a":
		r.link(t)
		r.placed(t, f)
	case t.name == "g":
		r.placed(t, f)
	case t.name == "text":
		r.textElement(t, f)
	case shapeReader(t.name) != nil:
		r.shape(t, f)
		f.mode = unseen
	default:
		f.mode = unseen
		r.unknownElement(t)
	}
}

// link notes a link, unless it leads out of the file and is reported for that.
func (r *reader) link(t *tag) {
	for _, a := range t.attrs {
		if leadsOut(t, a) {
			return
		}
	}
	r.feature("link", t.span())
}

// placed applies style and transform; it is false if nothing of it is seen.
func (r *reader) placed(t *tag, f *frame) bool {
	if !r.restyle(&f.style, t) {
		f.mode = unseen
	}
	if a, ok := t.attr("transform"); ok {
		m, bad := parseTransform(a.value)
		if bad != nil {
			r.badValue(a, bad, "what it moves was left out")
			f.mode = unseen
		}
		f.m = f.m.then(m)
	}
	switch det := f.m.det(); {
	case det == 0: // SVG 2, 8.5: what cannot be turned back is not shown
		f.mode = unseen
	case f.mode != unseen && (!f.m.finite() || math.IsInf(det, 0)):
		r.tooFar(t.span())
		f.mode = unseen
	}
	return f.mode != unseen
}

// titleElement keeps the first title and description of the whole drawing.
func (r *reader) titleElement(t *tag, f *frame) {
	f.mode = ignored
	to := &r.out.Title
	if t.name == "desc" {
		to = &r.out.Desc
	}
	if len(r.stack) == 2 && *to == "" {
		f.mode, f.title = titles, &title{to: to}
	}
}

// styleRules looks at the text of a <style> element when it ends.
func (r *reader) styleRules(f *frame) {
	switch body := f.title.String(); {
	case urlLeadsOut(body):
		r.active(r.text.span(f.from, f.to), "A style that loads something from outside", "it was left out")
	case strings.TrimSpace(blankComments(body)) != "":
		r.feature("rules", r.text.span(f.from, f.to))
	}
}

// shape reads a path or one of the basic shapes.
func (r *reader) shape(t *tag, f *frame) {
	if !r.placed(t, f) {
		return
	}
	commands, ok := shapeReader(t.name)(r, t, f)
	if !ok || r.stopped || f.style.hidden {
		return
	}
	if p := r.path(t, f, commands); p != nil {
		r.emit(p, t)
	}
}

// path makes the final path of commands in user units; nil if it cannot be seen.
func (r *reader) path(t *tag, f *frame, commands []Command) *Path {
	st := &f.style
	p := &Path{Fill: st.fill, Stroke: st.stroke, Cap: "butt", Join: "miter"}
	if st.fillUnseen || t.name == "line" {
		p.Fill = noPaint
	}
	p.EvenOdd = st.evenOdd && !p.Fill.None
	if st.strokeUnseen || st.width == 0 {
		p.Stroke = noPaint
	}
	if !p.Stroke.None {
		r.pen(t, f, p)
	}
	if p.Fill.None && p.Stroke.None || !draws(commands) {
		return nil
	}
	if !place(commands, f.m) || !(p.Width <= farthest) {
		r.tooFar(t.span())
		return nil
	}
	p.Commands = commands
	return p
}

// pen gives a path the stroke of its style. A width never rounds to nothing.
func (r *reader) pen(t *tag, f *frame, p *Path) {
	st, scale := &f.style, f.m.size()
	p.Width = max(0.001, round(st.width*scale))
	p.Dash, p.DashStart = dashes(st.dash, st.dashStart, scale)
	p.Cap, p.Join = st.cap, st.join
	if p.Join == "miter" && st.mitre != 4 {
		r.feature("mitre", t.span())
	}
}

func (r *reader) tooFar(at finding.Span) {
	r.unreadable(at, "A shape lies too far out to be drawn", "left out",
		"A figure reaches at most ten million units.", "Look for a slip in its numbers or in a transform around it.")
}

// draws says whether commands leave any mark.
func draws(commands []Command) bool {
	for _, c := range commands {
		if c.Op != 'M' {
			return true
		}
	}
	return false
}

// place moves commands to drawing units and rounds them; false if one lies too
// far out or is no number.
func place(commands []Command, m matrix) bool {
	for i := range commands {
		c := &commands[i]
		for k := range c.Points[:points(c.Op)] {
			p := m.apply(c.Points[k])
			if !(math.Abs(p.X) <= farthest && math.Abs(p.Y) <= farthest) {
				return false
			}
			c.Points[k] = Point{round(p.X), round(p.Y)}
		}
	}
	return true
}

// points is how many points a command has.
func points(op byte) int {
	switch op {
	case 'M', 'L':
		return 1
	case 'C':
		return 3
	}
	return 0
}
