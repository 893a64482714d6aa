package check

import (
	"fmt"
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "drawn-in-and-left-loose", Severity: finding.Warning, Category: "needs", FromAbsence: true, run: endsLoose,
		Purpose: "Elastic or cord is drawn into a casing, and nothing holds its ends.",
		Why:     "The ends of elastic are joined or sewn down, those of a cord knotted or caught; otherwise they slip into the casing at the first pull."})
}

var endsHeld = expression(`(?i)\b(?:sew|sewn|stitch(?:ed)?|join\w*|overlap\w*|lap|knot\w*|caught|catch\w*|tack\w*|tie\w*)\b`)

// endsLoose looks for what is drawn in and then named by no operation that could
// hold its ends, caught by no seam, and of which no sentence says that its ends
// are held.
func endsLoose(r *run) {
	heldAt := map[*model.Notion]condition.Cond{}
	for _, op := range r.Ops() {
		if oneOf(op.Verb, []string{"thread", "cut", "mark", "lay", "pin", "open", "test", "remove", "fold", "press"}) {
			continue
		}
		list := append([]*model.Target(nil), op.Objects...)
		if p := op.Phrase("catching"); p != nil {
			list = append(list, p.Targets...)
		}
		for _, o := range list {
			o.Each(func(t *model.Target) {
				if t.Notion != nil {
					heldAt[t.Notion] = r.Space.Or(heldAt[t.Notion], op.Cond)
				}
			})
		}
	}
	for _, s := range r.Seams {
		for _, k := range s.Catching {
			if n := k.Target.Notion; n != nil {
				heldAt[n] = r.Space.Or(heldAt[n], s.Cond)
			}
		}
	}
	for _, op := range r.Ops() {
		if op.Verb != "thread" {
			continue
		}
		for _, o := range op.Objects {
			n := o.Notion
			child := r.For != nil && r.For.Who != "adults"
			if n == nil || n.Word != "elastic" && (n.Word != "cord" || child) {
				continue // the ends of a child's cord are a matter of safety: a knot may be forbidden there
			}
			bad := r.Space.Diff(r.Space.And(op.Cond, o.Cond), heldAt[n])
			if !r.possible(bad) || r.endsInText(n, op.Step) {
				continue
			}
			help := fmt.Sprintf("Add `join %s` after it is drawn in, or sew its ends down: `tack %s to EDGE`.", n.ID, n.ID)
			if n.Word == "cord" {
				help = fmt.Sprintf("Add `knot %s`, or sew its ends down: `tack %s to EDGE`.", n.ID, n.ID)
			}
			r.report(bad, at(op.Span, "drawn in here", fmt.Sprintf("The %s is drawn in, and nothing holds its ends.", lower(plain(n.Name))), help))
		}
	}
}

// endsInText reports whether a sentence about ends says that they are held: in the
// step that draws the elastic or cord in, or in a later one that speaks of it.
func (r *run) endsInText(n *model.Notion, from *model.Step) bool {
	reached := false
	for _, x := range r.stepTexts() {
		text := strings.ToLower(x.text)
		reached = reached || x.step == from
		if !reached || x.step != from && !strings.Contains(text, n.Word) {
			continue
		}
		for _, sentence := range strings.FieldsFunc(text, func(c rune) bool { return c == '.' || c == ';' || c == '\n' }) {
			if strings.Contains(sentence, "end") && endsHeld().MatchString(sentence) {
				return true
			}
		}
	}
	return false
}
