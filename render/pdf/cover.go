package pdf

import "seamwarden/compiler/booklet"

// cover sets the first page: maker and title, the views in a row, what it is about,
// and the facts.
func (l *layouter) cover(b *booklet.Booklet) ([]*piece, error) {
	c := l.sheet.body()
	ps := l.titles(b, c)
	views, err := l.views(b.Cover.Views, c)
	if err != nil {
		return nil, err
	}
	about, err := l.paragraph(b.Cover.About, l.th.lead, c)
	if err != nil {
		return nil, err
	}
	space(about, 20, 0)
	facts, err := l.facts(b, c)
	if err != nil {
		return nil, err
	}
	return append(append(append(ps, views...), about...), facts...), nil
}

// titles sets maker, title and scope.
func (l *layouter) titles(b *booklet.Booklet, c column) []*piece {
	drop := &piece{height: 30}
	ps := append([]*piece{drop}, l.headingPieces(b.Maker, l.th.subtitle, c)...)
	title := l.headingPieces(b.Title, l.th.title, c)
	space(title, 6, 6)
	scope := l.headingPieces(b.Scope, l.th.subtitle, c)
	ps = append(append(ps, title...), scope...)
	for _, p := range ps { // a long title must be able to break
		p.after = free
	}
	rule := ruleMark(c.x, 0, c.x+c.width, 0, l.th.heavy)
	return append(ps, &piece{gap: 12, height: 2, marks: []mark{rule}})
}

// perRow is how many views stand side by side.
const perRow = 4

// views sets the line art of the views, four to a row, with their names below.
func (l *layouter) views(vs []booklet.CoverView, c column) ([]*piece, error) {
	var out []*piece
	if len(vs) > 0 && l.labels.Views != "" {
		out = l.headingPieces(l.labels.Views, l.th.label.strong(), c)
		space(out, 16, 0)
	}
	for len(vs) > 0 {
		n := min(perRow, len(vs))
		if len(vs) == perRow+1 { // three and two rather than four and one
			n = perRow - 1
		}
		p, err := l.viewRow(vs[:n], c)
		if err != nil {
			return nil, err
		}
		p.gap = 14
		out = append(out, p)
		vs = vs[n:]
	}
	return out, nil
}

func (l *layouter) viewRow(vs []booklet.CoverView, c column) (*piece, error) {
	const gap = 18
	w := (c.width - gap*float64(len(vs)-1)) / float64(len(vs))
	tallest := l.sheet.bodyHeight() * 0.36
	artHeight := 0.0
	for _, v := range vs {
		if v.Figure != nil && drawable(v.Figure.Art) {
			artHeight = max(artHeight, v.Figure.Art.Height*scaleFor(v.Figure.Art, w, tallest))
		}
	}
	row := &piece{}
	for i, v := range vs {
		h, err := l.view(row, v, column{c.x + float64(i)*(w+gap), w}, artHeight, tallest)
		if err != nil {
			return nil, err
		}
		row.height = max(row.height, h)
	}
	return row, nil
}

// view sets one view: the art standing on a common line, and the names below it.
func (l *layouter) view(row *piece, v booklet.CoverView, c column, artHeight, tallest float64) (float64, error) {
	y := 0.0
	if artHeight > 0 {
		y = artHeight + 8
	}
	if v.Figure != nil && drawable(v.Figure.Art) {
		s := scaleFor(v.Figure.Art, c.width, tallest)
		d := v.Figure.Art
		row.marks = append(row.marks, shiftAll(l.artMarks(d, s), c.x, artHeight-d.Height*s)...)
	}
	if v.ID != "" {
		row.anchors = append(row.anchors, v.ID)
	}
	for _, t := range []struct {
		text string
		ts   textStyle
	}{{v.Name, l.th.label.strong()}, {v.Title, l.th.text}} {
		lines := l.breakText(t.text, t.ts, c.width)
		row.marks = append(row.marks, l.blockMarks(lines, t.ts, c, y)...)
		y += float64(len(lines)) * t.ts.leading
	}
	if v.Figure == nil {
		return y, nil
	}
	if v.Figure.ID != "" {
		row.anchors = append(row.anchors, v.Figure.ID)
	}
	return y, nil
}

// facts sets names and values in two columns, a rule between the rows.
func (l *layouter) facts(b *booklet.Booklet, c column) ([]*piece, error) {
	facts := b.Cover.Facts
	if b.Edition != "" {
		edition := booklet.Fact{Name: b.Labels.Edition, Value: []booklet.Inline{booklet.Text(b.Edition)}}
		facts = append(facts[:len(facts):len(facts)], edition)
	}
	if len(facts) == 0 {
		return nil, nil
	}
	t := &booklet.Table{}
	for _, f := range facts {
		name := []booklet.Inline{booklet.Strong{Text: []booklet.Inline{booklet.Text(f.Name)}}}
		t.Rows = append(t.Rows, booklet.Row{Cells: []booklet.Cell{{Text: name}, {Text: f.Value}}})
	}
	ps, err := l.table(t, c)
	space(ps, 20, 0)
	return ps, err
}
