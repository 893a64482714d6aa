package check

import (
	"fmt"
	"slices"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "fuller-row-drawn-shorter", Severity: finding.Error, Category: "outlines", FromAbsence: true, ahead: 1, run: fullerRows,
		Purpose: "The row of a seam that is gathered or eased is drawn shorter than the row that it is sewn to.",
		Why:     "Only what is longer can be gathered or eased in. Mostly the step names the edge of the other piece, or the drawing is that of another size."})
	register(Rule{ID: "fullness-out-of-measure", Severity: finding.Advice, Category: "outlines", FromAbsence: true, run: fullnessOdd,
		Purpose: "A row that is gathered is hardly longer than the other, or many times as long, or far more is to be eased in than cloth takes.",
		Why: "Gathers need about half as much again to be seen, and more than four times as much cannot be drawn up; more than an eighth eases in only with folds " +
			"(common practice, no source)."})
}

// How much longer a row is as a rule, in parts of the other (common practice, no source).
const (
	hardlyGathered = 1.1
	mostGathered   = 4
	mostEased      = 1.125
)

// fullness is one reason why a row of a seam is longer than the other: an operation, or
// the word `gathered`. row is -1 where it is not said which.
type fullness struct {
	gathers bool // gathered, not eased
	row     int
	cond    condition.Cond
	op      *model.Op // nil for the word
}

// gatherers and easers are the operations that take up length by an amount that the
// rows of the seam tell; foldedUp those of which nothing is known.
var (
	gatherers = []string{"gather", "shirr", "ruche"}
	easers    = []string{"ease"}
	foldedUp  = []string{"pleat", "smock", "stretch"}
)

// fullnesses lists what makes a row of a seam longer, and gives the garments in which
// its rows cannot be compared at all.
func (r *run) fullnesses(s *model.Seam) (all []fullness, lost condition.Cond) {
	lost = condition.False
	if s.Gathered {
		all = append(all, fullness{gathers: true, row: -1, cond: s.Cond})
	}
	for _, d := range r.deeds().seam[s] {
		switch verb := d.op.Verb; {
		case oneOf(verb, gatherers):
			all = append(all, fullness{true, rowOf(s, d.on), d.cond, d.op})
		case oneOf(verb, easers):
			all = append(all, fullness{false, rowOf(s, d.on), d.cond, d.op})
		case oneOf(verb, foldedUp):
			lost = r.Space.Or(lost, d.cond)
		}
	}
	return
}

// rowOf is the row in which what an operation names lies, -1 if it is both or neither.
func rowOf(s *model.Seam, t *model.Target) int {
	found := -1
	for row, list := range [2][]*model.Target{s.Joins, s.To} {
		for _, m := range list {
			if slices.ContainsFunc(m.Uses, func(u *model.EdgeUse) bool { return slices.Contains(t.Uses, u) }) {
				if found >= 0 && found != row {
					return -1
				}
				found = row
			}
		}
	}
	return found
}

// eachFull calls f for the rows of every seam in the garments in which one of them is
// gathered or eased, with the amount by which it is not said.
func (r *run) eachFull(f func(s *model.Seam, full fullness, rows []rowLengths) (reported bool)) {
	if !r.anyOutline() {
		return
	}
	taken := r.takenUp()
	for _, s := range r.Seams {
		list, lost := r.fullnesses(s)
		for _, full := range list {
			if s.Ease != nil && !full.gathers && full.row < 0 {
				continue
			}
			for _, j := range s.Copies {
				var rows []rowLengths
				for _, l := range r.addUp(s, j, taken) {
					if l.cond = r.Space.Diff(r.Space.And(l.cond, full.cond), lost); r.possible(l.cond) {
						rows = append(rows, l)
					}
				}
				if f(s, full, rows) {
					break // the other side of the body has the same fault
				}
			}
		}
	}
}

