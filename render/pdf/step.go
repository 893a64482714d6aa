package pdf

import (
	"reflect"
	"strconv"

	"seamwarden/compiler/booklet"
)

// step sets a step: at the left a box to tick and the number, then what is done,
// and at the right the figures that are small enough to stand there.
func (l *layouter) step(x *booklet.Step, c column) ([]*piece, error) {
	main := c.inset(l.gutter)
	side, below, err := l.shareOut(x, main)
	if err != nil {
		return nil, err
	}
	text := main
	if side.height > 0 {
		text.width -= side.area.width + l.th.colGap
	}
	ps, err := l.stepText(x, text)
	if err != nil {
		return nil, err
	}
	ps = l.number(x.Number, ps, c, main)
	if side.height > 0 {
		ps = beside(ps, shiftAll(side.marks, 0, stepDrop), side.height+stepDrop)
		ps[0].anchors = append(ps[0].anchors, side.ids...)
	}
	for _, f := range below {
		fp, err := l.figure(f, main)
		if err != nil {
			return nil, err
		}
		ps = append(ps, fp...)
	}
	if extent(ps) <= l.sheet.bodyHeight() {
		keep(ps, soft)
	}
	ps[len(ps)-1].after = free
	space(ps, 17, 4)
	anchor(ps, x.ID)
	return ps, nil
}

// stepDrop is how far a step's title stands below the top of its big number.
const stepDrop = 6

// stepText sets the title, for whom the step is, and what is done.
func (l *layouter) stepText(x *booklet.Step, c column) ([]*piece, error) {
	ps := l.headingPieces(x.Title, l.th.stepTitle, c)
	ps = append(ps, l.headingPieces(x.When, l.th.text.italics(), c)...)
	body, err := l.blocks(x.Blocks, c)
	if err != nil {
		return nil, err
	}
	if len(ps) > 0 && len(body) > 0 {
		body[0].gap = min(body[0].gap, 3)
	}
	ps = append(ps, body...)
	if len(ps) == 0 {
		ps = []*piece{{height: l.th.stepTitle.leading}}
	}
	first := ps[0]
	first.marks = shiftAll(first.marks, 0, stepDrop)
	first.height += stepDrop
	return ps, nil
}

// number puts the box and the number before a step's pieces; where the column is
// too narrow for that, above them.
func (l *layouter) number(n int, ps []*piece, c, main column) []*piece {
	ts := l.th.stepNumber
	base := stepDrop + l.baseline(l.th.stepTitle)
	box := l.th.tickBig
	num := line{runs: l.set.shape(strconv.Itoa(n), ts.style, "")}
	num.width = sum(num.runs)
	x := c.x + l.gutter - 12 - num.width
	marks := []mark{boxMark(rect{c.x + 1, base - box, box, box}, l.th.rule)}
	for _, r := range num.runs {
		marks = append(marks, textMark{x: x, y: base, run: r})
		x += r.width
	}
	if main == c {
		return append([]*piece{{height: base + 6, marks: marks, after: never}}, ps...)
	}
	return besideFront(ps, marks, base+6)
}

// stepGutter gives the width of the box, the widest number and the room round them.
func (l *layouter) stepGutter(b *booklet.Booklet) float64 {
	most := 0
	for _, c := range b.Chapters {
		most = max(most, greatestStep(c.Blocks))
	}
	digits := len(strconv.Itoa(most))
	zero := sum(l.set.shape("0", l.th.stepNumber.style, ""))
	return l.th.tickBig + 8 + float64(max(2, digits))*zero + 12
}

// greatestStep looks for the greatest number in blocks and in what they hold.
func greatestStep(bs []booklet.Block) int {
	most := 0
	for _, b := range bs {
		if b == nil || reflect.ValueOf(b).IsNil() {
			continue // block reports it
		}
		switch x := b.(type) {
		case *booklet.Step:
			most = max(most, x.Number, greatestStep(x.Blocks))
		case *booklet.Group:
			most = max(most, greatestStep(x.Blocks))
		case *booklet.List:
			for _, i := range x.Items {
				most = max(most, greatestStep(i))
			}
		case *booklet.Terms:
			for _, t := range x.Items {
				most = max(most, greatestStep(t.Blocks))
			}
		}
	}
	return most
}

// sideColumn is what stands at the right of a step's text. Its marks have their
// final x; their y counts from the top of the step.
type sideColumn struct {
	area   column
	marks  []mark
	ids    []string
	height float64
}

// shareOut decides which figures stand beside the text; the others go below it.
func (l *layouter) shareOut(x *booklet.Step, main column) (sideColumn, []*booklet.Figure, error) {
	w := main.width * 0.4
	side := sideColumn{area: column{main.x + main.width - w, w}}
	room := main.width >= 3*narrowest && !wantsWidth(x.Blocks)
	var below []*booklet.Figure
	for _, f := range x.Figures {
		if f == nil {
			continue
		}
		ok := false
		if room && fitsBeside(f, w) {
			var err error
			if ok, err = l.addBeside(&side, f); err != nil {
				return side, nil, err
			}
		}
		if !ok {
			below = append(below, f)
		}
	}
	return side, below, nil
}

// addBeside adds a figure to the side column if it is not too high for a page.
func (l *layouter) addBeside(s *sideColumn, f *booklet.Figure) (bool, error) {
	marks, h, err := l.figureMarks(f, s.area, l.sheet.bodyHeight()*0.4)
	if err != nil {
		return false, err
	}
	top := s.height
	if top > 0 {
		top += l.th.blockGap
	}
	if top+h+stepDrop > l.tallest() {
		return false, nil
	}
	s.marks = append(s.marks, shiftAll(marks, 0, top)...)
	s.height = top + h
	if f.ID != "" {
		s.ids = append(s.ids, f.ID)
	}
	return true, nil
}

// wantsWidth tells whether a step's text needs the whole column.
func wantsWidth(bs []booklet.Block) bool {
	for _, b := range bs {
		switch b.(type) {
		case *booklet.Table, *booklet.Figure, *booklet.Step:
			return true
		}
	}
	return false
}
