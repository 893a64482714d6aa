package check

import (
	"fmt"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "bag-lies-nowhere", Severity: finding.Advice, Category: "seams", FromAbsence: true, run: bagHangs,
		Purpose: "The bag of a pocket in a seam is sewn round, and no step says which way it lies.",
		Why:     "Inside the garment it can fall to either side. The seam above and below the opening is pressed the same way, and the waist or the hem holds it so."})
	register(Rule{ID: "bag-and-seam-lie-apart", Severity: finding.Advice, Category: "seams", run: bagTwisted,
		Purpose: "The bag of a pocket is pressed to one side, and the seam that is sewn in one row with it to the other.",
		Why:     "Where the row turns from the seam into the bag, the allowances cannot lie to both sides: they twist and make a lump at the mark."})
}

// bagHangs looks at two copies of a piece that are sewn to each other and each to
// another part, as those of a pocket in a side seam, and are not turned.
func bagHangs(r *run) {
	for _, s := range r.Seams {
		p, other := r.pocketBag(s)
		if p == nil {
			continue
		}
		laid := r.whereDone(r.deeds().piece[p], "press", "turn", "fold", "lay", "tack", "baste", "apply", "attach", "topstitch", "edgestitch", "stitch")
		if sewn := r.sewnAt(s); sewn >= 0 {
			laid = r.Space.Or(laid, r.caughtLater(p, sewn))
			for _, o := range r.Ops()[sewn].Objects { // what is sewn in one row with it lies as it does
				if o.Seam != nil && o.Seam != s {
					laid = r.Space.Or(laid, r.whereDone(r.towards(o.Seam), "press"))
				}
			}
		}
		r.report(r.unsaid(s, r.Space.Diff(s.Cond, laid)), at(s.Span, "which way?", fmt.Sprintf("Nothing says which way %s lies.", the(p.Name)),
			fmt.Sprintf("Add `press %s toward` the piece that it lies on, such as %s; or baste it to the edge that holds it.", p.ID, other)))
	}
}

// pocketBag gives the piece of which a seam joins two copies that hang on two other
// parts, and one of these; nil if it is another seam.
func (r *run) pocketBag(s *model.Seam) (p *model.Piece, other string) {
	if !r.roundABag(s) || r.insideOut(s) != nil {
		return
	}
	hang := map[*model.Instance]bool{}
	for _, j := range s.Copies {
		for _, u := range append(append([]*model.EdgeUse(nil), j.A...), j.B...) {
			hang[u.Instance] = false
			p = u.Instance.Piece
		}
	}
	for _, o := range r.Seams {
		if o == s || len(o.Copies) == 0 {
			continue
		}
		for _, u := range o.Uses() {
			if u.Instance.Piece == p {
				hang[u.Instance] = !onePiece(o) || hang[u.Instance]
			} else if joinsPiece(o, p) && other == "" {
				other = the(u.Instance.Piece.Name)
			}
		}
	}
	for _, hangs := range hang {
		if !hangs {
			return nil, ""
		}
	}
	if len(hang) < 2 || r.bagInOne(s, hang) {
		return nil, ""
	}
	return
}

// bagTwisted compares where a bag is pressed with where the seams in its row are,
// by a step or by the head of the pattern.
func bagTwisted(r *run) {
	for _, op := range r.Ops() {
		to := towardPiece(op)
		if op.Verb != "press" || to == nil {
			continue
		}
		for _, o := range op.Objects {
			if o.Piece == nil || o.Kind != model.ToPiece {
				continue
			}
			var apart []*model.Seam
			bad := condition.False
			for _, s := range r.rowMates(o.Piece) {
				if away := r.Space.And(op.Cond, r.pressedAway(s, to)); rowsHave(s, to) && r.possible(away) {
					apart, bad = append(apart, s), r.Space.Or(bad, away)
				}
			}
			if len(apart) > 0 {
				r.report(bad, twisted(op, o.Piece, to, apart))
			}
		}
	}
}

func twisted(op *model.Op, bag, to *model.Piece, apart []*model.Seam) finding.Finding {
	f := at(op.Span, "to this side", fmt.Sprintf("%s is pressed toward %s, and %s, sewn in one row with it, to the other side.", Upper(the(bag.Name)), the(to.Name), theSeams(apart)),
		fmt.Sprintf("Press all of them the same way: `press %s toward %s`; or press the seam open.", apart[0].ID, to.ID))
	for _, s := range apart {
		f = also(f, s.Span, "lies the other way")
	}
	return f
}

// towardPiece gives the piece that an operation presses toward, nil if it is none.
func towardPiece(op *model.Op) *model.Piece {
	p := op.Phrase("toward")
	if p == nil || len(p.Targets) != 1 {
		return nil
	}
	return p.Targets[0].Piece
}

// rowMates lists the seams that are sewn in one operation with the seam round a bag.
func (r *run) rowMates(bag *model.Piece) (all []*model.Seam) {
	for _, op := range r.Ops() {
		round := false
		for _, o := range op.Objects {
			round = round || op.Row.Sews && o.Seam != nil && rowsHave(o.Seam, bag) && r.roundABag(o.Seam)
		}
		for _, o := range op.Objects {
			if round && o.Seam != nil && !rowsHave(o.Seam, bag) {
				all = append(all, o.Seam)
			}
		}
	}
	return
}

// pressedAway is where a seam is pressed toward another piece than one of its own.
func (r *run) pressedAway(s *model.Seam, to *model.Piece) condition.Cond {
	away, pressed := condition.False, condition.False
	for _, d := range r.deeds().seam[s] {
		if d.op.Verb != "press" {
			continue
		}
		pressed = r.Space.Or(pressed, d.cond)
		if p := towardPiece(d.op); p != nil && p != to && rowsHave(s, p) {
			away = r.Space.Or(away, d.cond)
		}
	}
	if f := r.Finish; f != nil && f.Toward != "" && f.Toward != to.ID {
		for _, p := range r.Pieces {
			if p.ID == f.Toward && rowsHave(s, p) {
				away = r.Space.Or(away, r.Space.Diff(s.Cond, pressed))
			}
		}
	}
	return away
}

// bagInOne reports whether both copies go into one and the same seam, as the layers
// of a made-up part do.
func (r *run) bagInOne(s *model.Seam, parts map[*model.Instance]bool) bool {
	for _, o := range r.Seams {
		if o == s {
			continue
		}
		for _, j := range o.Copies {
			copies := map[string]bool{}
			for _, u := range append(append([]*model.EdgeUse(nil), j.A...), j.B...) {
				if _, ok := parts[u.Instance]; ok {
					copies[u.Instance.Copy] = true
				}
			}
			if len(copies) > 1 {
				return true
			}
		}
	}
	return false
}

// caughtLater is where an edge of a piece is taken into a seam after an operation.
func (r *run) caughtLater(p *model.Piece, n int) condition.Cond {
	c := condition.False
	for _, o := range r.Seams {
		if joinsPiece(o, p) && r.sewnAt(o) > n {
			c = r.Space.Or(c, o.Cond)
		}
	}
	return c
}
