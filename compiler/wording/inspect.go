package wording

import (
	"fmt"
	"slices"
	"strings"

	"seamwarden/compiler/assembly"
	"seamwarden/compiler/check"
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// Inspection is a snapshot in words: a heading, and parts with a title and lines.
type Inspection struct {
	Heading string
	Garment string // the choices that were made; "" where there are none
	Parts   []InspectionPart
}

// InspectionPart is a titled list. A line that begins with two spaces belongs to
// the line above it.
type InspectionPart struct {
	Title string
	Lines []string
}

// Inspect words what is in the hands of a maker of one garment. numbers gives the
// steps their numbers; sources adds to each line the names that the pattern uses.
// The error says that the pattern's language has no phrases.
func Inspect(p *model.Pattern, garment condition.Assignment, s assembly.Snapshot, numbers map[*model.Step]int, sources bool) (*Inspection, error) {
	ph, err := load(p.Lang)
	if err != nil {
		return nil, err
	}
	w := &inspector{writer: &writer{Pattern: p, chosen: garment, ph: ph, names: check.Names(p), numbers: numbers}, sources: sources}
	w.valid = p.Space.Given(p.Valid, garment)
	out := &Inspection{Heading: put(w.say("before"), "p", p.Title), Garment: upper(p.Space.WordsFor(garment, w.names, true))}
	if s.Step != nil {
		out.Heading = put(put(put(w.say("after"), "n", fmt.Sprint(numbers[s.Step])), "p", p.Title), "t", s.Step.Title.Text)
	}
	add := func(title string, lines []string) {
		if len(lines) > 0 {
			out.Parts = append(out.Parts, InspectionPart{w.say(title), lines})
		}
	}
	for _, separate := range []bool{false, true} {
		for _, a := range s.Assemblies {
			if a.Separate == separate {
				add(map[bool]string{false: "hands", true: "separate"}[separate], w.assembly(a))
			}
		}
	}
	add("loose", w.loose(s.Loose))
	add("unfused", w.loose(s.Unfused))
	add("openings", w.openings(s.Openings))
	add("started", w.lines(s.Started))
	add("unpressed", w.waiting(s.Unpressed))
	add("unfinished", w.waiting(s.Unfinished))
	add("stock", w.stock(s.Stock))
	return out, nil
}

// inspector words snapshots.
type inspector struct {
	*writer
	sources bool
}

func (w *inspector) say(key string) string { return w.ph.Inspect[key] }

// with adds the names of the source to a line, if they are asked for.
func (w *inspector) with(line string, names []string) string {
	if !w.sources || len(names) == 0 {
		return line
	}
	return line + " [" + strings.Join(names, ", ") + "]"
}

// and joins words: "a, b and c".
func (w *inspector) and(list []string) string {
	if len(list) < 2 {
		return strings.Join(list, "")
	}
	return strings.Join(list[:len(list)-1], ", ") + " " + w.ph.Things["and"] + " " + list[len(list)-1]
}

// assembly words what hangs together, and under it the open edges.
func (w *inspector) assembly(a assembly.Assembly) []string {
	lines := []string{w.with(w.and(w.parts(a.Parts)), pathsOf(a.Parts))}
	var open []assembly.Round
	var rest []assembly.OpenEdge
	for _, r := range a.Rounds {
		waits := false
		for _, e := range r.Edges {
			waits = waits || e.Rim.Open()
		}
		if waits {
			open = append(open, r)
		} else {
			rest = append(rest, r.Edges...)
		}
	}
	for n, r := range open {
		indent := "  "
		if len(open) > 1 {
			lines = append(lines, "  "+put(w.say("round"), "n", fmt.Sprint(n+1)))
			indent = "    "
		}
		lines = append(lines, w.edges(r.Edges, indent)...)
	}
	return append(lines, w.edges(rest, "  ")...)
}

// rims are the kinds of rim in the order in which they are told, with their words.
var rims = []struct {
	rim  assembly.Rim
	word string
}{{assembly.Raw, "raw"}, {assembly.FinishedRim, "finished"}, {assembly.PressedRim, "pressed"}, {assembly.HemmedRim, "hemmed"},
	{assembly.BoundRim, "bound"}, {assembly.StitchedRim, "stitched"}, {assembly.LeftRaw, "left-raw"}}

// edges words open edges, those with one kind of rim in one line.
func (w *inspector) edges(list []assembly.OpenEdge, indent string) (lines []string) {
	for _, r := range rims {
		var like []assembly.OpenEdge
		var names []string
		for _, e := range list {
			if e.Rim == r.rim {
				like, names = append(like, e), append(names, sourceOf(e))
			}
		}
		if len(like) > 0 {
			lines = append(lines, w.with(indent+w.say(r.word)+": "+w.openEdges(like), names))
		}
	}
	return
}

// sourceOf names an open edge as the pattern would.
func sourceOf(e assembly.OpenEdge) string {
	if e.From == "" {
		return e.Path()
	}
	return e.Path() + " from " + e.From + " to " + e.To
}

// openEdges words edges. Those of one name stand together, and so do those of the
// same parts: "the waist edges of the back and both side panels".
func (w *inspector) openEdges(list []assembly.OpenEdge) string {
	var all []string
	for _, g := range merged(grouped(list)) {
		all = append(all, w.sameEdges(g))
	}
	return strings.Join(all, "; ")
}

// alikeEdges are edges of one name, or of several names on the same parts.
type alikeEdges struct {
	names    []string
	from, to string
	edges    []assembly.OpenEdge // those of the first name
}

// grouped puts edges of one name together. The two sides of the body run opposite
// ways, so that a stretch is told from either end.
func grouped(list []assembly.OpenEdge) (all []*alikeEdges) {
	at := map[[3]string]*alikeEdges{}
	for _, e := range list {
		k := [3]string{e.Edge.Name, min(e.From, e.To), max(e.From, e.To)}
		if at[k] == nil {
			at[k] = &alikeEdges{names: []string{e.Edge.Name}, from: e.From, to: e.To}
			all = append(all, at[k])
		}
		at[k].edges = append(at[k].edges, e)
	}
	return
}

// merged puts together whole edges of the same parts.
func merged(list []*alikeEdges) (all []*alikeEdges) {
	at := map[string]*alikeEdges{}
	for _, g := range list {
		k := ""
		for _, e := range g.edges {
			k += fmt.Sprint(e.Instance.ID, e.Side, " ")
		}
		if m := at[k]; m != nil && g.from == "" {
			m.names = append(m.names, g.names...)
			continue
		}
		if g.from == "" {
			at[k] = g
		}
		all = append(all, g)
	}
	return
}

// sameEdges words edges that stand together.
func (w *inspector) sameEdges(g *alikeEdges) string {
	var parts []*model.Instance
	for _, e := range g.edges {
		if !slices.Contains(parts, e.Instance) {
			parts = append(parts, e.Instance)
		}
	}
	of := w.and(w.parts(parts))
	var out string
	switch first := g.edges[0]; {
	case len(g.names) > 1:
		key := "edges"
		if endsIn(g.names[len(g.names)-1], w.ph.EdgeWords) {
			key = "edges-own"
		}
		out = put(put(w.ph.Things[key], "names", w.and(g.names)), "pieces", of)
	case len(g.edges) > 1:
		out = "the " + w.plural(edgeName(g.names[0], w.ph)) + " of " + of
	default:
		out = w.edge(g.names[0], of, false)
		if first.Side != first.Instance.Side { // one half of a part cut on the fold
			out = put(w.ph.Things["piece-"+first.Side.String()], "name", strings.TrimPrefix(out, "the "))
		}
	}
	if g.from != "" {
		out = put(put(put(w.say("stretch"), "edge", out), "from", w.spoken(g.from)), "to", w.spoken(g.to))
	}
	return out
}

// spoken words a name of the source.
func (w *inspector) spoken(name string) string {
	return put(w.ph.Things["line"], "name", strings.ReplaceAll(name, "-", " "))
}
