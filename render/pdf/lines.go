package pdf

// line is one line of text, set.
type line struct {
	runs  []run
	width float64
}

// breaker fills lines one after the other, each as full as it goes.
type breaker struct {
	set     *setter
	width   float64
	out     []line
	cur     []run
	curW    float64
	space   *atom // the space after cur, drawn only if a word follows
	hyphen  []run // drawn if the line ends here
	started bool  // something stands on the line, if only a forced end
}

// slack forgives rounding in sums of widths.
const slack = 0.01

// breakLines sets words in lines no wider than width. A word that is wider than
// the line by itself is cut.
func breakLines(s *setter, atoms []atom, width float64) []line {
	b := breaker{set: s, width: width}
	for i := range atoms {
		a := &atoms[i]
		switch a.kind {
		case breakLine:
			b.hyphen = nil
			b.flush()
		case breakSpace:
			b.space, b.hyphen = a, nil
		default:
			b.word(a)
		}
	}
	if len(b.cur) > 0 {
		b.hyphen = nil
		b.flush()
	}
	return b.out
}

func (b *breaker) word(a *atom) {
	gap := 0.0
	if b.space != nil && len(b.cur) > 0 {
		gap = b.space.width
	}
	room := b.width - b.curW - gap + slack
	if a.hyphen != nil {
		room -= sum(a.hyphen)
	}
	if a.width > room && len(b.cur) > 0 {
		b.flush()
	}
	if b.space != nil && len(b.cur) > 0 {
		b.put(b.space.runs)
	}
	b.space = nil
	rest := a.runs
	for sum(rest) > b.width+slack {
		var first []run
		first, rest = b.set.cut(rest, b.width)
		b.put(first)
		b.hyphen = nil
		b.flush()
	}
	b.put(rest)
	b.hyphen = a.hyphen
}

func (b *breaker) put(rs []run) {
	for _, r := range rs {
		b.cur = join(b.cur, r)
	}
	b.curW += sum(rs)
}

func (b *breaker) flush() {
	b.put(b.hyphen)
	b.out = append(b.out, line{b.cur, b.curW})
	b.cur, b.curW, b.space, b.hyphen = nil, 0, nil, nil
}

// cut divides runs so that the first part is no wider than width, but holds one
// character at least.
func (s *setter) cut(rs []run, width float64) (first, rest []run) {
	used := 0.0
	for i, r := range rs {
		for j := range r.text {
			w := float64(s.advance(r.face, r.text[j])) * r.size / 1000
			if used+w > width && (i > 0 || j > 0) {
				first = s.slice(append(first, rs[:i]...), r, 0, j)
				rest = s.slice(nil, r, j, len(r.text))
				return first, append(rest, rs[i+1:]...)
			}
			used += w
		}
	}
	return rs, nil
}

func (s *setter) slice(out []run, r run, from, to int) []run {
	if from == to {
		return out
	}
	part := s.extend(nil, r.face, r.size, r.text[from:to], r.link)
	return append(out, part...)
}

// widthsOf gives the least and the greatest width that words need: the widest word,
// and the widest line if no line were broken.
func widthsOf(atoms []atom) (least, most float64) {
	cur := 0.0
	for _, a := range atoms {
		if a.kind == breakLine {
			cur = 0
			continue
		}
		cur += a.width
		if a.kind != breakSpace {
			least = max(least, a.width+sum(a.hyphen))
			most = max(most, cur)
		}
	}
	return least, max(least, most)
}

// fitOneLine shortens a text to one line, with an ellipsis if it was cut.
func (s *setter) fitOneLine(text string, st style, width float64) []run {
	l := s.shape(text, st, "")
	if w := sum(l); w <= width+slack {
		return l
	}
	dots := s.shape("…", st, "")
	first, _ := s.cut(l, width-sum(dots))
	for _, d := range dots {
		first = join(first, d)
	}
	return first
}
