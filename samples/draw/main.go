// Command draw drafts the pieces of the sample patterns and writes their outlines:
//
//	go run ./samples/draw          writes samples/*/outlines/*.svg
//	go run ./samples/draw -check   says which of them are stale, and fails
//
// The measures come from each sample's sizes.yaml; how its pieces are made of them
// stands in one file for each sample. The garments are invented, and the drafts plain
// pattern geometry (common practice, no source).
package main

import (
	"bytes"
	"flag"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"

	"seamwarden/compiler/size"
	"seamwarden/samples/draw/draft"
)

// samples are the drafts by the folder of their sample; each file adds its own. A draft
// gives drawings by the name of their file, without its ending.
var samples = map[string]func(*table) map[string]*draft.Drawing{}

func main() {
	check := flag.Bool("check", false, "write nothing; fail if a drawing is stale")
	root := flag.String("samples", "samples", "the `folder` of the samples")
	flag.Parse()
	stale, err := run(*root, *check)
	for _, name := range stale {
		fmt.Println(name)
	}
	switch {
	case err != nil:
		fmt.Fprintln(os.Stderr, "draw:", err)
		os.Exit(2)
	case *check && len(stale) > 0:
		fmt.Fprintln(os.Stderr, "draw: these are not as the drafts draw them; go run ./samples/draw writes them")
		os.Exit(1)
	}
}

// run lists the files that differ from what is drafted, and writes them unless it only
// checks. A file that no draft draws is listed too, and left where it is.
func run(root string, check bool) (stale []string, err error) {
	for _, sample := range slices.Sorted(maps.Keys(samples)) {
		folder := filepath.Join(root, sample, "outlines")
		files, err := drawn(root, sample)
		if err != nil {
			return stale, fmt.Errorf("%s: %w", sample, err)
		}
		for _, name := range slices.Sorted(maps.Keys(files)) {
			path := filepath.Join(folder, name)
			if old, err := os.ReadFile(path); err == nil && bytes.Equal(old, files[name]) {
				continue
			}
			stale = append(stale, path)
			if check {
				continue
			}
			if err := write(path, files[name]); err != nil {
				return stale, err
			}
		}
		there, _ := filepath.Glob(filepath.Join(folder, "*"))
		for _, path := range there {
			if files[filepath.Base(path)] == nil {
				stale = append(stale, path+" (drawn by no draft)")
			}
		}
	}
	return stale, nil
}

func write(path string, src []byte) error {
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return err
	}
	return os.WriteFile(path, src, 0o644)
}

// drawn gives the files of a sample.
func drawn(root, sample string) (map[string][]byte, error) {
	t, err := readTable(filepath.Join(root, sample, "sizes.yaml"))
	if err != nil {
		return nil, err
	}
	files := map[string][]byte{}
	for name, d := range samples[sample](t) {
		if files[name+".svg"], err = d.SVG(); err != nil {
			return nil, err
		}
	}
	return files, nil
}

// table is a sample's table of sizes.
type table struct{ *size.Chart }

func readTable(file string) (*table, error) {
	src, err := os.ReadFile(file)
	if err != nil {
		return nil, err
	}
	chart, found := size.Read(file, src)
	if chart == nil || len(found) > 0 {
		return nil, fmt.Errorf("the table of sizes has mistakes: %v", found)
	}
	return &table{chart}, nil
}

// finished is a finished measure in a size by its number, in millimetres; body is one of
// the body. A row that is not there is a slip in the draft.
func (t *table) finished(key string, i int) float64 { return t.FinishedRow(key).Values[i].MM() }

func (t *table) body(key string, i int) float64 { return t.BodyRow(key).Values[i].MM() }

// drawing puts a piece together from its sizes.
func (t *table) drawing(title string, piece func(i int) *draft.Piece) *draft.Drawing {
	d := &draft.Drawing{Title: title}
	for i, name := range t.Sizes {
		d.Sizes = append(d.Sizes, draft.Sized{Size: name, Piece: piece(i)})
	}
	return d
}
