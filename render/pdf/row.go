package pdf

import "seamwarden/compiler/figure"

// setRow is a row of a table whose cells are set in lines.
type setRow struct {
	ts    textStyle
	p     part
	cells []setCell
	when  []line
	box   bool
	rule  float64 // thickness of the rule below
}

type setCell struct {
	place column
	lines []line
	ts    textStyle
	sink  int // lines left empty above
	arts  []*figure.Drawing
}

func (l *layouter) layRow(ts textStyle, g *grid, r gridRow, p part) *setRow {
	s := &setRow{ts: ts, p: p, rule: l.th.hairline, box: r.tick && p.box}
	for i, col := range p.cols {
		c := setCell{place: p.place[i], ts: ts}
		if g.numeric[col] {
			c.ts = ts.aligned(right)
		}
		c.lines = breakLines(l.set, r.cells[col], c.place.width)
		if r.arts != nil {
			c.arts = r.arts[col]
		}
		s.cells = append(s.cells, c)
	}
	if r.when != "" && p.box {
		at := s.whenPlace()
		s.when = l.breakText(r.when, l.th.cell.italics(), at.width)
	}
	return s
}

// layGroup sets a row that heads the rows after it.
func (l *layouter) layGroup(r gridRow, p part) *setRow {
	s := &setRow{ts: l.th.cellHead, p: p, rule: l.th.rule, box: r.tick && p.box}
	at := s.whenPlace()
	s.cells = []setCell{{place: at, ts: s.ts, lines: breakLines(l.set, r.cells[0], at.width)}}
	if r.when != "" && p.box {
		s.when = l.breakText(r.when, l.th.cell.italics(), at.width)
	}
	return s
}

// whenPlace is the part's width less the room for boxes.
func (s *setRow) whenPlace() column {
	if len(s.p.place) == 0 {
		return s.p.whole
	}
	x := s.p.place[0].x
	return column{x, s.p.whole.x + s.p.whole.width - x}
}

// most gives the number of lines of the highest cell, at least one.
func (s *setRow) most() int {
	n := 1
	for _, c := range s.cells {
		n = max(n, len(c.lines)+c.sink)
	}
	return n
}

// sinkToFoot makes all cells end on the same line.
func (s *setRow) sinkToFoot() {
	n := s.most()
	for i := range s.cells {
		s.cells[i].sink = n - len(s.cells[i].lines)
	}
}

// marksOf places the lines from and up to to of every cell.
func (s *setRow) marksOf(l *layouter, from, to int) []mark {
	var ms []mark
	for _, c := range s.cells {
		for i, ln := range c.lines {
			if k := i + c.sink; k >= from && k < to {
				ms = append(ms, l.lineMarks(ln, c.ts, c.place, float64(k-from)*s.ts.leading)...)
			}
		}
	}
	return ms
}

const rowPad = 3.5

// pieces makes the row one piece, or several if it is higher than a page has room.
func (s *setRow) pieces(l *layouter, tallest float64) []*piece {
	perPiece := max(1, int((tallest-2*rowPad)/s.ts.leading))
	n := s.most()
	var ps []*piece
	for from := 0; from < n; from += perPiece {
		to := min(n, from+perPiece)
		ps = append(ps, &piece{
			height: float64(to-from)*s.ts.leading + rowPad,
			marks:  shiftAll(s.marksOf(l, from, to), 0, rowPad),
		})
	}
	if art := s.artMost(); art > 0 && art+rowPad <= tallest {
		ps[0].height = max(ps[0].height, art+rowPad)
		ps[0].marks = append(ps[0].marks, shiftAll(s.artMarks(l), 0, rowPad)...)
	}
	if s.box {
		size := l.th.tickSmall
		y := rowPad + l.baseline(s.ts) - size + 1
		ps[0].marks = append([]mark{boxMark(rect{s.p.whole.x + 0.5, y, size, size}, l.th.rule)}, ps[0].marks...)
	}
	ps = s.addWhen(l, ps, tallest)
	last := ps[len(ps)-1]
	last.height += rowPad
	last.marks = append(last.marks, l.across(s.p, last.height, s.rule))
	return ps
}

// addWhen sets the row's condition below its cells, in the same piece if it fits.
func (s *setRow) addWhen(l *layouter, ps []*piece, tallest float64) []*piece {
	ts := l.th.cell.italics()
	for _, ln := range s.when {
		last := ps[len(ps)-1]
		if last.height+ts.leading+rowPad > tallest {
			last = &piece{}
			ps = append(ps, last)
		}
		last.marks = append(last.marks, l.lineMarks(ln, ts, s.whenPlace(), last.height)...)
		last.height += ts.leading
	}
	return ps
}

// rowPieces sets one row of the table's body.
func (l *layouter) rowPieces(g *grid, r gridRow, p part) []*piece {
	limit := l.tallest()
	if !r.group {
		return l.layRow(l.th.cell, g, r, p).pieces(l, limit)
	}
	ps := l.layGroup(r, p).pieces(l, limit)
	ps[0].gap = 5
	ps[len(ps)-1].after = strong
	return ps
}
