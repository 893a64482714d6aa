package dsl

import "seamwarden/dsl/finding"

// sure gives a finding the one edit that mends it: other text in its place, where
// nothing else can have been meant.
func sure(f finding.Finding, at finding.Span, text string) finding.Finding {
	title := "Write " + shorten(text)
	if text == "" {
		title = "Delete it"
	}
	f.Edits = []finding.Edit{{Span: at, New: text, Certain: true, Title: title}}
	return f
}

// doubt takes the edits from the findings of a file of which nobody knows where
// its texts and blocks end: what a word is there can change with the first brace.
func (f *File) doubt() {
	for i := range f.Findings {
		f.Findings[i].Edits = nil
	}
}
