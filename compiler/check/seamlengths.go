package check

import (
	"fmt"
	"math"
	"slices"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/measure"
	"seamwarden/compiler/model"
	"seamwarden/compiler/outline"
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

// mostRows is the number of different garments in which the rows of one seam are added
// up; with more, the seam is passed over.
const mostRows = 64

// rowLengths are the two rows of a seam in millimetres, for every size, in the garments
// of a condition. A size in which an edge is not drawn is no number.
type rowLengths struct {
	cond condition.Cond
	rows [2][]float64
}

func seamLengths(r *run) {
	drawn, taken := r.anyOutline(), r.takenUp()
	for _, s := range r.Seams {
		if s.Gathered || s.Ease == nil && !drawn {
			continue
		}
		whole := drawn && !r.partial(s)
		for _, j := range s.Copies {
			if !whole {
				break
			}
			rows := r.addUp(s, j, taken)
			if whole = wholly(rows); r.reportRows(s, rows) {
				break // the other side of the body has the same fault
			}
		}
		if s.Ease != nil && !whole {
			r.out = append(r.out, unchecked(model.Unchecked{What: "the ease of " + seamName(s), Span: s.Sentence}))
		}
	}
}

// wholly reports whether both rows are known in every garment and size.
func wholly(all []rowLengths) bool {
	for _, l := range all {
		for i := range l.rows[0] {
			if sum := l.rows[0][i] + l.rows[1][i]; math.IsNaN(sum) {
				return false
			}
		}
	}
	return len(all) > 0
}

func (r *run) anyOutline() bool {
	return slices.ContainsFunc(r.Pieces, func(p *model.Piece) bool {
		return slices.ContainsFunc(p.Outlines, func(d *model.Drawn) bool { return d.Art != nil })
	})
}

// partial reports whether a seam joins a stretch of an edge, or edges whose lengths
// cannot be added up one by one.
func (r *run) partial(s *model.Seam) bool {
	for _, t := range s.Rows() {
		if t.From != nil || t.To != nil || t.Kind == model.ToAlternative {
			return true
		}
	}
	for _, d := range r.deeds().seam[s] {
		if shapesLength[d.op.Verb] {
			return true
		}
	}
	for _, u := range s.Uses() {
		for _, d := range r.deeds().edge[u.Edge] {
			if shapesLength[d.op.Verb] {
				return true
			}
		}
	}
	return len(s.To) == 0
}

// shapesLength are the operations that make an edge shorter or longer by an amount that
// is not declared.
var shapesLength = map[string]bool{"gather": true, "ease": true, "pleat": true, "shirr": true, "stretch": true, "smock": true, "ruche": true}

// takenUp says how much darts, pleats and tucks take out of edges, in millimetres; no
// number where that is not said, or where it is not known into which edge they run.
func (r *run) takenUp() map[*model.Edge]float64 {
	taken := map[*model.Edge]float64{}
	for _, x := range r.Shapings {
		if x.In == nil {
			continue
		}
		edges := []*model.Edge{x.In.Edge}
		if x.In.Edge == nil && x.In.Piece != nil {
			edges = x.In.Piece.Edges
		}
		for _, e := range edges {
			switch {
			case e == nil:
			case x.Takes == nil || x.In.Edge == nil || x.Cond != e.Cond:
				taken[e] = math.NaN()
			default:
				taken[e] += x.Takes.Length.MM()
			}
		}
	}
	return taken
}

// addUp gives the lengths of both rows of a joining in all garments that have them
// drawn.
func (r *run) addUp(s *model.Seam, j *model.Join, taken map[*model.Edge]float64) []rowLengths {
	n := 1
	if r.Sizes != nil {
		n = max(1, len(r.Sizes.Sizes))
	}
	start := rowLengths{cond: r.Space.And(r.Valid, r.Space.And(s.Cond, j.Cond))}
	start.rows[0], start.rows[1] = make([]float64, n), make([]float64, n)
	all := []rowLengths{start}
	for row, uses := range [2][]*model.EdgeUse{j.A, j.B} {
		for _, u := range uses {
			all = r.withUse(all, row, s, u, taken)
			if len(all) > mostRows {
				return nil
			}
		}
	}
	return all
}

// withUse adds an edge to a row, in the garments that have it. Where it is not drawn,
// nothing is known.
func (r *run) withUse(all []rowLengths, row int, s *model.Seam, u *model.EdgeUse, taken map[*model.Edge]float64) (out []rowLengths) {
	add := func(l rowLengths, c condition.Cond, d *model.Drawn) {
		if c == condition.False || c == condition.Undecided {
			return
		}
		l.cond = c
		if d != nil {
			l.rows[row] = slices.Clone(l.rows[row])
			for i := range l.rows[row] {
				l.rows[row][i] += r.alongSeam(s, u, d, i) - taken[u.Edge]
			}
		}
		out = append(out, l)
	}
	for _, l := range all {
		add(l, r.Space.Diff(l.cond, u.Cond), nil)
		left := r.Space.And(l.cond, u.Cond)
		for _, d := range u.Edge.Piece.Outlines {
			if d.Art != nil {
				add(l, r.Space.And(left, d.Cond), d)
				left = r.Space.Diff(left, d.Cond)
			}
		}
		add(unknown(l, row), left, nil)
	}
	return
}

// unknown is the same without a length of one row.
func unknown(l rowLengths, row int) rowLengths {
	l.rows[row] = slices.Repeat([]float64{math.NaN()}, len(l.rows[row]))
	return l
}

// alongSeam is the length of an edge along the seam in one size; no number if it is not
// drawn. Of a part that is cut on the fold, an edge that runs up to the fold has both
// halves.
func (r *run) alongSeam(s *model.Seam, u *model.EdgeUse, d *model.Drawn, size int) float64 {
	if r.Sizes == nil || len(r.Sizes.Sizes) == 0 {
		size = -1
	}
	o := d.Outline(r.Pattern, size)
	if o == nil {
		return math.NaN()
	}
	e := o.Edge(u.Edge.ID)
	if e == nil || r.spoken[d] != condition.False {
		return math.NaN()
	}
	long := o.SewLength(e, func(other *outline.Edge) float64 { return r.widthAt(s, u, other) })
	if lay := u.Instance.Cut.Lay; lay.Fold && lay.FoldEdge != nil && lay.FoldEdge != u.Edge && !u.Edge.Doubled(u.Instance.Cut) {
		return 2 * long
	}
	return long
}

// widthAt is the allowance of an edge of the piece: that of the seam for the edge in it,
// of another seam for its neighbours, nothing on the fold.
func (r *run) widthAt(s *model.Seam, u *model.EdgeUse, drawn *outline.Edge) float64 {
	e := u.Edge.Piece.Edge(drawn.Name)
	if e == nil || u.Instance.Cut.Lay.FoldEdge == e {
		return 0
	}
	if e != u.Edge {
		s = nil
		for _, other := range r.Seams {
			if slices.ContainsFunc(other.Uses(), func(o *model.EdgeUse) bool { return o.Edge == e }) {
				s = other
				break
			}
		}
	}
	switch {
	case s != nil:
		w, _ := s.Allowance()
		return w.MM()
	case r.Allow != nil:
		return r.Allow.Length.MM()
	}
	return 0
}

// reportRows says once of a seam in which sizes its rows differ, with the lengths of
// the size in which they differ most.
func (r *run) reportRows(s *model.Seam, all []rowLengths) bool {
	bad, worst, least := condition.False, rowLengths{}, 0.0
	at0, sizes := 0, map[int]bool{}
	for _, l := range all {
		wrong := r.InSizes(func(i int) bool {
			k := max(i, 0)
			off := r.tooFar(s, l.rows[0][k], l.rows[1][k])
			if off > least {
				worst, least, at0 = l, off, k
			}
			sizes[k] = sizes[k] || off > 0
			return off > 0
		})
		bad = r.Space.Or(bad, r.Space.And(wrong, l.cond))
	}
	if !r.possible(bad) || worst.rows[0] == nil {
		return false
	}
	several := false // the headline ends with the sizes; it names one only if that is not clear
	for k, wrong := range sizes {
		several = several || wrong && k != at0
	}
	r.report(bad, r.wordRows(s, worst.rows[0][at0], worst.rows[1][at0], at0, several))
	return true
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
	in := ""
	if several {
		in = " in size " + r.Sizes.Sizes[size]
	}
	help := fmt.Sprintf("Mend the drawing, or say how the %s is taken up: `with ease MEASURE`, or `gathered`, in the seam.", r.inUnits(math.Abs(a-b)))
	label := "do not fit"
	if s.Ease != nil {
		help = fmt.Sprintf("Declared is an ease of %s. Mend the drawing, or the ease.", s.Ease)
	}
	f := at(s.Span, label, fmt.Sprintf("%s does not fit%s: %s is drawn %s long, %s %s.", Upper(seamName(s)), in, rowWords(s.Joins), r.inUnits(a), rowWords(s.To), r.inUnits(b)), help)
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
func rowWords(row []*model.Target) string {
	var names []string
	for _, t := range row {
		names = append(names, "`"+t.Path+"`")
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
