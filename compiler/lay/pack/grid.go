package pack

import "math"

// grid fills the cells of a pair. Its corners are the points where the cells meet.
type grid struct {
	p             *pair
	columns, rows int64
	touched       []bool // cells that some sum touches
	full          []bool // cells that lie strictly inside one sum
	inside        []bool // corners that lie strictly inside a sum
	away          []float64
	deep          []float64 // of corners: the largest least distance to the edges of a sum
}

func newGrid(p *pair) *grid {
	g := &grid{p: p, columns: p.w>>p.shift + 1, rows: p.h>>p.shift + 1}
	p.columns = g.columns
	g.touched, g.full = make([]bool, g.columns*g.rows), make([]bool, g.columns*g.rows)
	g.inside = make([]bool, (g.columns+1)*(g.rows+1))
	g.deep = make([]float64, len(g.inside))
	return g
}

// survey notes which cells and corners each sum covers.
func (g *grid) survey() {
	spans := make([]span, g.rows+1)
	for i, r := range g.p.parts {
		g.corners(r, spans)
		for row := range g.rows {
			from, to, ok := g.touchedIn(r, g.p.partBounds[i], row)
			if !ok {
				continue
			}
			for c := from; c <= to; c++ {
				g.touched[row*g.columns+c] = true
			}
			a, b := spans[row], spans[row+1]
			for c := max(a.from, b.from); c < min(a.to, b.to); c++ {
				g.full[row*g.columns+c] = true
			}
		}
	}
}

// span is a run of corners in one row, both ends among them.
type span struct{ from, to int64 }

// corners marks the corners strictly inside a convex ring, and gives their span in
// each row.
func (g *grid) corners(r []Point, spans []span) {
	lines := linesOf(r)
	for row := range spans {
		spans[row] = span{0, -1}
		y := g.p.min.Y + int64(row)<<g.p.shift
		left, right, ok := across(r, y)
		if !ok {
			continue
		}
		s := span{(left-g.p.min.X)>>g.p.shift + 1, (right - g.p.min.X - 1) >> g.p.shift}
		spans[row] = s
		for c := s.from; c <= s.to; c++ {
			k := int64(row)*(g.columns+1) + c
			g.inside[k] = true
			g.deep[k] = max(g.deep[k], edgeDistance(lines, float64(g.p.min.X+c<<g.p.shift), float64(y)))
		}
	}
}

// across gives the open interval of x in which the line at y lies strictly inside
// a convex ring, its ends rounded inward to whole numbers that are not inside.
func across(r []Point, y int64) (left, right int64, ok bool) {
	down, up := false, false
	for i := range r {
		a, b := r[i], r[(i+1)%len(r)]
		switch {
		case a.Y > y && b.Y <= y: // the left side runs down
			left, down = floorAt(a, b, y), true
		case a.Y <= y && b.Y > y:
			right, up = ceilAt(a, b, y), true
		}
	}
	return left, right, down && up && boundsOf(r).Min.Y < y
}

// floorAt is the largest whole x that is not right of the edge at y; ceilAt the
// smallest that is not left of it.
func floorAt(a, b Point, y int64) int64 { return a.X + floorDiv((b.X-a.X)*(y-a.Y), b.Y-a.Y) }
func ceilAt(a, b Point, y int64) int64  { return a.X - floorDiv(-(b.X-a.X)*(y-a.Y), b.Y-a.Y) }

func floorDiv(a, b int64) int64 {
	q := a / b
	if a%b != 0 && (a < 0) != (b < 0) {
		q--
	}
	return q
}

// touchedIn gives the cells of a row that a convex ring may touch, as a run.
func (g *grid) touchedIn(r []Point, b box, row int64) (from, to int64, ok bool) {
	low := g.p.min.Y + row<<g.p.shift
	high := low + 1<<g.p.shift
	if b.Max.Y < low || b.Min.Y > high {
		return 0, 0, false
	}
	left, right := int64(math.MaxInt64), int64(math.MinInt64)
	see := func(x0, x1 int64) { left, right = min(left, x0), max(right, x1) }
	for i := range r {
		a, c := r[i], r[(i+1)%len(r)]
		if a.Y >= low && a.Y <= high {
			see(a.X, a.X)
		}
		for _, y := range [2]int64{low, high} {
			if min(a.Y, c.Y) < y && max(a.Y, c.Y) > y {
				see(floorAt(a, c, y), ceilAt(a, c, y))
			}
		}
	}
	if left > right {
		return 0, 0, false
	}
	from, to = (left-g.p.min.X)>>g.p.shift, (right-g.p.min.X)>>g.p.shift
	if from > 0 && (left-g.p.min.X)&(1<<g.p.shift-1) == 0 {
		from-- // it touches the cell to the left, too
	}
	return max(0, from), min(g.columns-1, to), true
}

