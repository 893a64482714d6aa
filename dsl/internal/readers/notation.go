package main

import (
	"fmt"
	"strings"
)

// expr is a part of a node's grammar.
type expr struct {
	op    op
	of    []*expr
	words []string // of literal, capture and not
	field field    // of capture, sub and embedded
}

type op int

const (
	sequence op = iota
	choice
	optional
	repeated
	literal  // one of words
	capture  // one of words, into field
	sub      // @@, into field
	embedded // an embedded node
	not      // none of words
)

// end is how (?! …) names the end of the sentence.
const end = "EOF"

// sign is a sign of the notation, and the field in whose tag it stands.
type sign struct {
	text  string
	field field
}

// notation reads the grammar of a node from the tags of its fields, one after the
// other as participle does.
type notation struct {
	signs []sign
	at    int
}

func grammarOf(n node) (*expr, error) {
	g := &notation{}
	for _, f := range n.fields {
		if f.tag == "" {
			g.signs = append(g.signs, sign{"embedded", f})
		}
		for _, text := range signsOf(f.tag) {
			g.signs = append(g.signs, sign{text, f})
		}
	}
	e, err := g.choice()
	if err == nil && g.at < len(g.signs) {
		err = g.unknown()
	}
	if err != nil {
		return nil, fmt.Errorf("%s: %w", n.name, err)
	}
	return e, nil
}

// signsOf cuts a tag into literals with their quotes, @@, words and single signs.
func signsOf(tag string) (all []string) {
	for tag = strings.TrimSpace(tag); tag != ""; tag = strings.TrimSpace(tag) {
		n := 1
		switch {
		case tag[0] == '\'':
			n = strings.IndexByte(tag[1:], '\'') + 2
		case strings.HasPrefix(tag, "@@"), strings.HasPrefix(tag, "?!"):
			n = 2
		case strings.HasPrefix(tag, end):
			n = len(end)
		}
		all = append(all, tag[:n])
		tag = tag[n:]
	}
	return all
}

func (g *notation) peek() string {
	if g.at == len(g.signs) {
		return ""
	}
	return g.signs[g.at].text
}

func (g *notation) take(text string) bool {
	if g.peek() != text {
		return false
	}
	g.at++
	return true
}

func (g *notation) unknown() error { return fmt.Errorf("%q is not understood here", g.peek()) }

func (g *notation) choice() (*expr, error) {
	e := &expr{op: choice}
	for {
		of, err := g.sequence()
		if err != nil {
			return nil, err
		}
		e.of = append(e.of, of)
		if !g.take("|") {
			break
		}
	}
	if len(e.of) == 1 {
		return e.of[0], nil
	}
	return e, nil
}

func (g *notation) sequence() (*expr, error) {
	e := &expr{op: sequence}
	for p := g.peek(); p != "" && p != "|" && p != ")"; p = g.peek() {
		of, err := g.term()
		if err != nil {
			return nil, err
		}
		e.of = append(e.of, of)
	}
	switch len(e.of) {
	case 0:
		return nil, g.unknown()
	case 1:
		return e.of[0], nil
	}
	return e, nil
}

// term reads an atom and what says how often it comes.
func (g *notation) term() (*expr, error) {
	e, err := g.atom()
	switch {
	case err != nil:
		return nil, err
	case g.take("?"):
		return &expr{op: optional, of: []*expr{e}}, nil
	case g.take("*"):
		return &expr{op: repeated, of: []*expr{e}}, nil
	}
	return e, nil
}

func (g *notation) atom() (*expr, error) {
	s := sign{text: g.peek()}
	if g.at < len(g.signs) {
		s = g.signs[g.at]
	}
	switch {
	case g.take("embedded"):
		return &expr{op: embedded, field: s.field}, nil
	case g.take("@@"):
		return &expr{op: sub, field: s.field}, nil
	case g.take("@"):
		words, err := g.words()
		return &expr{op: capture, words: words, field: s.field}, err
	case g.take("("):
		return g.group()
	}
	words, err := g.words()
	return &expr{op: literal, words: words}, err
}

// group reads what stands in brackets, behind the first.
func (g *notation) group() (e *expr, err error) {
	if g.take("?!") {
		g.at--
		g.signs[g.at].text = "(" // so that its words stand in brackets of their own
		words, err := g.words()
		return &expr{op: not, words: words}, err
	}
	if e, err = g.choice(); err == nil && !g.take(")") {
		err = g.unknown()
	}
	return e, err
}

// words reads a literal, or several in brackets of which one is meant.
func (g *notation) words() (all []string, err error) {
	many := g.take("(")
	for {
		word := g.peek()
		if word != end && !strings.HasPrefix(word, "'") {
			return nil, g.unknown()
		}
		all = append(all, strings.Trim(word, "'"))
		g.at++
		if !many {
			return all, nil
		}
		if g.take(")") {
			return all, nil
		}
		if !g.take("|") {
			return nil, g.unknown()
		}
	}
}
