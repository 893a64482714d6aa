package check

import "testing"

// TestSentences counts by the rules of ASD-STE100 as recalled: twenty words pass
// where something is to be done, and one more does not.
func TestSentences(t *testing.T) {
	for _, c := range []struct {
		text string
		want []int
	}{
		{"Press the hem.", []int{3}},
		{"Press the hem. Turn it!", []int{3, 2}},
		{"Trim to 0.5 cm at the half-way mark.", []int{7 + 1}},
		{"The allowance is {allow side} wide.", []int{5}},
		{"Press (not too hot) the hem.", []int{3}},
		{"1. Hold it flat.\n2. Pull.", []int{1, 3, 1, 1}},
		{"One - two – three", []int{3}},
		{"", nil},
	} {
		var got []int
		for _, s := range sentencesIn(c.text) {
			got = append(got, wordCount(c.text[s[0]:s[1]]))
		}
		if len(got) != len(c.want) {
			t.Errorf("%q: %v, want %v", c.text, got, c.want)
			continue
		}
		for i := range got {
			if got[i] != c.want[i] {
				t.Errorf("%q: %v, want %v", c.text, got, c.want)
			}
		}
	}
}
