package check

import (
	"fmt"

	"seamwarden/compiler/assembly"
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "toy-with-small-parts", Severity: finding.Warning, Category: "safety", run: toyParts,
		Purpose: "A toy that a child under three may get has buttons, beads, eyes or other counted parts.",
		Why:     "A part that comes off can choke a child. In the United States a toy for children under three may have no part, loose or broken off, that fits into the small-parts cylinder; dolls and stuffed animals of which no age is said are commonly taken to be for them (16 CFR 1501.2 to 1501.4)."})
	register(Rule{ID: "small-parts-without-caution", Severity: finding.Advice, Category: "safety", FromAbsence: true, run: partsUncautioned,
		Purpose: "Something for children under three has buttons, snaps or other small parts, and no caution speaks of them.",
		Why:     "The US rule on small parts leaves clothes and their buttons out (16 CFR 1501.3(d)); a button that comes off chokes all the same."})
	register(Rule{ID: "fastening-never-tested", Severity: finding.Advice, Category: "safety", FromAbsence: true, run: untested,
		Purpose: "A button or snap on something for children under three is never pulled at after it is put on.",
		Why:     "Whether it holds shows only in a pull. Common practice; the laws test with instruments, which a pull by hand does not replace."})
	register(Rule{ID: "fill-without-caution", Severity: finding.Warning, Category: "safety", FromAbsence: true, run: looseFill,
		Purpose: "Something for children has loose filling, and no caution speaks of it.",
		Why:     "Pellets and beads that come out choke a child. Stuffed toys have their seams pulled with a force in the US tests (16 CFR 1500.51 to 1500.53); the inner bag and the second row are common practice."})
}

// smallParts lists the notions that could come off: counted ones, without zips and
// filling.
func (r *run) smallParts() (all []*model.Notion) {
	for _, n := range r.Notions {
		if n.Kind == model.Counted && !n.Fill && n.Length == nil && n.BySize == "" && (n.Set || len(n.Parts) == 0) {
			all = append(all, n)
		}
	}
	return
}

// inOne reports one finding for several notions.
func (r *run) inOne(list []*model.Notion, scope condition.Cond, label, headline, help string) {
	bad := condition.False
	var there []*model.Notion
	for _, n := range list {
		if c := r.Space.And(n.Cond, scope); r.possible(c) {
			bad = r.Space.Or(bad, c)
			there = append(there, n)
		}
	}
	if len(there) == 0 {
		return
	}
	f := at(there[0].Span, label, headline, help+deferral)
	var others []finding.Span
	for _, n := range there[1:] {
		f = also(f, n.Span, "and this")
		others = append(others, n.Span)
	}
	r.report(bad, f, others...)
}

// toys is where a toy may be for a child under three: where its age is not said, it
// is.
func (r *run) toys() condition.Cond {
	if r.For != nil && (!r.ForChildren() || r.For.FromMonths >= 36) {
		return condition.False
	}
	return r.KindIs("toy")
}

func toyParts(r *run) {
	r.inOne(r.smallParts(), r.toys(), "on a toy", "A toy that a child under three may get has small parts.",
		"Embroider eyes and noses instead, or make them of cloth sewn down all round; or say the ages: `for children, ages 3 to 8 years`.")
}

func partsUncautioned(r *run) {
	scope := r.Space.Diff(r.Space.Diff(r.UnderThree(), r.toys()), r.speaksOf("small-parts"))
	r.inOne(r.smallParts(), scope, "it can come off", "No caution speaks of the small parts, and the child may be under three.",
		"Add a caution at the top of a file: `caution warning about small-parts \"…\"`.")
}

func untested(r *run) {
	place := map[*model.Op]int{}
	for i, op := range r.Ops() {
		place[op] = i
	}
	for _, n := range r.smallParts() {
		uses := r.facts.OfNotion(n)
		if len(uses) == 0 {
			continue
		}
		last := lastUse(uses, place)
		bad := r.Space.Diff(r.Space.All(n.Cond, last.Cond, r.UnderThree()), r.testedAfter(n, place[last.Op], place))
		f := at(last.Op.Span, "put on here", fmt.Sprintf("Nobody is told to pull at %s after it is put on, and the child may be under three.", lower(plain(n.Name))),
			"Add a step after this one: `test "+n.ID+"`, and say in its text how hard and how often.")
		r.report(bad, f)
	}
}

func lastUse(uses []assembly.Amount, place map[*model.Op]int) assembly.Amount {
	last := uses[0]
	for _, u := range uses {
		if place[u.Op] > place[last.Op] {
			last = u
		}
	}
	return last
}

// testedAfter is where an operation after the given one tests a notion.
func (r *run) testedAfter(n *model.Notion, after int, place map[*model.Op]int) condition.Cond {
	c := condition.False
	for _, op := range r.Ops() {
		if op.Verb != "test" || place[op] < after {
			continue
		}
		for _, o := range op.Objects {
			o.Each(func(t *model.Target) {
				if t.Notion == n {
					c = r.Space.Or(c, op.Cond)
				}
			})
		}
	}
	return c
}

func looseFill(r *run) {
	if !r.ForChildren() && !r.possible(r.toys()) {
		return
	}
	var fills []*model.Notion
	for _, n := range r.Notions {
		if n.Fill {
			fills = append(fills, n)
		}
	}
	r.inOne(fills, r.Space.Not(r.speaksOf("fill")), "loose filling", "No caution speaks of the loose filling.",
		"Add a caution: `caution warning about fill \"…\"`, give the filling an inner bag, and sew its seams twice.")
}
