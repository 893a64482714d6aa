package check

import (
	"seamwarden/compiler/assembly"
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// The steps are played through, and it is worked out what hangs loose, beside the
// rules that need nothing of it: on a fork of the Space, since a Space is for one
// goroutine. What comes out is the same as if it had been done in its turn.

// playing is a play that has begun. A fault in it breaks whoever waits for it.
type playing struct {
	done    chan struct{}
	space   *condition.Space // nil once its conditions have been brought over
	trouble []assembly.Trouble
	loose   map[*model.Instance]condition.Cond
	fault   any
}

// beginPlay plays a pattern that nobody changes meanwhile, nor what was gathered
// from it.
func beginPlay(p *model.Pattern, facts *assembly.Facts) *playing {
	own := *p
	own.Space = p.Space.Fork()
	x := &playing{done: make(chan struct{}), space: own.Space}
	go func() {
		defer close(x.done)
		defer func() { x.fault = recover() }()
		x.trouble = assembly.Play(&own)
		x.loose = assembly.Loose(&own, facts)
	}()
	return x
}

// wait waits for the end, and brings what was found over into the Space that the
// fork was made of.
func (x *playing) wait(space *condition.Space) *playing {
	<-x.done
	if x.fault != nil {
		panic(x.fault)
	}
	if x.space == nil {
		return x
	}
	for i := range x.trouble {
		x.trouble[i].Cond = space.Bring(x.space, x.trouble[i].Cond)
	}
	for i, c := range x.loose {
		x.loose[i] = space.Bring(x.space, c)
	}
	x.space = nil
	return x
}
