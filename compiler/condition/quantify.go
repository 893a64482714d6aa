package condition

import (
	"math/big"
	"sort"
)

// Assignment is a garment: the value of each variable, by VarID. A variable
// with the value -1, or beyond the end, is unknown.
type Assignment []int

// of returns the value of a variable, -1 if unknown.
func (a Assignment) of(v VarID) int {
	if int(v) >= len(a) {
		return -1
	}
	return a[v]
}

// Restrict returns what is left of a condition once a variable has a value.
func (s *Space) Restrict(c Cond, v VarID, value int) Cond {
	if !s.has(v) || value < 0 || value >= len(s.vars[v].Values) {
		return c
	}
	s.fix()
	return s.descend(c, s.level[v], map[Cond]Cond{}, func(branches []Cond) Cond { return branches[value] })
}

// Given returns what is left of a condition once the known values of an
// assignment are settled.
func (s *Space) Given(c Cond, a Assignment) Cond {
	for _, v := range s.Support(c) {
		c = s.Restrict(c, v, a.of(v))
	}
	return c
}

// Exists returns the condition that c can hold for some value of these
// variables.
func (s *Space) Exists(c Cond, vars ...VarID) Cond { return s.quantify(c, vars, s.Any) }

// ForAll returns the condition that c holds whatever the values of these
// variables.
func (s *Space) ForAll(c Cond, vars ...VarID) Cond { return s.quantify(c, vars, s.All) }

func (s *Space) quantify(c Cond, vars []VarID, join func(...Cond) Cond) Cond {
	s.fix()
	for _, v := range vars {
		if s.has(v) {
			c = s.descend(c, s.level[v], map[Cond]Cond{}, func(branches []Cond) Cond { return join(branches...) })
		}
	}
	return c
}

// descend rebuilds a condition with every node of a level replaced by what the
// function makes of its branches.
func (s *Space) descend(c Cond, level int32, done map[Cond]Cond, replace func([]Cond) Cond) Cond {
	if c == Undecided || s.nodes[c].level > level {
		return c
	}
	if r, ok := done[c]; ok {
		return r
	}
	branches := append([]Cond(nil), s.branchesOf(c)...)
	var r Cond
	if at := s.nodes[c].level; at == level {
		r = replace(branches)
	} else {
		for i := range branches {
			branches[i] = s.descend(branches[i], level, done, replace)
		}
		r = s.make(at, branches)
	}
	done[c] = r
	return r
}

// Support returns the variables that a condition depends on, in the order in
// which they are decided.
func (s *Space) Support(conds ...Cond) []VarID {
	seen, levels := map[Cond]bool{}, map[int32]bool{}
	var walk func(Cond)
	walk = func(c Cond) {
		if c <= True || seen[c] {
			return
		}
		seen[c] = true
		levels[s.nodes[c].level] = true
		for _, b := range s.branchesOf(c) {
			walk(b)
		}
	}
	for _, c := range conds {
		walk(c)
	}
	var vars []VarID
	for level := range levels {
		vars = append(vars, s.order[level])
	}
	sort.Slice(vars, func(i, j int) bool { return s.level[vars[i]] < s.level[vars[j]] })
	return vars
}

// Eval says whether a condition holds for a garment. Where the assignment
// leaves something unknown, it says whether the condition holds in any case.
func (s *Space) Eval(c Cond, a Assignment) bool {
	for c > True {
		value := a.of(s.order[s.nodes[c].level])
		if value < 0 {
			return s.Given(c, a) == True
		}
		branches := s.branchesOf(c)
		if value >= len(branches) {
			return false
		}
		c = branches[value]
	}
	return c == True
}

// Witness returns a garment for which the condition holds, the plainest one:
// the first view that will do, then the first values of the choices, options
// left out, the first size. It returns false if there is none, or if the
// condition is Undecided.
func (s *Space) Witness(c Cond) (Assignment, bool) {
	if c == False || c == Undecided {
		return nil, false
	}
	a := make(Assignment, len(s.vars))
	for c > True {
		for value, b := range s.branchesOf(c) {
			if b != False {
				a[s.order[s.nodes[c].level]] = value
				c = b
				break
			}
		}
	}
	return a, true
}

// Count returns for how many garments the condition holds, all variables of
// the Space counted; nil if it is Undecided.
func (s *Space) Count(c Cond) *big.Int { return s.CountOver(c, s.order) }

// CountOver returns for how many values of these variables the condition
// holds; nil if it is Undecided. It must not depend on others.
func (s *Space) CountOver(c Cond, vars []VarID) *big.Int {
	if c == Undecided {
		return nil
	}
	s.fix()
	counted := map[int32]bool{}
	for _, v := range vars {
		counted[s.level[v]] = true
	}
	done := map[Cond]*big.Int{}
	// garments counts from a level on.
	var garments func(c Cond, from int32) *big.Int
	garments = func(c Cond, from int32) *big.Int {
		if c == False {
			return new(big.Int)
		}
		below := big.NewInt(1)
		at := min(s.nodes[c].level, int32(len(s.order)))
		if c != True {
			if done[c] == nil {
				done[c] = new(big.Int)
				for _, b := range s.branchesOf(c) {
					done[c].Add(done[c], garments(b, at+1))
				}
			}
			below.Set(done[c])
		}
		for level := from; level < at; level++ {
			if counted[level] {
				below.Mul(below, big.NewInt(int64(s.values(level))))
			}
		}
		return below
	}
	return garments(c, 0)
}
