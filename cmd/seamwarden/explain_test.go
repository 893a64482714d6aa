package main

import (
	"strings"
	"testing"
)

func TestExamplePrintsTheSourceFirst(t *testing.T) {
	var out strings.Builder
	example(&out, "Here it is found:", map[string]string{"a.seam": "\na\n", "pattern.seam": "one {\n  two\n}\n", "sizes.yaml": "unit: cm\n"})
	want := "\nHere it is found:\n" +
		"\n  pattern.seam:\n    one {\n      two\n    }\n" +
		"\n  a.seam:\n    a\n" +
		"\n  sizes.yaml:\n    unit: cm\n"
	if out.String() != want {
		t.Errorf("%q\nwant %q", out.String(), want)
	}
	out.Reset()
	example(&out, "Here it is not:", map[string]string{"pattern.seam": "one\n"})
	if want := "\nHere it is not:\n\n    one\n"; out.String() != want {
		t.Errorf("%q\nwant %q", out.String(), want)
	}
	out.Reset()
	example(&out, "Here it is not:", nil)
	if out.String() != "" {
		t.Errorf("%q for no example", out.String())
	}
}
