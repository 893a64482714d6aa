package lock

import (
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"

	"seamwarden/compiler/lay"
	"seamwarden/dsl/finding"
)

// Decode reads the file. A lay of which a line cannot be read is left out, with a
// finding at that line; the others are kept. The file is never nil.
func Decode(name string, src []byte) (*File, []finding.Finding) {
	d := &decoder{file: &File{Name: name}}
	rest := string(src)
	for offset, line := 0, 1; rest != ""; line++ {
		text, after, _ := strings.Cut(rest, "\n")
		d.at = spanOf(name, text, offset, line)
		d.line(strings.TrimSuffix(text, "\r"))
		offset += len(rest) - len(after)
		rest = after
		if d.newer {
			break
		}
	}
	d.end()
	if !d.first && !d.newer && len(src) > 0 {
		d.complain("the file does not begin with its version, `lays 1`")
	}
	return d.file, d.found
}

func spanOf(name, text string, offset, line int) finding.Span {
	return finding.Span{File: name,
		Start: finding.Pos{Offset: offset, Line: line, Column: 1},
		End:   finding.Pos{Offset: offset + len(text), Line: line, Column: 1 + utf8.RuneCountInString(text)}}
}

// decoder reads line by line. entry is the lay under way, bad if it has to be left out.
type decoder struct {
	file   *File
	found  []finding.Finding
	at     finding.Span
	first  bool // the version was read
	newer  bool // and is not ours
	entry  *Entry
	bad    bool
	ways   int
	length int
}

func (d *decoder) line(text string) {
	word, rest, _ := strings.Cut(strings.TrimSpace(text), " ")
	rest = strings.TrimSpace(rest)
	switch {
	case word == "" || word[0] == '#':
	case !d.first:
		if d.first = word == "lays" && rest == "1"; !d.first {
			d.newer = true
			d.complain("the first line should be `lays 1`; this file is another one, or was written by a later version")
		}
	case word == "lay":
		d.end()
		d.entry, d.bad, d.ways, d.length = &Entry{Key: rest, Span: d.at}, false, 0, 0
	case d.entry == nil:
		d.complain("this line belongs to no lay")
	case !d.bad:
		if why := d.part(word, rest); why != "" {
			d.bad = true
			d.complain(why)
		}
	}
}

// end closes the lay under way.
func (d *decoder) end() {
	e := d.entry
	d.entry = nil
	if e == nil || d.bad {
		return
	}
	if d.ways != 1 || d.length != 1 || len(e.For) == 0 || len(e.Lay.Places) == 0 {
		d.at = e.Span
		d.complain("a lay needs a line `way`, a line `length`, and at least one `for` and one `place`")
		return
	}
	d.file.Entries = append(d.file.Entries, e)
}

// part reads a line of a lay; it gives what is wrong with it.
func (d *decoder) part(word, rest string) string {
	var ok bool
	switch word {
	case "for":
		label, err := strconv.Unquote(rest)
		d.entry.For, ok = append(d.entry.For, label), err == nil && utf8.ValidString(label)
	case "way":
		d.entry.Lay.Way, ok = lay.ParseWay(rest)
		ok, d.ways = ok && d.entry.Lay.Way != lay.Best, d.ways+1
	case "length":
		d.entry.Lay.Length, ok = readMillimetres(rest)
		d.length++
	case "place":
		var p lay.Place
		p, ok = readPlace(strings.Fields(rest))
		d.entry.Lay.Places = append(d.entry.Lay.Places, p)
	default:
		return fmt.Sprintf("no line of a lay begins with %q", finding.OneLine(word))
	}
	if !ok {
		return fmt.Sprintf("what stands after `%s` cannot be read", word)
	}
	return ""
}

func readPlace(f []string) (p lay.Place, ok bool) {
	if len(f) < 4 {
		return p, false
	}
	n, err := strconv.Atoi(f[0])
	turn, err2 := strconv.Atoi(f[3])
	x, okX := readMillimetres(f[1])
	y, okY := readMillimetres(f[2])
	if err != nil || err2 != nil || !okX || !okY || n < 1 || turn < 0 || turn >= 360 {
		return p, false
	}
	p = lay.Place{Piece: n - 1, Turn: turn, At: lay.Point{X: x, Y: y}}
	for _, word := range f[4:] {
		known := false
		for _, w := range words {
			if b := w.of(&p); w.name == word && !*b {
				*b, known = true, true
			}
		}
		if !known {
			return p, false
		}
	}
	return p, true
}

// readMillimetres reads what millimetres writes, and nothing else.
func readMillimetres(s string) (int64, bool) {
	whole, part, ok := strings.Cut(s, ".")
	if !ok || len(part) != 2 || len(whole) > 10 {
		return 0, false
	}
	n, err := strconv.ParseInt(whole+part, 10, 64)
	return n, err == nil && millimetres(n) == s
}

func (d *decoder) complain(why string) {
	f := trouble(RuleLaysUnreadable, finding.Warning, d.at, "not understood", "The remembered lays cannot be read here: "+why+".",
		"A lay that cannot be read is not used, and the cloth it needs is not known.")
	f.Help = "Run `seamwarden lay` to have them found anew, or take the file back from your last good copy."
	d.found = append(d.found, f)
}
