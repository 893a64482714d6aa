package main

import (
	"fmt"
	"runtime"
	"sync/atomic"
	"testing"
)

// Whatever takes how long, results come in the order of the names, and no more
// work is under way or waiting than a few for each processor.
func TestInOrder(t *testing.T) {
	for _, n := range []int{0, 1, 2, 3, 50} {
		var names []string
		for i := range n {
			names = append(names, fmt.Sprint(i))
		}
		var begun, given, most atomic.Int32
		gate := make(chan struct{}, n)
		want := 0
		inOrder(names, func(name string) string {
			if ahead := begun.Add(1) - given.Load(); ahead > most.Load() {
				most.Store(ahead)
			}
			if name == "0" && n > 2 && runtime.GOMAXPROCS(0) > 1 { // the first ends after the second, where two can be under way
				<-gate
			} else {
				gate <- struct{}{}
			}
			return name + "!"
		}, func(i int, result string) {
			given.Add(1)
			if i != want || result != names[i]+"!" {
				t.Errorf("of %d: %s came as number %d, want number %d", n, result, i, want)
			}
			want++
		})
		if want != n {
			t.Errorf("%d of %d came", want, n)
		}
		if limit := int32(4 * runtime.GOMAXPROCS(0)); most.Load() > limit {
			t.Errorf("%d were ahead of what was given, want at most %d", most.Load(), limit)
		}
	}
}

// A fault in the work breaks the main line, and carries its place.
func TestInOrderCarriesFaults(t *testing.T) {
	defer func() {
		c, ok := recover().(carried)
		if !ok || c.fault != "torn" || c.place == "" {
			t.Errorf("carried %+v", c)
		}
	}()
	inOrder([]string{"a", "b"}, func(name string) int {
		if name == "b" {
			panic("torn")
		}
		return 0
	}, func(int, int) {})
	t.Error("the fault was lost")
}
