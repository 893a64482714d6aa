package condition

import (
	"fmt"
	"math/big"
	"testing"

	"pgregory.net/rapid"
)

// expr is a random expression; it is evaluated once over the diagram and once
// by itself, which is the oracle of these tests.
type expr struct {
	op    string // "is", "and", "or", "not", "diff"
	v     VarID
	value int
	a, b  *expr
}

func (e *expr) holds(a Assignment) bool {
	switch e.op {
	case "is":
		return a[e.v] == e.value
	case "and":
		return e.a.holds(a) && e.b.holds(a)
	case "or":
		return e.a.holds(a) || e.b.holds(a)
	case "diff":
		return e.a.holds(a) && !e.b.holds(a)
	}
	return !e.a.holds(a)
}

func (e *expr) build(s *Space) Cond {
	switch e.op {
	case "is":
		return s.Is(e.v, e.value)
	case "and":
		return s.And(e.a.build(s), e.b.build(s))
	case "or":
		return s.Or(e.a.build(s), e.b.build(s))
	case "diff":
		return s.Diff(e.a.build(s), e.b.build(s))
	}
	return s.Not(e.a.build(s))
}

func drawExpr(t *rapid.T, s *Space, depth int) *expr {
	if depth == 0 || rapid.IntRange(0, 4).Draw(t, "leaf") == 0 {
		v := VarID(rapid.IntRange(0, s.Vars()-1).Draw(t, "var"))
		return &expr{op: "is", v: v, value: rapid.IntRange(0, len(s.Var(v).Values)-1).Draw(t, "value")}
	}
	e := &expr{op: rapid.SampledFrom([]string{"and", "or", "not", "diff"}).Draw(t, "op"), a: drawExpr(t, s, depth-1)}
	if e.op != "not" {
		e.b = drawExpr(t, s, depth-1)
	}
	return e
}

// drawSpace returns a Space with at most most variables of mixed kinds, at
// most 4096 garments in all.
func drawSpace(t *rapid.T, most int) *Space {
	s := NewSpace()
	garments := 1
	for i := range rapid.IntRange(1, most).Draw(t, "vars") {
		kind := Kind(rapid.IntRange(0, 3).Draw(t, "kind"))
		n := 2
		if kind != Option {
			n = rapid.IntRange(1, 4).Draw(t, "values")
		}
		if garments*n > 4096 {
			break
		}
		garments *= n
		values := make([]string, n)
		for j := range values {
			values[j] = fmt.Sprint(j + 1)
		}
		s.AddVar(kind, fmt.Sprint("v", i), values...)
	}
	return s
}

// garments returns every assignment of a Space.
func garments(s *Space) []Assignment {
	all := []Assignment{{}}
	for v := range s.Vars() {
		var longer []Assignment
		for _, a := range all {
			for value := range s.Var(VarID(v)).Values {
				longer = append(longer, append(append(Assignment{}, a...), value))
			}
		}
		all = longer
	}
	return all
}

func TestConditionAgreesWithEnumeration(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSpace(t, 12)
		e := drawExpr(t, s, 5)
		c := e.build(s)
		count := 0
		for _, a := range garments(s) {
			if s.Eval(c, a) != e.holds(a) {
				t.Fatalf("for %v the condition says %v, the expression %v", a, s.Eval(c, a), e.holds(a))
			}
			if e.holds(a) {
				count++
			}
		}
		if got := s.Count(c); got.Cmp(big.NewInt(int64(count))) != 0 {
			t.Errorf("counted %v garments, there are %d", got, count)
		}
		if w, ok := s.Witness(c); ok != (count > 0) || ok && !e.holds(w) {
			t.Errorf("witness %v (%v), but %d garments hold", w, ok, count)
		}
	})
}

// Two conditions have the same number exactly if they hold for the same
// garments.
func TestEqualConditionsAreOneNumber(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSpace(t, 5)
		e, f := drawExpr(t, s, 3), drawExpr(t, s, 3)
		same, implied, overlap := true, true, false
		for _, a := range garments(s) {
			x, y := e.holds(a), f.holds(a)
			same = same && x == y
			implied = implied && (!x || y)
			overlap = overlap || x && y
		}
		c, d := e.build(s), f.build(s)
		if (c == d) != same || s.Implies(c, d) != implied || s.Overlaps(c, d) != overlap {
			t.Errorf("same %v, implies %v, overlaps %v; by enumeration %v, %v, %v",
				c == d, s.Implies(c, d), s.Overlaps(c, d), same, implied, overlap)
		}
	})
}

