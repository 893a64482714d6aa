package report

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"slices"
	"strings"

	"seamwarden/dsl/finding"
)

// A fingerprint says that a finding is the same one as in an earlier run, though
// lines were put in above it. It is made from the rule, the name of the file in
// its folder, the text of the line without regard to blanks, and how many equal
// ones stand before it in the file: without the last, two equal lines would be
// one finding. It changes when the file is renamed or the line reworded. Its
// length is 32 signs.
const fingerprintVersion = "1"

// prints are the fingerprints of a folder's findings.
type prints struct{ findings, accepted []string }

// prints counts equal lines over all findings, so that accepting one leaves the
// fingerprints of the others alone.
func (f Folder) prints() prints {
	all := slices.Clone(f.Findings)
	for _, a := range f.Accepted {
		all = append(all, a.Finding)
	}
	order := make([]int, len(all))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return all[a].Place.Start.Offset - all[b].Place.Start.Offset })
	before := map[string]int{}
	out := make([]string, len(all))
	for _, i := range order {
		p := all[i].Place
		what := hash(fingerprintVersion, all[i].Rule, p.File, lineOf(f.Sources[p.File], p.Start))
		out[i] = hash(what, fmt.Sprint(before[what]))
		before[what]++
	}
	n := len(f.Findings)
	return prints{out[:n], out[n:]}
}

// lineOf gives the line on which a place begins, with one space for each run of
// blanks and none at its ends; "" if the place or its source is not known.
func lineOf(src string, p finding.Pos) string {
	if p.Line == 0 || p.Offset < 0 || p.Offset > len(src) {
		return ""
	}
	from := strings.LastIndexByte(src[:p.Offset], '\n') + 1
	line, _, _ := strings.Cut(src[from:], "\n")
	return strings.Join(strings.Fields(strings.TrimPrefix(line, "\ufeff")), " ")
}

// hash mixes texts so that no two lists of them run together.
func hash(texts ...string) string {
	h := sha256.New()
	for _, s := range texts {
		fmt.Fprintf(h, "%d:%s", len(s), s)
	}
	return hex.EncodeToString(h.Sum(nil)[:16])
}
