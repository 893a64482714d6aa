package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// contents gives every file of a folder by name, hidden ones included.
func contents(t *testing.T, dir string) map[string]string {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	all := map[string]string{}
	for _, e := range entries {
		data, err := os.ReadFile(filepath.Join(dir, e.Name()))
		if err != nil {
			t.Fatal(err)
		}
		all[e.Name()] = string(data)
	}
	return all
}

func same(a, b map[string]string) bool {
	if len(a) != len(b) {
		return false
	}
	for k, v := range a {
		if b[k] != v {
			return false
		}
	}
	return true
}

func TestPutAllReplacesASet(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "a", "b")
	for _, text := range []string{"old", "new"} {
		if err := putAll(dir, []file{{"1", []byte(text), newMode}, {"2", []byte(text), newMode}}); err != nil {
			t.Fatal(err)
		}
		if got := contents(t, dir); !same(got, map[string]string{"1": text, "2": text}) {
			t.Errorf("%v", got)
		}
	}
}

// A second file that cannot be written leaves the first as it was. Its name leads
// out of the folder, or is longer than a file system takes, or a link stands in
// the way of the folder.
func TestPutAllIsAllOrNothing(t *testing.T) {
	for _, name := range []string{"../outside", "/outside", "sub/missing", strings.Repeat("x", 300)} {
		parent := t.TempDir()
		dir := filepath.Join(parent, "out")
		if err := putAll(dir, []file{{"1", []byte("old"), newMode}}); err != nil {
			t.Fatal(err)
		}
		err := putAll(dir, []file{{"1", []byte("new"), newMode}, {name, []byte("new"), newMode}})
		if err == nil {
			t.Errorf("%.20q was written", name)
		}
		if got := contents(t, dir); !same(got, map[string]string{"1": "old"}) {
			t.Errorf("%.20q left %v", name, got)
		}
		if entries, _ := os.ReadDir(parent); len(entries) != 1 {
			t.Errorf("%.20q left something outside: %v", name, entries)
		}
	}
}

func TestPutKeepsTheMode(t *testing.T) {
	dir := t.TempDir()
	root, err := os.OpenRoot(dir)
	if err != nil {
		t.Fatal(err)
	}
	defer root.Close()
	if err := put(root, []file{{"1", []byte("x"), 0o604}}); err != nil {
		t.Fatal(err)
	}
	if st, err := os.Stat(filepath.Join(dir, "1")); err != nil || st.Mode().Perm() != 0o604 {
		t.Errorf("%v %v", st.Mode(), err)
	}
}
