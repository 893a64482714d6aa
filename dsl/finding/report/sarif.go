package report

import (
	"io"
	"slices"
	"strings"

	"seamwarden/dsl/finding"
)

const (
	sarifSchema = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/os/schemas/sarif-schema-2.1.0.json"
	// sarifRoot is the folder that relative paths start from. Where that is on a
	// disk is left out, so that the same patterns give the same bytes everywhere.
	sarifRoot = "%SRCROOT%"
	// unreadable is the one notice about the run itself.
	unreadable = "folder-not-read"
)

// SARIF writes findings as a SARIF 2.1.0 log of one run.
//
// What was not checked is a result of kind "open", level "none": by section 3.27.9
// "open" is said where a rule was evaluated and there was too little to decide
// whether a problem exists. "informational" would say that there is none, and a
// notification (3.58) is about the tool and not about what it looks at. A folder
// that could not be read is such a notification, of level "error"; then
// executionSuccessful is false, and no reader takes the results for complete.
func SARIF(w io.Writer, in Input) error {
	rules := descriptors(in)
	run := sarifRun{
		Tool:        sarifTool{sarifDriver{Name: in.Tool.Name, Version: in.Tool.Version, Rules: rules}},
		Invocations: []sarifInvocation{invocation(in)},
		Bases:       map[string]sarifArtifact{sarifRoot: {Description: message("The folder in which the tool was run.")}},
		ColumnKind:  "unicodeCodePoints",
		Results:     []sarifResult{},
	}
	if run.Invocations[0].Notifications != nil {
		run.Tool.Driver.Notifications = []sarifDescriptor{{ID: unreadable, Short: *message("A folder could not be read.")}}
	}
	index := map[string]int{}
	for i, r := range rules {
		index[r.ID] = i
	}
	for _, f := range in.Folders {
		run.Results = append(run.Results, f.results(index)...)
	}
	return writeJSON(w, sarifLog{Schema: sarifSchema, Version: "2.1.0", Runs: []sarifRun{run}})
}

// descriptors describes the rules that are known, by name, and those that only
// findings name.
func descriptors(in Input) []sarifDescriptor {
	all := []sarifDescriptor{}
	known := map[string]bool{}
	for _, r := range in.Rules {
		if !known[r.ID] {
			known[r.ID] = true
			all = append(all, descriptor(r, in.Tool.Name))
		}
	}
	name := func(f finding.Finding) {
		if !known[f.Rule] {
			known[f.Rule] = true
			words := strings.ReplaceAll(f.Rule, "-", " ")
			all = append(all, sarifDescriptor{ID: f.Rule, Short: *message(words), Configuration: &sarifLevel{level(f.Severity)}})
		}
	}
	for _, folder := range in.Folders {
		for _, f := range folder.Findings {
			name(f)
		}
		for _, a := range folder.Accepted {
			name(a.Finding)
		}
	}
	slices.SortFunc(all, func(a, b sarifDescriptor) int { return strings.Compare(a.ID, b.ID) })
	return all
}

func descriptor(r RuleInfo, tool string) sarifDescriptor {
	d := sarifDescriptor{ID: r.ID, Short: *message(r.Purpose), HelpURI: absolute(r.URI), Configuration: &sarifLevel{level(r.Severity)},
		Help: message(strings.TrimSpace(r.Why + " Type " + tool + " explain " + r.ID + " for an example."))}
	if r.Why != "" {
		d.Full = message(r.Why)
	}
	if r.Category != "" {
		d.Properties = map[string]any{"tags": []string{r.Category}}
	}
	return d
}

func invocation(in Input) sarifInvocation {
	v := sarifInvocation{Successful: true}
	for _, f := range in.Folders {
		if f.Failed == "" {
			continue
		}
		v.Successful = false
		at := sarifLocation{Physical: sarifPhysical{Artifact: artifact(folderPath(f.Path))}}
		v.Notifications = append(v.Notifications, sarifNotification{Descriptor: sarifReference{ID: unreadable}, Level: "error",
			Message: *message(finding.OneLine(f.Failed)), Locations: []sarifLocation{at}})
	}
	return v
}

