package finding

import (
	"fmt"
	"io"
	"strings"
	"unicode"
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
	head := clean(f.Headline)
	if f.When != "" {
		head = strings.TrimSuffix(head, ".") + ": " + clean(f.When) + "."
	}
	fmt.Fprintf(w.Out, "%s %s %s\n", w.paint(colour+bold, f.Severity.String()+":"), w.paint(bold, head), w.paint(dim, "["+f.Rule+"]"))
	w.place(f.Place, "^")
	for _, r := range f.Related {
		w.place(r, "-")
	}
	for _, note := range []struct{ name, text string }{{"for example", f.Witness}, {"why", f.Why}, {"do", f.Help}} {
		if note.text != "" {
			fmt.Fprintf(w.Out, "  %s %s\n", w.paint(dim, note.name+":"), clean(note.text))
		}
	}
	fmt.Fprintln(w.Out)
}

// clean keeps control characters from a source out of the terminal.
func clean(s string) string {
	return strings.Map(func(r rune) rune {
		if r == '\n' || r == '\t' {
			return ' '
		}
		if unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r) {
			return '�'
		}
		return r
	}, s)
}

// place prints where something is: the file, line and column, then the line with
// marks under it.
func (w *Writer) place(p Place, mark string) {
	if p.File == "" {
		return
	}
	name := p.File
	if w.Folder != "" {
		name = w.Folder + "/" + name
	}
	if p.Start.Line == 0 {
		fmt.Fprintf(w.Out, "  %s\n", w.paint(blue, name))
		return
	}
	label := ""
	if mark == "-" && p.Label != "" {
		label = "  " + clean(p.Label)
	}
	fmt.Fprintf(w.Out, "  %s%s\n", w.paint(blue, fmt.Sprintf("%s:%d:%d", name, p.Start.Line, p.Start.Column)), label)
	line, ok := sourceLine(w.Sources[p.File], p.Start)
	if !ok {
		return
	}
	number := fmt.Sprintf("%5d", p.Start.Line)
	text, pad, width := window(line, p)
	fmt.Fprintf(w.Out, "%s %s\n", w.paint(dim, number+" |"), text)
	under := strings.Repeat(mark, max(1, width))
	if mark == "^" && p.Label != "" {
		under += " " + clean(p.Label)
	}
	fmt.Fprintf(w.Out, "%s %s%s\n", w.paint(dim, strings.Repeat(" ", len(number))+" |"), pad, w.paint(bold, under))
}

// sourceLine finds the line that holds a position.
func sourceLine(src string, p Pos) (string, bool) {
	if src == "" {
		return "", false
	}
	lines := strings.SplitN(src, "\n", p.Line+1)
	if p.Line > len(lines) {
		return "", false
	}
	return strings.TrimRight(strings.TrimPrefix(lines[p.Line-1], "\ufeff"), "\r"), true
}

// widest is how much of a line is shown.
const widest = 120

// window cuts a long line to what stands around the place, with tabs as single
// spaces so that the marks stand under what they mean.
func window(line string, p Place) (text, pad string, width int) {
	r := []rune(clean(line))
	from := min(p.Start.Column-1, len(r))
	to := len(r)
	if p.End.Line == p.Start.Line {
		to = min(max(p.End.Column-1, from), len(r))
	} else if p.End.Line == 0 {
		to = from
	}
	lo, hi, before, after := 0, len(r), "", ""
	if len(r) > widest {
		lo = max(0, from-widest/3)
		hi = min(len(r), lo+widest)
		if lo > 0 {
			before = "…"
		}
		if hi < len(r) {
			after = "…"
		}
	}
	text = before + string(r[lo:hi]) + after
	pad = strings.Repeat(" ", from-lo+len([]rune(before)))
	return text, pad, min(to, hi) - from
}
