package check

import (
	"fmt"

	"seamwarden/compiler/assembly"
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "edge-in-two-seams", Severity: finding.Error, Category: "seams", whole: true, ahead: 6, run: twoSeams,
		Purpose: "An edge is joined by two seams, or stands twice in one.",
		Why:     "An edge that is sewn is shut in; another piece can only be caught in the same seam."})
	register(Rule{ID: "edge-left-raw", Severity: finding.Error, Category: "seams", FromAbsence: true, ahead: 3, run: leftRaw,
		Purpose: "Nothing is done to an edge.",
		Why:     "It frays, or a seam, a hem or a facing was forgotten."})
}

// joining is an edge's place in a seam.
type joining struct {
	seam *model.Seam
	use  *model.EdgeUse
	cond condition.Cond
	part part
}

// twoSeams looks for an edge that is sewn in two places, in two seams or in one,
// unless each takes another stretch of it. A seam that is never sewn is left to
// the rule that says so.
func twoSeams(r *run) {
	by := map[model.EdgeUse][]joining{}
	reported := map[[2]*model.Seam]condition.Cond{}
	for _, s := range r.Seams {
		for _, j := range s.Copies {
			uses := j.Uses()
			if len(j.A) > 0 && len(j.B) > 0 && j.A[0] == j.B[0] {
				uses = j.A // a tube: the edge is joined to itself
			}
			sewn := r.Space.Diff(r.sewn(s, j), r.doubt(s))
			for _, u := range uses {
				x := joining{s, u, sewn, partOf(s, u.Edge)}
				for _, o := range by[*u] {
					both, pair := r.Space.And(o.cond, x.cond), [2]*model.Seam{o.seam, s}
					if o.part.overlaps(x.part) && r.possible(both) {
						r.reportTwice(o, x, both, r.Space.Implies(both, reported[pair]))
						reported[pair] = r.Space.Or(reported[pair], both)
					}
				}
				by[*u] = append(by[*u], x)
			}
		}
	}
}

// sewn is where a seam line is sewn, in one go or in stretches.
func (r *run) sewn(s *model.Seam, j *model.Join) condition.Cond {
	c := condition.False
	list, _, _ := r.stretches(s, j)
	for _, x := range list {
		c = r.Space.Or(c, x.cond)
	}
	return c
}

// reportTwice reports an edge in two places, unless that is said for another edge
// of the same two seams. If its fellow on the other side, or another copy of it,
// is in none, that is the other half of the same slip.
func (r *run) reportTwice(first, again joining, both condition.Cond, said bool) {
	u := again.use
	words := edgeWords
	if len(again.seam.Copies) > 1 && len(first.seam.Copies) > 1 {
		words = copyWords
	}
	f := at(again.seam.Span, "joined again", fmt.Sprintf("%s is in two seams: %s and %s.", Upper(words(u)), first.seam.Name, again.seam.Name),
		"If both are sewn at once, declare one seam and put the third layer after `catching`. If each takes a part of the edge, say `from … to …`.")
	f = also(f, first.seam.Span, "joined here first")
	if first.seam == again.seam {
		f = at(again.seam.Span, "twice in this seam", fmt.Sprintf("%s stands twice in the %s.", Upper(words(u)), again.seam.Called()), "Take it out in one of its places.")
	}
	if left := r.forgotten(u, both); left != nil {
		f.Headline = fmt.Sprintf("%s; %s is in none.", f.Headline[:len(f.Headline)-1], words(left))
		f.Help = fmt.Sprintf("One of the two places was probably meant for `%s`.", pathOf(left, words(u) == copyWords(u)))
		r.tell(left.Instance, both)
		r.tell(*left, both)
	}
	r.tell(first.seam, both)
	r.tell(again.seam, both)
	if !said {
		r.report(both, f)
	}
}

