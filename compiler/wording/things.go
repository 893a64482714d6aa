package wording

import (
	"strings"

	"seamwarden/compiler/booklet"
	"seamwarden/compiler/model"
)

// thing words what a reference leads to. plural asks for both of a pair in one
// sentence; else a pair is spoken of as one, and the step says to repeat.
func (w *writer) thing(t *model.Target, plural bool) string {
	th := w.ph.Things
	switch t.Kind {
	case model.ToSeam:
		name := w.seamIn(t, w.seam(t.Seam, plural && twofold(t)))
		if t.Side != model.Neither {
			return put(th["piece-"+t.Side.String()], "name", strings.TrimPrefix(name, "the "))
		}
		return name
	case model.ToPiece:
		return w.piece(t, plural)
	case model.ToEdge:
		if plural && t.Edge.Twice(t) && !paired(t) {
			return put(th["both"], "names", w.plural(edgeName(t.Edge.Name, w.ph))+" of "+w.piece(t, false))
		}
		return w.edge(t.Edge.Name, strings.TrimPrefix(w.piece(t, plural), "the "), plural && paired(t))
	case model.ToMark:
		name := w.markName(t.Mark)
		if isFoldLine(t.Mark) {
			return put(th["line"], "name", name)
		}
		if endsIn(t.Mark.Name, w.ph.MarkWords) {
			return put(th["line"], "name", name)
		}
		return put(th["mark"], "name", name)
	case model.ToNotion:
		name := lower(short(t.Notion.Name))
		if t.NotionBit != "" {
			key := "half"
			if !t.Notion.Set {
				key = "half-side"
			}
			return put(put(th[key], "half", strings.ReplaceAll(t.NotionBit, "-", " ")), "name", name)
		}
		return "the " + name
	case model.ToBit:
		return "the " + lower(t.Bit.Name)
	case model.ToPart:
		return "the " + lower(t.Part.Name)
	case model.ToPartEdge:
		return w.edge(t.PartEdge.Name, lower(t.Part.Name), false)
	case model.ToShaping:
		if x := t.Shaping; plural && (x.In.Kind == model.ToEdge && onFold(x.In) || paired(x.In)) {
			return put(w.ph.Things["both"], "names", w.plural(x.Name))
		}
		return "the " + t.Shaping.Name
	case model.ToMaterial:
		return "the " + lower(t.Material.Name)
	case model.ToGap:
		return put(th["gap"], "name", t.Gap.Name)
	case model.ToSide:
		return th["side-"+t.Side.String()]
	case model.ToAlternative:
		for _, a := range t.Alt {
			if w.there(a.Cond) {
				return w.thing(a, plural)
			}
		}
	}
	return t.Path
}

func put(phrase, name, value string) string {
	return strings.ReplaceAll(phrase, "{"+name+"}", value)
}

// short leaves the size out of a notion's name: "Button, 3/4 in" is a button.
func short(name string) string {
	if i := strings.IndexByte(name, ','); i > 0 {
		return name[:i]
	}
	return name
}

// markName is the name of a mark, in the plural where a piece has several of it.
func (w *writer) markName(m *model.Mark) string {
	if m.Count > 1 {
		return w.plural(m.Name)
	}
	return m.Name
}

func isFoldLine(m *model.Mark) bool {
	for _, f := range m.Piece.FoldLines {
		if f == m {
			return true
		}
	}
	return false
}

func (w *writer) seam(s *model.Seam, both bool) string {
	key := "seam"
	name := s.Name
	if endsIn(name, w.ph.SeamWords) {
		key = "seam-own"
	}
	out := put(w.ph.Things[key], "name", name)
	if both {
		out = put(w.ph.Things["both"], "names", w.plural(strings.TrimPrefix(out, "the ")))
	}
	return out
}

// seamIn adds in which cloth, or in which copies, a seam is meant.
func (w *writer) seamIn(t *model.Target, name string) string {
	if t.In == "" {
		return name
	}
	for _, m := range w.Pattern.Materials {
		if m.ID == t.In {
			return put(put(w.ph.Things["of-copy"], "copy", clothWord(m)), "name", strings.TrimPrefix(name, "the "))
		}
	}
	return put(put(w.ph.Things["of-copy"], "copy", strings.ReplaceAll(t.In, "-", " ")), "name", strings.TrimPrefix(name, "the "))
}

func (w *writer) edge(name, piece string, both bool) string {
	key := "edge"
	if endsIn(name, w.ph.EdgeWords) {
		key = "edge-own"
	}
	piece = strings.TrimPrefix(piece, "the ")
	if both {
		name = w.plural(edgeName(name, w.ph))
		return "the " + name + " of " + piece
	}
	return put(put(w.ph.Things[key], "name", name), "piece", piece)
}

func edgeName(name string, ph *phrases) string {
	if endsIn(name, ph.EdgeWords) {
		return name
	}
	return name + " edge"
}

