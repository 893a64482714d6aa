package dsl

import (
	"errors"
	"fmt"

	"github.com/alecthomas/participle/v2"

	"seamwarden/dsl/finding"
)

// readAll reads the sentences of a block.
func (f *File) readAll(block string, body []*Sentence) {
	var before *Sentence
	cut := false
	for _, s := range body {
		f.faults(s.comments(), s.Head, s.Tail)
		switch again := f.cutOff(block, before, s); {
		case !again:
			f.read(block, s)
			cut = false
		case !cut:
			f.report(cutBySemicolon(before, s, f.Name))
			cut = true
		}
		before = s
	}
}

// cutOff reports whether a sentence is the rest of a list that somebody wrote
// with semicolons: bare names after a semicolon on the same line.
func (f *File) cutOff(block string, before, s *Sentence) bool {
	if block == unknownBlock || before == nil || !before.Separator || s.opening().First || s.HasBody {
		return false
	}
	for _, t := range s.Head {
		if t.Kind != Word && !t.Is(",") && !t.Is(".") {
			return false
		}
	}
	if k, _, _ := kindOf(block, s); k != nil || len(f.Findings) == maxFindings {
		return false
	}
	_, mend := unknownSentence(block, s, "")
	return mend == ""
}

// faults reports the slips inside tokens. What cannot be mended is reported once
// for each run of words, since one stray sign often brings others.
func (f *File) faults(runs ...[]Token) {
	for _, toks := range runs {
		once := false
		for i, t := range toks {
			if t.Fault() == "" || once && spoils(t) {
				continue
			}
			once = once || spoils(t)
			f.report(badToken(toks, i, f.Name))
		}
	}
}

// spoils reports whether a token leaves its sentence without a sure meaning.
func spoils(t Token) bool { return t.Fault() != "" && t.Mend() == "" && t.Kind != Comment }

// spoilt reports whether a token among words is beyond mending.
func spoilt(toks []Token) bool {
	for _, t := range toks {
		if spoils(t) {
			return true
		}
	}
	return false
}

// read gives a sentence its node, then goes into its body.
func (f *File) read(block string, s *Sentence) {
	k, verb, words := kindOf(block, s)
	switch {
	case k != nil || block == unknownBlock || spoilt(s.Head[:min(1, len(s.Head))]):
	case len(f.Findings) == maxFindings:
		f.unlisted++
	default:
		x, mend := unknownSentence(block, s, f.Name)
		f.report(x)
		if mend != "" {
			s.Head[0].mendAs(mend)
			k, verb, words = kindOf(block, s)
		}
	}
	if k == nil {
		f.readAll(unknownBlock, s.Body)
		return
	}
	f.node(block, s, k, verb, words)
	f.readAll(s.block(), s.Body)
}

func (f *File) node(block string, s *Sentence, k *kind, verb string, words int) {
	if x, ok := overlong(s, f.Name); ok {
		f.report(x)
		return
	}
	if len(s.Head) == 1 && s.Head[0].Mend() != "" {
		return // nothing but a misspelt word: it is reported already
	}
	node, err := f.parse(k, s.Head[words:], s.Span(f.Name).End)
	if err != nil {
		f.unread(&slip{block: block, s: s, head: s.Head, kind: k, verb: verb}, err)
		return
	}
	if op, ok := node.(*Op); ok {
		op.Verb = verb
		f.phrases(op)
	}
	if name := reservedName(node); name != nil {
		f.report(nameReserved(name, f.Name))
	}
	if len(s.Tail) > 0 && !f.tail(s, node) {
		return
	}
	if s.HasBody && !mayHaveBody(node) {
		f.report(noBody(s, f.Name))
	}
	s.Node = node
}

// parse reads words, which end at end, as a sentence of a kind.
func (f *File) parse(k *kind, words []Token, end finding.Pos) (any, error) {
	feed := &feed{file: f.Name, toks: words, end: end, room: f.room}
	node, err := k.understand(feed)
	f.room = feed.room
	return node, err
}

// unread reports why the words of a sentence could not be read.
func (f *File) unread(c *slip, err error) {
	if spoilt(c.head) || c.head[0].Mend() != "" {
		return // its bad sign or its first word is reported already
	}
	var pe participle.Error
	if !errors.As(err, &pe) {
		panic(fmt.Sprintf("seamwarden: reading %q: %v", c.head[0].Text, err))
	}
	c.at = len(c.head)
	for i, t := range c.head {
		if t.Start.Offset >= pe.Position().Offset {
			c.at = i
			break
		}
	}
	c.hope = firstHope(pe.Message())
	f.report(cannotRead(c, f.Name))
}

var kindTail = sentence[Guarded](`when VIEW`)

// guarded is what every node with a guard can do.
type guarded interface{ guarded() *Guarded }

func (g *Guarded) guarded() *Guarded { return g }

// GuardOf gives the guard of a node, nil without one.
func GuardOf(node any) *Guard {
	if n, ok := node.(guarded); ok {
		if n.guarded().Guard == nil {
			return n.guarded().Late
		}
		return n.guarded().Guard
	}
	return nil
}

// tail reads the words after a closing brace, which can only be a guard.
func (f *File) tail(s *Sentence, node any) bool {
	if spoilt(s.Tail) {
		return false
	}
	got, err := f.parse(kindTail, s.Tail, s.Tail[len(s.Tail)-1].End())
	g, ok := node.(guarded)
	switch {
	case err != nil:
		f.report(badTail(s, f.Name))
	case !ok:
		f.report(noGuard(s, f.Name))
	case GuardOf(node) != nil:
		f.report(twoGuards(s, f.Name))
	default:
		*g.guarded() = *got.(*Guarded)
		return true
	}
	return false
}

func mayHaveBody(node any) bool {
	switch node.(type) {
	case *Pattern, *View, *Option, *Choice, *Material, *Notion, *Supply, *Strip, *Piece, *Seam, *Make, *Section, *Step, *Method, *OnOnly, *Change, *Term:
		return true
	}
	return false
}

// phrases reports the first phrase of an operation that its verb does not take.
func (f *File) phrases(op *Op) {
	for i, p := range op.Phrases {
		if takes(op.Verb, p.Name()) {
			continue
		}
		if p.Distance != nil && i > 0 && op.Phrases[i-1].Turning != nil {
			f.report(noCommaInTurning(p))
		} else {
			f.report(wrongPhrase(op.Verb, p))
		}
		return
	}
}
