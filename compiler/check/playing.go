package check

import (
	"seamwarden/compiler/assembly"
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// The steps are played through beside the rules that need nothing of it: on a fork
// of the Space, since a Space is for one goroutine. What comes out is the same as if
// it had been played in its turn.

// playing is a play that has begun. A fault in it breaks whoever waits for it.
type playing struct {
	done    chan struct{}
	space   *condition.Space // nil once its conditions have been brought over
	trouble []assembly.Trouble
	fault   any
}

// beginPlay plays a pattern that nobody changes meanwhile.
func beginPlay(p *model.Pattern) *playing {
	own := *p
	own.Space = p.Space.Fork()
	x := &playing{done: make(chan struct{}), space: own.Space}
	go func() {
		defer close(x.done)
		defer func() { x.fault = recover() }()
		x.trouble = assembly.Play(&own)
	}()
	return x
}

// wait gives what was found, in conditions of the Space that the fork was made of.
func (x *playing) wait(space *condition.Space) []assembly.Trouble {
	<-x.done
	if x.fault != nil {
		panic(x.fault)
	}
	if x.space != nil {
		for i := range x.trouble {
			x.trouble[i].Cond = space.Bring(x.space, x.trouble[i].Cond)
		}
		x.space = nil
	}
	return x.trouble
}
