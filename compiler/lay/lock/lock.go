// Package lock remembers lays in a file of the pattern folder, lays.lock.
//
// In: the bytes of the file, and the lays that a pattern needs. Out: the lays that
// are remembered and hold, and findings about all others. A lay is used only if its
// key is that of the job and a check from outside finds nothing, so a lost or edited
// file gives a finding and never a wrong number. It does no search.
//
// The file is lines of text. Empty lines, and lines that begin with #, say nothing.
// The first other line is "lays 1", the version of the format. Then for each lay:
//
//	lay KEY                     the hash of what the lay depends on, [lay.Job.Key]
//	for "A, size 10, 140 cm"    whose lay it is; one line for each
//	way lengthwise-fold         or single-layer, crosswise-fold
//	length 1234.56              of the strip, in millimetres
//	place 1 120.00 0.00 180 mirrored folded
//
// A place names the piece by its number in [lay.Job.Order], counted from 1, the lower
// left corner of the box round it in millimetres (along the cloth, then across), the
// angle in degrees, and what else is true of it: mirrored, folded, opened.
package lock

import (
	"bytes"
	"cmp"
	"fmt"
	"slices"

	"seamwarden/compiler/lay"
	"seamwarden/dsl/finding"
)

// Entry is a remembered lay. Its pieces are numbered as in [lay.Job.Order].
type Entry struct {
	Key  string
	For  []string
	Lay  lay.Lay
	Span finding.Span // its first line
}

// File is what is remembered.
type File struct {
	Name    string
	Entries []*Entry
}

// Named is a job that a pattern needs, and what it is called.
type Named struct {
	Label string
	lay.Job
}

// Remember makes a file of lays, one for each job; what has none (no places) is left
// out. Jobs with the same key share the first lay.
func Remember(name string, jobs []Named, lays []lay.Lay) (*File, error) {
	f := &File{Name: name}
	known := map[string]*Entry{}
	for i, j := range jobs {
		if len(lays[i].Places) == 0 {
			continue
		}
		key := j.Key()
		if e := known[key]; e != nil {
			if !slices.Contains(e.For, j.Label) {
				e.For = append(e.For, j.Label)
			}
			continue
		}
		length, err := j.Check(lays[i])
		if err != nil {
			return nil, fmt.Errorf("%s: %w", j.Label, err)
		}
		number := make([]int, len(j.Pieces))
		for n, piece := range j.Order() {
			number[piece] = n
		}
		l, err := lays[i].Renumbered(number)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", j.Label, err)
		}
		l.Length = length
		known[key] = &Entry{Key: key, For: []string{j.Label}, Lay: l}
		f.Entries = append(f.Entries, known[key])
	}
	return f, nil
}

// Encode writes the file. The same lays give the same bytes, in the order of their
// labels.
func (f *File) Encode() []byte {
	entries := slices.Clone(f.Entries)
	for i, e := range entries {
		own := *e
		own.For = slices.Sorted(slices.Values(e.For))
		entries[i] = &own
	}
	slices.SortStableFunc(entries, func(a, b *Entry) int {
		return cmp.Or(slices.Compare(a.For, b.For), cmp.Compare(a.Key, b.Key))
	})
	var b bytes.Buffer
	b.WriteString("# How the pieces lie on the cloth. Found by seamwarden; keep this file with the pattern.\nlays 1\n")
	for _, e := range entries {
		e.encode(&b)
	}
	return b.Bytes()
}

func (e *Entry) encode(b *bytes.Buffer) {
	fmt.Fprintf(b, "\nlay %s\n", e.Key)
	for _, label := range e.For {
		fmt.Fprintf(b, "for %q\n", label)
	}
	fmt.Fprintf(b, "way %s\nlength %s\n", e.Lay.Way, millimetres(e.Lay.Length))
	for _, p := range e.Lay.Places {
		fmt.Fprintf(b, "place %d %s %s %d", p.Piece+1, millimetres(p.At.X), millimetres(p.At.Y), p.Turn)
		for _, w := range words {
			if *w.of(&p) {
				b.WriteString(" " + w.name)
			}
		}
		b.WriteByte('\n')
	}
}

// words are what may be true of a place, in the order in which they are written.
var words = []struct {
	name string
	of   func(*lay.Place) *bool
}{
	{"mirrored", func(p *lay.Place) *bool { return &p.Mirrored }},
	{"folded", func(p *lay.Place) *bool { return &p.Folded }},
	{"opened", func(p *lay.Place) *bool { return &p.Opened }},
}

// millimetres writes a length with its two decimals.
func millimetres(n int64) string {
	sign := ""
	if n < 0 {
		sign, n = "-", -n
	}
	return fmt.Sprintf("%s%d.%02d", sign, n/lay.Millimetre, n%lay.Millimetre)
}

// Merge takes over the lays of another file: that of another machine's part of a run.
// Of two with the same key the one that needs less cloth is kept, for both labels.
func (f *File) Merge(other *File) {
	for _, e := range other.Entries {
		own := *e
		k := slices.IndexFunc(f.Entries, func(mine *Entry) bool { return mine.Key == e.Key })
		if k < 0 {
			f.Entries = append(f.Entries, &own)
			continue
		}
		mine := *f.Entries[k]
		if e.Lay.Cloth() < mine.Lay.Cloth() {
			mine.Lay = e.Lay
		}
		mine.For = slices.Clone(mine.For)
		for _, label := range e.For {
			if !slices.Contains(mine.For, label) {
				mine.For = append(mine.For, label)
			}
		}
		f.Entries[k] = &mine
	}
}
