package dsl

// grouper folds tokens into sentences.
type grouper struct {
	toks []Token
	at   int
	file *File
	open []*Sentence // the blocks around the next token, outermost first

	// lack is how many closing braces the file is short of; negative, how many it
	// has too many. While it is 0 nothing is guessed.
	lack int
}

// group gives the sentences of a whole file and the comments after the last one.
func group(f *File, toks []Token) (sentences []*Sentence, end []Token, endBlank bool) {
	g := &grouper{toks: toks, file: f, lack: lacking(toks)}
	for {
		var got []*Sentence
		got, end, endBlank = g.block(sentences)
		sentences = got
		if g.peek().Kind == EOF {
			return
		}
		g.stray()
	}
}

func lacking(toks []Token) int {
	n := 0
	for _, t := range toks {
		if t.Is("{") {
			n++
		} else if t.Is("}") {
			n--
		}
	}
	return n
}

func (g *grouper) peek() *Token { return &g.toks[g.at] }

// block reads sentences up to a closing brace or the end of the file, which it
// leaves in place, and adds them to body.
func (g *grouper) block(body []*Sentence) (all []*Sentence, rest []Token, blank bool) {
	for {
		var doc []Token
		doc, blank = g.between()
		t := g.peek()
		if t.Is("}") && g.tooMany(*t) {
			g.stray()
			continue
		}
		if t.Kind == EOF || t.Is("}") || g.leftOpen(*t) {
			return body, doc, blank
		}
		s := g.sentence()
		s.Doc = append(doc, s.Doc...)
		s.Blank = blank
		body = append(body, s)
	}
}

// between takes the comments and semicolons before a sentence.
func (g *grouper) between() (doc []Token, blank bool) {
	blank = g.peek().Blank
	for g.peek().Kind == Comment || g.peek().Is(";") {
		if t := g.peek(); t.Kind == Comment {
			doc = append(doc, *t)
		}
		g.at++
		blank = blank || len(doc) == 0 && g.peek().Blank
	}
	return doc, blank
}

func (g *grouper) sentence() *Sentence {
	s := &Sentence{}
	s.Head = g.words(s)
	if g.peek().Is("{") || g.lacksOpening(s) {
		g.body(s)
		s.Tail = g.words(s)
	}
	if g.peek().Is(";") {
		s.Separator = true
		g.at++
	}
	if t := g.peek(); t.Kind == Comment && !t.First {
		s.Trailing = t
		g.at++
	}
	return s
}

func (g *grouper) body(s *Sentence) {
	s.HasBody = true
	if s.Open = g.peek(); s.Open.Is("{") {
		g.at++
	} else {
		g.putOpening(s)
	}
	if t := g.peek(); t.Kind == Comment && !t.First {
		s.OpenNote = t
		g.at++
	}
	g.open = append(g.open, s)
	s.Body, s.BodyEnd, s.EndBlank = g.block(nil)
	g.open = g.open[:len(g.open)-1]
	if t := g.peek(); t.Is("}") && !g.closesOuter(s, *t) {
		s.Close = t
		g.at++
		return
	}
	g.putClosing(s)
}

// words reads the words of one sentence. Comments in the middle of it move above.
func (g *grouper) words(s *Sentence) []Token {
	start, comments := g.at, 0
	var head []Token
	for {
		n, newLine := g.afterComments()
		t := g.toks[n]
		if t.Kind == EOF || t.Is("}") || t.Is(";") || newLine && !g.continues(s, head, t, n) || s.HasBody && t.Is("{") {
			return head
		}
		if g.at < n && g.at > start && g.toks[g.at-1].Kind == Number {
			g.file.torn = true // without the comment two numbers could be read as one
		}
		for ; g.at < n; g.at++ {
			s.Doc = append(s.Doc, *g.peek())
			comments++
		}
		if t.Is("{") {
			return head
		}
		g.at++
		if comments == 0 {
			head = g.toks[start:g.at:g.at] // no copy of the usual sentence
		} else {
			head = append(head, t)
		}
	}
}

// afterComments gives the place of the next token that is no comment, and
// whether a line begins before it.
func (g *grouper) afterComments() (n int, newLine bool) {
	n = g.at
	for g.toks[n].Kind == Comment {
		newLine = newLine || g.toks[n].First
		n++
	}
	return n, newLine || g.toks[n].First
}

// continues reports whether a line belongs to the sentence begun above it: after
// a comma, an opening bracket or a word that asks for more, unless it plainly begins a sentence of its own;
// else if it stands further in than the sentence and opens with a word that joins.
// n is the place of t.
func (g *grouper) continues(s *Sentence, head []Token, t Token, n int) bool {
	if len(head) == 0 {
		return n == g.at && !s.HasBody
	}
	if t.Is("{") {
		return !s.HasBody
	}
	indent := head[0].Indent
	if s.HasBody {
		indent = s.opening().Indent
	}
	if endsOpen(head) {
		return t.Indent > indent || !begins(g.in(), t, g.toks[n+1])
	}
	return !s.HasBody && t.Indent > indent && (t.Is(",") || t.Is(")") || joins[t.Text] && !g.opensAnyway(n))
}

// opensAnyway reports whether a joining word, number n, begins a sentence of its
// own in this block: allow in the head of a pattern, on … only { in a step.
func (g *grouper) opensAnyway(n int) bool {
	t := g.toks[n]
	if !t.Is("on") || !operates(g.in()) {
		return begins(g.in(), t, g.toks[n+1])
	}
	i := n + 1
	for !g.toks[i].Is("{") && !g.toks[i].First && g.toks[i].Kind != EOF {
		i++
	}
	return g.toks[i].Is("{") && g.toks[i-1].Is("only")
}

// endsOpen reports whether words ask for more.
func endsOpen(words []Token) bool {
	last := words[len(words)-1]
	return last.Is(",") || last.Is("(") || last.Is("=") || last.Kind == Word && asks[last.Text]
}
