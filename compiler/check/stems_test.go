package check

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// Whatever the expression finds, one of its stems is in the text.
func TestClaimStems(t *testing.T) {
	bits := []string{"high", "hi", "-", " ", "vis", "visibility", "PPE", "ppe", "zipper", "protective", "clothing", "wear", "safety", "garment", "Flame", "fire", "proof",
		"resistant", "retardant", "choke", "child", "safe", "CE", "ce", "mark", "marked", "Certified", "complies", "comply", "with", "meets", "meet", "conform to", "tested to", "the",
		"standard", "EN", "iso", "CPSIA", ".", "not"}
	found := 0
	rapid.Check(t, func(t *rapid.T) {
		text := strings.Join(rapid.SliceOfN(rapid.SampledFrom(bits), 1, 10).Draw(t, "bits"), rapid.SampledFrom([]string{" ", ""}).Draw(t, "gap"))
		if claiming.MatchString(text) {
			found++
			if !claimStems.in(text) {
				t.Fatalf("%q claims, and has no stem", text)
			}
		}
	})
	if found == 0 {
		t.Error("no text claimed anything")
	}
}
