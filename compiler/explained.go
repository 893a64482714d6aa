package compiler

import (
	"slices"

	"seamwarden/dsl/finding"
)

// unexplained leaves out what was said while the pattern was read and what a rule
// explains better: of a piece that is laid on the fold at the wrong edge the other edges
// are there once and not twice, and no seam knows where they go.
func unexplained(read, judged []finding.Finding) []finding.Finding {
	folded := slices.ContainsFunc(judged, func(f finding.Finding) bool {
		return f.Rule == "fold-edge-not-straight" || f.Rule == "grain-not-along-the-fold"
	})
	return slices.DeleteFunc(read, func(f finding.Finding) bool { return folded && f.Rule == "pair-in-a-row" })
}
