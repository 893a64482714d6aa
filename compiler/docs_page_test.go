package compiler_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// page is one file of the reference, cut at its blocks.
type page struct {
	name   string
	text   string
	blocks []block
	edits  []edit
}

type edit struct {
	from, to int
	text     string
}

// block is one fenced block: its kind, the other words of its fence, its text.
type block struct {
	kind, text string
	words      []string
	place      string
	before     string // the line of text above its fence
	from, to   int    // of the text, in the page
}

func readPage(t *testing.T, name string) *page {
	data, err := os.ReadFile(name)
	if os.IsNotExist(err) && filepath.Base(name) == "README.md" {
		t.Skip("there is no README.md yet")
	}
	if err != nil {
		t.Fatal(err)
	}
	p := &page{name: name, text: string(data)}
	at, line, before := 0, 0, ""
	var open *block
	for text := range strings.Lines(p.text) {
		line++
		switch fence := strings.HasPrefix(text, "```"); {
		case fence && open == nil:
			words := append(strings.Fields(text[3:]), "")
			open = &block{kind: words[0], words: words[1:], place: fmt.Sprintf("%s:%d", filepath.Base(name), line+1), before: before, from: at + len(text)}
		case fence:
			open.to = at
			open.text = p.text[open.from:open.to]
			p.blocks = append(p.blocks, *open)
			open = nil
		case strings.TrimSpace(text) != "":
			before = strings.TrimSpace(text)
		}
		at += len(text)
	}
	if open != nil {
		t.Fatalf("%s: the block is never closed", open.place)
	}
	return p
}

func (b *block) has(word string) bool {
	for _, w := range b.words {
		if w == word {
			return true
		}
	}
	return false
}

// wrong gives the rule that a block must break, "" for a good one.
func (b *block) wrong() string {
	for i, w := range b.words {
		if w == "wrong" {
			return b.words[i+1]
		}
	}
	return ""
}

// frame names the file that a fragment is put into, "" for a whole pattern.
func (b *block) frame() string {
	if b.kind != "seam" || b.words[0] == "wrong" || b.words[0] == "unchecked" {
		return ""
	}
	return b.words[0]
}

// framed gives the whole source of a block, the line on which it begins and how
// far it is set in. A frame holds PREAMBLE and HERE, each on a line of its own.
func (b *block) framed(t *testing.T) (src string, first, indent int) {
	if b.frame() == "" {
		return b.text, 1, 0
	}
	read := func(name string) string {
		data, err := os.ReadFile("testdata/docs/" + name + ".seam")
		if err != nil {
			t.Fatalf("%s: there is no frame of that name: %v", b.place, err)
		}
		return string(data)
	}
	src = strings.Replace(read(b.frame()), "PREAMBLE\n", read("preamble"), 1)
	before, after, ok := strings.Cut(src, "HERE\n")
	if !ok {
		t.Fatalf("the frame %s has no line HERE", b.frame())
	}
	indent = len(before) - strings.LastIndexByte(before, '\n') - 1
	margin := strings.Repeat(" ", indent)
	text := strings.ReplaceAll(strings.TrimSuffix(b.text, "\n"), "\n", "\n"+margin)
	return before + strings.ReplaceAll(text, "\n"+margin+"\n", "\n\n") + "\n" + after, strings.Count(before, "\n") + 1, indent
}

// want compares a block with what the program makes of it today.
func (p *page) want(t *testing.T, b *block, text string) {
	if b.text == text {
		return
	}
	if *updateDocs {
		p.edits = append(p.edits, edit{b.from, b.to, text})
		return
	}
	t.Errorf("%s: the page is not what the program says today; run go test ./compiler -run Docs -update. It says:\n%s", b.place, text)
}

// save writes the page with what has changed.
func (p *page) save(t *testing.T) {
	for i := len(p.edits) - 1; i >= 0; i-- {
		e := p.edits[i]
		p.text = p.text[:e.from] + e.text + p.text[e.to:]
	}
	if len(p.edits) > 0 {
		if err := os.WriteFile(p.name, []byte(p.text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}
