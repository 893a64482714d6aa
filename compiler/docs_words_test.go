package compiler_test

import (
	"strings"
	"testing"

	"seamwarden/compiler/check"
	"seamwarden/compiler/model"
)

// The lists of words that no exported table holds are tried one by one.
func TestDocsWords(t *testing.T) {
	p := readPage(t, "../dsl/LANGUAGE.md")
	for _, w := range p.listed(t, "directions") {
		b := &block{kind: "seam", words: []string{"step", ""}, text: "press side toward " + w + "\n", place: w}
		if _, _, found := b.compiled(t); len(found) > 0 {
			t.Errorf("%q is no direction", w)
		}
	}
	for w := range model.BraceWords {
		if !strings.Contains(p.text, "`{"+w+" ") && !strings.Contains(p.text, "`{"+w+"}`") {
			t.Errorf("the page does not explain {%s}", w)
		}
	}
}

// listed gives the words between two markers.
func (p *page) listed(t *testing.T, name string) []string {
	from, to := p.between(t, name)
	all := strings.Fields(strings.ReplaceAll(p.text[from:to], "`", " "))
	if len(all) == 0 {
		t.Errorf("%s: the list %s is empty", p.name, name)
	}
	return all
}

// Each finding in the page's last table is one of a rule, or is shown by a block.
func TestDocsFindings(t *testing.T) {
	p := readPage(t, "../dsl/LANGUAGE.md")
	shown := map[string]bool{}
	for i := range p.blocks {
		shown[p.blocks[i].wrong()] = true
	}
	from := strings.Index(p.text, "## What is said of a sentence")
	for line := range strings.Lines(p.text[from:]) {
		if cell := strings.Split(line, "|"); len(cell) == 4 && strings.Contains(cell[1], "`") {
			for _, rule := range strings.Fields(strings.NewReplacer("`", "", ",", " ").Replace(cell[1])) {
				if !shown[rule] && check.Find(rule) == nil {
					t.Errorf("no block of the page shows %s", rule)
				}
			}
		}
	}
}
