package dsl

import (
	"strings"
	"unicode/utf8"

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
	room     []lexer.Token
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
	f.room = make([]lexer.Token, 0, len(toks))
	f.readAll(topBlock, f.Sentences)
	if f.unlisted > 0 {
		f.Findings = append(f.Findings, notListed(f.unlisted, toks[len(toks)-1].Span(name)))
	}
	finding.Sort(f.Findings)
	if f.torn {
		f.doubt()
	}
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
		switch t.Fault() {
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
