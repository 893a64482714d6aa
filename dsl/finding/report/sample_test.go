package report

import (
	"bytes"
	"flag"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"seamwarden/dsl/finding"
)

var update = flag.Bool("update", false, "write the expected outputs anew")

const bib = "// A bib, invented.\n" +
	"pattern \"Bib\" { allow 1cm }\n" +
	"piece front 1 \"Front – the outer one\" {\n" +
	"  edges neck, side\n" +
	"  cut 2 main\n" +
	"}\n" +
	"piece loop 2 \"Loop\" { cut 2 main }  // accept piece-never-used: a spare\n"

// at gives the place of a text in the bib, the plain way.
func at(file, text string) finding.Span {
	i := strings.Index(bib, text)
	if i < 0 {
		panic(text)
	}
	pos := func(offset int) finding.Pos {
		before := bib[:offset]
		line := before[strings.LastIndexByte(before, '\n')+1:]
		return finding.Pos{Offset: offset, Line: 1 + strings.Count(before, "\n"), Column: 1 + utf8.RuneCountInString(line)}
	}
	return finding.Span{File: file, Start: pos(i), End: pos(i + len(text))}
}

// sample has each kind of finding, place and text once at least.
func sample() Input {
	const file = "parts/front & back.seam"
	end := at(file, "cut 2 main")
	end.Start = end.End
	pair := finding.Finding{
		Rule: "pair-or-alike", Severity: finding.Error, Headline: "2 of the front are cut, and nothing says how {they} lie.",
		Place:   finding.Place{Span: at(file, "cut 2 main"), Label: "a pair, or all alike?"},
		Related: []finding.Place{{Span: at(file, "front 1"), Label: "declared here"}, {Span: at(file, "front 1"), Label: "declared here"}, {Span: at(file, "neck, side")}, {Label: "in no file"}},
		When:    "in view B", Witness: "view B, size 12", Why: "100% of the left fronts\nwould be missing.", Help: "Add `mirrored` [see](x).",
		Edits: []finding.Edit{
			{Span: end, New: " mirrored", Title: "Cut a pair"},
			{Span: end, New: " alike", Title: "Cut two alike"},
		},
	}
	several := finding.Finding{Rule: "edge-left-raw", Severity: finding.Warning, Headline: "The side, and the neck: both are raw.",
		Place: finding.Place{Span: at(file, "{\n  edges neck, side\n  cut 2 main\n}"), Label: "in here"},
		Edits: []finding.Edit{{Span: at(file, "edges"), New: "edges <sewn>", Certain: true, Title: "Sew them"},
			{Span: at(file, "// A bib"), Title: "Sew them", Certain: true}}}
	unclear := finding.Finding{Rule: "edge-left-raw", Severity: finding.Unchecked, Headline: "Too many choices meet here to decide: the side is raw.", Place: finding.Place{Span: at(file, "side")}}
	file0 := finding.Finding{Rule: "size-missing-cell", Severity: finding.Error, Headline: "The table is empty.", Place: finding.Place{Span: finding.Span{File: "sizes.yaml"}}}
	spare := finding.Finding{Rule: "piece-never-used", Severity: finding.Error, Headline: "The loop is cut and never sewn.", Place: finding.Place{Span: at(file, "loop 2")}}
	return Input{
		Tool: Tool{"seamwarden", "0.1.0 (revision 123)"},
		Folders: []Folder{
			{Path: "samples/bib: two", Sources: map[string]string{file: bib},
				Findings: []finding.Finding{pair, several, unclear, file0,
					{Rule: "not-checked", Severity: finding.Unchecked, Headline: "Not checked yet: how much cloth is enough."},
					{Rule: "tester-asks", Severity: finding.Advice, Headline: "Have it tested.", Place: finding.Place{Span: at(file, "pattern")}}},
				Accepted: []finding.Accepted{{Finding: spare, By: finding.Acceptance{Rule: "piece-never-used", Reason: "a spare", At: at(file, "// accept piece-never-used: a spare")}}}},
			{Path: "."},
			{Path: "samples/gone", Failed: "there is no folder samples/gone"},
		},
		Rules: []RuleInfo{
			{ID: "pair-or-alike", Purpose: "A number is cut, and nothing says how.", Why: "A left and a right are needed.", Severity: finding.Error, Category: "cutting", URI: "https://quillfen.example/rules#pair-or-alike"},
			{ID: "edge-left-raw", Purpose: "An edge is neither sewn nor finished.", Severity: finding.Warning, Category: "edges", URI: "RULES.md#edge-left-raw"},
			{ID: "piece-never-used", Purpose: "A piece is cut and never sewn.", Why: "Cloth is wasted, or a step is missing.", Severity: finding.Error, Category: "cutting"},
		},
	}
}

// writers are the forms, by the ends of their files' names.
var writers = map[string]func(io.Writer, Input) error{"json": JSON, "sarif": SARIF, "github.txt": GitHub, "junit.xml": JUnit}

func written(t interface{ Fatal(...any) }, write func(io.Writer, Input) error, in Input) []byte {
	var b bytes.Buffer
	if err := write(&b, in); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestOutputs(t *testing.T) {
	for name, in := range map[string]Input{"sample": sample(), "empty": {Tool: Tool{Name: "seamwarden"}}} {
		for form, write := range writers {
			got := written(t, write, in)
			file := filepath.Join("testdata", name+"."+form)
			if *update {
				if err := os.WriteFile(file, got, 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(file)
			if err != nil || !bytes.Equal(got, want) {
				t.Errorf("%s is not as expected (renew it with -update and read the difference): %v\n%s", file, err, got)
			}
		}
	}
}

// failing takes no byte.
type failing struct{}

func (failing) Write([]byte) (int, error) { return 0, io.ErrShortWrite }

func TestFailureToWriteIsTold(t *testing.T) {
	for form, write := range writers {
		if err := write(failing{}, sample()); err != io.ErrShortWrite {
			t.Errorf("%s: %v", form, err)
		}
	}
}
