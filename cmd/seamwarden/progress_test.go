package main

import (
	"bytes"
	"testing"
	"time"
)

// The line says how far it is, makes way for what is printed, comes back, and is
// gone in the end.
func TestProgressLine(t *testing.T) {
	var out bytes.Buffer
	p := &progress{out: &out, say: checkedFolders, stop: make(chan struct{})}
	step := func(what string, do func(), want string) {
		t.Helper()
		out.Reset()
		do()
		if out.String() != want {
			t.Errorf("%s: %q, want %q", what, out.String(), want)
		}
	}
	p.done(0, 3)
	step("nothing done", p.show, "\r\x1b[KChecked 0 of 3 folders")
	step("something is printed", p.pause, "\r\x1b[K")
	step("meanwhile", p.show, "")
	step("one done", func() { p.done(1, 3) }, "\r\x1b[KChecked 1 of 3 folders")
	step("later", p.show, "\r\x1b[KChecked 1 of 3 folders")
	step("something more is printed", p.pause, "\r\x1b[K")
	step("all done", func() { p.done(3, 3) }, "")
	step("nothing to wait for", p.show, "")
	p.done(2, 3)
	step("the end", p.end, "\r\x1b[K")
	step("after the end", p.show, "")
	step("the end again", p.end, "")
}

// With one folder there is nothing to tell, nor before the wait is over.
func TestProgressKeepsStill(t *testing.T) {
	var out bytes.Buffer
	p := &progress{out: &out, say: checkedFolders, stop: make(chan struct{})}
	p.done(0, 1)
	p.show()
	p.end()
	q := &progress{out: &out, say: checkedFolders, stop: make(chan struct{})}
	q.done(0, 9)
	ended := make(chan struct{})
	go func() {
		q.watch(make(chan time.Time))
		close(ended)
	}()
	q.end()
	<-ended
	if out.Len() > 0 {
		t.Errorf("%q was printed", out.String())
	}
}
