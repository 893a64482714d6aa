package compiler_test

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"seamwarden/compiler"
	"seamwarden/compiler/check"
	"seamwarden/compiler/figure"
	"seamwarden/compiler/size"
	"seamwarden/dsl"
	"seamwarden/dsl/finding"
)

// The examples of the reference pages are tests. The words after the fence of a
// block say what it is:
//
//	seam              a whole pattern: compiles with no finding, and makes a booklet
//	seam FRAME        put into testdata/docs/FRAME.seam: adds no finding
//	… unchecked       as above, but each part of it is listed as not checked
//	… wrong RULE      gives exactly one finding, of that rule
//	yaml sizes        a table of sizes, read with no finding; or wrong RULE
//	svg               a figure, read with no finding; or wrong RULE
//	text said         what the block before it makes the compiler say
//
// Every seam block that is not wrong stands in its canonical form. Advice is not
// counted as a finding, as elsewhere.
var updateDocs = flag.Bool("update", false, "write what the program says today into the reference pages")

// pages are the files whose blocks are tried. README.md need not be there.
var pages = []string{"../dsl/LANGUAGE.md", "MODEL.md", "../README.md"}

func TestDocsExamples(t *testing.T) {
	for _, name := range pages {
		t.Run(filepath.Base(name), func(t *testing.T) {
			p := readPage(t, name)
			var last said
			for i := range p.blocks {
				b := &p.blocks[i]
				if b.kind == "text" && b.has("said") {
					p.want(t, b, last.text)
					continue
				}
				last = said{}
				switch {
				case b.kind == "seam":
					last = trySeam(t, b)
				case b.kind == "yaml" && b.has("sizes"):
					chart, found := size.Read("sizes.yaml", []byte(b.text))
					last = b.judge(t, found, map[string]string{"sizes.yaml": b.text})
					if chart == nil && b.wrong() == "" {
						t.Errorf("%s: no chart", b.place)
					}
				case b.kind == "svg":
					_, found := figure.Read("figure.svg", []byte(b.text))
					last = b.judge(t, found, map[string]string{"figure.svg": b.text})
				}
			}
			p.save(t)
		})
	}
}

// said is what the compiler says about a block.
type said struct{ text string }

// trySeam compiles a block, whole or in its frame.
func trySeam(t *testing.T, b *block) said {
	src, r, found := b.compiled(t)
	if r == nil {
		return said{}
	}
	if b.wrong() == "" {
		canonical(t, b, src)
		booklet(t, b, r)
	}
	return b.judge(t, found, r.Sources)
}

// compiled gives the source of a block in its frame, and what is found in it.
func (b *block) compiled(t *testing.T) (src string, r *compiler.Result, found []finding.Finding) {
	src, first, indent := b.framed(t)
	files := folder(t)
	files[compiler.Root] = &fstest.MapFile{Data: []byte(src)}
	r, err := compiler.Compile(files)
	if err != nil {
		t.Errorf("%s: %v", b.place, err)
		return src, nil, nil
	}
	if found = r.Findings; b.frame() != "" {
		found = moved(ofFragment(found), src, b.text, first, indent, r.Sources)
	}
	return src, r, found
}

// booklet makes the booklet of a pattern, for all its garments.
func booklet(t *testing.T, b *block, r *compiler.Result) {
	all, err := compiler.Choose(r.Pattern, compiler.Choice{})
	if err != nil {
		t.Errorf("%s: %v", b.place, err)
		return
	}
	if k, err := compiler.Booklet(r.Pattern, all); err != nil || len(k.Chapters) == 0 {
		t.Errorf("%s: it makes no booklet (%v)", b.place, err)
	}
}

func canonical(t *testing.T, b *block, src string) {
	out, ok := dsl.Format(dsl.Parse(compiler.Root, []byte(src)))
	if !ok || string(out) != src {
		from, is, want := firstDifference(src, string(out))
		t.Errorf("%s: the block is not in canonical form (%v), from line %d of its source on:\n%s\nis written so:\n%s", b.place, ok, from, is, want)
	}
}

