package pack

import (
	"math/bits"
	"sort"
)

// Limits are lengths below which no layout of a problem can come, in units.
type Limits struct {
	Area    int64 // all outlines together, at the width of the strip
	Longest int64 // the shape that is longest even in its shortest pose
	Row     int64 // the shapes that must lie at the edge, one behind the other; 0 if there are none
}

// Length is the strongest of the limits.
func (l Limits) Length() int64 { return max(l.Area, l.Longest, l.Row) }

// rowSize is how many shapes of a row are looked at; the work doubles with each.
const rowSize = 12

// Bound gives lengths below which no layout of the problem can come. It fails where
// Search fails.
func Bound(p Problem) (Limits, error) {
	t, items, err := tableOf(p)
	if err != nil {
		return Limits{}, err
	}
	var l Limits
	var row []item
	for _, it := range items {
		shortest := t.shortest(it)
		l.Longest = max(l.Longest, shortest)
		if t.bound(it) {
			row = append(row, it)
		}
	}
	l.Area = areaBound(items, p.Width)
	if len(row) > 0 {
		l.Row = t.row(row)
	}
	return l, nil
}

// areaBound is the length of the strip that all items fill without a gap.
func areaBound(items []item, width int64) int64 {
	var area2 int64
	for _, it := range items {
		area2 += it.area2
	}
	return (area2 + 2*width - 1) / (2 * width)
}

func (t *table) shortest(it item) int64 {
	w := t.kinds[it.poses[0]].w
	for _, k := range it.poses {
		w = min(w, t.kinds[k].w)
	}
	return w
}

// bound reports whether a shape lies at the edge in each of its poses.
func (t *table) bound(it item) bool {
	for _, k := range it.poses {
		if !t.kinds[k].atEdge {
			return false
		}
	}
	return true
}

// row is the length of the shortest ordering of shapes at the edge. In any layout,
// ordered by where they begin, each lies at least its clearance behind the one
// before it, and the strip reaches at least to the end of the last. Of a longer row
// the longest shapes are taken: to leave out a shape never makes a row longer.
//
// The shortest path over subsets is that of M. Held, R. Karp, "A dynamic programming
// approach to sequencing problems", Journal of SIAM 10 (1962).
func (t *table) row(items []item) int64 {
	sort.SliceStable(items, func(a, b int) bool { return t.shortest(items[a]) > t.shortest(items[b]) })
	items = items[:min(len(items), rowSize)]
	n := len(items)
	clear := t.clearances(items)
	ends := make([]map[int]int64, 1<<n) // by the shapes that lie: where the last begins, by its kind and number
	best := endless
	for set := 1; set < 1<<n; set++ {
		ends[set] = map[int]int64{}
		for last := range n {
			if set>>last&1 == 0 {
				continue
			}
			before := set &^ (1 << last)
			for _, k := range items[last].poses {
				at := endless
				if before == 0 {
					at = 0
				}
				for key, from := range ends[before] {
					at = min(at, from+clear[[2]int{key / n, k}])
				}
				ends[set][k*n+last] = at
				if bits.OnesCount(uint(set)) == n {
					best = min(best, at+t.kinds[k].w)
				}
			}
		}
	}
	return best
}

// clearances gives for each two kinds how far behind the first the second begins,
// at least, if both lie at the edge and it does not begin before it.
func (t *table) clearances(items []item) map[[2]int]int64 {
	all := map[[2]int]int64{}
	for _, a := range items {
		for _, b := range items {
			for _, k := range a.poses {
				for _, m := range b.poses {
					if _, ok := all[[2]int{k, m}]; !ok {
						all[[2]int{k, m}] = clearance(t.kinds[k].parts, t.kinds[m].parts)
					}
				}
			}
		}
	}
	return all
}

// clearance is the least distance along the edge, not below 0, at which the second
// of two outlines does not overlap the first.
func clearance(first, second [][]Point) (dx int64) {
	for moved := true; moved; {
		moved = false
		for _, a := range first {
			for _, b := range second {
				if left, right, ok := across(sum(a, b), 0); ok && left < dx && dx < right {
					dx, moved = right, true
				}
			}
		}
	}
	return dx
}
