package pack

import "sort"

// begin takes a layout to start from, if it is shorter than what was built, or can
// be freed of its overlaps at its own length.
func (f *finder) begin(l Layout) {
	f.length = max(l.Length, f.floor())
	for i, at := range l.Places {
		k := f.kinds[f.items[i].poses[at.Pose]]
		from := at.At.plus(k.offset)
		f.put(i, spot{at.Pose, 0, 0})
		f.shortenTo(f.length)
		f.put(i, f.fit(i, spot{f.pose[i], min(max(0, from.X), f.length), min(max(0, from.Y), f.width)}))
	}
	f.measureAll()
	if f.separate(patience{200, 3}, f.best.length+1, func() bool { return f.spent(50) }) {
		f.slide()
		if f.length <= f.best.length {
			f.best = f.save()
		}
	}
}

// floor is the length below which some item fits in no pose.
func (f *finder) floor() (most int64) {
	for _, it := range f.items {
		most = max(most, f.shortest(it))
	}
	return
}

// shortenTo sets the length; an item whose pose has become too long for the strip
// takes its shortest.
func (f *finder) shortenTo(length int64) {
	f.length = length
	for i, it := range f.items {
		if f.fits(i, f.pose[i]) {
			continue
		}
		at := f.spot(i)
		for pose, k := range it.poses {
			if f.kinds[k].w < f.kinds[it.poses[at.pose]].w {
				at.pose = pose
			}
		}
		f.put(i, at)
	}
}

// explore makes the strip shorter by a share, removes the overlaps, and goes on
// from there; after a failure it disturbs what it had.
func (f *finder) explore() {
	const part = 80
	cut := int64(100) // in ten-thousandths of the length
	failed := []snapshot{}
	for !f.spent(part) && f.best.length > f.lowest {
		f.restore(f.best)
		if len(failed) > 0 {
			f.restore(f.pick(failed))
			f.disturb()
		}
		f.shorten(max(f.lowest, f.best.length-max(1, f.best.length*cut/10_000)))
		ok := f.separate(patience{200, 3}, f.best.length, func() bool { return f.spent(part) })
		if ok {
			f.press(f.length)
			f.slide()
			if f.length < f.best.length {
				f.best, failed = f.save(), failed[:0]
				f.tell()
			}
			continue
		}
		failed = append(failed, f.save())
		sort.SliceStable(failed, func(a, b int) bool { return failed[a].loss < failed[b].loss })
		cut = max(10, cut/2)
	}
}

// pick takes one of the layouts that nearly fit, the better the likelier.
func (f *finder) pick(failed []snapshot) snapshot {
	n := int64(len(failed))
	a, b := f.below(n), f.below(n)
	return failed[a*b/n]
}

// shorten moves the end of the strip to a length; what stood beyond is moved in.
func (f *finder) shorten(length int64) {
	f.shortenTo(length)
	for i := range f.items {
		f.put(i, f.fit(i, f.spot(i)))
	}
	f.measureAll()
}

// disturb lets two large items change places.
func (f *finder) disturb() {
	if len(f.items) < 2 {
		return
	}
	order := make([]int, len(f.items))
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(a, b int) bool { return f.items[order[a]].area2 > f.items[order[b]].area2 })
	if f.below(3) > 0 { // mostly large ones
		order = order[:max(2, len(order)/3)]
	}
	n := int64(len(order))
	i, j := order[f.below(n)], order[f.below(n)]
	for range 8 {
		if f.items[i].poses[0] != f.items[j].poses[0] {
			break
		}
		j = order[f.below(n)]
	}
	a, b := f.spot(i), f.spot(j)
	f.put(i, f.fit(i, spot{a.pose, b.x, b.y}))
	f.put(j, f.fit(j, spot{b.pose, a.x, a.y}))
	f.measureAll()
}

// compress squeezes the best layout in ever smaller steps: all that lies beyond a
// place moves to the left by the cut.
func (f *finder) compress() {
	begin := f.progress()
	for !f.spent(100) && f.best.length > f.lowest {
		left := (1000 - f.progress()) * 1000 / max(1, 1000-begin)
		cut := max(1, f.best.length*left/1000/1000) // from a thousandth down to nothing
		f.restore(f.best)
		f.squeeze(cut)
		if f.separate(patience{100, 1}, f.best.length, func() bool { return f.spent(100) }) {
			f.press(f.length)
			f.slide()
			if f.length < f.best.length {
				f.best = f.save()
				f.tell()
			}
		}
	}
}

// squeeze shortens the strip: all that lies beyond a place moves to the left.
func (f *finder) squeeze(cut int64) {
	at := f.below(f.length)
	f.shortenTo(max(f.lowest, f.length-cut))
	cut = f.best.length - f.length
	for i := range f.items {
		to := f.spot(i)
		if to.x+f.kinds[f.bodies[i].kind].w/2 > at {
			to.x -= cut
		}
		f.put(i, f.fit(i, to))
	}
	f.measureAll()
}
