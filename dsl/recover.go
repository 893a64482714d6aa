package dsl

// What follows guesses where a brace was forgotten or written twice, by how far
// lines are indented and by which words open sentences of which block. It is
// asked only while braces do not add up, so that a file whose braces do is read
// by its braces alone, however it is indented.

// in names the innermost block.
func (g *grouper) in() string {
	if len(g.open) == 0 {
		return topBlock
	}
	return g.open[len(g.open)-1].block()
}

// stray passes over a closing brace that closes nothing.
func (g *grouper) stray() {
	g.file.tear(strayBrace(g.peek().Span(g.file.Name)))
	g.at++
	g.lack++
}

// tooMany guesses that a closing brace is one too many: it stands further in than
// the line that opened the block, and the block goes on after it.
func (g *grouper) tooMany(t Token) bool {
	if g.lack >= 0 || len(g.open) == 0 || !t.First {
		return false
	}
	block := g.open[len(g.open)-1]
	if t.Indent <= block.opening().Indent {
		return false
	}
	n := g.at + 1
	for g.toks[n].Kind == Comment {
		n++
	}
	next := g.toks[n]
	if next.Is("}") {
		return next.First && next.Indent == block.opening().Indent
	}
	return next.Kind != EOF && begins(block.block(), next, g.toks[n+1])
}

// leftOpen guesses that the innermost block was not closed: a line no further in
// than the line that opened it begins a sentence that belongs outside.
func (g *grouper) leftOpen(t Token) bool {
	if g.lack <= 0 || len(g.open) == 0 || !t.First || t.Kind == EOF {
		return false
	}
	last := len(g.open) - 1
	block, next := g.open[last], g.toks[g.at+1]
	if t.Indent > block.opening().Indent || begins(block.block(), t, next) {
		return false
	}
	for _, outer := range g.open[:last] {
		if begins(outer.block(), t, next) {
			return true
		}
	}
	return begins(topBlock, t, next)
}

// closesOuter guesses that a closing brace belongs to a block around s: it stands
// further out than s, under the line that opened that block.
func (g *grouper) closesOuter(s *Sentence, t Token) bool {
	if g.lack <= 0 || !t.First || t.Indent >= s.opening().Indent {
		return false
	}
	for _, outer := range g.open {
		if outer.opening().Indent == t.Indent {
			return true
		}
	}
	return false
}

// lacksOpening guesses that the opening brace of s was forgotten: the next line
// stands further in and begins a sentence of the block that s opens.
func (g *grouper) lacksOpening(s *Sentence) bool {
	if g.lack >= 0 || !opensBlock[s.First()] {
		return false
	}
	n, _ := g.afterComments()
	t := g.toks[n]
	return t.Kind == Word && t.First && t.Indent > s.Head[0].Indent && begins(s.block(), t, g.toks[n+1])
}

func (g *grouper) putOpening(s *Sentence) {
	end := s.Head[len(s.Head)-1].End()
	s.Open = &Token{Kind: Punct, Text: "{", Start: end, put: true}
	g.file.tear(noOpening(s, g.file.Name))
	g.lack++
}

func (g *grouper) putClosing(s *Sentence) {
	at := g.peek().Start
	s.Close = &Token{Kind: Punct, Text: "}", Start: at, put: true}
	g.file.tear(noClosing(s, g.file.Name))
	g.lack--
}
