package check

import (
	"fmt"

	"seamwarden/compiler/assembly"
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "fastening-on-itself", Severity: finding.Error, Category: "needs", run: sameSide,
		Purpose: "Both halves of a fastening sit at the same place of the same part, or buttons on the one of a pair that has their buttonholes.",
		Why:     "A socket and its stud face each other from two layers that close over each other."})
	register(Rule{ID: "set-incomplete", Severity: finding.Error, Category: "needs", FromAbsence: true, ahead: 3, run: setHalves,
		Purpose: "The halves of a fastening are not used in equal number.",
		Why:     "A socket without its stud closes nothing."})
	register(Rule{ID: "buttonholes-and-buttons", Severity: finding.Error, Category: "needs", FromAbsence: true, ahead: 2, run: buttonholes,
		Purpose: "There are more buttonholes than buttons, or fewer.",
		Why:     "Each button closes one buttonhole."})
	register(Rule{ID: "zip-half-sewn-in", Severity: finding.Error, Category: "needs", FromAbsence: true, ahead: 3, run: zipSides,
		Purpose: "One side of a zip is sewn in, and the other is not.",
		Why:     "It hangs on one tape and closes nothing."})
	register(Rule{ID: "notion-count", Severity: finding.Error, Category: "needs", FromAbsence: true, ahead: 1, run: notionCount,
		Purpose: "The number of a notion that is listed is not the number that the steps use.",
		Why:     "The shopping list makes somebody buy too few, or the steps ask for what was not bought."})
	register(Rule{ID: "notion-never-used", Severity: finding.Error, Category: "needs", FromAbsence: true, run: notionUnused,
		Purpose: "A notion is listed and no step uses it.",
		Why:     "It is on the shopping list, so somebody buys it; or a step is missing."})
	register(Rule{ID: "strip-count", Severity: finding.Error, Category: "needs", FromAbsence: true, run: stripCount,
		Purpose: "The parts that a strip is cut into are not all used, or more are used than are cut.",
		Why:     "The sewist is left with a loop too many, or lacks one."})
}

// setHalves compares the halves of a set; the other rules then leave the notion
// alone.
func setHalves(r *run) {
	for _, n := range r.Notions {
		if !n.Set || len(n.Parts) != 2 {
			continue
		}
		half := func(i int) []assembly.Amount { return r.facts.Stock[assembly.StockKey{Notion: n, Half: n.Parts[i]}] }
		a, b := r.facts.Totals(half(0)), r.facts.Totals(half(1))
		for _, x := range assembly.Sums(a) {
			for _, y := range assembly.Sums(b) {
				if x == y {
					continue
				}
				bad := r.Space.All(n.Cond, a[x], b[y])
				f := at(n.Span, "a set of two", fmt.Sprintf("%s: %s of `%s` and %s of `%s` %s used.", plain(n.Name), noneOr(x), n.Parts[0], noneOr(y), n.Parts[1], isOrAre(x+y)),
					"Use as many of one half as of the other.")
				for _, list := range [][]assembly.Amount{half(0), half(1)} {
					if len(list) > 0 {
						f = also(f, list[len(list)-1].Op.Span, "used here")
					}
				}
				r.report(bad, f)
				r.tell(n, bad)
			}
		}
	}
}

// zipSides looks at notions whose two sides are sewn in one after the other.
func zipSides(r *run) {
	for _, n := range r.Notions {
		if n.Set || len(n.Parts) != 2 {
			continue
		}
		used := func(side string) (c condition.Cond, op *model.Op) {
			for _, a := range r.facts.Stock[assembly.StockKey{Notion: n, Half: side}] {
				if c = r.Space.Or(c, a.Cond); op == nil {
					op = a.Op
				}
			}
			return
		}
		whole, _ := used("")
		for i, side := range n.Parts {
			other := n.Parts[1-i]
			here, op := used(side)
			there, _ := used(other)
			bad := r.unsaid(n, r.Space.Diff(here, r.Space.Or(there, whole)))
			if op == nil || len(r.facts.Stock[assembly.StockKey{Notion: n, Half: side}]) > 1 || !r.possible(bad) { // used twice, one of them was meant for the other
				continue
			}
			f := at(n.Span, "two sides", fmt.Sprintf("%s: its %s side is sewn in, and no step sews in the %s one.", plain(n.Name), side, other), fmt.Sprintf("Catch `%s.%s` in a seam, or `attach` or `insert` it in a step.", n.ID, other))
			r.report(bad, also(f, op.Span, "the "+side+" side"))
		}
	}
}

