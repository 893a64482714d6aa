package check

import (
	"fmt"
	"slices"
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "half-on-the-other-side", Severity: finding.Warning, Category: "sides", run: halvesAcross,
		Purpose: "The left half of a zip or fastening goes to the right side of the body, or the right half to the left.",
		Why:     "Left and right are the wearer's for the pieces and for what is sewn into them. Two halves that change sides close with their backs out, or not at all."})
}

// halvesAcross looks at the halves of notions that are called left and right:
// where seams catch them, and where steps put them. Of a half it is said once.
func halvesAcross(r *run) {
	for _, s := range r.Seams {
		side := sideOfSeam(s)
		for _, k := range s.Catching {
			k.Target.Each(func(t *model.Target) {
				r.halfAcross(t, side, seamName(s), r.Space.And(s.Cond, t.Cond))
			})
		}
	}
	for _, op := range r.Ops() {
		p := firstPhrase(op, "to", "at", "on")
		if p == nil {
			continue
		}
		for _, o := range op.Objects {
			o.Each(func(t *model.Target) {
				if t.NotionBit != "" && len(p.Targets) > 0 {
					r.halfAcross(t, sideOfTargets(p.Targets), p.Targets[0].Describe(), r.Space.And(op.Cond, t.Cond))
				}
			})
		}
	}
}

// halfAcross reports a half that is on the side that it is not called by.
func (r *run) halfAcross(t *model.Target, side model.Side, where string, c condition.Cond) {
	half := sideCalled(t.NotionBit)
	if half == model.Neither || side != half.Other() {
		return
	}
	key := [2]any{t.Notion, t.NotionBit}
	if c = r.unsaid(key, c); !r.possible(c) {
		return
	}
	r.tell(key, c)
	f := at(t.Span, "the "+half.String()+" half", fmt.Sprintf("%s: its %s half goes to %s, which is on the %s side.", plain(t.Notion.Name), half, where, side),
		fmt.Sprintf("Take `%s`, or name the edge on the %s side. Left and right are the wearer's.", t.Notion.ID+"."+strings.Replace(t.NotionBit, half.String(), side.String(), 1), half))
	r.report(c, f)
}

// sideCalled is the side that a half is named after.
func sideCalled(bit string) model.Side {
	words := strings.Split(bit, "-")
	left, right := slices.Contains(words, "left"), slices.Contains(words, "right")
	switch {
	case left == right:
		return model.Neither
	case left:
		return model.Left
	}
	return model.Right
}

// sideOfSeam is the side of the body on which all of a seam lies.
func sideOfSeam(s *model.Seam) model.Side {
	var uses []*model.EdgeUse
	for _, j := range s.Copies {
		uses = append(append(uses, j.A...), j.B...)
	}
	return sideOfUses(uses)
}

func sideOfTargets(list []*model.Target) model.Side {
	var uses []*model.EdgeUse
	for _, t := range list {
		t.Each(func(x *model.Target) { uses = append(uses, x.Uses...) })
	}
	return sideOfUses(uses)
}

// sideOfUses is the one side on which edges lie, Neither if they lie on both or in
// the middle.
func sideOfUses(uses []*model.EdgeUse) (side model.Side) {
	for _, u := range uses {
		if side != model.Neither && u.Side != model.Neither && u.Side != side {
			return model.Neither
		}
		if u.Side != model.Neither {
			side = u.Side
		}
	}
	return
}

func firstPhrase(op *model.Op, names ...string) *model.Phrase {
	for _, n := range names {
		if p := op.Phrase(n); p != nil {
			return p
		}
	}
	return nil
}
