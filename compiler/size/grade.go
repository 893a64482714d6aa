package size

import (
	"slices"
	"strings"

	"seamwarden/compiler/measure"
)

// check looks at the numbers once all rows are read. A row with a cell missing
// is not graded: its gap is reported, and steps over it would mean nothing.
func (r *reader) check() {
	top := r.chart
	r.checkOne()
	for i := range top.Drafts {
		r.chart = top.Drafts[i].Chart
		r.checkOne()
	}
	r.chart = top
	r.standard()
}

// checkOne looks at the table above the drafts, or at one draft. A row that a draft
// has from above is looked at there, but for its ease over a row of the draft.
func (r *reader) checkOne() {
	c := r.chart
	for i := range c.Body {
		if row := &c.Body[i]; !row.Inherited && row.complete() {
			r.grade(row, r.shrinks(row))
		}
	}
	for i := range c.Finished {
		row := &c.Finished[i]
		tight := r.ease(row)
		if !row.Inherited && row.complete() {
			r.grade(row, tight)
		}
	}
}

// shrinks reports where a body measure falls as the size grows, and gives the
// numbers of those sizes.
func (r *reader) shrinks(row *Row) (falls []int) {
	for i := 1; i < len(row.Values); i++ {
		if row.Values[i].Cmp(row.Values[i-1]) < 0 {
			r.bodyShrinks(row, i)
			falls = append(falls, i)
		}
	}
	return falls
}

// grade reports steps between neighbouring sizes that are out of line with their
// neighbours. Step i leads from size i to size i+1.
//
// A step against the run of its row (down where most go up) is out of line, and
// is no neighbour to the others. Any other is in line with a neighbour if they differ by no more than half of the
// neighbour, or by no more than the tape can tell; so EN 13402-3's change from 4
// to 6 cm above bust 104 is in line, and so is any change that holds for one
// more step. It is out of line if no neighbour agrees with it. The first and the
// last step have one neighbour only: they are out of line if it disagrees with
// them and agrees with the step behind it. With fewer than three steps nothing
// can be told.
//
// One wrong cell makes two wrong steps, up and down again: these are one
// finding, at the cell between them. Steps beside a cell that is reported already
// are left alone for the same reason.
func (r *reader) grade(row *Row, reported []int) {
	steps := stepsOf(row)
	out := outOfLine(steps, isGirth(row))
	for i := 0; i < len(out); i++ {
		if !out[i] || besideAny(i, reported) {
			continue
		}
		if pair := i+1 < len(out) && out[i+1] && steps[i].Cmp(steps[i+1]) != 0 && !besideAny(i+1, reported); pair {
			r.oneCellOut(row, i+1, steps)
			i++
			continue
		}
		r.stepOut(row, i, steps)
	}
}

// besideAny says whether step i leads to or from one of the cells, or to or from
// the cell before one: a fall may come from either end.
func besideAny(i int, cells []int) bool {
	return slices.ContainsFunc(cells, func(c int) bool { return c-2 <= i && i <= c })
}

func stepsOf(row *Row) []measure.Length {
	var steps []measure.Length
	for i := 1; i < len(row.Values); i++ {
		steps = append(steps, row.Values[i].Sub(row.Values[i-1]))
	}
	return steps
}

// outOfLine says of each step whether it is out of line. In a length a step of
// nothing is passed over, because lengths often stay the same for two sizes; in
// a girth it is a step like any other.
func outOfLine(steps []measure.Length, girth bool) []bool {
	var at []int // the steps that are compared
	out := make([]bool, len(steps))
	run := runOf(steps)
	for i, s := range steps {
		out[i] = s.Sign()*run < 0
		if !out[i] && (girth || !s.IsZero()) {
			at = append(at, i)
		}
	}
	if len(at) < 3 {
		return out
	}
	agree := func(i, k int) bool { return inLine(steps[at[i]], steps[at[k]]) }
	last := len(at) - 1
	out[at[0]] = !agree(0, 1) && agree(1, 2)
	out[at[last]] = !agree(last, last-1) && agree(last-1, last-2)
	for i := 1; i < last; i++ {
		out[at[i]] = !agree(i, i-1) && !agree(i, i+1)
	}
	return out
}

// runOf is 1 if most steps go up, -1 if most go down, else 0.
func runOf(steps []measure.Length) int {
	sum := 0
	for _, s := range steps {
		sum += s.Sign()
	}
	return max(-1, min(sum, 1))
}

// tapeReads is what differs by rounding only: 1/8 in. Common practice, no source.
var tapeReads = measure.Of(1, 8, measure.Inch)

// inLine says whether a step fits one neighbour.
func inLine(step, neighbour measure.Length) bool {
	apart := step.Sub(neighbour).Abs()
	if step.Sign()*neighbour.Sign() >= 0 && apart.Cmp(tapeReads) <= 0 {
		return true
	}
	return step.Sign() == neighbour.Sign() && apart.Mul(2).Cmp(neighbour.Abs()) <= 0
}

// Words in a row's key or name that tell a girth from a length. A waist height
// is a length: the length words win. (Terms: EN 13402-1, ISO 8559-1.)
var (
	girthWords  = []string{"girth", "circumference", "bust", "underbust", "chest", "waist", "hip", "hips", "neck", "thigh", "knee", "calf", "ankle", "wrist", "head", "bicep"}
	lengthWords = []string{"length", "height", "depth", "rise", "inseam", "outseam", "inside", "outside", "to", "width", "shoulder", "arm", "sleeve", "back", "front", "drop", "level"}
)

// isGirth says whether a row measures round the body, as far as its words tell.
func isGirth(row *Row) bool {
	words := strings.FieldsFunc(strings.ToLower(row.Key+" "+row.Name), func(c rune) bool {
		return strings.ContainsRune(" -,()/.", c)
	})
	has := func(list []string) bool {
		return slices.ContainsFunc(words, func(w string) bool { return contains(list, w) })
	}
	return has(girthWords) && !has(lengthWords)
}

func contains(list []string, word string) bool { return slices.Contains(list, word) }

// ease reports a finished measure that lies over no body row, and one that is
// smaller than the body in a cloth that does not give. It gives the numbers of
// the sizes that are too small.
func (r *reader) ease(row *Row) (tight []int) {
	if row.Over == "" {
		return nil
	}
	c := r.chart
	body := c.over(row)
	if body == nil && len(c.Drafts) > 0 && c.Drafts[0].BodyRow(row.Over) != nil {
		return nil // each draft is looked at on its own
	}
	if row.Inherited && (body == nil || body.Inherited) {
		return nil // it is looked at above the drafts
	}
	if body == nil {
		r.overUnknown(row)
		return nil
	}
	if !c.Woven {
		return nil
	}
	for i, e := range c.Ease(row) {
		if e.Sign() < 0 {
			tight = append(tight, i)
		}
	}
	if len(tight) > 0 {
		r.negativeEase(row, body, tight)
	}
	return tight
}
