package check

import (
	"fmt"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

// What a list of needs leaves out, and what does not fit where it goes.
func init() {
	register(Rule{ID: "supply-not-listed", Severity: finding.Advice, Category: "needs", FromAbsence: true, run: supplies,
		Purpose: "Tools are listed, and no thread or no needle.",
		Why:     "A list that begins to tell what is needed is taken for the whole of it."})
	register(Rule{ID: "too-wide-for-its-casing", Severity: finding.Error, Category: "needs", run: casing,
		Purpose: "An elastic or a tape is drawn through a hem that is narrower than it.",
		Why:     "It does not go in."})
}

// supplies asks nothing of a pattern that lists no tools: it leaves them to the
// sewist altogether.
func supplies(r *run) {
	listed := map[string]condition.Cond{}
	for _, s := range r.Supplies {
		listed[s.Word] = r.Space.Or(listed[s.Word], s.Cond)
	}
	if listed["tool"] == condition.False {
		return
	}
	last := r.Supplies[len(r.Supplies)-1]
	for _, x := range [][2]string{{"thread", `thread "All-purpose thread to match"`}, {"needle", `needle "Universal needle, 80/12"`}} {
		r.report(r.Space.Not(listed[x[0]]), at(last.Span, "and no "+x[0], fmt.Sprintf("Tools are listed, and no %s.", x[0]), fmt.Sprintf("Add a line such as: %s.", x[1])))
	}
}

// casing compares what is threaded into a hemmed edge with the width of the hem:
// its last turn, or the one that there is.
func casing(r *run) {
	for _, op := range r.Ops() {
		into := op.Phrase("into")
		if op.Verb != "thread" || into == nil {
			continue
		}
		for _, o := range op.Objects {
			if o.Notion == nil {
				continue
			}
			wide, ok := o.Notion.Props["width"]
			for _, t := range into.Targets {
				if ok {
					t.Each(func(e *model.Target) { r.intoHem(op, o.Notion, wide, e) })
				}
			}
		}
	}
}

func (r *run) intoHem(op *model.Op, n *model.Notion, wide model.Amount, e *model.Target) {
	for _, hem := range r.Ops() {
		deep := depthOf(hem)
		if deep == nil || wide.Length.Cmp(deep.Length) < 0 {
			continue
		}
		for _, o := range hem.Objects {
			if o.Edge == nil || o.Edge != e.Edge {
				continue
			}
			f := at(op.Span, "does not go in", fmt.Sprintf("%s is %s wide, and the hem it goes into only %s.", plain(n.Name), wide.Measure, deep.Measure), "Make the hem wider than what goes into it, or buy it narrower.")
			f = also(also(f, deep.Span, "the hem"), wide.Span, "as wide as this")
			r.report(r.Space.All(op.Cond, hem.Cond, o.Cond), f)
		}
	}
}

// depthOf gives the width of a hem, nil if it does not say.
func depthOf(op *model.Op) *model.Amount {
	if op.Verb != "hem" {
		return nil
	}
	for _, name := range []string{"turning", "by"} {
		if p := op.Phrase(name); p != nil && len(p.Amounts) > 0 {
			return &p.Amounts[len(p.Amounts)-1]
		}
	}
	return nil
}
