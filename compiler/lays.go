package compiler

import (
	"errors"
	"fmt"
	"io/fs"
	"slices"
	"sync"

	"seamwarden/compiler/check"
	"seamwarden/compiler/condition"
	"seamwarden/compiler/lay/lock"
	"seamwarden/compiler/lay/wanted"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

// LaysFile is where the lays of a pattern are remembered, in its folder.
const LaysFile = "lays.lock"

// Lays is what a pattern needs to be laid, and what is remembered of it. Of a lay that
// holds, Found is set. File is never nil; it may remember lays that do not hold.
type Lays struct {
	Wanted []*model.Laying
	Not    []wanted.NotLaid
	File   *lock.File
	found  []finding.Finding
}

// Named are the lays that are wanted, as the file knows them.
func (l *Lays) Named() (all []lock.Named) {
	for _, w := range l.Wanted {
		all = append(all, lock.Named{Label: w.Label, Job: w.Job})
	}
	return
}

// laysFile is the file of remembered lays; src is nil if there is none.
type laysFile struct {
	src []byte
	err error
}

// remembered reads the lays that are remembered.
func (r *reader) remembered() *begun[laysFile] {
	return begin(r.ahead, r.ahead.locks, LaysFile, func() (f laysFile) {
		if f.src, f.err = r.read(LaysFile); errors.Is(f.err, fs.ErrNotExist) {
			f.src, f.err = nil, nil
		}
		return
	})
}

// lays says which lays a pattern needs, and looks at those that are remembered, beside
// the rules, or once they are asked for if there are none. What is not known of them is
// listed as not checked. The function gives what came of it.
func (r *reader) lays(p *model.Pattern) func() *Lays {
	names := check.Names(p)
	words := func(c condition.Cond) string { return p.Space.Words(p.Space.Smallest(c, p.Valid), names) }
	plan := wanted.Sets(p, words)
	r.plan = plan
	for _, n := range plan.Not() {
		p.Unchecked = append(p.Unchecked, model.Unchecked{What: n.What(words(n.Cond)), Span: n.Span})
	}
	file := r.remembered().wait()
	look := sync.OnceValue(func() *Lays { return look(plan, file.src) })
	if file.src != nil {
		r.result.Sources[LaysFile] = string(file.src)
		look = begin(r.ahead, r.ahead.laid, "", look).wait
	}
	p.Layings = func() []*model.Laying { return look().Wanted }
	return look
}

// look draws out what is to be laid and checks each remembered lay against it.
func look(plan *wanted.Plan, src []byte) *Lays {
	list := plan.Draw()
	l := &Lays{Wanted: list.Lays, Not: list.Not, File: &lock.File{Name: LaysFile}}
	if src == nil {
		return l
	}
	l.File, l.found = lock.Decode(LaysFile, src)
	broken := len(l.found) > 0
	var tooWide []finding.Finding
	lays, more := l.File.Look(l.Named(), func(i int) error {
		why := l.Wanted[i].Job.Possible()
		if why != nil {
			tooWide = append(tooWide, widerThanCloth(l.Wanted[i], why))
		}
		return why
	})
	for i, found := range lays {
		l.Wanted[i].Found = found
	}
	for _, f := range more {
		switch {
		case f.Rule == lock.RuleUnused && len(l.Not) > 0: // it may be that of a cloth which is not laid now
		case f.Rule == lock.RuleMissing && broken: // it may be that which cannot be read
		default:
			l.found = append(l.found, f)
		}
	}
	l.found = append(l.found, onceEach(tooWide)...)
	return l
}

// widerThanCloth says that something cannot be laid.
func widerThanCloth(l *model.Laying, why error) finding.Finding {
	return finding.Finding{Rule: "wider-than-its-cloth", Severity: finding.Error, Place: finding.Place{Span: l.Width.Span, Label: "too narrow"},
		Headline: fmt.Sprintf("The %s cannot be cut from cloth %s wide: %v.", wanted.Lower(l.Material.Name), l.Width, why),
		Why:      "Whoever buys that width finds out with the scissors in her hand.",
		Help:     "Take the width out, divide the piece by a seam, or let it lie otherwise, such as `on crossgrain`."}
}

// onceEach keeps the first finding at each place.
func onceEach(list []finding.Finding) (out []finding.Finding) {
	seen := map[finding.Span]bool{}
	for _, f := range list {
		if !seen[f.Place.Span] {
			seen[f.Place.Span] = true
			out = append(out, f)
		}
	}
	return
}

// laysJudged gives what is wrong with the lays that are remembered. While the pattern
// has errors, it is not told which lays are out of date, missing or not needed: mending
// the pattern changes what is cut, and one mistake is told once.
func (r *reader) laysJudged(lays func() *Lays, others []finding.Finding) []finding.Finding {
	file := r.remembered().wait()
	switch {
	case file.err != nil:
		return []finding.Finding{cannotOpen(finding.Span{File: LaysFile}, LaysFile, "file", file.err)}
	case file.src == nil:
		return nil
	}
	found := slices.Clone(lays().found)
	if slices.ContainsFunc(others, func(f finding.Finding) bool { return f.Severity == finding.Error }) {
		found = slices.DeleteFunc(found, func(f finding.Finding) bool {
			return f.Rule == lock.RuleStale || f.Rule == lock.RuleMissing || f.Rule == lock.RuleUnused
		})
	}
	return found
}

// notLaid says so where no lay is remembered at all. It can wait until everything else
// is right, and draws nothing out.
func (r *reader) notLaid(p *model.Pattern) []finding.Finding {
	if file := r.remembered().wait(); file.err == nil && file.src == nil && r.plan.Ready() {
		return []finding.Finding{lock.None(p.TitleSpan)}
	}
	return nil
}