// settle decides what each cell answers.
func (g *grid) settle() {
	g.away = distances(g.inside, int(g.columns+1), int(g.rows+1))
	p := g.p
	p.cells = make([]cell, g.columns*g.rows)
	exact := int16(0) // there are fewer than 1<<14 cells
	for row := range g.rows {
		for c := range g.columns {
			at, k := row*g.columns+c, row*(g.columns+1)+c
			below := g.columns + 1
			least := min(g.away[k], g.away[k+1], g.away[k+below], g.away[k+below+1])
			switch {
			case !g.touched[at]:
			case g.full[at] || least >= 2:
				p.cells[at] = g.plane(g.depthAt(k), g.depthAt(k+1), g.depthAt(k+below), g.depthAt(k+below+1))
			default:
				exact++
				p.cells[at].base = -exact
			}
		}
	}
	g.decide(int(exact))
}

// depthAt is the depth at a corner: near the edge of the union what the sums say,
// far inside what the raster says.
func (g *grid) depthAt(corner int64) float64 {
	unit := float64(int64(1) << g.p.shift)
	return max(g.deep[corner], float64((g.away[corner]-1)*unit))
}

// plane is the cell that fits four depths at its corners best.
func (g *grid) plane(a, b, c, d float64) cell {
	unit := float64(int64(1) << g.p.shift)
	slope := func(rise float64) int8 { return int8(max(-127, min(127, math.Round(float64(rise*32)/unit)))) }
	middle := (a + b + c + d) / 4
	return cell{int16(max(1, int64(middle)>>g.p.step)), slope(b + d - a - c), slope(c + d - a - b)}
}

// decide gives the cells that are neither in nor out the half-planes that cut
// through them.
func (g *grid) decide(count int) {
	p := g.p
	byCell := make([][][]half, count)
	for i, r := range p.parts {
		for row := range g.rows {
			from, to, ok := g.touchedIn(r, p.partBounds[i], row)
			if !ok {
				continue
			}
			for c := from; c <= to; c++ {
				if v := p.cells[row*g.columns+c].base; v < 0 {
					if cut, in := g.cutting(r, row, c); in {
						byCell[^v] = append(byCell[^v], cut)
					}
				}
			}
		}
	}
	for _, groups := range byCell {
		p.lists = append(p.lists, int32(len(p.groups)))
		for _, halves := range groups {
			p.groups = append(p.groups, int32(len(p.halves)))
			p.halves = append(p.halves, halves...)
		}
	}
	p.lists = append(p.lists, int32(len(p.groups)))
	p.groups = append(p.groups, int32(len(p.halves)))
}

// cutting gives the edges of a convex ring that cut through a cell, as half-planes
// from the grid's corner; in is false if the cell lies outside one of them.
func (g *grid) cutting(r []Point, row, column int64) (cut []half, in bool) {
	low := Point{column << g.p.shift, row << g.p.shift}
	size := int64(1) << g.p.shift
	for i := range r {
		a, b := r[i].minus(g.p.min), r[(i+1)%len(r)].minus(g.p.min)
		e := b.minus(a)
		h := half{nx: -e.Y, ny: e.X}
		h.c = h.nx*a.X + h.ny*a.Y
		base := h.nx*low.X + h.ny*low.Y - h.c
		most := base + max(0, h.nx)*size + max(0, h.ny)*size
		least := base + min(0, h.nx)*size + min(0, h.ny)*size
		if most <= 0 {
			return nil, false
		}
		h.per = 1 / math.Sqrt(float64(float64(e.X)*float64(e.X))+float64(float64(e.Y)*float64(e.Y)))
		if float64(float64(least)*h.per) <= float64(size) {
			cut = append(cut, h)
		}
	}
	return cut, true
}