func TestQuantifiersAgreeWithEnumeration(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSpace(t, 6)
		e := drawExpr(t, s, 4)
		c := e.build(s)
		v := VarID(rapid.IntRange(0, s.Vars()-1).Draw(t, "v"))
		exists, forAll := s.Exists(c, v), s.ForAll(c, v)
		for _, a := range garments(s) {
			some, every := false, true
			for value := range s.Var(v).Values {
				b := append(Assignment{}, a...)
				b[v] = value
				some, every = some || e.holds(b), every && e.holds(b)
				if got := s.Eval(s.Restrict(c, v, value), a); got != e.holds(b) {
					t.Fatalf("restricted to %d=%d: %v for %v", v, value, got, a)
				}
			}
			if s.Eval(exists, a) != some || s.Eval(forAll, a) != every {
				t.Fatalf("for %v: exists %v, want %v; for all %v, want %v", a, s.Eval(exists, a), some, s.Eval(forAll, a), every)
			}
			unknown := append(Assignment{}, a...)
			unknown[v] = -1
			if s.Eval(c, unknown) != every {
				t.Fatalf("with v%d unknown in %v: %v, want %v", v, a, s.Eval(c, unknown), every)
			}
		}
	})
}

// The support is exactly the variables that make a difference somewhere.
func TestSupport(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSpace(t, 6)
		c := drawExpr(t, s, 4).build(s)
		in := map[VarID]bool{}
		for _, v := range s.Support(c) {
			in[v] = true
		}
		for v := range s.Vars() {
			differs := false
			for value := range s.Var(VarID(v)).Values {
				differs = differs || s.Restrict(c, VarID(v), value) != s.Restrict(c, VarID(v), 0)
			}
			if in[VarID(v)] != differs {
				t.Errorf("v%d in the support: %v; makes a difference: %v", v, in[VarID(v)], differs)
			}
		}
	})
}

func TestWitnessIsThePlainestGarment(t *testing.T) {
	s := NewSpace()
	size := s.AddVar(Size, "size", "8", "10", "12") // added first, decided last
	view := s.AddVar(View, "view", "A", "B")
	pockets := s.AddVar(Option, "pockets")
	s.AddVar(Option, "lining")
	s.AddVar(Choice, "band", "turned", "bound")
	c := s.And(s.Or(s.Is(view, 1), s.Is(pockets, With)), s.Not(s.Is(size, 0)))
	got, ok := s.Witness(c)
	want := assign(s, size, 1, pockets, With)
	if !ok || fmt.Sprint(got) != fmt.Sprint(want) {
		t.Errorf("witness %v, want %v", got, want)
	}
	if order := s.Support(c); fmt.Sprint(order) != fmt.Sprint([]VarID{view, pockets, size}) {
		t.Errorf("decided in the order %v", order)
	}
	if _, ok := s.Witness(False); ok {
		t.Error("a witness for what holds nowhere")
	}
}

func TestWhatThereIsNotIsNowhere(t *testing.T) {
	s := NewSpace()
	view := s.AddVar(View, "view", "A")
	if s.Is(view, 0) != True {
		t.Error("the only view is not everywhere")
	}
	for _, c := range []Cond{s.Is(view, 1), s.Is(view, -1), s.Is(view+1, 0), s.Is(-1, 0), s.In(view)} {
		if c != False {
			t.Errorf("a value or variable that there is not gives %d", c)
		}
	}
	if n := s.Count(True); n.Cmp(big.NewInt(1)) != 0 {
		t.Errorf("one view in one size makes %v garments", n)
	}
}

// At its limit a Space says so, and what it knew before stays right.
func TestLimit(t *testing.T) {
	s := NewSpaceWithLimit(300)
	var a, b []VarID
	for i := range 20 {
		a = append(a, s.AddVar(Option, fmt.Sprint("a", i)))
	}
	for i := range 20 {
		b = append(b, s.AddVar(Option, fmt.Sprint("b", i)))
	}
	before := s.And(s.Is(a[0], With), s.Is(b[0], With))
	// The pairs stand far apart in the order, so the diagram doubles with each.
	c := True
	for i := range a {
		same := s.Or(s.And(s.Is(a[i], With), s.Is(b[i], With)), s.And(s.Is(a[i], Without), s.Is(b[i], Without)))
		c = s.And(c, same)
	}
	if !s.Overflowed() || c != Undecided {
		t.Fatalf("overflowed %v, condition %d, %d nodes", s.Overflowed(), c, s.Nodes())
	}
	if s.Nodes() > 300 {
		t.Errorf("%d nodes, over the limit of 300", s.Nodes())
	}
	if s.IsFalse(c) || s.Implies(c, False) || !s.Overlaps(c, True) || s.Count(c) != nil {
		t.Error("something is claimed of an undecided condition")
	}
	if s.And(c, False) != False || s.Or(c, True) != True || s.Not(c) != Undecided {
		t.Error("undecided with false, with true, and negated")
	}
	if d := s.Smallest(c, True); !d.Undecided || s.Words(d, Names{}) == "" {
		t.Errorf("description of an undecided condition: %+v", d)
	}
	if !s.Eval(before, assign(s, a[0], With, b[0], With)) || s.Eval(before, assign(s, a[0], With)) {
		t.Error("a condition from before the limit has changed")
	}
}

// assign returns a garment with these values, other variables 0.
func assign(s *Space, pairs ...VarID) Assignment {
	a := make(Assignment, s.Vars())
	for i := 0; i < len(pairs); i += 2 {
		a[pairs[i]] = int(pairs[i+1])
	}
	return a
}
