package check

import (
	"fmt"
	"regexp"
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "caught-and-never-held", Severity: finding.Advice, Category: "order", FromAbsence: true, run: caughtLoose,
		Purpose: "A part lies between the layers of a seam and is not held in its place before, as other parts of the pattern are.",
		Why:     "Between two layers it can no longer be seen. What was not held before slips under the needle, or is not in the seam at all."})
}

// holding are the operations that keep a part in its place until a seam takes it.
var holding = []string{"baste", "pin", "tack", "lay", "set", "attach", "apply", "insert", "stitch", "staystitch"}

var held = expression(`(?i)\b(?:pin(?:ned|s|ning)?|bast(?:e|ed|ing)|tack(?:ed|s)?|hold (?:it|them)|held|glue[ds]?)\b`)

// caughtLoose speaks only where the pattern holds other parts before they are caught;
// a pattern that leaves all of that to the sewist is left alone.
func caughtLoose(r *run) {
	seen := r.heldBefore()
	if !r.holdsSomeCaught(seen) {
		return
	}
	told := map[string]condition.Cond{}
	for _, s := range r.Seams {
		var names []string
		var f finding.Finding
		all := condition.False
		for _, k := range s.Catching {
			if k.At != nil || k.Target == nil {
				continue // the seam says where it lies
			}
			k.Target.Each(func(t *model.Target) {
				name := heldKey(t)
				bad := r.Space.Diff(r.Space.Diff(r.Space.And(s.Cond, t.Cond), r.heldBy(seen[name], r.sewnAt(s))), told[name])
				if bad = r.unsaid(s, bad); !r.possible(bad) || r.sewnBeside(s, t) || r.heldInText(s, t) {
					return
				}
				told[name] = r.Space.Or(told[name], bad)
				all = r.Space.Or(all, bad)
				if len(names) > 0 {
					f = also(f, t.Span, "nor this")
				} else {
					f = at(k.Target.Span, "held by nothing", "", fmt.Sprintf("Add `baste %s to` one of the two edges, or say in the seam where it lies: `catching %s at MARK`.", k.Target.Path, k.Target.Path))
				}
				if n := the(caughtName(t)); !oneOf(n, names) {
					names = append(names, n)
				}
			})
		}
		if len(names) > 0 {
			f.Headline = fmt.Sprintf("%s %s between the layers of %s, and nothing holds %s there before.", Upper(listed(names)), lieOrLies(len(names)), seamName(s), itOrThem(len(names)))
			r.report(all, f)
		}
	}
}

// holdsSomeCaught reports whether some part is held before a seam catches it.
func (r *run) holdsSomeCaught(seen map[string][]deed) bool {
	found := false
	for _, s := range r.Seams {
		for _, k := range s.Catching {
			k.Target.Each(func(t *model.Target) {
				found = found || r.heldBy(seen[heldKey(t)], r.sewnAt(s)) != condition.False
			})
		}
	}
	return found
}

func lieOrLies(n int) string {
	if n == 1 {
		return "lies"
	}
	return "lie"
}

func itOrThem(n int) string {
	if n == 1 {
		return "it"
	}
	return "them"
}

// heldBefore lists where each part is held, by its name.
func (r *run) heldBefore() map[string][]deed {
	seen := map[string][]deed{}
	for n, op := range r.Ops() {
		if !oneOf(op.Verb, holding) {
			continue
		}
		for _, o := range op.Objects {
			o.Each(func(t *model.Target) {
				k := heldKey(t)
				seen[k] = append(seen[k], deed{n, op, t, op.Cond})
			})
		}
	}
	return seen
}

// heldBy is where one of these operations comes before a place in the order of
// work. Basting that comes too late is told of as such.
func (r *run) heldBy(list []deed, before int) condition.Cond {
	c := condition.False
	for _, d := range list {
		if d.n < before || d.op.Verb == "baste" || d.op.Verb == "pin" {
			c = r.Space.Or(c, d.cond)
		}
	}
	return c
}

// heldKey names what is held: a made-up part or a piece as a whole, one half of a
// notion.
func heldKey(t *model.Target) string {
	switch {
	case t.Part != nil:
		return "part " + t.Part.ID
	case t.Notion != nil:
		return "notion " + t.Notion.ID + " " + t.NotionBit
	case t.Bit != nil:
		return "bit " + t.Bit.ID
	case t.Piece != nil:
		return "piece " + t.Piece.ID
	}
	return t.Path
}

func caughtName(t *model.Target) string {
	switch {
	case t.Part != nil:
		return t.Part.Name
	case t.Notion != nil:
		return plain(t.Notion.Name)
	case t.Bit != nil:
		return t.Bit.Name
	case t.Piece != nil:
		return t.Piece.Name
	}
	return t.Path
}

// sewnBeside reports whether what is caught hangs already on a part of the seam,
// by another seam or by the same: a facing whose end is taken into a band, a casing
// folded round an edge.
func (r *run) sewnBeside(s *model.Seam, t *model.Target) bool {
	if t.Piece == nil || rowsHave(s, t.Piece) {
		return t.Piece != nil
	}
	for _, o := range r.Seams {
		if o == s || !rowsHave(o, t.Piece) || r.sewnAt(o) > r.sewnAt(s) {
			continue
		}
		for _, u := range o.Uses() {
			if u.Instance.Piece != t.Piece && rowsHave(s, u.Instance.Piece) {
				return true
			}
		}
	}
	return false
}

// rowsHave reports whether a piece lies in one of the two rows of a seam, and is
// not only caught.
func rowsHave(s *model.Seam, p *model.Piece) bool {
	for _, j := range s.Copies {
		if usesHave(j.A, p) || usesHave(j.B, p) {
			return true
		}
	}
	return false
}

func usesHave(uses []*model.EdgeUse, p *model.Piece) bool {
	for _, u := range uses {
		if u.Instance.Piece == p {
			return true
		}
	}
	return false
}

// heldInText reports whether a sentence of the author, up to the step that sews the
// seam, says that the part is held.
func (r *run) heldInText(s *model.Seam, t *model.Target) bool {
	words := strings.Fields(lower(caughtName(t)))
	if len(words) == 0 {
		return true
	}
	name := regexp.MustCompile(`(?i)\b` + regexp.QuoteMeta(words[len(words)-1]) + `(?:s|es)?\b`)
	sewn := r.sewnAt(s)
	if sewn < 0 {
		return true
	}
	at := r.Ops()[sewn].Step
	for _, step := range r.Steps() {
		for _, text := range ownTexts(step) {
			if heldThere(text, name) {
				return true
			}
		}
		if step == at {
			break
		}
	}
	return false
}

// ownTexts lists the texts of a step, without the sentences that stand for an
// operation which holds something: those are known.
func ownTexts(s *model.Step) (all []string) {
	for _, i := range s.Items {
		switch x := i.(type) {
		case *model.Prose:
			all = append(all, x.Text)
		case *model.Op:
			if x.As != nil && !oneOf(x.Verb, holding) {
				all = append(all, x.As.Text)
			}
		}
	}
	return
}

// heldThere reports whether one sentence of a text names the part and says that
// something is held.
func heldThere(text string, name *regexp.Regexp) bool {
	if !name.MatchString(text) || !held().MatchString(text) {
		return false
	}
	for _, sentence := range strings.FieldsFunc(text, func(c rune) bool { return c == '.' || c == ';' || c == '\n' }) {
		if name.MatchString(sentence) && held().MatchString(sentence) {
			return true
		}
	}
	return false
}
