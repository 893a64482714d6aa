package main

import "testing"

func TestClosing(t *testing.T) {
	cases := []struct {
		dir                      string
		found, advice, unchecked int
		list, want               string
	}{
		{"x", 0, 0, 0, "--unchecked", "x: nothing found."},
		{".", 0, 0, 0, "--unchecked", "This folder: nothing found."},
		{"x", 1, 0, 0, "--unchecked", "1 finding in x."},
		{".", 2, 0, 0, "--unchecked", "2 findings in this folder."},
		{"x", 0, 1, 0, "--unchecked", "x: nothing found but 1 piece of advice."},
		{"x", 2, 3, 0, "--unchecked", "2 findings and 3 pieces of advice in x."},
		{"x", 0, 0, 1, "--unchecked", "x: nothing found; 1 thing was not checked (list it with --unchecked)."},
		{"x", 0, 0, 2, "--unchecked", "x: nothing found; 2 things were not checked (list them with --unchecked)."},
		{"x", 2, 0, 3, "", "2 findings in x; 3 things were not checked."},
	}
	for _, c := range cases {
		if got := closing(c.dir, c.found, c.advice, c.unchecked, c.list); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
