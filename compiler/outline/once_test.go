package outline

import (
	"strings"
	"testing"
)

// One slip in all sizes is one finding that names them.
func TestOnceForAllSizes(t *testing.T) {
	open := func(size, w string) string {
		return `<g id="size-` + size + `"><path id="a_` + size + `" d="M0 0H` + w + `"/><path id="b_` + size + `" d="M` + w + ` 0V100L0 7"/></g>`
	}
	says(t, inMM(open("S", "100")+open("M", "120")+open("L", "140")), "2:26", RuleRing, "not closed in sizes S, M, L: from the b edge to the a edge there is a gap of 7.0 mm")
	whole := `<path id="a" d="M0 0H100V50Z"/>`
	src := strings.Replace(inMM(`<g id="size-S">`+whole+`</g><g id="size-M">`+whole+`</g>`), ` data-allowance="none"`, "", 1)
	says(t, src, "1:1", RuleAllowance, "does not say whether it includes the allowance")
}

// Where an edge is missing, the line that would fit is shown: one without a name, or one
// whose name makes something else of it.
func TestLineThatWouldFit(t *testing.T) {
	rest := `<path id="a" d="M0 0H100V100"/><path id="b" d="M0 100V0"/>`
	for _, c := range []struct{ line, help string }{
		{`<path d="M0 100H100"/>`, "has no id: give it the name of its edge"},
		{`<path id="fold-side" d="M100 100H0"/>`, `read as a fold line, because of how its id begins. If it is an edge, add data-edge="fold-side"`},
		{`<path id="grain" d="M100 100H0"/>`, `read as a grain line`},
		{`<path d="M0 90H100"/>`, "Move the ends onto one another"},
		{`<path d="M0 100H100X"/>`, "Move the ends onto one another"}, // what cannot be read and is not looked for is no mistake
	} {
		_, found := ReadSVG("o.svg", []byte(inMM(rest+c.line)))
		if len(found) != 1 || found[0].Rule != RuleRing || !strings.Contains(found[0].Help, c.help) {
			t.Errorf("%s: want one finding that helps with %q, got %v", c.line, c.help, found)
		}
	}
}

// A size whose group is not named as one would belong to all the others.
func TestSizeAstray(t *testing.T) {
	size := func(group string) string { return `<g ` + group + `><path id="a" d="M0 0H100V50Z"/></g>` }
	says(t, inMM(size(`id="size-S"`)+size(`id="M"`)), "2:71", RuleName, "The a edge is drawn outside every size, and in size S as well")
}
