package pack

import (
	"fmt"
)

// Budget says how much is to be done. Work counts the places that are looked at,
// a few million a second; the same work and seed give the same layout everywhere.
type Budget struct {
	Known *Pairs // what problems with the same outlines worked out; nil keeps nothing
	Work  int64
	Seed  uint64
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
	t.prepare(b.Known)
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

// layout gives the best layout in the terms of the problem.
func (f *finder) layout() Layout {
	l := Layout{Length: f.best.length}
	for i, at := range f.best.spots {
		k := f.kinds[f.items[i].poses[at.pose]]
		l.Places = append(l.Places, Placement{at.pose, Point{at.x, at.y}.minus(k.offset)})
	}
	return l
}
