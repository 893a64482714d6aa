package main

import (
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"

	"seamwarden/compiler"
)

func TestFileName(t *testing.T) {
	cases := []struct {
		title string
		c     compiler.Choice
		want  string
	}{
		{"Dusk Skirt", compiler.Choice{}, "dusk-skirt"},
		{"Tailor's \"Best\" №2", compiler.Choice{}, "tailors-best-no2"},
		{"  …/../.. ", compiler.Choice{}, "pattern"},
		{"", compiler.Choice{View: "B"}, "pattern-view-b"},
		{"COM1", compiler.Choice{}, "pattern-com1"},
		{"Comet 1", compiler.Choice{}, "comet-1"},
		{"Cafe\u0301", compiler.Choice{}, "café"},
		{"夏の袋", compiler.Choice{}, "夏の袋"},
		{"A\u202eB\x00C", compiler.Choice{}, "a-b-c"},
		{"Tote", compiler.Choice{View: "B", Size: "12", With: []string{"b", "a"}, Without: []string{"c"}, Ways: map[string]string{"y": "2", "x": "1"}},
			"tote-view-b-size-12-with-a-with-b-without-c-x-1-y-2"},
	}
	for _, c := range cases {
		if got := fileName(c.title, c.c); got != c.want {
			t.Errorf("%q is %q, want %q", c.title, got, c.want)
		}
	}
}

// Whatever a title says, its file name has no dot, no separator and no more
// letters than a file system takes: 255 bytes with the longest ending.
func TestFileNameIsSafe(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		name := fileName(rapid.String().Draw(t, "title"), compiler.Choice{View: rapid.String().Draw(t, "view"), Size: rapid.StringMatching(`[\p{Han} ]{0,80}`).Draw(t, "size")})
		if name == "" || strings.ContainsAny(name, "./\\:*?\"<>| \x00") || strings.HasPrefix(name, "-") || strings.HasSuffix(name, "-") ||
			!utf8.ValidString(name) || len(name)+len("-letter.pdf") > 255 {
			t.Fatalf("%q", name)
		}
	})
}

func TestTitleFor(t *testing.T) {
	for name, want := range map[string]string{
		"river-tote": "River Tote", "a/b/summer_bag": "Summer Bag", "Tote": "Tote", "---": "My Pattern",
		"été 2": "Été 2", `x"y{z}`: "X Y Z", "mum's bag": "Mum's Bag",
	} {
		if got := titleFor(name); got != want {
			t.Errorf("%q is %q, want %q", name, got, want)
		}
	}
}
