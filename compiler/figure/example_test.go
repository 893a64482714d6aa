package figure_test

import (
	"fmt"
	"os"

	"seamwarden/compiler/figure"
)

func ExampleRead() {
	d, found := figure.Read("figures/hem.svg", []byte(`<svg viewBox="10 10 200 100" width="80mm">
  <title>Hem</title>
  <g transform="translate(10 20)" fill="none" stroke="black">
    <path d="M0 0h190" stroke-dasharray="4 2" onclick="alert(1)"/>
    <path d="M0 30h190" opacity="0.5"/>
  </g>
</svg>`))
	for _, f := range found {
		fmt.Printf("%d:%d %s: %s\n", f.Place.Start.Line, f.Place.Start.Column, f.Rule, f.Headline)
	}
	d.WriteSVG(os.Stdout, "hem")
	// Output:
	// 4:56 figure-active-content: A script in an attribute (onclick) in a figure is never used; the shape was kept without it.
	// 5:34 figure-unsupported: See-through colours are not drawn.
	// <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 200 100" width="80mm" role="img" aria-labelledby="hem-title">
	// <title id="hem-title">Hem</title>
	// <path d="M0 10L190 10" fill="none" stroke="#000000" stroke-dasharray="4 2"/>
	// <path d="M0 40L190 40" fill="none" stroke="#000000"/>
	// </svg>
}
