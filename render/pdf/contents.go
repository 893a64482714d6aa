package pdf

// contents lists chapters and sections with their pages. The numbers are filled
// in when the pages are made.
func (l *layouter) contents() []*piece {
	c := l.sheet.body()
	var list []*piece
	for _, e := range l.outline {
		if e.title == "" || e.level > 1 {
			continue
		}
		list = append(list, l.contentsEntry(e, c)...)
	}
	if len(list) == 0 {
		return nil
	}
	head := l.headingPieces(l.labels.Contents, l.th.chapter, c)
	space(head, 0, 12)
	ps := append(head, list...)
	ps[0].newPage = true
	for _, p := range ps {
		p.chapter = l.labels.Contents
	}
	return ps
}

// numberRoom is kept free at the right of every entry for its page number.
const numberRoom = 44

func (l *layouter) contentsEntry(e entry, c column) []*piece {
	ts, gap := l.th.label.strong(), 9.0
	if e.level > 0 {
		ts, gap = l.th.text, 1
	}
	inner := c
	if e.level > 0 {
		inner = c.inset(16)
	}
	text := inner
	text.width -= numberRoom
	lines := l.breakText(e.title, ts, text.width)
	if len(lines) == 0 {
		return nil
	}
	ps := l.textPieces(lines, ts, text)
	ps[0].gap = gap
	for _, p := range ps {
		p.marks = append(p.marks, linkMark{rect{inner.x, 0, inner.width, ts.leading}, e.id})
	}
	end := lines[len(lines)-1].width
	last := ps[len(ps)-1]
	last.marks = append(last.marks, refMark{
		x: c.x + c.width, y: l.baseline(ts), dotsFrom: inner.x + end, to: e.id, st: ts.style,
	})
	return ps
}
