package figure

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// number draws a number as people and programs write them.
func number(t *rapid.T) string {
	return rapid.OneOf(
		rapid.Map(rapid.IntRange(-300, 300), func(n int) string { return fmt.Sprint(n) }),
		rapid.Map(rapid.Float64Range(-1e3, 1e3), func(v float64) string { return fmt.Sprint(v) }),
		rapid.SampledFrom([]string{"0", "-0", ".5", "1e-9", "-.0005", "0.0005", "1e6", "1e7", "3.", "+2"}),
	).Draw(t, "number")
}

func numbers(t *rapid.T, n int) string {
	out := make([]string, n)
	for i := range out {
		out[i] = number(t)
	}
	return strings.Join(out, " ")
}

// pathOf draws path data with every command.
func pathOf(t *rapid.T) string {
	d := "M" + numbers(t, 2)
	for range rapid.IntRange(0, 6).Draw(t, "commands") {
		op := rapid.SampledFrom([]byte("MmLlHhVvCcSsQqTtAaZz")).Draw(t, "command")
		switch n := arguments(upper(op)); n {
		case 7:
			d += fmt.Sprintf("%c%s %s%s%s", op, numbers(t, 3), rapid.SampledFrom([]string{"00", "01", "10", "11"}).Draw(t, "flags"), " ", numbers(t, 2))
		default:
			d += string(op) + numbers(t, n)
		}
	}
	return d
}

func transformOfKind(t *rapid.T) string {
	kind := rapid.SampledFrom([]struct {
		name string
		n    int
	}{{"translate", 2}, {"scale", 1}, {"scale", 2}, {"rotate", 1}, {"rotate", 3}, {"skewX", 1}, {"skewY", 1}, {"matrix", 6}}).Draw(t, "transform")
	return fmt.Sprintf(`transform="%s(%s)"`, kind.name, numbers(t, kind.n))
}

// body draws an element, or a group of some.
func body(t *rapid.T, depth int) string {
	style := rapid.SampledFrom([]string{"", `fill="none"`, `stroke="#123"`, `stroke="red" stroke-width="0.7" stroke-dasharray="1 .3 2.22" stroke-dashoffset="-17.5"`,
		`style="fill-rule:evenodd;stroke:blue;stroke-linecap:round"`, `font-size="7.3" font-weight="bold"`, `text-anchor="middle"`, transformOfKind(t), transformOfKind(t)}).Draw(t, "style")
	switch rapid.IntRange(0, 6).Draw(t, "kind") {
	case 0:
		return fmt.Sprintf(`<text x="%s" y="%s" %s>%s</text>`, number(t), number(t), style, rapid.SampledFrom([]string{"fold", "a &amp; b", "  ⅝ in <tspan>x</tspan>\n"}).Draw(t, "words"))
	case 1:
		return fmt.Sprintf(`<ellipse cx="%s" cy="%s" rx="%d" ry="%d" %s/>`, number(t), number(t), rapid.IntRange(0, 90).Draw(t, "rx"), rapid.IntRange(0, 90).Draw(t, "ry"), style)
	case 2:
		return fmt.Sprintf(`<rect x="%s" y="%s" width="%d" height="7" rx="3" %s/>`, number(t), number(t), rapid.IntRange(0, 90).Draw(t, "width"), style)
	case 3, 4:
		return fmt.Sprintf(`<path d="%s" %s/>`, pathOf(t), style)
	}
	if depth == 0 {
		return ""
	}
	return fmt.Sprintf(`<g %s>%s%s</g>`, style, body(t, depth-1), body(t, depth-1))
}

// TestAnyDrawingComesBack reads made-up drawings: whatever survives is written,
// read and written again without a change.
func TestAnyDrawingComesBack(t *testing.T) {
	items := 0
	rapid.Check(t, func(rt *rapid.T) {
		box := rapid.SampledFrom([]string{"0 0 200 100", "-3 4.5 0.013 0.7", "1e3 1e3 1e6 99.99951"}).Draw(rt, "box")
		src := fmt.Sprintf(`<svg viewBox="%s">%s</svg>`, box, body(rt, 4))
		d, fs := Read("f.svg", []byte(src))
		sound(t, []byte(src), d, fs)
		if d != nil {
			items += len(d.Items)
		}
	})
	if items == 0 {
		t.Error("nothing came through: the check is empty")
	}
}
