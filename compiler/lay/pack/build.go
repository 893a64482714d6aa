package pack

import "sort"

// build lays one item after another, the largest first, each as far to the left
// as it goes among the places that are looked at.
func (f *finder) build() {
	order := make([]int, len(f.items))
	total := int64(0)
	for i := range order {
		order[i] = i
		k := f.kinds[f.items[i].poses[0]]
		total += max(k.w, k.h)
	}
	sort.SliceStable(order, func(a, b int) bool { return f.items[order[a]].area2 > f.items[order[b]].area2 })
	f.length = 4 * total
	far := f.length
	for i := range f.items {
		f.put(i, spot{0, far * 3, 0}) // out of the way
	}
	for _, i := range order {
		f.place(i)
	}
	f.measureAll()
	f.slide()
	f.best = f.save()
}

// place puts one item as far left as it goes.
func (f *finder) place(i int) {
	f.look(i)
	best, found := spot{}, false
	for range 400 {
		at := f.fit(i, f.contact(i))
		if f.cost(at, 0) > 0 {
			continue
		}
		if !found || f.right(i, at) < f.right(i, best) {
			best, found = at, true
		}
	}
	if !found { // beyond everything that lies already
		end := int64(0)
		for j := range f.items {
			if e := f.right(j, f.spot(j)); e < f.length && e > end {
				end = e
			}
		}
		best = f.fit(i, spot{0, end, 0})
	}
	f.put(i, best)
}

func (f *finder) right(i int, at spot) int64 { return at.x + f.kinds[f.items[i].poses[at.pose]].w }

// slide moves every item of a layout without overlaps to the left as far as it
// goes, and sets the length to what is needed.
func (f *finder) slide() {
	for range 3 {
		order := make([]int, len(f.items))
		for i := range order {
			order[i] = i
		}
		sort.SliceStable(order, func(a, b int) bool { return f.bodies[order[a]].x < f.bodies[order[b]].x })
		moved := false
		for _, i := range order {
			if x := int32(f.stop(i)); x < f.bodies[i].x {
				f.bodies[i].x, moved = x, true
			}
		}
		if !moved {
			break
		}
	}
	f.length = 0
	for i := range f.items {
		f.length = max(f.length, f.right(i, f.spot(i)))
	}
	f.measureAll()
}

// stop is how far left an item can slide without going through another.
func (f *finder) stop(i int) (x int64) {
	for j := range f.items {
		if j == i {
			continue
		}
		v := &f.views[f.bodies[j].kind][f.bodies[i].kind] // places of i from j
		dx, dy := f.between(j, i)
		for k, r := range v.parts {
			b := v.partBounds[k]
			if v.turned {
				// of j from i: look from the other side
				if -dy <= b.Min.Y || -dy >= b.Max.Y || b.Max.X <= -dx {
					continue
				}
				left, _, ok := across(r, -dy)
				if ok && left >= -dx {
					x = max(x, int64(f.bodies[j].x)-left)
				}
				continue
			}
			if dy <= b.Min.Y || dy >= b.Max.Y || b.Min.X >= dx {
				continue
			}
			if _, right, ok := across(r, dy); ok && right <= dx {
				x = max(x, int64(f.bodies[j].x)+right)
			}
		}
	}
	return min(x, int64(f.bodies[i].x))
}
