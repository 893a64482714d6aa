package dsl

import (
	"reflect"
	"testing"
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
	for _, node := range []any{Lay{}, SeamBit{}, Phrase{}, Guard{}, GuardNot{}, GuardAtom{}, Guarded{}, StripBit{}, Run{}, Sentence{}} {
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
		g.node(reflect.ValueOf(s.Node))
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

// node walks through a node.
func (g *gallery) node(v reflect.Value) {
	switch v.Kind() {
	case reflect.Pointer:
		if p, ok := v.Interface().(*Phrase); ok && p != nil {
			g.phrases[p.Name()] = true
		}
		if !v.IsNil() {
			g.node(v.Elem())
		}
	case reflect.Slice:
		for i := range v.Len() {
			g.node(v.Index(i))
		}
	case reflect.Struct:
		g.set(v)
		for i := range v.NumField() {
			if v.Type().Field(i).Name != "Tokens" {
				g.node(v.Field(i))
			}
		}
	}
}
