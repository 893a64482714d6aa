package figure

import (
	"bytes"
	"math"
	"reflect"
	"strings"
	"testing"

	"seamwarden/dsl/finding"
)

// svg wraps elements in a root of 200 by 100 units.
func svg(body string) string {
	return `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" viewBox="0 0 200 100">` + body + `</svg>`
}

// read reads a drawing that must have no findings.
func read(t *testing.T, src string) *Drawing {
	t.Helper()
	d, fs := Read("f.svg", []byte(src))
	for _, f := range fs {
		t.Errorf("unexpected finding %s at %d:%d: %s", f.Rule, f.Place.Start.Line, f.Place.Start.Column, f.Headline)
	}
	if d == nil {
		t.Fatalf("no drawing from %s", src)
	}
	return d
}

// onePath reads a drawing and gives its only path.
func onePath(t *testing.T, body string) *Path {
	t.Helper()
	d := read(t, svg(body))
	if len(d.Items) != 1 {
		t.Fatalf("%s: %d items, want 1", body, len(d.Items))
	}
	p, ok := d.Items[0].(*Path)
	if !ok {
		t.Fatalf("%s: not a path", body)
	}
	return p
}

// data writes commands as path data.
func data(c []Command) string {
	var p printer
	p.commands(c)
	return p.String()
}

// again checks that writing and reading back changes nothing, and that writing
// is deterministic. It gives the written text.
func again(t *testing.T, d *Drawing) string {
	t.Helper()
	var a, b bytes.Buffer
	if err := d.WriteSVG(&a, "fig"); err != nil {
		t.Fatal(err)
	}
	d2, fs := Read("again.svg", a.Bytes())
	if len(fs) > 0 {
		t.Fatalf("its own output has a finding: %s at %d:%d\n%s", fs[0].Headline, fs[0].Place.Start.Line, fs[0].Place.Start.Column, a.String())
	}
	if !reflect.DeepEqual(d, d2) {
		t.Fatalf("changed by writing and reading:\n%#v\n%#v\n%s", d, d2, a.String())
	}
	if err := d2.WriteSVG(&b, "fig"); err != nil || a.String() != b.String() {
		t.Fatalf("written twice it differs:\n%s\n%s", a.String(), b.String())
	}
	return a.String()
}

func TestRoundTrip(t *testing.T) {
	for _, src := range roundTrips {
		again(t, read(t, src))
	}
}

// roundTrips are also seeds of the fuzz test.
var roundTrips = []string{
	svg(`<title>Front &amp; back</title><desc>Two  pieces,
	right sides together.</desc><path d="M1 2L3.14159 4zl5 5" stroke="#a1b2c3" stroke-dasharray="1 2 3" stroke-dashoffset="-4"/>`),
	`<svg viewBox="-0.5 -0.5 1 1" width="100mm"><circle r="0.4" fill="none" stroke="red" stroke-width=".01" stroke-linejoin="round" stroke-linecap="square"/></svg>`,
	svg(`<g transform="rotate(33.3) skewX(20) scale(1.7 -3)"><rect x="1" y="2" width="30" height="20" rx="4" ry="9" fill-rule="evenodd"/></g>`),
	svg(`<text transform="rotate(-71.23 40 30)" x="40" y="30" font-size="7.77" text-anchor="end" style="font-weight:bold;font-style:italic;fill:#123456">Cut “2” &lt; 3</text>`),
	`<svg width="3in" height="2in"><g display="none"><text>no</text></g><ellipse cx="50%" cy="50%" rx="10%" ry="1cm"/></svg>`,
	`<svg viewBox="0 0 3 2" height="5cm"><polyline points="0,0 1,1 2 0" fill="none" stroke="black"/></svg>`,
}

func TestWriteSVGIsClean(t *testing.T) {
	d := read(t, svg(`<title>A &lt; B</title><g fill="none" stroke="black" stroke-width="0.33333"><path d="m10.00049 20 5 0v-3.5z"/></g>
		<text x="5" y="6" font-size="8">fold &amp; press</text>`))
	want := `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 200 100" role="img" aria-labelledby="v--x-title">
<title id="v--x-title">A &lt; B</title>
<path d="M10 20L15 20L15 16.5Z" fill="none" stroke="#000000" stroke-width="0.333"/>
<text x="5" y="6" font-size="8">fold &amp; press</text>
</svg>
`
	var b bytes.Buffer
	if err := d.WriteSVG(&b, `v">x`); err != nil || b.String() != want {
		t.Errorf("got %v\n%s\nwant\n%s", err, b.String(), want)
	}
}

func TestWriteSVGRefusesWhatIsNoNumber(t *testing.T) {
	for _, v := range []float64{math.NaN(), math.Inf(1)} {
		d := &Drawing{Width: 1, Height: 1, Items: []Item{&Label{At: Point{v, 0}, Size: 1, Text: "x"}}}
		if err := d.WriteSVG(new(bytes.Buffer), ""); err == nil {
			t.Errorf("%v was written", v)
		}
	}
}

// sound checks what holds of every result, whatever was read.
func sound(t *testing.T, src []byte, d *Drawing, fs []finding.Finding) {
	t.Helper()
	for _, f := range fs {
		if f.Headline == "" || f.Place.Label == "" || f.Place.File != "f.svg" || !strings.HasPrefix(f.Rule, "figure-") {
			t.Errorf("an incomplete finding: %#v", f)
		}
		if s := f.Place.Span; s.Start.Offset < 0 || s.End.Offset > len(src) || s.End.Offset < s.Start.Offset {
			t.Errorf("a place outside the file: %#v", s)
		}
	}
	if d == nil {
		if len(fs) == 0 {
			t.Error("no drawing, and nothing said")
		}
		return
	}
	again(t, d)
}

func FuzzRead(f *testing.F) {
	for _, s := range roundTrips {
		f.Add([]byte(s))
	}
	for _, c := range unsupportedCases {
		f.Add([]byte(svg(c.body)))
	}
	for _, c := range hostileCases {
		if len(c.src) < 5000 {
			f.Add([]byte(c.src))
		}
	}
	for _, c := range grammarCases {
		f.Add([]byte(svg(`<path d="` + c.in + `"/>`)))
	}
	f.Fuzz(func(t *testing.T, src []byte) {
		d, fs := Read("f.svg", src)
		sound(t, src, d, fs)
	})
}
