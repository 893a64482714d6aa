package dsl

// breaks are the words before which a long sentence may go on in the next line;
// all of them are in joins. Of these, clauses begin what is best kept together.
var (
	breaks = set(`joins to catching in allow when from on at with as by leaving through keeping along toward turning into
		around over between for mirrored alike`)
	clauses = set("joins to catching in allow when from leaving through keeping turning into")
)

// clauseColumn is how far a line must be filled before it is ended early for the
// sake of a clause.
const clauseColumn = 60

// words writes words on one line or, where they are too many, on several. end is
// a sign that stays with the last word. With joining, a line may go on with a
// joining word as well as after a comma.
func (p *printer) words(toks []Token, indent int, joining bool, end string) {
	w := wrapper{indent: indent, end: len(end), parts: segments(toks, joining)}
	w.wrap(p.column)
	at := 0
	for i, part := range w.parts {
		if part.newLine {
			p.line(indent + hangStep)
		} else if i > 0 {
			p.write(" ")
		}
		p.segment(part.toks, at, indent)
		at += len(part.toks)
	}
	if end != "" {
		if len(toks) > 0 {
			p.write(" ")
		}
		p.write(end)
	}
}

// segment is a run of words that stay together.
type segment struct {
	toks    []Token
	newLine bool
	column  int // where it begins
}

func (s segment) clause() bool { return s.toks[0].Kind == Word && clauses[s.toks[0].Text] }

// segments cuts words wherever a line may end. The first two words stay together,
// since the second tells whether the first begins a sentence.
func segments(toks []Token, joining bool) (all []segment) {
	from := 0
	for i := range toks {
		if i > 1 && mayBreak(toks[i-1], toks[i], joining) {
			all = append(all, segment{toks: toks[from:i]})
			from = i
		}
	}
	if from < len(toks) {
		all = append(all, segment{toks: toks[from:]})
	}
	return all
}

// mayBreak reports whether a line may end between two neighbours.
func mayBreak(before, t Token, joining bool) bool {
	if t.Kind == Prose {
		return false
	}
	return before.Is(",") && spaced(before, t) || joining && t.Kind == Word && breaks[t.Text] && spaced(before, t)
}

// wrapper decides where lines end.
type wrapper struct {
	parts  []segment
	indent int
	end    int // width of the sign that stays with the last word
}

// wrap fills lines from a column on. Where a line is full it ends before the last
// clause that begins far enough to the right, else before the word that is too
// much.
func (w *wrapper) wrap(column int) {
	first := 0
	for i := 0; i < len(w.parts); i++ {
		need := firstWidth(w.parts[i].toks)
		if i == len(w.parts)-1 && w.end > 0 {
			need += 1 + w.end
		}
		if i > first && column+1+need > lineWidth {
			i = w.lineEnd(first, i)
			first = i
			w.parts[i].newLine = true
			column = w.indent + hangStep
		} else if i > 0 && !w.parts[i].newLine {
			column++
		}
		w.parts[i].column = column
		column = w.after(w.parts[i].toks, column)
	}
}

// lineEnd gives the segment that begins the next line if number i does not fit
// in the one that number first begins.
func (w *wrapper) lineEnd(first, i int) int {
	for n := i; n > first && (n == i || w.parts[n].column >= clauseColumn); n-- {
		if w.parts[n].clause() {
			return n
		}
	}
	return i
}

// firstWidth measures words up to the end of their first line.
func firstWidth(toks []Token) int {
	n := 0
	for i, t := range toks {
		if t.Kind == Prose {
			return n + len(" "+fence)
		}
		n += spaceWidth(toks, i) + characters(plain(t))
	}
	return n
}

// after gives the column behind words that begin in a column.
func (w *wrapper) after(toks []Token, column int) int {
	for i, t := range toks {
		if t.Kind == Prose {
			column = w.indent + len(fence)
			continue
		}
		column += spaceWidth(toks, i) + characters(plain(t))
	}
	return column
}

func spaceWidth(toks []Token, i int) int {
	if i > 0 && spaced(toks[i-1], toks[i]) {
		return 1
	}
	return 0
}
