package dsl

import (
	"testing"

	"seamwarden/dsl/finding"
)

// checkPlaces asserts that every finding lies inside the source.
func checkPlaces(t failer, f *File) {
	t.Helper()
	for _, x := range f.Findings {
		for _, p := range append([]finding.Place{x.Place}, x.Related...) {
			if p.Start.Offset > p.End.Offset || p.End.Offset > len(f.Source) || x.Headline == "" || x.Rule == "" {
				t.Fatalf("%q: %s at %+v", f.Source, x.Headline, p)
			}
			if p.Start.Line > 0 && place(f.Source, p.Start.Offset) != p.Start {
				t.Fatalf("%q: %s at %+v, which is %+v", f.Source, x.Headline, p.Start, place(f.Source, p.Start.Offset))
			}
			if p.Start.Line > 0 && place(f.Source, p.End.Offset) != p.End {
				t.Fatalf("%q: %s ends at %+v, which is %+v", f.Source, x.Headline, p.End, place(f.Source, p.End.Offset))
			}
		}
	}
}

// place counts lines and characters up to an offset, the plain way.
func place(src string, offset int) finding.Pos {
	p := finding.Pos{Offset: offset, Line: 1, Column: 1}
	for i, r := range src {
		switch {
		case i >= offset:
			return p
		case r == '\n':
			p.Line, p.Column = p.Line+1, 1
		case i > 0 || r != '\ufeff':
			p.Column++
		}
	}
	return p
}

func FuzzParse(f *testing.F) {
	seeds(f)
	f.Fuzz(func(t *testing.T, src string) {
		file := Parse("a.seam", []byte(src))
		checkPlaces(t, file)
		for _, tok := range scan(src) {
			if tok.Kind == Prose && tok.Fault() == "" {
				text, starts := Dedent(tok.Text)
				checkStarts(t, tok.Text, text, starts)
			}
		}
		again := Parse("a.seam", []byte(src))
		if err := equalMeaning(file, again); err != nil || len(file.Findings) != len(again.Findings) {
			t.Fatalf("%q is read in two ways: %v", src, err)
		}
	})
}
