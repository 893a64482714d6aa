package wording

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"seamwarden/compiler/booklet"
	"seamwarden/compiler/condition"
	"seamwarden/compiler/lay"
	"seamwarden/compiler/lay/diagram"
	"seamwarden/compiler/measure"
	"seamwarden/compiler/model"
	"seamwarden/compiler/size"
)

// layGroup is the lays of one material in one width, with or without nap, for one set
// of garments: one for each size of the booklet that has a lay.
type layGroup struct {
	first *model.Laying
	lays  map[int]*model.Laying // by size
}

// layGroups lists the lays that hold, as far as the booklet is about them.
func (w *writer) layGroups() (all []*layGroup) {
	if w.Layings == nil {
		return nil
	}
	sizes := map[int]bool{}
	for _, i := range w.sizeColumns() {
		sizes[i] = true
	}
	for _, l := range w.Layings() {
		if l.Found == nil || !sizes[l.Size] || !w.there(l.Cond) {
			continue
		}
		var g *layGroup
		if n := len(all); n > 0 && all[n-1].has(l) {
			g = all[n-1]
		} else {
			g = &layGroup{l, map[int]*model.Laying{}}
			all = append(all, g)
		}
		g.lays[l.Size] = l
	}
	return all
}

func (g *layGroup) has(l *model.Laying) bool {
	f := g.first
	return f.Material == l.Material && f.Width == l.Width && f.Nap == l.Nap && f.Cond == l.Cond
}

// unpromised is where a group tells more than the pattern does itself.
func (w *writer) unpromised(g *layGroup) condition.Cond {
	c := g.first.Cond
	for _, p := range w.Promises {
		if p.ForWidth(g.first.Material, g.first.Width.Length) {
			c = w.Space.Diff(c, p.Cond)
		}
	}
	return c
}

// amountTold reports whether the booklet tells how much of a material to buy.
func (w *writer) amountTold(m *model.Material) bool {
	return slices.ContainsFunc(w.Promises, func(p *model.Promise) bool { return p.Material == m && w.there(p.Cond) }) ||
		slices.ContainsFunc(w.layGroups(), func(g *layGroup) bool { return g.first.Material == m })
}

// laidRow tells how much of a material its lays take, where the pattern does not say it.
func (w *writer) laidRow(g *layGroup, where condition.Cond, inches bool) booklet.Row {
	head := add(typed(g.first.Material.Name), booklet.Text(", "))
	head = add(head, w.measure(g.first.Width.Measure, measure.Width))
	if g.first.Nap {
		head = add(head, booklet.Text(", "+w.ph.Buy["with-nap"]))
	}
	row := booklet.Row{When: w.when(where), Cells: []booklet.Cell{{Text: head}}}
	for _, i := range w.sizeColumns() {
		text := w.ph.Buy["not-laid"]
		if l := g.lays[i]; l != nil {
			yards, metres := w.laidAmount(l)
			if text = number(metres); inches {
				text = number(yards)
			}
		}
		row.Cells = append(row.Cells, booklet.Cell{Text: plain(text)})
	}
	return row
}

// laidAmount words how much cloth to buy for a lay, rounded up in both systems.
func (w *writer) laidAmount(l *model.Laying) (yards, metres string) {
	steps := measure.Steps{}
	if w.Pattern.Sizes != nil {
		steps = w.Pattern.Sizes.Rounding[size.ClothPart]
	}
	return steps.Print(l.Needs(), measure.Cloth, measure.Computed, measure.English)
}

// mostLayouts is how many cutting layouts a booklet draws before it draws one size of
// each only: more is leafed through, not used.
const mostLayouts = 16

// layouts is the chapter of cutting layouts. Of several sizes the smallest and the
// largest are drawn, or the middle one if that is too many.
func (w *writer) layouts() *booklet.Chapter {
	groups := w.layGroups()
	if len(groups) == 0 {
		return nil
	}
	ch := w.chapter("layouts")
	sizes := w.sizeColumns()
	drawn := sizes
	if n := len(sizes); n > 2 && 2*len(groups) <= mostLayouts {
		drawn = []int{sizes[0], sizes[n-1]}
	} else if n > 1 {
		drawn = sizes[n/2 : n/2+1]
	}
	intro := w.ph.Layouts["intro"]
	if len(sizes) > len(drawn) {
		intro += " " + w.ph.Layouts["some-sizes"]
	}
	ch.Blocks = append(ch.Blocks, para(plain(intro)))
	var before *model.Material
	for _, g := range groups {
		if g.first.Material != before {
			before = g.first.Material
			ch.Blocks = append(ch.Blocks, w.heading(before.Name))
		}
		ch.Blocks = append(ch.Blocks, w.layoutsOf(g, drawn)...)
	}
	return ch
}

