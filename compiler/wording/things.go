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
		return w.seam(t.Seam, plural && len(t.Seam.Copies) > 1 && t.Side == model.Neither)
	case model.ToPiece:
		return w.piece(t, plural)
	case model.ToEdge:
		if plural && t.Edge.Twice(t) && !paired(t) {
			return put(th["both"], "names", w.plural(edgeName(t.Edge.Name, w.ph))+" of "+w.piece(t, false))
		}
		return w.edge(t.Edge.Name, strings.TrimPrefix(w.piece(t, plural), "the "), plural && paired(t))
	case model.ToMark:
		name := t.Mark.Name
		if isFoldLine(t.Mark) {
			return put(th["line"], "name", name)
		}
		if endsIn(name, w.ph.MarkWords) {
			return put(th["line"], "name", name)
		}
		return put(th["mark"], "name", name)
	case model.ToNotion:
		name := lower(short(t.Notion.Name))
		if t.NotionBit != "" && t.Notion.Set {
			return put(put(th["half"], "half", strings.ReplaceAll(t.NotionBit, "-", " ")), "name", name)
		}
		return "the " + name
	case model.ToBit:
		return "the " + lower(t.Bit.Name)
	case model.ToPart:
		return "the " + lower(t.Part.Name)
	case model.ToPartEdge:
		return w.edge(t.PartEdge.Name, lower(t.Part.Name), false)
	case model.ToShaping:
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
		return len(t.Seam.Copies) > 1 && t.Side == model.Neither
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

// plural of a name, by the common rules of English spelling.
func (w *writer) plural(s string) string {
	switch {
	case strings.HasSuffix(s, "s"), strings.HasSuffix(s, "x"), strings.HasSuffix(s, "ch"), strings.HasSuffix(s, "sh"):
		return s + "es"
	case strings.HasSuffix(s, "y") && !strings.HasSuffix(s, "ay") && !strings.HasSuffix(s, "ey") && !strings.HasSuffix(s, "oy"):
		return s[:len(s)-1] + "ies"
	}
	return s + "s"
}

func (w *writer) things(targets []*model.Target, plural bool) []booklet.Inline {
	var out [][]booklet.Inline
	for _, t := range targets {
		if t.Kind == model.ToSide || w.there(t.Cond) {
			out = append(out, plain(w.thing(t, plural)))
		}
	}
	return list(once(out), w.ph.Things["and"])
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
