package size

import "testing"

// TestKeyForm asserts which names the source can say after sizes.: letters and
// digits that begin with a letter, single hyphens between them.
func TestKeyForm(t *testing.T) {
	for key, fits := range map[string]bool{
		"bust": true, "back-length": true, "a1-2b": true, "B": true, "a-1": true,
		"": false, "-": false, "-a": false, "a-": false, "a--b": false, "1a": false, "a b": false, "ä": false, "a_b": false,
	} {
		if keyForm(key) != fits {
			t.Errorf("%q: %v", key, !fits)
		}
	}
}