// buttonholes compares buttonholes with buttons sewn on, and points at the one
// that differs from the list.
func buttonholes(r *run) {
	for _, n := range r.Notions {
		holes := r.facts.Holes[n]
		if len(holes) == 0 {
			continue
		}
		var sewn []assembly.Amount
		for _, a := range r.facts.OfNotion(n) {
			if a.Op.Verb == "sew on" {
				sewn = append(sewn, a)
			}
		}
		buttons, slits := r.facts.Totals(sewn), r.facts.Totals(holes)
		for _, b := range assembly.Sums(buttons) {
			for _, h := range assembly.Sums(slits) {
				if b == h {
					continue
				}
				bad := r.unsaid(n, r.Space.All(n.Cond, buttons[b], slits[h]))
				r.report(bad, buttonWords(n, b, h, sewn, holes))
				r.tell(n, bad)
			}
		}
	}
}

func buttonWords(n *model.Notion, buttons, slits int, sewn, holes []assembly.Amount) finding.Finding {
	f := at(holes[0].Op.Span, some(slits, "buttonhole", "buttonholes"), fmt.Sprintf("%s: %s, and %s sewn on.", plain(n.Name), some(slits, "buttonhole", "buttonholes"), noneOr(buttons)),
		"Sew on one button for each buttonhole.")
	if len(sewn) == 0 {
		return f
	}
	if slits == n.Listed {
		f.Place = finding.Place{Span: sewn[len(sewn)-1].Op.Span, Label: fmt.Sprintf("%d sewn on", buttons)}
		return also(f, holes[0].Op.Span, some(slits, "buttonhole", "buttonholes"))
	}
	return also(f, sewn[0].Op.Span, "sewn on here")
}

func notionCount(r *run) {
	for _, n := range r.Notions {
		if n.Kind != model.Counted || n.Listed == 0 {
			continue
		}
		uses := r.facts.OfNotion(n)
		if n.Set && len(n.Parts) > 0 {
			uses = r.facts.Stock[assembly.StockKey{Notion: n, Half: n.Parts[0]}]
		}
		if len(n.Parts) > 0 && !n.Set {
			continue // a zip whose sides are sewn one by one
		}
		r.compare(n, uses)
	}
}

func (r *run) compare(n *model.Notion, uses []assembly.Amount) {
	sums := r.facts.Totals(uses)
	for _, total := range assembly.Sums(sums) {
		if total == n.Listed || total == 0 {
			continue
		}
		f := at(n.Count, fmt.Sprintf("%d listed", n.Listed), fmt.Sprintf("%s: %d listed, %d used.", n.Name, n.Listed, total),
			"Change the number, or leave it out: then it is counted from the steps.")
		bad := r.unsaid(n, r.Space.And(n.Cond, sums[total]))
		r.report(bad, also(f, uses[len(uses)-1].Op.Span, "used here"))
		r.tell(n, bad)
	}
}

func notionUnused(r *run) {
	for _, n := range r.Notions {
		bad := r.unsaid(n, r.Space.Diff(r.Space.And(n.Cond, r.facts.Totals(r.facts.OfNotion(n))[0]), r.facts.Worked[n]))
		r.report(bad, at(n.Span, "no step uses it", fmt.Sprintf("%s is listed and never used.", n.Name),
			"Use it in a step (`sew on`, `insert`, `bind … with`, `catching`), or take it off the list; if it belongs to an option, guard it with `when`."))
	}
}

// sameSide finds a fastening of which both halves sit on the same part.
func sameSide(r *run) {
	for _, n := range r.Notions {
		r.buttonOnItsHole(n)
		if !n.Set || len(n.Parts) != 2 {
			continue
		}
		for _, a := range r.facts.Stock[assembly.StockKey{Notion: n, Half: n.Parts[0]}] {
			for _, b := range r.facts.Stock[assembly.StockKey{Notion: n, Half: n.Parts[1]}] {
				if p := samePlace(a.Op, b.Op); p != "" {
					f := at(b.Op.Span, "the same place", fmt.Sprintf("%s: both halves go on %s.", n.Name, p), "The two halves close over each other, so they sit on different parts or at different places.")
					r.report(r.Space.And(a.Cond, b.Cond), also(f, a.Op.Span, "the other half"))
				}
			}
		}
	}
}

