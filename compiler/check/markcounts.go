package check

import (
	"fmt"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/compiler/outline"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "marks-miscounted", Severity: finding.Error, Category: "outlines", FromAbsence: true, run: marksMiscounted,
		Purpose: "A drawing has more or fewer marks of a name than the piece says.",
		Why:     "Somebody sews on as many as there are marks, and one is left over or missing."})
}

func marksMiscounted(r *run) {
	var all drawings
	r.eachDrawn(func(p *model.Piece, d *model.Drawn, where condition.Cond) {
		for _, m := range p.Marks {
			if !m.Said || m.Between {
				continue
			}
			bad, first := r.inOutline(d, func(o *outline.Outline) bool {
				least, most, ok := marksDrawn(p, o, m)
				return ok && (m.Count < least || m.Count > most)
			})
			if bad = r.Space.All(bad, where, m.Cond); !r.possible(bad) {
				continue
			}
			all.add(r, bad, r.wordMarks(p, d, m, first))
		}
	})
	all.report(r)
}

func (r *run) wordMarks(p *model.Piece, d *model.Drawn, m *model.Mark, o *outline.Outline) finding.Finding {
	n := 0
	f := at(m.Span, "so many", "", fmt.Sprintf("Draw each as a circle whose id is mark-%s, with _1, _2 and so on behind it, or mend the number.", m.ID))
	for _, x := range o.Marks {
		if x.Name != m.ID {
			continue
		}
		if n++; n == 1 {
			f = also(f, x.Span, "drawn here")
		}
	}
	f.Headline = fmt.Sprintf("%s has the mark %s %s, and its drawing has it %s.", Upper(the(p.Name)), m.Name, soOften(m.Count), soOften(n))
	if n == 0 {
		return also(f, d.File.Span, "in this file")
	}
	return f
}

func soOften(n int) string {
	switch n {
	case 0:
		return "nowhere"
	case 1:
		return "once"
	}
	return fmt.Sprintf("%d times", n)
}

// marksDrawn gives how many marks of a name the whole part may have by its drawing: of a
// piece that is drawn as its half, one off the fold edge is on that half or on both. It is
// not known where the drawing does not name its marks.
func marksDrawn(p *model.Piece, o *outline.Outline, m *model.Mark) (least, most int, ok bool) {
	for _, x := range o.Marks {
		switch {
		case x.Name == "":
			return 0, 0, false
		case x.Name == m.ID:
			least, most = least+1, most+1
			if cutOnFold(p) {
				most++
			}
		}
	}
	return least, most, true
}

func cutOnFold(p *model.Piece) bool {
	for _, c := range p.Cuts {
		if c.Lay.Fold {
			return true
		}
	}
	return false
}
