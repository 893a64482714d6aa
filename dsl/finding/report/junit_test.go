package report

import (
	"encoding/xml"
	"errors"
	"io"
	"strings"
	"testing"

	"seamwarden/dsl/finding"
)

// suites reads the XML back with the strict reader of the standard library.
func suites(t interface{ Fatal(...any) }, in Input) junitSuites {
	src := written(t, JUnit, in)
	d := xml.NewDecoder(strings.NewReader(string(src)))
	for {
		if _, err := d.Token(); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			t.Fatal(err)
		}
	}
	var out junitSuites
	if err := xml.Unmarshal(src, &out); err != nil {
		t.Fatal(err)
	}
	return out
}

func TestJUnitCountsWhatItHolds(t *testing.T) {
	in := sample()
	out := suites(t, in)
	if len(out.Suites) != len(in.Folders) {
		t.Fatalf("%d suites for %d folders", len(out.Suites), len(in.Folders))
	}
	total := junitSuite{}
	for _, s := range out.Suites {
		var is junitSuite
		for _, c := range s.Cases {
			is.Tests++
			results := 0
			for _, r := range []struct {
				there *junitResult
				count *int
			}{{c.Failure, &is.Failures}, {c.Error, &is.Errors}, {c.Skipped, &is.Skipped}} {
				if r.there != nil {
					*r.count++
					results++
				}
			}
			if results > 1 || c.Class != s.Name {
				t.Errorf("%+v", c)
			}
		}
		if is.Tests != s.Tests || is.Failures != s.Failures || is.Errors != s.Errors || is.Skipped != s.Skipped || s.Tests == 0 {
			t.Errorf("%s counts %d, %d, %d, %d and has %+v", s.Name, s.Tests, s.Failures, s.Errors, s.Skipped, is)
		}
		total.Tests, total.Failures, total.Errors = total.Tests+s.Tests, total.Failures+s.Failures, total.Errors+s.Errors
	}
	if total.Tests != out.Tests || total.Failures != out.Failures || total.Errors != out.Errors {
		t.Errorf("in all %d, %d, %d; want %+v", out.Tests, out.Failures, out.Errors, total)
	}
}

func TestOneCaseForEachRule(t *testing.T) {
	one := func(rule string, s finding.Severity) finding.Finding {
		return finding.Finding{Rule: rule, Severity: s, Headline: rule + " is wrong."}
	}
	out := suites(t, Input{Folders: []Folder{{Path: "p", Findings: []finding.Finding{
		one("a", finding.Unchecked), one("b", finding.Advice), one("a", finding.Warning), one("a", finding.Error), one("c", finding.Unchecked), one("b", finding.Unchecked)}}}})
	cases := out.Suites[0].Cases
	if len(cases) != 3 {
		t.Fatalf("%+v", cases)
	}
	a, b, c := cases[0], cases[1], cases[2]
	if a.Failure == nil || a.Failure.Type != "error" || strings.Count(a.Failure.Text, "a is wrong.") != 3 {
		t.Errorf("%+v", a)
	}
	if b.Failure != nil || b.Skipped != nil || b.Output == nil || !strings.Contains(b.Output.Text, "b is wrong.") {
		t.Errorf("advice does not fail: %+v", b)
	}
	if c.Skipped == nil || c.Skipped.Message != "c is wrong." {
		t.Errorf("%+v", c)
	}
}

// XML 1.0, 2.2: Char ::= #x9 | #xA | #xD | [#x20-#xD7FF] | [#xE000-#xFFFD] |
// [#x10000-#x10FFFF]; a note under it advises against #x7F-#x9F, #xFDD0-#xFDEF and
// the last two of each plane.
func TestTextsThatXMLCannotHold(t *testing.T) {
	bad := "a\x00\x08\x0b\x0c\x1b\x1f\x7f\u0085\ufdd0\ufffe\uffff\U0001fffe\xff]]>&<b>\"'\r\n\tz"
	want := "a\ufffd]]>&<b>\"'\n\tz"
	if got := xmlText(bad); got != want {
		t.Errorf("%q", got)
	}
	if safe := "ä脇\U0001faa1\u200d\ue000\ufffd"; xmlText(safe) != safe {
		t.Errorf("%q became %q", safe, xmlText(safe))
	}
	in := Input{Tool: Tool{Name: bad}, Folders: []Folder{{Path: bad, Failed: bad, Findings: []finding.Finding{
		{Rule: bad, Headline: bad, Why: bad, Help: bad, Place: finding.Place{Label: bad, Span: finding.Span{File: bad, Start: finding.Pos{Line: 1, Column: 1}}}}}, Sources: map[string]string{bad: bad}}}}
	out := suites(t, in)
	if got := out.Suites[0]; got.Name != want || got.Cases[0].Error.Message != want || got.Cases[1].Name != want || !strings.Contains(got.Cases[1].Failure.Text, "]]>&<b>\"'") {
		t.Errorf("%+v", got)
	}
}
