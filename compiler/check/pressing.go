package check

import (
	"fmt"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

// What ought to be pressed and is not.
func init() {
	register(Rule{ID: "seam-never-pressed", Severity: finding.Advice, Category: "seams", FromAbsence: true, run: neverPressed,
		Purpose: "No step presses a seam.",
		Why:     "A seam that is not pressed before the next one crosses it stays a ridge, and a row of topstitching fixes it so."})
	register(Rule{ID: "pressing-rule-does-not-fit", Severity: finding.Advice, Category: "seams", FromAbsence: true, run: policyUnfit,
		Purpose: "The head of the pattern presses seams toward a piece; a seam does not join that piece, and no step presses it.",
		Why:     "Toward the back is plain at a side seam. At a seam that joins no back, whoever sews it has to guess."})
}

func neverPressed(r *run) {
	if f := r.Finish; f != nil && (f.Open || f.Toward != "") {
		return
	}
	groups := map[condition.Cond][]*model.Seam{}
	var order []condition.Cond
	for _, s := range r.Seams {
		bad := r.Space.And(r.unpressed(s), r.Valid)
		if bad == condition.False {
			continue
		}
		if groups[bad] == nil {
			order = append(order, bad)
		}
		groups[bad] = append(groups[bad], s)
	}
	for _, bad := range order {
		list := groups[bad]
		f := at(list[0].Span, "never pressed", fmt.Sprintf("No step presses %s.", theSeams(list)), fmt.Sprintf("Add `press %s open`, or `toward` one of its pieces.", list[0].ID))
		for _, s := range list[1:] {
			f = also(f, s.Span, "nor this")
		}
		r.report(bad, f)
	}
}

// policyUnfit holds the pressing that the head asks of every seam against the
// seams that no step presses.
func policyUnfit(r *run) {
	if r.Finish == nil || r.Finish.Toward == "" {
		return
	}
	for _, p := range r.Pieces {
		if p.ID != r.Finish.Toward {
			continue
		}
		for _, s := range r.Seams {
			if onePiece(s) || r.standsAlone(s, p) {
				continue // a seam in the middle of the body has no better way to lie
			}
			f := at(s.Span, "pressed which way?", fmt.Sprintf("Seams are pressed toward %s, and %s does not join it to one other piece.", the(p.Name), seamName(s)),
				fmt.Sprintf("Add `press %s open`, or `toward` one of its pieces.", s.ID))
			bad := r.unpressed(s)
			r.report(bad, also(f, r.Finish.Span, "said of every seam"))
			r.tell(s, bad)
		}
	}
}

// standsAlone reports whether one side of a seam is a piece and nothing else.
func (r *run) standsAlone(s *model.Seam, p *model.Piece) bool {
	for _, j := range s.Copies {
		for _, row := range [][]*model.EdgeUse{j.A, j.B} {
			alone := len(row) > 0
			for _, u := range row {
				alone = alone && u.Instance.Piece == p
			}
			if alone {
				return true
			}
		}
	}
	return false
}

// unpressed is where nothing presses a seam. Round a bag there is nothing to press
// it over.
func (r *run) unpressed(s *model.Seam) condition.Cond {
	if r.roundABag(s) {
		return condition.False
	}
	bad := r.Space.Diff(s.Cond, r.Space.Or(r.whereDone(r.deeds().seam[s], "press", "fell", "steam"), r.KindIs("toy"))) // the filling spreads the seams of a toy
	if !r.possible(bad) {
		return condition.False
	}
	return r.unsaid(s, r.Space.Diff(bad, r.pressedAfter(s)))
}

// roundABag reports whether a seam closes a piece on itself or on its copy, as at
// the end of a band or round a pocket bag. The left one that is sewn to the right
// one, as at the centre back, and the ends of a ring lie open.
func (r *run) roundABag(s *model.Seam) bool {
	for _, j := range s.Copies {
		rows := append(append([]*model.EdgeUse(nil), j.A...), j.B...)
		for _, u := range rows {
			if u.Instance.Piece != rows[0].Instance.Piece {
				return false
			}
		}
		if len(j.A) != 1 || len(j.B) != 1 {
			return true
		}
		a, b := j.A[0], j.B[0]
		ring := a.Instance == b.Instance && a.Edge != b.Edge
		pair := a.Instance.Copy == b.Instance.Copy && a.Side != b.Side && a.Instance != b.Instance
		if !ring && !pair {
			return true
		}
		if r.whereDone(r.deeds().piece[a.Instance.Piece], "turn") != condition.False && !r.turnedLast(a.Instance.Piece, s) {
			return true
		}
	}
	return false
}

// turnedLast reports whether a piece is turned only after another seam was sewn to
// it: then the seam in question could be pressed before.
func (r *run) turnedLast(p *model.Piece, s *model.Seam) bool {
	first := r.sewnAt(s)
	for _, o := range r.Seams {
		if n := r.sewnAt(o); o != s && n > first && joinsPiece(o, p) && !onePiece(o) {
			for _, d := range r.deeds().piece[p] {
				if d.op.Verb == "turn" && d.n > n {
					return true
				}
			}
		}
	}
	return false
}

// pressedAfter is where a piece of a seam is pressed after it was sewn: before the
// next seam crosses it, before a row is stitched on it, and before it is turned
// away, except round what is turned itself.
func (r *run) pressedAfter(s *model.Seam) condition.Cond {
	sewn, row := r.sewnAt(s), r.firstRow(s)
	c := condition.False
	turned := r.insideOut(s)
	seen := map[*model.Piece]bool{}
	for _, u := range s.Uses() {
		p := u.Instance.Piece
		if seen[p] {
			continue
		}
		seen[p] = true
		for _, d := range r.deeds().piece[p] {
			if d.op.Verb == "press" && d.n > sewn && d.n < row && !r.crossed(p, s, sewn, d.n) && !r.turnedAway(s, turned, sewn, d.n) {
				c = r.Space.Or(c, d.cond)
			}
		}
	}
	return c
}

// firstRow gives the place of the first row of stitching on a seam, or one behind
// all operations.
func (r *run) firstRow(s *model.Seam) int {
	for _, d := range r.deeds().seam[s] {
		if d.on.Seam == s && oneOf(d.op.Verb, []string{"topstitch", "edgestitch", "understitch"}) {
			return d.n
		}
	}
	return len(r.Ops())
}

// turnedAway reports whether between two operations a part on one side of a seam is
// turned, so that the allowances are shut in; except for the piece that the seam
// itself turns. Where both sides are turned, the seam is the edge of the whole; so is
// one that takes two layers of one piece.
func (r *run) turnedAway(s *model.Seam, itself *model.Piece, from, to int) bool {
	if layersOfOne(s) {
		return false
	}
	ops := r.Ops()
	for n := from + 1; n < to; n++ {
		if ops[n].Verb != "turn" {
			continue
		}
		some, all := false, true
		for _, u := range s.Uses() {
			turned := false
			for _, o := range ops[n].Objects {
				turned = turned || o.Piece == u.Instance.Piece || holds(o.Instances, u.Instance.Piece)
			}
			some = some || turned && u.Instance.Piece != itself
			all = all && turned
		}
		if some && !all {
			return true
		}
	}
	return false
}

// layersOfOne reports whether a seam takes both layers of one piece: it catches the second
// with the first, as at the shoulder of a double yoke, or joins a shell all along to a lining
// that is cut from the same pieces. Turned, its fold is pressed from outside.
func layersOfOne(s *model.Seam) bool {
	for _, c := range s.Catching {
		for _, t := range s.Rows() {
			if t.Piece != nil && c.Target.Piece == t.Piece && c.Target.Edge == t.Edge {
				return true
			}
		}
	}
	for _, j := range s.Copies {
		if len(j.A) != len(j.B) {
			return false
		}
		for n := range j.A {
			a, b := j.A[n].Instance, j.B[n].Instance
			if a.Piece != b.Piece || a.Cut.Material == b.Cut.Material {
				return false
			}
		}
	}
	return len(s.Copies) > 0
}

// crossed reports whether another seam is sewn to a piece between two operations,
// in another step.
func (r *run) crossed(p *model.Piece, s *model.Seam, from, to int) bool {
	ops := r.Ops()
	for n := from + 1; n < to; n++ {
		if !ops[n].Row.Sews || from >= 0 && ops[n].Step == ops[from].Step {
			continue
		}
		for _, o := range ops[n].Objects {
			if o.Seam != nil && o.Seam != s && !onePiece(o.Seam) && joinsPiece(o.Seam, p) {
				return true
			}
		}
	}
	return false
}
