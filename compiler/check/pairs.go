package check

import (
	"fmt"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "alike-for-a-pair", Severity: finding.Warning, Category: "hands", run: alikeForPair,
		Purpose: "Parts that are cut all alike go to a left and a right one.",
		Why:     "The two sides of the body are mirror images. Of parts that are all alike, one fits and the other has its ends the wrong way round, or its glue or its right side on the wrong face."})
}

// alikeForPair looks at cut lines that say alike: interfacing for cloth that is cut
// in pairs, and cloth of which a seam or a step puts one on either side.
func alikeForPair(r *run) {
	for _, p := range r.Pieces {
		for _, c := range p.Cuts {
			if !c.Lay.Alike || len(c.Lay.Names) > 0 || c.Count < 2 || p.Symmetric || c.Material.NoRightSide {
				continue
			}
			if c.Material.Interfacing {
				r.alikeInterfacing(c)
			} else {
				r.alikeCloth(c)
			}
		}
	}
}

// alikeInterfacing is for interfacing of cloth that is all cut in pairs.
func (r *run) alikeInterfacing(c *model.Cut) {
	pairs, others := condition.False, condition.False
	var pair *model.Cut
	for _, o := range c.Piece.Cuts {
		switch {
		case o.Material.Interfacing:
		case o.Lay.Mirrored:
			pairs, pair = r.Space.Or(pairs, o.Cond), o
		default:
			others = r.Space.Or(others, o.Cond)
		}
	}
	if pair == nil {
		return
	}
	f := at(c.Lay.Span, "all the same", fmt.Sprintf("%s for %s is cut alike, and the cloth in pairs.", c.Material.Name, the(c.Piece.Name)), sayMirrored)
	bad := r.unsaid(c.Piece, r.Space.Diff(r.Space.And(c.Cond, pairs), others))
	r.report(bad, also(f, pair.Span, "the cloth"))
	r.tell(c.Piece, bad)
}

const sayMirrored = "Cut it `mirrored`; or say `symmetric` in the piece if it is the same either way up."

// alikeCloth is for parts of which one goes to either side of the body.
func (r *run) alikeCloth(c *model.Cut) {
	say := func(bad condition.Cond, place finding.Span, label string) {
		f := at(c.Lay.Span, "all the same", fmt.Sprintf("%s is cut alike, and one of them goes to either side of the body.", Upper(the(c.Piece.Name))), sayMirrored)
		bad = r.unsaid(c.Piece, r.Space.And(bad, c.Cond))
		r.report(bad, also(f, place, label))
		r.tell(c.Piece, bad)
	}
	for _, s := range r.Seams {
		var on [3]condition.Cond
		for _, j := range s.Copies {
			on[j.Side] = r.Space.Or(on[j.Side], j.Cond)
		}
		for _, k := range s.Catching {
			k.Target.Each(func(t *model.Target) {
				if len(t.Instances) > 0 && t.Instances[0].Cut == c {
					say(r.Space.All(on[model.Left], on[model.Right], t.Cond), t.Span, "caught on both sides")
				}
			})
		}
	}
	for _, op := range r.Ops() {
		to := op.Phrase("to")
		if to == nil || op.Verb != "baste" && !op.Row.Joins {
			continue
		}
		for _, o := range op.Objects {
			o.Each(func(t *model.Target) {
				if len(t.Instances) > 0 && t.Instances[0].Cut == c && onBothSides(to.Targets) {
					say(op.Cond, op.Span, "put on both sides")
				}
			})
		}
	}
}

// onBothSides reports whether targets are parts of the left and of the right side.
func onBothSides(list []*model.Target) bool {
	var side [3]bool
	for _, t := range list {
		t.Each(func(x *model.Target) {
			for _, i := range x.Instances {
				side[i.Side] = true
			}
		})
	}
	return side[model.Left] && side[model.Right]
}
