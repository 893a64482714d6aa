package assembly

import (
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// Trouble is a step that comes at the wrong time: Op does something that is no
// longer, or not yet, possible because of By. Cond says in which garments.
type Trouble struct {
	Kind Kind
	Op   *model.Op // what comes at the wrong time
	By   *model.Op // what shut it off, or what should have come first; may be nil
	Seam *model.Seam
	Use  *model.EdgeUse
	Part *model.Instance
	Gap  *model.Gap
	Word string
	Cond condition.Cond
}

// Kind is a kind of trouble; each is reported by one rule.
type Kind uint8

// The kinds of trouble.
const (
	SeamCrossedOpen    Kind = iota // an edge is closed across a seam that is sewn only later
	SeamNotSewnYet                 // something is done to a seam before it is sewn
	SeamShutIn                     // something is done to an allowance that can no longer be reached
	FinishedTooLate                // an allowance is finished after its end was caught
	PressedTooLate                 // a seam is pressed after its end was caught
	EdgeClosedBefore               // something is done to an edge that is closed already
	FusedTooLate                   // interfacing goes in after its piece was sewn
	FusedWhenTurned                // or after it was turned, when it cannot be reached
	PressedTwoWays                 // a seam is pressed open and finished together, or the other way round
	StitchedFarSide                // a row is stitched on the side away from the allowances
	StitchedUnpressed              // a row is stitched before the seam is pressed
	TrimmedTooLate                 // understitched or topstitched before it was graded or clipped
	GapNotThere                    // something goes through an opening that is not left yet, or closed already
	NoWayOut                       // a closed bag is turned without an opening
	ZipTooLate                     // a zip or a part goes in where a band or facing has closed the end
	ShapedTooLate                  // gathers, darts, pleats after the edge was sewn
	GapNeverClosed                 // an opening is used and never closed
	TurnedTooEarly                 // a part is turned before any seam of it is sewn
	FixedBeforeTurning             // a part is stitched down and turned afterwards
	FastenedTooEarly               // a buttonhole or fastening goes on before the part is closed
	MarkedTooLate                  // a sign is marked after it was used
)

// play goes through the steps in order.
type play struct {
	*model.Pattern
	crossings []crossing
	total     map[*model.Join]condition.Cond // where a seam line is sewn at all
	sewn      map[*model.Join][]deed
	shut      map[model.EdgeUse][]deed // hemmed, bound, sewn into a seam
	caught    map[*model.Join][]deed   // its end was crossed
	enclosed  map[*model.Join][]deed   // its allowances are out of reach
	turned    map[*model.Instance][]deed
	seam      map[*model.Seam]map[string][]deed // what was done to a seam, by verb
	left      map[*model.Gap][]deed
	closed    map[*model.Gap][]deed
	turns     map[*model.Gap][]deed
	joined    map[*model.Instance][]deed
	fixed     map[*model.Instance][]deed // stitched down by an edge of its own
	fastened  map[*model.Instance][]deed // a buttonhole or fastening is on it
	marks     map[any][]deed             // where a mark or a dart was used
	out       []Trouble
	at        map[troubleKey]int
}

type troubleKey struct {
	kind Kind
	op   *model.Op
	seam *model.Seam
	edge *model.Edge
}

// Play goes through the steps in their order and gives what comes at the wrong
// time, in every garment at once.
func Play(p *model.Pattern) []Trouble {
	w := &play{Pattern: p, crossings: crossings(p), total: map[*model.Join]condition.Cond{}, sewn: map[*model.Join][]deed{},
		shut: map[model.EdgeUse][]deed{}, caught: map[*model.Join][]deed{}, enclosed: map[*model.Join][]deed{}, turned: map[*model.Instance][]deed{},
		seam: map[*model.Seam]map[string][]deed{}, left: map[*model.Gap][]deed{}, closed: map[*model.Gap][]deed{}, turns: map[*model.Gap][]deed{},
		joined: map[*model.Instance][]deed{}, fixed: map[*model.Instance][]deed{},
		fastened: map[*model.Instance][]deed{}, marks: map[any][]deed{}, at: map[troubleKey]int{}}
	ops := p.Ops()
	for _, op := range ops {
		w.foresee(op)
	}
	for _, op := range ops {
		w.do(op)
	}
	w.atTheEnd()
	return w.out
}

// foresee notes where each seam will be sewn, so that one that is never sewn is
// left to the rule that says so.
func (w *play) foresee(op *model.Op) {
	if !op.Row.Sews {
		return
	}
	each(op.Objects, func(t *model.Target) {
		if t.Seam == nil {
			return
		}
		for _, j := range t.Seam.Copies {
			if SewnBy(op, t, j) {
				w.total[j] = w.Space.Or(w.total[j], w.Space.And(op.Cond, j.Cond))
			}
		}
	})
}

func each(list []*model.Target, f func(*model.Target)) {
	for _, t := range list {
		t.Each(f)
	}
}

// ever is where one of several deeds was done.
func (w *play) ever(list []deed) condition.Cond {
	c := condition.False
	for _, d := range list {
		c = w.Space.Or(c, d.cond)
	}
	return c
}

// trouble reports that something is wrong wherever bad holds. by gives the deeds
// that caused it; the first that matters is named.
func (w *play) trouble(bad condition.Cond, t Trouble, by []deed) {
	bad = w.Space.And(bad, w.Valid)
	if bad == condition.False {
		return
	}
	for _, d := range by {
		if t.By == nil && w.Space.Overlaps(d.cond, bad) {
			t.By = d.op
		}
	}
	k := troubleKey{kind: t.Kind, op: t.Op, seam: t.Seam}
	if t.Use != nil {
		k.edge = t.Use.Edge
	}
	if i, ok := w.at[k]; ok {
		w.out[i].Cond = w.Space.Or(w.out[i].Cond, bad)
		return
	}
	t.Cond = bad
	w.at[k] = len(w.out)
	w.out = append(w.out, t)
}

// do plays one operation: its needs are looked at first, then its effects noted.
func (w *play) do(op *model.Op) {
	var closing []model.EdgeUse
	for _, o := range op.Objects {
		o.Each(func(t *model.Target) {
			c := w.Space.And(op.Cond, t.Cond)
			switch {
			case t.Kind == model.ToGap:
				w.onGap(op, t, c)
			case t.Seam != nil && op.Row.Sews:
				w.sewSeam(op, t, c)
			case t.Seam != nil:
				w.onSeam(op, t, c)
			case t.Kind == model.ToShaping && op.Row.Sews:
				w.shape(op, t.Shaping.In, c)
			case t.Kind == model.ToEdge || t.Kind == model.ToPartEdge:
				closing = append(closing, w.onEdge(op, t, c)...)
			case t.Kind == model.ToPiece || t.Kind == model.ToPart:
				w.onPiece(op, t, c)
			}
		})
	}
	if closes[op.Verb] || op.Verb == "level" {
		w.cross(op, op.Cond, closing, nil)
	}
	w.around(op)
	w.marking(op)
	w.throughGap(op)
	w.leave(op)
	w.insert(op)
}

// closes are the verbs that close the edges they are given, all at once.
var closes = map[string]bool{"hem": true, "bind": true}

// sewSeam sews the copies of a seam that an operation means.
func (w *play) sewSeam(op *model.Op, t *model.Target, c condition.Cond) {
	for _, j := range t.Seam.Copies {
		if !SewnBy(op, t, j) {
			continue
		}
		jc := w.Space.And(c, j.Cond)
		w.sewTurned(op, j, jc)
		a, b := keys(j.A), keys(j.B)
		for _, k := range t.Seam.Catching {
			k.Target.Each(func(x *model.Target) { a = append(a, keys(x.Uses)...) })
		}
		for _, u := range append(append([]model.EdgeUse(nil), a...), b...) {
			u := u
			before := w.others(w.shut[u], t.Seam)
			if t.From == nil && !partial(t.Seam) {
				w.trouble(w.Space.And(jc, w.ever(before)), Trouble{Kind: EdgeClosedBefore, Op: op, Seam: t.Seam, Use: &u}, before)
			}
		}
		w.cross(op, jc, append(a, b...), j)
		w.sewn[j] = append(w.sewn[j], deed{op, jc})
		for _, u := range append(append([]model.EdgeUse(nil), a...), b...) {
			if !partial(t.Seam) {
				w.shut[u] = append(w.shut[u], deed{op, jc})
			}
			w.fastenedBefore(op, u.Instance, jc)
			w.joined[u.Instance] = append(w.joined[u.Instance], deed{op, jc})
		}
	}
}

// others leaves out the deeds of sewing this same seam.
func (w *play) others(list []deed, s *model.Seam) (out []deed) {
	for _, d := range list {
		same := false
		each(d.op.Objects, func(t *model.Target) { same = same || t.Seam == s })
		if !same {
			out = append(out, d)
		}
	}
	return
}

func partial(s *model.Seam) bool {
	for _, t := range append(append([]*model.Target(nil), s.Joins...), s.To...) {
		if t.From != nil {
			return true
		}
	}
	return false
}

func keys(uses []*model.EdgeUse) (all []model.EdgeUse) {
	for _, u := range uses {
		all = append(all, keyOf(u))
	}
	return
}

// cross looks at every seam whose end is crossed when these edges are closed
// together. A seam between two of them must be sewn before; one that is sewn has
// its end caught. Two layers that are sewn to each other along the neighbours
// meet at a corner and do not cross.
func (w *play) cross(op *model.Op, c condition.Cond, edges []model.EdgeUse, by *model.Join) {
	in := map[model.EdgeUse]bool{}
	for _, u := range edges {
		in[u] = true
	}
	through := op.Phrase("through") != nil || op.Phrase("flat") != nil
	var open []crossed
	for _, x := range w.crossings {
		if x.join == by || !in[x.a] && !in[x.b] || by != nil && mates(by, x) {
			continue
		}
		if in[x.a] && in[x.b] && !through {
			late := w.Space.And(c, w.Space.Diff(w.total[x.join], w.ever(w.sewn[x.join])))
			if w.Space.And(late, w.Valid) != condition.False {
				open = append(open, crossed{x, late})
			}
		}
		if done := w.Space.And(c, w.ever(w.sewn[x.join])); op.Verb != "level" && done != condition.False {
			w.caught[x.join] = append(w.caught[x.join], deed{op, done})
		}
	}
	w.reportCrossed(op, open, by)
}

// crossed is a seam whose end is closed over before it is sewn.
type crossed struct {
	crossing
	late condition.Cond
}

// reportCrossed reports the seams that were closed over. One of them may follow
// if what covers them is not a ring yet: a sleeve that is set in flat is closed
// together with the side, by the seam that joins its own two ends.
func (w *play) reportCrossed(op *model.Op, open []crossed, by *model.Join) {
	ends := w.endsOf(by)
	for _, x := range open {
		bad := x.late
		if len(open) == 1 && ends != nil {
			bad = w.Space.And(bad, w.ever(w.sewn[ends]))
		}
		u := x.a
		w.trouble(bad, Trouble{Kind: SeamCrossedOpen, Op: op, Seam: x.join.Seam, Use: &u}, nil)
	}
}

// endsOf finds the seam line that joins the two ends of the one edge that a row
// is sewn to, as the underarm seam joins the ends of a sleeve cap; nil for none.
func (w *play) endsOf(by *model.Join) *model.Join {
	if by == nil {
		return nil
	}
	for _, side := range [][]*model.EdgeUse{by.A, by.B} {
		if len(side) != 1 {
			continue
		}
		before, ok := neighbour(side[0], -1)
		after, ok2 := neighbour(side[0], 1)
		if !ok || !ok2 {
			continue
		}
		for j := range w.total {
			if mates(j, crossing{a: before, b: after}) {
				return j
			}
		}
	}
	return nil
}

// mates reports whether a seam line joins the two edges of a crossing to each
// other.
func mates(j *model.Join, x crossing) bool {
	has := func(list []*model.EdgeUse, u model.EdgeUse) bool {
		for _, v := range list {
			if keyOf(v) == u {
				return true
			}
		}
		return false
	}
	return has(j.A, x.a) && has(j.B, x.b) || has(j.A, x.b) && has(j.B, x.a)
}
