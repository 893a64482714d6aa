package check

import (
	"fmt"
	"sort"
	"strconv"
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "done-twice", Severity: finding.Warning, Category: "order", run: doneTwice,
		Purpose: "Two operations do the same to the same thing.",
		Why:     "The second asks for what is done already: one of them is left over from an earlier draft, or the other side was meant."})
	register(Rule{ID: "edge-closed-two-ways", Severity: finding.Error, Category: "order", run: twoWaysToClose,
		Purpose: "An edge is closed in two ways in the same garment.",
		Why:     "An edge that is bound is not pressed under as well, and one that is sewn down by hand is not caught by machine. A guard is missing on one of the two ways."})
	register(Rule{ID: "both-alternatives-there", Severity: finding.Error, Category: "seams", run: bothThere,
		Purpose: "Of two alternatives in a seam, joined with `or`, both are there in the same garment.",
		Why:     "The seam takes whichever there is; with both, one of them is left over."})
}

// again are the verbs for which a second time makes no sense, whatever is said
// beside. The others are only reported when everything is the same.
var again = map[string]bool{"finish": true, "hem": true, "bind": true, "understitch": true, "staystitch": true, "turn": true, "grade": true, "level": true,
	"mark": true, "gather": true, "ease": true, "fuse": true, "notch out": true}

// doing is what an operation does to what, the same for every way of naming it. said
// is what stands beside, where that makes a difference.
type doing struct {
	verb, path, said string
	kind             model.TargetKind
	side, only       model.Side
}

func doneTwice(r *run) {
	type done struct {
		op   *model.Op
		cond condition.Cond
	}
	seen := map[doing][]done{}
	reported := map[*model.Op]bool{}
	for _, op := range r.Ops() {
		said := ""
		for _, o := range op.Objects {
			if op.Row.Sews && o.Seam != nil {
				continue // seam-sewn-twice knows about stretches
			}
			switch {
			case op.Verb == "turn" && (op.Phrase("to") != nil || op.Phrase("toward") != nil):
				said = "laid over" // not brought right side out
			case said == "" && !again[op.Verb]:
				said = phrasesOf(op)
			}
			c := r.Space.And(op.Cond, o.Cond)
			k := doing{op.Verb, o.Path, said, o.Kind, o.Side, op.Only}
			for _, d := range seen[k] {
				both := r.Space.And(c, d.cond)
				if d.op == op || reported[op] || !r.possible(both) {
					continue
				}
				reported[op] = true
				f := at(op.Span, "again", fmt.Sprintf("`%s` is done twice to %s.", op.Verb, o.Describe()), "Take one of them out, or guard them so that only one applies.")
				r.report(both, also(f, d.op.Span, "done here first"))
			}
			seen[k] = append(seen[k], done{op, c})
		}
	}
}

// phrasesOf is everything that an operation says beside its objects.
func phrasesOf(op *model.Op) string {
	var parts []string
	for _, p := range op.Phrases {
		s := p.Name + p.Place + p.Word + p.Gap
		for _, a := range p.Amounts {
			s += " " + a.Length.String()
		}
		for _, t := range p.Targets {
			s += " " + strconv.Itoa(int(t.Kind)) + " " + t.Path + " " + t.Side.String()
		}
		parts = append(parts, s)
	}
	if op.As != nil {
		parts = append(parts, op.As.Text)
	}
	sort.Strings(parts)
	return strings.Join(parts, "; ")
}

// ways are the pairs of operations of which an edge takes one only.
var ways = [][2]string{{"bind", "hem"}, {"bind", "press under"}, {"bind", "turn under"}, {"slipstitch", "catching"}, {"slipstitch", "edgestitch"}, {"edgestitch", "catching"}, {"fell", "slipstitch"}}

func twoWaysToClose(r *run) {
	type deed struct {
		op   *model.Op
		cond condition.Cond
	}
	did := map[*model.Edge]map[string][]deed{}
	var edges []*model.Edge
	note := func(op *model.Op, verb string, t *model.Target) {
		if t.Kind != model.ToEdge {
			return
		}
		if did[t.Edge] == nil {
			did[t.Edge] = map[string][]deed{}
			edges = append(edges, t.Edge)
		}
		did[t.Edge][verb] = append(did[t.Edge][verb], deed{op, r.Space.And(op.Cond, t.Cond)})
	}
	for _, op := range r.Ops() {
		for _, o := range op.Objects {
			o.Each(func(t *model.Target) { note(op, op.Verb, t) })
		}
		if p := op.Phrase("catching"); p != nil && !op.Row.Sews {
			for _, o := range p.Targets {
				o.Each(func(t *model.Target) { note(op, "catching", t) })
			}
		}
	}
	for _, e := range edges {
		for _, w := range ways {
			for _, a := range did[e][w[0]] {
				for _, b := range did[e][w[1]] {
					first, second := a, b
					if b.op.Span.Start.Offset < a.op.Span.Start.Offset && a.op.Span.File == b.op.Span.File {
						first, second = b, a
					}
					f := at(second.op.Span, "one way", fmt.Sprintf("The %s of %s is closed in two ways: `%s` and `%s`.", edgeCalled(e.Name), the(e.Piece.Name), first.op.Verb, second.op.Verb),
						"Keep one, or guard them so that each garment has one.")
					r.report(r.Space.And(a.cond, b.cond), also(f, first.op.Span, "the other way"))
				}
			}
		}
	}
}

func bothThere(r *run) {
	for _, s := range r.Seams {
		for _, t := range s.Rows() {
			r.bothOf(s, t, s.Cond)
		}
		for _, k := range s.Catching {
			r.bothOf(s, k.Target, s.Cond)
		}
	}
}

// bothOf reports alternatives of a seam that are there together. Of what they
// belong to it is said once, so that a piece or a notion that lies in many seams
// gives one finding.
func (r *run) bothOf(s *model.Seam, t *model.Target, c condition.Cond) {
	for i, a := range t.Alt {
		for _, b := range t.Alt[:i] {
			bad := r.Space.All(c, a.Cond, b.Cond)
			pair := [2]any{belongsTo(b), belongsTo(a)}
			if bad = r.unsaid(pair, bad); !r.possible(bad) {
				continue
			}
			r.tell(pair, bad)
			help := "Guard one of the two pieces, so that each garment has one of them."
			if a.Notion != nil {
				help = "Guard one of the two, so that each garment has one of them."
			}
			f := at(a.Span, "and this", fmt.Sprintf("%s takes `%s` or `%s`, and both are there.", Upper(seamName(s)), b.Path, a.Path), help)
			r.report(bad, also(f, b.Span, "this"))
		}
	}
}

// belongsTo is the piece, the notion or the part that a target belongs to.
func belongsTo(t *model.Target) any {
	switch {
	case t.Notion != nil:
		return t.Notion
	case t.Piece != nil:
		return t.Piece
	}
	return t.Path
}
