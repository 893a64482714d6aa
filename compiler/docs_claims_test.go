package compiler_test

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"seamwarden/compiler/model"
)

// Two tables of MODEL.md are worked examples; their rows are tried.

var inTicks = regexp.MustCompile("`([^`]+)`")

// rows gives the rows of the table whose head begins so, each as its two cells.
func (p *page) rows(t *testing.T, head string) (rows [][2]string) {
	_, table, ok := strings.Cut(p.text, "| "+head+" |")
	if !ok {
		t.Fatalf("%s has no table %q", p.name, head)
	}
	for line := range strings.Lines(table) {
		cell := strings.Split(strings.TrimSpace(line), "|")
		switch {
		case strings.TrimSpace(line) == "":
			return rows
		case len(cell) == 4 && strings.Contains(cell[1], "`"):
			rows = append(rows, [2]string{strings.TrimSpace(cell[1]), strings.TrimSpace(cell[2])})
		}
	}
	return rows
}

func ticked(s string) (all []string) {
	for _, m := range inTicks.FindAllStringSubmatch(s, -1) {
		all = append(all, m[1])
	}
	return
}

// model compiles a fragment in a frame.
func modelOf(t *testing.T, frame, text string) *model.Pattern {
	b := &block{kind: "seam", words: []string{frame, ""}, text: text + "\n", place: text}
	_, r, found := b.compiled(t)
	if r == nil || len(found) > 0 {
		t.Fatalf("%s: %v", text, found)
	}
	return r.Pattern
}

func TestDocsCutParts(t *testing.T) {
	counts := map[string]int{"one": 1, "two": 2, "three": 3}
	rows := readPage(t, "MODEL.md").rows(t, "Cut line")
	if len(rows) < 4 {
		t.Errorf("the table of cut lines has %d rows", len(rows))
	}
	for _, row := range rows {
		p := modelOf(t, "piece", "edges centre, hem, side\n  "+ticked(row[0])[0])
		var got []string
		for _, i := range p.Pieces[len(p.Pieces)-1].Instances() {
			got = append(got, strings.TrimPrefix(i.Path(), "sample"))
		}
		want := ticked(row[1])
		if len(want) == 0 {
			want = make([]string, counts[strings.Trim(strings.Fields(row[1])[0], ";,")])
		}
		if !slices.Equal(got, want) {
			t.Errorf("%s: the page says %q, the model has %q", row[0], want, got)
		}
	}
}

func TestDocsEdgeUses(t *testing.T) {
	counts := map[string]int{"one": 1, "two": 2}
	rows := readPage(t, "MODEL.md").rows(t, "Edge")
	if len(rows) < 3 {
		t.Errorf("the table of edges has %d rows", len(rows))
	}
	for _, row := range rows {
		want, counted := counts[strings.Fields(row[1])[0]]
		for _, edge := range ticked(row[0]) {
			p := modelOf(t, "step", "mark back."+edge)
			ops := p.Ops()
			uses := ops[len(ops)-1].Objects[0].Uses
			var paths []string
			for _, u := range uses {
				paths = append(paths, fmt.Sprint(u.Path()))
			}
			if counted && len(uses) != want {
				t.Errorf("back.%s: the page says %d, the model has %v", edge, want, paths)
			}
			if folded := !counted; folded && ops[len(ops)-1].Objects[0].Instances[0].Cut.Lay.FoldEdge.ID != edge {
				t.Errorf("back.%s is not the fold", edge)
			}
		}
	}
}
