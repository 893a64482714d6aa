package finding

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"
)

// Edit replaces the text of a span by New; the span may be empty, and then New is
// put in. Title says what the change does, as a person would: "Add `mirrored`".
// Certain marks a change that can be made unseen, since nothing else can have been
// meant. Edits of a finding with the same title are made together; another title
// is another way to mend it.
type Edit struct {
	Span    Span
	New     string
	Certain bool
	Title   string
}

// Fix is one way to mend a finding: edits that are made together, in one file or
// in several.
type Fix struct {
	Title   string
	Certain bool // every one of its edits is
	Edits   []Edit
}

// Fixes gathers the edits of a finding by their titles, in the order in which the
// titles come first. An edit that is there twice is taken once.
func (f Finding) Fixes() []Fix {
	var all []Fix
	for _, e := range f.Edits {
		at := slices.IndexFunc(all, func(x Fix) bool { return x.Title == e.Title })
		if at < 0 {
			at = len(all)
			all = append(all, Fix{Title: e.Title, Certain: true})
		}
		x := &all[at]
		if !slices.Contains(x.Edits, e) {
			x.Edits = append(x.Edits, e)
			x.Certain = x.Certain && e.Certain
		}
	}
	return all
}

// Why a set of edits cannot be made.
var (
	errSeveralFiles = errors.New("the changes are in several files")
	errOverlap      = errors.New("two changes touch the same text")
	errOutside      = errors.New("a change lies outside of the file, or its end before its beginning")
	errInCharacter  = errors.New("a change begins or ends inside a character")
)

// Apply makes edits of one file. They are placed by their offsets in bytes in the
// text as it is before any of them. What is put in at one place is put in by the
// order of edits, and before what is replaced from there. If two edits touch the
// same text, or one does not fit the file, nothing is changed and the error says
// why.
func Apply(src string, edits []Edit) (string, error) {
	for _, e := range edits {
		if err := fits(src, e, edits[0].Span.File); err != nil {
			return src, fmt.Errorf("%s: %w", e.Span.File, err)
		}
	}
	var out strings.Builder
	at := 0
	for _, e := range inOrder(edits) {
		if e.Span.Start.Offset < at {
			return src, fmt.Errorf("%s: %w", e.Span.File, errOverlap)
		}
		out.WriteString(src[at:e.Span.Start.Offset])
		out.WriteString(e.New)
		at = e.Span.End.Offset
	}
	out.WriteString(src[at:])
	return out.String(), nil
}

// inOrder sorts edits by where they begin, then by where they end.
func inOrder(edits []Edit) []Edit {
	sorted := slices.Clone(edits)
	slices.SortStableFunc(sorted, func(a, b Edit) int {
		if a.Span.Start.Offset != b.Span.Start.Offset {
			return a.Span.Start.Offset - b.Span.Start.Offset
		}
		return a.Span.End.Offset - b.Span.End.Offset
	})
	return sorted
}

// fits says what keeps an edit from being made in a text.
func fits(src string, e Edit, file string) error {
	from, to := e.Span.Start.Offset, e.Span.End.Offset
	switch {
	case e.Span.File != file:
		return errSeveralFiles
	case from < 0 || from > to || to > len(src):
		return errOutside
	case splits(src, from) || splits(src, to):
		return errInCharacter
	}
	return nil
}

// splits reports whether an offset lies inside a character.
func splits(src string, at int) bool { return at < len(src) && !utf8.RuneStart(src[at]) }
