package check

import (
	"fmt"
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "closure-on-the-wrong-layer", Severity: finding.Error, Category: "needs", run: closures,
		Purpose: "A buttonhole is made in what is called under, or its button is sewn to what is called over.",
		Why:     "The hole lies in the layer that laps over, the button on the one beneath it. The other way round the closure cannot be buttoned."})
	register(Rule{ID: "copies-what-it-is-not-sewn-to", Severity: finding.Warning, Category: "seams", FromAbsence: true, run: copies,
		Purpose: "A piece is said to have the shape of another along an edge, and is sewn to some other edge.",
		Why:     "A facing follows the edge that it is sewn to. One of the two names is a slip."})
}

// closures trusts the words over and under in the names of edges, pieces and
// copies, which are those of the trade for the layers of a lap.
func closures(r *run) {
	for op := range r.opsOf("buttonhole") {
		for _, t := range layersNamed(op, "on", "at") {
			if r.lap(t) == "under" {
				r.report(r.Space.And(op.Cond, t.Cond), at(op.Span, "in the under layer", fmt.Sprintf("The buttonhole is made in %s, which lies underneath.", targetCalled(t)),
					"Make it in the layer that laps over."))
			}
		}
	}
	for op := range r.opsOf("sew on") {
		if !r.buttonOf(op) {
			continue
		}
		for _, t := range layersNamed(op, "at", "to", "on") {
			if r.lap(t) == "over" {
				r.report(r.Space.And(op.Cond, t.Cond), at(op.Span, "on the over layer", fmt.Sprintf("The button is sewn to %s, which laps over.", targetCalled(t)),
					"Sew it to the layer beneath, where the buttonhole comes to lie."))
			}
		}
	}
}

// layersNamed lists what an operation names as its place, first of all what it acts on.
func layersNamed(op *model.Op, phrases ...string) (all []*model.Target) {
	add := func(list []*model.Target) {
		for _, o := range list {
			o.Each(func(t *model.Target) {
				if t.Piece != nil {
					all = append(all, t)
				}
			})
		}
	}
	add(op.Objects)
	for _, p := range op.Phrases {
		if oneOf(p.Name, phrases) {
			add(p.Targets)
		}
	}
	return
}

// buttonOf reports whether an operation sews on a notion for which a buttonhole is
// made.
func (r *run) buttonOf(op *model.Op) bool {
	for _, o := range op.Objects {
		if o.Notion != nil && len(r.facts.Holes[o.Notion]) > 0 {
			return true
		}
	}
	return false
}

// lap gives the word over or under by which an edge, a copy or a piece is told from
// its counterpart in the lap; "" if there is no counterpart, as for an under collar.
func (r *run) lap(t *model.Target) string {
	switch {
	case t.Edge != nil:
		word, twin := lapTwin(t.Edge.ID)
		for _, e := range t.Piece.Edges {
			if e.ID == twin {
				return word
			}
		}
		return ""
	case len(t.Instances) == 1 && t.Instances[0].Copy != "":
		word, twin := lapTwin(t.Instances[0].Copy)
		for _, i := range t.Piece.Instances() {
			if i.Copy == twin {
				return word
			}
		}
	}
	word, twin := lapTwin(t.Piece.ID)
	for _, p := range r.Pieces {
		if p.ID == twin {
			return word
		}
	}
	return ""
}

// lapTwin gives the word in a name that tells the layer, and the name with the
// other word in its place.
func lapTwin(id string) (word, twin string) {
	words := strings.Split(id, "-")
	for i, w := range words {
		if other := map[string]string{"over": "under", "under": "over"}[w]; other != "" {
			words[i] = other
			return w, strings.Join(words, "-")
		}
	}
	return "", "-" // no name is this
}

func targetCalled(t *model.Target) string {
	if t.Edge != nil {
		return fmt.Sprintf("the %s of %s", edgeCalled(t.Edge.Name), the(t.Piece.Name))
	}
	return the(t.Piece.Name)
}

// copies compares `same shape as` with the seams of the piece: it is sewn to an edge
// that is called as the one it copies, but on another piece. A piece that is sewn to
// the piece it copies as well is believed, and so is the facing of a neck that is
// sewn to the collar between.
func copies(r *run) {
	for _, p := range r.Pieces {
		if p.SameAs == nil || p.SameAs.Piece == nil || p.SameAs.Edge == nil {
			continue
		}
		bad := condition.False
		for _, s := range r.index.naming[p] {
			if q := r.namesake(s, p); q != nil && !r.joined(p, p.SameAs.Piece) && !r.joined(q, p.SameAs.Piece, p.SameAs.Edge.ID) {
				bad = r.Space.Or(bad, s.Cond)
			}
		}
		r.report(r.Space.And(bad, r.cutOut(p)), at(p.SameAs.Span, "not sewn to it", fmt.Sprintf("%s is to have the shape of %s, and no seam joins the two.", Upper(the(p.Name)), targetCalled(p.SameAs)),
			"Name the edge that it is sewn to."))
	}
}

// namesake gives a piece that a seam joins to p by an edge of the name of that which
// p copies, nil if it is that very one or there is none.
func (r *run) namesake(s *model.Seam, p *model.Piece) *model.Piece {
	for _, u := range s.Uses() {
		if q := u.Instance.Piece; q != p && q != p.SameAs.Piece && u.Edge.ID == p.SameAs.Edge.ID {
			return q
		}
	}
	return nil
}

// joined reports whether a seam joins two pieces; with names, by an edge of the
// first that is called so.
func (r *run) joined(p, q *model.Piece, names ...string) bool {
	for _, s := range r.index.naming[p] {
		byName := len(names) == 0
		for _, u := range s.Uses() {
			byName = byName || u.Instance.Piece == p && oneOf(u.Edge.ID, names)
		}
		for _, other := range r.index.named[s] {
			if other == q && byName {
				return true
			}
		}
	}
	return false
}
