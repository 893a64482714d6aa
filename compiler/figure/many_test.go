package figure

import (
	"fmt"
	"strings"
	"testing"
)

// Settings are found again however many there are: the last one counts, and the
// size of the letters comes first.
func TestManyDeclarations(t *testing.T) {
	for _, n := range []int{3, 15, 16, 17, 40, 3000} {
		var style strings.Builder
		for i := range n {
			fmt.Fprintf(&style, "x%d:1;", i)
		}
		text := style.String() + "font-size:3;x1:7;" + fmt.Sprintf("x%d:8;", n-1)
		r := &reader{text: newSource("a.svg", []byte(text))}
		out := r.declarations(&tag{text: r.text, attrs: []attr{{text: r.text, name: "style", value: text}}})
		got := map[string]string{}
		for _, a := range out {
			if _, twice := got[a.name]; twice {
				t.Fatalf("of %d settings %s stands twice", n, a.name)
			}
			got[a.name] = a.value
		}
		if len(out) != n+1 || out[0].name != "font-size" || got["x1"] != "7" || got[fmt.Sprintf("x%d", n-1)] != "8" || got["x0"] != "1" {
			t.Errorf("of %d settings there are %d, first %s, %s and %s", n, len(out), out[0].name, got["x1"], got[fmt.Sprintf("x%d", n-1)])
		}
	}
}
