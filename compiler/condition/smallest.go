package condition

import (
	"math/big"
	"slices"
	"sort"
)

// Literal says that a variable has one of these values: in ascending order, at
// least one, not all.
type Literal struct {
	Var    VarID
	Values []int
}

// Cube is a row of literals that all hold, at most one for a variable, in the
// order view, choices, options, size. An empty cube holds everywhere.
type Cube []Literal

// Description says where something holds.
type Description struct {
	// Cubes are the alternatives: it holds where one of them does. There are
	// none where it holds nowhere, and none where more than MostCubes would be
	// needed or the Space could not decide; Count and Witness still hold then.
	Cubes []Cube

	Always    bool // it holds for every valid garment
	Exact     bool // there is no shorter description; else no cube can be left out of it, unless the Space ran into its limit
	Undecided bool // the Space ran into its limit: nothing is known

	// Vars are the variables that it depends on. Count says in how many
	// combinations of their values it holds, Of how many of them are valid.
	Vars      []VarID
	Count, Of *big.Int

	// Witness is one valid garment for which it holds; nil if there is none.
	Witness Assignment
}

const (
	// MostCubes is the most alternatives that a description lists.
	MostCubes = 256

	exactVars = 6 // with more variables left no exact cover is sought
)

// Smallest describes where bad holds among the valid garments, with as few
// words as will do. Garments that are not valid may be described or not,
// whichever is shorter.
//
// The description lies between L = bad ∧ valid and U = bad ∨ ¬valid. First
// every variable is dropped that need not be named (sizes first, then options,
// choices, views). With at most six left, all largest cubes inside U are found
// and L is covered by as few of them as possible (fewest cubes, then fewest
// literals, then fewest negations: W. V. Quine's problem, with many-valued
// literals). With more, an irredundant cover is made (S. Minato and E.
// Morreale's method, with many-valued literals) and Exact is false.
func (s *Space) Smallest(bad, valid Cond) Description {
	l, u := s.And(bad, valid), s.Or(bad, s.Not(valid))
	if l == Undecided || u == Undecided {
		return Description{Undecided: true}
	}
	witness, somewhere := s.Witness(l)
	if !somewhere {
		return Description{Exact: true, Count: new(big.Int), Of: big.NewInt(1)}
	}
	if u == True {
		one := big.NewInt(1)
		return Description{Cubes: []Cube{{}}, Always: true, Exact: true, Count: one, Of: one, Witness: witness}
	}
	d := Description{Witness: witness}
	badL := l
	l, u = s.dropVars(l, u)
	d.Vars = s.Support(l, u)
	s.count(&d, badL, valid)
	if len(d.Vars) <= exactVars {
		d.Cubes, d.Exact = s.exactCover(l, u, d.Vars)
	}
	switch {
	case d.Cubes == nil:
		d.Cubes = s.irredundant(l, u)
		// Each of d.Vars must be named, so one cube that names each once is the smallest.
		d.Exact = len(d.Cubes) == 1
	case !d.Exact:
		d.Cubes = s.needed(d.Cubes, l)
	}
	d.Exact = d.Exact && !s.overflow // a variable may have been kept for want of room
	for i := range d.Cubes {
		d.Cubes[i] = s.onlyReal(d.Cubes[i], l)
	}
	s.sortCubes(d.Cubes)
	return d
}

// dropVars narrows the interval until it depends on no variable that need not
// be named.
func (s *Space) dropVars(l, u Cond) (Cond, Cond) {
	vars := s.Support(l, u)
	sort.SliceStable(vars, func(i, j int) bool { return s.dropRank(vars[i]) < s.dropRank(vars[j]) })
	for _, v := range vars {
		wide, narrow := s.Exists(l, v), s.ForAll(u, v)
		if wide != Undecided && narrow != Undecided && s.Implies(wide, narrow) {
			l, u = wide, narrow
		}
	}
	return l, u
}

// dropRank is lower for what a reader would rather not be told.
func (s *Space) dropRank(v VarID) int {
	return [...]int{View: 3, Choice: 2, Option: 1, Size: 0}[s.vars[v].Kind]
}

// count counts the combinations of the variables that are left: in how many it
// holds for some valid garment, and how many are valid.
func (s *Space) count(d *Description, l, valid Cond) {
	var rest []VarID
	for _, v := range s.Support(l, valid) {
		if !slices.Contains(d.Vars, v) {
			rest = append(rest, v)
		}
	}
	d.Count = s.CountOver(s.Exists(l, rest...), d.Vars)
	d.Of = s.CountOver(s.Exists(valid, rest...), d.Vars)
}

// cond returns the condition that a cube stands for.
func (s *Space) cond(cube Cube) Cond {
	c := True
	for i := len(cube) - 1; i >= 0; i-- {
		c = s.And(s.In(cube[i].Var, cube[i].Values...), c)
	}
	return c
}

// Holds returns the condition that a description stands for: one that agrees
// with what was described on all valid garments. It is Undecided where the
// description has no cubes although it holds somewhere.
func (s *Space) Holds(d Description) Cond {
	if d.Undecided || len(d.Cubes) == 0 && d.Witness != nil {
		return Undecided
	}
	c := False
	for _, cube := range d.Cubes {
		c = s.Or(c, s.cond(cube))
	}
	return c
}

// onlyReal takes out of the literals of a cube each value for which nothing of
// l lies in the cube: a view without the option is not named beside one that
// has it only because it does no harm.
func (s *Space) onlyReal(cube Cube, l Cond) Cube {
	cube = slices.Clone(cube)
	for i, lit := range cube {
		inside := s.And(s.cond(cube), l)
		var real []int
		for _, value := range lit.Values {
			if s.Overlaps(inside, s.Is(lit.Var, value)) {
				real = append(real, value)
			}
		}
		if len(real) > 0 {
			cube[i].Values = real
		}
	}
	return cube
}

// sortCubes puts the alternatives in the order of their first values.
func (s *Space) sortCubes(cubes []Cube) {
	slices.SortStableFunc(cubes, func(a, b Cube) int {
		return slices.CompareFunc(a, b, func(x, y Literal) int {
			if x.Var != y.Var {
				return int(s.level[x.Var] - s.level[y.Var])
			}
			return slices.Compare(x.Values, y.Values)
		})
	})
}
