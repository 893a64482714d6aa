package pdf

import (
	"errors"
	"reflect"
	"strconv"

	"seamwarden/compiler/booklet"
)

// blocks sets blocks one below the other in a column.
func (l *layouter) blocks(bs []booklet.Block, c column) ([]*piece, error) {
	var out []*piece
	for _, b := range bs {
		ps, err := l.block(b, c)
		if err != nil {
			return nil, err
		}
		out = append(out, ps...)
	}
	return out, nil
}

func (l *layouter) block(b booklet.Block, c column) ([]*piece, error) {
	if b == nil || reflect.ValueOf(b).IsNil() {
		return nil, errors.New("there is an empty place where a block should stand")
	}
	switch x := b.(type) {
	case *booklet.Heading:
		return l.heading(x, c), nil
	case *booklet.Paragraph:
		return l.paragraph(x.Text, l.th.text, c)
	case *booklet.List:
		return l.list(x, c)
	case *booklet.Table:
		return l.table(x, c)
	case *booklet.Figure:
		return l.figure(x, c)
	case *booklet.Step:
		return l.step(x, c)
	case *booklet.Caution:
		return l.caution(x, c)
	case *booklet.Terms:
		return l.terms(x, c)
	case *booklet.Group:
		return l.group(x, c)
	}
	return nil, errors.New("print does not know a kind of block in the booklet")
}

func (l *layouter) heading(h *booklet.Heading, c column) []*piece {
	ts, level, above := l.th.section, 1, 20.0
	if h.Level > 2 {
		ts, level, above = l.th.part, 2, 14
	}
	ps := l.headingPieces(h.Title, ts, c)
	if len(ps) == 0 {
		return anchorPiece(h.ID)
	}
	space(ps, above, 4)
	anchor(ps, l.record(h.Title, level, h.ID))
	return ps
}

// anchorPiece keeps a place that links lead to, where nothing is drawn.
func anchorPiece(id string) []*piece {
	if id == "" {
		return nil
	}
	return []*piece{{anchors: []string{id}, after: never}}
}

func (l *layouter) paragraph(in []booklet.Inline, ts textStyle, c column) ([]*piece, error) {
	c = c.upTo(l.th.measure)
	lines, err := l.lines(in, ts, c.width)
	if err != nil {
		return nil, err
	}
	ps := l.textPieces(lines, ts, c)
	space(ps, l.th.paraGap, 0)
	return ps, nil
}

func (l *layouter) list(x *booklet.List, c column) ([]*piece, error) {
	indent := 16.0
	if x.Ordered {
		last := l.set.shape(strconv.Itoa(len(x.Items))+".", l.th.text.style, "")
		indent = sum(last) + 7
	}
	inner := c.inset(indent)
	var out []*piece
	for i, item := range x.Items {
		ps, err := l.blocks(item, inner)
		if err != nil {
			return nil, err
		}
		if len(ps) == 0 {
			ps = []*piece{{height: l.th.text.leading}}
		}
		l.marker(ps[0], x.Ordered, i+1, inner.x-7)
		ps[0].gap = 3
		out = append(out, ps...)
	}
	space(out, l.th.paraGap, 0)
	return out, nil
}

// marker puts the bullet or the number before an item; it ends at x.
func (l *layouter) marker(p *piece, ordered bool, n int, x float64) {
	text := "•"
	if ordered {
		text = strconv.Itoa(n) + "."
	}
	ln := line{runs: l.set.shape(text, l.th.text.style, "")}
	ln.width = sum(ln.runs)
	// In a list nested so deep that it is no longer set in, the mark must not
	// leave the page.
	x = max(x, l.sheet.left/2+ln.width)
	marks := l.lineMarks(ln, l.th.text.aligned(right), column{x, 0}, 0)
	p.marks = append(marks, p.marks...) // before the text, for those who read the file in order
	p.height = max(p.height, l.th.text.leading)
}

func (l *layouter) caution(x *booklet.Caution, c column) ([]*piece, error) {
	c = c.upTo(l.th.measure + 24)
	inner := column{c.x + 12, c.width - 24}
	ps := l.headingPieces(x.Signal, l.th.label.strong(), inner)
	text, err := l.paragraph(x.Text, l.th.text, inner)
	if err != nil {
		return nil, err
	}
	if len(text) > 0 {
		text[0].gap = 0
	}
	ps = append(ps, text...)
	keep(ps, firm)
	enclose(ps, &frame{area: c, line: l.th.heavy}, 7)
	space(ps, l.th.blockGap, l.th.blockGap)
	if len(ps) > 0 {
		ps[len(ps)-1].after = free
	}
	return ps, nil
}

// terms sets the words in a column of their own, left of what they mean.
func (l *layouter) terms(x *booklet.Terms, c column) ([]*piece, error) {
	side := c.width * 0.27
	inner := c.inset(side + l.th.colGap)
	var out []*piece
	for _, t := range x.Items {
		ps, err := l.term(t, column{c.x, side}, inner, c)
		if err != nil {
			return nil, err
		}
		out = append(out, ps...)
	}
	space(out, l.th.blockGap, l.th.paraGap)
	return out, nil
}

func (l *layouter) term(t booklet.Term, side, inner, whole column) ([]*piece, error) {
	ps, err := l.blocks(t.Blocks, inner)
	if err != nil {
		return nil, err
	}
	ts := l.th.text.strong()
	lines := l.breakText(t.Word, ts, side.width)
	high := float64(len(lines)) * ts.leading
	if inner == whole || len(ps) == 0 || high > l.tallest() { // no room for two columns, or nothing in the second
		head := l.headingPieces(t.Word, l.th.text.strong(), whole)
		if len(ps) == 0 && len(head) > 0 {
			head[len(head)-1].after = free
		}
		ps = append(head, ps...)
	} else {
		ps = besideFront(ps, l.blockMarks(lines, ts, side, 0), high)
	}
	if len(ps) == 0 {
		return anchorPiece(t.ID), nil
	}
	ps[0].gap = l.th.paraGap
	anchor(ps, t.ID)
	return ps, nil
}

// besideFront is beside for marks that are read before the pieces.
func besideFront(ps []*piece, marks []mark, height float64) []*piece {
	own := ps[0].marks
	ps[0].marks = marks
	return beside(ps, own, height)
}

// group sets the condition in italics and a bar beside all that it governs.
func (l *layouter) group(x *booklet.Group, c column) ([]*piece, error) {
	if x.When == "" {
		return l.blocks(x.Blocks, c)
	}
	inner := c.inset(11)
	ps := l.headingPieces(x.When, l.th.text.italics(), inner)
	body, err := l.blocks(x.Blocks, inner)
	if err != nil {
		return nil, err
	}
	if len(body) > 0 {
		body[0].gap = min(body[0].gap, l.th.paraGap)
	} else if len(ps) > 0 {
		ps[len(ps)-1].after = free
	}
	ps = append(ps, body...)
	if extent(ps) <= l.sheet.bodyHeight()/3 {
		keep(ps, firm)
	}
	if inner != c {
		enclose(ps, &frame{area: c, bar: true, line: l.th.rule}, 0)
	}
	space(ps, l.th.blockGap, l.th.blockGap)
	return ps, nil
}
