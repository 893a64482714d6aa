package report

import (
	"bytes"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"seamwarden/dsl/finding"
)

// Texts of every kind that is in the way of one of the forms.
var anyText = rapid.OneOf(rapid.Just(""), rapid.String(), rapid.StringOfN(rapid.RuneFrom([]rune("ab{}[]()%:,=;#/\\\"'<>&\r\n\t\x00\x1b\u2028\ufffe]")), 0, 12, -1),
	rapid.SampledFrom([]string{"]]>", "::error::", "##[group]", "\xff\xfe", "{0}", "[a](b)"}))

var anyFolder = rapid.Custom(func(t *rapid.T) Folder {
	src := rapid.StringMatching(`(cut [0-9]|ä脇|\{|\n| ){0,20}`).Draw(t, "source")
	name := rapid.StringMatching(`[a-zä :%#]{1,6}\.seam`).Draw(t, "file")
	f := Folder{Path: rapid.StringMatching(`[a-z/ :.]{0,6}`).Draw(t, "path"), Sources: map[string]string{name: src},
		Failed: rapid.OneOf(rapid.Just(""), anyText).Draw(t, "failed")}
	fs := rapid.SliceOfN(anyFinding(name, src), 0, 14).Draw(t, "findings")
	cut := rapid.IntRange(0, len(fs)).Draw(t, "accepted from")
	f.Findings = fs[:cut]
	for _, x := range fs[cut:] {
		f.Accepted = append(f.Accepted, finding.Accepted{Finding: x, By: finding.Acceptance{Reason: anyText.Draw(t, "reason"), At: x.Place.Span}})
	}
	return f
})

func anyFinding(name, src string) *rapid.Generator[finding.Finding] {
	return rapid.Custom(func(t *rapid.T) finding.Finding {
		f := finding.Finding{Rule: rapid.SampledFrom([]string{"edge-left-raw", "piece-never-used", "elsewhere"}).Draw(t, "rule"),
			Severity: finding.Severity(rapid.IntRange(0, 3).Draw(t, "severity")), Headline: "A" + anyText.Draw(t, "headline"),
			When: anyText.Draw(t, "when"), Witness: anyText.Draw(t, "witness"), Why: anyText.Draw(t, "why"), Help: anyText.Draw(t, "help"),
			Place: anyPlace(t, name, src)}
		for range rapid.IntRange(0, 2).Draw(t, "related") {
			f.Related = append(f.Related, anyPlace(t, name, src))
		}
		for range rapid.IntRange(0, 3).Draw(t, "edits") {
			f.Edits = append(f.Edits, finding.Edit{Span: anyPlace(t, name, src).Span, New: anyText.Draw(t, "new"), Title: rapid.SampledFrom([]string{"", "Mend it", "{x}"}).Draw(t, "title")})
		}
		return f
	})
}

// anyPlace is in the file, or the whole file, or none.
func anyPlace(t *rapid.T, name, src string) finding.Place {
	p := finding.Place{Label: anyText.Draw(t, "label")}
	switch rapid.IntRange(0, 4).Draw(t, "kind of place") {
	case 0:
	case 1:
		p.File = name
	default:
		p.File = name
		p.Start = posAt(src, rapid.IntRange(0, len(src)).Draw(t, "start"))
		p.End = posAt(src, rapid.IntRange(p.Start.Offset, len(src)).Draw(t, "end"))
	}
	return p
}

func posAt(src string, offset int) finding.Pos {
	for offset < len(src) && src[offset]&0xc0 == 0x80 {
		offset++
	}
	before := src[:offset]
	line := before[strings.LastIndexByte(before, '\n')+1:]
	return finding.Pos{Offset: offset, Line: 1 + strings.Count(before, "\n"), Column: 1 + len([]rune(line))}
}

// TestAnyFindings writes findings of every kind in every form: twice the same
// bytes, and each follows its own rules.
func TestAnyFindings(t *testing.T) {
	ours, standard := compiled(t, Schema()), sarifStandard(t)
	rapid.Check(t, func(t *rapid.T) {
		in := Input{Tool: Tool{Name: "seamwarden", Version: anyText.Draw(t, "version")}, Folders: rapid.SliceOfN(anyFolder, 0, 3).Draw(t, "folders"), Rules: sample().Rules}
		for form, write := range writers {
			if !bytes.Equal(written(t, write, in), written(t, write, in)) {
				t.Fatalf("%s is written in two ways", form)
			}
		}
		if err := ours.Validate(decoded(t, written(t, JSON, in))); err != nil {
			t.Fatal(err)
		}
		if err := standard.Validate(decoded(t, written(t, SARIF, in))); err != nil {
			t.Fatal(err)
		}
		if n := len(suites(t, in).Suites); n != len(in.Folders) {
			t.Fatalf("%d suites", n)
		}
		for line := range strings.Lines(string(written(t, GitHub, in))) {
			c, ok := asRunner(strings.TrimSuffix(line, "\n"))
			known := c.name == "error" || c.name == "warning" || c.name == "notice"
			if ok != known || !ok && (strings.Contains(line, "##[") || !strings.Contains(line, ": ")) {
				t.Fatalf("%q", line)
			}
		}
	})
}
