package pack

import (
	"fmt"
	"os"
	"sort"
)

// Budget says how much is to be done. Work counts the places that are looked at,
// a few million a second; the same work and seed give the same layout everywhere.
type Budget struct {
	Work int64
	Seed uint64
	// Stop is asked now and then whether to end early, if it is not nil. A search
	// that was ended by it is not repeatable.
	Stop func() bool
	// Progress tells which share of the search is over, from 0 to 1, if it is not nil;
	// Work is then only the limit. It is for a search that ends by the clock, and is
	// not repeatable.
	Progress func() float64
	// Better is told of each shorter layout, if it is not nil.
	Better func(length, work int64)
	// Start is a layout to begin with, nil for none: that of a neighbouring size.
	// Its overlaps are removed first.
	Start *Layout
}

func (b Budget) check(p Problem) error {
	if b.Start == nil {
		return nil
	}
	if len(b.Start.Places) != len(p.Shapes) {
		return fmt.Errorf("the layout to start from has %d places for %d shapes", len(b.Start.Places), len(p.Shapes))
	}
	for i, at := range b.Start.Places {
		if at.Pose < 0 || at.Pose >= len(p.Shapes[i].Poses) {
			return fmt.Errorf("the layout to start from puts shape %d in pose %d of %d", i, at.Pose, len(p.Shapes[i].Poses))
		}
	}
	return nil
}

// Search finds a short layout. It fails if the problem cannot be laid at all.
func Search(p Problem, b Budget) (Layout, error) {
	t, items, err := tableOf(p)
	if err != nil {
		return Layout{}, err
	}
	if err := b.check(p); err != nil {
		return Layout{}, err
	}
	t.prepare()
	return search(t, items, p.Width, b), nil
}

// tableOf checks a problem and splits its outlines.
func tableOf(p Problem) (*table, []item, error) {
	if err := p.check(); err != nil {
		return nil, nil, err
	}
	return newTable(p)
}

func search(t *table, items []item, width int64, b Budget) Layout {
	f := &finder{state: newState(t, items, width, b.Seed), budget: b}
	f.lowest = max(f.floor(), areaBound(items, width))
	f.build()
	if b.Start != nil {
		f.begin(*b.Start)
	}
	f.tell()
	f.explore()
	f.compress()
	return f.layout()
}

// finder is a search under way. best has no overlap.
type finder struct {
	*state
	budget  Budget
	best    snapshot
	stopped bool
	asked   int64
	share   int64
	lowest  int64 // no layout can be shorter
}

// spent reports whether a share of the search, in hundredths, is over.
func (f *finder) spent(share int64) bool { return f.progress() >= share*10 }

// progress is the share of the search that is over, in thousandths. What lies
// outside is asked now and then only.
func (f *finder) progress() int64 {
	if f.work-f.asked > 20_000 {
		f.asked = f.work
		f.stopped = f.stopped || f.budget.Stop != nil && f.budget.Stop()
		if f.budget.Progress != nil {
			f.share = int64(1000 * f.budget.Progress())
		}
	}
	if f.stopped || f.work >= f.budget.Work {
		return 1000
	}
	if f.budget.Progress != nil {
		return f.share
	}
	return int64(float64(f.work) / float64(f.budget.Work) * 1000)
}

func (f *finder) tell() {
	if f.budget.Better != nil {
		f.budget.Better(f.best.length, f.work)
	}
}

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
	best, found := spot{}, false
	for range 400 {
		at := f.fit(i, f.contact(i))
		if f.cost(i, at, 0) > 0 {
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
	if f.separate(patience{200, 3}, func() bool { return f.spent(50) }) {
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
	part := envInt("PART", 80)
	cut := int64(100) // in ten-thousandths of the length
	failed := []snapshot{}
	for !f.spent(part) && f.best.length > f.lowest {
		f.restore(f.best)
		if len(failed) > 0 && f.below(100) >= envInt("MODE", 0) {
			f.restore(f.pick(failed))
			f.disturb()
			f.shorten(max(f.lowest, f.best.length-max(1, f.best.length*cut/10_000)))
		} else if envInt("MODE", 0) > 0 {
			f.squeeze(max(1, f.best.length*(1+f.below(2*cut))/10_000))
		} else {
			f.shorten(max(f.lowest, f.best.length-max(1, f.best.length*cut/10_000)))
		}
		w0, l0 := f.work, f.loss()
		ok := f.separate(patience{int(envInt("ROUNDS", 200)), int(envInt("STRIKES", 3))}, func() bool { return f.spent(part) })
		if debugLog {
			println("explore", cut, f.length, ok, "loss", l0, f.loss(), "work", (f.work-w0)/1000)
		}
		if ok {
			f.slide()
			if f.length < f.best.length {
				f.best, failed = f.save(), failed[:0]
				f.tell()
			}
			continue
		}
		failed = append(failed, f.save())
		sort.SliceStable(failed, func(a, b int) bool { return failed[a].loss < failed[b].loss })
		cut = max(envInt("CUTMIN", 10), cut/2)
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
	order := make([]int, len(f.items))
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(a, b int) bool { return f.items[order[a]].area2 > f.items[order[b]].area2 })
	large := order[:max(2, len(order)/3)]
	if len(order) < 2 {
		return
	}
	i := large[f.below(int64(len(large)))]
	j := large[f.below(int64(len(large)))]
	for range 8 {
		if f.items[i].poses[0] != f.items[j].poses[0] {
			break
		}
		j = order[f.below(int64(len(order)))]
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
	if os.Getenv("DBG2") != "" {
		println("  explored to", f.best.length)
	}
	for !f.spent(100) && f.best.length > f.lowest {
		left := (1000 - f.progress()) * 1000 / max(1, 1000-begin)
		cut := max(1, f.best.length*left/1000*envInt("CCUT", 10)/10_000) // from a thousandth down to nothing
		f.restore(f.best)
		f.squeeze(cut)
		if f.separate(patience{int(envInt("CROUNDS", 100)), 1}, func() bool { return f.spent(100) }) {
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

// layout gives the best layout in the terms of the problem.
func (f *finder) layout() Layout {
	l := Layout{Length: f.best.length}
	for i, at := range f.best.spots {
		k := f.kinds[f.items[i].poses[at.pose]]
		l.Places = append(l.Places, Placement{at.pose, Point{at.x, at.y}.minus(k.offset)})
	}
	return l
}

var debugLog = os.Getenv("DBG") != ""
