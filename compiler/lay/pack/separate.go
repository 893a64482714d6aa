package pack

// The weights grow by a share between these, in thousandths, the deepest pair
// most; those of pairs that are free fall back.
const (
	growMost, growLeast, shrink = 2000, 1200, 950
	heaviest                    = int64(1) << 34
)

// reweigh raises the weights of the pairs that overlap.
func (s *state) reweigh() {
	n := len(s.items)
	deepest := int64(1)
	for _, d := range s.depth {
		deepest = max(deepest, d)
	}
	for i := range n {
		for j := i + 1; j < n; j++ {
			w := s.weight[i*n+j]
			if d := s.depth[i*n+j]; envAdd > 0 && d > 0 {
				w += one * envAdd * d / deepest / 100
			} else if envAdd > 0 {
				w = max(one, w*envDecay/1000)
			} else if d > 0 {
				w = min(heaviest, w*(growLeast+(envGrow-growLeast)*d/deepest)/1000)
			} else {
				w = max(one, w*shrink/1000)
			}
			s.weight[i*n+j], s.weight[j*n+i] = w, w
		}
	}
}

// patience is how long a separation goes on without getting better.
type patience struct {
	rounds, strikes int
}

// separate moves overlapping items until none is left, and reports whether it came
// so far; if not, the least overlapping layout is left standing.
func (s *state) separate(p patience, over func() bool) bool {
	s.evenWeights()
	if envRelax > 0 && s.relax(int(envRelax)) {
		return true
	}
	least := s.save()
	order := make([]int, 0, len(s.items))
	for strike := 0; strike < p.strikes && least.loss > 0; strike++ {
		start := least.loss
		if strike > 0 {
			s.restore(least)
		}
		for idle := 0; idle < p.rounds; idle++ {
			s.round(order)
			loss := s.loss()
			if debugLog && idle%10 == 0 {
				c := 0
				for i := range s.items {
					if s.overlapping(i) {
						c++
					}
				}
				println("  strike", strike, idle, "loss", loss, "least", least.loss, "overlapping", c, s.work/1000)
			}
			if loss == 0 {
				return true
			}
			if loss < least.loss {
				if loss*50 < least.loss*49 {
					idle = 0
				}
				least = s.save()
				if envRelax > 0 && s.relax(int(envRelax)) {
					return true
				}
			}
			if over() {
				strike = p.strikes
				break
			}
			s.reweigh()
		}
		if least.loss*50 < start*49 {
			strike = -1
		}
	}
	s.restore(least)
	return least.loss == 0
}

// round moves each overlapping item once, in random order.
func (s *state) round(order []int) {
	order = order[:0]
	for i := range s.items {
		if s.overlapping(i) {
			order = append(order, i)
		}
	}
	for k := len(order) - 1; k > 0; k-- {
		j := int(s.below(int64(k + 1)))
		order[k], order[j] = order[j], order[k]
	}
	for _, i := range order {
		if s.overlapping(i) {
			s.move(i)
		}
	}
}

var envGrow = envInt("GROW", growMost)

var envAdd, envDecay = envInt("ADD", 0), envInt("DECAY", 950)

var envRelax = envInt("RELAX", 0)
