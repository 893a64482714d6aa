package check

import (
	"fmt"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "cord-at-a-childs-hood-or-neck", Severity: finding.Error, Category: "safety", ahead: 4, run: hoodCords,
		Purpose: "A cord, ribbon or tie is worn at the hood or the neck of a child's garment.",
		Why:     "It catches on play equipment, doors and vehicles, and has strangled children. In the United States a drawstring there is a substantial product hazard in outerwear of sizes 2T to 12 (16 CFR 1120.3(b)); in Europe no cord or tie may be there for children up to 7 years or 134 cm (EN 14682). A range that reaches into these sizes is covered."})
	register(Rule{ID: "free-end-at-an-older-childs-neck", Severity: finding.Error, Category: "safety", ahead: 3, run: freeEnds,
		Purpose: "A cord with free ends is worn at the hood or the neck of an older child's garment.",
		Why:     "In Europe, cords there may have no free ends for children from 7 to 14 years (EN 14682). An end of which nothing is said is taken to be free."})
	register(Rule{ID: "cord-at-a-childs-waist-or-hem", Severity: finding.Error, Category: "safety", ahead: 3, run: waistCords,
		Purpose: "A drawstring at the waist or hem of a child's outerwear hangs out too far, ends in something, or is not fastened.",
		Why:     "It catches in vehicle doors and drags the child along. In the United States, for sizes 2T to 16, at most 3 inches may hang out at the garment's full width, its free ends may have no toggle and no knot, and one continuous cord is bar-tacked (16 CFR 1120.3(b), which names ASTM F1816-97)."})
	register(Rule{ID: "cord-rule-may-apply", Severity: finding.Warning, Category: "safety", ahead: 2, run: cordsMaybe,
		Purpose: "A rule on drawstrings may apply, and the name of the size does not decide it.",
		Why:     "A letter larger than L (for the hood and the neck) or XL (for the waist and the hem) is not by itself outside the rule (16 CFR 1120.3(b)(2))."})
	register(Rule{ID: "long-end-on-a-childs-garment", Severity: finding.Warning, Category: "safety", ahead: 1, run: longEnds,
		Purpose: "The end of a sash, or of a cord at the waist or a sleeve, hangs out far in a child's garment.",
		Why:     "A long end catches or makes the child fall. The usual limits, recalled from EN 14682 and not read there: 36 cm for a tied sash, 14 cm for a cord at the waist or a sleeve."})
	register(Rule{ID: "cord-place-not-said", Severity: finding.Warning, Category: "safety", FromAbsence: true, run: cordsAnywhere,
		Purpose: "A child's garment has a cord, and it is not said where it is worn.",
		Why:     "Whether a cord may be there depends on where it is worn and how its ends are held."})
}

func hoodOrNeck(w *model.Wearing) bool {
	return (w.Place == "hood" || w.Place == "neck") && !w.Binds
}

func waistOrHem(w *model.Wearing) bool { return w.Place == "waist" || w.Place == "hem" }

// wearings calls f for what could catch in a child's clothes, with the garments in
// which it is there and is covered.
func (r *run) wearings(f func(w *model.Wearing, c condition.Cond)) {
	if !r.ForChildren() {
		return
	}
	for _, w := range r.Wearings {
		f(w, r.Space.And(w.Cond, r.clothes()))
	}
}

// caught is a finding about something that is worn.
func (r *run) caught(w *model.Wearing, label, headline, help string) finding.Finding {
	f := at(w.Span, label, headline, help+deferral)
	return also(f, r.For.Span, "it is for them")
}

func hoodCords(r *run) {
	r.wearings(func(w *model.Wearing, c condition.Cond) {
		if !hoodOrNeck(w) {
			return
		}
		us := condition.False
		if w.Draws && !w.Retracts {
			us = r.Space.All(c, r.KindIs("outerwear"), r.usSizes(12, within))
		}
		eu := r.Space.And(c, r.InSizes(func(i int) bool { return euYoung(r.Pattern, i) }))
		if w.Word == "elastic" && w.Ends != "free" {
			r.undecided(r.Space.Diff(eu, us), w.Span, fmt.Sprintf("whether the rules on cords at the %s cover %s, which is elastic.", w.Place, lower(plain(w.What.Name))))
			eu = condition.False
		}
		bad := r.Space.Or(us, eu)
		r.report(bad, r.caught(w, "at the "+w.Place+" of a child", fmt.Sprintf("%s is worn at the %s of a child's garment.", Upper(lower(plain(w.What.Name))), w.Place),
			"Leave it out: shape the "+w.Place+" with a seam, or close it with snaps that come open under a pull."))
		r.tell(w, bad)
	})
}

func freeEnds(r *run) {
	r.wearings(func(w *model.Wearing, c condition.Cond) {
		if !hoodOrNeck(w) || w.Ends == "fixed" || w.Loop || w.Word == "elastic" && w.Ends == "" {
			return
		}
		bad := r.unsaid(w, r.Space.And(c, r.InSizes(func(i int) bool { return euOlder(r.Pattern, i) })))
		r.report(bad, r.caught(w, "free ends", fmt.Sprintf("%s has free ends at the %s of a child's garment.", Upper(lower(plain(w.What.Name))), w.Place),
			"Fasten both ends to the garment and say `ends fixed`, or leave it out."))
		r.tell(w, bad)
	})
}

var threeInches = mustMeasure("3in")

