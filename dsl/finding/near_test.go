package finding

import (
	"strings"
	"testing"
)

// The distances of the first four pairs are the usual textbook examples of edit
// distance (recalled from memory); swaps count one, as in Damerau 1964.
func TestDistance(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{
		{"kitten", "sitting", 3}, {"saturday", "sunday", 3}, {"flaw", "lawn", 2}, {"", "abc", 3},
		{"sew", "swe", 1}, {"ca", "abc", 3}, {"hem", "hem", 0}, {"édge", "edge", 1},
	} {
		for _, pair := range [][2]string{{c.a, c.b}, {c.b, c.a}} {
			if got := distance([]rune(pair[0]), []rune(pair[1]), 9); got != c.want {
				t.Errorf("%s to %s: got %d, want %d", pair[0], pair[1], got, c.want)
			}
		}
	}
	if got := distance([]rune("kitten"), []rune("sitting"), 1); got != 2 {
		t.Errorf("beyond the limit: got %d", got)
	}
}

func TestNearest(t *testing.T) {
	words := []string{"caution", "change", "option", "piece", "pleat", "press", "seam", "sew", "tuck", "understitch"}
	for in, want := range map[string]string{
		"optoin": "option", "peice": "piece", "swe": "sew", "Piece": "piece", "preess": "press", "understich": "understitch",
		"underlining": "", "understiching": "", "xy": "", "hem": "", "": "", strings.Repeat("piece", 20): "", "cange": "change",
	} {
		if got := Nearest(in, words); got != want {
			t.Errorf("%s: got %q, want %q", in, got, want)
		}
	}
	if got := Nearest("bat", []string{"rat", "cat"}); got != "cat" {
		t.Errorf("of equals the first in the alphabet is meant, not %q", got)
	}
}