// worstRows gives the garments and sizes in which rows are wrong, and those lengths in
// which they are most so.
func (r *run) worstRows(all []rowLengths, wrong func(a, b float64) float64) (bad condition.Cond, a, b float64, size int, several bool) {
	bad, most, sizes := condition.False, 0.0, map[int]bool{}
	for _, l := range all {
		in := r.InSizes(func(i int) bool {
			k := max(i, 0)
			off := wrong(l.rows[0][k], l.rows[1][k])
			if !(off > 0) { // nor no number
				return false
			}
			if sizes[k] = true; off > most {
				most, a, b, size = off, l.rows[0][k], l.rows[1][k], k
			}
			return true
		})
		bad = r.Space.Or(bad, r.Space.And(in, l.cond))
	}
	return bad, a, b, size, len(sizes) > 1
}

// inSize names a size where a finding holds in several.
func (r *run) inSize(size int, several bool) string {
	if several {
		return " in size " + r.Sizes.Sizes[size]
	}
	return ""
}

func fullerRows(r *run) {
	r.eachFull(func(s *model.Seam, full fullness, rows []rowLengths) bool {
		if full.row < 0 {
			return false
		}
		bad, a, b, size, several := r.worstRows(rows, func(a, b float64) float64 {
			if full.row == 1 {
				a, b = b, a
			}
			return b - a - max(rowsDifferMM, rowsDifferPart*b)
		})
		if bad = r.unsaid(s, bad); !r.possible(bad) {
			return false
		}
		r.tell(s, bad)
		row, other := s.Joins, s.To
		if full.row == 1 {
			row, other, a, b = s.To, s.Joins, b, a
		}
		f := at(full.op.Span, full.op.Verb+"s the shorter one", fmt.Sprintf("%s is drawn shorter than what it is %s to%s: %s is %s long, %s %s.", Upper(r.rowWords(s, row)), full.participle(),
			r.inSize(size, several), r.rowWords(s, row), r.inUnits(a), r.rowWords(s, other), r.inUnits(b)), fmt.Sprintf("Mend the drawing, or %s the other row.", full.op.Verb))
		r.report(bad, also(f, s.Span, "sewn here"))
		return true
	})
}

func (f *fullness) participle() string {
	if f.gathers {
		return "gathered"
	}
	return "eased"
}

// odd is by how much the length of the fuller row lies outside of what is usual.
func (f *fullness) odd(a, b float64) float64 {
	switch times := max(a, b) / min(a, b); {
	case f.gathers && times < hardlyGathered:
		return hardlyGathered - times
	case f.gathers:
		return times - mostGathered
	default:
		return times - mostEased
	}
}

func fullnessOdd(r *run) {
	r.eachFull(func(s *model.Seam, full fullness, rows []rowLengths) bool {
		bad, a, b, size, several := r.worstRows(rows, full.odd)
		if bad = r.unsaid(s, bad); !r.possible(bad) {
			return false
		}
		r.tell(s, bad)
		what, help := "gathers hardly anything", "Draw the fuller piece longer; or say `with ease MEASURE` in the seam, and `ease` in the step."
		if times := max(a, b) / min(a, b); times >= hardlyGathered {
			what, help = "gathers the longer row to less than a quarter", "Draw the fuller piece shorter, or gather it in tiers."
		}
		if !full.gathers {
			what, help = "eases in more than an eighth", "Draw the fuller piece shorter; or take the rest up in a dart or a pleat, or gather it."
		}
		place, label := s.Span, "gathered"
		if full.op != nil {
			place, label = full.op.Span, "so much"
		}
		f := at(place, label, fmt.Sprintf("%s %s%s: %s is drawn %s long, %s %s.", Upper(seamName(s)), what, r.inSize(size, several), r.rowWords(s, s.Joins), r.inUnits(a), r.rowWords(s, s.To), r.inUnits(b)), help)
		r.report(bad, f)
		return true
	})
}
