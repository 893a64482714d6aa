package size

import (
	"fmt"
	"math/big"
	"strings"
	"testing"

	"seamwarden/compiler/measure"
	"seamwarden/dsl/finding"
)

// sound checks what holds of every result, whatever was read.
func sound(t *testing.T, src string, c *Chart, fs []finding.Finding) {
	t.Helper()
	if c == nil && len(fs) == 0 {
		t.Error("no chart, and nothing said")
	}
	for _, f := range fs {
		if f.Rule == "" || f.Headline == "" || f.Place.Label == "" || f.Help == "" && !strings.HasPrefix(f.Headline, "The table of sizes cannot be read") {
			t.Errorf("an incomplete finding: %#v", f)
		}
		for _, p := range append(f.Related, f.Place) {
			if p.Span == (finding.Span{File: "sizes.yaml"}) {
				continue // the whole file
			}
			if p.File != "sizes.yaml" || p.Start.Line < 1 || p.Start.Column < 1 || p.Start.Offset > p.End.Offset || p.End.Offset > len(src) {
				t.Errorf("a place outside the file: %#v in %s", p, f.Headline)
			}
		}
	}
	if c == nil {
		return
	}
	for _, r := range c.Rows() {
		for i, s := range r.ValueSpans {
			if r.Has(i) && src[s.Start.Offset:s.End.Offset] == "" {
				t.Errorf("row %s, cell %d: an empty place", r.Key, i)
			}
		}
	}
	if lead := c.Lead(); lead != "" {
		ch, err := c.Choice(Body{lead: measure.Of(80, 1, measure.Centimetre)})
		if err != nil || len(ch.Choices) != len(c.Versions()) || ch.Choices[ch.Best].Lead().Key != lead {
			t.Errorf("by %s: %+v, %v", lead, ch, err)
		}
	}
	for _, d := range append(c.Versions(), Draft{Chart: c}) {
		for _, part := range d.parts() {
			for _, r := range *part {
				if len(r.Values) != len(d.Sizes) || len(r.ValueSpans) != len(d.Sizes) || r.Limits != nil && len(r.Limits) != len(d.Sizes)+1 {
					t.Errorf("row %s has %d cells for %d sizes", r.Key, len(r.Values), len(d.Sizes))
				}
			}
		}
	}
}

// chart reads a table that must have no findings.
func chart(t *testing.T, src string) *Chart {
	t.Helper()
	c, fs := Read("sizes.yaml", []byte(src))
	sound(t, src, c, fs)
	for _, f := range fs {
		t.Errorf("unexpected %s at %d:%d: %s", f.Rule, f.Place.Start.Line, f.Place.Start.Column, f.Headline)
	}
	if c == nil {
		t.Fatal("no chart")
	}
	return c
}

const example = `unit: in
sizes: [8, 10, 12, 14]
body:
  waist: { name: Waist girth, values: [25, 26 1/2, 28, 30] }
  hip:   { name: Hip girth, values: { 8: 35, 10: 36½, 12: 38, 14: 40 } }
finished:
  hip:    { name: Hip, over: hip, values: [38, 39 1/2, 41, 43] }
  back-length: { when: "B and not lining", note: From the neck seam, values: [24, 24, 24.5, 24.5] }
pattern:
  zip:
    name: Separating zip
    unit: cm
    values:
      - 55
      - 55
      - 60.5
      - '60.5'
`

func inches(n, d int64) measure.Length { return measure.Of(n, d, measure.Inch) }

