package dsl

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// expectation is what a line of a broken sample must bring about. It is written
// on the line after //! and cut out before the sample is read:
//
//	cut two main  //! part of the headline @ the words that are marked
//
// With //!+ the sentence keeps its node all the same.
type expectation struct {
	headline, marked string
	kept             bool
}

// expectations parts a sample from the notes on its lines.
func expectations(sample string) (src string, want map[int]expectation) {
	want = map[int]expectation{}
	var lines []string
	for i, line := range strings.Split(sample, "\n") {
		code, note, ok := strings.Cut(line, "  //!")
		if ok {
			note, kept := strings.CutPrefix(note, "+")
			headline, marked, _ := strings.Cut(strings.TrimPrefix(note, " "), " @ ")
			want[i+1] = expectation{headline, marked, kept}
		}
		lines = append(lines, code)
	}
	return strings.Join(lines, "\n"), want
}

// TestSlips reads samples with the slips of a tired designer: each must give one
// finding at its place, and every good sentence around it keeps its node.
func TestSlips(t *testing.T) {
	files, err := filepath.Glob("../testdata/syntax/*.seam")
	if err != nil || len(files) == 0 {
		t.Fatal("no samples", err)
	}
	slips := 0
	for _, name := range files {
		sample, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		src, want := expectations(string(sample))
		slips += len(want)
		t.Run(filepath.Base(name), func(t *testing.T) {
			f := Parse(filepath.Base(name), []byte(src))
			checkFindings(t, f, want)
			checkNodes(t, f.Sentences, want)
		})
	}
	if slips < 90 {
		t.Errorf("only %d slips are tried", slips)
	}
}

func checkFindings(t *testing.T, f *File, want map[int]expectation) {
	t.Helper()
	got := map[int]int{}
	for _, x := range f.Findings {
		line := x.Place.Start.Line
		got[line]++
		w, ok := want[line]
		marked := f.Source[x.Place.Start.Offset:x.Place.End.Offset]
		told := fmt.Sprintf("%d: %s | %s | %s | %s", line, x.Headline, marked, x.Place.Label, x.Help)
		switch {
		case !ok:
			t.Errorf("not expected: %s", told)
		case got[line] > 1:
			t.Errorf("second finding: %s", told)
		case !strings.Contains(x.Headline, w.headline):
			t.Errorf("want %q, got %s", w.headline, told)
		case marked != w.marked:
			t.Errorf("want %q marked, got %s", w.marked, told)
		}
		if testing.Verbose() {
			t.Log(told)
		}
	}
	for line, w := range want {
		if got[line] == 0 {
			t.Errorf("line %d: nothing found, want %q", line, w.headline)
		}
	}
}

func checkNodes(t *testing.T, body []*Sentence, want map[int]expectation) {
	t.Helper()
	for _, s := range body {
		line := s.opening().Start.Line
		if w, slip := want[line]; s.Node == nil && (!slip || w.kept) {
			t.Errorf("line %d: the sentence %s has lost its node", line, title(s))
		}
		checkNodes(t, s.Body, want)
	}
}
