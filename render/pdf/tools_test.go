package pdf

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"unicode"

	"seamwarden/compiler/booklet"
)

// The tests below read the files that Render writes with other people's readers:
// qpdf, and pdftotext, pdfinfo and pdftoppm of poppler.

func needTool(t *testing.T, tool string) {
	t.Helper()
	if _, err := exec.LookPath(tool); err != nil {
		t.Skipf("%s is not installed here, so the file was not read with it", tool)
	}
}

func runTool(t *testing.T, tool string, args ...string) string {
	t.Helper()
	out, err := exec.Command(tool, args...).CombinedOutput()
	if err != nil {
		t.Fatalf("%s %s: %v\n%s", tool, strings.Join(args, " "), err, out)
	}
	return string(out)
}

func mustRender(t testing.TB, b *booklet.Booklet, o Options) Result {
	t.Helper()
	r, err := Render(b, o)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// save writes a file for a tool to read.
func save(t *testing.T, data []byte) string {
	t.Helper()
	name := filepath.Join(t.TempDir(), "booklet.pdf")
	if err := os.WriteFile(name, data, 0o600); err != nil {
		t.Fatal(err)
	}
	return name
}

// pageTexts gives the text of every page in the order in which it was drawn.
func pageTexts(t *testing.T, file string) []string {
	t.Helper()
	needTool(t, "pdftotext")
	pages := strings.Split(runTool(t, "pdftotext", "-raw", "-enc", "UTF-8", file, "-"), "\f")
	return pages[:len(pages)-1]
}

// squeeze takes out all white space, so that line ends do not matter.
func squeeze(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsSpace(r) {
			return -1
		}
		return r
	}, s)
}

// allTexts gives every text of a booklet that must be found in print.
func allTexts(b *booklet.Booklet) []string {
	out := []string{b.Title, b.Maker, b.Edition, b.Scope, booklet.Plain(b.Cover.About)}
	for _, f := range b.Cover.Facts {
		out = append(out, f.Name, booklet.Plain(f.Value))
	}
	for _, v := range b.Cover.Views {
		out = append(out, v.Name, v.Title)
	}
	for _, c := range b.Chapters {
		out = append(append(out, c.Title), blockTexts(c.Blocks)...)
	}
	return out
}

func blockTexts(bs []booklet.Block) []string {
	var out []string
	for _, b := range bs {
		switch x := b.(type) {
		case *booklet.Heading:
			out = append(out, x.Title)
		case *booklet.Paragraph:
			out = append(out, booklet.Plain(x.Text))
		case *booklet.List:
			for _, i := range x.Items {
				out = append(out, blockTexts(i)...)
			}
		case *booklet.Table:
			out = append(out, tableTexts(x)...)
		case *booklet.Figure:
			out = append(out, booklet.Plain(x.Caption))
		case *booklet.Step:
			out = append(append(out, x.Title, x.When), blockTexts(x.Blocks)...)
			for _, f := range x.Figures {
				if f != nil {
					out = append(out, booklet.Plain(f.Caption))
				}
			}
		case *booklet.Caution:
			out = append(out, x.Signal, booklet.Plain(x.Text))
		case *booklet.Terms:
			for _, t := range x.Items {
				out = append(append(out, t.Word), blockTexts(t.Blocks)...)
			}
		case *booklet.Group:
			out = append(append(out, x.When), blockTexts(x.Blocks)...)
		}
	}
	return out
}

func tableTexts(x *booklet.Table) []string {
	out := []string{x.Caption}
	for _, c := range x.Columns {
		out = append(out, booklet.Plain(c.Head))
	}
	for _, r := range x.Rows {
		out = append(out, r.When)
		for _, c := range r.Cells {
			out = append(out, booklet.Plain(c.Text))
		}
	}
	return out
}
