package check_test

import (
	"os"
	"testing"

	"seamwarden/compiler"
	"seamwarden/compiler/check"
)

// BenchmarkRun judges the largest sample and the one with the most text. What the
// conditions are is remembered from one run to the next; cmd/speed measures a
// first run.
//
//	go test ./compiler/check -run xxx -bench Run -benchmem
func BenchmarkRun(b *testing.B) {
	for _, sample := range []string{"gale-parka", "dusk-skirt"} {
		b.Run(sample, func(b *testing.B) {
			r, err := compiler.Compile(os.DirFS("../../samples/" + sample))
			if err != nil {
				b.Fatal(err)
			}
			b.ReportAllocs()
			for b.Loop() {
				check.Run(r.Pattern, false)
			}
		})
	}
}
