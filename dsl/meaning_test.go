package dsl

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
)

// equalMeaning reports how two files differ in more than their layout: the same
// sentences of the same kinds, with the same words, and the same text in prose.
func equalMeaning(a, b *File) error {
	return equalSentences(a.Sentences, b.Sentences)
}

func equalSentences(a, b []*Sentence) error {
	if len(a) != len(b) {
		return fmt.Errorf("%d sentences became %d: %s", len(a), len(b), firstDifferent(a, b))
	}
	for i := range a {
		if err := equalSentence(a[i], b[i]); err != nil {
			return err
		}
	}
	return nil
}

func firstDifferent(a, b []*Sentence) string {
	for i := 0; i < min(len(a), len(b)); i++ {
		if x, y := words(a[i].Head), words(b[i].Head); !slices.Equal(x, y) {
			return fmt.Sprintf("%q is not %q", x, y)
		}
	}
	return "the longer goes on"
}

func equalSentence(a, b *Sentence) error {
	switch {
	case !slices.Equal(words(a.Head), words(b.Head)):
		return fmt.Errorf("%q became %q", words(a.Head), words(b.Head))
	case !slices.Equal(words(a.Tail), words(b.Tail)):
		return fmt.Errorf("after the brace %q became %q", words(a.Tail), words(b.Tail))
	case a.HasBody != b.HasBody:
		return fmt.Errorf("%q: a block came or went", words(a.Head))
	case reflect.TypeOf(a.Node) != reflect.TypeOf(b.Node):
		return fmt.Errorf("%q: %T became %T", words(a.Head), a.Node, b.Node)
	}
	return equalSentences(a.Body, b.Body)
}

// words gives what tokens mean, however they are written.
func words(toks []Token) (all []string) {
	for _, t := range toks {
		all = append(all, fmt.Sprint(t.Kind, " ", meaning(t)))
	}
	return all
}

func meaning(t Token) string {
	switch {
	case t.Fault() != "":
		return t.Text
	case t.Kind == String:
		return Unquote(t.Text)
	case t.Kind == Number || t.Kind == Measure:
		return plainNumber(t.Text)
	case t.Kind == Prose:
		text, _ := Dedent(t.Text)
		return text
	}
	return t.Text
}

// commentsOf lists the comments that hang in a tree, in order of the alphabet.
func commentsOf(f *File) []string {
	all := texts(f.End)
	var walk func([]*Sentence)
	walk = func(body []*Sentence) {
		for _, s := range body {
			all = append(all, texts(s.comments())...)
			walk(s.Body)
		}
	}
	walk(f.Sentences)
	slices.Sort(all)
	return all
}

func texts(toks []Token) (all []string) {
	for _, t := range toks {
		all = append(all, strings.ReplaceAll(t.Text, "\r\n", "\n"))
	}
	return all
}

// flat lists the words and braces of a tree in the order of the source.
func flat(body []*Sentence) (all []string) {
	for _, s := range body {
		all = append(all, words(s.Head)...)
		if s.HasBody {
			all = append(append(append(all, words([]Token{*s.Open})...), flat(s.Body)...), words([]Token{*s.Close})...)
		}
		all = append(all, words(s.Tail)...)
	}
	return all
}

// scanned parts the tokens of source into its comments and its other words,
// without the semicolons.
func scanned(src string) (comments, others []string) {
	var notes, rest []Token
	for _, t := range scan(src) {
		switch {
		case t.Kind == Comment:
			notes = append(notes, t)
		case t.Kind != EOF && !t.Is(";"):
			rest = append(rest, t)
		}
	}
	comments = texts(notes)
	slices.Sort(comments)
	return comments, words(rest)
}

// failer is a test, a fuzz test or a property test.
type failer interface {
	Helper()
	Fatalf(format string, args ...any)
}