// buttonOnItsHole finds buttons on the one of a pair that has their buttonholes: left and
// right lap over each other. A cuff or a tab closes on itself, and has a place for each.
func (r *run) buttonOnItsHole(n *model.Notion) {
	for _, h := range r.facts.Holes[n] {
		for _, b := range r.facts.OfNotion(n) {
			x, y := sideOfPair(h.Op), sideOfPair(b.Op)
			if b.Op.Verb != "sew on" || x == nil || y == nil || x.Piece != y.Piece || x.Side != y.Side || closesItself(x.Piece) || r.alsoElsewhere(n, x) {
				continue
			}
			part := fmt.Sprintf("the %s %s", x.Side, lower(x.Piece.Name))
			f := at(b.Op.Span, "beside its buttonholes", fmt.Sprintf("%s: buttonholes and buttons both go on %s.", plain(n.Name), part), fmt.Sprintf("Sew the buttons to the %s one, or the buttonholes.", x.Side.Other()))
			r.report(r.Space.And(h.Cond, b.Cond), also(f, h.Op.Span, "the buttonholes"))
			return
		}
	}
}

// sideOfPair gives the one of a pair that an operation names after to, on or at, if it is
// the only part named there and the mark there is not one that is called buttonhole.
func sideOfPair(op *model.Op) (found *model.Target) {
	for _, t := range placesOf(op) {
		if t.Mark != nil && wordIn(t.Mark.ID, "buttonhole", "hole", "holes", "buttonholes") {
			return nil
		}
		if t.Piece == nil || len(t.Instances) == 0 || t.Side == model.Neither || !t.Instances[0].Cut.Lay.Mirrored {
			continue
		}
		if found != nil && found.Piece != t.Piece {
			return nil
		}
		found = t
	}
	return
}

// closesItself reports whether a piece may close round with itself, as a cuff or a tab
// does: it has no more than four edges, where a front or a back has more.
func closesItself(p *model.Piece) bool { return len(p.Edges) < 5 }

// alsoElsewhere reports whether some of the buttons go on the other one.
func (r *run) alsoElsewhere(n *model.Notion, x *model.Target) bool {
	for _, a := range r.facts.OfNotion(n) {
		if t := sideOfPair(a.Op); t != nil && t.Piece == x.Piece && t.Side != x.Side {
			return true
		}
	}
	return false
}

// samePlace gives the place that two operations name alike, "" for none. Two pieces may
// have marks of one name, and a mark is somewhere else on another part.
func samePlace(a, b *model.Op) string {
	if x, y := namedPart(a), namedPart(b); x != "" && y != "" && x != y {
		return ""
	}
	for _, x := range placesOf(a) {
		for _, y := range placesOf(b) {
			if x.Path == y.Path && x.Mark == y.Mark {
				return x.Describe()
			}
		}
	}
	return ""
}

// namedPart gives the part that an operation names after to or on, as it is written.
func namedPart(op *model.Op) string {
	for _, name := range []string{"to", "on"} {
		if p := op.Phrase(name); p != nil && len(p.Targets) == 1 {
			return p.Targets[0].Path
		}
	}
	return ""
}

func placesOf(op *model.Op) (all []*model.Target) {
	for _, name := range []string{"at", "on", "to"} {
		if p := op.Phrase(name); p != nil {
			all = append(all, p.Targets...)
		}
	}
	return
}

func stripCount(r *run) {
	for _, s := range r.Strips {
		for _, b := range s.Bits {
			if b.ID != "" {
				r.bitCount(s, b)
			}
		}
	}
}

func (r *run) bitCount(s *model.Strip, b *model.Bit) {
	cut := b.Count * max(1, s.Count)
	uses := r.facts.Stock[assembly.StockKey{Bit: b}]
	sums := r.facts.Totals(uses)
	for _, total := range assembly.Sums(sums) {
		if total == cut || total == 1 && cut > 1 && len(uses) == 1 && !uses[0].Op.Counted {
			continue
		}
		f := at(b.Span, fmt.Sprintf("%d cut", cut), fmt.Sprintf("%s: %d cut from the strip, %d used.", Upper(b.Name), cut, total), "Change the number that is cut, or use them all.")
		if len(uses) > 0 {
			f = also(f, uses[len(uses)-1].Op.Span, "used here")
		}
		r.report(r.Space.And(b.Cond, sums[total]), f)
	}
}
