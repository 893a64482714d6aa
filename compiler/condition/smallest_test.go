package condition

import (
	"math/big"
	"testing"

	"pgregory.net/rapid"
)

// A description agrees with what it describes on every valid garment, its
// count and witness are right, and no variable stands in it that need not.
func TestSmallestDescribesExactlyTheValidGarments(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSpace(t, 10)
		e, f := drawExpr(t, s, 5), drawExpr(t, s, 2)
		bad, valid := e.build(s), f.build(s)
		d := s.Smallest(bad, valid)
		holds := s.Holds(d)
		always := true
		for _, a := range garments(s) {
			if !f.holds(a) {
				continue
			}
			always = always && e.holds(a)
			if s.Eval(holds, a) != e.holds(a) {
				t.Fatalf("%+v for %v: described %v, is %v", d, a, s.Eval(holds, a), e.holds(a))
			}
		}
		somewhere := s.Overlaps(bad, valid)
		if d.Always != (always && somewhere) || (d.Witness != nil) != somewhere {
			t.Errorf("%+v: always %v, somewhere %v", d, always, somewhere)
		}
		if somewhere && !s.Eval(s.And(bad, valid), d.Witness) {
			t.Errorf("the witness %v is no case of it", d.Witness)
		}
		checkCount(t, s, d, s.And(bad, valid), valid)
	})
}

// checkCount counts the combinations of the named variables by enumeration.
func checkCount(t *rapid.T, s *Space, d Description, l, valid Cond) {
	if d.Always || d.Witness == nil {
		return
	}
	seen, held := map[string]bool{}, map[string]bool{}
	for _, a := range garments(s) {
		k := ""
		for _, v := range d.Vars {
			k += string(rune('0' + a[v]))
		}
		seen[k] = seen[k] || s.Eval(valid, a)
		held[k] = held[k] || s.Eval(l, a)
	}
	if d.Count.Cmp(trues(held)) != 0 || d.Of.Cmp(trues(seen)) != 0 {
		t.Errorf("counted %v of %v, there are %v of %v", d.Count, d.Of, trues(held), trues(seen))
	}
}

func trues(m map[string]bool) *big.Int {
	n := int64(0)
	for _, yes := range m {
		if yes {
			n++
		}
	}
	return big.NewInt(n)
}

// No literal and no cube can be left out of any description, exact or not.
func TestNothingCanBeLeftOut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSpace(t, 12)
		bad, valid := drawExpr(t, s, 6).build(s), drawExpr(t, s, 2).build(s)
		l, u := s.And(bad, valid), s.Or(bad, s.Not(valid))
		for _, cubes := range [][]Cube{s.Smallest(bad, valid).Cubes, s.irredundant(l, u)} {
			checkIrredundant(t, s, cubes, l, u)
		}
	})
	rapid.Check(t, func(t *rapid.T) { // and where the garments are bad in no order
		s := NewSpace()
		s.AddVar(View, "view", "A", "B", "C")
		for range rapid.IntRange(2, 4).Draw(t, "options") {
			s.AddVar(Option, "option")
		}
		bad, valid := table3(t, s)
		l, u := s.And(bad, valid), s.Or(bad, s.Not(valid))
		checkIrredundant(t, s, s.irredundant(l, u), l, u)
	})
}

func checkIrredundant(t interface{ Errorf(string, ...any) }, s *Space, cubes []Cube, l, u Cond) {
	union := False
	for i, cube := range cubes {
		union = s.Or(union, s.cond(cube))
		others := False
		for j, other := range cubes {
			if j != i {
				others = s.Or(others, s.cond(other))
			}
		}
		if s.Implies(l, others) {
			t.Errorf("%v can be left out of %v", cube, cubes)
		}
		for k := range cube {
			without := append(append(Cube{}, cube[:k]...), cube[k+1:]...)
			if s.Implies(s.cond(without), u) {
				t.Errorf("%v can be left out of %v", cube[k], cube)
			}
		}
	}
	if !s.Implies(l, union) || !s.Implies(union, u) {
		t.Errorf("%v does not lie in the interval", cubes)
	}
}

// allCubes returns every cube inside u, by enumeration of every set of values.
func allCubes(s *Space, u Cond) []Cube {
	cubes := []Cube{{}}
	for v := range s.Vars() {
		n := len(s.Var(VarID(v)).Values)
		var longer []Cube
		for _, cube := range cubes {
			longer = append(longer, cube)
			for mask := 1; mask < 1<<n-1; mask++ {
				var values []int
				for value := range n {
					if mask>>value&1 == 1 {
						values = append(values, value)
					}
				}
				longer = append(longer, append(append(Cube{}, cube...), Literal{VarID(v), values}))
			}
		}
		cubes = longer
	}
	var inside []Cube
	for _, cube := range cubes {
		if s.Implies(s.cond(cube), u) {
			inside = append(inside, cube)
		}
	}
	return inside
}

