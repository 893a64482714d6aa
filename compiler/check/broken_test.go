package check_test

import (
	"flag"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"

	"seamwarden/compiler"
	"seamwarden/dsl/finding"
)

// update writes what the compiler says today into the files that hold it.
var update = flag.Bool("update", false, "write what the compiler says today into testdata/broken and RULES.md")

// broken is one break of a sample: small changes of its text, and what the
// compiler says of them.
type broken struct {
	title string
	lines []string // the changes, as they stand in the file
	said  []string // what is expected, line by line
}

// notYet begins what is written of a break that nothing finds today.
const notYet = "not yet found: needs "

// TestBroken breaks the Dusk Skirt in the ways of a tired person. Each break must
// give exactly one finding, word for word the one that stands under it.
func TestBroken(t *testing.T) {
	files, err := filepath.Glob("../../testdata/broken/*.txt")
	if err != nil || len(files) == 0 {
		t.Fatal("no breaks", err)
	}
	sample := readFolder(t, os.DirFS("../../samples/dusk-skirt"))
	found, open := 0, 0
	for _, name := range files {
		head, breaks := readBreaks(t, name)
		for i := range breaks {
			b := &breaks[i]
			t.Run(b.title, func(t *testing.T) {
				said := b.run(t, sample)
				if len(b.said) > 0 && strings.HasPrefix(b.said[0], notYet) {
					open++
					if len(said) > 0 {
						t.Errorf("now it is found; put in what is said:\n%s", strings.Join(said, "\n"))
					}
					return
				}
				found++
				if *update {
					b.said = said
				} else if got, want := strings.Join(said, "\n"), strings.Join(b.said, "\n"); got != want {
					t.Errorf("it says\n%s\nand should say\n%s", got, want)
				}
				if n := count(said); n != 1 {
					t.Errorf("one mistake, %d findings:\n%s", n, strings.Join(said, "\n"))
				}
			})
		}
		if *update {
			writeBreaks(t, name, head, breaks)
		}
	}
	t.Logf("%d breaks found, %d not yet", found, open)
	if found < 40 {
		t.Errorf("only %d breaks are found", found)
	}
}

// run compiles the broken sample and words what counts among the findings.
func (b *broken) run(t *testing.T, sample map[string]string) (said []string) {
	files := map[string]string{}
	for name, text := range sample {
		files[name] = text
	}
	b.change(t, files)
	r, err := compiler.Compile(mapFS(files))
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range r.Findings {
		if f.Severity != finding.Unchecked && !strings.HasPrefix(f.Rule, "lay-") { // nearly every break makes it necessary to lay the pieces anew
			said = append(said, told(f, r.Sources)...)
		}
	}
	return
}

// told words a finding with the text at its place instead of a line number, so
// that it stays the same when the sample grows.
func told(f finding.Finding, sources map[string]string) (lines []string) {
	lines = append(lines, fmt.Sprintf("%s [%s] %s", f.Severity, f.Rule, f.Headline))
	if f.When != "" {
		lines = append(lines, "when: "+f.When)
	}
	lines = append(lines, "at: "+excerpt(f.Place, sources))
	for _, p := range f.Related {
		lines = append(lines, "also: "+excerpt(p, sources))
	}
	if f.Help != "" {
		lines = append(lines, "do: "+f.Help)
	}
	return
}

// excerpt gives the text at a place, to the end of its line.
func excerpt(p finding.Place, sources map[string]string) string {
	text, _, _ := strings.Cut(sources[p.File][p.Start.Offset:], "\n")
	if r := []rune(text); len(r) > 50 {
		text = string(r[:50]) + "…"
	}
	if p.File != compiler.Root {
		text += "  (" + p.File + ")"
	}
	if p.Label != "" {
		text += "  <- " + p.Label
	}
	return text
}

var counted = regexp.MustCompile(`^(error|warning|advice) \[`)

func count(said []string) (n int) {
	for _, s := range said {
		if counted.MatchString(s) {
			n++
		}
	}
	return
}

// change makes the changes of a break. White space in what stood there stands for
// any white space, so that a sample can be laid out anew.
func (b *broken) change(t *testing.T, files map[string]string) {
	t.Helper()
	file, from, to := compiler.Root, "", []string(nil)
	flush := func() {
		if from == "" {
			return
		}
		at := find(t, files[file], from)
		text := files[file]
		files[file] = text[:at[0]] + strings.Join(to, "\n") + text[at[1]:]
		from, to = "", nil
	}
	for _, l := range b.lines {
		switch {
		case strings.HasPrefix(l, "@ "):
			flush()
			file = l[2:]
		case strings.HasPrefix(l, "-"):
			flush()
			from = l[1:]
		case strings.HasPrefix(l, "+"):
			to = append(to, strings.TrimPrefix(l[1:], " "))
		}
	}
	flush()
}

// find gives the one stretch of a text that a break means; one that begins with {
// is a whole block.
func find(t *testing.T, text, what string) []int {
	t.Helper()
	block := strings.HasPrefix(what, "{")
	var words []string
	for _, w := range strings.Fields(strings.TrimPrefix(what, "{")) {
		words = append(words, regexp.QuoteMeta(w))
	}
	all := regexp.MustCompile(strings.Join(words, `\s+`)).FindAllStringIndex(text, -1)
	if len(all) != 1 {
		t.Fatalf("%q stands %d times in the sample", what, len(all))
	}
	at := all[0]
	if !block {
		return at
	}
	for i, depth := at[0], 0; i < len(text); i++ {
		switch text[i] {
		case '{':
			depth++
		case '}':
			if depth--; depth == 0 {
				return []int{at[0], i + 1}
			}
		}
	}
	t.Fatalf("the block %q does not end", what)
	return nil
}

func readFolder(t *testing.T, folder fs.FS) map[string]string {
	t.Helper()
	files := map[string]string{}
	err := fs.WalkDir(folder, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		b, err := fs.ReadFile(folder, name)
		files[name] = string(b)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

func mapFS(files map[string]string) fstest.MapFS {
	m := fstest.MapFS{}
	for name, text := range files {
		m[name] = &fstest.MapFile{Data: []byte(text)}
	}
	return m
}

// readBreaks reads a file of breaks: what stands before the first, and each.
func readBreaks(t *testing.T, name string) (head string, all []broken) {
	t.Helper()
	b, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	parts := strings.Split(string(b), "\n## ")
	for _, p := range parts[1:] {
		lines := strings.Split(strings.TrimRight(p, "\n"), "\n")
		x := broken{title: lines[0]}
		for _, l := range lines[1:] {
			if said, ok := strings.CutPrefix(l, "> "); ok {
				x.said = append(x.said, said)
			} else if l != "" {
				x.lines = append(x.lines, l)
			}
		}
		all = append(all, x)
	}
	return parts[0], all
}

func writeBreaks(t *testing.T, name, head string, all []broken) {
	t.Helper()
	var out strings.Builder
	out.WriteString(strings.TrimRight(head, "\n") + "\n")
	for _, b := range all {
		fmt.Fprintf(&out, "\n## %s\n%s\n", b.title, strings.Join(b.lines, "\n"))
		for _, s := range b.said {
			fmt.Fprintf(&out, "> %s\n", s)
		}
	}
	if err := os.WriteFile(name, []byte(out.String()), 0o644); err != nil {
		t.Fatal(err)
	}
}