// forgotten finds the same edge of another part of the piece to which nothing is
// done wherever bad holds: of the other copy on the same side, or of the other
// side.
func (r *run) forgotten(u *model.EdgeUse, bad condition.Cond) (found *model.EdgeUse) {
	spoken := r.declared()
	for _, i := range u.Instance.Piece.Cloths() {
		for _, v := range usesOf(r, i, u.Edge) {
			done := r.Space.Any(r.facts.Shut[v], spoken[v], u.Edge.LeftRaw)
			if v == *u || i.Cut.Material != u.Instance.Cut.Material || !r.Space.Implies(r.Space.And(bad, r.Valid), v.Cond) || r.possible(r.Space.And(bad, done)) {
				continue
			}
			if found == nil || v.Side == u.Side {
				found = &v
			}
		}
	}
	return
}

// declared is where each edge is in a declared seam, sewn or not. Of a seam of
// which nobody knows what it joins, all that it names.
func (r *run) declared() map[model.EdgeUse]condition.Cond {
	in := map[model.EdgeUse]condition.Cond{}
	add := func(u *model.EdgeUse, c condition.Cond) { in[*u] = r.Space.Or(in[*u], c) }
	for _, s := range r.Seams {
		for _, j := range s.Copies {
			for _, u := range j.Uses() {
				add(u, j.Cond)
			}
		}
		caught := s.Cond
		if len(s.Copies) == 0 {
			caught = condition.True
			for _, t := range s.Rows() {
				for _, u := range t.Uses {
					add(u, condition.True)
				}
			}
		}
		for _, k := range s.Catching {
			k.Target.Each(func(t *model.Target) {
				for _, u := range t.Uses {
					add(u, r.Space.And(caught, t.Cond))
				}
			})
		}
	}
	return in
}

// rawEdge is an edge of a piece to which nothing happens on the parts in uses.
type rawEdge struct {
	edge *model.Edge
	uses []model.EdgeUse
	some bool // other parts of the piece have it sewn
	bad  condition.Cond
}

// leftRaw looks for edges to which nothing happens. An edge in a seam that is
// declared is left to the rules for seams, and a piece that is never sewn at all
// to the rule that says so. Edges of one name that are raw in the same garments
// are reported together: one hem was forgotten, or one seam.
func leftRaw(r *run) {
	groups := map[string][]rawEdge{}
	var order []string
	spoken := r.declared()
	for _, p := range r.Pieces {
		for _, e := range p.Edges {
			if x, ok := r.raw(p, e, spoken); ok {
				k := fmt.Sprint(e.ID, " ", r.Space.And(x.bad, r.Valid))
				if groups[k] == nil {
					order = append(order, k)
				}
				groups[k] = append(groups[k], x)
			}
		}
	}
	for _, k := range order {
		r.reportRaw(groups[k], len(order) == 1)
	}
}

func (r *run) raw(p *model.Piece, e *model.Edge, spoken map[model.EdgeUse]condition.Cond) (rawEdge, bool) {
	x := rawEdge{edge: e}
	for _, i := range p.Cloths() {
		for _, u := range usesOf(r, i, e) {
			done := r.Space.Any(r.facts.Shut[u], spoken[u], e.LeftRaw)
			bad := r.Space.Diff(r.unsaid(u, r.Space.Diff(r.Space.And(u.Cond, r.used(i)), done)), r.uncut[p])
			if laid(i, e) || !r.possible(bad) {
				x.some = x.some || !laid(i, e)
				continue
			}
			x.uses = append(x.uses, u)
			x.bad = r.Space.Or(x.bad, bad)
		}
	}
	return x, len(x.uses) > 0
}

// words names a raw edge by its piece, or by its part if the others are sewn.
func (x rawEdge) words() string {
	if x.some && len(x.uses) == 1 {
		return edgeWords(&x.uses[0])
	}
	return fmt.Sprintf("the %s of %s", edgeCalled(x.edge.Name), the(x.edge.Piece.Name))
}

