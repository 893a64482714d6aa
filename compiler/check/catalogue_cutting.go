package check

import (
	"fmt"
	"slices"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

// What goes wrong in cutting tables although each line of them can be followed.
func init() {
	register(Rule{ID: "cut-twice-on-fold", Severity: finding.Warning, Category: "cutting", run: twiceOnFold,
		Purpose: "Several are cut on the fold, and nothing tells one whole piece from the other.",
		Why:     "Each cut on the fold is a whole piece. Two are seldom meant: mostly the fold was added to a pair of halves and the number stayed."})
	register(Rule{ID: "piece-number-skipped", Severity: finding.Advice, Category: "cutting", FromAbsence: true, run: numberSkipped,
		Purpose: "A number is missing in the run of piece numbers.",
		Why:     "Whoever sorts the cut pieces looks for the one that is not there."})
	register(Rule{ID: "piece-name-repeated", Severity: finding.Error, Category: "cutting", run: nameRepeated,
		Purpose: "Two pieces have the same words.",
		Why:     "A step that says the words could mean either of them."})
	register(Rule{ID: "cut-numbers-differ", Severity: finding.Warning, Category: "cutting", run: numbersDiffer,
		Purpose: "A piece is cut so many times from one cloth and another number of times from the next.",
		Why:     "A lining follows its shell. Where the numbers differ, one layer is missing or one is left over."})
	register(Rule{ID: "interfacing-for-one-of-two", Severity: finding.Warning, Category: "interfacing", run: oneOfTwo,
		Purpose: "Less interfacing is cut than there are parts that a step fuses.",
		Why:     "The step says to fuse them all, and for one of them there is nothing to fuse."})
}

func twiceOnFold(r *run) {
	for _, p := range r.Pieces {
		for _, c := range p.Cuts {
			if !c.Lay.Fold || c.Count < 2 || len(c.Lay.Names) > 0 || c.Material.Interfacing {
				continue
			}
			f := at(c.CountSpan, "each is a whole piece", fmt.Sprintf("%s is cut on the fold %s, which gives %d whole pieces.", Upper(the(p.Name)), times(c.Count), c.Count),
				"For one whole piece write `cut 1`; for a left and a right half `mirrored` and no fold; for two layers give each a name: `as outer, inner`.")
			r.report(r.unsaid(p, c.Cond), f)
		}
	}
}

// numberSkipped looks through all the numbers of the pattern: a garment may leave
// out the pieces of another view, the pattern sheet does not.
func numberSkipped(r *run) {
	var numbers []int
	var last *model.Piece
	for _, p := range r.Pieces {
		numbers = append(numbers, p.Number)
		if p.Number > 0 && (last == nil || p.Number > last.Number) {
			last = p
		}
	}
	for _, s := range r.Strips {
		numbers = append(numbers, s.Number)
	}
	if last == nil {
		return
	}
	var missing []string
	for n := 1; n < last.Number; n++ {
		if !slices.Contains(numbers, n) {
			missing = append(missing, fmt.Sprint(n))
		}
	}
	if len(missing) > 0 {
		r.report(condition.True, at(last.NumberSpan, "the last number", fmt.Sprintf("The pieces are numbered up to %d, and no piece has the number %s.", last.Number, listed(missing)),
			"Number the pieces through."))
	}
}

func nameRepeated(r *run) {
	for i, p := range r.Pieces {
		for _, o := range r.Pieces[:i] {
			if lower(p.Name) != lower(o.Name) {
				continue
			}
			f := at(p.Span, "the same words", fmt.Sprintf("Two pieces are called %s.", lower(p.Name)), "Give each its own words, as the sewist reads nothing else.")
			r.report(r.Space.And(p.Cond, o.Cond), also(f, o.Span, "as this one"))
		}
	}
}

// numbersDiffer compares the cut lines of a piece from different cloths that lie
// alike. Copies that have names are told apart on purpose.
func numbersDiffer(r *run) {
	for _, p := range r.Pieces {
		for i, a := range p.Cuts {
			for _, b := range p.Cuts[:i] {
				if !followsCloth(a, b) || a.Material.Interfacing || a.Count == b.Count {
					continue
				}
				f := at(a.CountSpan, fmt.Sprintf("%d here", a.Count), fmt.Sprintf("%s is cut %s from %s and %s from %s.", Upper(the(p.Name)), times(b.Count), lower(b.Material.Name), times(a.Count), lower(a.Material.Name)),
					"Cut as many of one as of the other; or name the copies with `as`, so that it is clear what each is for.")
				r.report(r.unsaid(p, r.Space.And(a.Cond, b.Cond)), also(f, b.CountSpan, fmt.Sprintf("%d here", b.Count)))
			}
		}
	}
}

// followsCloth reports whether two cut lines should have one number: two materials,
// neither with names nor one of them on the fold.
func followsCloth(a, b *model.Cut) bool {
	return a.Material != b.Material && !b.Material.Interfacing && !a.Piece.Template && len(a.Lay.Names) == 0 && len(b.Lay.Names) == 0 && a.Lay.Fold == b.Lay.Fold
}

func oneOfTwo(r *run) {
	for _, f := range r.facts.Fusing {
		t := f.Target
		if t.Piece == nil || t.Side != model.Neither || f.Op.Only != model.Neither || f.Op.Phrase("to") != nil || f.Op.Phrase("on") != nil {
			continue
		}
		for i, a := range t.Piece.Cuts {
			for k, b := range t.Piece.Cuts {
				if i == k || !a.Material.Interfacing || !followsCloth(a, b) || a.Count >= b.Count || otherwiseCut(t.Piece, a) {
					continue
				}
				x := at(t.Span, fmt.Sprintf("%d of them", b.Count), fmt.Sprintf("This step fuses %s, of which %d are cut, and %s is cut %s.", the(t.Piece.Name), b.Count, lower(a.Material.Name), times(a.Count)),
					"Cut as much interfacing as cloth; or name the one that is fused, such as "+t.Piece.ID+".right.")
				r.report(r.Space.All(f.Cond, a.Cond, b.Cond), also(x, a.CountSpan, "cut here"))
			}
		}
	}
}

// otherwiseCut reports whether another line cuts the same interfacing.
func otherwiseCut(p *model.Piece, a *model.Cut) bool {
	return slices.ContainsFunc(p.Cuts, func(c *model.Cut) bool { return c != a && c.Material == a.Material })
}
