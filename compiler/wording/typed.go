package wording

import (
	"seamwarden/compiler/booklet"
	"seamwarden/compiler/measure"
)

// typed words a text of the author's in which measures may be typed by hand, as in
// the name of a notion: "Button, 3/4 in" is printed in both systems as well. The
// halves of a pair that she gave herself stay as they are, and so does what may be
// no measure at all.
func typed(text string) (out []booklet.Inline) {
	given := map[int]bool{}
	for _, p := range measure.FindPairs(text) {
		given[p.Imperial.Start], given[p.Metric.Start] = true, true
	}
	at := 0
	for _, m := range measure.FindAll(text) {
		if m.Err != nil || m.Doubtful || given[m.Start] || m.Start < at {
			continue
		}
		written := m.Unit.System()
		i, c := measure.Print(m.Length, measure.Detail, written, measure.English)
		out = add(out, booklet.Text(text[at:m.Start]))
		out = add(out, booklet.Measure{Imperial: i, Metric: c, MetricFirst: written == measure.Metric})
		at = m.End
	}
	return add(out, booklet.Text(text[at:]))
}
