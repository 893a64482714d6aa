package check

import (
	"fmt"
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/compiler/outline"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "mark-not-drawn", Severity: finding.Error, Category: "outlines", FromAbsence: true, ahead: 2, run: marksNotDrawn,
		Purpose: "A mark that a piece has on an edge is not drawn there.",
		Why:     "Somebody cuts the piece out and looks for the mark that the steps speak of; and where a seam ends at it, nobody can measure the seam."})
	register(Rule{ID: "fold-lines-differ", Severity: finding.Warning, Category: "outlines", FromAbsence: true, run: foldLinesDiffer,
		Purpose: "A fold line is declared and not drawn, or drawn and not declared.",
		Why:     "A line that is drawn and never spoken of, or spoken of and not drawn, is mostly one that was forgotten, or is called otherwise."})
}

// namesNone reports whether a drawing has no way to name its marks and lines: a DXF file.
func namesNone(d *model.Drawn) bool { return strings.HasSuffix(strings.ToLower(d.File.Text), ".dxf") }

func marksNotDrawn(r *run) {
	r.eachDrawn(func(p *model.Piece, d *model.Drawn, where condition.Cond) {
		for _, m := range p.Marks {
			if m.On == nil || m.Between {
				continue
			}
			if namesNone(d) {
				r.out = append(r.out, unchecked(model.Unchecked{What: "the marks of " + the(p.Name) + ", which its drawing does not name", Span: d.File.Span}))
				return
			}
			bad, first := r.inOutline(d, func(o *outline.Outline) bool {
				return o.Edge(m.On.ID) != nil && !drawnOn(o, m) && !strayNotch(o, m)
			})
			bad = r.unsaid(edgesOf{p}, r.Space.All(bad, where, m.Cond, m.On.Cond))
			if !r.possible(bad) {
				continue
			}
			r.tell(m, bad)
			r.report(bad, r.wordMark(p, d, m, first))
		}
	})
}

// drawnOn reports whether a mark is drawn on its edge.
func drawnOn(o *outline.Outline, m *model.Mark) bool {
	for _, x := range o.Marks {
		if x.Name == m.ID && x.Edge != nil && x.Edge.Name == m.On.ID {
			return true
		}
	}
	return false
}

// strayNotch reports whether a notch of the name lies on no edge at all; that is said of
// the drawing.
func strayNotch(o *outline.Outline, m *model.Mark) bool {
	for _, x := range o.Marks {
		if x.Name == m.ID && x.Notch && x.Edge == nil {
			return true
		}
	}
	return false
}

func (r *run) wordMark(p *model.Piece, d *model.Drawn, m *model.Mark, o *outline.Outline) finding.Finding {
	for _, x := range o.Marks {
		if x.Name != m.ID {
			continue
		}
		where := "inside the piece"
		if x.Edge != nil {
			where = "on the " + edgeCalled(x.Edge.Name)
		}
		return also(at(m.Span, "on the "+edgeCalled(m.On.Name), fmt.Sprintf("The mark %s of %s is drawn %s, and the piece has it on the %s.", m.Name, the(p.Name), where, edgeCalled(m.On.Name)),
			"Move it in the drawing, or name the edge on which it lies."), x.Span, "drawn here")
	}
	return also(at(m.Span, "not in the drawing", fmt.Sprintf("The mark %s on the %s of %s is not drawn.", m.Name, edgeCalled(m.On.Name), the(p.Name)),
		fmt.Sprintf("Draw a short line or a circle on that edge and give it the id \"notch-%s\".", m.ID)), d.File.Span, "in this file")
}

func foldLinesDiffer(r *run) {
	r.eachDrawn(func(p *model.Piece, d *model.Drawn, where condition.Cond) {
		if namesNone(d) {
			return // its mirror lines have no names
		}
		for _, m := range p.FoldLines {
			bad, _ := r.inOutline(d, func(o *outline.Outline) bool { return !foldDrawn(p, o, m) })
			r.report(r.Space.All(bad, where, m.Cond), also(at(m.Span, "not in the drawing", fmt.Sprintf("The fold line %s of %s is not drawn.", m.Name, the(p.Name)),
				fmt.Sprintf("Draw it as a straight line with the id \"fold-%s\".", m.ID)), d.File.Span, "in this file"))
		}
		bad, first := r.inOutline(d, func(o *outline.Outline) bool { return foldUndeclared(p, o) != nil })
		if bad = r.Space.And(bad, where); !r.possible(bad) {
			return
		}
		line := foldUndeclared(p, first)
		name, say := "fold", "a fold line"
		if line.Name != "" {
			name, say = line.Name, "the fold line "+line.Name
		}
		r.report(bad, also(at(d.File.Span, "has a fold line", fmt.Sprintf("The drawing of %s has %s, which the piece does not declare.", the(p.Name), say),
			fmt.Sprintf("Add `fold line %s` to the piece, call the line as the piece does, or take it out of the drawing.", name)), line.Span, "this line"))
	})
}

// foldDrawn reports whether a declared fold line is drawn. The only one of a piece may be
// drawn without its name.
func foldDrawn(p *model.Piece, o *outline.Outline, m *model.Mark) bool {
	for _, l := range o.Folds {
		if l.Name == m.ID || l.Name == "" && len(p.FoldLines) == 1 {
			return true
		}
	}
	return false
}

// foldUndeclared gives a drawn fold line that the piece does not declare. A line along
// the edge that lies on the fold of the cloth shows that edge.
func foldUndeclared(p *model.Piece, o *outline.Outline) *outline.Line {
	for i := range o.Folds {
		l := &o.Folds[i]
		known := onFoldEdge(p, o, l)
		for _, m := range p.FoldLines {
			known = known || l.Name == m.ID || l.Name == "" && len(p.FoldLines) == 1
		}
		if !known {
			return l
		}
	}
	return nil
}

// onFoldEdge reports whether a line lies along an edge at which the piece is cut on the
// fold.
func onFoldEdge(p *model.Piece, o *outline.Outline, l *outline.Line) bool {
	const near = 10 // millimetres; such a line is often drawn a little inside
	for _, c := range p.Cuts {
		if c.Lay.FoldEdge == nil {
			continue
		}
		if e := o.Edge(c.Lay.FoldEdge.ID); e != nil && e.Off(l.From) <= near && e.Off(l.To) <= near {
			return true
		}
	}
	return false
}