// firstDifference gives a few lines of two texts from where they part.
func firstDifference(a, b string) (line int, restA, restB string) {
	x, y := strings.Split(a, "\n"), strings.Split(b, "\n")
	for line < len(x) && line < len(y) && x[line] == y[line] {
		line++
	}
	few := func(list []string) string {
		return strings.Join(list[min(line, len(list)):min(line+4, len(list))], "\n")
	}
	return line + 1, few(x), few(y)
}

// ofFragment leaves out what is concluded from absence: a frame uses little of
// what it declares.
func ofFragment(all []finding.Finding) (kept []finding.Finding) {
	for _, f := range all {
		if r := check.Find(f.Rule); r == nil || !r.FromAbsence {
			kept = append(kept, f)
		}
	}
	return
}

// judge compares findings with what the fence asks for, and words them.
func (b *block) judge(t *testing.T, found []finding.Finding, sources map[string]string) said {
	var checked, open []finding.Finding
	for _, f := range found {
		switch {
		case f.Severity == finding.Unchecked:
			open = append(open, f)
		case f.Severity != finding.Advice || f.Rule == b.wrong():
			checked = append(checked, f)
		}
	}
	var text bytes.Buffer
	w := &finding.Writer{Out: &text, Sources: sources}
	show := checked
	if b.has("unchecked") {
		show = open
	}
	for _, f := range show {
		w.Write(f)
	}
	rule := b.wrong()
	if rule != "" && b.before != "*Wrong*, `"+rule+"`:" {
		t.Errorf("%s: the line above does not say *Wrong*, `%s`:", b.place, rule)
	}
	switch {
	case rule != "" && (len(checked) != 1 || checked[0].Rule != rule):
		t.Errorf("%s: want exactly one finding of %s, got %d:\n%s", b.place, rule, len(checked), &text)
	case rule != "":
	case len(checked) > 0 || b.has("unchecked") && len(open) == 0 || !b.has("unchecked") && len(open) > 0:
		for _, f := range open {
			w.Write(f)
		}
		t.Errorf("%s: want unchecked: %v and nothing else, got:\n%s", b.place, b.has("unchecked"), &text)
	}
	if rule != "" && b.frame() != "" && check.Find(rule) != nil && check.Find(rule).FromAbsence {
		t.Errorf("%s: %s concludes from what is absent; show it in a whole pattern", b.place, rule)
	}
	return said{strings.TrimRight(text.String(), "\n") + "\n"}
}

// moved shifts the places of findings from the frame to the fragment, as if it
// stood alone. What lies outside it is said to be in jacket.seam.
func moved(found []finding.Finding, whole, fragment string, first, indent int, sources map[string]string) []finding.Finding {
	last := first + strings.Count(fragment, "\n") - 1
	shift := func(p *finding.Place) {
		if p.File != compiler.Root {
			return
		}
		if p.Start.Line < first || p.Start.Line > last {
			p.File = "jacket.seam"
			return
		}
		for _, at := range []*finding.Pos{&p.Start, &p.End} {
			at.Line, at.Column = at.Line-first+1, at.Column-indent
		}
	}
	for i := range found {
		shift(&found[i].Place)
		for k := range found[i].Related {
			shift(&found[i].Related[k])
		}
	}
	sources[compiler.Root], sources["jacket.seam"] = fragment, whole
	return found
}

