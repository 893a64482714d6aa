package report

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"strings"
	"unicode"

	"seamwarden/dsl/finding"
)

// The form of JUnit XML that CI servers share. It has no standard; names are those
// of the schema of Jenkins' xUnit plugin (junit-10.xsd).
type (
	junitSuites struct {
		XMLName  xml.Name     `xml:"testsuites"`
		Name     string       `xml:"name,attr"`
		Tests    int          `xml:"tests,attr"`
		Failures int          `xml:"failures,attr"`
		Errors   int          `xml:"errors,attr"`
		Suites   []junitSuite `xml:"testsuite"`
	}
	junitSuite struct {
		Name     string      `xml:"name,attr"`
		Tests    int         `xml:"tests,attr"`
		Failures int         `xml:"failures,attr"`
		Errors   int         `xml:"errors,attr"`
		Skipped  int         `xml:"skipped,attr"`
		Cases    []junitCase `xml:"testcase"`
	}
	junitCase struct {
		Name    string       `xml:"name,attr"`
		Class   string       `xml:"classname,attr"`
		Failure *junitResult `xml:"failure"`
		Error   *junitResult `xml:"error"`
		Skipped *junitResult `xml:"skipped"`
		Output  *junitOutput `xml:"system-out"`
	}
	junitResult struct {
		Message string `xml:"message,attr"`
		Type    string `xml:"type,attr,omitempty"`
		Text    string `xml:",cdata"` // so that a person can read its lines
	}
	junitOutput struct {
		Text string `xml:",cdata"`
	}
)

// JUnit writes a test suite for each folder with a test case for each rule that
// found something there: failed by an error or a warning, skipped if the rule
// could decide nothing, passed with advice in its output. A folder in which
// nothing was found has one case, which passes; one that could not be read has one
// in error. What is accepted is left out.
func JUnit(w io.Writer, in Input) error {
	out := junitSuites{Name: xmlText(in.Tool.Name)}
	for _, f := range in.Folders {
		s := f.suite()
		out.Tests += s.Tests
		out.Failures += s.Failures
		out.Errors += s.Errors
		out.Suites = append(out.Suites, s)
	}
	var b bytes.Buffer
	b.WriteString(xml.Header)
	e := xml.NewEncoder(&b)
	e.Indent("", "  ")
	if err := e.Encode(out); err != nil {
		return err
	}
	b.WriteByte('\n')
	_, err := w.Write(b.Bytes())
	return err
}

func (f Folder) suite() junitSuite {
	s := junitSuite{Name: xmlText(f.Path)}
	var rules []string
	byRule := map[string][]finding.Finding{}
	for _, x := range f.Findings {
		if byRule[x.Rule] == nil {
			rules = append(rules, x.Rule)
		}
		byRule[x.Rule] = append(byRule[x.Rule], x)
	}
	switch {
	case f.Failed != "":
		s.add(junitCase{Name: "the folder can be read", Error: &junitResult{Message: xmlText(f.Failed), Type: unreadable}})
	case len(rules) == 0:
		s.add(junitCase{Name: "nothing found"})
	}
	for _, r := range rules {
		s.add(f.testCase(r, byRule[r]))
	}
	return s
}

func (s *junitSuite) add(c junitCase) {
	c.Class = s.Name
	s.Tests++
	switch {
	case c.Failure != nil:
		s.Failures++
	case c.Error != nil:
		s.Errors++
	case c.Skipped != nil:
		s.Skipped++
	}
	s.Cases = append(s.Cases, c)
}

// testCase tells what one rule found. Its text is what a person would be shown.
func (f Folder) testCase(rule string, fs []finding.Finding) junitCase {
	c := junitCase{Name: xmlText(rule)}
	t := Folder{Findings: fs}.tally()
	found := &junitResult{Message: xmlText(fs[0].Heading()), Text: f.text(fs)}
	if len(fs) > 1 {
		found.Message = fmt.Sprintf("%s (and %d more)", found.Message, len(fs)-1)
	}
	switch {
	case t.Errors > 0:
		found.Type = "error"
		c.Failure = found
	case t.Warnings > 0:
		found.Type = "warning"
		c.Failure = found
	case t.Advice > 0:
		c.Output = &junitOutput{found.Text}
	default:
		c.Skipped = found
	}
	return c
}

func (f Folder) text(fs []finding.Finding) string {
	var b strings.Builder
	w := finding.Writer{Out: &b, Sources: f.Sources}
	if f.Path != "." {
		w.Folder = f.Path
	}
	for _, x := range fs {
		w.Write(x)
	}
	return xmlText(b.String())
}

// xmlText leaves out the characters that XML 1.0 cannot hold (section 2.2, Char),
// and the other control characters, which it advises against.
func xmlText(s string) string {
	return strings.Map(func(r rune) rune {
		if r == '\n' || r == '\t' {
			return r
		}
		if unicode.IsControl(r) || r&0xfffe == 0xfffe || r >= 0xfdd0 && r <= 0xfdef {
			return -1
		}
		return r
	}, s)
}
