package report

import (
	"fmt"
	"strings"
	"testing"

	"seamwarden/dsl/finding"
)

// command is a workflow command as the runner takes it from a line.
type command struct {
	name       string
	properties map[string]string
	data       string
}

// asRunner reads a line of a log the way actions/runner does (TryParseV2 in
// ActionCommand.cs, read for this test): blanks before it go, the name and the
// properties end at the next two colons, properties are parted by commas, and
// %25 is taken back last.
func asRunner(line string) (c command, ok bool) {
	rest, ok := strings.CutPrefix(strings.TrimLeft(line, " \t"), "::")
	if !ok {
		return c, false
	}
	head, data, ok := strings.Cut(rest, "::")
	if !ok {
		return c, false
	}
	name, list, _ := strings.Cut(head, " ")
	c = command{name: name, properties: map[string]string{}, data: takenBack(data, "%0D", "\r", "%0A", "\n", "%25", "%")}
	for _, p := range strings.Split(strings.TrimSpace(list), ",") {
		if key, value, ok := strings.Cut(p, "="); ok {
			c.properties[key] = takenBack(value, "%0D", "\r", "%0A", "\n", "%3A", ":", "%2C", ",", "%25", "%")
		}
	}
	return c, true
}

func takenBack(s string, pairs ...string) string {
	for i := 0; i < len(pairs); i += 2 {
		s = strings.ReplaceAll(s, pairs[i], pairs[i+1])
	}
	return s
}

func TestRunnerReadsAnnotations(t *testing.T) {
	nasty := "50% off, 1:2 %0A\r\n::error::x"
	in := Input{Tool: Tool{Name: "seamwarden"}, Folders: []Folder{{Path: "a,b:c", Findings: []finding.Finding{{
		Rule: nasty, Severity: finding.Warning, Headline: "Half: 50%, %0D.", Help: "No::error.",
		Place: finding.Place{Span: finding.Span{File: "d=%e.seam", Start: finding.Pos{Offset: 3, Line: 2, Column: 4}, End: finding.Pos{Offset: 5, Line: 2, Column: 6}}}}}}}}
	lines := strings.Split(strings.TrimSuffix(string(written(t, GitHub, in)), "\n"), "\n")
	if len(lines) != 1 {
		t.Fatalf("%q", lines)
	}
	c, ok := asRunner(lines[0])
	want := map[string]string{"file": "a,b:c/d=%e.seam", "line": "2", "col": "4", "endLine": "2", "endColumn": "6", "title": nasty}
	if !ok || c.name != "warning" || c.data != "Half: 50%, %0D.\nDo: No::error." || fmt.Sprint(c.properties) != fmt.Sprint(want) {
		t.Errorf("%+v", c)
	}
}

func TestPlacesOfAnnotations(t *testing.T) {
	span := func(a, b finding.Pos) finding.Span { return finding.Span{File: "a.seam", Start: a, End: b} }
	cases := []struct {
		name string
		at   finding.Span
		want map[string]string
	}{
		{"no file", finding.Span{}, map[string]string{"title": "r"}},
		{"a whole file", span(finding.Pos{}, finding.Pos{}), map[string]string{"title": "r", "file": "p/a.seam"}},
		{"no end", span(finding.Pos{Line: 3, Column: 2}, finding.Pos{}), map[string]string{"title": "r", "file": "p/a.seam", "line": "3", "endLine": "3", "col": "2", "endColumn": "2"}},
		{"several lines", span(finding.Pos{Line: 3, Column: 2}, finding.Pos{Line: 4, Column: 1}), map[string]string{"title": "r", "file": "p/a.seam", "line": "3", "endLine": "4"}},
	}
	for _, c := range cases {
		in := Input{Folders: []Folder{{Path: "p", Findings: []finding.Finding{{Rule: "r", Headline: "h", Place: finding.Place{Span: c.at}}}}}}
		got, ok := asRunner(string(written(t, GitHub, in)))
		if !ok || fmt.Sprint(got.properties) != fmt.Sprint(c.want) {
			t.Errorf("%s: %v, want %v", c.name, got.properties, c.want)
		}
	}
}

func TestWhatAStepDoesNotShowIsSaid(t *testing.T) {
	many := func(s finding.Severity, n int) (all []finding.Finding) {
		for i := range n {
			all = append(all, finding.Finding{Rule: "r", Severity: s, Headline: fmt.Sprintf("Number %d.", i)})
		}
		return all
	}
	for _, c := range []struct {
		errors, warnings, advice, unchecked int
		commands, plain                     int
		last                                string
	}{
		{10, 10, 9, 0, 29, 0, ""},
		{11, 10, 0, 0, 21, 1, "In the log only, since a step shows no more than 10 of a kind beside the lines: 1 error."},
		{12, 11, 10, 1, 30, 4, "In the log only, since a step shows no more than 10 of a kind beside the lines: 2 errors, 1 warning, 1 piece of advice. 1 thing was not checked."},
		{0, 0, 12, 3, 10, 3, "In the log only, since a step shows no more than 10 of a kind beside the lines: 3 pieces of advice. 3 things were not checked."},
		{0, 0, 0, 0, 0, 0, ""},
	} {
		var fs []finding.Finding
		for s, n := range []int{c.errors, c.warnings, c.advice, c.unchecked} {
			fs = append(fs, many(finding.Severity(s), n)...)
		}
		half := len(fs) / 2 // the bounds are of the step and not of the folder
		out := string(written(t, GitHub, Input{Tool: Tool{Name: "seamwarden"}, Folders: []Folder{{Path: "a", Findings: fs[:half]}, {Path: "b", Findings: fs[half:]}}}))
		commands, plain, notices, last := 0, 0, 0, ""
		for line := range strings.Lines(out) {
			last = ""
			if got, ok := asRunner(strings.TrimSuffix(line, "\n")); !ok {
				plain++
			} else {
				commands++
				if got.name == "notice" {
					notices++
				}
				if got.properties["title"] == "seamwarden" {
					last = got.data
				}
			}
		}
		if commands != c.commands || plain != c.plain || last != c.last || notices > shownAStep {
			t.Errorf("%+v: %d commands, %d plain lines, at the end %q", c, commands, plain, last)
		}
	}
}

// A pattern that somebody sends in must not give commands to the runner.
func TestPlainLinesAreNoCommands(t *testing.T) {
	bad := "::add-mask::x ##[add-mask]x"
	var fs []finding.Finding
	for range shownAStep + 2 {
		fs = append(fs, finding.Finding{Rule: bad, Headline: bad, Place: finding.Place{Span: finding.Span{File: bad, Start: finding.Pos{Line: 1, Column: 1}}}})
	}
	lines := strings.Split(string(written(t, GitHub, Input{Folders: []Folder{{Path: bad + "\n" + bad, Findings: fs}}})), "\n")
	plain := 0
	for _, line := range lines {
		c, ok := asRunner(line)
		if ok && (c.name != "error" && c.name != "notice") || !ok && strings.Contains(line, "##[") {
			t.Errorf("%q", line)
		}
		if !ok && line != "" {
			plain++
			if !strings.HasPrefix(line, "error: ") {
				t.Errorf("%q", line)
			}
		}
	}
	if plain != 2 {
		t.Errorf("%d plain lines:\n%s", plain, strings.Join(lines, "\n"))
	}
}
