package compiler_test

import (
	"strings"
	"testing"

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
	_, values, _ := strings.Cut(p.text, "## Values in text\n")
	values, _, _ = strings.Cut(values, "\n## ")
	_, table, _ := strings.Cut(values, "|---|")
	table, _, _ = strings.Cut(table, "\n\n")
	for w := range model.BraceWords {
		if !strings.Contains(table, "`{"+w+" ") && !strings.Contains(table, "`{"+w+"}`") {
			t.Errorf("the table of values does not have {%s}", w)
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
