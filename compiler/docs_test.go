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
	"seamwarden/compiler/booklet"
	"seamwarden/compiler/check"
	"seamwarden/compiler/figure"
	"seamwarden/compiler/outline"
	"seamwarden/compiler/size"
	"seamwarden/dsl"
	"seamwarden/dsl/finding"
)

// The examples of the reference pages are tests. The words after the fence of a
// block say what it is:
//
//	seam              a whole pattern: compiles with no finding, and makes a booklet
//	seam FRAME        put into testdata/docs/FRAME.seam: adds no finding
//	… unchecked       as above, but something in it is listed as not checked
//	… wrong RULE      gives exactly one finding, of that rule
//	yaml sizes        a table of sizes, read with no finding; or wrong RULE
//	svg               a figure, read with no finding; or wrong RULE
//	svg outline       the same for the outline of a piece
//	text said         what the block before it makes the compiler say
//	text printed      the steps that the whole pattern before it prints
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
			last, printed := "", ""
			for i := range p.blocks {
				b := &p.blocks[i]
				switch {
				case b.kind == "text" && b.has("said"):
					p.want(t, b, last)
				case b.kind == "text" && b.has("printed"):
					p.want(t, b, printed)
				case b.kind == "seam":
					last, printed = trySeam(t, b)
				case b.kind == "yaml" && b.has("sizes"):
					chart, found := size.Read("sizes.yaml", []byte(b.text))
					last = b.judge(t, found, map[string]string{"sizes.yaml": b.text})
					if chart == nil && b.wrong() == "" {
						t.Errorf("%s: no chart", b.place)
					}
				case b.kind == "svg" && b.has("outline"):
					_, found := outline.Read("outline.svg", []byte(b.text))
					last = b.judge(t, found, map[string]string{"outline.svg": b.text})
				case b.kind == "svg":
					_, found := figure.Read("figure.svg", []byte(b.text))
					last = b.judge(t, found, map[string]string{"figure.svg": b.text})
				}
			}
			p.save(t)
		})
	}
}

// trySeam compiles a block, whole or in its frame, and gives what is said of it
// and, of a good one, the steps that are printed.
func trySeam(t *testing.T, b *block) (said, printed string) {
	src, r, found := b.compiled(t)
	if r == nil {
		return "", ""
	}
	if b.wrong() == "" {
		canonical(t, b, src)
		printed = stepsOf(t, b, r)
	}
	return b.judge(t, found, r.Sources), printed
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
	return src, r, withoutFrame(found)
}

// withoutFrame leaves out what is not checked in the pattern round a fragment: the
// ends of its sleeve seam are not told.
func withoutFrame(found []finding.Finding) (kept []finding.Finding) {
	for _, f := range found {
		if f.Severity != finding.Unchecked || !strings.Contains(f.Headline, "the set in seam run the right way") {
			kept = append(kept, f)
		}
	}
	return
}

// stepsOf makes the booklet of a pattern for all its garments, and gives its
// steps as plain text.
func stepsOf(t *testing.T, b *block, r *compiler.Result) string {
	all, err := compiler.Choose(r.Pattern, compiler.Choice{})
	if err != nil {
		t.Errorf("%s: %v", b.place, err)
		return ""
	}
	k, err := compiler.Booklet(r.Pattern, all)
	if err != nil || len(k.Chapters) == 0 {
		t.Errorf("%s: it makes no booklet (%v)", b.place, err)
		return ""
	}
	var text strings.Builder
	for _, c := range k.Chapters {
		for _, x := range c.Blocks {
			if step, ok := x.(*booklet.Step); ok {
				fmt.Fprintf(&text, "%d. %s\n", step.Number, step.Title)
				paragraphs(&text, step.Blocks)
			}
		}
	}
	return text.String()
}

func paragraphs(text *strings.Builder, blocks []booklet.Block) {
	for _, x := range blocks {
		if p, ok := x.(*booklet.Paragraph); ok {
			fmt.Fprintf(text, "   %s\n", booklet.Plain(p.Text))
		}
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
func (b *block) judge(t *testing.T, found []finding.Finding, sources map[string]string) string {
	counted, open := b.sorted(found)
	text := written(counted, sources)
	switch rule := b.wrong(); {
	case rule != "":
		b.judgeWrong(t, rule, counted, text)
	case len(counted) > 0:
		t.Errorf("%s: it should give no finding, and gives:\n%s", b.place, text)
	case b.has("unchecked"):
		text = written(open, sources)
		if len(open) == 0 {
			t.Errorf("%s: nothing in it is listed as not checked", b.place)
		}
	case len(open) > 0:
		t.Errorf("%s: it should be checked, and gives:\n%s", b.place, written(open, sources))
	}
	return text
}

func (b *block) judgeWrong(t *testing.T, rule string, found []finding.Finding, text string) {
	if len(found) != 1 || found[0].Rule != rule {
		t.Errorf("%s: want exactly one finding of %s, got %d:\n%s", b.place, rule, len(found), text)
	}
	if b.before != "*Wrong*, `"+rule+"`:" {
		t.Errorf("%s: the line above should be *Wrong*, `%s`:", b.place, rule)
	}
	if r := check.Find(rule); r != nil && r.FromAbsence && b.frame() != "" {
		t.Errorf("%s: %s concludes from what is absent; show it in a whole pattern", b.place, rule)
	}
}

// sorted parts findings into those that count and what is not checked.
func (b *block) sorted(found []finding.Finding) (counted, open []finding.Finding) {
	for _, f := range found {
		switch {
		case f.Severity == finding.Unchecked:
			open = append(open, f)
		case f.Severity != finding.Advice || f.Rule == b.wrong():
			counted = append(counted, f)
		}
	}
	return
}

func written(found []finding.Finding, sources map[string]string) string {
	var text bytes.Buffer
	w := &finding.Writer{Out: &text, Sources: sources}
	for _, f := range found {
		w.Write(f)
	}
	return strings.TrimRight(text.String(), "\n") + "\n"
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
