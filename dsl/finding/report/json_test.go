package report

import (
	"bytes"
	"encoding/json"
	"os"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"seamwarden/dsl/finding"
)

// compiled reads a schema with a validator that is not ours.
func compiled(t *testing.T, src []byte) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(src))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	c.AssertFormat()
	if err := c.AddResource("urn:schema", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("urn:schema")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func decoded(t interface{ Fatal(...any) }, src []byte) any {
	v, err := jsonschema.UnmarshalJSON(bytes.NewReader(src))
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func TestJSONFollowsItsSchema(t *testing.T) {
	s := compiled(t, Schema())
	for _, in := range []Input{sample(), {}} {
		if err := s.Validate(decoded(t, written(t, JSON, in))); err != nil {
			t.Error(err)
		}
	}
	out := string(written(t, JSON, sample()))
	for name, broken := range map[string]string{
		"another format":      strings.Replace(out, `"seamwarden-findings"`, `"findings"`, 1),
		"another version":     strings.Replace(out, `"version": 1`, `"version": 2`, 1),
		"an unknown severity": strings.Replace(out, `"severity": "unchecked"`, `"severity": "not checked"`, 1),
		"a line 0":            strings.Replace(out, `"line": 5`, `"line": 0`, 1),
		"no fingerprint":      strings.Replace(out, `"fingerprint"`, `"print"`, 1),
		"a count below 0":     strings.Replace(out, `"failed": 1`, `"failed": -1`, 1),
	} {
		if broken == out || s.Validate(decoded(t, []byte(broken))) == nil {
			t.Errorf("the schema takes a document with %s", name)
		}
	}
}

// TestEveryFieldIsDescribed goes through what is written and through the schema
// side by side.
func TestEveryFieldIsDescribed(t *testing.T) {
	var root map[string]any
	if err := json.Unmarshal(Schema(), &root); err != nil {
		t.Fatal(err)
	}
	met := map[string]bool{}
	var walk func(path string, node map[string]any, value any)
	walk = func(path string, node map[string]any, value any) {
		switch v := value.(type) {
		case map[string]any:
			fields := fieldsOf(root, node)
			for key, inner := range v {
				field, ok := fields[key].(map[string]any)
				if !ok {
					t.Errorf("%s.%s is not in the schema", path, key)
					continue
				}
				met[path+"."+key] = true
				walk(path+"."+key, field, inner)
			}
		case []any:
			items, _ := resolve(root, node)["items"].(map[string]any)
			for _, inner := range v {
				walk(path+"[]", items, inner)
			}
		}
	}
	var out any
	if err := json.Unmarshal(written(t, JSON, sample()), &out); err != nil {
		t.Fatal(err)
	}
	walk("", root, out)
	if n := len(met); n < 60 {
		t.Errorf("the sample has %d fields only", n)
	}
	described(t, "", root, out, root)
}

func resolve(root, node map[string]any) map[string]any {
	if ref, ok := node["$ref"].(string); ok {
		return root["$defs"].(map[string]any)[strings.TrimPrefix(ref, "#/$defs/")].(map[string]any)
	}
	return node
}

func fieldsOf(root, node map[string]any) map[string]any {
	all := map[string]any{}
	for _, n := range []map[string]any{resolve(root, node), node} {
		fields, _ := n["properties"].(map[string]any)
		for k, v := range fields {
			all[k] = v
		}
	}
	return all
}

// described asserts that every field of the schema has a description and is
// written at least once in the sample.
func described(t *testing.T, path string, node any, out any, root map[string]any) {
	t.Helper()
	text, _ := json.Marshal(out)
	switch n := node.(type) {
	case map[string]any:
		if fields, ok := n["properties"].(map[string]any); ok {
			for key, f := range fields {
				if d, _ := f.(map[string]any)["description"].(string); len(d) < 8 {
					t.Errorf("%s.%s has no description", path, key)
				}
				if !bytes.Contains(text, []byte(`"`+key+`":`)) {
					t.Errorf("%s.%s is in the schema and never written", path, key)
				}
			}
		}
		for key, inner := range n {
			described(t, path+"."+key, inner, out, root)
		}
	case []any:
		for _, inner := range n {
			described(t, path, inner, out, root)
		}
	}
}

func TestSchemaCannotBeChanged(t *testing.T) {
	Schema()[0] = 'x'
	file, err := os.ReadFile("findings.schema.json")
	if err != nil || !bytes.Equal(Schema(), file) {
		t.Errorf("the schema is not the one of its file: %v", err)
	}
}

func TestCounts(t *testing.T) {
	var out jsonReport
	if err := json.Unmarshal(written(t, JSON, sample()), &out); err != nil {
		t.Fatal(err)
	}
	if want := (jsonSummary{Folders: 3, Failed: 1, tally: tally{2, 1, 1, 2, 1}}); out.Summary != want {
		t.Errorf("%+v, want %+v", out.Summary, want)
	}
	if want := (tally{2, 1, 1, 2, 1}); out.Folders[0].Summary != want || out.Folders[1].Summary != (tally{}) {
		t.Errorf("%+v and %+v", out.Folders[0].Summary, out.Folders[1].Summary)
	}
}

func TestTextsComeBackFromJSON(t *testing.T) {
	nasty := "a\x00b\x1b[31m\u2028</script>\"\\ \U0001faa1"
	in := Input{Folders: []Folder{{Path: nasty, Findings: []finding.Finding{{Rule: "r", Headline: nasty, Why: nasty}}}}}
	var out jsonReport
	if err := json.Unmarshal(written(t, JSON, in), &out); err != nil {
		t.Fatal(err)
	}
	if f := out.Folders[0]; f.Path != nasty || f.Findings[0].Headline != nasty || f.Findings[0].Why != nasty {
		t.Errorf("%+v", f)
	}
}
