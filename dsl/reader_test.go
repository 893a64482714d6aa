package dsl

import (
	"io/fs"
	"math/rand"
	"os"
	"path/filepath"
	"reflect"
	"testing"

	"github.com/alecthomas/participle/v2/lexer"
)

// TestReadersKeepToTheGrammar holds the generated readers to participle: on every
// sentence of the samples and examples, and on those sentences with a word taken
// out, doubled, or put where another stood, both must give the same node or none.
func TestReadersKeepToTheGrammar(t *testing.T) {
	all := everySentence(t)
	words := map[*kind][]Token{}
	for _, e := range all {
		words[e.kind] = append(words[e.kind], e.toks...)
	}
	random := rand.New(rand.NewSource(1))
	fits, fails := 0, 0
	for _, e := range all {
		try := func(toks []Token) {
			if e.sameAsGrammar(t, toks) {
				fits++
			} else {
				fails++
			}
		}
		try(e.toks)
		for range 4 {
			try(disturbed(e.toks, words[e.kind], random))
		}
	}
	t.Logf("%d sentences fit their grammar and %d do not", fits, fails)
	if fits < 5000 || fails < 5000 {
		t.Errorf("%d sentences that fit and %d that do not prove little", fits, fails)
	}
}

// example is the words of a sentence of a kind, without the verb of an operation.
type example struct {
	kind *kind
	toks []Token
}

// sameAsGrammar reads words both ways, and reports whether they fit.
func (e example) sameAsGrammar(t *testing.T, toks []Token) bool {
	t.Helper()
	words := &feed{file: "a.seam", toks: toks}
	got := e.kind.read(&cursor{toks: words.all()})
	l, err := lexer.Upgrade(words)
	if err != nil {
		t.Fatal(err)
	}
	want, err := e.kind.parse(l)
	switch {
	case err != nil && got != nil:
		t.Errorf("%s: the reader takes it for %s, and the grammar says %v", textOf(toks), dump(reflect.ValueOf(got)), err)
	case err == nil && got == nil:
		t.Errorf("%s: the reader fails, and the grammar gives %s", textOf(toks), dump(reflect.ValueOf(want)))
	case err == nil && !reflect.DeepEqual(got, want):
		t.Errorf("%s\nreader  %s\ngrammar %s", textOf(toks), dump(reflect.ValueOf(got)), dump(reflect.ValueOf(want)))
	}
	return err == nil
}

func textOf(toks []Token) (text string) {
	for _, t := range toks {
		text += t.Text + " "
	}
	return text
}

// disturbed gives words with one taken out, doubled, or replaced by another that
// stands in such sentences.
func disturbed(toks, others []Token, random *rand.Rand) []Token {
	at := random.Intn(len(toks) + 1)
	other := others[random.Intn(max(1, len(others)))]
	out := append([]Token(nil), toks[:at]...)
	if at == len(toks) {
		return append(out, other)
	}
	switch rest := toks[at:]; random.Intn(4) {
	case 0:
		return append(out, rest[1:]...)
	case 1:
		return append(append(out, rest[0]), rest...)
	case 2:
		return append(append(out, other), rest...)
	default:
		return append(append(out, other), rest[1:]...)
	}
}

// everySentence reads the files of the language that the project has.
func everySentence(t *testing.T) (all []example) {
	t.Helper()
	for _, dir := range []string{"../samples", "../testdata", "../compiler"} {
		err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
			if err != nil || filepath.Ext(path) != ".seam" {
				return err
			}
			src, err := os.ReadFile(path)
			f := Parse(path, src)
			all = append(all, examplesIn(topBlock, f.Sentences)...)
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	return all
}

func examplesIn(block string, body []*Sentence) (all []example) {
	for _, s := range body {
		if k, _, words := kindOf(block, s); k != nil && len(s.Head) > words {
			all = append(all, example{k, s.Head[words:]})
		}
		if len(s.Tail) > 0 {
			all = append(all, example{kindTail, s.Tail})
		}
		all = append(all, examplesIn(s.block(), s.Body)...)
	}
	return all
}