func waistCords(r *run) {
	r.wearings(func(w *model.Wearing, c condition.Cond) {
		if !waistOrHem(w) || !w.Draws || w.Retracts {
			return
		}
		c = r.Space.All(c, r.KindIs("outerwear"), r.usSizes(16, within))
		name := Upper(lower(plain(w.What.Name)))
		switch {
		case w.Ends == "toggle" || w.Ends == "knot":
			r.report(c, r.caught(w, "at a free end", fmt.Sprintf("%s at the %s of a child's garment ends in a %s.", name, w.Place, w.Ends), "Leave the end plain, or fasten it to the garment."))
			r.tell(w, c)
		case w.Outside != nil && w.Outside.Length.Cmp(threeInches.Length) > 0:
			r.report(c, r.caught(w, "more than 3 inches", fmt.Sprintf("%s hangs out too far at the %s of a child's garment.", name, w.Place), "Cut it so that no more than 3 inches (7.6 cm) hang out when the garment lies at its full width."))
			r.tell(w, c)
		case w.Loop:
			c = r.Space.Diff(c, r.barTacked(w))
			r.report(c, r.caught(w, "one loop", fmt.Sprintf("%s at the %s of a child's garment is one loop that nothing holds.", name, w.Place), "Add a step that bar-tacks it to the garment: `bar-tack NAME at PLACE`."))
			r.tell(w, c)
		case w.Outside == nil && w.Ends != "fixed":
			r.undecided(c, w.Span, fmt.Sprintf("how far %s hangs out at the %s; say `outside` and the length at the garment's full width.", lower(name), w.Place))
		}
	})
}

// barTacked is where a bar-tack holds what is worn.
func (r *run) barTacked(w *model.Wearing) condition.Cond {
	c := condition.False
	for _, op := range r.Ops() {
		if op.Verb != "bar-tack" {
			continue
		}
		targets := op.Objects
		for _, p := range op.Phrases {
			targets = append(targets[:len(targets):len(targets)], p.Targets...)
		}
		for _, t := range targets {
			t.Each(func(x *model.Target) {
				if x.Notion != nil && x.Notion == w.Thing || x.Piece != nil && x.Piece == w.Thing || x.Bit != nil && x.Bit.Strip == w.Thing {
					c = r.Space.Or(c, op.Cond)
				}
			})
		}
	}
	return c
}

func cordsMaybe(r *run) {
	r.wearings(func(w *model.Wearing, c condition.Cond) {
		most := 0.0
		switch {
		case !w.Draws || w.Retracts:
			return
		case hoodOrNeck(w):
			most = 12
		case waistOrHem(w) && (w.Outside != nil && w.Outside.Length.Cmp(threeInches.Length) > 0 || w.Ends == "toggle" || w.Ends == "knot"):
			most = 16
		default:
			return
		}
		bad := r.unsaid(w, r.Space.All(c, r.KindIs("outerwear"), r.usSizes(most, maybe)))
		r.report(bad, r.caught(w, "at the "+w.Place, fmt.Sprintf("A rule on drawstrings may cover %s at the %s: the name of the size does not decide it.", lower(plain(w.What.Name)), w.Place),
			"Keep to the rule all the same, or say in the sizes which children they are for."))
	})
}

func longEnds(r *run) {
	sash, cord := mustMeasure("360mm"), mustMeasure("140mm")
	r.wearings(func(w *model.Wearing, c condition.Cond) {
		most := cord
		switch {
		case w.Ties && w.Place == "waist":
			most = sash
		case !w.Draws || w.Place != "waist" && w.Place != "sleeve":
			return
		}
		if w.Outside == nil {
			if w.Ties {
				r.undecided(c, w.Span, fmt.Sprintf("how long the ends of %s are; say `outside` and their length from the knot.", lower(plain(w.What.Name))))
			}
			return
		}
		if w.Outside.Length.Cmp(most.Length) <= 0 {
			return
		}
		covered := r.InSizes(func(i int) bool { return euYoung(r.Pattern, i) || euOlder(r.Pattern, i) })
		r.report(r.unsaid(w, r.Space.And(c, covered)), r.caught(w, "long", fmt.Sprintf("The ends of %s hang far out at the %s of a child's garment.", lower(plain(w.What.Name)), w.Place), "Make them shorter."))
	})
}

// cordsAnywhere asks where a cord is worn, and a tape, webbing or strip that is
// threaded or knotted.
func cordsAnywhere(r *run) {
	if !r.ForChildren() {
		return
	}
	said := map[any]bool{}
	for _, w := range r.Wearings {
		said[w.Thing] = true
	}
	ask := func(thing any, d *model.Decl, c condition.Cond) {
		if said[thing] {
			return
		}
		said[thing] = true
		r.report(r.Space.All(d.Cond, c, r.clothes()), at(d.Span, "where is it worn?", fmt.Sprintf("It is not said where %s is worn on the child.", lower(plain(d.Name))),
			"Say it in its block: `wear hood`, `neck`, `waist`, `hem`, `sleeve`, `back` or `elsewhere`."))
	}
	for _, n := range r.Notions {
		if n.Word == "cord" {
			ask(n, &n.Decl, condition.True)
		}
	}
	for _, op := range r.Ops() {
		if op.Verb != "thread" && op.Verb != "knot" {
			continue
		}
		for _, o := range op.Objects {
			o.Each(func(t *model.Target) {
				switch {
				case t.Notion != nil && t.Notion.Kind == model.ByLength && t.Notion.Word != "elastic":
					ask(t.Notion, &t.Notion.Decl, op.Cond)
				case t.Bit != nil:
					ask(t.Bit.Strip, &t.Bit.Strip.Decl, op.Cond)
				}
			})
		}
	}
}
