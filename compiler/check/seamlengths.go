package check

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/measure"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "seam-lengths-differ", Severity: finding.Error, Category: "outlines", FromAbsence: true, run: seamLengths,
		Purpose: "The two rows of a seam are drawn in different lengths, and nothing says that one is eased or gathered.",
		Why:     "Pinned from one end, they do not meet at the other: somebody cuts off what is left, or stretches what is short."})
}

// Two rows fit if they differ by no more than what is lost in drawing and cutting: 2 mm,
// or half a hundredth of a long seam (common practice, no source).
const (
	rowsDifferMM   = 2
	rowsDifferPart = 0.005
)

// stretchPart is by how much of the longer row cloth that stretches may be drawn
// shorter, as bands and ribbing are (common practice, no source).
const stretchPart = 0.3

// misfit is a seam whose rows differ: in which garments, and what is said of it.
type misfit struct {
	seam *model.Seam
	bad  condition.Cond
	say  finding.Finding
}

// misfitOf is a seam of which it is said that its rows differ.
type misfitOf struct{ *model.Seam }

func seamLengths(r *run) {
	var wrong []misfit
	var blank blanks
	if drawn, taken := r.anyOutline(), r.takenUp(); drawn {
		for _, s := range r.Seams {
			lost := r.incomparable(s)
			for _, j := range s.Copies {
				rows := r.rowsOf(s, j, taken)
				blank.note(r, s, rows)
				if m, found := r.rowsDiffer(s, rows, lost); found {
					wrong = append(wrong, m)
					break // the other side of the body has the same fault
				}
			}
		}
		blank.list(r)
		wrong = r.misdrawn(wrong, taken)
	} else {
		r.undrawn()
	}
	for _, m := range r.asOne(wrong) {
		r.report(m.bad, m.say)
	}
}

// incomparable gives the garments in which the rows of a seam differ because one is
// gathered or the like.
func (r *run) incomparable(s *model.Seam) condition.Cond {
	full, lost := r.fullnesses(s)
	for _, f := range full {
		if s.Ease == nil || f.gathers {
			lost = r.Space.Or(lost, f.cond)
		}
	}
	return lost
}

// rowsOf gives the lengths of both rows; of a dart that may lie in one half or in both,
// what fits better.
func (r *run) rowsOf(s *model.Seam, j *model.Join, taken map[*model.Edge]float64) []rowLengths {
	rows := r.addUp(s, j, taken)
	if two := takenTwice(s, taken); two != nil {
		rows = closer(rows, r.addUp(s, j, two))
	}
	return rows
}

func (r *run) anyOutline() bool {
	return slices.ContainsFunc(r.Pieces, func(p *model.Piece) bool {
		return slices.ContainsFunc(p.Outlines, func(d *model.Drawn) bool { return d.Art != nil })
	})
}

// rowsDiffer says in which sizes the rows of a seam differ, with the lengths of the size in
// which they differ most. Where they are gathered or the like, in lost, nothing is said.
func (r *run) rowsDiffer(s *model.Seam, all []rowLengths, lost condition.Cond) (misfit, bool) {
	var left []rowLengths
	for _, l := range all {
		if l.cond = r.Space.Diff(l.cond, lost); r.possible(l.cond) {
			left = append(left, l)
		}
	}
	bad, a, b, size, several := r.worstRows(left, func(a, b float64) float64 { return r.tooFar(s, a, b) })
	if bad = r.unsaid(s, bad); !r.possible(bad) || r.wouldFit(s, bad, a-b, size) {
		return misfit{}, false
	}
	r.tell(s, bad)
	r.tell(misfitOf{s}, bad)
	r.tellEnds(s, bad)
	return misfit{s, bad, r.wordRows(s, a, b, size, several)}, true
}

// asOne puts seams into one finding that share what is probably wrong: both their
// edges, a mark at which one ends and the other begins, or a piece in the very same sizes
// of several.
func (r *run) asOne(all []misfit) (out []misfit) {
	first := map[any]int{}
	for _, m := range all {
		at := -1
		keys := sharedBy(m.seam)
		if in := r.someSizes(m.bad); in != "" {
			for _, u := range m.seam.Uses() {
				keys = append(keys, [2]any{u.Edge.Piece, in})
			}
		}
		for _, k := range keys {
			if n, ok := first[k]; ok && at < 0 {
				at = n
			}
		}
		if at < 0 {
			at = len(out)
			out = append(out, m)
		} else {
			o := &out[at]
			o.say = also(o.say, m.seam.Span, "does not fit either")
		}
		for _, k := range keys {
			if _, ok := first[k]; !ok {
				first[k] = at
			}
		}
	}
	return
}

