package figure

import "testing"

// labels reads the labels of a body without findings.
func labels(t *testing.T, body string) []*Label {
	t.Helper()
	var out []*Label
	for _, it := range read(t, svg(body)).Items {
		out = append(out, it.(*Label))
	}
	return out
}

func TestLabels(t *testing.T) {
	black := Paint{}
	for _, c := range []struct {
		in   string
		want []Label
	}{
		{`<text x="5" y="6">Cut  2
			<tspan>of main</tspan></text>`, []Label{{At: Point{5, 6}, Text: "Cut 2 of main", Size: 16, Anchor: "start", Fill: black}}},
		{`<text font-size="10" y="20" text-anchor="middle"> <tspan x="5">One</tspan> <tspan x="5" dy="1.2em">Two</tspan></text>`,
			[]Label{{At: Point{5, 20}, Text: "One", Size: 10, Anchor: "middle"}, {At: Point{5, 32}, Text: "Two", Size: 10, Anchor: "middle"}}},
		{`<text><tspan x="1" y="2">A</tspan><tspan x="3" y="4" font-weight="bold" fill="red">B</tspan></text>`,
			[]Label{{At: Point{1, 2}, Text: "A", Size: 16, Anchor: "start"}, {At: Point{3, 4}, Text: "B", Size: 16, Anchor: "start", Bold: true, Fill: Paint{R: 255}}}},
		{`<text x="1" y="2" dx="3" dy="4" font-style="italic">A</text>`, []Label{{At: Point{4, 6}, Text: "A", Size: 16, Anchor: "start", Italic: true}}},
		{`<g transform="translate(100 50) rotate(90) scale(2)"><text x="10" y="0" font-size="6pt">A</text></g>`,
			[]Label{{At: Point{100, 70}, Text: "A", Size: 16, Anchor: "start", Angle: 90}}},
		{`<g font-size="10"><text font-size="150%" transform="rotate(180)">A</text></g>`, []Label{{Text: "A", Size: 15, Anchor: "start", Angle: 180}}},
		{`<text> </text><text fill="none">x</text><text display="none">x</text><text visibility="hidden">x</text><text font-size="0">x</text>`, nil},
		{`<text x="1" y="1">fold<title>no</title></text>`, []Label{{At: Point{1, 1}, Text: "fold", Size: 16, Anchor: "start"}}},
	} {
		got := labels(t, c.in)
		if len(got) != len(c.want) {
			t.Errorf("%s: %d labels, want %d", c.in, len(got), len(c.want))
			continue
		}
		for i, l := range got {
			if *l != c.want[i] {
				t.Errorf("%s:\n got %+v\nwant %+v", c.in, *l, c.want[i])
			}
		}
	}
}

// TestLabelsThatCannotBePlaced checks what is kept of words that a line with one
// place and one style cannot hold.
func TestLabelsThatCannotBePlaced(t *testing.T) {
	for _, c := range []struct{ in, text, feature string }{
		{`<text y="9">Cut <tspan font-weight="bold">two</tspan> pieces</text>`, "Cut two pieces", "run"},
		{`<text y="9">H<tspan dy="-3">2</tspan>O</text>`, "H2O", "run"},
		{`<text y="9" x="0 10 20">abc</text>`, "abc", "letters"},
		{`<text y="9" textLength="50">abc</text>`, "abc", "letters"},
		{`<text y="9" transform="skewX(20)">abc</text>`, "abc", "slant"},
		{`<text y="9" transform="scale(-1 1)">abc</text>`, "abc", "slant"},
		{`<text y="9" stroke="red">abc</text>`, "abc", "outlined"},
		{`<text y="9" letter-spacing="2">abc</text>`, "abc", "spacing"},
		{`<text y="9" dominant-baseline="middle">abc</text>`, "abc", "baseline"},
		{`<text y="9">abc<textPath href="#p">def</textPath></text>`, "abc", "text-path"},
		{`<text y="9"><a href="#x">abc</a></text>`, "abc", "link"},
	} {
		d, fs := Read("f.svg", []byte(svg(c.in)))
		if len(fs) != 1 || fs[0].Headline != features[c.feature].headline+"." {
			t.Errorf("%s: findings %v", c.in, fs)
			continue
		}
		if len(d.Items) != 1 || d.Items[0].(*Label).Text != c.text {
			t.Errorf("%s: items %v", c.in, d.Items)
		}
		again(t, d)
	}
}
