package check

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"seamwarden/compiler/assembly"
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl"
	"seamwarden/dsl/finding"
)

// The rules decide for all garments at once. The oracle decides for each alone: a
// pattern is written out for one garment, with every guard evaluated and what does
// not hold left blank, and what is found in it must be what the rules say holds in
// that garment, on the same lines.

// compared are the rules that are held against the oracle.
var compared = []string{"piece-not-cut", "piece-never-used", "seam-never-sewn", "seam-sewn-twice", "notion-count", "notion-never-used",
	"interfacing-never-fused", "interfacing-not-cut", "edge-left-raw", "edge-in-two-seams", "one-side-only"}

func TestConditionsAgreeWithEveryGarment(t *testing.T) {
	counts := map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		p := drawPattern(t)
		all, space, sound := symbolic(t, p.whole())
		if !sound {
			t.Skip("a guard holds nowhere, or a seam could not be worked out")
		}
		for _, g := range garments() {
			want := map[string]bool{}
			for _, k := range all {
				if space.Eval(k.cond, g.assignment(space)) {
					want[k.what] = true
				}
			}
			got := alone(t, p.of(g))
			if !maps.Equal(got, want) {
				t.Fatalf("in %+v\nfor all at once: %v\nalone: %v\n%s\n--- alone:\n%s", g, slices.Sorted(maps.Keys(want)), slices.Sorted(maps.Keys(got)), p.whole(), p.of(g))
			}
			for k := range got {
				counts[strings.Fields(k)[0]]++
			}
		}
	})
	for _, id := range compared[:7] { // the others are rarer
		if counts[id] == 0 && !t.Failed() {
			t.Errorf("%s was never found: the patterns are too tame", id)
		}
	}
	t.Log(counts)
}

// garment is one choice of everything.
type garment struct {
	view, choice   int
	pockets, lined bool
}

func garments() (all []garment) {
	for i := range 16 {
		all = append(all, garment{i & 1, i >> 1 & 1, i>>2&1 == 1, i>>3&1 == 1})
	}
	return
}

func (g garment) assignment(s *condition.Space) condition.Assignment {
	a := make(condition.Assignment, s.Vars())
	for v := range a {
		switch x := s.Var(condition.VarID(v)); {
		case x.Kind == condition.View:
			a[v] = g.view
		case x.Kind == condition.Choice:
			a[v] = g.choice
		case x.Name == "pockets" && g.pockets, x.Name == "lined" && g.lined:
			a[v] = condition.With
		}
	}
	return a
}

// guard is a guard and what it means.
type guard struct {
	text  string
	holds func(garment) bool
}

var always = guard{"", func(garment) bool { return true }}

func drawGuard(t *rapid.T, what string) guard {
	atoms := []guard{
		{"A", func(g garment) bool { return g.view == 0 }},
		{"B", func(g garment) bool { return g.view == 1 }},
		{"pockets", func(g garment) bool { return g.pockets }},
		{"not pockets", func(g garment) bool { return !g.pockets }},
		{"lined", func(g garment) bool { return g.lined }},
		{"edge is bound", func(g garment) bool { return g.choice == 1 }},
	}
	atom := func() guard { return rapid.SampledFrom(atoms).Draw(t, what) }
	switch rapid.IntRange(0, 9).Draw(t, what+" kind") {
	default:
		return always
	case 0, 1, 2:
		return atom()
	case 3:
		a, b := atom(), atom()
		return guard{a.text + " and " + b.text, func(g garment) bool { return a.holds(g) && b.holds(g) }}
	case 4:
		a, b := atom(), atom()
		return guard{a.text + " or " + b.text, func(g garment) bool { return a.holds(g) || b.holds(g) }}
	}
}

// line is a line of a pattern: what stands there for all garments, and for one.
type line struct {
	text  string // without its guard
	guard guard
	tail  string
	there func(garment) bool // beside the guard
	every bool               // only in the pattern for all garments
}

type pattern struct {
	lines  []line
	paired bool // every piece is cut as a left and a right one
}

func (p *pattern) add(text string, g guard, tail string, there ...func(garment) bool) func(garment) bool {
	all := func(x garment) bool {
		for _, f := range there {
			if !f(x) {
				return false
			}
		}
		return true
	}
	p.lines = append(p.lines, line{text: text, guard: g, tail: tail, there: all})
	return func(x garment) bool { return g.holds(x) && all(x) }
}

func (p *pattern) whole() string {
	var out strings.Builder
	for _, l := range p.lines {
		out.WriteString(l.text)
		if l.guard.text != "" {
			out.WriteString(" when " + l.guard.text)
		}
		out.WriteString(l.tail + "\n")
	}
	return out.String()
}

func (p *pattern) of(g garment) string {
	var out strings.Builder
	for _, l := range p.lines {
		if !l.every && l.guard.holds(g) && l.there(g) {
			out.WriteString(l.text + l.tail)
		}
		out.WriteString("\n")
	}
	return out.String()
}

