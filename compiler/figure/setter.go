package figure

// setter gives what reads a property that a Drawing can hold; nil for any other. The
// word is the value in lower case without white space around it.
func setter(name string) func(r *reader, st *style, a attr, word string) {
	switch name {
	case "fill":
		return func(r *reader, st *style, a attr, w string) { r.paint(&st.fill, a, w) }
	case "stroke":
		return func(r *reader, st *style, a attr, w string) { r.paint(&st.stroke, a, w) }
	case "fill-rule":
		return func(r *reader, st *style, a attr, w string) {
			st.evenOdd = r.oneOf(a, w, "nonzero", "evenodd") == "evenodd"
		}
	case "opacity":
		return func(r *reader, _ *style, a attr, w string) { r.opacity(new(bool), a, w) }
	case "fill-opacity":
		return func(r *reader, st *style, a attr, w string) { r.opacity(&st.fillUnseen, a, w) }
	case "visibility":
		return func(r *reader, st *style, a attr, w string) {
			st.hidden = r.oneOf(a, w, "visible", "hidden", "collapse") != "visible"
		}
	case "display":
		return func(*reader, *style, attr, string) {}
	}
	if set := strokeSetter(name); set != nil {
		return set
	}
	return typeSetter(name)
}

// strokeSetter is setter for how a line is drawn.
func strokeSetter(name string) func(r *reader, st *style, a attr, word string) {
	switch name {
	case "stroke-width":
		return func(r *reader, st *style, a attr, w string) { r.length(&st.width, st, a, w, both) }
	case "stroke-dasharray":
		return func(r *reader, st *style, a attr, w string) { r.dashList(st, a, w) }
	case "stroke-dashoffset":
		return func(r *reader, st *style, a attr, w string) { r.signedLength(&st.dashStart, st, a, w, both) }
	case "stroke-linecap":
		return func(r *reader, st *style, a attr, w string) {
			st.cap = r.oneOf(a, w, "butt", "round", "square")
		}
	case "stroke-linejoin":
		return func(r *reader, st *style, a attr, w string) {
			st.join = r.oneOf(a, w, "miter", "round", "bevel")
		}
	case "stroke-miterlimit":
		return func(r *reader, st *style, a attr, w string) { r.length(&st.mitre, st, a, w, none) }
	case "stroke-opacity":
		return func(r *reader, st *style, a attr, w string) { r.opacity(&st.strokeUnseen, a, w) }
	}
	return nil
}

// typeSetter is setter for how words are set.
func typeSetter(name string) func(r *reader, st *style, a attr, word string) {
	switch name {
	case "text-anchor":
		return func(r *reader, st *style, a attr, w string) {
			st.anchor = r.oneOf(a, w, "start", "middle", "end")
		}
	case "font-size":
		return func(r *reader, st *style, a attr, w string) { r.fontSize(st, a, w) }
	case "font-weight":
		return func(r *reader, st *style, a attr, w string) { r.fontWeight(st, a, w) }
	case "font-style":
		return func(r *reader, st *style, a attr, w string) {
			st.italic = r.oneOf(a, w, "normal", "italic", "oblique") != "normal"
		}
	}
	return nil
}