// onFold reports whether a target's parts are cut on the fold, so that what is
// drawn on them once is there twice.
func onFold(t *model.Target) bool {
	for _, i := range t.Instances {
		if i.Cut.Lay.Fold {
			return true
		}
	}
	return false
}

// paired reports whether a target means a left and a right one.
func paired(t *model.Target) bool {
	l, r := false, false
	for _, i := range t.Instances {
		l, r = l || i.Side == model.Left, r || i.Side == model.Right
	}
	return l && r
}

// twofold reports whether a target lies on both sides of the body: a pair, or an
// edge that a part cut on the fold has twice.
func twofold(t *model.Target) bool {
	switch t.Kind {
	case model.ToSeam:
		lines := 0
		for _, j := range t.Seam.Copies {
			if t.In == "" || j.In == t.In {
				lines++
			}
		}
		return lines > 1 && t.Side == model.Neither
	case model.ToEdge, model.ToPartEdge:
		l, r := false, false
		for _, u := range t.Uses {
			l, r = l || u.Side == model.Left, r || u.Side == model.Right
		}
		return l && r
	}
	return paired(t) || several(t)
}

// several reports whether a piece is cut more than once alike.
func several(t *model.Target) bool {
	n := map[string]int{}
	for _, i := range t.Instances {
		n[i.Copy+i.Cut.Material.ID]++
	}
	for _, c := range n {
		if c > 1 {
			return t.Kind == model.ToPiece
		}
	}
	return false
}

// piece words the cut parts that a target names.
func (w *writer) piece(t *model.Target, plural bool) string {
	name := lower(t.Piece.Name)
	if c := onlyCopy(t); c != "" {
		name = put(put(w.ph.Things["of-copy"], "copy", c), "name", name)
		name = strings.TrimPrefix(name, "the ")
	}
	if onlyInterfacing(t) {
		name = strings.TrimPrefix(put(w.ph.Things["interfacing-of"], "name", name), "the ")
	}
	if m := onlyCloth(t); m != nil {
		name = put(put(w.ph.Things["of-copy"], "copy", clothWord(m)), "name", name)
		name = strings.TrimPrefix(name, "the ")
	}
	n := len(t.Instances)
	switch {
	case t.Side != model.Neither:
		return put(w.ph.Things["piece-"+t.Side.String()], "name", name)
	case plural && n == 2 && (paired(t) || several(t)):
		return put(w.ph.Things["both"], "names", w.plural(name))
	case plural && n > 2 && (paired(t) || several(t)):
		return "the " + w.plural(name)
	}
	return put(w.ph.Things["piece"], "name", name)
}

// onlyCopy gives the name of the copy that a target means, if it is one of
// several.
func onlyCopy(t *model.Target) string {
	copies := map[string]bool{}
	for _, i := range t.Piece.Instances() {
		if i.Copy != "" {
			copies[i.Copy] = true
		}
	}
	one := ""
	for _, i := range t.Instances {
		if one != "" && i.Copy != one {
			return ""
		}
		one = i.Copy
	}
	if len(copies) < 2 {
		return ""
	}
	return strings.ReplaceAll(one, "-", " ")
}

// onlyInterfacing reports whether a target means the interfacing of a piece that is cut
// from cloth as well.
func onlyInterfacing(t *model.Target) bool {
	for _, i := range t.Instances {
		if i.Cloth() {
			return false
		}
	}
	return len(t.Instances) > 0 && len(t.Piece.Cloths()) > 0 && t.Piece.Cloths()[0].Cloth()
}

// onlyCloth gives the cloth of the parts that a target means, if the piece is cut from
// several and these are from one: the lining bodice front. Nil where nothing is told apart.
func onlyCloth(t *model.Target) *model.Material {
	several := false
	for _, i := range t.Piece.Cloths() {
		several = several || len(t.Instances) > 0 && i.Cut.Material != t.Instances[0].Cut.Material
	}
	for _, i := range t.Instances {
		if !several || !i.Cloth() || i.Cut.Material != t.Instances[0].Cut.Material {
			return nil
		}
	}
	if len(t.Instances) == 0 {
		return nil
	}
	return t.Instances[0].Cut.Material
}

// clothWord is a cloth as it stands before the name of a piece: lining for Lining fabric.
func clothWord(m *model.Material) string {
	name := lower(short(m.Name))
	for _, end := range []string{" fabric", " cloth"} {
		name = strings.TrimSuffix(name, end)
	}
	return name
}

