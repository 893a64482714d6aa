package figure

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"strings"
	"unicode/utf8"

	"seamwarden/dsl/finding"
)

// Limits of one figure. They are far above what line art needs and keep a
// hostile file from filling memory.
const (
	mostBytes    = 5 << 20
	mostCommands = 200_000
	mostItems    = 50_000
	mostNesting  = 200
	farthest     = 1e7 // drawing units from the origin
)

// Read reads an SVG file (SVG 1.1 and the same parts of SVG 2): shapes, paths,
// groups, transforms and words, with their fills and strokes. Its findings have
// places in file. The drawing is nil if the file as a whole cannot be read;
// otherwise it holds everything that could be, and each thing left out has a
// finding.
//
// The view box is moved to begin at (0, 0). A drawing less than 100 units wide
// and high is enlarged by a power of ten, so that its numbers can be rounded to
// three decimals; all are.
//
// Of words, the typeface is not read (the booklet has its own), and white space
// is joined into single spaces.
func Read(file string, src []byte) (*Drawing, []finding.Finding) {
	return readBy(func() *reader { return newReader(file, src) }).result()
}

// readBy reads a file with a new reader, and, if it is not as plain as most, with a
// second one that knows all of XML.
func readBy(begin func() *reader) *reader {
	r := begin()
	if r.acceptable(r.text.src) && !r.readPlain(r.text.src) {
		r = begin()
		r.decode(r.text.src)
	}
	return r
}

func newReader(file string, src []byte) *reader {
	const usual = 4 // elements within elements
	return &reader{text: newSource(file, src), step: quarter, stack: make([]frame, 0, usual)}
}

// result gives what was read; no drawing if the file as a whole cannot be.
func (r *reader) result() (*Drawing, []finding.Finding) {
	if r.stopped {
		return nil, r.notes.all(r.text.file)
	}
	return r.out, r.notes.all(r.text.file)
}

// reader walks the tokens of one file.
type reader struct {
	text     *source
	notes    notes
	stack    []frame
	out      *Drawing
	box      measures // the view box, for percentages
	commands int
	step     float64   // the largest part of a turn that is one curve
	visit    Visitor   // who meets the elements instead of a drawing; nil for a drawing
	met      Tag       // what it meets
	bare     frame     // what holds in shapes for it: nothing but what SVG begins with
	room     []Command // for the path that it meets
	titled   bool
	stopped  bool   // the file as a whole cannot be read
	finished bool   // the root has been closed
	words    *line  // of the <text> around this place
	line     line   // room for it
	declared []attr // room for the settings of one element
}

// frame is one open element and what holds inside it.
type frame struct {
	name     string
	from, to int
	mode     mode
	style    style
	m        matrix // to drawing units
	title    *title // in modes titles and rules
}

// title is the text of a <title>, <desc> or <style>, and where it goes.
type title struct {
	strings.Builder
	to *string
}

// mode says what becomes of what stands in an element.
type mode uint8

const (
	drawn    mode = iota
	unseen        // definitions and what cannot be seen: only looked through for what must never be there
	ignored       // inside something already reported, or another program's data
	titles        // <title> and <desc>
	rules         // <style>
	lettered      // <text> and <tspan>
)

func (r *reader) top() *frame { return &r.stack[len(r.stack)-1] }

// stop notes a fault that leaves no drawing.
func (r *reader) stop(at finding.Span, headline, label, why, help string) {
	r.stopped = true
	r.unreadable(at, headline, label, why, help)
}

// acceptable looks at the file as bytes.
func (r *reader) acceptable(src []byte) bool {
	whole := finding.Span{File: r.text.file}
	switch {
	case len(src) > mostBytes:
		r.stop(whole, "The figure file is larger than 5 MB", "too large", "A figure is a line drawing; this much data holds a picture or a scan.", "Simplify the drawing, or take pictures out of it.")
	case len(bytes.TrimSpace(bytes.TrimPrefix(src, byteOrderMark))) == 0:
		r.stop(whole, "The figure file is empty", "nothing here", "", "Save the drawing again.")
	case !utf8.Valid(src):
		at := firstBadByte(src)
		r.stop(r.text.span(at, at+1), "The figure file is not written in UTF-8", "this byte is not UTF-8", "", "Save the drawing as SVG in UTF-8.")
	}
	return !r.stopped
}

func firstBadByte(src []byte) int {
	for i := 0; i < len(src); {
		c, n := utf8.DecodeRune(src[i:])
		if c == utf8.RuneError && n == 1 {
			return i
		}
		i += n
	}
	return len(src)
}

// decode runs through the tokens until the end or the first fault of the XML.
func (r *reader) decode(src []byte) {
	base := 0
	if bytes.HasPrefix(src, byteOrderMark) {
		base = len(byteOrderMark)
	}
	dec := xml.NewDecoder(bytes.NewReader(src[base:]))
	dec.CharsetReader = charset(src)
	for !r.stopped {
		from := base + int(dec.InputOffset())
		tok, err := dec.Token()
		to := base + int(dec.InputOffset())
		if err != nil {
			r.atEnd(err, from, to)
			return
		}
		r.token(tok, from, to)
	}
}

