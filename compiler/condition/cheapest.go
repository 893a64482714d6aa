package condition

import (
	"math/bits"
	"slices"
)

// row is a set of columns.
type row []uint64

func newRow(columns int) row { return make(row, (columns+63)/64) }

func (r row) add(i int)      { r[i/64] |= 1 << (i % 64) }
func (r row) has(i int) bool { return r[i/64]>>(i%64)&1 == 1 }

func (r row) size() int {
	n := 0
	for _, w := range r {
		n += bits.OnesCount64(w)
	}
	return n
}

func (r row) within(other row) bool {
	for i, w := range r {
		if w&^other[i] != 0 {
			return false
		}
	}
	return true
}

func (r row) meets(other row) bool {
	for i, w := range r {
		if w&other[i] != 0 {
			return true
		}
	}
	return false
}

// mostSteps bounds the search for the cheapest cover.
const mostSteps = 10_000

// search looks for the cheapest columns that meet every row, by branch and
// bound.
type search struct {
	costs []int
	best  []int
	bound int // what best costs
	steps int
}

// cheapest returns columns that meet every row at the least cost, and false if
// it was not searched to the end. Every row has a column.
func cheapest(rows []row, costs []int) ([]int, bool) {
	f := &search{costs: costs, bound: 1<<62 - 1}
	f.from(minimal(rows), nil, 0)
	slices.Sort(f.best)
	return f.best, f.steps <= mostSteps
}

// minimal leaves out rows that are met whenever another one is.
func minimal(rows []row) []row {
	rows = slices.Clone(rows)
	slices.SortStableFunc(rows, func(a, b row) int { return a.size() - b.size() })
	var kept []row
	for _, r := range rows {
		if !slices.ContainsFunc(kept, func(k row) bool { return k.within(r) }) {
			kept = append(kept, r)
		}
	}
	return kept
}

// from goes on with the rows that no chosen column meets: the row with the
// fewest columns, each of them in turn, the one that meets most rows first.
func (f *search) from(rows []row, chosen []int, cost int) {
	f.steps++
	if cost+f.atLeast(rows) >= f.bound || f.steps > mostSteps && f.best != nil {
		return
	}
	if len(rows) == 0 {
		f.best, f.bound = slices.Clone(chosen), cost
		return
	}
	narrow := slices.MinFunc(rows, func(a, b row) int { return a.size() - b.size() })
	for _, column := range f.byWorth(narrow, rows) {
		f.from(unmet(rows, column), append(chosen, column), cost+f.costs[column])
	}
}

// unmet returns the rows that a column does not meet.
func unmet(rows []row, column int) []row {
	var rest []row
	for _, r := range rows {
		if !r.has(column) {
			rest = append(rest, r)
		}
	}
	return rest
}

// byWorth returns the columns of a row, those that meet most rows first, then
// the cheaper ones, then in their order.
func (f *search) byWorth(r row, rows []row) []int {
	var columns []int
	worth := map[int]int{}
	for column := range f.costs {
		if r.has(column) {
			columns = append(columns, column)
			worth[column] = len(rows) - len(unmet(rows, column))
		}
	}
	slices.SortStableFunc(columns, func(a, b int) int {
		if worth[a] != worth[b] {
			return worth[b] - worth[a]
		}
		return f.costs[a] - f.costs[b]
	})
	return columns
}

// atLeast returns what the rows cost at the least: rows that have no column in
// common each need one of their own.
func (f *search) atLeast(rows []row) int {
	var apart []row
	total := 0
	for _, r := range rows {
		if slices.ContainsFunc(apart, r.meets) {
			continue
		}
		apart = append(apart, r)
		least := 1<<62 - 1
		for column, cost := range f.costs {
			if r.has(column) {
				least = min(least, cost)
			}
		}
		total += least
	}
	return total
}
