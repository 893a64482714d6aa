package assembly

import (
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// signs are the conditions in which a group is found to be + and -, in all
// garments at once.
type signs struct {
	space *condition.Space
	is    map[group]*[2]condition.Cond // 0 is +, 1 is -
	of    map[group][]*tie
	ties  []*tie
}

func newSigns(space *condition.Space, ties []*tie) *signs {
	s := &signs{space: space, is: map[group]*[2]condition.Cond{}, of: map[group][]*tie{}, ties: ties}
	for _, t := range ties {
		for _, g := range []group{t.a, t.b} {
			if s.is[g] == nil {
				s.is[g] = &[2]condition.Cond{}
			}
			s.of[g] = append(s.of[g], t)
		}
	}
	return s
}

// known is where a group has a sign.
func (s *signs) known(g group) condition.Cond { return s.space.Or(s.is[g][0], s.is[g][1]) }

// spread gives a group the sign + wherever it has none yet and c holds, and hands
// signs on along the ties. A sign that a group has is kept: a tie that contradicts
// it is found afterwards.
func (s *signs) spread(start group, c condition.Cond) {
	if c = s.space.Diff(c, s.known(start)); c == condition.False {
		return
	}
	s.is[start][0] = s.space.Or(s.is[start][0], c)
	waits := map[group]bool{start: true}
	for queue := []group{start}; len(queue) > 0; queue = queue[1:] {
		at := queue[0]
		waits[at] = false
		if at == (group{}) && at != start {
			continue
		}
		for _, t := range s.of[at] {
			if to := t.other(at); s.hand(t, at, to) && !waits[to] && to != (group{}) {
				waits[to] = true
				queue = append(queue, to)
			}
		}
	}
}

func (t *tie) other(g group) group {
	if g == t.a {
		return t.b
	}
	return t.a
}

// hand hands the signs of a group on to another, where that has none yet.
func (s *signs) hand(t *tie, from, to group) (changed bool) {
	for n := range 2 {
		m := n
		if t.sign < 0 {
			m = 1 - n
		}
		c := s.space.Diff(s.space.And(s.is[from][n], t.cond), s.known(to))
		if c != condition.False {
			s.is[to][m] = s.space.Or(s.is[to][m], c)
			changed = true
		}
	}
	return
}

// against is where a tie contradicts the signs of its groups.
func (s *signs) against(t *tie) condition.Cond {
	bad := condition.False
	for n := range 2 {
		m := 1 - n
		if t.sign < 0 {
			m = n
		}
		bad = s.space.Or(bad, s.space.And(s.is[t.a][n], s.is[t.b][m]))
	}
	return s.space.And(bad, t.cond)
}

// solve spreads signs from the constant first, then from each group that hangs on
// nothing, and gives the signs that hang on the constant. Groups stand in the
// order of their ties, so that every run tells the same.
func (s *signs) solve() (fixed map[group][2]condition.Cond) {
	fixed = map[group][2]condition.Cond{}
	if s.is[group{}] != nil {
		s.spread(group{}, condition.True)
	}
	for g, is := range s.is {
		fixed[g] = *is
	}
	for _, t := range s.ties {
		s.spread(t.a, t.cond)
		s.spread(t.b, t.cond)
	}
	return
}

// islands divides ties into those that hang together without the constant: what
// is wrong in one of them says nothing of another.
func islands(ties []*tie) (all [][]*tie) {
	of := map[group][]int{}
	for n, t := range ties {
		of[t.a], of[t.b] = append(of[t.a], n), append(of[t.b], n)
	}
	seen := make([]bool, len(ties))
	for n := range ties {
		if seen[n] {
			continue
		}
		seen[n] = true
		var island []*tie
		for queue := []int{n}; len(queue) > 0; queue = queue[1:] {
			t := ties[queue[0]]
			island = append(island, t)
			for _, g := range []group{t.a, t.b} {
				for _, m := range of[g] {
					if g != (group{}) && !seen[m] {
						seen[m] = true
						queue = append(queue, m)
					}
				}
			}
		}
		all = append(all, island)
	}
	return
}

// mostRegions bounds the garments that are told apart to find out which piece is
// to blame.
const mostRegions = 64

// regions divides the garments in which something is wrong so that in each of them
// every tie either holds or does not; false if there are too many.
func regions(space *condition.Space, bad condition.Cond, ties []*tie) ([]condition.Cond, bool) {
	list := []condition.Cond{bad}
	for _, t := range ties {
		var next []condition.Cond
		for _, r := range list {
			for _, c := range []condition.Cond{space.And(r, t.cond), space.Diff(r, t.cond)} {
				if c != condition.False {
					next = append(next, c)
				}
			}
		}
		if len(next) > mostRegions {
			return nil, false
		}
		list = next
	}
	return list, true
}

// broken lists the ties that cannot be kept in one region.
func broken(space *condition.Space, region condition.Cond, ties []*tie) (bad []*tie) {
	var here []*tie
	for _, t := range ties {
		if space.Implies(region, t.cond) {
			c := *t
			c.cond = condition.True
			here = append(here, &c)
		}
	}
	s := newSigns(space, here)
	s.solve()
	for _, t := range here {
		if s.against(t) != condition.False {
			bad = append(bad, t)
		}
	}
	return
}

// blame finds the single cut whose turning over leaves the fewest contradictions;
// nil if several would do as well, or if none helps.
func blame(space *condition.Space, region condition.Cond, ties []*tie) *model.Cut {
	var best *model.Cut
	least := len(broken(space, region, ties))
	for i, t := range ties {
		if !t.said || !space.Implies(region, t.cond) {
			continue
		}
		turned := append([]*tie(nil), ties...)
		over := *t
		over.sign = -t.sign
		turned[i] = &over
		switch n := len(broken(space, region, turned)); {
		case n < least:
			least, best = n, t.a.cut
		case n == least && best != nil:
			best = nil
		}
	}
	return best
}
