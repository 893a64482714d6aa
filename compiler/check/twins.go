package check

import (
	"fmt"
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

// What is done to one of two seams that belong together, and not to the other.
func init() {
	register(Rule{ID: "one-of-two-seams", Severity: finding.Advice, Category: "seams", FromAbsence: true, run: unlikeTwins,
		Purpose: "Of two seams that belong together, one is clipped, trimmed, pressed or topstitched and the other is not.",
		Why:     "Front and back, upper and lower, shell and lining have the same shape and are seen together. What one needs, the other needs too, unless that is meant."})
	register(Rule{ID: "row-left-out", Severity: finding.Advice, Category: "seams", FromAbsence: true, run: rowLeftOut,
		Purpose: "All seams that are pressed to one side have a row of stitching, except for one.",
		Why:     "Rows that show are part of the look, and one that is missing looks forgotten. Say so in a remark if it is meant."})
}

// pairWords are words that tell two of a pair apart.
var pairWords = map[string][]string{"front": {"back"}, "left": {"right"}, "upper": {"lower", "under"}, "above": {"below"}, "over": {"under"}, "inner": {"outer"},
	"top": {"foot", "bottom"}, "head": {"foot"}}

// same are the kinds of work that are compared: what is asked of both, and what
// counts as done.
var sameWork = []struct {
	what    string   // for the reader
	asks    []string // one of them is done to one of the two
	does    []string // any of them is done to the other
	inside  bool     // a lining needs it as the shell does
	outside bool     // front and back, upper and lower need it alike
}{
	{"pressed", []string{"press"}, []string{"press", "steam", "fell"}, false, true}, // beside what the head says of every seam
	{"clipped", []string{"clip"}, []string{"clip", "notch out", "reinforce"}, true, true},
	{"notched", []string{"notch out"}, []string{"clip", "notch out"}, true, true},
	{"trimmed", []string{"trim", "grade"}, []string{"trim", "grade"}, false, true},
	{"stitched", []string{"topstitch", "edgestitch"}, []string{"topstitch", "edgestitch", "understitch", "stitch", "ditch", "fell", "bar-tack"}, false, true},
}

func unlikeTwins(r *run) {
	told := map[*model.Seam]map[string]condition.Cond{}
	byName := map[string]*model.Seam{}
	for _, s := range r.Seams {
		told[s] = map[string]condition.Cond{}
		byName[s.ID] = s
	}
	tell := func(done, not *model.Seam, inside bool) {
		for _, w := range sameWork {
			if inside && !w.inside || !inside && !w.outside || w.what == "trimmed" && r.insideOut(not) != nil {
				continue // turned-untrimmed knows about what is turned
			}
			if w.what == "pressed" && (r.Finish == nil || r.Finish.Toward == "") {
				continue // seam-never-pressed knows
			}
			bad := r.Space.All(not.Cond, r.whereDone(r.deeds().seam[done], w.asks...))
			bad = r.Space.Diff(r.Space.Diff(bad, r.whereDone(r.deeds().seam[not], w.does...)), told[not][w.what])
			if bad = r.unsaid(not, bad); !r.possible(bad) {
				continue
			}
			told[not][w.what] = r.Space.Or(told[not][w.what], bad)
			f := at(not.Span, "not "+w.what, fmt.Sprintf("%s is %s, and %s is not.", Upper(seamName(done)), w.what, seamName(not)),
				fmt.Sprintf("Add `%s %s` to a step, as is done to the other.", w.asks[0], not.ID))
			r.report(bad, also(f, r.firstDone(done, w.asks), w.what+" here"))
		}
	}
	for _, s := range r.Seams {
		for _, name := range twinNames(s.ID) {
			if o := byName[name]; o != nil && (r.insideOut(s) == nil) == (r.insideOut(o) == nil) {
				tell(s, o, false)
				tell(o, s, false)
			}
		}
	}
	linings := r.linings()
	for _, s := range r.Seams {
		if o := linings[s]; o != nil {
			tell(s, o, true)
			tell(o, s, true)
		}
	}
}

// firstDone gives the place of the first operation of these verbs on a seam.
func (r *run) firstDone(s *model.Seam, verbs []string) (at finding.Span) {
	for _, d := range r.deeds().seam[s] {
		if oneOf(d.op.Verb, verbs) {
			return d.op.Span
		}
	}
	return
}

// twinNames gives the names that another of a pair would have: back-raglan for
// front-raglan. A name in which the pair word stands alone tells too little.
func twinNames(id string) (all []string) {
	parts := strings.Split(id, "-")
	if len(parts) < 2 {
		return
	}
	for i, w := range parts {
		for _, o := range pairWords[w] {
			twin := append(append(append([]string(nil), parts[:i]...), o), parts[i+1:]...)
			all = append(all, strings.Join(twin, "-"))
		}
	}
	return
}

// linings gives for a seam the one that joins the same edges of the lining: each
// edge of its first row has a fellow of the same name on a piece that is called
// lining, facing or inner.
func (r *run) linings() map[*model.Seam]*model.Seam {
	pieces := map[string]*model.Piece{}
	for _, p := range r.Pieces {
		pieces[p.ID] = p
	}
	first := map[*model.Edge][]*model.Seam{}
	for _, s := range r.Seams {
		if e := firstEdge(s); e != nil {
			first[e] = append(first[e], s)
		}
	}
	found := map[*model.Seam]*model.Seam{}
	for _, s := range r.Seams {
		e := firstEdge(s)
		if e == nil {
			continue
		}
		for _, id := range []string{e.Piece.ID + "-lining", "lining-" + e.Piece.ID, "inner-" + e.Piece.ID} {
			p := pieces[id]
			if p == nil || p.Edge(e.ID) == nil {
				continue
			}
			for _, o := range first[p.Edge(e.ID)] {
				if r.Space.All(s.Cond, o.Cond) != condition.False && !joinsPiece(o, e.Piece) {
					found[s] = o
				}
			}
		}
	}
	return found
}

// firstEdge is the first edge that a seam names, nil if that is a choice of two.
func firstEdge(s *model.Seam) *model.Edge {
	if len(s.Joins) == 0 {
		return nil
	}
	return s.Joins[0].Edge
}

// rowLeftOut looks for the one seam of the outside that is pressed to one side and
// has no row. Four others at least make it a habit of the pattern.
func rowLeftOut(r *run) {
	const habit = 4
	rows := 0
	var without *model.Seam
	bad := condition.False
	for _, s := range r.Seams {
		if r.whereDone(r.towards(s), "press") == condition.False || !seenOutside(s) || r.insideOut(s) != nil || r.heldByItsEdge(s) {
			continue
		}
		row := r.whereDone(r.deeds().seam[s], "topstitch", "edgestitch", "fell", "understitch")
		if row != condition.False {
			rows++
			continue
		}
		if without != nil {
			return
		}
		without, bad = s, r.Space.Diff(s.Cond, row)
	}
	if without == nil || rows < habit {
		return
	}
	r.report(r.unsaid(without, bad), at(without.Span, "no row", fmt.Sprintf("The %d other seams that are pressed to one side have a row of stitching, and %s has none.", rows, seamName(without)),
		fmt.Sprintf("Add `topstitch %s` with its distance to the step that presses it.", without.ID)))
}

// heldByItsEdge reports whether a piece of a seam is a band or a placket that is stitched
// down by another of its edges, over the seam.
func (r *run) heldByItsEdge(s *model.Seam) bool {
	for _, u := range s.Uses() {
		for _, e := range u.Instance.Piece.Edges {
			under := r.whereDone(r.deeds().edge[e], "press under", "turn under")
			if e != u.Edge && under != condition.False && r.whereDone(r.deeds().edge[e], "edgestitch", "topstitch", "slipstitch") != condition.False {
				return true
			}
		}
	}
	return false
}

// towards lists what presses a seam to one side.
func (r *run) towards(s *model.Seam) (all []deed) {
	for _, d := range r.deeds().seam[s] {
		if d.op.Phrase("toward") != nil && d.on.Seam == s {
			all = append(all, d)
		}
	}
	return
}

// seenOutside reports whether all pieces of a seam are seen from outside.
func seenOutside(s *model.Seam) bool {
	for _, u := range s.Uses() {
		if u.Instance.Piece.WornIn {
			return false
		}
	}
	return len(s.Copies) > 0
}
