package assembly_test

import (
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"seamwarden/compiler"
	"seamwarden/compiler/assembly"
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// compiled reads a pattern from one text.
func compiled(t *testing.T, source string) *model.Pattern {
	t.Helper()
	r, err := compiler.Compile(fstest.MapFS{compiler.Root: {Data: []byte(source)}})
	if err != nil {
		t.Fatal(err)
	}
	return r.Pattern
}

func sample(t *testing.T, name string) *model.Pattern {
	t.Helper()
	r, err := compiler.Compile(os.DirFS("../../samples/" + name))
	if err != nil {
		t.Fatal(err)
	}
	return r.Pattern
}

// garment chooses; what is left open is the plainest.
func garment(t *testing.T, p *model.Pattern, c compiler.Choice) condition.Assignment {
	t.Helper()
	chosen, err := compiler.Choose(p, c)
	if err != nil {
		t.Fatal(err)
	}
	cond := p.Valid
	for v, value := range chosen {
		if value >= 0 {
			cond = p.Space.And(cond, p.Space.Is(condition.VarID(v), value))
		}
	}
	a, ok := p.Space.Witness(cond)
	if !ok {
		t.Fatal("no such garment")
	}
	return a
}

func step(t *testing.T, p *model.Pattern, id string) *model.Step {
	t.Helper()
	at := slices.IndexFunc(p.Steps(), func(s *model.Step) bool { return s.ID == id })
	if at < 0 {
		t.Fatalf("there is no step %s", id)
	}
	return p.Steps()[at]
}

// told writes a snapshot down: parts, then each round with its rims, "(" and ")"
// round one that is closed. The names of a round are in alphabetical order, since
// a round begins nowhere.
func told(s assembly.Snapshot) string {
	var out []string
	for _, a := range s.Assemblies {
		var parts []string
		for _, i := range a.Parts {
			parts = append(parts, i.Path())
		}
		out = append(out, strings.Join(parts, " "))
		for _, r := range a.Rounds {
			line := strings.Join(sortedEdges(r), " ")
			if r.Closed {
				line = "(" + line + ")"
			}
			out = append(out, "  "+line)
		}
	}
	list := func(name string, all []string) {
		if len(all) > 0 {
			out = append(out, name+": "+strings.Join(all, " "))
		}
	}
	list("loose", paths(s.Loose))
	list("unfused", paths(s.Unfused))
	list("unpressed", waits(s.Unpressed))
	list("unfinished", waits(s.Unfinished))
	for _, g := range s.Openings {
		list("opening", []string{g.ID})
	}
	for _, j := range s.Started {
		list("started", []string{j.Seam.ID})
	}
	return strings.Join(out, "\n")
}

func sortedEdges(r assembly.Round) (all []string) {
	word := map[assembly.Rim]string{assembly.FinishedRim: "finished", assembly.PressedRim: "pressed", assembly.LeftRaw: "left-raw",
		assembly.HemmedRim: "hemmed", assembly.BoundRim: "bound", assembly.StitchedRim: "stitched"}
	for _, e := range r.Edges {
		name := e.Path()
		if e.From != "" {
			name += "[" + min(e.From, e.To) + "," + max(e.From, e.To) + "]"
		}
		if e.Rim != assembly.Raw {
			name += ":" + word[e.Rim]
		}
		all = append(all, name)
	}
	slices.Sort(all)
	return
}

func paths(list []*model.Instance) (all []string) {
	for _, i := range list {
		all = append(all, i.Path())
	}
	return
}

func waits(list []assembly.Waiting) (all []string) {
	for _, x := range list {
		all = append(all, strings.TrimSuffix(x.Join.Seam.ID+"."+x.Join.Side.String(), "."))
	}
	return
}

// The expectations were worked out by hand, with five pieces of paper and tape.
func TestDuskSkirtInHand(t *testing.T) {
	p := sample(t, "dusk-skirt")
	for _, c := range []struct {
		step   string
		choice compiler.Choice
		want   string
	}{
		{"fuse-facing", compiler.Choice{View: "A"}, `
loose: back side-panel.left side-panel.right over-front under-front wrap-facing waistband
unfused: waistband`},
		{"front-seams", compiler.Choice{View: "A"}, `
back side-panel.left side-panel.right over-front under-front
  (back.hem back.waist over-front.corner over-front.hem over-front.waist over-front.wrap side-panel.left.hem side-panel.left.waist side-panel.right.hem side-panel.right.waist under-front.hem under-front.waist under-front.wrap)
loose: wrap-facing waistband`},
		{"face-wrap", compiler.Choice{View: "A"}, `
back side-panel.left side-panel.right over-front under-front wrap-facing
  (back.hem back.waist over-front.hem over-front.waist side-panel.left.hem side-panel.left.waist side-panel.right.hem side-panel.right.waist under-front.hem under-front.waist under-front.wrap:hemmed wrap-facing.inner:finished wrap-facing.top)
loose: waistband
unpressed: wrap-edge wrap-foot`},
		{"facing-in", compiler.Choice{View: "B"}, `
back side-panel.left side-panel.right over-front under-front wrap-facing
  (back.hem back.waist over-front.hem over-front.waist side-panel.left.hem side-panel.left.waist side-panel.right.hem side-panel.right.waist under-front.hem under-front.waist under-front.wrap:hemmed wrap-facing.inner:finished wrap-facing.top)
loose: waistband`},
		// Three layers meet in the waist seam at the facing, so the run of open edges ends there.
		{"band-on", compiler.Choice{View: "A"}, `
back side-panel.left side-panel.right over-front under-front wrap-facing waistband
  back.hem over-front.hem side-panel.left.hem side-panel.right.hem under-front.hem under-front.wrap:hemmed waistband.over-end waistband.top:pressed waistband.under-end wrap-facing.inner:finished`},
		{"band-ends", compiler.Choice{View: "A", Ways: map[string]string{"band": "bound"}}, `
back side-panel.left side-panel.right over-front under-front wrap-facing waistband
  back.hem over-front.hem side-panel.left.hem side-panel.right.hem under-front.hem under-front.wrap:hemmed waistband.top:bound wrap-facing.inner:finished`},
		// Each bag hangs on its panel; the side seams are open from the waist to the hem.
		{"bags-on", compiler.Choice{View: "A", With: []string{"pockets"}}, `
back pocket-bag.under.left pocket-bag.under.right
  (back.hem back.left.side[hem,pocket-end] back.left.side[pocket-top,waist] back.right.side[hem,pocket-end] back.right.side[pocket-top,waist] back.waist pocket-bag.under.left.bag pocket-bag.under.right.bag)
side-panel.left pocket-bag.upper.left
  (pocket-bag.upper.left.bag side-panel.left.front-seam side-panel.left.hem side-panel.left.side[hem,pocket-end] side-panel.left.side[pocket-top,waist] side-panel.left.waist)
side-panel.right pocket-bag.upper.right
  (pocket-bag.upper.right.bag side-panel.right.front-seam side-panel.right.hem side-panel.right.side[hem,pocket-end] side-panel.right.side[pocket-top,waist] side-panel.right.waist)
loose: over-front under-front wrap-facing waistband
unpressed: pocket-front.left pocket-front.right pocket-back.left pocket-back.right
unfinished: pocket-front.left pocket-front.right pocket-back.left pocket-back.right`},
	} {
		a := garment(t, p, c.choice)
		if got, want := told(assembly.After(p, a, step(t, p, c.step))), strings.TrimSpace(c.want); got != want {
			t.Errorf("after %s:\n%s\nwant:\n%s", c.step, got, want)
		}
	}
}

// Round the skirt, edges follow each other as they lie: from the waist of the
// under front round the hem and back.
func TestOrderRoundTheSkirt(t *testing.T) {
	p := sample(t, "dusk-skirt")
	s := assembly.After(p, garment(t, p, compiler.Choice{View: "A"}), step(t, p, "front-seams"))
	var got []string
	for _, e := range s.Assemblies[0].Rounds[0].Edges {
		got = append(got, e.Path())
	}
	want := strings.Fields("under-front.waist side-panel.left.waist back.waist side-panel.right.waist over-front.waist over-front.wrap over-front.corner over-front.hem side-panel.right.hem back.hem side-panel.left.hem under-front.hem under-front.wrap")
	if !sameRound(got, want) {
		t.Errorf("the edges follow each other so:\n%s", strings.Join(got, " "))
	}
	s = assembly.After(p, garment(t, p, compiler.Choice{View: "A"}), step(t, p, "band-on"))
	got = nil
	for _, e := range s.Assemblies[0].Rounds[0].Edges {
		got = append(got, e.Path())
	}
	// each end of the band lies at its own wrap edge
	if text := strings.Join(got, " "); !strings.Contains(text, "under-front.wrap waistband.under-end waistband.top waistband.over-end") &&
		!strings.Contains(text, "waistband.over-end waistband.top waistband.under-end under-front.wrap") {
		t.Errorf("with the band on, they follow each other so:\n%s", text)
	}
}

// sameRound reports whether two rounds are one, from wherever and either way.
func sameRound(a, b []string) bool {
	if len(a) != len(b) {
		return false
	}
	for range 2 {
		for range a {
			if a = append(a[1:], a[0]); slices.Equal(a, b) {
				return true
			}
		}
		slices.Reverse(a)
	}
	return false
}

func TestStockLeft(t *testing.T) {
	p := sample(t, "puddle-cape")
	a := garment(t, p, compiler.Choice{})
	left := func(name string) string {
		s := assembly.After(p, a, step(t, p, name))
		var all []string
		for _, x := range s.Stock {
			all = append(all, fmt.Sprintf("%s %s %d of %d", x.Notion.ID, x.Half, x.Used, x.Of))
		}
		return strings.Join(all, "; ")
	}
	if got := left("pull-test"); !strings.Contains(got, "snap socket 5 of 5; snap stud 5 of 5") {
		t.Errorf("when the snaps are set: %s", got)
	}
	if got := left("fitting"); !strings.Contains(got, "snap socket 0 of 5; snap stud 0 of 5") {
		t.Errorf("before the snaps are set: %s", got)
	}
}

// When the last step of a sample is done, one garment is there, whatever was
// chosen, and beside it only what is an item of its own.
func TestNothingIsLeftAtTheEnd(t *testing.T) {
	for _, name := range []string{"dusk-skirt", "market-apron", "puddle-cape", "gale-parka"} {
		p := sample(t, name)
		last := p.Steps()[len(p.Steps())-1]
		n := 0
		everyGarment(p, func(a condition.Assignment) {
			n++
			s := assembly.After(p, a, last)
			whole := 0
			for _, x := range s.Assemblies {
				if !x.Separate {
					whole++
				}
			}
			left := len(s.Loose) + len(s.Unfused) + len(s.Openings) + len(s.Started) + len(s.Unpressed) + len(s.Unfinished)
			for _, x := range s.Stock {
				left += x.Of - x.Used
			}
			if whole != 1 || left > 0 {
				t.Errorf("%s %v: %d assemblies, and left:\n%s", name, a, whole, told(s))
			}
			before := assembly.After(p, a, nil)
			if len(before.Assemblies) > 0 || len(before.Loose) == 0 {
				t.Errorf("%s %v: before the first step something hangs together:\n%s", name, a, told(before))
			}
		})
		if n < 2 {
			t.Errorf("%s has %d garments", name, n)
		}
	}
}

// everyGarment calls f for all that can be chosen, in the first size.
func everyGarment(p *model.Pattern, f func(condition.Assignment)) {
	a := make(condition.Assignment, p.Space.Vars())
	var from func(v int)
	from = func(v int) {
		if v == len(a) {
			if p.Space.Eval(p.Valid, a) {
				f(slices.Clone(a))
			}
			return
		}
		x := p.Space.Var(condition.VarID(v))
		for a[v] = range x.Values {
			if x.Kind != condition.Size || a[v] == 0 {
				from(v + 1)
			}
		}
		a[v] = 0
	}
	from(0)
}
