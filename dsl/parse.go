package dsl

import (
	"errors"
	"fmt"
	"strings"
	"unicode/utf8"

	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"

	"seamwarden/dsl/finding"
)

// File is one source file, read as far as it can be.
type File struct {
	Name      string
	Source    string
	Sentences []*Sentence
	End       []Token // comments after the last sentence
	EndBlank  bool
	Findings  []finding.Finding

	torn     bool // a brace or a quotation mark has no partner: nobody knows where things end
	unlisted int  // findings beyond maxFindings
}

// MaxSize is the largest file that is read, in bytes. A pattern of a hundred
// pieces is a fiftieth of it.
const MaxSize = 4 << 20

// The bounds below keep a file that is no pattern from costing minutes.
const (
	maxDepth    = 40     // braces within braces, brackets within brackets; sentences need three
	maxTokens   = 400000 // words and signs of a file
	maxWords    = 10000  // words of one sentence
	maxFindings = 200    // findings of one file; after them nothing is guessed
)

func (f *File) report(x finding.Finding) {
	if len(f.Findings) < maxFindings {
		f.Findings = append(f.Findings, x)
		return
	}
	f.unlisted++
}

// tear reports a mistake that leaves the shape of the file in doubt.
func (f *File) tear(x finding.Finding) {
	f.torn = true
	f.report(x)
}

// Parse reads a file. It always gives a File; what could not be read is in its
// findings, and its good sentences carry their nodes.
func Parse(name string, src []byte) *File {
	f := &File{Name: name, Source: string(src)}
	switch bad := firstBadByte(src); {
	case len(src) > MaxSize:
		f.tear(tooLarge(name, len(src)))
		return f
	case bad >= 0:
		f.tear(notUTF8(name, src, bad))
		return f
	}
	toks := scan(f.Source)
	if last := toks[len(toks)-1]; last.Kind != EOF {
		f.tear(tooManyWords(name, last.Span(name)))
		return f
	}
	if at := tooDeep(toks, "{", "}"); at >= 0 {
		f.tear(deep(toks[at].Span(name)))
		return f
	}
	f.torn = ragged(toks)
	f.Sentences, f.End, f.EndBlank = group(f, toks)
	f.faults(f.End)
	f.readAll(topBlock, f.Sentences)
	if f.unlisted > 0 {
		f.Findings = append(f.Findings, notListed(f.unlisted, toks[len(toks)-1].Span(name)))
	}
	finding.Sort(f.Findings)
	return f
}

// tooDeep gives the place of the first token that lies in too many pairs of the
// given signs, or -1.
func tooDeep(toks []Token, open, shut string) int {
	depth := 0
	for i, t := range toks {
		if t.Is(open) {
			depth++
		} else if t.Is(shut) {
			depth--
		}
		if depth > maxDepth {
			return i
		}
	}
	return -1
}

// ragged reports whether a token may end elsewhere than its author meant.
func ragged(toks []Token) bool {
	for _, t := range toks {
		switch t.Fault {
		case "":
		case quoteOpen, quoteShut, quoteOverLines, proseOpen:
			return true
		case starComment:
			if len(t.Text) < 4 || !strings.HasSuffix(t.Text, "*/") {
				return true
			}
		case strangeSign:
			if r, _ := utf8.DecodeRuneInString(t.Text); isApostrophe(r) {
				return true
			}
		}
	}
	return false
}

// firstBadByte gives the offset of the first byte that is not UTF-8 text, or -1.
func firstBadByte(src []byte) int {
	for i := 0; i < len(src); {
		if src[i] == 0 {
			return i
		}
		if src[i] < utf8.RuneSelf {
			i++
			continue
		}
		r, n := utf8.DecodeRune(src[i:])
		if r == utf8.RuneError && n <= 1 {
			return i
		}
		i += n
	}
	return -1
}

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
			if t.Fault == "" || once && spoils(t) {
				continue
			}
			once = once || spoils(t)
			f.report(badToken(toks, i, f.Name))
		}
	}
}

// spoils reports whether a token leaves its sentence without a sure meaning.
func spoils(t Token) bool { return t.Fault != "" && t.Mend == "" && t.Kind != Comment }

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
			s.Head[0].Mend = mend
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
	if len(s.Head) == 1 && s.Head[0].Mend != "" {
		return // nothing but a misspelt word: it is reported already
	}
	node, err := f.parse(k, s.Head[words:], s)
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

func (f *File) parse(k *kind, head []Token, s *Sentence) (any, error) {
	end := s.Span(f.Name).End
	l, err := lexer.Upgrade(&feed{file: f.Name, toks: head, end: end})
	if err != nil {
		return nil, err
	}
	return k.parse(l)
}

// unread reports why the words of a sentence could not be read.
func (f *File) unread(c *slip, err error) {
	if spoilt(c.head) || c.head[0].Mend != "" {
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
	l, err := lexer.Upgrade(&feed{file: f.Name, toks: s.Tail, end: s.Tail[len(s.Tail)-1].End})
	if err != nil {
		return false
	}
	got, err := kindTail.parse(l)
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
