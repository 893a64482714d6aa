package pdf

import (
	"bytes"
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"seamwarden/compiler/booklet"
)

var papers = map[string]Paper{"A4": A4, "Letter": Letter}

func TestFileIsSoundAndOfTheRightSize(t *testing.T) {
	// ISO 216: A4 is 210 × 297 mm, that is 595.28 × 841.89 points; ANSI A is 8½ × 11 in.
	want := map[string]string{"A4": "595.28 x 841.89 pts (A4)", "Letter": "612 x 792 pts (letter)"}
	for name, p := range papers {
		t.Run(name, func(t *testing.T) {
			r := mustRender(t, fixture(), Options{Paper: p})
			file := save(t, r.Bytes)
			needTool(t, "qpdf")
			if out := runTool(t, "qpdf", "--check", file); !strings.Contains(out, "No syntax or stream encoding errors") {
				t.Errorf("qpdf finds fault:\n%s", out)
			}
			needTool(t, "pdfinfo")
			info := runTool(t, "pdfinfo", file)
			for _, w := range []string{want[name], fmt.Sprintf("Pages:           %d", r.Pages),
				"Title:           Marlow wrap skirt", "Author:          Quillfen", "Subject:         Views A and B"} {
				if !strings.Contains(info, w) {
					t.Errorf("pdfinfo does not say %q:\n%s", w, info)
				}
			}
		})
	}
}

func TestEveryTextIsOnPaper(t *testing.T) {
	for name, p := range papers {
		t.Run(name, func(t *testing.T) {
			b := fixture()
			r := mustRender(t, b, Options{Paper: p})
			if len(r.MissingGlyphs) > 0 {
				t.Errorf("characters without a shape: %q", string(r.MissingGlyphs))
			}
			text := squeeze(strings.Join(pageTexts(t, save(t, r.Bytes)), ""))
			for _, want := range allTexts(b) {
				if !strings.Contains(text, squeeze(want)) {
					t.Errorf("not on paper: %q", want)
				}
			}
		})
	}
}

func TestPageNumbersAndContentsAreRight(t *testing.T) {
	for name, p := range papers {
		t.Run(name, func(t *testing.T) {
			b := fixture()
			r := mustRender(t, b, Options{Paper: p})
			pages := pageTexts(t, save(t, r.Bytes))
			if len(pages) != r.Pages {
				t.Fatalf("%d pages in the file, %d in the result", len(pages), r.Pages)
			}
			for i, text := range pages[1:] {
				if want := fmt.Sprintf("%d / %d\n", i+2, r.Pages); !strings.Contains(text, want) {
					t.Errorf("page %d lacks its number %q", i+2, want)
				}
			}
			for _, c := range b.Chapters {
				n := pageInContents(pages[1], c.Title)
				if n < 3 || n > r.Pages {
					t.Errorf("contents give page %d for %q", n, c.Title)
				} else if !slices.Contains(strings.Split(pages[n-1], "\n"), c.Title) {
					t.Errorf("contents give page %d for %q, but the heading is not there", n, c.Title)
				}
			}
		})
	}
}

// pageInContents reads the number that stands after a title.
func pageInContents(contents, title string) int {
	n := 0
	for line := range strings.SplitSeq(contents, "\n") {
		if rest, ok := strings.CutPrefix(line, title+" "); ok {
			fmt.Sscan(rest, &n)
		}
	}
	return n
}

func TestBookmarksLanguageAndLinks(t *testing.T) {
	needTool(t, "qpdf")
	b := fixture()
	b.Chapters[0].Title = "Before you start 𝐀" // above U+FFFF, which the PDF package cannot encode
	r := mustRender(t, b, Options{})
	file := save(t, r.Bytes)
	var got struct {
		Outlines []struct {
			Title string
			Page  int `json:"destpageposfrom1"`
			Kids  []struct{ Title string }
		}
	}
	if err := json.Unmarshal([]byte(runTool(t, "qpdf", "--json", "--json-key=outlines", file)), &got); err != nil {
		t.Fatal(err)
	}
	var titles []string
	for _, o := range got.Outlines {
		titles = append(titles, o.Title)
	}
	var want []string
	for _, c := range b.Chapters {
		want = append(want, c.Title)
	}
	if !slices.Equal(titles, want) {
		t.Errorf("bookmarks %q, chapters %q", titles, want)
	}
	if len(got.Outlines) > 3 && (got.Outlines[3].Page < 3 || len(got.Outlines[3].Kids) != 3) {
		t.Errorf("the bookmark of the sewing chapter: %+v", got.Outlines[3])
	}
	objects := runTool(t, "qpdf", "--json=2", file)
	for _, want := range []string{`"/Lang": "u:en"`, `"/DisplayDocTitle": true`, `"/Subtype": "/Link"`} {
		if !strings.Contains(objects, want) {
			t.Errorf("the file lacks %s", want)
		}
	}
}

