package pack

// The weights grow by a share between these, in thousandths, the deepest pair
// most; those of pairs that are free fall back. A growth of two drove
// shapes away from overlaps that were nearly solved, as the trace of trials showed.
const (
	growMost, growLeast, shrink = 1500, 1200, 950
	heaviest                    = int64(1) << 34
)

// many is from how many items on the weights grow by steps that are added, and keep
// what they have. Chosen by trial on the open instances, one seed of ten million
// places each: with 64 and 99 shapes adding gave 0.6 and 0.9 points more. Between 20
// and 48 shapes the trials differed by less than the seeds do; where the change
// should be is not known.
const many = 56

// reweigh raises the weights of the pairs that overlap.
func (s *state) reweigh() {
	n := len(s.items)
	deepest := int64(1)
	for _, d := range s.depth {
		deepest = max(deepest, d)
	}
	for i := range n {
		for j := i + 1; j < n; j++ {
			w := grown(s.weight[i*n+j], s.depth[i*n+j], deepest, n >= many)
			s.weight[i*n+j], s.weight[j*n+i] = w, w
		}
	}
}

// grown is the next weight of a pair of a depth.
func grown(w, depth, deepest int64, adding bool) int64 {
	switch {
	case adding:
		return w + one*depth/deepest
	case depth > 0:
		return min(heaviest, w*(growLeast+(growMost-growLeast)*depth/deepest)/1000+1)
	}
	return max(one, w*shrink/1000)
}

// patience is how long a separation goes on without getting better, and how often
// it then begins again from the best that it had.
type patience struct {
	rounds, strikes int
}

// separate moves overlapping items until none is left, and reports whether it came
// so far with the strip shorter than below; if not, the least overlapping layout is
// left standing.
func (s *state) separate(p patience, below int64, over func() bool) bool {
	s.evenWeights()
	least := s.save()
	for strike := 0; strike < p.strikes && least.loss > 0; strike++ {
		start := least.loss
		if strike > 0 {
			s.restore(least)
		}
		var ended bool
		if least, ended = s.strike(p.rounds, below, least, over); ended {
			break
		}
		if least.loss*50 < start*49 { // it got better by a fiftieth
			strike = -1
		}
	}
	s.restore(least)
	return least.loss == 0
}

// A layout is pressed if its overlaps add up to less than one part of so many of the
// width, and pressing has not taken more than one part of so many of the work.
const pressable, pressShare = 10, 8

// strike goes on in rounds until no overlap is left, or for a number of rounds
// nothing got better by a fiftieth. It gives the best layout it met, and whether the
// separation is over.
func (s *state) strike(rounds int, below int64, least snapshot, over func() bool) (snapshot, bool) {
	for idle := 0; idle < rounds; idle++ {
		s.round()
		loss := s.loss()
		if loss < least.loss {
			if loss*50 < least.loss*49 {
				idle = 0
			}
			least = s.save()
		}
		if loss == 0 || over() {
			return least, true
		}
		if loss < s.width/pressable && s.pressing*pressShare < s.work && s.press(below) {
			return s.save(), true
		}
		s.reweigh()
	}
	return least, false
}

// round moves each overlapping item once, in random order.
func (s *state) round() {
	s.order = s.order[:0]
	for i := range s.items {
		if s.overlapping(i) {
			s.order = append(s.order, i)
		}
	}
	for k := len(s.order) - 1; k > 0; k-- {
		j := int(s.below(int64(k + 1)))
		s.order[k], s.order[j] = s.order[j], s.order[k]
	}
	for _, i := range s.order {
		if s.overlapping(i) {
			s.move(i)
		}
	}
}
