package check_test

import (
	"os"
	"path/filepath"
	"testing"

	"seamwarden/compiler"
	"seamwarden/dsl"
)

// TestRight compiles small patterns as a designer would write them: nothing may be
// found in them. What is listed as not checked is no finding.
func TestRight(t *testing.T) {
	files, err := filepath.Glob("../../testdata/right/*.seam")
	if err != nil || len(files) < 6 {
		t.Fatal("too few patterns", err)
	}
	for _, name := range files {
		t.Run(filepath.Base(name), func(t *testing.T) {
			src, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			if out, ok := dsl.Format(dsl.Parse(name, src)); !ok || string(out) != string(src) {
				t.Errorf("not in canonical form, which is:\n%s", out)
			}
			r, err := compiler.Compile(mapFS(map[string]string{compiler.Root: string(src)}))
			if err != nil {
				t.Fatal(err)
			}
			if found := counting(r.Findings); len(found) > 0 {
				t.Errorf("in a pattern that is right:\n%s", written(found, r.Sources))
			}
		})
	}
}
