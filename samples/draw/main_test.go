package main

import "testing"

// The drawings of the samples are those that the drafts draw today.
func TestDrawingsAreFresh(t *testing.T) {
	stale, err := run("..", true)
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range stale {
		t.Errorf("%s is stale: go run ./samples/draw writes it", name)
	}
}