// layoutsOf draws a group in some sizes. Sizes that lie alike are drawn once.
func (w *writer) layoutsOf(g *layGroup, sizes []int) (out []booklet.Block) {
	seen := map[string]bool{}
	for _, i := range sizes {
		l := g.lays[i]
		if l == nil || seen[l.Job.Key()] {
			continue
		}
		seen[l.Job.Key()] = true
		if f := w.layout(l, w.alike(g, l)); f != nil {
			out = append(out, f)
		}
	}
	return
}

// alike names the sizes of a group that are laid like one of them.
func (w *writer) alike(g *layGroup, l *model.Laying) string {
	if l.Size < 0 {
		return ""
	}
	var names []string
	for _, i := range w.sizeColumns() {
		if other := g.lays[i]; other != nil && other.Job.Key() == l.Job.Key() {
			names = append(names, w.Pattern.Sizes.Sizes[i])
		}
	}
	if len(names) == 1 {
		return put(w.ph.Layouts["size"], "size", names[0])
	}
	return put(w.ph.Layouts["sizes"], "sizes", strings.Join(names, ", "))
}

// layout draws one lay, for sizes in words.
func (w *writer) layout(l *model.Laying, sizes string) *booklet.Figure {
	caption := w.layCaption(l, sizes)
	words := w.layWords()
	words.Title, words.Desc = caption, w.layDescription(l)
	art, err := diagram.Draw(l.Job, *l.Found, words)
	if err != nil {
		return nil // what holds can be drawn
	}
	w.figures++
	return &booklet.Figure{ID: w.id("layout", fmt.Sprint(w.figures)), Caption: plain(caption), Art: art}
}

func (w *writer) layWords() diagram.Words {
	p := w.ph.Layouts
	return diagram.Words{Fold: p["fold"], Selvedge: p["selvedge"], Selvedges: p["selvedges"], FaceDown: p["face-down"], OneLayer: p["one-layer"], Style: measure.English}
}

// layCaption says of what a layout is: the cloth and its width, the garments, the size,
// how it lies and how much to buy.
func (w *writer) layCaption(l *model.Laying, sizes string) string {
	p := w.ph.Layouts
	parts := []string{l.Material.Name, w.measure(l.Width.Measure, measure.Width).String()}
	if l.Nap {
		parts = append(parts, w.ph.Buy["with-nap"])
	}
	if when := w.when(l.Cond); when != "" {
		parts = append(parts, lower(when))
	}
	if sizes != "" {
		parts = append(parts, sizes)
	}
	s := put(p[l.Found.Way.String()], "what", strings.Join(parts, ", "))
	one, other := w.laidAmount(l)
	if w.metric {
		one, other = other, one
	}
	s += " " + put(put(p["buy"], "one", one), "other", other)
	if l.SpareMM > 0 {
		s += " " + p["spare"]
	}
	return s
}

// layDescription tells in words what lies where, along the cloth from where it begins.
func (w *writer) layDescription(l *model.Laying) string {
	var names []string
	seen := map[int]int{}
	for _, at := range inOrder(l.Found.Places) {
		if seen[at.Piece]++; seen[at.Piece] > 1 {
			continue
		}
		one := l.Job.Pieces[at.Piece]
		names = append(names, strings.TrimSpace(one.Number+" "+lower(one.Name)))
	}
	return put(w.ph.Layouts["order"], "pieces", strings.Join(names, "; "))
}

// inOrder sorts places by where they begin along the cloth, then across it.
func inOrder(places []lay.Place) []lay.Place {
	sorted := slices.Clone(places)
	slices.SortStableFunc(sorted, func(a, b lay.Place) int {
		return cmp.Or(cmp.Compare(a.At.X, b.At.X), cmp.Compare(a.At.Y, b.At.Y))
	})
	return sorted
}