func (f Folder) results(index map[string]int) []sarifResult {
	var all []sarifResult
	marks := f.prints()
	for i, x := range f.Findings {
		all = append(all, f.result(x, index[x.Rule], marks.findings[i]))
	}
	for i, a := range f.Accepted {
		r := f.result(a.Finding, index[a.Rule], marks.accepted[i])
		s := sarifSuppression{Kind: "inSource", Justification: a.By.Reason}
		if a.By.At.File != "" {
			s.Location = f.location(finding.Place{Span: a.By.At})
		}
		r.Suppressions = []sarifSuppression{s}
		all = append(all, r)
	}
	return all
}

// result words one finding. Of the two fingerprints, the second has the name that
// one forge reads; it takes equal ones for one finding, so the folder is in it.
func (f Folder) result(x finding.Finding, rule int, mark string) sarifResult {
	r := sarifResult{RuleID: x.Rule, RuleIndex: rule, Level: level(x.Severity), Message: *message(strings.Join(paragraphs(x), "\n")),
		Prints: map[string]string{"seamwarden/v1": mark, "primaryLocationLineHash": hash(f.file("."), mark)}}
	if x.Severity == finding.Unchecked {
		r.Kind = "open"
	}
	if x.Place.File != "" {
		r.Locations = []sarifLocation{*f.location(x.Place)}
	}
	for i, p := range related(x) {
		at := f.location(p)
		at.ID = &i
		r.Related = append(r.Related, *at)
	}
	for _, fix := range x.Fixes() {
		if s, ok := f.fix(fix); ok {
			r.Fixes = append(r.Fixes, s)
		}
	}
	return r
}

// location gives a place; without a line it is the whole file.
func (f Folder) location(p finding.Place) *sarifLocation {
	at := &sarifLocation{Physical: sarifPhysical{Artifact: artifact(f.file(p.File))}}
	if p.Start.Line > 0 {
		at.Physical.Region = region(p.Span)
	}
	if p.Label != "" {
		at.Message = message(finding.OneLine(p.Label))
	}
	return at
}

func region(s finding.Span) *sarifRegion {
	end := endOf(s)
	return &sarifRegion{s.Start.Line, s.Start.Column, end.Line, end.Column}
}

// fix gathers edits by file; one with an edit that has no place is left out.
func (f Folder) fix(x finding.Fix) (out sarifFix, ok bool) {
	out.Properties = map[string]any{"certain": x.Certain}
	if x.Title != "" {
		out.Description = message(finding.OneLine(x.Title))
	}
	for _, e := range x.Edits {
		if e.Span.File == "" || e.Span.Start.Line == 0 {
			return out, false
		}
		where := artifact(f.file(e.Span.File))
		at := slices.IndexFunc(out.Changes, func(c sarifChange) bool { return c.Artifact == where })
		if at < 0 {
			at = len(out.Changes)
			out.Changes = append(out.Changes, sarifChange{Artifact: where})
		}
		r := sarifReplacement{Deleted: *region(e.Span)}
		if e.New != "" {
			r.Inserted = &sarifContent{e.New}
		}
		out.Changes[at].Replacements = append(out.Changes[at].Replacements, r)
	}
	return out, true
}

// level gives the standard's word for a severity (3.27.10).
func level(s finding.Severity) string {
	return [...]string{"error", "warning", "note", "none"}[s]
}

// message makes text into a message: braces are doubled, since {0} would stand for
// an argument (3.11.5), and no [text](target) is left, since that would be a link
// (3.11.6) that nobody here has made.
func message(text string) *sarifMessage {
	return &sarifMessage{strings.NewReplacer("{", "{{", "}", "}}", "](", "] (").Replace(text)}
}