func TestSameBookletSameBytes(t *testing.T) {
	first := mustRender(t, fixture(), Options{}).Bytes
	here := time.Local
	defer func() { time.Local = here }()
	for i := range 5 {
		time.Local = time.FixedZone("elsewhere", 3600*(i*5-11))
		if again := mustRender(t, fixture(), Options{}).Bytes; !bytes.Equal(first, again) {
			t.Fatalf("run %d gives other bytes", i+2)
		}
	}
	day := time.Date(2031, 5, 6, 7, 8, 9, 0, time.UTC)
	dated := mustRender(t, fixture(), Options{Date: day}).Bytes
	elsewhere := mustRender(t, fixture(), Options{Date: day.In(time.Local)}).Bytes
	if !bytes.Equal(dated, elsewhere) {
		t.Error("the same moment in another time zone gives other bytes")
	}
	if bytes.Equal(first, dated) || !bytes.Contains(dated, []byte("D:20310506070809")) {
		t.Error("the date is not in the file")
	}
}

func TestBookletsSideBySide(t *testing.T) {
	want := mustRender(t, fixture(), Options{}).Bytes
	done := make(chan bool)
	for range 3 {
		go func() {
			r, err := Render(fixture(), Options{})
			done <- err == nil && bytes.Equal(r.Bytes, want)
		}()
	}
	for range 3 {
		if !<-done {
			t.Error("booklets rendered at the same time differ")
		}
	}
}

// alien is a block or a kind of text that print has never heard of.
type (
	alien       struct{ booklet.Block }
	alienInline struct{ booklet.Inline }
)

func TestWhatCannotBePrinted(t *testing.T) {
	with := func(bs ...booklet.Block) *booklet.Booklet {
		return &booklet.Booklet{Chapters: []booklet.Chapter{{Title: "Sewing", Blocks: bs}}}
	}
	var noTable *booklet.Table
	for name, b := range map[string]*booklet.Booklet{
		"no booklet":    nil,
		"unknown block": with(&alien{}),
		"deep block":    with(&booklet.Group{When: "x", Blocks: []booklet.Block{&booklet.List{Items: [][]booklet.Block{{&alien{}}}}}}),
		"empty block":   with(nil),
		"empty table":   with(noTable),
		"unknown text":  with(para(booklet.Strong{Text: []booklet.Inline{alienInline{}}})),
		"unknown cell":  with(&booklet.Table{Rows: []booklet.Row{{Cells: []booklet.Cell{{Text: []booklet.Inline{nil}}}}}}),
	} {
		if r, err := Render(b, Options{}); err == nil {
			t.Errorf("%s: printed on %d pages", name, r.Pages)
		} else if strings.Contains(err.Error(), "booklet.") || strings.Contains(err.Error(), "*") {
			t.Errorf("%s: the message names a Go type: %v", name, err)
		}
	}
	if _, err := Render(fixture(), Options{Paper: 7}); err == nil {
		t.Error("unknown paper was accepted")
	}
}

func TestMissingGlyphsAreShownAndNamed(t *testing.T) {
	b := &booklet.Booklet{Title: "𝐀b", Chapters: []booklet.Chapter{{Title: "漢", Blocks: []booklet.Block{
		para(txt("x\uE000y a\u00ADb ✂ \u200D\uFE0F")...),
	}}}}
	r := mustRender(t, b, Options{})
	if got, want := string(r.MissingGlyphs), "漢\uE000𝐀"; got != want {
		t.Errorf("missing %q, want %q", got, want)
	}
	text := strings.Join(pageTexts(t, save(t, r.Bytes)), "")
	for _, want := range []string{"□b", "x□y ab ✂"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not on paper:\n%s", want, text)
		}
	}
}

func BenchmarkRender(b *testing.B) {
	book := fixture()
	for b.Loop() {
		mustRender(b, book, Options{})
	}
}
