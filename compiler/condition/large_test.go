package condition

import (
	"fmt"
	"math/big"
	"slices"
	"testing"
)

// options returns a Space with n options, a view of three and six sizes.
func options(n int) (*Space, []VarID) {
	s := NewSpace()
	s.AddVar(View, "view", "A", "B", "C")
	vars := make([]VarID, n)
	for i := range vars {
		vars[i] = s.AddVar(Option, fmt.Sprint("option ", i+1))
	}
	s.AddVar(Size, "size", "8", "10", "12", "14", "16", "18")
	return s, vars
}

// odd holds for an odd number of the options; no two of its cases can be put
// together, so it needs 2ⁿ⁻¹ cubes.
func odd(s *Space, vars []VarID) Cond {
	c := False
	for _, v := range vars {
		with := s.Is(v, With)
		c = s.Or(s.Diff(c, with), s.Diff(with, c))
	}
	return c
}

func TestManyVariables(t *testing.T) {
	s, vars := options(12)
	var pairs []Cond // each pair of options is bad together: six cubes
	for i := 0; i < len(vars); i += 2 {
		pairs = append(pairs, s.And(s.Is(vars[i], With), s.Is(vars[i+1], With)))
	}
	d := s.Smallest(s.Any(pairs...), True)
	if d.Exact || len(d.Cubes) != 6 || len(d.Vars) != 12 {
		t.Errorf("exact %v, %d cubes, %d variables; want an irredundant cover of 6 cubes in 12 variables", d.Exact, len(d.Cubes), len(d.Vars))
	}
	// 4⁶ combinations, 3⁶ of them without a bad pair.
	if d.Count.Int64() != 4096-729 || d.Of.Int64() != 4096 {
		t.Errorf("in %v of %v combinations", d.Count, d.Of)
	}
}

// One cube that names every variable that must be named is the smallest, with
// however many variables.
func TestOneCubeIsExact(t *testing.T) {
	s, vars := options(8)
	all := True
	for _, v := range vars {
		all = s.And(all, s.Is(v, With))
	}
	if d := s.Smallest(all, True); !d.Exact || len(d.Cubes) != 1 || len(d.Cubes[0]) != 8 {
		t.Errorf("exact %v, cubes %v", d.Exact, d.Cubes)
	}
}

// Where more cubes would be needed than anybody reads, none are listed, but
// the count and the example are right.
func TestTooManyAlternativesToList(t *testing.T) {
	s, vars := options(14)
	d := s.Smallest(odd(s, vars), True)
	if len(d.Cubes) != 0 || d.Exact || d.Undecided {
		t.Errorf("%d cubes, exact %v, undecided %v", len(d.Cubes), d.Exact, d.Undecided)
	}
	if d.Count.Cmp(big.NewInt(8192)) != 0 || d.Of.Cmp(big.NewInt(16384)) != 0 || !s.Eval(odd(s, vars), d.Witness) {
		t.Errorf("in %v of %v combinations, witness %v", d.Count, d.Of, d.Witness)
	}
	if got := s.Holds(d); got != Undecided {
		t.Errorf("no cubes, but they stand for %d", got)
	}
}

// A variable with many values that all behave differently is not put into a
// table; the cover is irredundant then, and says so.
func TestManySizes(t *testing.T) {
	s := NewSpace()
	var vars []VarID
	for i := range 5 {
		vars = append(vars, s.AddVar(Option, fmt.Sprint("option ", i)))
	}
	sizes := make([]string, 20)
	size := s.AddVar(Size, "size", sizes...)
	bad := False
	for i := range sizes { // size i goes with the options whose bits it has
		c := s.Is(size, i)
		for bit, v := range vars {
			c = s.And(c, s.Is(v, i>>bit&1))
		}
		bad = s.Or(bad, c)
	}
	d := s.Smallest(bad, True)
	if d.Exact || len(d.Cubes) != 20 || s.Holds(d) != bad {
		t.Errorf("exact %v, %d cubes", d.Exact, len(d.Cubes))
	}
}