// folder gives the files that stand beside an example's pattern.seam.
func folder(t *testing.T) fstest.MapFS {
	files := fstest.MapFS{}
	root := "testdata/docs/folder"
	err := filepath.WalkDir(root, func(path string, d os.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := os.ReadFile(path)
		name, _ := filepath.Rel(root, path)
		files[filepath.ToSlash(name)] = &fstest.MapFile{Data: data}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

// page is one file of the reference, cut at its blocks.
type page struct {
	name   string
	text   string
	blocks []block
	edits  []edit
}

type edit struct {
	from, to int
	text     string
}

// block is one fenced block: its kind, the other words of its fence, its text.
type block struct {
	kind, text string
	words      []string
	place      string
	before     string // the line of text above its fence
	from, to   int    // of the text, in the page
}

func readPage(t *testing.T, name string) *page {
	data, err := os.ReadFile(name)
	if os.IsNotExist(err) && filepath.Base(name) == "README.md" {
		t.Skip("there is no README.md yet")
	}
	if err != nil {
		t.Fatal(err)
	}
	p := &page{name: name, text: string(data)}
	at, line, before := 0, 0, ""
	var open *block
	for text := range strings.Lines(p.text) {
		line++
		switch fence := strings.HasPrefix(text, "```"); {
		case fence && open == nil:
			words := append(strings.Fields(text[3:]), "")
			open = &block{kind: words[0], words: words[1:], place: fmt.Sprintf("%s:%d", filepath.Base(name), line+1), before: before, from: at + len(text)}
		case fence:
			open.to = at
			open.text = p.text[open.from:open.to]
			p.blocks = append(p.blocks, *open)
			open = nil
		case strings.TrimSpace(text) != "":
			before = strings.TrimSpace(text)
		}
		at += len(text)
	}
	if open != nil {
		t.Fatalf("%s: the block is never closed", open.place)
	}
	return p
}

func (b *block) has(word string) bool {
	for _, w := range b.words {
		if w == word {
			return true
		}
	}
	return false
}

// wrong gives the rule that a block must break, "" for a good one.
func (b *block) wrong() string {
	for i, w := range b.words {
		if w == "wrong" {
			return b.words[i+1]
		}
	}
	return ""
}

// frame names the file that a fragment is put into, "" for a whole pattern.
func (b *block) frame() string {
	if b.kind != "seam" || b.words[0] == "wrong" || b.words[0] == "unchecked" {
		return ""
	}
	return b.words[0]
}

// framed gives the whole source of a block, the line on which it begins and how
// far it is set in. A frame holds PREAMBLE and HERE, each on a line of its own.
func (b *block) framed(t *testing.T) (src string, first, indent int) {
	if b.frame() == "" {
		return b.text, 1, 0
	}
	read := func(name string) string {
		data, err := os.ReadFile("testdata/docs/" + name + ".seam")
		if err != nil {
			t.Fatalf("%s: there is no frame of that name: %v", b.place, err)
		}
		return string(data)
	}
	src = strings.Replace(read(b.frame()), "PREAMBLE\n", read("preamble"), 1)
	before, after, ok := strings.Cut(src, "HERE\n")
	if !ok {
		t.Fatalf("the frame %s has no line HERE", b.frame())
	}
	indent = len(before) - strings.LastIndexByte(before, '\n') - 1
	margin := strings.Repeat(" ", indent)
	text := strings.ReplaceAll(strings.TrimSuffix(b.text, "\n"), "\n", "\n"+margin)
	return before + strings.ReplaceAll(text, "\n"+margin+"\n", "\n\n") + "\n" + after, strings.Count(before, "\n") + 1, indent
}

// want compares a block with what the program makes of it today.
func (p *page) want(t *testing.T, b *block, text string) {
	if b.text == text {
		return
	}
	if *updateDocs {
		p.edits = append(p.edits, edit{b.from, b.to, text})
		return
	}
	t.Errorf("%s: the page is not what the program says today; run go test ./compiler -run Docs -update. It says:\n%s", b.place, text)
}

// save writes the page with what has changed.
func (p *page) save(t *testing.T) {
	for i := len(p.edits) - 1; i >= 0; i-- {
		e := p.edits[i]
		p.text = p.text[:e.from] + e.text + p.text[e.to:]
	}
	if len(p.edits) > 0 {
		if err := os.WriteFile(p.name, []byte(p.text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}
