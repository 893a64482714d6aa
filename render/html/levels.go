package html

// levels turns the headings of a booklet, which may begin at any level, into
// heading levels of the page that never skip one. base is the level of the
// chapter or step that the headings stand in; open holds the booklet's own levels
// of the headings now open, outermost first.
type levels struct {
	base int
	open []int
}

// enter opens a heading of the booklet's level and gives its level on the page.
func (l *levels) enter(level int) int {
	n := len(l.open)
	for n > 0 && l.open[n-1] >= level {
		n--
	}
	l.open = append(l.open[:n], level)
	return min(l.base+len(l.open), 6)
}

// step is the level on the page of a step's title.
func (l *levels) step() int { return min(l.base+len(l.open)+1, 6) }
