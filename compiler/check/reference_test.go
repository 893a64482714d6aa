package check_test

import (
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"

	"seamwarden/compiler"
	"seamwarden/compiler/check"
)

// TestReference holds RULES.md against the registry. With -update it is written.
func TestReference(t *testing.T) {
	const name = "RULES.md"
	want := reference()
	if *update {
		if err := os.WriteFile(name, []byte(want), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	have, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if string(have) != want {
		t.Errorf("%s is not what the registry says; run: go test ./compiler/check -run TestReference -update", name)
	}
}

// categories are the chapters of the reference, with a word on each.
var categories = []struct{ name, title, about string }{
	{"reading", "Reading", "The text of the pattern, sentence by sentence."},
	{"files", "Files", "What lies in the pattern's folder."},
	{"names", "Names", "What is declared, and what refers to it."},
	{"guards", "Guards", "For which garments a sentence holds."},
	{"cutting", "Cutting", "What is cut, how often, from what and how it lies."},
	{"interfacing", "Interfacing", "What is fused or sewn into which piece."},
	{"hands", "Hands", "Which cut parts are the mirror image of which."},
	{"seams", "Seams", "What is sewn to what, and what becomes of every edge."},
	{"sides", "Sides", "What is done on the left and on the right."},
	{"steps", "Steps", "What an operation acts on."},
	{"order", "Order", "What must come before what."},
	{"measures", "Measures", "How wide, how long, in which unit."},
	{"needs", "Needs", "What is bought and what is used."},
	{"sizes", "Sizes", "The tables of numbers by size."},
	{"prose", "Text", "What the author writes in her own words."},
	{"safety", "Safety", "What can hurt the wearer, above all a child. These rules say where a rule of some country may apply; none of them says that a garment meets one."},
	{"figures", "Figures", "Drawings."},
	{"outlines", "Outlines", "Drawn pieces: read from a file, and compared with what is said of them."},
	{"lays", "Lays", "How the pieces lie on the cloth, as it is remembered."},
	{"remarks", "Remarks", "What is said about the findings themselves."},
}

// reference writes the page.
func reference() string {
	var out strings.Builder
	out.WriteString(`# What is found

This page is made from the registry of rules; do not change it by hand. ` + "`seamwarden explain NAME`" + ` shows the same.

An **error** means that the sewist cannot finish, or gets the wrong thing. A **warning** is very likely a slip. **Advice** works, but people
stumble over it. What was **not checked** is listed, and never counts as found.

Each rule has two small patterns: one in which it finds something, and the same one mended. Both are compiled by the tests. A file that lies
beside the pattern stands under it with its name.
`)
	index(&out)
	for _, c := range categories {
		fmt.Fprintf(&out, "\n## %s\n\n%s\n", c.title, c.about)
		for _, r := range check.Rules() {
			if r.Category == c.name {
				entry(&out, r)
			}
		}
	}
	return out.String()
}

func index(out *strings.Builder) {
	for _, c := range categories {
		fmt.Fprintf(out, "\n**[%s](#%s)**\n\n", c.title, strings.ToLower(c.title))
		for _, r := range check.Rules() {
			if r.Category == c.name {
				fmt.Fprintf(out, "- [%s](#%s) %s\n", r.ID, r.ID, r.Purpose)
			}
		}
	}
}

func entry(out *strings.Builder, r *check.Rule) {
	fmt.Fprintf(out, "\n### %s\n\n*%s, since %s.* %s\n\n%s\n", r.ID, r.Severity, r.Since, r.Purpose, r.Why)
	if r.Asked {
		fmt.Fprintf(out, "\nIt is looked for only on request: `seamwarden check --also %s`.\n", r.ID)
	}
	if r.Besides != "" {
		fmt.Fprintf(out, "\n%s\n", r.Besides)
	}
	out.WriteString("\nFound here:\n")
	folder(out, r.FailingFiles(), nil)
	out.WriteString("\nNot here:\n")
	folder(out, r.PassingFiles(), r.FailingFiles())
}

// folder writes the files of an example, the pattern first. What is the same as in
// the other example is not shown again.
func folder(out *strings.Builder, files, shown map[string]string) {
	names := slices.Sorted(maps.Keys(files))
	slices.SortStableFunc(names, func(a, b string) int { return rank(a) - rank(b) })
	for _, name := range names {
		if files[name] == shown[name] {
			continue
		}
		if name != compiler.Root {
			fmt.Fprintf(out, "\n%s:\n", name)
		}
		_, lang, _ := strings.Cut(name, ".")
		fmt.Fprintf(out, "\n```%s\n%s\n```\n", lang, strings.TrimRight(files[name], "\n"))
	}
}

func rank(name string) int {
	if name == compiler.Root {
		return 0
	}
	return 1
}

// TestEveryRuleIsInTheReference keeps a rule from being lost with its category.
func TestEveryRuleIsInTheReference(t *testing.T) {
	page := reference()
	for _, r := range check.Rules() {
		if !strings.Contains(page, "\n### "+r.ID+"\n") {
			t.Errorf("%s of category %q is in no chapter", r.ID, r.Category)
		}
		if r.Purpose == "" || r.Why == "" || strings.Contains(r.Purpose, "\n") || !strings.HasSuffix(r.Purpose, ".") {
			t.Errorf("%s lacks a line that says what it looks for, or why", r.ID)
		}
	}
}
