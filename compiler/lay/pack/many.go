package pack

import "sync"

// SearchMany runs n searches side by side, each with the whole work, with the seeds
// from b.Seed on, and returns the shortest layout, of equals that of the first seed.
// The answer does not depend on how many cores there are. b.Better and b.Stop are
// called by one search at a time.
func SearchMany(p Problem, b Budget, n int) (Layout, error) {
	t, items, err := tableOf(p)
	if err != nil {
		return Layout{}, err
	}
	if err := b.check(p); err != nil {
		return Layout{}, err
	}
	t.prepare(b.Known)
	var one sync.Mutex
	var all sync.WaitGroup
	found := make([]Layout, max(1, n))
	for i := range found {
		own := b
		own.Seed += uint64(i)
		if b.Better != nil {
			own.Better = func(length, work int64) {
				one.Lock()
				defer one.Unlock()
				b.Better(length, work)
			}
		}
		if b.Stop != nil {
			own.Stop = func() bool {
				one.Lock()
				defer one.Unlock()
				return b.Stop()
			}
		}
		if b.Progress != nil {
			own.Progress = func() float64 {
				one.Lock()
				defer one.Unlock()
				return b.Progress()
			}
		}
		all.Go(func() { found[i] = search(t, items, p.Width, own) })
	}
	all.Wait()
	best := found[0]
	for _, l := range found[1:] {
		if l.Length < best.Length {
			best = l
		}
	}
	return best, nil
}
