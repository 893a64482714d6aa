package wording

import (
	"fmt"
	"math"

	"seamwarden/compiler/booklet"
	"seamwarden/compiler/check"
	"seamwarden/compiler/measure"
	"seamwarden/compiler/model"
)

// drawnUp says by how much an operation gathers: both lengths if they are the same in
// every garment of the booklet, else the part that is left, if that is; nothing if it
// says itself to what, or it is not known.
func (w *writer) drawnUp(op *model.Op) []booklet.Inline {
	if op.Phrase("to") != nil {
		return nil
	}
	if !w.gathersKnown {
		w.gathers, w.gathersKnown = check.Gathers(w.Pattern), true
	}
	long, short, part := spread{}, spread{}, spread{}
	for _, d := range w.gathers[op] {
		for i := range d.From {
			if w.there(w.Space.And(d.Cond, w.InSizes(func(k int) bool { return max(k, 0) == i }))) {
				long.add(d.From[i])
				short.add(d.To[i])
				part.add(d.To[i] / d.From[i])
			}
		}
	}
	const same = 5 // millimetres; gathers are not laid finer
	switch {
	case long.n == 0 || part.most >= 1:
		return nil
	case long.most-long.least < same && short.most-short.least < same:
		return fill(" "+w.ph.Phrases["drawn-up"], filling{"from": {w.drawnLength(long.most)}, "to": {w.drawnLength(short.most)}})
	case part.most < 1.1*part.least:
		percent := 5 * math.Round(20*(part.most+part.least)/2)
		return plain(" " + put(w.ph.Phrases["drawn-up-part"], "n", fmt.Sprint(percent)))
	}
	return nil
}

// drawnLength words a length from a drawing, to half a centimetre or a quarter of an
// inch.
func (w *writer) drawnLength(mm float64) booklet.Measure {
	step, unit := 5.0, measure.Centimetre
	if !w.metric {
		step, unit = 25.4/4, measure.Inch
	}
	l, _ := measure.FromFloatMM(math.Round(mm/step) * step)
	return w.measure(measure.Measure{Length: l, Unit: unit}, measure.Detail)
}

// spread is the least and the most of some numbers.
type spread struct {
	n           int
	least, most float64
}

func (s *spread) add(v float64) {
	if s.n == 0 {
		s.least, s.most = v, v
	}
	s.n++
	s.least, s.most = min(s.least, v), max(s.most, v)
}
