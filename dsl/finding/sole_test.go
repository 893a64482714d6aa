package finding

import "testing"

func TestSole(t *testing.T) {
	for _, c := range []struct {
		word       string
		candidates []string
		want       string
	}{
		{"symetric", []string{"symmetric", "separate"}, "symmetric"},
		{"fornt", []string{"front", "front", "back"}, "front"},
		{"sead", []string{"seam", "seat"}, ""},
		{"frnt", []string{"front", "foot"}, "front"},
		{"panel-lett", []string{"panel-left", "panel-less"}, ""},
		{"zebra", []string{"front"}, ""},
		{"he", []string{"hem"}, ""},
		{"front", nil, ""},
	} {
		if got := Sole(c.word, c.candidates); got != c.want {
			t.Errorf("%s among %v: %q, want %q", c.word, c.candidates, got, c.want)
		}
	}
}
