package finding

import "strings"

// longestName is the longest word, in bytes, that is compared at all.
const longestName = 60

// Nearest gives the candidate that a misspelt word most likely means, or "". The
// cut-off grows with the word: one slip in three to five letters, two in six, three
// in ten and more. A swap of neighbours is one slip. Of equals the first in the
// alphabet is taken.
func Nearest(word string, candidates []string) string {
	if len(word) > longestName {
		return ""
	}
	w := []rune(strings.ToLower(word))
	best, found := cutOff(len(w))+1, ""
	for _, c := range candidates {
		if len(c) > longestName {
			continue
		}
		d := distance(w, []rune(strings.ToLower(c)), best)
		if d < best || d == best && found != "" && c < found {
			best, found = d, c
		}
	}
	return found
}

func cutOff(letters int) int {
	switch {
	case letters < 3:
		return 0
	case letters < 6:
		return 1
	case letters < 10:
		return 2
	}
	return 3
}

// distance is the optimal string alignment distance (insert, delete, change, or
// swap of neighbours); what is farther than limit counts as limit+1.
func distance(x, y []rune, limit int) int {
	if len(x)-len(y) > limit || len(y)-len(x) > limit {
		return limit + 1
	}
	before, last := make([]int, len(y)+1), make([]int, len(y)+1)
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(x); i++ {
		row := make([]int, len(y)+1)
		row[0] = i
		for j := 1; j <= len(y); j++ {
			cost := 1
			if x[i-1] == y[j-1] {
				cost = 0
			}
			row[j] = min(last[j]+1, row[j-1]+1, last[j-1]+cost)
			if i > 1 && j > 1 && x[i-1] == y[j-2] && x[i-2] == y[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
		before, last = last, row
	}
	return min(last[len(y)], limit+1)
}
