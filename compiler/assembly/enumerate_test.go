package assembly_test

import (
	"fmt"
	"math/rand/v2"
	"regexp"
	"slices"
	"sort"
	"strings"
	"testing"

	"seamwarden/compiler/assembly"
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl"
	"seamwarden/dsl/finding"
)

// The oracle of conditions: every garment by itself. The steps of an order are moved
// about and guarded at random; then, for each garment, the pattern is written down
// again without guards, with the steps that this garment has. What is found in it
// must be what is found in the guarded pattern for that garment.

// guard is a condition on a step, as text and as a function of the options taken.
type guard struct {
	text  string
	holds func(taken []bool) bool
}

const guardOptions = 3

func optionName(n int) string { return string(rune('a'+n)) + "-option" }

// newGuard makes a random guard of up to two options; the zero guard always holds.
func newGuard(r *rand.Rand) guard {
	x := r.IntN(guardOptions)
	y := (x + 1 + r.IntN(guardOptions-1)) % guardOptions
	a, b := optionName(x), optionName(y)
	switch r.IntN(9) {
	case 0, 1:
		return guard{a, func(t []bool) bool { return t[x] }}
	case 2:
		return guard{"not " + a, func(t []bool) bool { return !t[x] }}
	case 3:
		return guard{a + " and " + b, func(t []bool) bool { return t[x] && t[y] }}
	case 4:
		return guard{a + " or " + b, func(t []bool) bool { return t[x] || t[y] }}
	case 5:
		return guard{a + " and not " + b, func(t []bool) bool { return t[x] && !t[y] }}
	}
	return guard{"", func([]bool) bool { return true }}
}

// shuffle moves some steps to random places and guards them.
func shuffle(t testing.TB, r *rand.Rand, o *ordered) (*ordered, []guard) {
	for range r.IntN(4) {
		a, b := o.steps[r.IntN(len(o.steps))].id, o.steps[r.IntN(len(o.steps))].id
		if a != b && r.IntN(2) == 0 {
			o = o.move(t, a, r.IntN(2) == 0, b)
		}
	}
	var guards []guard
	for range o.steps {
		guards = append(guards, newGuard(r))
	}
	return o, guards
}

var stepHead = regexp.MustCompile(`(?m)^( *step [a-z-]+ "[^"]*") \{`)

// guarded writes an order with its guards. A moved step stands in the text of
// another one; both have the guard of that one.
func (o *ordered) guarded(guards []guard) string {
	x := &ordered{head: o.head}
	for n, s := range o.steps {
		if guards[n].text != "" {
			s.text = stepHead.ReplaceAllString(s.text, "$1 when "+guards[n].text+" {")
		}
		x.steps = append(x.steps, s)
	}
	var b strings.Builder
	for n := range guardOptions {
		fmt.Fprintf(&b, "option %s \"Option\"\n\n", optionName(n))
	}
	return withoutWords(x.String()) + "\n" + b.String()
}

// withoutWords leaves out the glossary, and adds a step that mentions the opening, so
// that it is not taken for one that nothing uses.
func withoutWords(text string) string {
	text = strings.ReplaceAll(text, "include \"words.seam\"\n", "")
	if leavesGap.MatchString(text) {
		text += "\nstep look \"Look at the opening\" {\n  open gap\n}\n"
	}
	return text
}

var leavesGap = regexp.MustCompile(`open as gap`)

// specialised writes an order for one garment: without the steps that it does not
// have, and without what needs an opening that nothing leaves.
func (o *ordered) specialised(guards []guard, taken []bool) string {
	x := &ordered{head: o.head}
	for n, s := range o.steps {
		if !guards[n].holds(taken) {
			s.text = ""
		}
		x.steps = append(x.steps, s)
	}
	text := withoutWords(x.String())
	if !leavesGap.MatchString(text) {
		lines := slices.DeleteFunc(strings.Split(text, "\n"), func(l string) bool { return strings.HasSuffix(l, " gap") })
		text = strings.Join(lines, "\n")
	}
	return text
}

