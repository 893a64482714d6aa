package condition

import "slices"

// irredundant returns cubes between l and u of which none, and no literal of
// any, can be left out. It returns none if there would be more than MostCubes.
func (s *Space) irredundant(l, u Cond) []Cube {
	m := &morreale{s: s, done: map[[2]Cond]*cover{}}
	c := m.cover(l, u)
	if c == nil {
		return nil
	}
	cubes := make([]Cube, len(c.cubes))
	for i, cube := range c.cubes {
		cubes[i] = s.widened(cube, u)
	}
	return s.needed(cubes, l)
}

// cover is a row of cubes and the condition that they stand for.
type cover struct {
	cubes []Cube
	cond  Cond
}

// morreale makes covers from the root of the diagram down: what holds for
// every value of a variable is covered without naming it, what is left is
// covered for each value, values that behave alike together.
type morreale struct {
	s    *Space
	done map[[2]Cond]*cover
}

// cover returns cubes between l and u; nil if there are too many.
func (m *morreale) cover(l, u Cond) *cover {
	switch {
	case l == Undecided || u == Undecided:
		return nil
	case l == False:
		return &cover{cond: False}
	case u == True:
		return &cover{cubes: []Cube{{}}, cond: True}
	}
	k := [2]Cond{l, u}
	if c, ok := m.done[k]; ok {
		return c
	}
	c := m.split(l, u)
	m.done[k] = c
	return c
}

func (m *morreale) split(l, u Cond) *cover {
	s := m.s
	level := min(s.nodes[l].level, s.nodes[u].level)
	v := s.order[level]
	common := s.ForAll(u, v)
	total := &cover{cond: False}
	rest := False // of l, not covered yet, for some value
	for _, class := range s.axisOf(l, u, v).classes {
		lc, uc := s.branch(l, level, class[0]), s.branch(u, level, class[0])
		part := m.cover(s.Diff(lc, common), uc)
		if part == nil || len(total.cubes)+len(part.cubes) > MostCubes {
			return nil
		}
		total.join(s, part, v, class)
		rest = s.Or(rest, s.Diff(lc, part.cond))
	}
	part := m.cover(rest, common)
	if part == nil || len(total.cubes)+len(part.cubes) > MostCubes {
		return nil
	}
	total.cubes = append(total.cubes, part.cubes...)
	total.cond = s.Or(total.cond, part.cond)
	return total
}

// join adds a cover that holds for some values of a variable. A cube that is
// there already for other values takes these in.
func (c *cover) join(s *Space, part *cover, v VarID, values []int) {
	for _, cube := range part.cubes {
		same := slices.IndexFunc(c.cubes, func(old Cube) bool {
			return len(old) == len(cube)+1 && old[0].Var == v && slices.EqualFunc(old[1:], cube, sameLiteral)
		})
		if same >= 0 {
			merged := append(slices.Clone(c.cubes[same][0].Values), values...)
			slices.Sort(merged)
			c.cubes[same] = append(Cube{{Var: v, Values: merged}}, cube...)
			continue
		}
		c.cubes = append(c.cubes, append(Cube{{Var: v, Values: slices.Clone(values)}}, cube...))
	}
	c.cond = s.Or(c.cond, s.And(s.In(v, values...), part.cond))
}

func sameLiteral(a, b Literal) bool { return a.Var == b.Var && slices.Equal(a.Values, b.Values) }

// widened adds to the literals of a cube each value that may be there. No
// literal can be left out: a cube names a variable only where it covers a
// garment that would not be covered for some other value.
func (s *Space) widened(cube Cube, u Cond) Cube {
	for i := range cube {
		for value := range s.vars[cube[i].Var].Values {
			wider := slices.Clone(cube)
			wider[i].Values = withValue(cube[i].Values, value)
			if s.Implies(s.cond(wider), u) {
				cube = wider
			}
		}
	}
	return cube
}

// withValue returns the values and this one, in order and each once.
func withValue(values []int, value int) []int {
	all := append(slices.Clone(values), value)
	slices.Sort(all)
	return slices.Compact(all)
}

// needed leaves out cubes, the longest first, as long as the others cover l.
func (s *Space) needed(cubes []Cube, l Cond) []Cube {
	slices.SortStableFunc(cubes, func(a, b Cube) int { return len(b) - len(a) })
	for i := 0; i < len(cubes); {
		others := slices.Delete(slices.Clone(cubes), i, i+1)
		union := False
		for _, cube := range others {
			union = s.Or(union, s.cond(cube))
		}
		if s.Implies(l, union) {
			cubes = others
		} else {
			i++
		}
	}
	return cubes
}
