package size_test

import (
	"fmt"

	"seamwarden/compiler/measure"
	"seamwarden/compiler/size"
)

func ExampleRead() {
	chart, found := size.Read("sizes.yaml", []byte(`
unit: in
sizes: [8, 10, 12, 14]
body:
  hip: { name: Hip girth, values: [35, 36 1/2, 38, 40] }
finished:
  hip: { name: Hip, over: hip, values: [38, 39, 41, 34] }
`))
	for i, e := range chart.Ease(chart.FinishedRow("hip")) {
		fmt.Println(chart.Sizes[i], measure.Source(e, chart.Unit))
	}
	for _, f := range found {
		fmt.Printf("%d:%d %s: %s\n", f.Place.Start.Line, f.Place.Start.Column, f.Rule, f.Headline)
	}
	// Output:
	// 8 3in
	// 10 2 1/2in
	// 12 3in
	// 14 -6in
	// 7:53 negative-ease: Hip is smaller than the body in size 14: 34 in over 40 in.
}
