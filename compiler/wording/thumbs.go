package wording

import (
	"fmt"
	"slices"
	"strings"

	"seamwarden/compiler/booklet"
	"seamwarden/compiler/model"
	"seamwarden/compiler/outline"
	"seamwarden/compiler/outline/thumb"
)

// thumbs are the small drawings in the cutting table: of each piece that has an outline,
// in the row in which it first stands.
type thumbs struct {
	*writer
	size   int // the number of the size that is drawn; -1 for a pattern without sizes
	scale  float64
	larger bool // some are drawn at another scale
	done   map[*model.Piece]bool
}

// thumbs gives the drawings of a booklet, nil if no piece in it has an outline. They are
// drawn in the size of the booklet; in one for all sizes, in the middle one.
func (w *writer) thumbs() *thumbs {
	t := &thumbs{writer: w, size: w.middleSize(), done: map[*model.Piece]bool{}}
	var all []*outline.Outline
	for _, p := range w.Pieces {
		for _, d := range w.drawnOf(p, t.size) {
			all = append(all, d.Outline(w.Pattern, t.size))
		}
	}
	if len(all) == 0 {
		return nil
	}
	t.scale = thumb.Scale(all)
	for _, o := range all {
		t.larger = t.larger || thumb.TooSmall(o, t.scale)
	}
	return t
}

// middleSize is the middle one of the sizes that are left to choose from.
func (w *writer) middleSize() int {
	var left []int
	if w.Sizes != nil {
		for k := range w.Sizes.Sizes {
			if w.there(w.InSizes(func(i int) bool { return i == k })) {
				left = append(left, k)
			}
		}
	}
	if len(left) == 0 {
		return -1
	}
	return left[(len(left)-1)/2]
}

// drawnOf lists the drawings of a piece that belong to the booklet.
func (w *writer) drawnOf(p *model.Piece, size int) (all []*model.Drawn) {
	for _, d := range p.Outlines {
		if d.Outline(w.Pattern, size) != nil && w.there(w.Space.And(p.Cond, d.Cond)) {
			all = append(all, d)
		}
	}
	return
}

// legend says what is drawn, and how large.
func (t *thumbs) legend() string {
	size := ""
	if t.size >= 0 {
		size = put(t.ph.Cut["shape-size"], "size", t.Sizes.Sizes[t.size])
	}
	s := put(put(t.ph.Cut["shape-legend"], "size", size), "scale", fmt.Sprint(t.scale))
	if t.larger {
		s += " " + t.ph.Cut["shape-larger"]
	}
	return s
}

// row puts the cell of the drawing at the end of a row of the table: on a narrow screen
// the words are in sight first.
func (t *thumbs) row(r booklet.Row, c *model.Cut) booklet.Row {
	if t == nil {
		return r
	}
	cell := booklet.Cell{}
	if c != nil && !t.done[c.Piece] {
		t.done[c.Piece] = true
		cell.Figures = t.figures(c)
	}
	r.Cells = append(r.Cells, cell)
	return r
}

func (t *thumbs) figures(c *model.Cut) (all []*booklet.Figure) {
	p := c.Piece
	for _, d := range t.drawnOf(p, t.size) {
		o := d.Outline(t.Pattern, t.size)
		look := thumb.Look{Scale: t.scale, Under: t.within(d.Cond, p.Cond), Title: t.title(p)}
		if thumb.TooSmall(o, t.scale) {
			look.Scale = thumb.Scale([]*outline.Outline{o}) * 2
		}
		if p.Number > 0 {
			look.Number = fmt.Sprint(p.Number)
		}
		if c.Lay.Fold && c.Lay.FoldEdge != nil {
			look.Fold = c.Lay.FoldEdge.ID
		}
		look.Desc = t.describe(o, look)
		all = append(all, &booklet.Figure{ID: t.id("shape", p.ID), Art: thumb.Draw(o, look)})
	}
	return
}

func (t *thumbs) title(p *model.Piece) string {
	if p.Number == 0 {
		return put(t.ph.Cut["shape-unnumbered"], "piece", p.Name)
	}
	return put(put(t.ph.Cut["shape-piece"], "n", fmt.Sprint(p.Number)), "piece", lower(p.Name))
}

// describe says in words what the drawing shows, for those who do not see it.
func (t *thumbs) describe(o *outline.Outline, look thumb.Look) string {
	c := t.ph.Cut
	var edges, notched, parts []string
	for _, e := range o.Edges {
		if e.Name != "" {
			edges = append(edges, spaced(e.Name))
		}
		if slices.ContainsFunc(o.Marks, func(m outline.Mark) bool { return m.Edge == e }) && e.Name != "" {
			notched = append(notched, edgeName(spaced(e.Name), t.ph))
		}
	}
	if look.Under != "" {
		parts = append(parts, look.Under)
	}
	if len(edges) > 0 {
		parts = append(parts, put(c["shape-edges"], "edges", strings.Join(edges, ", ")))
	}
	if look.Fold != "" {
		parts = append(parts, put(c["shape-fold"], "edge", edgeName(spaced(look.Fold), t.ph)))
	}
	if len(notched) > 0 {
		parts = append(parts, put(c["shape-notches"], "edges", strings.Join(notched, ", ")))
	}
	if o.Grain != nil {
		parts = append(parts, c["shape-grain"])
	}
	if look.Scale < t.scale {
		parts = append(parts, c["shape-larger-one"])
	}
	if len(parts) == 0 {
		return ""
	}
	return upper(strings.Join(parts, "; ")) + "."
}

func spaced(id string) string { return strings.ReplaceAll(id, "-", " ") }
