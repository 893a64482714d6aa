package pack

import "testing"

// BenchmarkSearch is a search of fixed work on an invented lay; places/s is how many
// places it looks at in a second.
func BenchmarkSearch(b *testing.B) {
	const work = 500_000
	for b.Loop() {
		if _, err := Search(invented(), Budget{Work: work, Seed: 1}); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(work*float64(b.N)/b.Elapsed().Seconds(), "places/s")
}

// BenchmarkCost looks at places anywhere on a finished lay.
func BenchmarkCost(b *testing.B) {
	p := invented()
	t, items, err := tableOf(p)
	if err != nil {
		b.Fatal(err)
	}
	t.prepare(nil)
	f := &finder{state: newState(t, items, p.Width, 1)}
	f.build()
	i, n := 0, 0
	f.look(i)
	for b.Loop() {
		if n++; n%100 == 0 {
			i = int(f.below(int64(len(items))))
			f.look(i)
		}
		rx, ry := f.room(i, 0)
		f.cost(spot{0, f.below(rx + 1), f.below(ry + 1)}, endless)
	}
}

// BenchmarkPairs splits the outlines and makes all pairs of the invented lay.
func BenchmarkPairs(b *testing.B) {
	for b.Loop() {
		t, _, err := tableOf(invented())
		if err != nil {
			b.Fatal(err)
		}
		t.prepare(nil)
	}
}
