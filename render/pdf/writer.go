package pdf

import (
	"bytes"
	"fmt"
	"regexp"
	"slices"
	"sync"
	"time"
	"unicode/utf16"

	"github.com/jung-kurt/gofpdf"

	"seamwarden/compiler/figure"
)

// writer is the canvas on gofpdf. It uses that package for the file's objects:
// pages, font subsets, links, outline. What is on a page it writes itself, as PDF
// operators, because the package's own text calls break lines at no-break spaces,
// know no kerning and no even-odd fill.
type writer struct {
	pdf   *gofpdf.Fpdf
	sheet sheet
	about about
	fonts map[*face]*subset
	used  []*subset // in order of first use
}

// subset is a font in the file and the characters of it that are drawn.
type subset struct {
	name  string // of the PDF resource
	face  *face
	runes map[rune]bool
}

func newWriter(sh sheet, a about, date time.Time) *writer {
	f := gofpdf.NewCustom(&gofpdf.InitType{
		UnitStr: "pt", Size: gofpdf.SizeType{Wd: sh.width, Ht: sh.height},
	})
	f.SetAutoPageBreak(false, 0)
	f.SetCatalogSort(true)
	f.SetCreationDate(date.UTC())
	f.SetModificationDate(date.UTC())
	f.SetProducer("seamwarden", false)
	f.SetCreator("seamwarden", false)
	f.SetTitle(infoString(a.title), false)
	f.SetAuthor(infoString(a.author), false)
	f.SetSubject(infoString(a.subject), false)
	return &writer{pdf: f, sheet: sh, about: a, fonts: map[*face]*subset{}}
}

// infoString writes text as PDF text strings want it: UTF-16, big end first,
// after a mark (ISO 32000-1, 7.9.2.2). The package's own way fails above U+FFFF.
func infoString(s string) string {
	if s == "" {
		return ""
	}
	out := []byte{0xFE, 0xFF}
	for _, u := range utf16.Encode([]rune(s)) {
		out = append(out, byte(u>>8), byte(u))
	}
	return string(out)
}

func (w *writer) page() { w.pdf.AddPage() }

func (w *writer) raw(format string, args ...any) {
	w.pdf.RawWriteStr(fmt.Sprintf(format, args...))
}

// up turns a distance from the top into one from the bottom, as PDF counts.
func (w *writer) up(y float64) float64 { return w.sheet.height - y }

func (w *writer) text(x, y, angle float64, r run, ink figure.Paint) {
	f := w.font(r.face)
	for _, c := range r.text {
		f.runes[c] = true
	}
	colour := colourOp(ink, "rg", "g")
	w.raw("BT /F%s %s Tf %s %s %s Tm <%s> Tj ET", f.name, num(r.size), colour,
		turn(angle), point(x, w.up(y)), codes(r.text))
}

// codes writes text as the file's fonts want it: four hexadecimal digits for each
// character, its code point.
func codes(rs []rune) string {
	var b bytes.Buffer
	for _, r := range rs {
		fmt.Fprintf(&b, "%04X", r)
	}
	return b.String()
}

func (w *writer) link(area rect, to place) {
	id := w.pdf.AddLink()
	w.pdf.SetLink(id, to.y, to.page)
	w.pdf.Link(area.x, area.y, area.w, area.h, id)
}

func (w *writer) bookmark(title string, level int, y float64) {
	// No font is ever selected in the package itself, so that it takes the string
	// as it is.
	w.pdf.Bookmark(infoString(title), level, y)
}

var fontName = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`/F(\w+) `) })

// font brings a font into the file when it is first used. The package names a
// font's resource only where it selects it, so a template that is never drawn is
// made to select it.
func (w *writer) font(f *face) *subset {
	if s, ok := w.fonts[f]; ok {
		return s
	}
	w.pdf.AddUTF8FontFromBytes(f.name, "", bytes.Clone(f.ttf)) // it changes the bytes
	t := w.pdf.CreateTemplate(func(t *gofpdf.Tpl) { t.SetFont(f.name, "", 10) })
	s := &subset{face: f, runes: map[rune]bool{}}
	if m := fontName().FindSubmatch(t.Bytes()); m != nil {
		s.name = string(m[1])
	} else {
		w.pdf.SetErrorf("the font %s cannot be used", f.name)
	}
	w.fonts[f] = s
	w.used = append(w.used, s)
	return s
}

// announce tells the package which characters of each font to keep.
func (w *writer) announce() {
	for _, s := range w.used {
		var rs []rune
		for r := range s.runes {
			rs = append(rs, r)
		}
		slices.Sort(rs)
		w.pdf.CreateTemplate(func(t *gofpdf.Tpl) {
			t.SetFont(s.face.name, "", 10)
			t.Text(0, 0, string(rs))
		})
	}
}

func (w *writer) finish() ([]byte, error) {
	w.announce()
	var b bytes.Buffer
	if err := w.pdf.Output(&b); err != nil {
		return nil, fmt.Errorf("writing the PDF file: %w", err)
	}
	return complete(b.Bytes(), w.about)
}
