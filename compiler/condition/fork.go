package condition

// Fork returns a Space that knows every condition of this one, under the same
// numbers, and goes its own way from then on: each of the two may be used by a
// goroutine of its own. What the fork makes later has a meaning in this Space only
// once it is brought over.
func (s *Space) Fork() *Space {
	s.fix()
	n, b, v := len(s.nodes), len(s.branches), len(s.vars)
	return &Space{
		vars: s.vars[:v:v], level: s.level[:v:v], order: s.order[:v:v], fixed: true,
		nodes: s.nodes[:n:n], branches: s.branches[:b:b], unique: append([]int32(nil), s.unique...),
		limit: s.limit, forked: n,
	}
}

// Bring gives a condition of a fork of this Space the number that it has here. The
// fork must be at rest.
func (s *Space) Bring(fork *Space, c Cond) Cond {
	if int(c) < fork.forked || c == Undecided { // it was made before
		return c
	}
	if b, ok := fork.brought[c]; ok {
		return b
	}
	s.overflow = s.overflow || fork.overflow
	n := fork.nodes[c]
	branches := append([]Cond(nil), fork.branchesOf(c)...)
	for i, b := range branches {
		branches[i] = s.Bring(fork, b)
	}
	here := s.make(n.level, branches)
	if fork.brought == nil {
		fork.brought = map[Cond]Cond{}
	}
	fork.brought[c] = here
	return here
}
