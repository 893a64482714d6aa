package measure

import (
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// The form of a number, as one expression.
var numberForm = regexp.MustCompile(`^(?:(\d+)(?:\.(\d+))?|(?:(\d+)(?: +|-))?(\d+)/(\d+))$`)

func TestReadNumberFollowsItsForm(t *testing.T) {
	read := 0
	rapid.Check(t, func(t *rapid.T) {
		text := strings.Join(rapid.SliceOfN(rapid.SampledFrom([]string{"1", "20", "5", ".", "/", " ", "-", "½", "a"}), 0, 8).Draw(t, "text"), "")
		m := numberForm.FindStringSubmatch(text)
		n, ok := readNumber(text)
		if ok != (m != nil) {
			t.Fatalf("%q: read %v, want %v", text, ok, m != nil)
		}
		if !ok {
			return
		}
		read++
		if want := (number{whole: m[1] + m[3], decimals: m[2], num: m[4], den: m[5], text: text}); n != want {
			t.Fatalf("%q: %+v, want %+v", text, n, want)
		}
	})
	if read == 0 {
		t.Error("no text was a number")
	}
}
