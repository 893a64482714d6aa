package outline

import "testing"

func TestSymmetric(t *testing.T) {
	grain := func(angle string) string {
		return `<line id="grain" x1="200" y1="200" x2="200" y2="260" transform="rotate(` + angle + ` 200 200)"/>`
	}
	for _, c := range []struct {
		in                   string
		along, across, other bool
	}{
		{`<rect id="r" x="100" y="100" width="200" height="300"/>` + grain("0"), true, true, false},
		{`<rect id="r" x="100" y="100" width="200" height="200"/>` + grain("0"), true, true, true},
		{`<rect id="r" x="100" y="100" width="200" height="200"/>` + grain("45"), true, true, true},
		{`<rect id="r" x="100" y="100" width="200" height="300"/>` + grain("45"), false, false, true},
		{`<path id="r" d="M100 100H300L350 400H50Z"/>` + grain("0"), true, false, false},
		{`<path id="r" d="M100 100H300L350 400H50Z"/>` + grain("90"), false, true, false},
		{`<path id="r" d="M100 100H300L352 400H50Z"/>` + grain("0"), false, false, false},
		{`<path id="r" d="M100 100H300L400 400H200Z"/>` + grain("0"), false, false, false}, // turned half round it is the same, mirrored it is not
		{`<path id="r" d="M100 100Q200 180 300 100L350 400H50Z"/>` + grain("0"), true, false, false},
		{`<path id="r" d="M100 100C150 180 260 180 300 100L350 400H50Z"/>` + grain("0"), false, false, false},
	} {
		var along, across, other bool
		for _, a := range drawn(t, c.in).Symmetric() {
			along, across, other = along || a.Along, across || a.Across, other || !a.Along && !a.Across
		}
		if along != c.along || across != c.across || other != c.other {
			t.Errorf("%s: along %v, across %v, other %v", c.in, along, across, other)
		}
	}
}

func TestSame(t *testing.T) {
	front := `<path id="neck" d="M100 100Q150 180 240 110"/><path id="side" d="M240 110L300 400"/><path id="hem" d="M300 400H100"/><path id="fold-side" data-edge="centre" d="M100 400V100"/>`
	a := drawn(t, front)
	for _, c := range []struct {
		in               string
		as, flipped      bool
		neck, neckMirror bool
	}{
		{front, true, false, true, false},
		{`<g transform="translate(400 0) rotate(33)">` + front + `</g>`, true, false, true, false},
		{`<g transform="translate(700 0) scale(-1 1)">` + front + `</g>`, false, true, false, true},
		{`<g transform="translate(700 0) rotate(70) scale(-1 1)">` + front + `</g>`, false, true, false, true},
		{`<g transform="scale(1.01)">` + front + `</g>`, false, false, false, false},
		{`<path id="neck" d="M100 100Q150 180 240 110"/><path id="side" d="M240 110L260 160"/><path id="low" d="M260 160Q150 230 100 150V100"/>`, false, false, true, false},
	} {
		b := drawn(t, c.in)
		if as, flipped := Same(a, b); as != c.as || flipped != c.flipped {
			t.Errorf("%s: the same %v, mirrored %v", c.in, as, flipped)
		}
		if as, flipped := SameEdge(a.Edge("neck"), b.Edge("neck")); as != c.neck || flipped != c.neckMirror {
			t.Errorf("%s: the neck is the same %v, mirrored %v", c.in, as, flipped)
		}
	}
	square := drawn(t, `<rect id="r" width="90" height="90"/>`)
	if as, flipped := Same(square, drawn(t, `<rect id="r" width="90" height="90" transform="rotate(20 300 300)"/>`)); !as || !flipped {
		t.Errorf("a square: %v, %v", as, flipped)
	}
}
