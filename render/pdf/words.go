package pdf

import (
	"fmt"
	"strings"

	"seamwarden/compiler/booklet"
)

// span is text between changes of look.
type span struct {
	text         string
	bold, italic bool
	link         string
	newLine      bool // a forced line end instead of text
}

// spans flattens inlines; base carries the look of what encloses them.
func spans(in []booklet.Inline, base span) ([]span, error) {
	var out []span
	for _, i := range in {
		s, err := spansOf(i, base)
		if err != nil {
			return nil, err
		}
		out = append(out, s...)
	}
	return out, nil
}

func spansOf(i booklet.Inline, base span) ([]span, error) {
	s := base
	switch x := i.(type) {
	case booklet.Text:
		s.text = string(x)
	case booklet.Measure:
		s.text = unbroken(x)
	case booklet.Break:
		s.newLine = true
	case booklet.Strong:
		s.bold = true
		return spans(x.Text, s)
	case booklet.Emphasis:
		s.italic = true
		return spans(x.Text, s)
	case booklet.Link:
		s.link = x.To
		return spans(x.Text, s)
	default:
		return nil, fmt.Errorf("print does not know a kind of text in the booklet")
	}
	return []span{s}, nil
}

// unbroken words a measure so that no number leaves its unit, whatever spaces it
// was given with; between the two systems a line may end.
func unbroken(m booklet.Measure) string {
	m.Imperial = strings.ReplaceAll(m.Imperial, " ", "\u00A0")
	m.Metric = strings.ReplaceAll(m.Metric, " ", "\u00A0")
	return m.String()
}

// atom is what a line is made of.
type atom struct {
	kind   breakKind // noBreak is a word; breakSpace a space; breakLine a forced end
	runs   []run
	width  float64
	hyphen []run // drawn if the line ends after this word
}

// atomizer cuts spans into atoms.
type atomizer struct {
	set  *setter
	st   style
	out  []atom
	word []run
}

// atoms cuts inlines into words and spaces, set in a style.
func (s *setter) atoms(in []booklet.Inline, st style) ([]atom, error) {
	sp, err := spans(in, span{})
	if err != nil {
		return nil, err
	}
	a := atomizer{set: s, st: st}
	for _, x := range sp {
		a.span(x)
	}
	a.endWord(nil)
	return a.out, nil
}

func (a *atomizer) span(s span) {
	if s.newLine {
		a.endWord(nil)
		a.out = append(a.out, atom{kind: breakLine})
		return
	}
	st := a.st
	st.bold = st.bold || s.bold
	st.italic = st.italic != s.italic // emphasis in italics stands upright
	rs := []rune(s.text)
	start := 0
	for i := range rs {
		if k := breakAt(rs, i); k != noBreak {
			a.breakWord(k, rs, start, i, st, s.link)
			start = i + 1
		}
	}
	a.add(rs[start:], st, s.link)
}

// breakWord ends the word that began at start because of the character at i.
func (a *atomizer) breakWord(k breakKind, rs []rune, start, i int, st style, link string) {
	if k == breakAfter {
		a.add(rs[start:i+1], st, link)
	} else {
		a.add(rs[start:i], st, link)
	}
	switch k {
	case breakSoft:
		a.endWord(a.set.shape("\u2010", st, link))
	case breakAfter, breakHere:
		a.endWord(nil)
	case breakLine:
		a.endWord(nil)
		a.out = append(a.out, atom{kind: breakLine})
	case breakSpace:
		a.endWord(nil)
		a.space(string(rs[i]), st, link)
	}
}

func (a *atomizer) add(rs []rune, st style, link string) {
	for _, r := range a.set.shape(string(rs), st, link) {
		a.word = join(a.word, r)
	}
}

func (a *atomizer) endWord(hyphen []run) {
	if len(a.word) == 0 {
		return
	}
	a.out = append(a.out, atom{runs: a.word, width: sum(a.word), hyphen: hyphen})
	a.word = nil
}

// space adds a space, unless one stands there already.
func (a *atomizer) space(text string, st style, link string) {
	if n := len(a.out); n > 0 && a.out[n-1].kind == breakSpace {
		return
	}
	r := a.set.shape(text, st, link)
	a.out = append(a.out, atom{kind: breakSpace, runs: r, width: sum(r)})
}
