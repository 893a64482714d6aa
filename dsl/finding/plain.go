package finding

// Heading is a finding's headline with the garments in which it holds, as one line
// that is safe to show.
func (f Finding) Heading() string { return headline(f) }

// OneLine gives a text of an author's as one line that is safe to show: what would
// move the cursor, change the direction of the text or not be seen is replaced.
func OneLine(s string) string { return clean(s) }