// someSizes lists the sizes in which a condition holds somewhere; "" for all.
func (r *run) someSizes(c condition.Cond) string {
	var in []string
	if r.Sizes == nil {
		return ""
	}
	for k, name := range r.Sizes.Sizes {
		if r.possible(r.Space.And(c, r.InSizes(func(i int) bool { return i == k }))) {
			in = append(in, name)
		}
	}
	if len(in) == len(r.Sizes.Sizes) {
		return ""
	}
	return strings.Join(in, " ")
}

// sharedBy gives the pair of edges that a seam joins, and the marks at which it ends.
func sharedBy(s *model.Seam) (keys []any) {
	if len(s.Joins) == 1 && len(s.To) == 1 {
		keys = append(keys, [2]*model.Edge{s.Joins[0].Edge, s.To[0].Edge})
	}
	for _, t := range s.Rows() {
		for _, end := range []*model.Target{t.From, t.To} {
			if end == nil || end.Mark == nil {
				continue
			}
			for _, o := range s.Rows() {
				keys = append(keys, [2]any{o.Edge, end.Mark.ID})
			}
		}
	}
	return
}

// tooFar is by how many millimetres two rows differ beyond what may be; 0 if they fit
// or one is not known.
func (r *run) tooFar(s *model.Seam, a, b float64) float64 {
	if math.IsNaN(a + b) {
		return 0
	}
	may := max(rowsDifferMM, rowsDifferPart*max(a, b))
	if s.Ease != nil {
		may += s.Ease.Length.Abs().MM()
	}
	for _, u := range s.Uses() {
		if m := u.Instance.Cut.Material; m != nil && m.Stretch {
			may = max(may, stretchPart*max(a, b))
			break
		}
	}
	return max(0, math.Abs(a-b)-may)
}

func (r *run) wordRows(s *model.Seam, a, b float64, size int, several bool) finding.Finding {
	help := fmt.Sprintf("Mend the drawing, or say how the %s is taken up: `with ease MEASURE`, or `gathered`, in the seam.", r.inUnits(math.Abs(a-b)))
	label := "do not fit"
	if s.Ease != nil {
		help = fmt.Sprintf("Declared is an ease of %s. Mend the drawing, or the ease.", s.Ease)
	}
	f := at(s.Span, label, fmt.Sprintf("%s does not fit%s: %s is drawn %s long, %s %s.", Upper(seamName(s)), r.inSize(size, several), r.rowWords(s, s.Joins), r.inUnits(a), r.rowWords(s, s.To), r.inUnits(b)), help)
	for _, t := range s.Rows() {
		f = also(f, r.drawnAt(t, size), "drawn here")
	}
	return f
}

// drawnAt is the place of a row's first edge in its drawing for a size.
func (r *run) drawnAt(t *model.Target, size int) finding.Span {
	if r.Sizes == nil || len(r.Sizes.Sizes) == 0 {
		size = -1
	}
	for _, u := range t.Uses {
		for _, d := range u.Edge.Piece.Outlines {
			o := d.Outline(r.Pattern, size)
			if o == nil {
				continue
			}
			if e := o.Edge(u.Edge.ID); e != nil {
				return e.Span
			}
		}
	}
	return finding.Span{}
}

// rowWords names the edges of a row as they are written.
func (r *run) rowWords(s *model.Seam, row []*model.Target) string {
	var names []string
	for _, t := range row {
		words := t.Path
		if len(t.Uses) > 0 {
			if from, to := r.stretch(s, t, t.Uses[0]); from != nil && to != nil {
				words += " from " + from.Path + " to " + to.Path
			}
		}
		names = append(names, "`"+words+"`")
	}
	return listed(names)
}

// inUnits words a drawn length in the units of the pattern.
func (r *run) inUnits(mm float64) string {
	l, _ := measure.FromFloatMM(mm)
	if r.Allow != nil && r.Allow.Unit.System() == measure.Imperial {
		return measure.InImperial(measure.Round(l, measure.Detail, measure.Imperial), measure.Detail, true, measure.English)
	}
	l, _ = measure.FromFloatMM(math.Round(mm))
	return measure.InMetric(l, measure.Exact, true, measure.English)
}
