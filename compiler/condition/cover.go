package condition

import "slices"

// maxTable bounds the table of all cubes: the product of 2ⁿ over the
// variables, where n is how many values of one behave differently.
const maxTable = 1 << 18

// axis is one variable of the table, its values put together into classes that
// cannot be told apart by what is to be covered.
type axis struct {
	v       VarID
	classes [][]int
	reps    []int // one value of each class
}

// exactCover returns a smallest row of cubes between l and u. It returns nil
// if the table would be too large, and false if it is not known to be the
// smallest.
func (s *Space) exactCover(l, u Cond, vars []VarID) ([]Cube, bool) {
	axes := make([]axis, len(vars))
	size := 1
	for i, v := range vars {
		axes[i] = s.axisOf(l, u, v)
		if len(axes[i].classes) > 18 || size<<len(axes[i].classes) > maxTable {
			return nil, false
		}
		size <<= len(axes[i].classes)
	}
	t := &table{s: s, axes: axes, size: size}
	t.fill(u)
	primes := t.primes()
	chosen, exact := cheapest(t.rows(l, primes), t.costs(primes))
	var cubes []Cube
	for _, i := range chosen {
		cubes = append(cubes, t.cube(primes[i]))
	}
	return cubes, exact
}

// axisOf sorts the values of a variable into classes.
func (s *Space) axisOf(l, u Cond, v VarID) axis {
	a := axis{v: v}
	seen := map[[2]Cond]int{}
	for value := range s.vars[v].Values {
		k := [2]Cond{s.Restrict(l, v, value), s.Restrict(u, v, value)}
		at, ok := seen[k]
		if !ok || k[0] == Undecided || k[1] == Undecided { // what is not known is like nothing else
			at = len(a.classes)
			seen[k] = at
			a.classes = append(a.classes, nil)
			a.reps = append(a.reps, value)
		}
		a.classes[at] = append(a.classes[at], value)
	}
	return a
}

// table knows of every cube over its axes whether it lies inside u. A cube is
// the number made of one mask of classes for each axis, the first axis lowest.
type table struct {
	s      *Space
	axes   []axis
	size   int
	inside []bool
}

// masks takes a cube's number apart.
func (t *table) masks(cube int) []int {
	masks := make([]int, len(t.axes))
	for i, a := range t.axes {
		masks[i] = cube & (1<<len(a.classes) - 1)
		cube >>= len(a.classes)
	}
	return masks
}

// fill works out every cube. A point is looked up; a larger cube lies inside
// if both parts of it do, one class of one axis and the other classes.
func (t *table) fill(u Cond) {
	t.inside = make([]bool, t.size)
	for cube := range t.inside {
		masks := t.masks(cube)
		if slices.Contains(masks, 0) {
			continue // holds nothing
		}
		shift, split := 0, 0
		for i, m := range masks {
			if m&(m-1) != 0 {
				split = (m & -m) << shift
				rest := (m &^ (m & -m)) << shift
				t.inside[cube] = t.inside[cube&^split] && t.inside[cube&^rest]
				break
			}
			shift += len(t.axes[i].classes)
		}
		if split == 0 {
			t.inside[cube] = t.s.Eval(u, t.point(masks))
		}
	}
}

// point returns a garment in a cube that is one class wide on each axis.
func (t *table) point(masks []int) Assignment {
	a := make(Assignment, len(t.s.vars))
	for i, m := range masks {
		class := 0
		for m>>class&1 == 0 {
			class++
		}
		a[t.axes[i].v] = t.axes[i].reps[class]
	}
	return a
}

// primes returns the cubes inside u that no class can be added to.
func (t *table) primes() []int {
	var primes []int
	bits := 0
	for 1<<bits < t.size {
		bits++
	}
	for cube, inside := range t.inside {
		prime := inside
		for bit := 0; bit < bits && prime; bit++ {
			prime = cube>>bit&1 == 1 || !t.inside[cube|1<<bit]
		}
		if prime {
			primes = append(primes, cube)
		}
	}
	return primes
}

// rows returns, for each point of l, which primes hold it.
func (t *table) rows(l Cond, primes []int) []row {
	var rows []row
	for cube := range t.inside {
		masks := t.masks(cube)
		if slices.ContainsFunc(masks, func(m int) bool { return m == 0 || m&(m-1) != 0 }) {
			continue
		}
		if !t.s.Eval(l, t.point(masks)) {
			continue
		}
		r := newRow(len(primes))
		for i, p := range primes {
			if cube&^p == 0 {
				r.add(i)
			}
		}
		rows = append(rows, r)
	}
	return rows
}

// costs returns what each prime costs: one cube, then its literals, then its
// negations.
func (t *table) costs(primes []int) []int {
	costs := make([]int, len(primes))
	for i, p := range primes {
		costs[i] = cubeCost
		for _, lit := range t.cube(p) {
			costs[i] += literalCost
			if t.s.negative(lit) {
				costs[i] += negationCost
			}
		}
	}
	return costs
}

const (
	negationCost = 1
	literalCost  = 1 << 10
	cubeCost     = 1 << 20
)

// negative says whether a literal is worded with "without" or "every … but".
func (s *Space) negative(lit Literal) bool {
	n := len(s.vars[lit.Var].Values)
	if s.vars[lit.Var].Kind == Option {
		return lit.Values[0] == Without
	}
	return n > 3 && len(lit.Values) == n-1
}

// cube returns the literals of a cube of the table.
func (t *table) cube(number int) Cube {
	cube := Cube{}
	for i, m := range t.masks(number) {
		var values []int
		for class, members := range t.axes[i].classes {
			if m>>class&1 == 1 {
				values = append(values, members...)
			}
		}
		if len(values) < len(t.s.vars[t.axes[i].v].Values) {
			slices.Sort(values)
			cube = append(cube, Literal{Var: t.axes[i].v, Values: values})
		}
	}
	return cube
}
