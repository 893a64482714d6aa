package check

import (
	"fmt"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "turned-part-never-pressed", Severity: finding.Advice, Category: "order", FromAbsence: true, run: turnedUnpressed,
		Purpose: "A part is turned and then stitched or sewn on, and no step presses it.",
		Why:     "Turned and not pressed, its seam rolls to one side and its edge stays round; the next row fixes it so."})
}

// turnedUnpressed looks at parts that are worked on after they were turned. What
// is stuffed is not pressed, nor is a band that was creased before its ends were
// sewn, nor what is turned wrong side out to be sewn on; and a pattern that presses nothing is for cloth that takes no iron.
func turnedUnpressed(r *run) {
	for _, n := range r.Notions {
		if n.Fill {
			return
		}
	}
	ops := r.Ops()
	if !pressesAtAll(ops) {
		return
	}
	for n, op := range ops {
		if p := op.Phrase("out"); op.Verb != "turn" || op.Phrase("to") != nil || p != nil && p.Word == "wrong" {
			continue
		}
		ironed := condition.False // what is turned together is pressed together
		for _, o := range op.Objects {
			ironed = r.Space.Or(ironed, r.ironed(o, ops, n))
		}
		for _, o := range op.Objects {
			if o.Kind != model.ToPiece && o.Kind != model.ToPart || !r.sewnBefore(o, n) {
				continue
			}
			bad := r.Space.Diff(r.Space.And(op.Cond, r.sewnAgain(o, ops[n+1:])), ironed)
			r.report(bad, at(op.Span, "turned here", fmt.Sprintf("%s is turned and sewn on, and never pressed.", Upper(the(partName(o)))),
				fmt.Sprintf("Add `press %s` after it is turned.", o.Path)))
		}
	}
}

// sewnBefore reports whether a seam of a part is sewn before some operation.
func (r *run) sewnBefore(o *model.Target, n int) bool {
	for _, i := range o.Instances {
		for _, s := range r.Seams {
			if at := r.sewnAt(s); at >= 0 && at < n && rowsHave(s, i.Piece) {
				return true
			}
		}
	}
	return false
}

func pressesAtAll(ops []*model.Op) bool {
	for _, op := range ops {
		if op.Verb == "press" {
			return true
		}
	}
	return false
}

func partName(t *model.Target) string {
	if t.Part != nil {
		return t.Part.Name
	}
	return t.Piece.Name
}

// sewnAgain is where a row or a seam goes through a turned part.
func (r *run) sewnAgain(o *model.Target, later []*model.Op) condition.Cond {
	c := condition.False
	for _, op := range later {
		if op.Row.Sews || oneOf(op.Verb, []string{"topstitch", "edgestitch", "stitch", "apply"}) {
			if isAbout(op, o, joinsPiece) {
				c = r.Space.Or(c, op.Cond)
			}
		}
	}
	return c
}

// ironed is where a turned part is pressed afterwards, or a piece of it was creased
// before. To press the seam by which it is sewn on, or caught, does not press it.
func (r *run) ironed(o *model.Target, ops []*model.Op, turned int) condition.Cond {
	c := condition.False
	ownSeam := func(s *model.Seam, p *model.Piece) bool { return rowsHave(s, p) && r.sewnAt(s) < turned }
	for n, op := range ops {
		if n == turned || op.Verb != "press" && op.Verb != "steam" || !isAbout(op, o, ownSeam) {
			continue
		}
		if n > turned || along(op) != nil {
			c = r.Space.Or(c, op.Cond)
		}
	}
	return c
}

// along gives the line along which an operation is done, nil if it names none.
func along(op *model.Op) *model.Target {
	for _, p := range op.Phrases {
		if (p.Name == "along" || p.Place == "along") && len(p.Targets) > 0 {
			return p.Targets[0]
		}
	}
	return nil
}

// isAbout reports whether an operation names a piece of some part, an edge of it,
// or a seam that takes it in the way that joins says.
func isAbout(op *model.Op, o *model.Target, joins func(*model.Seam, *model.Piece) bool) bool {
	found := false
	for _, x := range op.Objects {
		x.Each(func(t *model.Target) {
			for _, i := range o.Instances {
				p := i.Piece
				found = found || t.Piece == p || holds(t.Instances, p) || t.Seam != nil && joins(t.Seam, p)
			}
		})
	}
	return found
}