// charset lets a file call its encoding what it likes as long as all of it is
// ASCII, where the names agree.
func charset(src []byte) func(string, io.Reader) (io.Reader, error) {
	return func(name string, in io.Reader) (io.Reader, error) {
		for _, c := range src {
			if c >= utf8.RuneSelf {
				return nil, errEncoding
			}
		}
		return in, nil
	}
}

var errEncoding = errors.New("declared encoding is not UTF-8")

// atEnd handles the decoder's last word.
func (r *reader) atEnd(err error, from, to int) {
	switch {
	case errors.Is(err, io.EOF) && r.out == nil:
		r.noDrawing(finding.Span{File: r.text.file})
	case errors.Is(err, io.EOF):
	case strings.Contains(err.Error(), "encoding") || errors.Is(err, errEncoding):
		r.stop(r.text.span(from, to), "The figure file says that it is not written in UTF-8", "this encoding", "", "Save the drawing as SVG in UTF-8.")
	default:
		r.malformed(err, to)
	}
}

// malformed places what the decoder stumbled over: at the closing tag, if that
// is what does not fit, else at the last character read.
func (r *reader) malformed(err error, to int) {
	open := ""
	if len(r.stack) > 0 {
		open = clip(r.top().name)
	}
	headline, label := malformed(err.Error(), open)
	from := max(0, to-1)
	if strings.Contains(err.Error(), "closed by") || strings.Contains(err.Error(), "unexpected end element") {
		from = max(0, bytes.LastIndex(r.text.src[:to], []byte("</")))
	}
	r.stop(r.text.span(from, to), headline, label, "", "Save the drawing again, or mend the file at this place.")
	if last := len(r.notes.list) - 1; len(r.stack) > 0 && r.notes.dropped == 0 {
		f := r.top()
		r.notes.list[last].Related = []finding.Place{{Span: r.text.span(f.from, f.to), Label: "still open"}}
	}
}

func (r *reader) token(tok xml.Token, from, to int) {
	switch tok := tok.(type) {
	case xml.StartElement:
		t := newTag(r.text, tok, from, to)
		r.start(&t)
	case xml.EndElement:
		r.end()
	case xml.CharData:
		r.characters(tok, from, to)
	case xml.Directive:
		r.stop(r.text.span(from, to), "A figure has no <!DOCTYPE>", "take this out", "Such a declaration can hide text that grows without end, and nothing in a drawing needs it.", "Delete everything from <!DOCTYPE to its closing >.")
	case xml.ProcInst:
		if tok.Target == "xml-stylesheet" {
			r.active(r.text.span(from, to), "A style sheet from outside", "it was left out")
		}
	}
}

// characters takes text where there is a use for it.
func (r *reader) characters(text xml.CharData, from, to int) {
	if r.visit != nil && len(r.stack) > 0 {
		r.visit.Text(string(text))
		return
	}
	if len(r.stack) == 0 {
		if len(bytes.TrimSpace(text)) > 0 {
			r.outside(from, to)
		}
		return
	}
	switch f := r.top(); f.mode {
	case titles, rules:
		f.title.Write(text)
	case lettered:
		r.words.add(r, f, string(text))
	}
}

// outside notes text before or after the root.
func (r *reader) outside(from, to int) {
	if !bytes.Contains(r.text.src, []byte("<svg")) {
		r.noDrawing(r.text.span(from, to))
		return
	}
	r.stop(r.text.span(from, to), "There is text outside the drawing", "outside <svg>", "", "Delete it.")
}

func (r *reader) noDrawing(at finding.Span) {
	r.stop(at, "There is no drawing in the figure file", "no <svg> here", "", "Save the drawing as SVG.")
}

func (r *reader) end() {
	f := r.top()
	switch {
	case r.visit != nil:
		r.visit.End()
	case f.mode == titles:
		*f.title.to = strings.Join(strings.FieldsFunc(f.title.String(), isSpace), " ")
	case f.mode == rules:
		r.styleRules(f)
	case f.mode == lettered && f.name == "text":
		r.words.flush(r)
		r.words = nil
	}
	r.stack = r.stack[:len(r.stack)-1]
	r.finished = len(r.stack) == 0
}

func isSpace(c rune) bool { return c == ' ' || c == '\t' || c == '\n' || c == '\r' }

// round gives three decimals, and never minus nothing.
func round(v float64) float64 { return math.Round(v*1000)/1000 + 0 }

func (r *reader) measures(st *style) measures {
	m := r.box
	m.font = st.size
	return m
}

// emit adds an item, within limits.
func (r *reader) emit(it Item, t *tag) {
	if len(r.out.Items) >= mostItems {
		r.overLimit(t.span(), fmt.Sprintf("more than %d shapes and lines of words", mostItems))
		return
	}
	r.out.Items = append(r.out.Items, it)
}

func (r *reader) overLimit(at finding.Span, what string) {
	r.stop(at, "The figure has "+what, "the limit is passed here", "A figure is a line drawing; this much detail comes from a scan or a trace.", "Simplify the drawing.")
}
