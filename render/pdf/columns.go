package pdf

// need is the least and the most width that a column can use.
type need struct{ least, most float64 }

// needs measures every column of a table.
func (l *layouter) needs(g *grid) []need {
	out := make([]need, len(g.heads))
	for i, h := range g.heads {
		out[i].least, out[i].most = widthsOf(h)
	}
	for _, r := range g.rows {
		if r.group {
			continue
		}
		for i, c := range r.cells {
			least, most := widthsOf(c)
			out[i].least = max(out[i].least, least)
			out[i].most = max(out[i].most, most)
			if r.arts != nil {
				out[i].least = max(out[i].least, artNeed(r.arts[i]))
			}
		}
	}
	for i := range out {
		out[i].least = max(out[i].least, 12)
		out[i].most = max(out[i].most, out[i].least)
	}
	return out
}

// parts shares the columns out over parts that are no wider than c, and gives
// each column its place.
func (l *layouter) parts(g *grid, c column) []part {
	gutter := 0.0
	if g.tick {
		gutter = l.th.tickSmall + 8
	}
	avail := c.width - gutter
	ns := l.needs(g)
	if len(ns) == 0 { // only a caption or group rows
		return []part{{whole: c, box: true}}
	}
	gap := cellGap(len(ns))
	var out []part
	for i, cols := range divide(ns, avail, gap, g.first) {
		p := part{cols: cols, box: i == 0}
		x := c.x + gutter
		for j, w := range fit(pickNeeds(ns, cols), avail, gap) {
			if j > 0 {
				x += gap
			}
			p.place = append(p.place, column{x, w})
			x += w
		}
		p.whole = column{c.x, x - c.x}
		out = append(out, p)
	}
	return out
}

// cellGap is the room between columns; many columns stand closer.
func cellGap(n int) float64 {
	if n > 6 {
		return 8
	}
	return 14
}

func pickNeeds(ns []need, cols []int) []need {
	out := make([]need, len(cols))
	for i, c := range cols {
		out[i] = ns[c]
	}
	return out
}

// divide gives the columns of each part, the parts about equally full. If first
// is set the first column stands in all of them.
func divide(ns []need, avail, gap float64, first bool) [][]int {
	parts := fill(ns, avail, gap, first, len(ns))
	if len(parts) == 1 {
		return parts
	}
	columns := len(ns)
	if first {
		columns += len(parts) - 1
	}
	return fill(ns, avail, gap, first, (columns+len(parts)-1)/len(parts))
}

// fill puts column after column in a part until it is full or holds most of them.
func fill(ns []need, avail, gap float64, first bool, most int) [][]int {
	var out [][]int
	var cur []int
	used := 0.0
	fresh := 0 // columns of cur that are not repeated
	for i, n := range ns {
		w := min(n.least, avail)
		if fresh > 0 && (used+gap+w > avail+slack || len(cur) >= most) {
			out = append(out, cur)
			cur, used, fresh = nil, 0, 0
			if first && min(ns[0].least, avail/3)+gap+w <= avail+slack {
				cur, used = []int{0}, min(ns[0].least, avail/3)
			}
		}
		if len(cur) > 0 {
			used += gap
		}
		cur = append(cur, i)
		used += w
		fresh++
	}
	return append(out, cur)
}

// fit shares a width out over columns. A table that needs less than the width is
// only loosened. In one that needs more, no line of a narrow column is broken for
// the sake of a wide one: all columns get what they need up to one common width,
// and none less than its widest word. Only where even that is too much are words cut.
func fit(ns []need, avail, gap float64) []float64 {
	avail -= gap * float64(len(ns)-1)
	var least, most float64
	for _, n := range ns {
		least += n.least
		most += n.most
	}
	if least > avail {
		ns = cutWords(ns)
	}
	common := commonWidth(ns, avail)
	out := make([]float64, len(ns))
	for i, n := range ns {
		if most <= avail {
			out[i] = n.most + min((avail-most)/float64(len(ns)), 24)
		} else {
			out[i] = n.at(common)
		}
	}
	return out
}

// cutWords gives the needs of columns whose widest words may be cut.
func cutWords(ns []need) []need {
	out := make([]need, len(ns))
	for i, n := range ns {
		out[i] = need{0, n.least}
	}
	return out
}

// at gives what a column takes if no column may take more than common.
func (n need) at(common float64) float64 { return max(n.least, min(n.most, common)) }

// commonWidth finds, by halving, the common width at which columns fill avail.
func commonWidth(ns []need, avail float64) float64 {
	low, high := 0.0, avail
	for range 40 {
		mid := (low + high) / 2
		total := 0.0
		for _, n := range ns {
			total += n.at(mid)
		}
		if total > avail {
			high = mid
		} else {
			low = mid
		}
	}
	return low
}
