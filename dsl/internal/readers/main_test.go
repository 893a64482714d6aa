package main

import (
	"bytes"
	"os"
	"testing"
)

// TestReadersAreOfToday asserts that reader.go is made of the grammar as it is.
func TestReadersAreOfToday(t *testing.T) {
	want, err := readers("../..")
	if err != nil {
		t.Fatal(err)
	}
	got, err := os.ReadFile("../../reader.go")
	if err != nil || !bytes.Equal(got, want) {
		t.Errorf("reader.go is not made of this grammar (%v); go generate ./dsl makes it", err)
	}
}

// TestNotation asserts what is read of participle's notation, and what is refused.
func TestNotation(t *testing.T) {
	for _, c := range []struct {
		tag  string
		fits bool
	}{
		{"'a' @@ (',' @@)*", true},
		{"((?! EOF | 'when') ','? @@)*", true},
		{"( @'a' | 'b' @('c' | 'd')? )", true},
		{"@@+", false},
		{"@Word", false},
		{"( 'a'", false},
		{"'a' | ", false},
		{"@('a' 'b')", false},
	} {
		_, err := grammarOf(node{name: "Node", fields: []field{{"Field", "*Name", c.tag}}})
		if (err == nil) != c.fits {
			t.Errorf("%s: %v", c.tag, err)
		}
	}
}