// lengthOf returns what cubes cost beside their number: their literals, and
// for equally many of those, how many are options left out.
func lengthOf(s *Space, cubes ...Cube) int {
	sum := 0
	for _, cube := range cubes {
		for _, lit := range cube {
			sum += 1000
			if s.Var(lit.Var).Kind == Option && lit.Values[0] == Without {
				sum++
			}
		}
	}
	return sum
}

// cheapestCost returns the least number of cubes, and then their least length,
// that cover l, by trying every choice of up to most cubes; false if that many are
// not enough. It takes a point that is not covered and tries every cube that
// holds it, with no other shortcut.
func cheapestCost(s *Space, inside []Cube, l Cond, most int) (cubes, length int, found bool) {
	conds := make([]Cond, len(inside))
	for i, cube := range inside {
		conds[i] = s.cond(cube)
	}
	var try func(left int, rest Cond, sum int)
	try = func(left int, rest Cond, sum int) {
		point, open := s.Witness(rest)
		if !open && sum < length {
			length, found = sum, true
		}
		if !open || left == 0 {
			return
		}
		for i := range inside {
			if s.Eval(conds[i], point) {
				try(left-1, s.Diff(rest, conds[i]), sum+lengthOf(s, inside[i]))
			}
		}
	}
	for cubes = 1; cubes <= most; cubes++ {
		length = 1 << 30
		if try(cubes, l, 0); found {
			return cubes, length, true
		}
	}
	return most, length, false
}

// table3 makes bad and valid from a value drawn for each garment: it holds, it
// does not, or the garment is not valid.
func table3(t *rapid.T, s *Space) (bad, valid Cond) {
	bad, valid = False, False
	for _, a := range garments(s) {
		point := True
		for v, value := range a {
			point = s.And(point, s.Is(VarID(v), value))
		}
		switch rapid.IntRange(0, 3).Draw(t, "point") {
		case 0:
			bad, valid = s.Or(bad, point), s.Or(valid, point)
		case 1, 2:
			valid = s.Or(valid, point)
		}
	}
	return bad, valid
}

// The exact cover has as few cubes, then as few literals, then as few options
// left out, as any choice of all cubes: tried out one by one on three and four variables.
func TestExactCoverIsTheSmallest(t *testing.T) {
	compared := map[int]int{}
	rapid.Check(t, func(t *rapid.T) {
		s := NewSpace()
		for range rapid.IntRange(2, 3).Draw(t, "options") {
			s.AddVar(Option, "option")
		}
		s.AddVar(View, "view", []string{"A", "B", "C"}[:rapid.IntRange(2, 3).Draw(t, "views")]...)
		bad, valid := table3(t, s)
		l, u := s.And(bad, valid), s.Or(bad, s.Not(valid))
		if l == False || u == True {
			return
		}
		found, exact := s.exactCover(l, u, s.inOrder())
		if len(found) > 4 {
			return
		}
		compared[len(found)]++
		cubes, length, _ := cheapestCost(s, allCubes(s, u), l, len(found))
		if !exact || len(found) != cubes || lengthOf(s, found...) != length {
			t.Errorf("%v: %d cubes of length %d; %d of %d will do", found, len(found), lengthOf(s, found...), cubes, length)
		}
	})
	t.Logf("compared, by the number of cubes: %v", compared)
	if compared[3] == 0 {
		t.Error("no cover of three cubes was compared")
	}
}

// A variable is named only if no condition without it would do, sizes least
// of all.
func TestNoVariableIsNamedThatNeedNotBe(t *testing.T) {
	s := NewSpace()
	view := s.AddVar(View, "view", "A", "B")
	pockets := s.AddVar(Option, "pockets")
	size := s.AddVar(Size, "size", "8", "10")
	// Pockets come in B only, in size 10 only, and with them it is bad.
	valid := s.Or(s.All(s.Is(view, 1), s.Is(pockets, With), s.Is(size, 1)), s.Is(pockets, Without))
	d := s.Smallest(s.Is(pockets, With), valid)
	if len(d.Cubes) != 1 || len(d.Cubes[0]) != 1 || d.Cubes[0][0].Var != pockets {
		t.Errorf("%+v, want only the pockets", d)
	}
	if d.Count.Int64() != 1 || d.Of.Int64() != 2 {
		t.Errorf("in %v of %v combinations, want 1 of 2", d.Count, d.Of)
	}
}

// Where one of two variables is enough, the size is dropped before the option,
// the option before the choice, the choice before the view.
func TestWhichVariableIsDropped(t *testing.T) {
	for _, c := range []struct{ dropped, kept Kind }{{Size, Option}, {Option, Choice}, {Choice, View}} {
		s := NewSpace()
		a := s.AddVar(c.dropped, "dropped", "1", "2")
		b := s.AddVar(c.kept, "kept", "1", "2")
		both := s.And(s.Is(a, 1), s.Is(b, 1))
		neither := s.And(s.Is(a, 0), s.Is(b, 0))
		d := s.Smallest(both, s.Or(both, neither))
		if len(d.Vars) != 1 || d.Vars[0] != b {
			t.Errorf("of kinds %d and %d: %v is named, want %v", c.dropped, c.kept, d.Vars, b)
		}
	}
}
