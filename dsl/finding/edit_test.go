package finding

import (
	"errors"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func edit(from, to int, text string) Edit {
	return Edit{Span: Span{File: "a.seam", Start: Pos{Offset: from}, End: Pos{Offset: to}}, New: text}
}

func TestApply(t *testing.T) {
	const src = "cut 2 main – slowly"
	elsewhere := edit(0, 0, "x")
	elsewhere.Span.File = "b.seam"
	cases := []struct {
		name  string
		edits []Edit
		want  string
		err   error
	}{
		{"none", nil, src, nil},
		{"one", []Edit{edit(4, 5, "3")}, "cut 3 main – slowly", nil},
		{"in any order", []Edit{edit(6, 10, "lining"), edit(0, 3, "CUT")}, "CUT 2 lining – slowly", nil},
		{"side by side", []Edit{edit(3, 5, ""), edit(0, 3, "x")}, "x main – slowly", nil},
		{"put in at one place, in their order", []Edit{edit(4, 4, "a"), edit(4, 4, "b")}, "cut ab2 main – slowly", nil},
		{"put in before what is replaced", []Edit{edit(4, 5, "3"), edit(4, 4, "about ")}, "cut about 3 main – slowly", nil},
		{"put in after what is replaced", []Edit{edit(5, 5, "!"), edit(4, 5, "3")}, "cut 3! main – slowly", nil},
		{"at the end", []Edit{edit(len(src), len(src), ".")}, src + ".", nil},
		{"the same text twice", []Edit{edit(4, 6, ""), edit(5, 7, "")}, src, errOverlap},
		{"put in inside what is replaced", []Edit{edit(0, 5, ""), edit(2, 2, "x")}, src, errOverlap},
		{"past the end", []Edit{edit(0, len(src)+1, "")}, src, errOutside},
		{"before the beginning", []Edit{edit(-1, 0, "")}, src, errOutside},
		{"backwards", []Edit{edit(5, 4, "")}, src, errOutside},
		{"inside a dash", []Edit{edit(12, 12, "x")}, src, errInCharacter},
		{"two files", []Edit{edit(0, 0, "x"), elsewhere}, src, errSeveralFiles},
	}
	for _, c := range cases {
		got, err := Apply(src, c.edits)
		if got != c.want || !errors.Is(err, c.err) {
			t.Errorf("%s: %q, %v; want %q, %v", c.name, got, err, c.want, c.err)
		}
	}
}

// TestApplyAsAPersonWould compares with the slowest way: go along the text, put in
// what is put in here, then copy the sign unless an edit takes it away.
func TestApplyAsAPersonWould(t *testing.T) {
	fine, refused := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		src := rapid.StringMatching(`[a-e]{0,12}`).Draw(t, "source")
		var edits []Edit
		for range rapid.IntRange(0, 4).Draw(t, "edits") {
			from := rapid.IntRange(0, len(src)).Draw(t, "from")
			to := rapid.IntRange(from, min(len(src), from+4)).Draw(t, "to")
			edits = append(edits, edit(from, to, rapid.StringMatching(`[A-Z]{0,3}`).Draw(t, "new")))
		}
		want, clash := plainApply(src, edits)
		got, err := Apply(src, edits)
		switch {
		case clash && (err == nil || got != src):
			t.Fatalf("%+v in %q: %q, %v; they clash", edits, src, got, err)
		case !clash && (err != nil || got != want):
			t.Fatalf("%+v in %q: %q, %v; want %q", edits, src, got, err, want)
		}
		if clash {
			refused++
		} else {
			fine++
		}
	})
	if fine == 0 || refused == 0 {
		t.Errorf("%d sets were made and %d refused: one side was not tried", fine, refused)
	}
}

func plainApply(src string, edits []Edit) (out string, clash bool) {
	taken := make([]int, len(src)+1)
	for _, e := range edits {
		for i := e.Span.Start.Offset; i < e.Span.End.Offset; i++ {
			taken[i]++
			clash = clash || taken[i] > 1
		}
	}
	var b strings.Builder
	for i := 0; i <= len(src); i++ {
		for _, empty := range []bool{true, false} {
			for _, e := range edits {
				from, to := e.Span.Start.Offset, e.Span.End.Offset
				if from == i && (from == to) == empty {
					b.WriteString(e.New)
				}
				clash = clash || from == to && insideOf(from, edits)
			}
		}
		if i < len(src) && taken[i] == 0 {
			b.WriteByte(src[i])
		}
	}
	return b.String(), clash
}

func insideOf(at int, edits []Edit) bool {
	for _, e := range edits {
		if e.Span.Start.Offset < at && at < e.Span.End.Offset {
			return true
		}
	}
	return false
}

func TestFixes(t *testing.T) {
	named := func(title string, certain bool, from int) Edit {
		e := edit(from, from, "x")
		e.Title, e.Certain = title, certain
		return e
	}
	f := Finding{Edits: []Edit{named("a pair", true, 1), named("alike", true, 2), named("a pair", false, 3), named("a pair", true, 1)}}
	got := f.Fixes()
	if len(got) != 2 || got[0].Title != "a pair" || len(got[0].Edits) != 2 || got[0].Certain || got[1].Title != "alike" || !got[1].Certain {
		t.Errorf("%+v", got)
	}
	if none := (Finding{}).Fixes(); none != nil {
		t.Errorf("a finding without edits has the fixes %+v", none)
	}
}
