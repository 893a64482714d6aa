package size

import (
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// The form of a size's name, as one expression.
func TestSizeForm(t *testing.T) {
	form := regexp.MustCompile(`^[\p{L}\p{N}](?:[\p{L}\p{N} .,/+½-]{0,18}[\p{L}\p{N}+½])?$`)
	good := 0
	rapid.Check(t, func(t *rapid.T) {
		name := strings.Join(rapid.SliceOfN(rapid.SampledFrom([]string{"8", "XS", "é", "²", "½", " ", ".", ",", "/", "+", "-", "_", "\n", "10", "long"}), 0, 12).Draw(t, "name"), "")
		if form.MatchString(name) != sizeForm(name) {
			t.Fatalf("%q: %v, want %v", name, sizeForm(name), form.MatchString(name))
		}
		if sizeForm(name) {
			good++
		}
	})
	if good == 0 {
		t.Error("no name was good")
	}
}
