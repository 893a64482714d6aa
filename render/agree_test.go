package render_test

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"unicode"

	"golang.org/x/net/html"

	"seamwarden/compiler"
	"seamwarden/compiler/booklet"
	page "seamwarden/render/html"
	"seamwarden/render/pdf"
)

// Both renderers set the same booklet, so what poppler reads out of the PDF and
// what a parser reads out of the page must have the same steps, the same tables
// and the same measures, as often. Outside references: poppler's pdftotext,
// qpdf --check, golang.org/x/net/html.

var samples = []string{"market-apron", "dusk-skirt"}

func load(t *testing.T, sample string, c compiler.Choice) *booklet.Booklet {
	t.Helper()
	r, err := compiler.Compile(os.DirFS(filepath.Join("..", "samples", sample)))
	if err != nil {
		t.Fatal(err)
	}
	a, err := compiler.Choose(r.Pattern, c)
	if err != nil {
		t.Fatal(err)
	}
	b, err := compiler.Booklet(r.Pattern, a)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func tool(t *testing.T, name string) {
	t.Helper()
	if _, err := exec.LookPath(name); err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatalf("%s is not on this machine, and CI must have it", name)
		}
		t.Skipf("not run: %s is not on this machine", name)
	}
}

// dense is text without any white space, since lines break differently.
func dense(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsSpace(r) || r == '\u00ad' || r == '\u2060' {
			return -1
		}
		return r
	}, s)
}

func pdfText(t *testing.T, b []byte) string {
	file := filepath.Join(t.TempDir(), "booklet.pdf")
	if err := os.WriteFile(file, b, 0o600); err != nil {
		t.Fatal(err)
	}
	if out, err := exec.Command("qpdf", "--check", file).CombinedOutput(); err != nil {
		t.Errorf("qpdf --check: %v\n%s", err, out)
	}
	out, err := exec.Command("pdftotext", "-raw", "-enc", "UTF-8", file, "-").Output()
	if err != nil {
		t.Fatalf("pdftotext: %v", err)
	}
	return string(out)
}

func htmlText(t *testing.T, b []byte) string {
	root, err := html.Parse(bytes.NewReader(b))
	if err != nil {
		t.Fatal(err)
	}
	var s strings.Builder
	var walk func(*html.Node)
	walk = func(n *html.Node) {
		if n.Type == html.ElementNode && (n.Data == "style" || n.Data == "head" || n.Data == "nav" || n.Data == "svg") {
			return
		}
		if n.Type == html.TextNode {
			s.WriteString(n.Data)
		}
		for c := n.FirstChild; c != nil; c = c.NextSibling {
			walk(c)
		}
	}
	walk(root)
	return s.String()
}

// gather lists what a booklet says: steps, rows of tables and measures.
type said struct {
	steps    []*booklet.Step
	rows     []string
	measures map[string]int
}

func (s *said) inlines(in []booklet.Inline) {
	for _, i := range in {
		switch x := i.(type) {
		case booklet.Measure:
			s.measures[dense(x.String())]++
		case booklet.Strong:
			s.inlines(x.Text)
		case booklet.Emphasis:
			s.inlines(x.Text)
		case booklet.Link:
			s.inlines(x.Text)
		}
	}
}

func (s *said) blocks(list []booklet.Block) {
	for _, b := range list {
		switch x := b.(type) {
		case *booklet.Paragraph:
			s.inlines(x.Text)
		case *booklet.List:
			for _, i := range x.Items {
				s.blocks(i)
			}
		case *booklet.Table:
			for _, r := range x.Rows {
				var row string
				for _, c := range r.Cells {
					s.inlines(c.Text)
					row += booklet.Plain(c.Text)
				}
				if r.When == "" {
					s.rows = append(s.rows, dense(row))
				}
			}
		case *booklet.Step:
			s.steps = append(s.steps, x)
			s.blocks(x.Blocks)
		case *booklet.Caution:
			s.inlines(x.Text)
		case *booklet.Terms:
			for _, i := range x.Items {
				s.blocks(i.Blocks)
			}
		case *booklet.Group:
			s.blocks(x.Blocks)
		}
	}
}

func TestPrintAndPageAgree(t *testing.T) {
	tool(t, "pdftotext")
	tool(t, "qpdf")
	cases := []struct {
		sample string
		choice compiler.Choice
	}{
		{"market-apron", compiler.Choice{}},
		{"market-apron", compiler.Choice{Size: "M", Without: []string{"towel-loop"}}},
		{"dusk-skirt", compiler.Choice{}},
		{"gale-parka", compiler.Choice{View: "C", Size: "100"}},
		{"dusk-skirt", compiler.Choice{View: "B", Size: "12", With: []string{"pockets"}, Ways: map[string]string{"band": "bound"}}},
	}
	for _, c := range cases {
		for _, paper := range []pdf.Paper{pdf.A4, pdf.Letter} {
			b := load(t, c.sample, c.choice)
			p, err := pdf.Render(b, pdf.Options{Paper: paper})
			if err != nil {
				t.Fatal(err)
			}
			h, err := page.Render(b)
			if err != nil {
				t.Fatal(err)
			}
			compare(t, c.sample, b, dense(pdfText(t, p.Bytes)), dense(htmlText(t, h)))
		}
	}
}

func compare(t *testing.T, name string, b *booklet.Booklet, print, screen string) {
	s := &said{measures: map[string]int{}}
	for _, ch := range b.Chapters {
		s.blocks(ch.Blocks)
	}
	if len(s.steps) < 10 || len(s.rows) < 5 || len(s.measures) < 3 {
		t.Fatalf("%s: too little to compare: %d steps, %d rows, %d measures", name, len(s.steps), len(s.rows), len(s.measures))
	}
	atPrint, atScreen := 0, 0
	for i, st := range s.steps {
		if st.Number != i+1 {
			t.Errorf("%s: step %d has the number %d", name, i+1, st.Number)
		}
		// a title that wraps beside a figure is cut apart by the figure's labels in
		// pdftotext's order, so its first words must do
		words := strings.Fields(st.Title)
		want := dense(strconv.Itoa(st.Number) + strings.Join(words[:min(3, len(words))], ""))
		after := func(text string, from int) int {
			k := strings.Index(text[from:], want)
			if k < 0 {
				return -1
			}
			return from + k + len(want)
		}
		if k := after(print, atPrint); k < 0 {
			t.Errorf("%s: print lacks step %d %q in its place", name, st.Number, st.Title)
		} else {
			atPrint = k
		}
		if k := after(screen, atScreen); k < 0 {
			// a page may say the word "Step" or a tick box between number and title
			if title := strings.Index(screen[atScreen:], dense(st.Title)); title < 0 {
				t.Errorf("%s: page lacks step %d %q in its place", name, st.Number, st.Title)
			} else {
				atScreen += title
			}
		} else {
			atScreen = k
		}
	}
	for _, row := range s.rows {
		if !strings.Contains(print, row) {
			t.Errorf("%s: print lacks the row %q", name, row)
		}
		if !strings.Contains(screen, row) {
			t.Errorf("%s: page lacks the row %q", name, row)
		}
	}
	for m := range s.measures {
		if p, h := strings.Count(print, m), strings.Count(screen, m); p != h || p < s.measures[m] {
			t.Errorf("%s: %s stands %d times in print, %d times on the page, and %d times in the booklet", name, m, p, h, s.measures[m])
		}
	}
}
