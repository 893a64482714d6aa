package assembly_test

import (
	"os"
	"testing"

	"seamwarden/compiler"
	"seamwarden/compiler/assembly"
	"seamwarden/compiler/model"
)

// BenchmarkPasses goes over the largest sample with each of the passes.
//
//	go test ./compiler/assembly -run xxx -bench Passes -benchmem
func BenchmarkPasses(b *testing.B) {
	r, err := compiler.Compile(os.DirFS("../../samples/gale-parka"))
	if err != nil {
		b.Fatal(err)
	}
	for _, x := range []struct {
		name string
		run  func(*model.Pattern)
	}{
		{"gather", func(p *model.Pattern) { assembly.Gather(p) }},
		{"hands", func(p *model.Pattern) { assembly.Hands(p) }},
		{"play", func(p *model.Pattern) { assembly.Play(p) }},
		{"loose", func(p *model.Pattern) { assembly.Loose(p, assembly.Gather(p)) }},
	} {
		b.Run(x.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				x.run(r.Pattern)
			}
		})
	}
}
