package finding

// Sole gives the candidate that a misspelt word can only mean: the one that Nearest
// finds, if no other is within the same reach. A candidate that is listed twice is
// one.
func Sole(word string, candidates []string) string {
	found := Nearest(word, candidates)
	if found == "" {
		return ""
	}
	var rest []string
	for _, c := range candidates {
		if c != found {
			rest = append(rest, c)
		}
	}
	if Nearest(word, rest) != "" {
		return ""
	}
	return found
}
