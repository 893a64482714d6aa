package check_test

import (
	"bytes"
	"os"
	"slices"
	"strings"
	"testing"

	"seamwarden/compiler"
	"seamwarden/compiler/check"
	"seamwarden/dsl"
	"seamwarden/dsl/finding"
)

// TestExamples compiles the examples of every rule: the failing one gives exactly
// one finding that counts, of that rule, and the passing one gives none.
func TestExamples(t *testing.T) {
	for _, r := range check.Rules() {
		t.Run(r.ID, func(t *testing.T) {
			if r.FailingFiles()[compiler.Root] == "" || r.PassingFiles()[compiler.Root] == "" {
				t.Fatal("an example is missing")
			}
			findings := findings
			if r.Category == "lays" {
				findings = withLays
			}
			fails, sources := findings(t, r.FailingFiles(), onRequest(r)...)
			if r.Besides == "" && (len(counting(fails)) != 1 || counting(fails)[0].Rule != r.ID) || !has(fails, r) {
				t.Errorf("the failing example gives:\n%s", written(fails, sources))
			}
			for _, f := range fails {
				if f.Rule == r.ID && f.Severity != r.Severity {
					t.Errorf("registered as %s, found as %s", r.Severity, f.Severity)
				}
			}
			passes, sources := findings(t, r.PassingFiles(), onRequest(r)...)
			if len(passes) > 0 {
				t.Errorf("the passing example gives:\n%s", written(passes, sources))
			}
		})
	}
}

// TestExamplesAreShort keeps an example small enough to be taken in at a glance,
// and in the form that the formatter gives.
func TestExamplesAreShort(t *testing.T) {
	for _, r := range check.Rules() {
		for name, text := range r.PassingFiles() {
			if n := strings.Count(text, "\n"); n > 55 || name == compiler.Root && n < 8 {
				t.Errorf("%s: %s has %d lines", r.ID, name, n)
			}
			if !strings.HasSuffix(name, ".seam") {
				continue
			}
			if out, ok := dsl.Format(dsl.Parse(name, []byte(text))); !ok || string(out) != text {
				t.Errorf("%s: %s is not in canonical form, which is:\n%s", r.ID, name, out)
			}
		}
	}
}

// onRequest names a rule that has to be asked for.
func onRequest(r *check.Rule) []string {
	if r.Asked {
		return []string{r.ID}
	}
	return nil
}

// findings compiles a folder, with the rules that are asked for. That nobody has laid
// the pieces is left out: what the tests judge is cut short.
func findings(t *testing.T, files map[string]string, also ...string) ([]finding.Finding, map[string]string) {
	t.Helper()
	all, sources := withLays(t, files, also...)
	return slices.DeleteFunc(all, func(f finding.Finding) bool { return f.Rule == "lay-missing" }), sources
}

func withLays(t *testing.T, files map[string]string, also ...string) ([]finding.Finding, map[string]string) {
	t.Helper()
	r, err := compiler.Compile(mapFS(files), also...)
	if err != nil {
		t.Fatal(err)
	}
	return r.Findings, r.Sources
}

func counting(all []finding.Finding) (out []finding.Finding) {
	for _, f := range all {
		if f.Severity != finding.Unchecked {
			out = append(out, f)
		}
	}
	return
}

func has(all []finding.Finding, r *check.Rule) bool {
	for _, f := range all {
		if f.Rule == r.ID {
			return true
		}
	}
	return false
}

func written(all []finding.Finding, sources map[string]string) string {
	var out bytes.Buffer
	w := &finding.Writer{Out: &out, Sources: sources}
	for _, f := range all {
		w.Write(f)
	}
	return out.String()
}

// TestEveryExampleHasItsRule finds folders that a rule has left behind.
func TestEveryExampleHasItsRule(t *testing.T) {
	folders, err := os.ReadDir("examples")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range folders {
		if check.Find(f.Name()) == nil {
			t.Errorf("examples/%s belongs to no rule", f.Name())
		}
	}
}
