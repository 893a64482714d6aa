package pack

import (
	"math"
	"slices"
)

// pair answers where a second shape, put at a distance from the first, overlaps
// it, and how deep. The places where it does are the union of the sums of their
// convex parts; the union itself is never formed. A grid of square cells lies over
// it. Most cells are wholly outside or well inside, and answer at once; in the
// others the few half-planes that cut through the cell decide exactly.
type pair struct {
	min        Point // of the grid
	w, h       int64 // of the grid, in units
	shift      uint  // a cell is 1<<shift units wide
	step       uint  // depths of cells are in steps of 1<<step units
	columns    int64
	cells      []cell
	lists      []int32 // for each cell that decides exactly: where its groups begin
	groups     []int32 // where the half-planes of a group begin; the last entry ends
	halves     []half
	parts      [][]Point // the convex sums, for exact slides
	contacts   []Point   // corners of the union: places where the two touch
	partBounds []box
}

// cell is a square of the grid: its depth is a plane. base is the depth in the
// middle, in steps of 1<<step units, 0 if the cell lies outside, ^index into lists if
// it decides exactly; the slopes are in 64ths. It is small, since what a search waits
// for most is cells that are not at hand.
type cell struct {
	base   int16
	sx, sy int8
}

// half is the half-plane to the left of an edge: nx·x + ny·y > c strictly inside.
type half struct {
	nx, ny, c int64
	per       float64 // one over the length of the edge
}

// depth is how far the two must be moved to be clear of one another, about; 0 if
// and only if they do not overlap. d is the place of the second, from the first.
func (p *pair) depth(dx, dy int64) int64 {
	return p.depthIn(dx-p.min.X, dy-p.min.Y)
}

// depthIn is depth at a place counted from the corner of the grid.
func (p *pair) depthIn(dx, dy int64) int64 {
	if uint64(dx) >= uint64(p.w) || uint64(dy) >= uint64(p.h) {
		return 0
	}
	c := p.cells[(dy>>p.shift)*p.columns+dx>>p.shift]
	if c.base == 0 {
		return 0
	}
	if c.base < 0 {
		return p.exact(int32(^c.base), dx, dy)
	}
	half, mask := int64(1)<<p.shift>>1, int64(1)<<p.shift-1
	return max(1, int64(c.base)<<p.step+(int64(c.sx)*(dx&mask-half)+int64(c.sy)*(dy&mask-half))>>6)
}

// exact asks the half-planes of one cell.
func (p *pair) exact(list int32, dx, dy int64) (depth int64) {
	for g := p.lists[list]; g < p.lists[list+1]; g++ {
		least := int64(2) << p.shift
		for k := p.groups[g]; k < p.groups[g+1]; k++ {
			h := &p.halves[k]
			over := h.nx*dx + h.ny*dy - h.c
			if over <= 0 {
				least = 0
				break
			}
			least = min(least, int64(float64(over)*h.per)+1)
		}
		depth = max(depth, least)
	}
	return depth
}

// exit is the shortest way, about, for the second to leave the first: what is to
// be added to its place. It may lead from one convex part into another.
func (p *pair) exit(dx, dy int64) Point {
	d := Point{dx, dy}
	var way Point
	deepest := -1.0
	for i, r := range p.parts {
		if !within(r, p.partBounds[i], d) {
			continue
		}
		least, to := math.Inf(1), Point{}
		for k := range r {
			e := r[(k+1)%len(r)].minus(r[k])
			over := float64(cross(e, d.minus(r[k])))
			long := float64(float64(e.X)*float64(e.X)) + float64(float64(e.Y)*float64(e.Y))
			if far := over * over / long; far < least {
				// The outside lies to the right of the edge.
				least, to = far, Point{outward(float64(e.Y) * over / long), outward(-float64(e.X) * over / long)}
			}
		}
		if least > deepest {
			deepest, way = least, to
		}
	}
	return way
}

// outward rounds away from nothing.
func outward(x float64) int64 {
	if x < 0 {
		return int64(math.Floor(x))
	}
	return int64(math.Ceil(x))
}

// newPair prepares the places of one outline from another, both given by their
// convex parts. cells is how many cells the longer side of the grid has, at most.
func newPair(first, second [][]Point, cells int) *pair {
	p := &pair{}
	for _, a := range first {
		for _, b := range second {
			p.parts = append(p.parts, sum(a, b))
		}
	}
	all := boundsOf(p.parts[0])
	for _, r := range p.parts {
		b := boundsOf(r)
		p.partBounds = append(p.partBounds, b)
		all.Min.X, all.Min.Y = min(all.Min.X, b.Min.X), min(all.Min.Y, b.Min.Y)
		all.Max.X, all.Max.Y = max(all.Max.X, b.Max.X), max(all.Max.Y, b.Max.Y)
	}
	p.min, p.w, p.h = all.Min, all.Max.X-all.Min.X+1, all.Max.Y-all.Min.Y+1
	for max(p.w, p.h)>>p.shift >= int64(cells) {
		p.shift++
	}
	for max(p.w, p.h)>>p.step >= 1<<15 {
		p.step++
	}
	g := newGrid(p)
	g.survey()
	g.settle()
	p.contacts = p.corners()
	return p
}

// corners are the corners of the sums that lie on the edge of the union.
func (p *pair) corners() (all []Point) {
	for i, r := range p.parts {
		for _, v := range r {
			inside := false
			for j, q := range p.parts {
				if j != i && within(q, p.partBounds[j], v) {
					inside = true
					break
				}
			}
			if !inside {
				all = append(all, v)
			}
		}
	}
	slices.SortFunc(all, func(a, b Point) int {
		if a.X != b.X {
			return int(a.X - b.X)
		}
		return int(a.Y - b.Y)
	})
	return slices.Compact(all)
}

// within reports whether a point lies strictly inside a convex ring.
func within(r []Point, b box, v Point) bool {
	if v.X <= b.Min.X || v.X >= b.Max.X || v.Y <= b.Min.Y || v.Y >= b.Max.Y {
		return false
	}
	for i := range r {
		if turn(r[i], r[(i+1)%len(r)], v) <= 0 {
			return false
		}
	}
	return true
}
