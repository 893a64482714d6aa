package figure

import "strings"

// root reads the outermost element: the size and the view box of the drawing.
func (r *reader) root(t *tag, f *frame) {
	switch {
	case r.finished:
		r.stop(t.span(), "There is a second drawing after the first has ended", "a second root", "", "Keep one <svg> in a file.")
		return
	case t.name != "svg" || !t.own():
		r.stop(t.span(), "There is no <svg> at the top of the figure file", "this is <"+clip(t.name)+">", "", "Save the drawing as SVG.")
		return
	}
	r.out = &Drawing{}
	if r.visit != nil {
		r.visited(t)
		return
	}
	r.dangerous(t)
	width, height, ok := r.printedSize(t)
	if !ok {
		return
	}
	left, top, ok := r.viewBox(t, width, height)
	if !ok {
		return
	}
	f.style = firstStyle()
	f.mode = drawn
	if _, moved := t.attr("transform"); moved {
		r.feature("moved-run", t.span())
	}
	if !r.restyle(&f.style, t) {
		f.mode = unseen
	}
	k := enlargement(max(r.box.width, r.box.height))
	f.m = scaling(k, k).then(translation(-left, -top))
	r.out.Width, r.out.Height = round(r.box.width*k), round(r.box.height*k)
	r.naturalWidth(t, width, height)
}

// printedSize reads width and height in pixels; 0 is "not said".
func (r *reader) printedSize(t *tag) (width, height float64, ok bool) {
	sizes := [2]float64{}
	for i, name := range [...]string{"width", "height"} {
		a, there := t.attr(name)
		v := strings.TrimSpace(a.value)
		if !there || relative(v) {
			continue
		}
		n, bad := parseLength(v, none, measures{})
		if bad == nil && (n <= 0 || n > farthest) {
			bad = &fault{0, "it must be more than nothing and at most ten million"}
		}
		if bad != nil {
			r.badValue(a, bad, "no drawing without it")
			r.stopped = true
			return 0, 0, false
		}
		sizes[i] = n
	}
	return sizes[0], sizes[1], true
}

// relative reports whether a size of the root depends on what is outside the file.
func relative(v string) bool {
	v = strings.TrimSpace(v)
	return v == "auto" || v == "" || strings.HasSuffix(v, "%") || strings.HasSuffix(v, "em")
}

// viewBox reads the view box, or makes one from the size.
func (r *reader) viewBox(t *tag, width, height float64) (left, top float64, ok bool) {
	a, there := t.attr("viewBox")
	if !there {
		if width == 0 || height == 0 {
			r.stop(t.span(), "The figure does not say how large it is", "neither viewBox nor width and height",
				"", "Give <svg> a viewBox, such as viewBox=\"0 0 200 150\".")
			return 0, 0, false
		}
		r.box.width, r.box.height = width, height
		return 0, 0, r.proportioned(t)
	}
	v, bad := parseList(a.value)
	if bad == nil && len(v) != 4 {
		bad = &fault{max(0, len(a.value)-1), "it is four numbers: left, top, width and height"}
	}
	if bad == nil && !(smallest <= min(v[2], v[3]) && max(v[2], v[3]) <= farthest) {
		bad = &fault{0, "its width and height must be more than nothing and at most ten million"}
	}
	if bad != nil {
		r.badValue(a, bad, "no drawing without it")
		r.stopped = true
		return 0, 0, false
	}
	r.box.width, r.box.height = v[2], v[3]
	return v[0], v[1], r.proportioned(t)
}

// proportioned refuses a strip so narrow that rounding would leave nothing.
func (r *reader) proportioned(t *tag) bool {
	w, h := r.box.width, r.box.height
	if min(w, h) >= smallest && max(w, h) <= 1e4*min(w, h) {
		return true
	}
	r.stop(t.span(), "The figure is too narrow to be drawn", "width and height differ by more than ten thousand times", "", "Give <svg> a sensible viewBox.")
	return false
}

// smallest is the least width or height of a view box.
const smallest = 1e-6

// enlargement is the power of ten that brings a size to 100 or more.
func enlargement(size float64) float64 {
	k := 1.
	for size*k < 100 {
		k *= 10
	}
	return k
}

// naturalWidth works out how wide the drawing is printed. Inside width and
// height it is as large as fits, in proportion (SVG 1.1, 7.8, "meet").
func (r *reader) naturalWidth(t *tag, width, height float64) {
	scale := width / r.box.width
	if other := height / r.box.height; height > 0 && (width == 0 || other < scale) {
		scale = other
	}
	wide := r.box.width * scale
	if wide > farthest {
		r.unreadable(t.span(), "The height of the figure makes it wider than any paper", "printed width not used", "", "Give <svg> a sensible width.")
		wide = 0
	}
	r.out.NaturalWidth = round(wide * millimetresPerPixel)
	a, there := t.attr("preserveAspectRatio")
	stretched := there && (strings.Contains(a.value, "none") || strings.Contains(a.value, "slice"))
	if stretched && width > 0 && height > 0 && differ(width/r.box.width, height/r.box.height) {
		r.feature("fit", a.span())
	}
}

func differ(a, b float64) bool { return a/b < 0.999 || a/b > 1.001 }
