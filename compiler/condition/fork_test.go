package condition

import (
	"testing"

	"pgregory.net/rapid"
)

// What is worked out in a fork and brought over holds for the same garments as if it
// had been worked out here, whatever both have made in between.
func TestForkAgrees(t *testing.T) {
	apart := 0
	rapid.Check(t, func(t *rapid.T) {
		s := drawSpace(t, 5)
		before, here, there := drawExpr(t, s, 3), drawExpr(t, s, 4), drawExpr(t, s, 4)
		old := before.build(s)
		fork := s.Fork()
		made, own := fork.Or(there.build(fork), old), here.build(s)
		if got := s.Bring(fork, old); got != old {
			t.Fatalf("%d was made before the fork and became %d", old, got)
		}
		if int(made) >= fork.forked && int(own) >= fork.forked && made == own {
			apart++
		}
		want := s.Or(there.build(s), old)
		if got := s.Bring(fork, made); got != want {
			t.Fatalf("brought over it is %d, worked out here %d", got, want)
		}
	})
	if apart == 0 {
		t.Error("no number meant one thing here and another there")
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
