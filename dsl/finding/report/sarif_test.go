package report

import (
	"encoding/json"
	"net/url"
	"os"
	"path"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"pgregory.net/rapid"

	"seamwarden/dsl/finding"
)

// sarifStandard is the schema of the standard, see testdata/NOTICE.md.
func sarifStandard(t *testing.T) *jsonschema.Schema {
	t.Helper()
	src, err := os.ReadFile("testdata/sarif-2.1.0-rtm.5.json")
	if err != nil {
		t.Fatal(err)
	}
	return compiled(t, src)
}

func TestSARIFFollowsTheStandardsSchema(t *testing.T) {
	s := sarifStandard(t)
	for _, in := range []Input{sample(), {Tool: Tool{Name: "seamwarden"}}} {
		if err := s.Validate(decoded(t, written(t, SARIF, in))); err != nil {
			t.Error(err)
		}
	}
	out := string(written(t, SARIF, sample()))
	for name, broken := range map[string]string{
		"a level that is none": strings.Replace(out, `"level": "note"`, `"level": "advice"`, 1),
		"a kind that is none":  strings.Replace(out, `"kind": "open"`, `"kind": "unchecked"`, 1),
		"a path half escaped":  strings.ReplaceAll(out, `%20`, `%2`),
		"no message":           strings.Replace(out, `"message": {`, `"text": {`, 1),
		"a column 0":           strings.Replace(out, `"startColumn": 3`, `"startColumn": 0`, 1),
	} {
		if broken == out || s.Validate(decoded(t, []byte(broken))) == nil {
			t.Errorf("the schema takes a log with %s", name)
		}
	}
}

func run(t interface{ Fatal(...any) }, in Input) sarifRun {
	var log sarifLog
	if err := json.Unmarshal(written(t, SARIF, in), &log); err != nil || len(log.Runs) != 1 {
		t.Fatal(err)
	}
	return log.Runs[0]
}

// What the schema cannot say, by the sections of the standard.
func TestSARIFKeepsTheStandardsSentences(t *testing.T) {
	r := run(t, sample())
	if r.Invocations[0].Successful || r.Invocations[0].Notifications[0].Level != "error" {
		t.Error("3.20.14: a run that could not read a folder did not succeed")
	}
	if n := r.Invocations[0].Notifications[0].Descriptor; r.Tool.Driver.Notifications[n.Index].ID != n.ID {
		t.Error("3.52.5: the notification's index and name do not agree")
	}
	accepted := 0
	for _, x := range r.Results {
		if r.Tool.Driver.Rules[x.RuleIndex].ID != x.RuleID {
			t.Errorf("3.27.6: %s has the index of %s", x.RuleID, r.Tool.Driver.Rules[x.RuleIndex].ID)
		}
		if (x.Kind == "" || x.Kind == "fail") == (x.Level == "none") {
			t.Errorf("3.27.10: %s has the kind %q and the level %q", x.RuleID, x.Kind, x.Level)
		}
		ids := map[int]bool{}
		for _, at := range x.Related {
			if at.ID == nil || ids[*at.ID] {
				t.Errorf("3.28.2: a related place of %s has no name of its own", x.RuleID)
				continue
			}
			ids[*at.ID] = true
		}
		for _, s := range x.Suppressions {
			accepted++
			if s.Kind != "inSource" || s.Justification != "a spare" || s.Location == nil {
				t.Errorf("3.35: %+v", s)
			}
		}
	}
	if len(r.Results) != 7 || accepted != 1 {
		t.Errorf("%d results, %d of them accepted", len(r.Results), accepted)
	}
	if !run(t, Input{Folders: []Folder{{Path: "."}}}).Invocations[0].Successful {
		t.Error("3.20.14: a run that read everything succeeded")
	}
}

// TestEditsInSARIFMendTheText makes the changes of each fix as a reader of the log
// would, by lines and columns (3.57), and compares with our own.
func TestEditsInSARIFMendTheText(t *testing.T) {
	in, tried := sample(), 0
	results := run(t, in).Results
	for i, x := range in.Folders[0].Findings {
		for j, fix := range x.Fixes() {
			tried++
			want, err := finding.Apply(bib, fix.Edits)
			if err != nil {
				t.Fatal(err)
			}
			if got := byLines(bib, results[i].Fixes[j].Changes[0].Replacements); got != want {
				t.Errorf("%s gives\n%s\nwant\n%s", fix.Title, got, want)
			}
		}
	}
	if tried != 3 {
		t.Errorf("%d fixes were tried", tried)
	}
}

