package check

import (
	"fmt"
	"slices"
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/compiler/outline"
	"seamwarden/dsl/finding"
)

// edgesOf is a piece of which it is said that its edges are not those of its drawing:
// then nobody knows which ends of its seams meet.
type edgesOf struct{ *model.Piece }

func edgesDiffer(r *run) {
	var all drawings
	defer func() { all.report(r) }()
	r.eachDrawn(func(p *model.Piece, d *model.Drawn, where condition.Cond) {
		if len(p.Edges) == 0 {
			return
		}
		if unnamed(d) {
			r.out = append(r.out, unchecked(model.Unchecked{What: "the edges of " + the(p.Name) + ", which its drawing does not name", Span: d.File.Span}))
			return
		}
		bad, first := r.inOutline(d, func(o *outline.Outline) bool { return r.differs(p, o) != "" })
		if bad = r.Space.And(bad, where); r.possible(bad) {
			f := at(d.File.Span, "this drawing", "", "")
			r.wordDifference(&f, p, first)
			r.tell(d, bad)
			r.tell(edgesOf{p}, bad)
			all.add(r, bad, f)
		}
	})
}

// unnamed reports whether no edge of a drawing has a name, as in most DXF files.
func unnamed(d *model.Drawn) bool {
	for _, s := range d.Art.Sizes {
		for _, e := range s.Edges {
			if e.Name != "" {
				return false
			}
		}
	}
	return true
}

// lacks lists the drawn edges that the piece does not name, and those of the piece that
// are not drawn; an edge that only some garments have need not be.
func (r *run) lacks(p *model.Piece, o *outline.Outline) (unknown []*outline.Edge, undrawn []*model.Edge) {
	for _, e := range o.Edges {
		if p.Edge(e.Name) == nil {
			unknown = append(unknown, e)
		}
	}
	for _, e := range p.Edges {
		if o.Edge(e.ID) == nil && !r.possible(r.Space.Diff(p.Cond, e.Cond)) {
			undrawn = append(undrawn, e)
		}
	}
	return
}

// differs says how the edges of a drawing differ from those of the piece: "names",
// "order" or "way round", "" if they agree.
func (r *run) differs(p *model.Piece, o *outline.Outline) string {
	if unknown, undrawn := r.lacks(p, o); len(unknown)+len(undrawn) > 0 {
		return "names"
	}
	var drawn, named []string
	for _, e := range o.Edges {
		drawn = append(drawn, e.Name)
	}
	for _, e := range p.Edges {
		if o.Edge(e.ID) != nil {
			named = append(named, e.ID)
		}
	}
	if roundAbout(drawn, named) {
		return ""
	}
	slices.Reverse(drawn)
	if roundAbout(drawn, named) {
		return "way round"
	}
	return "order"
}

// roundAbout reports whether two lists are the same ring, wherever each begins.
func roundAbout(a, b []string) bool {
	if len(a) != len(b) {
		return false
	}
	for k := range a {
		if slices.Equal(append(slices.Clone(a[k:]), a[:k]...), b) {
			return true
		}
	}
	return len(a) == 0
}

func (r *run) wordDifference(f *finding.Finding, p *model.Piece, o *outline.Outline) {
	unknown, undrawn := r.lacks(p, o)
	var names, missing, drawn []string
	for _, e := range unknown {
		names = append(names, "“"+e.Name+"”")
	}
	for _, e := range undrawn {
		missing = append(missing, "“"+e.ID+"”")
	}
	for _, e := range o.Edges {
		drawn = append(drawn, e.Name)
	}
	head := "The drawing of " + the(p.Name)
	if len(unknown) > 0 {
		*f = also(*f, unknown[0].Span, "this one")
	}
	switch how := r.differs(p, o); {
	case len(unknown) > 0 && len(undrawn) > 0:
		f.Headline = fmt.Sprintf("%s has %s where the piece has %s.", head, listed(names), listed(missing))
		f.Help = "Call the edge the same in both places: the id of its path is its name."
	case len(unknown) > 0:
		f.Headline = fmt.Sprintf("%s has %s, which the `edges` of the piece do not name.", head, listed(names))
		f.Help = "Add it to `edges`; if it is a line inside the piece, give it an id such as \"mark-" + unknown[0].Name + "\", and no id if it is decoration."
	case how == "names":
		f.Headline = fmt.Sprintf("%s has no edge %s.", head, listed(missing))
		f.Help = "Give the path an id of that name, or mark the corner at which it begins."
	case how == "way round":
		f.Headline = head + " runs the other way round than its `edges`."
		f.Help = "Clockwise it has: " + strings.Join(drawn, ", ") + "." + r.exchanged(p, o) + " Either the list of edges runs the wrong way, or the piece is drawn as its mirror image."
	default:
		f.Headline = head + " has its edges in another order than the piece."
		f.Help = "Clockwise it has: " + strings.Join(drawn, ", ") + "." + r.exchanged(p, o)
	}
}

// exchanged says which two edges of a drawing, if they took each other's names, would
// make it right; "" if several pairs would, or none.
func (r *run) exchanged(p *model.Piece, o *outline.Outline) string {
	say := ""
	for i, a := range o.Edges {
		for _, b := range o.Edges[:i] {
			a.Name, b.Name = b.Name, a.Name
			if r.differs(p, o) == "" {
				if say != "" {
					say = "-"
				} else {
					say = fmt.Sprintf(" It would be right if “%s” and “%s” took each other's names.", a.Name, b.Name)
				}
			}
			a.Name, b.Name = b.Name, a.Name
		}
	}
	return strings.TrimPrefix(say, "-")
}