// build makes the model of a source, without the checks.
func build(t testing.TB, src string) *model.Pattern {
	t.Helper()
	f := dsl.Parse("pattern.seam", []byte(src))
	var sources []model.Source
	for _, s := range f.Sentences {
		sources = append(sources, model.Source{Sentence: s, File: "pattern.seam"})
	}
	p := model.Build(sources, nil, model.Text{})
	for _, f := range append(f.Findings, p.Findings...) {
		if f.Severity == finding.Error {
			t.Fatalf("the pattern of the test cannot be read: %s\n%s", f.Headline, src)
		}
	}
	assembly.Deduce(p)
	return p
}

// said writes a trouble down without what may differ between two patterns: places,
// and which of several causes is named.
func said(x assembly.Trouble) string {
	s := fmt.Sprintf("%d %s %s", x.Kind, x.Op.Step.ID, x.Op.Verb)
	for _, o := range x.Op.Objects {
		s += " " + o.Path
	}
	if x.Seam != nil {
		s += " seam:" + x.Seam.ID
	}
	if x.Use != nil {
		s += " edge:" + x.Use.Edge.Piece.ID + "." + x.Use.Edge.ID
	}
	if x.Gap != nil {
		s += " gap:" + x.Gap.ID
	}
	if x.Part != nil {
		s += " part:" + x.Part.Piece.ID
	}
	if x.Notion != nil {
		s += " notion:" + x.Notion.ID
	}
	return s
}

// saidOf lists what is found for one garment, and the parts that hang loose.
func saidOf(p *model.Pattern, troubles []assembly.Trouble, loose map[*model.Instance]condition.Cond, a condition.Assignment) (all []string) {
	for _, x := range troubles {
		if p.Space.Eval(x.Cond, a) {
			all = append(all, said(x))
		}
	}
	for i, c := range loose {
		if p.Space.Eval(p.Space.And(c, p.Valid), a) {
			all = append(all, "loose "+i.Path())
		}
	}
	sort.Strings(all)
	return slices.Compact(all)
}

func played(p *model.Pattern) ([]assembly.Trouble, map[*model.Instance]condition.Cond) {
	return assembly.Play(p), assembly.Loose(p, assembly.Gather(p))
}

// assignment gives the garment in which these options are taken.
func assignment(p *model.Pattern, taken []bool) condition.Assignment {
	a := make(condition.Assignment, p.Space.Vars())
	for _, o := range p.Options {
		for n := range taken {
			if o.ID == optionName(n) && taken[n] {
				a[o.Var] = condition.With
			}
		}
	}
	return a
}

func TestPlayAgreesWithEveryGarment(t *testing.T) {
	kinds, garments := map[string]bool{}, 0
	for _, c := range orderCases {
		t.Run(c.file, func(t *testing.T) {
			for seed := range uint64(20) {
				r := rand.New(rand.NewPCG(seed, uint64(len(c.file))))
				o, guards := shuffle(t, r, readOrder(t, c.file))
				garments += compareGarments(t, o, guards, kinds)
			}
		})
	}
	t.Logf("%d garments, %d kinds of trouble met", garments, len(kinds))
	if len(kinds) < 20 {
		t.Error("too few kinds of trouble: the test tells little")
	}
}

func compareGarments(t *testing.T, o *ordered, guards []guard, kinds map[string]bool) (n int) {
	t.Helper()
	src := o.guarded(guards)
	p := build(t, src)
	troubles, loose := played(p)
	for ; n < 1<<guardOptions; n++ {
		taken := make([]bool, guardOptions)
		for k := range taken {
			taken[k] = n>>k&1 == 1
		}
		q := build(t, o.specialised(guards, taken))
		alone, apart := played(q)
		got := saidOf(p, troubles, loose, assignment(p, taken))
		want := saidOf(q, alone, apart, nil)
		if !slices.Equal(got, want) {
			t.Fatalf("options %v: guarded it gives\n%s\nand alone\n%s\nof\n%s", taken, strings.Join(got, "\n"), strings.Join(want, "\n"), src)
		}
		for _, x := range alone {
			kinds[fmt.Sprint(x.Kind)] = true
		}
	}
	return
}
