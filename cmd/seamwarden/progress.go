package main

import (
	"fmt"
	"io"
	"sync"
	"time"

	"github.com/spf13/cobra"
)

// progress is a line on a terminal that says how far a long piece of work is. It
// appears when that takes longer than a second, makes way for what is printed, and is
// gone in the end.
type progress struct {
	out     io.Writer // nil where nothing is shown
	say     func(n, of int) string
	mu      sync.Mutex
	n, of   int
	visible bool
	paused  bool
	again   bool // it was visible when it was paused
	stop    chan struct{}
}

// patience is how long nothing is shown; between how often the line changes.
const (
	patience = time.Second
	between  = 200 * time.Millisecond
)

// newProgress shows what say makes of how many things of how many are done.
func newProgress(cmd *cobra.Command, say func(n, of int) string) *progress {
	p := &progress{say: say, stop: make(chan struct{})}
	if isTerminal(cmd.ErrOrStderr()) {
		p.out = cmd.ErrOrStderr()
		go p.watch(time.NewTimer(patience).C)
	}
	return p
}

// watch shows the line once the wait is over, and again from time to time.
func (p *progress) watch(wait <-chan time.Time) {
	select {
	case <-wait:
	case <-p.stop:
		return
	}
	again := time.NewTicker(between)
	defer again.Stop()
	for {
		p.show()
		select {
		case <-again.C:
		case <-p.stop:
			return
		}
	}
}

// show prints the line, if there is more than one thing to wait for.
func (p *progress) show() {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.draw()
}

func (p *progress) draw() {
	select {
	case <-p.stop:
		return
	default:
	}
	if !p.paused && p.of > 1 && p.n < p.of {
		fmt.Fprint(p.out, "\r\x1b[K", p.say(p.n, p.of))
		p.visible = true
	}
}

// pause takes the line away until done is called, so that something else can be
// printed.
func (p *progress) pause() {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.paused, p.again = true, p.visible
	p.erase()
}

func (p *progress) erase() {
	if p.visible {
		fmt.Fprint(p.out, "\r\x1b[K")
		p.visible = false
	}
}

// done notes how many things of how many are done, and brings the line back.
func (p *progress) done(n, of int) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.n, p.of, p.paused = n, of, false
	if p.again {
		p.draw()
	}
}

// end takes the line away for good.
func (p *progress) end() {
	p.mu.Lock()
	defer p.mu.Unlock()
	select {
	case <-p.stop:
	default:
		close(p.stop)
	}
	p.erase()
}
