// Package check judges a pattern: one file for each kind of rule, and a registry
// from which the reference page and `explain` are made.
//
// In: a [model.Pattern]. Out: findings, each reported once with the smallest
// description of the garments in which it holds. It knows how sewing works from
// the table of operations and the pattern's own declarations, and nothing of how
// a finding is printed.
//
// One mistake gives one finding. A rule that reports a thing tells so, for the
// garments in which it holds; the rules that run after it keep silent about that
// thing there. Rules further ahead run first. What is wrong with several things
// in the same garments and for the same reason is reported together.
package check

import (
	"fmt"
	"slices"
	"sort"

	"seamwarden/compiler/assembly"
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

// Rule is one thing that is checked. FailingFiles and PassingFiles are whole
// patterns that show it; the tests run them.
type Rule struct {
	ID       string
	Purpose  string // one line
	Why      string
	Severity finding.Severity
	Category string
	Since    string
	// Besides says why the failing example gives other findings too, or none that
	// counts; "" if it gives exactly one of this rule.
	Besides string
	// FromAbsence marks a rule that concludes from what is not there. It waits
	// until everything could be read.
	FromAbsence bool
	// Asked marks a rule of taste: it runs only where it is asked for by name.
	Asked bool
	whole bool       // it needs every guard and name, and waits likewise
	ahead int        // rules with more run first
	run   func(*run) // nil for what is found outside this package
}

var registry []*Rule

func register(r Rule) *Rule {
	if r.Since == "" {
		r.Since = "0.1"
	}
	r.Besides = besides[r.ID]
	registry = append(registry, &r)
	return &r
}

// Rules lists every rule by name.
func Rules() []*Rule {
	all := append([]*Rule(nil), registry...)
	sort.Slice(all, func(i, j int) bool { return all[i].ID < all[j].ID })
	return all
}

// Find gives a rule by name, nil if there is none.
func Find(id string) *Rule {
	for _, r := range registry {
		if r.ID == id {
			return r
		}
	}
	return nil
}

// run is one pass over one pattern.
type run struct {
	*model.Pattern
	index    *index
	rule     *Rule
	also     []string // rules that were asked for
	names    condition.Names
	out      []finding.Finding
	facts    *assembly.Facts
	playing  *playing                        // the steps are being played; nil if nobody has asked yet
	work     *work                           // what is done to each thing, in order; see deeds
	measured []*band                         // what goes along edges, with its lengths; nil if nobody has asked yet
	idle     map[*model.Op]bool              // operations that hold for no garment
	spoken   map[any]condition.Cond          // of each thing, where a finding about it is reported
	uncut    map[*model.Piece]condition.Cond // where a piece is reported as not cut
	found    map[condition.Cond]bool         // the garments in which findings hold
	keep     func(rule string, at finding.Span, bad condition.Cond)
}

// Run checks a pattern. broken says that some of it could not be read: rules that
// conclude from absence are then left out, and that is said. also names the rules
// that run only when they are asked for.
func Run(p *model.Pattern, broken bool, also ...string) []finding.Finding {
	r := newRun(p)
	r.also = also
	return r.all(broken)
}

func newRun(p *model.Pattern) *run {
	r := &run{Pattern: p, names: namesOf(p), spoken: map[any]condition.Cond{}, found: map[condition.Cond]bool{}, uncut: map[*model.Piece]condition.Cond{}}
	r.index = indexOf(p)
	if r.idle = r.idleOps(); len(r.idle) > 0 {
		r.Pattern = asMeant(p, r.idle)
		r.index = indexOf(r.Pattern)
	}
	r.facts = assembly.Gather(r.Pattern)
	return r
}

func (r *run) all(broken bool) []finding.Finding {
	if !broken {
		r.playing = beginPlay(r.Pattern, r.facts)
	}
	order := slices.Clone(registry)
	slices.SortStableFunc(order, func(a, b *Rule) int { return b.ahead - a.ahead })
	for _, rule := range order {
		if rule.run == nil || rule.Asked && !slices.Contains(r.also, rule.ID) || broken && (rule.FromAbsence || rule.whole) {
			continue
		}
		r.rule = rule
		rule.run(r)
	}
	if broken {
		r.out = append(r.out, waiting(r.Pattern))
	}
	for _, u := range r.Unchecked {
		r.out = append(r.out, unchecked(u))
	}
	return r.out
}

// report says that a finding holds wherever bad does; nothing if that is nowhere.
// With several things in one finding, others are the places of those that do not
// stand first.
func (r *run) report(bad condition.Cond, f finding.Finding, others ...finding.Span) {
	bad = r.Space.And(bad, r.Valid)
	if bad == condition.False {
		return
	}
	if f.Rule == "" {
		f.Rule, f.Severity, f.Why = r.rule.ID, r.rule.Severity, r.rule.Why
	}
	if r.keep != nil {
		for _, at := range append(others, f.Place.Span) {
			r.keep(f.Rule, at, bad)
		}
	}
	if bad == condition.Undecided {
		f.Severity, f.Headline = finding.Unchecked, "Too many choices meet here to decide: "+f.Headline
		r.out = append(r.out, f)
		return
	}
	r.found[bad] = true
	f.When = r.where(bad)
	if w, ok := r.Space.Witness(bad); ok && f.When != "" {
		f.Witness = r.Space.WordsFor(w, r.names, r.dependsOnSize(bad))
	}
	r.out = append(r.out, f)
}

// where says in which garments a condition holds, "" for all.
func (r *run) where(c condition.Cond) string {
	return r.Space.Words(r.Space.Smallest(c, r.Valid), r.names)
}

// tell notes that a finding about a thing is reported wherever bad holds.
func (r *run) tell(thing any, bad condition.Cond) {
	r.spoken[thing] = r.Space.Or(r.spoken[thing], bad)
}

// unsaid leaves out of a condition where a thing has been reported already.
func (r *run) unsaid(thing any, bad condition.Cond) condition.Cond {
	return r.Space.Diff(bad, r.spoken[thing])
}

// explained reports whether something else is found in the very same garments,
// and not in all: then what is left over there follows from it.
func (r *run) explained(bad condition.Cond) bool {
	bad = r.Space.And(bad, r.Valid)
	return bad != r.Valid && r.found[bad]
}

// clear leaves out of a condition where any seam has been reported, or it is not
// known what it joins: nobody knows then what hangs together.
func (r *run) clear(c condition.Cond) condition.Cond {
	for _, s := range r.Seams {
		c = r.unsaid(s, c)
		if len(s.Copies) == 0 {
			c = condition.False
		}
	}
	return c
}

func (r *run) dependsOnSize(c condition.Cond) bool {
	for _, v := range r.Space.Support(c) {
		if r.Space.Var(v).Kind == condition.Size {
			return true
		}
	}
	return false
}

func (r *run) possible(c condition.Cond) bool { return r.Space.And(c, r.Valid) != condition.False }

// at makes a finding of the rule that is running.
func at(span finding.Span, label, headline, help string) finding.Finding {
	return finding.Finding{Headline: headline, Place: finding.Place{Span: span, Label: label}, Help: help}
}

func also(f finding.Finding, span finding.Span, label string) finding.Finding {
	if span != (finding.Span{}) {
		f.Related = append(f.Related, finding.Place{Span: span, Label: label})
	}
	return f
}

// Names gives the words for a pattern's choices.
func Names(p *model.Pattern) condition.Names { return namesOf(p) }

func namesOf(p *model.Pattern) condition.Names {
	option := map[condition.VarID]*model.Option{}
	for _, o := range p.Options {
		option[o.Var] = o
	}
	choice := map[condition.VarID]*model.Choice{}
	for _, c := range p.Choices {
		choice[c.Var] = c
	}
	return condition.Names{
		View:   func(_ condition.VarID, v int) string { return p.Views[v].ID },
		Option: func(v condition.VarID) string { return lower(option[v].Name) },
		Choice: func(v condition.VarID, i int) string {
			return "the " + lower(choice[v].Name) + " is " + choice[v].Values[i].Name
		},
		Chosen: func(v condition.VarID, i int) string { return lower(choice[v].Name) + " " + choice[v].Values[i].Name },
		Size:   func(_ condition.VarID, i int) string { return p.Sizes.Sizes[i] },
	}
}

func lower(s string) string {
	capital := func(c byte) bool { return c >= 'A' && c <= 'Z' }
	if len(s) > 1 && capital(s[0]) && !capital(s[1]) {
		return string(s[0]+'a'-'A') + s[1:]
	}
	return s
}

func waiting(p *model.Pattern) finding.Finding {
	return finding.Finding{Rule: "not-checked", Severity: finding.Unchecked, Place: finding.Place{Span: p.TitleSpan},
		Headline: "Whether everything is cut, sewn, used and closed was not checked, since part of the pattern could not be read.",
		Help:     "Mend the errors above; the rest is checked then."}
}

func unchecked(u model.Unchecked) finding.Finding {
	return finding.Finding{Rule: "not-checked", Severity: finding.Unchecked, Place: finding.Place{Span: u.Span},
		Headline: fmt.Sprintf("Not checked yet: %s.", u.What)}
}
