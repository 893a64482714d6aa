package finding

import "strings"

// Nearest gives the candidate that a misspelt word most likely means, or "". The
// cut-off grows with the word: one slip in four letters, two in six, three in
// ten. A swap of neighbours is one slip.
func Nearest(word string, candidates []string) string {
	limit := 1 + len(word)/6
	if len(word) < 3 {
		limit = 0
	} else if len(word) >= 6 {
		limit = 1 + len(word)/5
	}
	best, found := limit+1, ""
	w := strings.ToLower(word)
	for _, c := range candidates {
		d := distance(w, strings.ToLower(c), best)
		if d < best || d == best && d <= limit && c < found {
			best, found = d, c
		}
	}
	return found
}

// distance is the optimal string alignment distance (insert, delete, change, or
// swap of neighbours), given up at limit.
func distance(a, b string, limit int) int {
	x, y := []rune(a), []rune(b)
	if len(x)-len(y) >= limit || len(y)-len(x) >= limit {
		return limit
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
	return last[len(y)]
}
