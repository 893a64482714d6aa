package report

import (
	"bytes"
	_ "embed"
	"encoding/json"
	"io"

	"seamwarden/dsl/finding"
)

// What a reader of our JSON looks at first. The version changes when a field goes
// or means something else; fields may be added without.
const (
	jsonFormat  = "seamwarden-findings"
	jsonVersion = 1
)

//go:embed findings.schema.json
var schema string

// Schema gives the JSON Schema (draft 2020-12) of what JSON writes.
func Schema() []byte { return []byte(schema) }

type (
	jsonReport struct {
		Format  string       `json:"format"`
		Version int          `json:"version"`
		Tool    jsonTool     `json:"tool"`
		Summary jsonSummary  `json:"summary"`
		Folders []jsonFolder `json:"folders"`
		Rules   []jsonRule   `json:"rules"`
	}
	jsonTool struct {
		Name    string `json:"name"`
		Version string `json:"version,omitempty"`
	}
	jsonSummary struct {
		Folders int `json:"folders"`
		Failed  int `json:"failed"`
		tally
	}
	jsonFolder struct {
		Path     string         `json:"path"`
		Failed   string         `json:"failed,omitempty"`
		Summary  tally          `json:"summary"`
		Findings []jsonFinding  `json:"findings"`
		Accepted []jsonAccepted `json:"accepted,omitempty"`
	}
	jsonFinding struct {
		Rule        string      `json:"rule"`
		Severity    string      `json:"severity"`
		Headline    string      `json:"headline"`
		Place       *jsonPlace  `json:"place,omitempty"`
		Related     []jsonPlace `json:"related,omitempty"`
		When        string      `json:"when,omitempty"`
		Witness     string      `json:"witness,omitempty"`
		Why         string      `json:"why,omitempty"`
		Help        string      `json:"help,omitempty"`
		Fixes       []jsonFix   `json:"fixes,omitempty"`
		Fingerprint string      `json:"fingerprint"`
	}
	jsonAccepted struct {
		Finding jsonFinding `json:"finding"`
		Reason  string      `json:"reason"`
		Place   *jsonPlace  `json:"place,omitempty"`
	}
	jsonPlace struct {
		File  string   `json:"file"`
		Start *jsonPos `json:"start,omitempty"`
		End   *jsonPos `json:"end,omitempty"`
		Label string   `json:"label,omitempty"`
	}
	jsonPos struct {
		Line   int `json:"line"`
		Column int `json:"column"`
		Offset int `json:"offset"`
	}
	jsonFix struct {
		Title   string     `json:"title,omitempty"`
		Certain bool       `json:"certain"`
		Edits   []jsonEdit `json:"edits"`
	}
	jsonEdit struct {
		Place jsonPlace `json:"place"`
		New   string    `json:"new"`
	}
	jsonRule struct {
		ID       string `json:"id"`
		Purpose  string `json:"purpose,omitempty"`
		Why      string `json:"why,omitempty"`
		Severity string `json:"severity"`
		Category string `json:"category,omitempty"`
		URI      string `json:"uri,omitempty"`
	}
)

// JSON writes findings in our own form, which Schema describes.
func JSON(w io.Writer, in Input) error {
	out := jsonReport{Format: jsonFormat, Version: jsonVersion, Tool: jsonTool(in.Tool), Folders: []jsonFolder{}, Rules: []jsonRule{}}
	out.Summary.Folders = len(in.Folders)
	for _, f := range in.Folders {
		if f.Failed != "" {
			out.Summary.Failed++
		}
		out.Summary.tally = out.Summary.plus(f.tally())
		out.Folders = append(out.Folders, f.json())
	}
	for _, r := range in.Rules {
		out.Rules = append(out.Rules, jsonRule{r.ID, r.Purpose, r.Why, severityName(r.Severity), r.Category, r.URI})
	}
	return writeJSON(w, out)
}

// writeJSON writes a value with its signs as they are: nothing here goes into a
// web page unescaped.
func writeJSON(w io.Writer, v any) error {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(v); err != nil {
		return err
	}
	_, err := w.Write(b.Bytes())
	return err
}

func (f Folder) json() jsonFolder {
	out := jsonFolder{Path: f.Path, Failed: f.Failed, Summary: f.tally(), Findings: []jsonFinding{}}
	marks := f.prints()
	for i, x := range f.Findings {
		out.Findings = append(out.Findings, jsonOf(x, marks.findings[i]))
	}
	for i, a := range f.Accepted {
		out.Accepted = append(out.Accepted, jsonAccepted{jsonOf(a.Finding, marks.accepted[i]), a.By.Reason, jsonPlaceOf(finding.Place{Span: a.By.At})})
	}
	return out
}

func jsonOf(f finding.Finding, mark string) jsonFinding {
	out := jsonFinding{Rule: f.Rule, Severity: severityName(f.Severity), Headline: f.Headline, Place: jsonPlaceOf(f.Place),
		When: f.When, Witness: f.Witness, Why: f.Why, Help: f.Help, Fingerprint: mark}
	for _, p := range related(f) {
		out.Related = append(out.Related, *jsonPlaceOf(p))
	}
	for _, x := range f.Fixes() {
		fix := jsonFix{Title: x.Title, Certain: x.Certain}
		for _, e := range x.Edits {
			if p := jsonPlaceOf(finding.Place{Span: e.Span}); p != nil && p.Start != nil {
				fix.Edits = append(fix.Edits, jsonEdit{*p, e.New})
			}
		}
		if fix.Edits != nil {
			out.Fixes = append(out.Fixes, fix)
		}
	}
	return out
}

func jsonPlaceOf(p finding.Place) *jsonPlace {
	if p.File == "" {
		return nil
	}
	out := &jsonPlace{File: p.File, Label: p.Label}
	if p.Start.Line > 0 {
		out.Start, out.End = jsonPosOf(p.Start), jsonPosOf(endOf(p.Span))
	}
	return out
}

func jsonPosOf(p finding.Pos) *jsonPos { return &jsonPos{p.Line, p.Column, p.Offset} }

func severityName(s finding.Severity) string {
	return [...]string{"error", "warning", "advice", "unchecked"}[s]
}