// drawPattern makes a small pattern in which much is wrong.
func drawPattern(t *rapid.T) *pattern {
	p := &pattern{paired: rapid.IntRange(0, 2).Draw(t, "paired") == 0}
	p.add(`pattern "Oracle" { allow 1cm }`, always, "")
	for _, s := range []string{`view A "A"`, `view B "B"`, `option pockets "Pockets"`, `option lined "Lining"`, `choice edge "Edge" { hemmed "hemmed", bound "bound" }`} {
		p.lines = append(p.lines, line{text: s, guard: always, every: true})
	}
	p.add(`fabric main "Main" { widths 140cm }`, always, "")
	p.add(`interfacing firm "Firm" fusible { widths 90cm }`, always, "")
	button := p.add(fmt.Sprintf("notion button %d \"Button\"", rapid.IntRange(1, 3).Draw(t, "listed")), drawGuard(t, "button"), "")
	pieces := make([]func(garment) bool, rapid.IntRange(2, 4).Draw(t, "pieces"))
	for i := range pieces {
		pieces[i] = p.piece(t, i)
	}
	seams := make([]func(garment) bool, rapid.IntRange(1, 4).Draw(t, "seams"))
	for i := range seams {
		a := rapid.IntRange(0, len(pieces)-2).Draw(t, "from")
		b := rapid.IntRange(a+1, len(pieces)-1).Draw(t, "to")
		edge := func() string { return rapid.SampledFrom([]string{"top", "side", "base"}).Draw(t, "edge") }
		seams[i] = p.add(fmt.Sprintf("seam s%d joins p%d.%s to p%d.%s", i, a, edge(), b, edge()), drawGuard(t, "seam"), "", pieces[a], pieces[b])
	}
	for i := range rapid.IntRange(1, 3).Draw(t, "steps") {
		p.step(t, i, pieces, seams, button)
	}
	return p
}

func (p *pattern) piece(t *rapid.T, i int) func(garment) bool {
	there := p.add(fmt.Sprintf("piece p%d %d \"Piece %d\"", i, i+1, i), drawGuard(t, "piece"), " {")
	lay := []string{"symmetric", "1 main", "1 firm"}
	if p.paired {
		lay = []string{"drawn as right", "2 main mirrored", "2 firm mirrored"}
	}
	p.add(lay[0], always, "", there)
	p.add("edges top, side, base", always, "", there)
	cut := drawGuard(t, "cut")
	if p.paired {
		cut = always // without a cut line there is no left one to name
	}
	p.add("cut "+lay[1], cut, "", there)
	if rapid.Bool().Draw(t, "fused") {
		p.add("cut "+lay[2], drawGuard(t, "interfacing"), "", there)
	}
	p.add("}", always, "", there)
	return there
}

func (p *pattern) step(t *rapid.T, i int, pieces, seams []func(garment) bool, button func(garment) bool) {
	step := p.add(fmt.Sprintf("step t%d \"Step %d\"", i, i), drawGuard(t, "step"), " {")
	for range rapid.IntRange(1, 5).Draw(t, "operations") {
		n := rapid.IntRange(0, len(pieces)-1).Draw(t, "piece")
		side := ""
		if p.paired {
			side = rapid.SampledFrom([]string{"", "", "", ".left", ".right"}).Draw(t, "side")
		}
		switch rapid.IntRange(0, 5).Draw(t, "operation") {
		case 0, 1:
			s := rapid.IntRange(0, len(seams)-1).Draw(t, "seam")
			p.add(fmt.Sprintf("sew s%d%s", s, side), drawGuard(t, "sew"), "", step, seams[s])
		case 2:
			p.add(fmt.Sprintf("hem p%d%s.%s turning 1cm, 1cm", n, side, rapid.SampledFrom([]string{"top", "side", "base"}).Draw(t, "edge")), drawGuard(t, "hem"), "", step, pieces[n])
		case 3:
			p.add(fmt.Sprintf("fuse p%d%s", n, side), drawGuard(t, "fuse"), "", step, pieces[n])
		case 4:
			p.add(fmt.Sprintf("finish p%d.top, p%d.side, p%d.base with zigzag", n, n, n), drawGuard(t, "finish"), "", step, pieces[n])
		case 5:
			p.add(fmt.Sprintf("sew on %d button at p%d.top", rapid.IntRange(1, 2).Draw(t, "buttons"), n), drawGuard(t, "sew on"), "", step, button, pieces[n])
		}
	}
	p.add("}", always, "", step)
}

// kept is a finding with the condition in which it holds.
type kept struct {
	what string // the rule and the line
	cond condition.Cond
}

// symbolic checks a pattern for all garments. It is not sound if something in it
// holds for no garment: then the rules keep silent about what follows.
func symbolic(t *rapid.T, src string) (all []kept, s *condition.Space, sound bool) {
	p, found := build(src)
	sound = true
	for _, f := range p.Findings {
		sound = sound && f.Severity != finding.Error
	}
	if len(found) > 0 {
		t.Fatalf("not read: %v\n%s", found[0].Headline, src)
	}
	r := newRun(p)
	r.keep = func(rule string, at finding.Span, bad condition.Cond) {
		sound = sound && rule != "never-applies" && bad != condition.Undecided
		if slices.Contains(compared, rule) {
			all = append(all, kept{fmt.Sprintf("%s %d", rule, at.Start.Line), bad})
		}
	}
	r.all(false)
	return all, p.Space, sound
}

// alone checks a pattern for one garment and gives what is found in it.
func alone(t *rapid.T, src string) map[string]bool {
	p, found := build(src)
	for _, f := range append(found, p.Findings...) {
		t.Fatalf("alone it gives %s: %s\n%s", f.Rule, f.Headline, src)
	}
	got := map[string]bool{}
	r := newRun(p)
	r.keep = func(rule string, at finding.Span, _ condition.Cond) {
		if slices.Contains(compared, rule) {
			got[fmt.Sprintf("%s %d", rule, at.Start.Line)] = true
		}
	}
	r.all(false)
	return got
}

// build reads a pattern of one file.
func build(src string) (*model.Pattern, []finding.Finding) {
	f := dsl.Parse("pattern.seam", []byte(src))
	var all []model.Source
	for _, s := range f.Sentences {
		all = append(all, model.Source{Sentence: s, File: f.Name})
	}
	p := model.Build(all, nil, model.Text{})
	assembly.Deduce(p)
	return p, f.Findings
}
