// Package report writes findings for programs: JSON of our own, SARIF 2.1.0,
// annotations for GitHub workflows, and JUnit XML.
//
// In: the findings of one or several folders, with the sources that they point
// into and what is known of the rules. Out: bytes. The same input gives the same
// bytes; there are no times and no names of machines in them. It knows nothing of
// sewing, reads no file, and does not decide an exit status.
//
// Places count characters (Unicode code points) and lines from 1, bytes from 0.
// The end of a place is the position after its last character.
package report

import (
	"path"
	"slices"

	"seamwarden/dsl/finding"
)

// Input is what one run of a tool found.
type Input struct {
	Tool    Tool
	Folders []Folder
	Rules   []RuleInfo
}

// Tool names the program that looked.
type Tool struct{ Name, Version string }

// Folder is one pattern's folder. Path is as the user named it, with slashes. In
// findings, files are named from the folder; Sources holds their text by those
// names. Failed says in a sentence that stands alone why the folder could not be
// read, "" if it could.
type Folder struct {
	Path     string
	Findings []finding.Finding
	Accepted []finding.Accepted // findings that stand no more, with the remark
	Sources  map[string]string
	Failed   string
}

// RuleInfo is what is known of a rule. URI is where it is explained, "" for
// nowhere; SARIF takes only an absolute one (3.49.12).
type RuleInfo struct {
	ID, Purpose, Why string
	Severity         finding.Severity
	Category         string
	URI              string
}

// file gives the path of a file of the folder, from where the tool was run.
func (f Folder) file(name string) string { return path.Join(f.Path, name) }

// tally counts findings by what they mean for a release.
type tally struct {
	Errors    int `json:"errors"`
	Warnings  int `json:"warnings"`
	Advice    int `json:"advice"`
	Unchecked int `json:"unchecked"`
	Accepted  int `json:"accepted"`
}

func (f Folder) tally() tally {
	t := tally{Accepted: len(f.Accepted)}
	for _, x := range f.Findings {
		switch x.Severity {
		case finding.Error:
			t.Errors++
		case finding.Warning:
			t.Warnings++
		case finding.Advice:
			t.Advice++
		case finding.Unchecked:
			t.Unchecked++
		}
	}
	return t
}

func (t tally) plus(o tally) tally {
	return tally{t.Errors + o.Errors, t.Warnings + o.Warnings, t.Advice + o.Advice, t.Unchecked + o.Unchecked, t.Accepted + o.Accepted}
}

// paragraphs words a finding for a reader who sees no source line: what is wrong,
// an example, why, and what to do. Each is one line.
func paragraphs(f finding.Finding) []string {
	all := []string{f.Heading()}
	for _, note := range []struct{ name, text string }{{"For example", f.Witness}, {"Why", f.Why}, {"Do", f.Help}} {
		if note.text != "" {
			all = append(all, note.name+": "+finding.OneLine(note.text))
		}
	}
	return all
}

// related gives the other places of a finding, each once, and only those that name
// a file.
func related(f finding.Finding) []finding.Place {
	var all []finding.Place
	for _, p := range f.Related {
		if p.File != "" && !slices.Contains(all, p) {
			all = append(all, p)
		}
	}
	return all
}

// endOf gives the end of a place that begins somewhere; a place without an end is
// empty.
func endOf(s finding.Span) finding.Pos {
	if s.End.Line == 0 {
		return s.Start
	}
	return s.End
}