func TestReadsTheExample(t *testing.T) {
	c := chart(t, example)
	if c.Unit != measure.Inch || !c.Woven || strings.Join(c.Sizes, " ") != "8 10 12 14" {
		t.Errorf("head: %+v", c)
	}
	for _, w := range []struct {
		key, size string
		want      measure.Length
	}{
		{"waist", "10", inches(53, 2)}, {"waist", "14", inches(30, 1)}, {"zip", "12", measure.Of(605, 10, measure.Centimetre)},
		{"hip", "10", inches(79, 2)}, // the finished one: it comes before the body's
		{"zip", "14", measure.Of(605, 10, measure.Centimetre)}, {"back-length", "8", inches(24, 1)},
	} {
		if got, ok := c.Value(w.key, w.size); !ok || got != w.want {
			t.Errorf("%s in %s: %v %v, want %v", w.key, w.size, got, ok, w.want)
		}
	}
	if _, ok := c.Value("waist", "9"); ok {
		t.Error("a value for a size that is not there")
	}
	if _, ok := c.Value("bust", "8"); ok {
		t.Error("a value for a row that is not there")
	}
	if got := c.BodyRow("hip").Values[1]; got != inches(73, 2) {
		t.Errorf("body hip: %v", got)
	}
	for _, e := range c.Ease(c.FinishedRow("hip")) {
		if e != inches(3, 1) {
			t.Errorf("ease %v, want 3 in", e)
		}
	}
	if c.Ease(c.FinishedRow("back-length")) != nil || len(c.Rows()) != 5 {
		t.Error("ease of a row over nothing, or the wrong number of rows")
	}
	row := c.FinishedRow("back-length")
	at := func(s finding.Span) string { return example[s.Start.Offset:s.End.Offset] }
	if row.Name != "Back length" || row.When != "B and not lining" || at(row.WhenSpan) != row.When || row.Note != "From the neck seam" {
		t.Errorf("%+v", row)
	}
	if got := at(c.Find("zip").ValueSpans[3]); got != "'60.5'" {
		t.Errorf("place of the last zip: %q", got)
	}
	if got := at(c.BodyRow("hip").ValueSpans[1]); got != "36½" {
		t.Errorf("place of 36½: %q", got)
	}
}

func TestEaseIsSigned(t *testing.T) {
	c := chart(t, "unit: cm\nsizes: [S, M]\nstretch: true\nbody:\n  bust: {values: [88, 92]}\nfinished:\n  bust: {over: bust, values: [80, 93.5]}\n")
	e := c.Ease(&c.Finished[0])
	if e[0] != measure.Of(-8, 1, measure.Centimetre) || e[1].In(measure.Centimetre).Cmp(big.NewRat(3, 2)) != 0 || c.Woven {
		t.Errorf("%v, woven %v", e, c.Woven)
	}
}

// TestPlacesAreCountedAsPeopleDo covers what shifts bytes and lines.
func TestPlacesAreCountedAsPeopleDo(t *testing.T) {
	for _, c := range []struct {
		src       string
		line, col int
	}{
		{"unit: in\nsizes: [8]\nbody:\n  a: {values: [x]}\n", 4, 16},
		{"\xef\xbb\xbfunit: furlong\nsizes: [8]\n", 1, 7},
		{"unit: in\r\nsizes: [8]\r\nbody:\r\n  a: {values: [x]}\r\n", 4, 16},
		{"unit: in\nsizes: [8]\nbody:\n  a: {name: Länge ½, values: [x]}\n", 4, 31},
		{"unit: in # a\u2028sizes: [8]\nbody:\n  a: {values: [x]}\n", 3, 16}, // YAML ends a line there, an editor does not
	} {
		_, fs := Read("sizes.yaml", []byte(c.src))
		if len(fs) != 1 || fs[0].Place.Start.Line != c.line || fs[0].Place.Start.Column != c.col {
			t.Errorf("%q: %s, want %d:%d", c.src, list(fs), c.line, c.col)
		}
	}
}

func list(fs []finding.Finding) string {
	var b strings.Builder
	for _, f := range fs {
		fmt.Fprintf(&b, "\n  %d:%d %s %s: %s", f.Place.Start.Line, f.Place.Start.Column, f.Severity, f.Rule, f.Headline)
	}
	return b.String()
}
