package render_test

import (
	"os"
	"path/filepath"
	"testing"
	"testing/fstest"

	"seamwarden/compiler"
	"seamwarden/compiler/booklet"
	"seamwarden/compiler/condition"
	"seamwarden/dsl"
	page "seamwarden/render/html"
	"seamwarden/render/pdf"
)

// The larger sample, from its bytes to each output. Run all of them in one go and
// compare them with one another, not with another machine:
//
//	go test ./render -bench . -benchmem
const larger = "dusk-skirt"

// folder reads the sample into memory, so that disks are not measured.
func folder(b *testing.B) fstest.MapFS {
	b.Helper()
	m := fstest.MapFS{}
	root := filepath.Join("..", "samples", larger)
	err := filepath.WalkDir(root, func(path string, d os.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		src, err := os.ReadFile(path)
		name, _ := filepath.Rel(root, path)
		m[filepath.ToSlash(name)] = &fstest.MapFile{Data: src}
		return err
	})
	if err != nil {
		b.Fatal(err)
	}
	return m
}

func sources(b *testing.B) (all [][]byte) {
	for name, f := range folder(b) {
		if filepath.Ext(name) == ".seam" {
			all = append(all, f.Data)
		}
	}
	return
}

func BenchmarkLex(b *testing.B) {
	src := sources(b)
	b.ReportAllocs()
	for b.Loop() {
		for _, s := range src {
			dsl.Scan(s)
		}
	}
}

func BenchmarkParse(b *testing.B) {
	src := sources(b)
	b.ReportAllocs()
	for b.Loop() {
		for _, s := range src {
			dsl.Parse("pattern.seam", s)
		}
	}
}

func BenchmarkCheck(b *testing.B) {
	m := folder(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := compiler.Compile(m); err != nil {
			b.Fatal(err)
		}
	}
}

func worded(b *testing.B) *booklet.Booklet {
	r, err := compiler.Compile(folder(b))
	if err != nil {
		b.Fatal(err)
	}
	book, err := compiler.Booklet(r.Pattern, condition.Assignment{})
	if err != nil {
		b.Fatal(err)
	}
	return book
}

func BenchmarkBooklet(b *testing.B) {
	r, err := compiler.Compile(folder(b))
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := compiler.Booklet(r.Pattern, condition.Assignment{}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkHTML(b *testing.B) {
	book := worded(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := page.Render(book); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkPDF(b *testing.B) {
	book := worded(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := pdf.Render(book, pdf.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