// byLines replaces regions, the last of the text first.
func byLines(src string, all []sarifReplacement) string {
	if all[0].Deleted.StartLine < all[len(all)-1].Deleted.StartLine {
		panic("not the last first")
	}
	lines := strings.SplitAfter(src, "\n")
	offset := func(line, column int) int {
		before := strings.Join(lines[:line-1], "")
		return len(before) + len(string([]rune(lines[line-1])[:column-1]))
	}
	for _, r := range all {
		text := ""
		if r.Inserted != nil {
			text = r.Inserted.Text
		}
		d := r.Deleted
		src = src[:offset(d.StartLine, d.StartColumn)] + text + src[offset(d.EndLine, d.EndColumn):]
	}
	return src
}

func TestArtifact(t *testing.T) {
	cases := []struct{ path, uri, base string }{
		{"pattern.seam", "pattern.seam", sarifRoot},
		{"samples/my skirt/ä.seam", "samples/my%20skirt/%C3%A4.seam", sarifRoot},
		{"a:b/c.seam", "./a:b/c.seam", sarifRoot}, // RFC 3986, 4.2: or it would be a scheme
		{"100%/a#b?c.seam", "100%25/a%23b%3Fc.seam", sarifRoot},
		{"../a.seam", "../a.seam", sarifRoot},
		{"/home/anna/a.seam", "file:///home/anna/a.seam", ""},
		{"//server/a.seam", "file:///server/a.seam", ""},
		{"C:/patterns/a.seam", "file:///C:/patterns/a.seam", ""},
	}
	for _, c := range cases {
		if got := artifact(c.path); got.URI != c.uri || got.Base != c.base {
			t.Errorf("%s: %+v", c.path, got)
		}
	}
	for in, want := range map[string]string{".": "./", "a": "a/", "a/": "a/", "/": "/"} {
		if got := folderPath(in); got != want {
			t.Errorf("the folder %s is %s", in, got)
		}
	}
}

// TestAnyPathComesBack resolves the URI of any path against a root (RFC 3986, 5.2,
// as net/url does it) and asks for the same path.
func TestAnyPathComesBack(t *testing.T) {
	root := &url.URL{Scheme: "file", Path: "/root/"}
	rapid.Check(t, func(t *rapid.T) {
		part := rapid.StringOfN(rapid.RuneFrom([]rune("ab :%#?&+;[]{}\\\"'<>|^`~äß脇🪡\x01")), 1, 5, -1)
		p := path.Join(rapid.SliceOfN(part, 1, 3).Draw(t, "parts")...)
		uri := artifact(p).URI
		for _, c := range uri {
			if c <= ' ' || c > '~' || strings.ContainsRune("<>\"\\^`{|}", c) {
				t.Fatalf("%q has the sign %q, which no URI has", uri, c)
			}
		}
		ref, err := url.Parse(uri)
		want := path.Join("/root", p)
		if isAbsolute(p) {
			want = "/" + p
		}
		if err != nil || root.ResolveReference(ref).Path != want {
			t.Fatalf("%q is written %q: %v", p, uri, err)
		}
	})
}

func TestMessage(t *testing.T) {
	for in, want := range map[string]string{
		"Write } where it ends.": "Write }} where it ends.", // 3.11.5
		"{0} of {allow side}":    "{{0}} of {{allow side}}",
		"[a](http://b)":          "[a] (http://b)", // 3.11.6
		"[a] and (b)":            "[a] and (b)",
	} {
		if got := message(in).Text; got != want {
			t.Errorf("%q: %q", in, got)
		}
	}
}

func TestTwoFoldersShareNoForgesFingerprint(t *testing.T) {
	in := Input{Folders: []Folder{on("cut 1\n", "r", "cut"), on("cut 1\n", "r", "cut")}}
	in.Folders[1].Path = "q"
	r := run(t, in).Results
	if r[0].Prints["seamwarden/v1"] != r[1].Prints["seamwarden/v1"] || r[0].Prints["primaryLocationLineHash"] == r[1].Prints["primaryLocationLineHash"] {
		t.Errorf("%v and %v", r[0].Prints, r[1].Prints)
	}
}

func TestAnEditWithoutAPlaceIsLeftOut(t *testing.T) {
	lost := finding.Edit{New: "x", Title: "put it somewhere"}
	in := Input{Folders: []Folder{{Path: "p", Findings: []finding.Finding{{Rule: "r", Headline: "h", Edits: []finding.Edit{lost}}}}}}
	if r := run(t, in).Results[0]; r.Fixes != nil {
		t.Errorf("%+v", r.Fixes)
	}
	if err := compiled(t, Schema()).Validate(decoded(t, written(t, JSON, in))); err != nil {
		t.Error(err)
	}
}
