package measure

import (
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// everywhere is the plain way to find measures: the expression tried at every
// place of the text.
func everywhere(prose string) (all [][2]int) {
	inProse := regexp.MustCompile(aNumber + unitOrSign)
	for _, at := range inProse.FindAllStringIndex(prose, -1) {
		start, end := at[0], at[1]
		start += len(prose[start:end]) - len(strings.TrimLeftFunc(prose[start:end], isBlank))
		if !insideWord(prose[:start]) {
			all = append(all, [2]int{start, end})
		}
	}
	return
}

// What is found where a number may begin is what is found everywhere.
func TestFindAllLooksEverywhere(t *testing.T) {
	bits := []string{"1", "2", "15", "/", "⁄", ".", ",", "-", " ", "\u00a0", "\u2009", "½", "⅝", "¼", "³", "⁵", "⁄₈", "in", "inch", "cm", "mm", "m", "yd", "metres",
		"\"", "″", "”", "a", "B", "of", "(", ")", "é", "×", "5/8 in", "1 1/2in", "1.5 cm", "\n"}
	found := 0
	rapid.Check(t, func(t *rapid.T) {
		text := strings.Join(rapid.SliceOfN(rapid.SampledFrom(bits), 0, 14).Draw(t, "bits"), "")
		want := everywhere(text)
		got := FindAll(text)
		found += len(got)
		if len(got) != len(want) {
			t.Fatalf("%q: found %v, want %v", text, got, want)
		}
		for n, f := range got {
			if f.Start != want[n][0] || f.End != want[n][1] {
				t.Fatalf("%q: found %q, want %q", text, text[f.Start:f.End], text[want[n][0]:want[n][1]])
			}
		}
	})
	if found == 0 {
		t.Error("nothing was found in any text")
	}
}
