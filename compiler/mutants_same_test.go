package compiler_test

import (
	"encoding/json"
	"testing"
	"testing/fstest"

	"seamwarden/compiler"
	"seamwarden/compiler/booklet"
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// printed is what a sample prints: the booklet of every garment, in the order of
// the choices.
type printed []string

// printsOf words the booklet of every garment. Sizes are left open, since a booklet
// of all sizes prints what each of them has.
func printsOf(p *model.Pattern) (all printed) {
	for _, garment := range garmentsOf(p) {
		b, err := compiler.Booklet(p, garment)
		if err != nil {
			return nil
		}
		all = append(all, textOf(b))
	}
	return
}

// textOf writes down everything that a booklet prints.
func textOf(b *booklet.Booklet) string {
	s, err := json.Marshal(b)
	if err != nil {
		return err.Error()
	}
	return string(s)
}

// garmentsOf lists every choice of view, options and ways that can be made.
func garmentsOf(p *model.Pattern) (all []condition.Assignment) {
	a := make(condition.Assignment, p.Space.Vars())
	var choose func(v int)
	choose = func(v int) {
		switch {
		case v == len(a) && p.Space.Given(p.Valid, a) != condition.False:
			all = append(all, append(condition.Assignment(nil), a...))
		case v == len(a):
		case p.Space.Var(condition.VarID(v)).Kind == condition.Size:
			a[v] = -1
			choose(v + 1)
		default:
			for n := range p.Space.Var(condition.VarID(v)).Values {
				a[v] = n
				choose(v + 1)
			}
		}
	}
	choose(0)
	return
}

// sameBooklets reports whether a mutant prints the very same for every garment.
// Then nobody who sews sees the slip, and there is nothing to find: a guard that
// repeats what is known anyway, or two steps changed over that no garment has both.
func sameBooklets(folder fstest.MapFS, m mutant, was printed) bool {
	r, err := compiler.Compile(m.in(folder))
	if err != nil || len(was) == 0 {
		return false
	}
	garments := garmentsOf(r.Pattern)
	if len(garments) != len(was) {
		return false
	}
	for n, garment := range garments {
		if b, err := compiler.Booklet(r.Pattern, garment); err != nil || textOf(b) != was[n] {
			return false
		}
	}
	return true
}

// TestSameBooklets looks at a slip that changes nothing and at one that does.
func TestSameBooklets(t *testing.T) {
	head := "pattern \"Cloth\" { allow 1cm }\n\nview A \"Plain\"\nview B \"Hemmed\"\n\nfabric main \"Main\" { widths 140cm }\n\n" +
		"piece napkin 1 \"Napkin\" when B {\n  symmetric\n  separate\n  edges top, side, base, other-side\n  cut 1 main\n}\n\nsection \"Sew\" {\n  step hem \"Hem\" when B {\n"
	tail := "  }\n}\n"
	folder := fstest.MapFS{}
	prints := func(op string) mutant { return mutant{file: compiler.Root, text: head + op + tail} }
	r, err := compiler.Compile(prints("    hem napkin.top turning 1cm, 2cm when B\n").in(folder))
	if err != nil {
		t.Fatal(err)
	}
	was := printsOf(r.Pattern)
	if len(was) != 2 {
		t.Fatalf("%d garments are printed", len(was))
	}
	if !sameBooklets(folder, prints("    hem napkin.top turning 1cm, 2cm\n"), was) {
		t.Error("a guard that repeats the guard around it changes what is printed")
	}
	if sameBooklets(folder, prints("    hem napkin.top turning 1cm, 3cm when B\n"), was) {
		t.Error("another hem prints the same")
	}
}
