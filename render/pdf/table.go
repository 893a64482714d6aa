package pdf

import (
	"seamwarden/compiler/booklet"
	"seamwarden/compiler/figure"
)

// grid is a table whose texts are cut into words, before its width is shared out.
type grid struct {
	caption string
	heads   [][]atom
	hasHead bool
	numeric []bool
	rows    []gridRow
	tick    bool // some row has a box
	first   bool // the first column names the row and stands in every part
}

type gridRow struct {
	group, tick bool
	when        string
	cells       [][]atom
	arts        [][]*figure.Drawing // the small drawings of each cell; nil if there are none
}

// table sets a table. One that is too wide for the paper is set in parts, one
// below the other, each with some of the columns.
func (l *layouter) table(t *booklet.Table, c column) ([]*piece, error) {
	g, err := l.grid(t)
	if err != nil {
		return nil, err
	}
	var out []*piece
	for i, p := range l.parts(g, c) {
		ps := l.part(g, p, i > 0)
		space(ps, l.th.blockGap, l.th.blockGap)
		out = append(out, ps...)
	}
	if len(out) == 0 {
		return anchorPiece(t.ID), nil
	}
	anchor(out, t.ID)
	return out, nil
}

func (l *layouter) grid(t *booklet.Table) (*grid, error) {
	g := &grid{caption: t.Caption, first: t.RowHead}
	n := len(t.Columns)
	for _, r := range t.Rows {
		if !r.Group {
			n = max(n, len(r.Cells))
		}
	}
	g.heads, g.numeric = make([][]atom, n), make([]bool, n)
	for i, col := range t.Columns {
		a, err := l.set.atoms(col.Head, l.th.cellHead.style)
		if err != nil {
			return nil, err
		}
		g.heads[i], g.numeric[i] = a, col.Numeric
		g.hasHead = g.hasHead || len(a) > 0
	}
	for _, r := range t.Rows {
		row, err := l.gridRow(r, n)
		if err != nil {
			return nil, err
		}
		g.rows = append(g.rows, row)
		g.tick = g.tick || r.Tick
	}
	return g, nil
}

func (l *layouter) gridRow(r booklet.Row, n int) (gridRow, error) {
	row := gridRow{group: r.Group, tick: r.Tick, when: r.When, cells: make([][]atom, n)}
	st := l.th.cell.style
	if r.Group {
		st = l.th.cellHead.style
		row.cells = make([][]atom, 1)
	}
	for i, cell := range r.Cells {
		a, err := l.set.atoms(cell.Text, st)
		if err != nil {
			return row, err
		}
		if r.Group { // one cell that spans the table; more than one are read on
			if i > 0 {
				a = append([]atom{{kind: breakLine}}, a...)
			}
			row.cells[0] = append(row.cells[0], a...)
			continue
		}
		row.cells[i] = a
		for _, f := range cell.Figures {
			if !drawable(f.Art) {
				continue
			}
			if row.arts == nil {
				row.arts = make([][]*figure.Drawing, n)
			}
			row.arts[i] = append(row.arts[i], f.Art)
		}
	}
	return row, nil
}

// part is some of a table's columns, each with its place. Whole is all of them
// together with the room for boxes.
type part struct {
	cols  []int
	place []column
	whole column
	box   bool // the boxes stand in this part
}

// highestHead is the height up to which a head is repeated; head and the highest
// row that is not divided must fit on one page (see tallest).
const highestHead = 140

// part sets one part of a table: the head, then the rows, with the head again on
// every page.
func (l *layouter) part(g *grid, p part, again bool) []*piece {
	head := l.headPiece(g, p, again)
	repeat := l.headPiece(g, p, true)
	var ps []*piece
	for _, r := range g.rows {
		ps = append(ps, l.rowPieces(g, r, p)...)
	}
	if head == nil {
		return ps
	}
	tooHigh := max(head.height, repeat.height) > highestHead
	for _, row := range ps {
		if !tooHigh {
			row.head = repeat
		}
	}
	if tooHigh {
		return append(l.longHead(g, p), ps...)
	}
	if len(ps) > 0 {
		head.after = never
	}
	return append([]*piece{head}, ps...)
}

// headPiece sets caption and column heads as one piece, nil if there are none.
// Again marks it as going on.
func (l *layouter) headPiece(g *grid, p part, again bool) *piece {
	ts := l.th.label.strong()
	h := &piece{}
	if again {
		h.marks, h.height = l.againMarks(g.caption, ts, p.whole)
	} else if lines := l.breakText(g.caption, ts, p.whole.width); len(lines) > 0 {
		h.marks = l.blockMarks(lines, ts, p.whole, 0)
		h.height = float64(len(lines))*ts.leading + 2
	}
	if g.hasHead {
		row := l.layRow(l.th.cellHead, g, gridRow{cells: g.heads}, p)
		row.sinkToFoot()
		h.marks = append(h.marks, shiftAll(row.marksOf(l, 0, row.most()), 0, h.height)...)
		h.height += float64(row.most())*row.ts.leading + 5
		h.marks = append(h.marks, l.across(p, h.height-1, l.th.rule))
	}
	if h.height == 0 {
		return nil
	}
	h.height += 2
	return h
}

// againMarks is the caption of a table that goes on from the page before, on one
// line.
func (l *layouter) againMarks(caption string, ts textStyle, c column) ([]mark, float64) {
	tail := l.set.fitOneLine(l.continued(), ts.italics().style, c.width/2)
	ln := line{}
	if caption != "" {
		if len(tail) > 0 {
			tail = append(l.set.shape(" ", ts.style, ""), tail...)
		}
		ln.runs = l.set.fitOneLine(caption, ts.style, c.width-sum(tail))
	}
	for _, r := range tail {
		ln.runs = join(ln.runs, r)
	}
	if len(ln.runs) == 0 {
		return nil, 0
	}
	return l.lineMarks(ln, ts, c, 0), ts.leading + 2
}

// longHead sets a head that is too high to be repeated: as rows.
func (l *layouter) longHead(g *grid, p part) []*piece {
	ps := l.headingPieces(g.caption, l.th.label.strong(), p.whole)
	if len(ps) > 0 {
		ps[0].gap = 0
	}
	for _, x := range ps { // so long a caption must be able to break
		x.after = free
	}
	if g.hasHead {
		row := l.layRow(l.th.cellHead, g, gridRow{cells: g.heads}, p)
		ps = append(ps, row.pieces(l, l.sheet.bodyHeight()-20)...)
	}
	return ps
}

// across is a rule over the whole width of a part.
func (l *layouter) across(p part, y, width float64) mark {
	return ruleMark(p.whole.x, y, p.whole.x+p.whole.width, y, width)
}