// Measured with independent options: each has a guard of its own, the finding
// holds where one of them is taken in view B, and its description is sought.
func BenchmarkOptions(b *testing.B) {
	for _, n := range []int{2, 5, 10, 20} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			for b.Loop() {
				s, vars := options(n)
				bad := False
				for _, v := range vars {
					bad = s.Or(bad, s.And(s.Is(0, 1), s.Is(v, With)))
				}
				for _, v := range vars { // one finding for each option, as a rule gives them
					s.Smallest(s.And(bad, s.Is(v, With)), True)
				}
				s.Smallest(bad, True)
				b.ReportMetric(float64(s.Nodes()), "nodes")
			}
		})
	}
}

// Measured where nothing is independent: no two cases of an odd number can be
// put together.
func BenchmarkOdd(b *testing.B) {
	for _, n := range []int{2, 5, 10, 20} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			for b.Loop() {
				s, vars := options(n)
				s.Smallest(odd(s, vars), True)
			}
		})
	}
}

// halfBad returns four views, four options and four sizes, of whose 256
// combinations about half are bad, in no order.
func halfBad(seed uint32, limit int) (*Space, Cond) {
	s := NewSpaceWithLimit(limit)
	s.AddVar(View, "view", "A", "B", "C", "D")
	for i := range 4 {
		s.AddVar(Option, fmt.Sprint("option ", i))
	}
	s.AddVar(Size, "size", "8", "10", "12", "14")
	bad := False
	for _, a := range garments(s) {
		if seed = seed*1664525 + 1013904223; seed>>16&1 == 1 { // any fixed row of bits will do
			point := True
			for v, value := range a {
				point = s.And(point, s.Is(VarID(v), value))
			}
			bad = s.Or(bad, point)
		}
	}
	return s, bad
}

// Where the search for the smallest cover is given up, what it has found is
// at least irredundant, and it does not pass for the smallest.
func TestSearchGivenUp(t *testing.T) {
	for seed := range uint32(4) {
		s, bad := halfBad(seed, DefaultLimit)
		d := s.Smallest(bad, True)
		if d.Exact || s.Holds(d) != bad {
			t.Errorf("exact %v, %d cubes", d.Exact, len(d.Cubes))
		}
		checkIrredundant(t, s, d.Cubes, bad, bad)
	}
}

// Where a Space runs into its limit on the way to a description, what it still
// gives is right.
func TestLimitOnTheWay(t *testing.T) {
	given, overflowed := 0, 0
	for limit := 500; limit < 4000; limit += 500 {
		s, bad := halfBad(1, limit)
		d := s.Smallest(bad, True)
		if s.Overflowed() {
			overflowed++
		}
		if d.Exact && s.Overflowed() {
			t.Errorf("limit %d: an exact description from a Space that overflowed", limit)
		}
		if d.Undecided || len(d.Cubes) == 0 {
			continue
		}
		given++
		for _, a := range garments(s) {
			if covered(d.Cubes, a) != s.Eval(bad, a) {
				t.Fatalf("limit %d: %v is described wrongly", limit, a)
			}
		}
	}
	if given == 0 || overflowed == 0 {
		t.Errorf("%d descriptions, %d overflows: the limits are of no use here", given, overflowed)
	}
}

// covered says whether a garment lies in one of the cubes, without a Space.
func covered(cubes []Cube, a Assignment) bool {
	return slices.ContainsFunc(cubes, func(cube Cube) bool {
		return !slices.ContainsFunc(cube, func(lit Literal) bool { return !slices.Contains(lit.Values, a[lit.Var]) })
	})
}

// Measured at the edge of the exact method.
func BenchmarkExactCover(b *testing.B) {
	for b.Loop() {
		s, bad := halfBad(1, DefaultLimit)
		d := s.Smallest(bad, True)
		b.ReportMetric(float64(len(d.Cubes)), "cubes")
	}
}
