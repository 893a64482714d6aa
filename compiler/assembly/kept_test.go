package assembly_test

import (
	"os"
	"reflect"
	"testing"

	"seamwarden/compiler"
	"seamwarden/compiler/assembly"
)

// What is kept from the deduction is what would be solved anew, and a play over the
// plan that is kept finds what a play over a new one does.
func TestKeptIsSolved(t *testing.T) {
	kept := 0
	for _, sample := range []string{"dusk-skirt", "gale-parka", "market-apron", "puddle-cape"} {
		r, err := compiler.Compile(os.DirFS("../../samples/" + sample))
		if err != nil {
			t.Fatal(err)
		}
		p := r.Pattern
		assembly.Deduce(p) // the checks have used up the plan
		if p.Kept != nil {
			kept++
		}
		got, want := assembly.Solved(p), assembly.Hands(p)
		if !reflect.DeepEqual(got.Clashes, want.Clashes) || !reflect.DeepEqual(got.Deduced, want.Deduced) || !reflect.DeepEqual(got.Unknown, want.Unknown) {
			t.Errorf("%s: kept is %v, and solved anew %v", sample, got, want)
		}
		if first, again := assembly.Play(p), assembly.Play(p); !reflect.DeepEqual(first, again) {
			t.Errorf("%s: over the plan that was kept the play finds %v, over a new one %v", sample, first, again)
		}
	}
	if kept == 0 {
		t.Error("nothing was kept of any sample")
	}
}

// Where a side had to be settled nothing is kept, since the hands are others now.
func TestNothingKeptOfWhatIsSettled(t *testing.T) {
	p := build(t, `pattern "Two" { allow 1cm }

fabric main "Main" { widths 140cm }

piece a {
  edges side, top, centre
  cut 1 main right side up
}

piece b {
  edges side, top, centre
  cut 1 main
}

seam side joins a.side to b.side

seam top joins a.top to b.top
`)
	settled := p.Pieces[1].Cuts[0].Deduced
	if settled == (p.Kept != nil) {
		t.Errorf("settled is %v, and kept %v", settled, p.Kept)
	}
	if !settled {
		t.Error("nothing had to be settled")
	}
}
