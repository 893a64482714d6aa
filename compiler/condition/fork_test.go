package condition

import (
	"testing"

	"pgregory.net/rapid"
)

// What is worked out in a fork and brought over holds for the same garments as if it
// had been worked out here, whatever both have made in between.
func TestForkAgrees(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSpace(t, 5)
		before, here, there := drawExpr(t, s, 3), drawExpr(t, s, 4), drawExpr(t, s, 4)
		old := before.build(s)
		fork := s.Fork()
		made := fork.Or(there.build(fork), old)
		here.build(s)
		if got := s.Bring(fork, old); got != old {
			t.Fatalf("%d was made before the fork and became %d", old, got)
		}
		want := s.Or(there.build(s), old)
		if got := s.Bring(fork, made); got != want {
			t.Fatalf("brought over it is %d, worked out here %d", got, want)
		}
	})
}

// One number means one thing in a Space and another in its fork; brought over, it
// means what it did in the fork.
func TestForkWhereNumbersDiffer(t *testing.T) {
	s, vars := options(2)
	a, b := s.Is(vars[0], With), s.Is(vars[1], With)
	fork := s.Fork()
	own, made := s.And(a, b), fork.Or(a, b)
	if own != made {
		t.Fatalf("the two are to have the same number, and have %d and %d", own, made)
	}
	if got, want := s.Bring(fork, made), s.Or(a, b); got != want || got == own {
		t.Errorf("brought over it is %d, and what it means here is %d", got, want)
	}
}

// Two goroutines use a Space and its fork at a time; run it with -race.
func TestForkBeside(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSpace(t, 6)
		a, b := drawExpr(t, s, 5), drawExpr(t, s, 5)
		a.build(s)
		fork := s.Fork()
		made := make(chan Cond)
		go func() { made <- b.build(fork) }()
		a.build(s)
		own := b.build(s)
		if got := s.Bring(fork, <-made); got != own {
			t.Fatalf("brought over it is %d, worked out here %d", got, own)
		}
	})
}
