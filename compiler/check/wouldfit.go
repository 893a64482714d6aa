package check

import (
	"math"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// untaken is an edge of which it is said that nothing is done to it.
type untaken struct{ *model.Edge }

// wouldFit reports whether the rows of a seam, which differ by so much in a size, would
// be alike with an edge that is left over: whoever takes it into the seam mends both.
func (r *run) wouldFit(s *model.Seam, bad condition.Cond, differ float64, size int) bool {
	if r.Sizes == nil || len(r.Sizes.Sizes) == 0 {
		size = -1
	}
	for thing, told := range r.spoken {
		left, ok := thing.(untaken)
		if !ok || !r.possible(r.Space.And(bad, told)) {
			continue
		}
		for _, d := range left.Piece.Outlines {
			o := d.Outline(r.Pattern, size)
			if o == nil || o.Edge(left.ID) == nil {
				continue
			}
			once, dart := o.Edge(left.ID).Length(), r.shapedIn(s)
			for _, long := range [...]float64{once, 2 * once} { // whole, or drawn as its half
				for _, long := range [...]float64{long, long - dart} { // a dart was perhaps counted twice, to fit better
					if math.Abs(long-math.Abs(differ)) <= max(5*rowsDifferMM, 0.05*long) {
						return true
					}
				}
			}
		}
	}
	return false
}

// shapedIn is how much darts, pleats and tucks take out of the edges of a seam.
func (r *run) shapedIn(s *model.Seam) (mm float64) {
	for _, x := range r.Shapings {
		if x.In != nil && x.In.Edge != nil && x.Takes != nil && takes(s, x.In.Edge) {
			mm += x.Takes.Length.MM()
		}
	}
	return
}

// seamEnd is a mark of an edge at which a seam ends that does not fit. If the mark has
// slid, its notch meets itself nowhere.
type seamEnd struct {
	edge *model.Edge
	mark string
}

func (r *run) tellEnds(s *model.Seam, bad condition.Cond) {
	for _, t := range s.Rows() {
		for _, end := range []*model.Target{t.From, t.To} {
			if end == nil || end.Mark == nil {
				continue
			}
			for _, o := range s.Rows() {
				r.tell(seamEnd{o.Edge, end.Mark.ID}, bad)
			}
		}
	}
}
