package dsl

import (
	"reflect"
	"strings"
	"testing"

	"github.com/alecthomas/participle/v2/lexer"
)

// TestCanonicalFileShowsAll asserts that the canonical file has every kind of
// sentence, every phrase of an operation, and every part of a cut and of a seam,
// and comments in every place.
func TestCanonicalFileShowsAll(t *testing.T) {
	seen := &gallery{kinds: map[*kind]bool{}, phrases: map[string]bool{}, fields: map[string]bool{}}
	f := Parse("canonical.seam", canonical(t))
	seen.block(topBlock, f.Sentences)
	for _, block := range append([]map[string]*kind{anyBlock}, allBlocks()...) {
		for word, k := range block {
			if !seen.kinds[k] {
				t.Errorf("no sentence like %s (%s)", k.form, word)
			}
		}
	}
	for _, k := range []*kind{kindProse, kindOp, kindOnOnly, kindOverlap, kindValues, kindMakeRow, cutAt} {
		if !seen.kinds[k] {
			t.Errorf("no sentence like %s", k.form)
		}
	}
	for p := range phraseForms {
		if !seen.phrases[p] {
			t.Errorf("no phrase %s", phraseForms[p])
		}
	}
	for _, node := range []any{Lay{}, SeamBit{}, Phrase{}, Guard{}, GuardNot{}, GuardAtom{}, Guarded{}, StripBit{}, Run{}, Sentence{}, For{}, ForBit{}, Wear{}, WearBit{}, Caution{}} {
		typ := reflect.TypeOf(node)
		for i := range typ.NumField() {
			if name := typ.Name() + "." + typ.Field(i).Name; !seen.fields[name] {
				t.Errorf("%s is never set", name)
			}
		}
	}
	if len(f.End) == 0 {
		t.Error("no comment at the end")
	}
}

func allBlocks() (all []map[string]*kind) {
	for _, b := range blocks {
		all = append(all, b)
	}
	return all
}

// gallery collects what a file shows.
type gallery struct {
	kinds   map[*kind]bool
	phrases map[string]bool
	fields  map[string]bool
}

func (g *gallery) block(name string, body []*Sentence) {
	for _, s := range body {
		k, _, _ := kindOf(name, s)
		g.kinds[k] = true
		g.set(reflect.ValueOf(*s))
		eachNode(reflect.ValueOf(s.Node), func(v reflect.Value) {
			g.set(v)
			if p, ok := v.Addr().Interface().(*Phrase); ok {
				g.phrases[p.Name()] = true
			}
		})
		g.block(s.block(), s.Body)
	}
}

// set notes the fields of a struct that hold something.
func (g *gallery) set(v reflect.Value) {
	for i := range v.NumField() {
		if !v.Field(i).IsZero() {
			g.fields[v.Type().Name()+"."+v.Type().Field(i).Name] = true
		}
	}
}

// TestPlacesOfNodes asserts that every node knows where its words stand, in a copy
// of the canonical file with characters of several bytes and mended slips.
func TestPlacesOfNodes(t *testing.T) {
	src := strings.NewReplacer(`view A "With hood"`, `view A “With hood”`, `option pockets "Welt pockets"`, `option pockets 'Welt pockets'`,
		"allow 5/8in", `allow 5/8"`, "front-facing", "front–facing").Replace(string(canonical(t)))
	f := Parse("canonical.seam", []byte(src))
	nodes := 0
	each(f.Sentences, func(s *Sentence) {
		eachNode(reflect.ValueOf(s.Node), func(v reflect.Value) {
			toks := v.FieldByName("Tokens")
			if !toks.IsValid() {
				return
			}
			nodes++
			checkSpan(t, src, v, toks.Interface().([]lexer.Token))
		})
	})
	if nodes < 400 {
		t.Errorf("only %d nodes were looked at", nodes)
	}
}

// each goes through all sentences.
func each(body []*Sentence, do func(*Sentence)) {
	for _, s := range body {
		do(s)
		each(s.Body, do)
	}
}

// eachNode goes through a node and all nodes in it.
func eachNode(v reflect.Value, do func(reflect.Value)) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			eachNode(v.Elem(), do)
		}
	case reflect.Slice:
		for i := range v.Len() {
			eachNode(v.Index(i), do)
		}
	case reflect.Struct:
		do(v)
		for i := range v.NumField() {
			if v.Type().Field(i).Name != "Tokens" {
				eachNode(v.Field(i), do)
			}
		}
	}
}

func checkSpan(t *testing.T, src string, v reflect.Value, toks []lexer.Token) {
	t.Helper()
	at := SpanOf(toks)
	if len(toks) == 0 || place(src, at.Start.Offset) != at.Start || place(src, at.End.Offset) != at.End {
		t.Errorf("%s %+v at %+v", v.Type(), v, at)
		return
	}
	text := v.FieldByName("Text")
	if got := src[at.Start.Offset:at.End.Offset]; text.IsValid() && text.Kind() == reflect.String {
		if want := text.String(); meant(Word, got) != want && meant(Measure, got) != want && meant(String, got) != want {
			t.Errorf("%s is %q, but %q stands at its place", v.Type(), want, got)
		}
	}
}
