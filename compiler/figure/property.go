package figure

import (
	"slices"
	"strings"
	"sync"
)

// unsupportedProperties says for each property that changes what is seen, but
// that a Drawing cannot hold, which thing it is; harmlessValues do nothing.
var unsupportedProperties = map[string]string{
	"filter": "filter", "mask": "mask", "clip-path": "clip", "clip": "clip",
	"marker": "arrowhead", "marker-start": "arrowhead", "marker-mid": "arrowhead", "marker-end": "arrowhead",
	"vector-effect": "fixed", "paint-order": "blend", "mix-blend-mode": "blend",
	"letter-spacing": "spacing", "word-spacing": "spacing", "text-decoration": "spacing", "text-decoration-line": "spacing",
	"writing-mode": "spacing", "glyph-orientation-vertical": "spacing", "text-transform": "spacing", "font-variant": "spacing",
	"dominant-baseline": "baseline", "alignment-baseline": "baseline", "baseline-shift": "baseline",
	"animation": "movement", "animation-name": "movement", "transition": "movement", "offset-path": "movement",
}

var harmlessValues = []string{"none", "normal", "auto", "0", "0px", "baseline", "alphabetic", "lr-tb", "lr", "horizontal-tb", "fill", "initial"}

// harmlessProperties change nothing that a Drawing could show: hints for a
// screen, the typeface (the booklet has its own), and lengths of lines.
var harmlessProperties = sync.OnceValue(func() map[string]bool {
	return set(`color font-family font-stretch font-size-adjust font-kerning font-variant-ligatures
	font-variant-caps font-variant-numeric font-variant-alternates font-variant-position font-variant-east-asian
	font-feature-settings font-variation-settings line-height text-align text-indent white-space direction unicode-bidi
	clip-rule color-interpolation color-interpolation-filters color-rendering image-rendering shape-rendering
	text-rendering enable-background overflow overflow-x overflow-y cursor pointer-events isolation solid-color
	solid-opacity stop-color stop-opacity flood-color flood-opacity lighting-color text-orientation
	text-decoration-color text-decoration-style shape-padding shape-margin inline-size text-overflow
	transform-origin transform-box user-select will-change`)
})

// isGeometry says whether a property is read as an attribute only.
func isGeometry(name string) bool {
	switch name {
	case "transform", "d", "x", "y", "width", "height", "cx", "cy", "r", "rx", "ry":
		return true
	}
	return false
}

// pageProperties say how an svg element lies on a page, which is not the
// drawing's business.
var pageProperties = sync.OnceValue(func() map[string]bool {
	return set("width height max-width max-height min-width min-height margin padding border background background-color position top left")
})

func set(names string) map[string]bool {
	m := map[string]bool{}
	for _, n := range strings.Fields(names) {
		m[n] = true
	}
	return m
}

// isProperty says whether an attribute of this name is a setting of the style.
func isProperty(name string) bool {
	return setter(name) != nil || unsupportedProperties[name] != ""
}

// property applies one declaration.
func (r *reader) property(st *style, a attr, word string) {
	set, key := setter(a.name), unsupportedProperties[a.name]
	switch {
	case set != nil:
		set(r, st, a, word)
	case key != "":
		if !slices.Contains(harmlessValues, word) && !urlLeadsOut(word) { // that is reported already
			r.feature(key, a.span())
		}
	case isGeometry(a.name):
		if word != "none" && word != "auto" {
			r.feature("moved-run", a.span())
		}
	case !harmlessProperties()[a.name]:
		r.unknownProperty(a)
	}
}

// paint reads fill or stroke. Instead of a gradient its fallback is taken, or
// nothing.
func (r *reader) paint(p *Paint, a attr, word string) {
	if strings.HasPrefix(word, "url(") {
		if !urlLeadsOut(word) {
			r.feature("gradient", a.span())
		}
		*p = noPaint
		if end := strings.IndexByte(word, ')'); end >= 0 {
			if c, ok := parseColour(strings.TrimSpace(word[end+1:])); ok {
				*p = c
			}
		}
		return
	}
	c, ok := parseColour(word)
	if !ok {
		r.unknownColour(a)
	}
	*p = c
}

// oneOf gives the word if it is one of the choices, else the first choice and a
// finding.
func (r *reader) oneOf(a attr, word string, choices ...string) string {
	if slices.Contains(choices, word) {
		return word
	}
	r.badValue(a, &fault{0, "it is one of " + strings.Join(choices, ", ")}, "taken as "+choices[0])
	return choices[0]
}

// negative is the fault of a length below nothing.
var negative = &fault{0, "it cannot be negative"}

// signedLength reads a length of a property into dst.
func (r *reader) signedLength(dst *float64, st *style, a attr, word string, ax axis) {
	n, bad := parseLength(word, ax, r.measures(st))
	if bad != nil {
		r.badValue(a, bad, "not used")
		return
	}
	*dst = n
}

// length is signedLength for what cannot be negative.
func (r *reader) length(dst *float64, st *style, a attr, word string, ax axis) {
	n := *dst
	if r.signedLength(&n, st, a, word, ax); n < 0 {
		r.badValue(a, negative, "not used")
		return
	}
	*dst = n
}

func (r *reader) dashList(st *style, a attr, word string) {
	st.dash = nil
	if word == "none" {
		return
	}
	list := strings.FieldsFunc(word, func(c rune) bool { return strings.ContainsRune(", \t\r\n\f", c) })
	if len(list) > mostDashes {
		r.badValue(a, &fault{0, "a dash list has at most 32 lengths"}, "drawn solid")
		return
	}
	dash := make([]float64, len(list))
	for i, v := range list {
		n, bad := parseLength(v, both, r.measures(st))
		if bad == nil && n < 0 {
			bad = negative
		}
		if bad != nil {
			r.badValue(a, &fault{0, bad.say}, "drawn solid")
			return
		}
		dash[i] = n
	}
	st.dash = dash
}

func (r *reader) fontSize(st *style, a attr, word string) {
	if word == "medium" {
		word = "16px"
	}
	n, bad := parseLength(word, across, measures{font: st.size, width: st.size}) // % and em of the size around it
	if bad == nil && n < 0 {
		bad = negative
	}
	if bad != nil {
		r.badValue(a, bad, "not used")
		return
	}
	st.size = n
}

func (r *reader) fontWeight(st *style, a attr, word string) {
	switch word {
	case "bold", "bolder", "600", "700", "800", "900":
		st.bold = true
	case "normal", "lighter", "100", "200", "300", "400", "500":
		st.bold = false
	default:
		r.badValue(a, &fault{0, "it is normal, bold or a hundred from 100 to 900"}, "not used")
	}
}

// opacity notes a colour that shows what lies under it; one that cannot be seen
// at all is not drawn.
func (r *reader) opacity(unseen *bool, a attr, word string) {
	scale := 1.
	if n, ok := strings.CutSuffix(word, "%"); ok {
		word, scale = n, 100
	}
	n, bad := parseLength(word, none, measures{})
	if bad != nil {
		r.badValue(a, bad, "drawn solid")
		return
	}
	*unseen = n <= 0
	if n > 0 && n < scale {
		r.feature("sheen", a.span())
	}
}
