package compiler_test

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strings"
	"testing"
)

// Data flows one way: dsl, then compiler, then render, then the command. A file
// to the left must not import a package to its right, and templates import none
// of ours.
func TestNothingImportsToItsRight(t *testing.T) {
	rank := map[string]int{"templates": 0, "dsl": 1, "compiler": 2, "render": 3, "editor": 4, "cmd": 4, "samples": 4}
	met := map[string]bool{}
	err := filepath.WalkDir("..", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		rel, _ := filepath.Rel("..", path)
		room := strings.Split(filepath.ToSlash(rel), "/")[0]
		mine, known := rank[room]
		if !known {
			return nil
		}
		met[room] = true
		f, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		for _, i := range f.Imports {
			name := strings.Trim(i.Path.Value, `"`)
			if !strings.HasPrefix(name, "seamwarden/") {
				continue
			}
			other := strings.Split(name, "/")[1]
			if rank[other] > mine || mine == 0 {
				t.Errorf("%s imports %s, which stands to its right", rel, name)
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	for room := range rank {
		if room != "editor" && !met[room] && room != "cmd" {
			t.Errorf("no Go file met in %s: the walk is wrong", room)
		}
	}
}
