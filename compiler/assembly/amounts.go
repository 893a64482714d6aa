package assembly

import (
	"sort"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// Totals adds up amounts: for each sum, where it holds.
func (f *Facts) Totals(list []Amount) map[int]condition.Cond {
	sums := map[int]condition.Cond{0: condition.True}
	for _, a := range list {
		next := map[int]condition.Cond{}
		add := func(n int, c condition.Cond) {
			if c != condition.False {
				next[n] = f.space.Or(next[n], c)
			}
		}
		for n, c := range sums {
			add(n+a.N, f.space.And(c, a.Cond))
			add(n, f.space.Diff(c, a.Cond))
		}
		sums = next
	}
	return sums
}

// Sums lists the totals in rising order.
func Sums(m map[int]condition.Cond) (all []int) {
	for n := range m {
		all = append(all, n)
	}
	sort.Ints(all)
	return
}

// StockInOrder lists what is taken from stock, in the order of the steps.
func (f *Facts) StockInOrder() (all []StockKey) {
	for k := range f.Stock {
		all = append(all, k)
	}
	f.inOrder(all)
	return
}

// inOrder sorts what is taken from stock by the steps that take it first.
func (f *Facts) inOrder(keys []StockKey) {
	sort.Slice(keys, func(i, j int) bool {
		a, b := f.Stock[keys[i]][0].Op.Span.Start, f.Stock[keys[j]][0].Op.Span.Start
		if a.Offset != b.Offset {
			return a.Offset < b.Offset
		}
		return keys[i].Half < keys[j].Half
	})
}

// OfNotion gathers the uses of a notion whatever half of it is used.
func (f *Facts) OfNotion(n *model.Notion) (all []Amount) {
	var keys []StockKey
	for _, half := range append([]string{""}, n.Parts...) {
		if k := (StockKey{Notion: n, Half: half}); len(f.Stock[k]) > 0 && !has(keys, k) {
			keys = append(keys, k)
		}
	}
	f.inOrder(keys)
	for _, k := range keys {
		all = append(all, f.Stock[k]...)
	}
	return
}
