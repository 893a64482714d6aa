package finding

import (
	"fmt"
	"io"
	"slices"
	"strings"
)

// Writer prints findings for a person: the headline, the source line with a
// caret under the place, the other place that matters, why, and what to do.
type Writer struct {
	Out     io.Writer
	Sources map[string]string // text of each file, by the name in the spans
	Folder  string            // put before file names, "" for none
	Colour  bool
}

const (
	red, yellow, blue, dim, bold, plain = "\x1b[31m", "\x1b[33m", "\x1b[34m", "\x1b[2m", "\x1b[1m", "\x1b[0m"
)

func (w *Writer) paint(code, s string) string {
	if !w.Colour || s == "" {
		return s
	}
	return code + s + plain
}

// Write prints one finding, with an empty line after it.
func (w *Writer) Write(f Finding) {
	colour := [...]string{red, yellow, blue, dim}[f.Severity]
	fmt.Fprintf(w.Out, "%s %s %s\n", w.paint(colour+bold, f.Severity.String()+":"), w.paint(bold, headline(f)), w.paint(dim, "["+f.Rule+"]"))
	w.place(f.Place, "^")
	for i, r := range f.Related {
		if !slices.Contains(f.Related[:i], r) {
			w.place(r, "-")
		}
	}
	for _, note := range []struct{ name, text string }{{"for example", f.Witness}, {"why", f.Why}, {"do", f.Help}} {
		if note.text != "" {
			fmt.Fprintf(w.Out, "  %s %s\n", w.paint(dim, note.name+":"), clean(note.text))
		}
	}
	fmt.Fprintln(w.Out)
}

// headline says what is wrong and, unless it is so everywhere, in which garments.
func headline(f Finding) string {
	head := clean(f.Headline)
	if f.When == "" {
		return head
	}
	return strings.TrimSuffix(head, ".") + ": " + strings.TrimSuffix(clean(f.When), ".") + "."
}

// place prints where something is: the file, line and column, then the line with
// marks under it. The label of the first place stands behind its marks, that of
// another place behind its line number.
func (w *Writer) place(p Place, mark string) {
	if p.File == "" {
		return
	}
	where, label := w.where(p.Span), clean(p.Label)
	line, shown := sourceLine(w.Sources[p.File], p.Start)
	beside := label
	if shown && mark == "^" {
		beside = ""
	}
	fmt.Fprintf(w.Out, "  %s%s\n", w.paint(blue, where), spaced("  ", beside))
	if !shown {
		return
	}
	if beside != "" {
		label = ""
	}
	w.excerpt(p.Span, line, mark, label)
}

// where is the name of a place, as editors and terminals follow it.
func (w *Writer) where(s Span) string {
	name := clean(s.File)
	if w.Folder != "" {
		name = clean(w.Folder) + "/" + name
	}
	if s.Start.Line == 0 {
		return name
	}
	return fmt.Sprintf("%s:%d:%d", name, s.Start.Line, s.Start.Column)
}

// excerpt prints a source line, and under it the marks and their label.
func (w *Writer) excerpt(s Span, line, mark, label string) {
	number := fmt.Sprintf("%5d", s.Start.Line)
	text, pad, width := window(line, s)
	fmt.Fprintf(w.Out, "%s %s\n", w.paint(dim, number+" |"), text)
	marks := w.paint(bold, strings.Repeat(mark, max(1, width))+spaced(" ", label))
	fmt.Fprintf(w.Out, "%s %s%s\n", w.paint(dim, strings.Repeat(" ", len(number))+" |"), pad, marks)
}

// spaced puts a gap before a text, if there is one.
func spaced(gap, s string) string {
	if s == "" {
		return ""
	}
	return gap + s
}
