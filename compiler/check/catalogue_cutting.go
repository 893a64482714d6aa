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
	register(Rule{ID: "piece-number-skipped", Severity: finding.Advice, Category: "cutting", FromAbsence: true, run: numberSkipped,
		Purpose: "A number is missing in the run of piece numbers.",
		Why:     "Whoever sorts the cut pieces looks for the one that is not there."})
	register(Rule{ID: "piece-name-repeated", Severity: finding.Error, Category: "cutting", run: nameRepeated,
		Purpose: "Two pieces have the same words.",
		Why:     "A step that says the words could mean either of them."})
	register(Rule{ID: "interfacing-for-one-of-two", Severity: finding.Warning, Category: "interfacing", whole: true, run: oneOfTwo,
		Purpose: "Less interfacing is cut than there are parts that a step fuses.",
		Why:     "The step says to fuse them all, and for one of them there is nothing to fuse."})
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
		r.report(r.unsaid("piece numbers", condition.True), at(last.NumberSpan, "the last number", fmt.Sprintf("The pieces are numbered up to %d, and no piece has the %s.", last.Number, numbersMissing(missing)),
			"Number the pieces through."))
	}
}

func numbersMissing(list []string) string {
	if len(list) == 1 {
		return "number " + list[0]
	}
	return "numbers " + listed(list)
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
