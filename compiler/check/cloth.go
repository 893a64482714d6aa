package check

import (
	"fmt"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

// How much cloth is said to be enough: what one amount says beside another.
func init() {
	register(Rule{ID: "cloth-told-differently", Severity: finding.Error, Category: "sizes", ahead: 2, run: toldDifferently,
		Purpose: "Two amounts of one cloth are told for the same garment, size and width.",
		Why:     "Both are printed, and nobody knows which of them is enough."})
	register(Rule{ID: "cloth-told-twice", Severity: finding.Warning, Category: "sizes", ahead: 2, run: toldTwice,
		Purpose: "The same amount of a cloth is told in two places.",
		Why:     "It is printed twice, and the next change is made in one of them only."})
	register(Rule{ID: "cloth-width-not-offered", Severity: finding.Warning, Category: "sizes", ahead: 1, run: widthNotOffered,
		Purpose: "How much of a cloth to buy is told for a width that the cloth is not offered in.",
		Why:     "Whoever finds the widths that are offered in the shop has to guess."})
	register(Rule{ID: "cloth-falls-with-size", Severity: finding.Warning, Category: "sizes", run: clothFalls,
		Purpose: "A larger size needs less cloth than a smaller one.",
		Why:     "Equal neighbours are common, less is mostly a slip of the hand; somebody buys too little."})
	register(Rule{ID: "wider-cloth-needs-more", Severity: finding.Warning, Category: "sizes", run: widerNeedsMore,
		Purpose: "More of a wide cloth is asked for than of a narrow one.",
		Why:     "What fits on a narrow cloth fits on a wide one too: the two rows were probably exchanged."})
	register(Rule{ID: "cloth-not-told", Severity: finding.Warning, Category: "sizes", FromAbsence: true, run: clothNotTold,
		Purpose: "How much cloth to buy is told, but not for every garment, size, material or width.",
		Why:     "Whoever makes that garment, or finds that width in the shop, has to guess."})
}

// sizeFirst begins a sentence about one size, "In size 12, "; nothing in a pattern
// without sizes.
func (r *run) sizeFirst(i int) string {
	if r.Sizes == nil || i < 0 || i >= len(r.Sizes.Sizes) {
		return ""
	}
	return "In size " + r.Sizes.Sizes[i] + ", "
}

// lying words how wide a promise has the cloth lie.
func lying(p *model.Promise) string {
	if p.Width.Length.IsZero() {
		return ""
	}
	return fmt.Sprintf(" lying %s wide", p.Width)
}

// clothOf names the material of a promise in the middle of a sentence.
func clothOf(p *model.Promise) string { return lower(p.Material.Name) }

// sameCloth reports whether two promises can speak of one cloth for one body.
func sameCloth(a, b *model.Promise) bool {
	return a.Material == b.Material && (a.Draft == b.Draft || a.Draft == nil || b.Draft == nil)
}

// overlapping calls f for every two promises that speak of one cloth in one width and in
// some garment, and for the sizes in which both tell an amount and test holds.
func (r *run) overlapping(test func(a, b *model.Amount) bool, f func(first, second *model.Promise, bad condition.Cond, i int)) {
	for k, second := range r.Promises {
		for _, first := range r.Promises[:k] {
			if !sameCloth(first, second) || !first.ForWidth(second.Material, second.Width.Length) && !second.ForWidth(first.Material, first.Width.Length) {
				continue
			}
			at := -1
			in := r.InSizes(func(i int) bool {
				a, b := first.Cell(i), second.Cell(i)
				if a == nil || b == nil || !test(a, b) {
					return false
				}
				if at < 0 {
					at = max(i, 0)
				}
				return true
			})
			if bad := r.Space.All(first.Cond, second.Cond, in); at >= 0 && r.possible(bad) {
				f(first, second, bad, at)
			}
		}
	}
}

func toldDifferently(r *run) {
	differ := func(a, b *model.Amount) bool { return a.Length != b.Length }
	r.overlapping(differ, func(first, second *model.Promise, bad condition.Cond, i int) {
		a, b := first.Cell(i), second.Cell(i)
		wide := second
		if second.Width.Length.IsZero() {
			wide = first
		}
		f := at(b.Span, "another amount", fmt.Sprintf("%s%s of %s%s is told to be enough, and %s too.", r.sizeFirst(i), b, clothOf(second), lying(wide), a),
			"Keep the right one. If each of them holds for some garments, say for which: `when A`.")
		r.report(bad, also(f, a.Span, "told here"))
		r.tell(first, condition.True)
		r.tell(second, condition.True)
		r.tell(second.Material, condition.True)
	})
}

func toldTwice(r *run) {
	same := func(a, b *model.Amount) bool { return a.Length == b.Length }
	r.overlapping(same, func(first, second *model.Promise, bad condition.Cond, i int) {
		if bad = r.unsaid(first, r.unsaid(second, bad)); !r.possible(bad) {
			return
		}
		help := "Take one of the two out."
		if first.InTable() != second.InTable() {
			help = "Take the sentence `needs` out and keep the table, or the other way round."
		}
		r.report(bad, also(at(second.Span, "again", fmt.Sprintf("How much of %s%s to buy is told twice.", clothOf(second), lying(second)), help), first.Span, "first here"))
		r.tell(second, condition.True)
		r.tell(second.Material, condition.True)
	})
}

func widthNotOffered(r *run) {
	for _, p := range r.Promises {
		m := p.Material
		if p.Width.Length.IsZero() || len(m.Widths) == 0 || offered(m, p) {
			continue
		}
		var widths []string
		for _, w := range m.Widths {
			widths = append(widths, w.String())
		}
		f := at(p.WidthAt, "not offered", fmt.Sprintf("How much of %s lying %s wide to buy is told, and it is offered in %s.", clothOf(p), p.Width, listed(widths)),
			"Correct the width, or add it to the `widths` of the fabric.")
		r.report(r.unsaid(p, p.Cond), also(f, m.Widths[0].Span, "offered"))
		r.tell(m, condition.True)
	}
}

func offered(m *model.Material, p *model.Promise) bool {
	for _, w := range m.Widths {
		if w.Length == p.Width.Length {
			return true
		}
	}
	return false
}

func clothFalls(r *run) {
	for _, p := range r.Promises {
		last := -1
		for i := range p.Cells {
			if !p.Has(i) {
				continue
			}
			if last >= 0 && p.Cells[i].Length.Cmp(p.Cells[last].Length) < 0 {
				f := at(p.Cells[i].Span, "less than before", fmt.Sprintf("Size %s needs %s of %s, and the smaller size %s needs %s.", r.Sizes.Sizes[i], p.Cells[i], clothOf(p), r.Sizes.Sizes[last], p.Cells[last]),
					"Look at the layouts of both again; where one lies better, give both the larger amount.")
				r.report(r.unsaid(p, p.Cond), also(f, p.Cells[last].Span, "the smaller size"))
				r.tell(p, condition.True)
				break
			}
			last = i
		}
	}
}

func widerNeedsMore(r *run) {
	for _, wide := range r.Promises {
		for _, narrow := range r.Promises {
			if narrow.Material != wide.Material || wide.Draft != narrow.Draft || narrow.Width.Length.IsZero() || narrow.Width.Length.Cmp(wide.Width.Length) >= 0 {
				continue
			}
			for i := range wide.Cells {
				if !wide.Has(i) || !narrow.Has(i) || wide.Cells[i].Length.Cmp(narrow.Cells[i].Length) <= 0 {
					continue
				}
				f := at(wide.Cells[i].Span, "more than of the narrow one", fmt.Sprintf("%s%s of %s lying %s wide are asked for, and only %s lying %s wide.", r.sizeFirst(i), wide.Cells[i], clothOf(wide), wide.Width, narrow.Cells[i], narrow.Width),
					"Exchange the two if they stand at each other's place; else correct the larger one.")
				bad := r.unsaid(wide, r.unsaid(narrow, r.Space.And(wide.Cond, narrow.Cond)))
				if r.possible(bad) {
					r.report(bad, also(f, narrow.Cells[i].Span, "the narrow one"))
					r.tell(wide, bad)
				}
				break
			}
		}
	}
}

// clothNotTold looks at each material in a pattern that tells of any: whether it is
// told in every garment and size that needs the material, and for every width that the
// pattern offers it in. What was laid is computed, and counts as told.
func clothNotTold(r *run) {
	if len(r.Promises) == 0 {
		return
	}
	table := r.Promises[0].InTable()
	for _, m := range r.Materials {
		told := r.toldOf(m, nil)
		if missing := r.unsaid(m, r.Space.Diff(m.Cond, told)); r.possible(missing) {
			r.report(r.Space.Diff(missing, r.laidOf(m, nil)), at(m.Span, "how much?", notTold(table, m)+".", tellIt(table, m, nil)))
		}
		for i := range m.Widths {
			w := &m.Widths[i]
			if missing := r.unsaid(m, r.Space.Diff(told, r.toldOf(m, w))); r.possible(missing) {
				r.report(r.Space.Diff(missing, r.laidOf(m, w)), at(w.Span, "how much of this width?", fmt.Sprintf("%s where it lies %s wide.", notTold(table, m), w.Measure), tellIt(table, m, w)))
			}
		}
	}
}

func notTold(table bool, m *model.Material) string {
	if table {
		return fmt.Sprintf("The table does not tell how much of %s to buy", lower(m.Name))
	}
	return fmt.Sprintf("It is not told how much of %s to buy", lower(m.Name))
}

func tellIt(table bool, m *model.Material, w *model.Amount) string {
	switch {
	case table && w != nil:
		return "Add a row to `cloth` for this width, or take the width out."
	case table:
		return fmt.Sprintf("Add a row to `cloth`: NAME: { of: %s, width: …, values: […] }, for every garment that needs it.", m.ID)
	case w != nil:
		return fmt.Sprintf("Add a sentence: needs … of %s, width %s. Or take the width out.", m.ID, w.Measure)
	}
	return fmt.Sprintf("Add a sentence: needs … of %s, for every garment and size that needs it.", m.ID)
}

// toldOf is where it is told how much of a material to buy, in a width or in any. What
// names no width holds for all.
func (r *run) toldOf(m *model.Material, w *model.Amount) condition.Cond {
	c := condition.False
	for _, p := range r.Promises {
		if p.Material == m && (w == nil || p.ForWidth(m, w.Length)) {
			c = r.Space.Or(c, r.Told(p))
		}
	}
	return c
}