// plural of a name, by the common rules of English spelling.
func (w *writer) plural(s string) string {
	switch {
	case strings.HasSuffix(s, "foot"):
		return strings.TrimSuffix(s, "oot") + "eet"
	case strings.HasSuffix(s, "s"), strings.HasSuffix(s, "x"), strings.HasSuffix(s, "ch"), strings.HasSuffix(s, "sh"):
		return s + "es"
	case strings.HasSuffix(s, "y") && !strings.HasSuffix(s, "ay") && !strings.HasSuffix(s, "ey") && !strings.HasSuffix(s, "oy"):
		return s[:len(s)-1] + "ies"
	}
	return s + "s"
}

// things words a list. Edges of one name, and edges of one piece, are gathered:
// "the waist edges of the back and both side panels".
func (w *writer) things(targets []*model.Target, plural bool) []booklet.Inline {
	var there []*model.Target
	for _, t := range targets {
		if t.Kind == model.ToSide || w.there(t.Cond) {
			there = append(there, t)
		}
	}
	if in := w.gathered(there, plural); in != nil {
		return in
	}
	var out [][]booklet.Inline
	for _, t := range there {
		out = append(out, plain(w.thing(t, plural)))
	}
	return list(once(out), w.ph.Things["and"])
}

// gathered words a list of edges that share their name or their piece; nil for
// any other list.
func (w *writer) gathered(edges []*model.Target, plural bool) []booklet.Inline {
	if len(edges) < 2 {
		return nil
	}
	sameEdge, samePiece := true, true
	for _, t := range edges {
		if t.Kind != model.ToEdge {
			return nil
		}
		sameEdge = sameEdge && t.Edge.ID == edges[0].Edge.ID
		samePiece = samePiece && t.Piece == edges[0].Piece && t.Side == edges[0].Side
	}
	var names, pieces [][]booklet.Inline
	switch {
	case sameEdge:
		names = append(names, plain(edges[0].Edge.Name))
		if endsIn(edges[0].Edge.Name, w.ph.EdgeWords) {
			names[0] = plain(w.plural(edges[0].Edge.Name))
		}
		for _, t := range edges {
			pieces = append(pieces, plain(w.piece(t, plural)))
		}
	case samePiece:
		for _, t := range edges {
			names = append(names, plain(t.Edge.Name))
		}
		pieces = append(pieces, plain(w.piece(edges[0], plural)))
	default:
		return nil
	}
	key := "edges"
	if own := endsIn(edges[0].Edge.Name, w.ph.EdgeWords); own && (sameEdge || endsIn(edges[len(edges)-1].Edge.Name, w.ph.EdgeWords)) {
		key = "edges-own"
	}
	and := w.ph.Things["and"]
	return fill(w.ph.Things[key], filling{"names": list(names, and), "pieces": list(pieces, and)})
}

// these words a list inside a phrase, where "the side panels" says enough.
func (w *writer) these(targets []*model.Target) []booklet.Inline {
	out := w.things(targets, true)
	both := put(w.ph.Things["both"], "names", "")
	for i, in := range out {
		if t, ok := in.(booklet.Text); ok {
			out[i] = booklet.Text(strings.ReplaceAll(string(t), both, put(w.ph.Things["piece"], "name", "")))
		}
	}
	return out
}

// marks words what is to be marked, gathered by piece: "the pocket top and the
// pocket end on the back".
func (w *writer) marks(targets []*model.Target, plural bool) []booklet.Inline {
	type group struct {
		piece string
		names []string
	}
	var groups []group
	for _, t := range targets {
		if !w.there(t.Cond) {
			continue
		}
		name, piece := w.thing(t, plural), ""
		if t.Kind == model.ToMark {
			name, piece = put(w.ph.Things["line"], "name", w.markName(t.Mark)), w.piece(t, plural)
		}
		if n := len(groups); n > 0 && groups[n-1].piece == piece {
			groups[n-1].names = append(groups[n-1].names, name)
		} else {
			groups = append(groups, group{piece, []string{name}})
		}
	}
	// pieces with the same marks stand together
	var out [][]booklet.Inline
	for i := 0; i < len(groups); i++ {
		g := groups[i]
		pieces := [][]booklet.Inline{plain(g.piece)}
		for i+1 < len(groups) && strings.Join(groups[i+1].names, ",") == strings.Join(g.names, ",") {
			i++
			pieces = append(pieces, plain(groups[i].piece))
		}
		var names [][]booklet.Inline
		for _, n := range g.names {
			names = append(names, plain(n))
		}
		and := w.ph.Things["and"]
		if g.piece == "" {
			out = append(out, list(names, and))
			continue
		}
		out = append(out, fill(w.ph.Things["on-piece"], filling{"marks": list(names, and), "piece": list(pieces, and)}))
	}
	return list(out, w.ph.Things["and"])
}

// once leaves out what has been said already.
func once(items [][]booklet.Inline) (out [][]booklet.Inline) {
	seen := map[string]bool{}
	for _, it := range items {
		if s := booklet.Plain(it); !seen[s] {
			seen[s] = true
			out = append(out, it)
		}
	}
	return
}