// reportRaw reports edges of one name. If the only thing that is wrong beside is
// a tape that is never used, it was meant for them.
func (r *run) reportRaw(list []rawEdge, only bool) {
	first := list[0]
	f := at(first.edge.Span, "nothing closes it", fmt.Sprintf("Nothing is done to %s.", first.words()),
		fmt.Sprintf("Sew, hem, bind, face or finish it in a step; if it stays as it is cut, say `raw %s` or `selvage %s` in the piece.", first.edge.ID, first.edge.ID))
	var others []finding.Span
	var names []string
	for _, x := range list {
		names = append(names, the(x.edge.Piece.Name))
		r.tell(untaken{x.edge}, x.bad)
	}
	for _, x := range list[1:] {
		others = append(others, x.edge.Span)
		f = also(f, x.edge.Span, "nor this")
	}
	if len(list) > 1 {
		f.Headline = fmt.Sprintf("Nothing is done to the %s edges of %s.", lower(first.edge.Name), listed(names))
	}
	if seam, u := r.takenInstead(first); seam != nil && len(list) == 1 {
		f.Headline = fmt.Sprintf("%s, and its %s is closed twice: in the %s and by another step.", f.Headline[:len(f.Headline)-1], edgeCalled(u.Edge.Name), seam.Called())
		f.Help = fmt.Sprintf("Did you mean `%s.%s` in the %s?", first.edge.Piece.ID, first.edge.ID, seam.Called())
		f = also(f, seam.Span, "this seam")
		r.tell(seam, first.bad)
	}
	if n := r.idleTape(first.bad); only && n != nil {
		f.Headline = fmt.Sprintf("%s, and %s is listed and never used.", f.Headline[:len(f.Headline)-1], lower(plain(n.Name)))
		f.Help = fmt.Sprintf("If the tape is for this edge, bind it in a step: bind %s.%s with %s.", first.edge.Piece.ID, first.edge.ID, n.ID)
		f = also(f, n.Span, "listed here")
		r.tell(n, first.bad)
	}
	r.report(first.bad, f, others...)
}

// takenInstead finds a seam that takes another edge of the same piece, which a step
// closes as well: one of the two edges was meant to be the raw one.
func (r *run) takenInstead(x rawEdge) (*model.Seam, *model.EdgeUse) {
	for _, t := range r.troubles() {
		if t.Kind != assembly.EdgeClosedBefore || t.Use == nil || t.Use.Instance.Piece != x.edge.Piece || t.By == nil {
			continue
		}
		for _, op := range []*model.Op{t.By, t.Op} {
			for _, o := range op.Objects {
				if o.Seam != nil && op.Row.Sews && takes(o.Seam, t.Use.Edge) && r.possible(r.Space.And(x.bad, t.Cond)) {
					return o.Seam, t.Use
				}
			}
		}
	}
	return nil, nil
}

func takes(s *model.Seam, e *model.Edge) bool {
	for _, u := range s.Uses() {
		if u.Edge == e {
			return true
		}
	}
	return false
}

// idleTape finds a tape that no step uses, in the very garments in which bad
// holds.
func (r *run) idleTape(bad condition.Cond) *model.Notion {
	for _, n := range r.Notions {
		unused := r.Space.All(n.Cond, r.facts.Totals(r.facts.OfNotion(n))[0], r.Valid)
		if n.Word == "tape" && unused == r.Space.And(bad, r.Valid) {
			return n
		}
	}
	return nil
}

// laid reports whether a cut lays the edge on the fold.
func laid(i *model.Instance, e *model.Edge) bool { return i.Cut.Lay.FoldEdge == e }

func usesOf(r *run, i *model.Instance, e *model.Edge) (all []model.EdgeUse) {
	c := r.Space.And(i.Cond, e.Cond)
	sides := []model.Side{i.Side}
	if e.Doubled(i.Cut) {
		sides = []model.Side{model.Left, model.Right}
	}
	for _, s := range sides {
		all = append(all, model.EdgeUse{Instance: i, Edge: e, Side: s, Cond: c})
	}
	return
}
