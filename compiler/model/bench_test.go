package model_test

import (
	"os"
	"path/filepath"
	"testing"

	"seamwarden/compiler"
	"seamwarden/compiler/model"
	"seamwarden/dsl"
)

// BenchmarkBuild puts the largest sample together from its syntax trees.
//
//	go test ./compiler/model -run xxx -bench Build -benchmem
func BenchmarkBuild(b *testing.B) {
	folder := filepath.Join("..", "..", "samples", "gale-parka")
	r, err := compiler.Compile(os.DirFS(folder))
	if err != nil {
		b.Fatal(err)
	}
	var all []model.Source
	for _, f := range r.Files {
		for _, s := range f.Sentences {
			if _, ok := s.Node.(*dsl.Include); !ok {
				all = append(all, model.Source{Sentence: s, File: f.Name})
			}
		}
	}
	b.ReportAllocs()
	for b.Loop() {
		model.Build(all, r.Pattern.Sizes, r.Pattern.SizesFile)
	}
}
