package condition

// branch returns where a condition leads if the variable of the level has this
// value. A condition that does not decide that level leads to itself.
func (s *Space) branch(c Cond, level int32, value int) Cond {
	n := s.nodes[c]
	if n.level != level {
		return c
	}
	return s.branches[int(n.first)+value]
}

// make returns the node that decides the level with these branches; branches
// that are all the same need no node. The slice is copied.
func (s *Space) make(level int32, branches []Cond) Cond {
	same := true
	for _, b := range branches {
		if b == Undecided {
			return Undecided
		}
		same = same && b == branches[0]
	}
	if same {
		return branches[0]
	}
	slot := s.slot(level, branches)
	if s.unique[slot] != 0 {
		return Cond(s.unique[slot])
	}
	if len(s.nodes) >= s.limit {
		s.overflow = true
		return Undecided
	}
	c := Cond(len(s.nodes))
	s.nodes = append(s.nodes, node{level: level, first: int32(len(s.branches))})
	s.branches = append(s.branches, branches...)
	s.unique[slot] = int32(c)
	if 2*len(s.nodes) > len(s.unique) {
		s.grow()
	}
	return c
}

// slot returns the place in the table of nodes where a node with these
// branches stands, or where it belongs.
func (s *Space) slot(level int32, branches []Cond) uint32 {
	mask := uint32(len(s.unique) - 1)
	h := uint32(level)*0x9e3779b1 + 1
	for _, b := range branches {
		h = (h ^ uint32(b)) * 0x85ebca6b
		h ^= h >> 15
	}
	for i := h & mask; ; i = (i + 1) & mask {
		c := s.unique[i]
		if c == 0 || s.nodes[c].level == level && equal(s.branchesOf(Cond(c)), branches) {
			return i
		}
	}
}

func equal(a, b []Cond) bool {
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}

// branchesOf returns the branches of a node that is not a terminal.
func (s *Space) branchesOf(c Cond) []Cond {
	n := s.nodes[c]
	return s.branches[n.first : int(n.first)+s.values(n.level)]
}

// grow doubles the table of nodes.
func (s *Space) grow() {
	s.unique = make([]int32, 2*len(s.unique))
	for c := 2; c < len(s.nodes); c++ {
		s.unique[s.slot(s.nodes[c].level, s.branchesOf(Cond(c)))] = int32(c)
	}
}

// Is returns the condition that a variable has this value. A value or a
// variable that there is not is nowhere.
func (s *Space) Is(v VarID, value int) Cond { return s.In(v, value) }

// In returns the condition that a variable has one of these values.
func (s *Space) In(v VarID, values ...int) Cond {
	if !s.has(v) {
		return False
	}
	s.fix()
	branches := make([]Cond, len(s.vars[v].Values))
	for _, value := range values {
		if value >= 0 && value < len(branches) {
			branches[value] = True
		}
	}
	return s.make(s.level[v], branches)
}
