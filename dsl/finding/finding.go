// Package finding is what the compiler says to a person or a program about a
// pattern: one value for each mistake, with its place, its reason and a way out.
//
// In: places in source text and the words of a phase. Out: [Finding] values and
// their text. It lives beside the language because every phase needs it and
// nothing may import to its right.
package finding

import "sort"

// Severity orders findings by what happens if nobody acts.
type Severity uint8

const (
	// Error: the sewist cannot finish, or gets the wrong thing.
	Error Severity = iota
	// Warning: very likely a slip.
	Warning
	// Advice: works, but testers stumble here.
	Advice
	// Unchecked: something the compiler could not decide; never counts as found.
	Unchecked
)

// String gives the word printed before the headline.
func (s Severity) String() string {
	return [...]string{"error", "warning", "advice", "not checked"}[s]
}

// Pos is a place in a file: Offset in bytes from 0, Line from 1, Column in
// characters from 1. The zero Pos means "the whole file".
type Pos struct{ Offset, Line, Column int }

// Span is a stretch of one file; End stands after the last character.
type Span struct {
	File       string
	Start, End Pos
}

// Place is a span with a few words printed under it.
type Place struct {
	Span
	Label string
}

// Finding is one mistake. Headline stands alone; the other texts may be empty.
type Finding struct {
	Rule     string // readable name of the rule, e.g. "piece-never-used"
	Severity Severity
	Headline string
	Place    Place
	Related  []Place
	When     string // smallest description of where it holds; "" is everywhere
	Witness  string // one concrete garment in which it holds
	Why      string
	Help     string
	Edits    []Edit // changes that mend it; see Fixes
}

// Sort puts findings in the order of their places, then of their rules, so that
// every run prints the same.
func Sort(fs []Finding) {
	sort.SliceStable(fs, func(i, j int) bool {
		a, b := fs[i].Place.Span, fs[j].Place.Span
		switch {
		case a.File != b.File:
			return a.File < b.File
		case a.Start.Offset != b.Start.Offset:
			return a.Start.Offset < b.Start.Offset
		case fs[i].Severity != fs[j].Severity:
			return fs[i].Severity < fs[j].Severity
		default:
			return fs[i].Rule < fs[j].Rule
		}
	})
}

// Counts says how many findings stop a release (errors and warnings), how many
// are advice, and how many things were not checked.
func Counts(fs []Finding) (found, advice, unchecked int) {
	for _, f := range fs {
		switch f.Severity {
		case Error, Warning:
			found++
		case Advice:
			advice++
		case Unchecked:
			unchecked++
		}
	}
	return
}
