package check

import (
	"fmt"
	"slices"
	"sort"

	"seamwarden/compiler/assembly"
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

// The rules of order read what assembly.Play finds at the wrong time; each kind
// of trouble has its own rule and its own words.
func init() {
	order := func(kind assembly.Kind, severity finding.Severity, id, purpose, why string, word func(*run, assembly.Trouble) finding.Finding) {
		register(Rule{ID: id, Severity: severity, Category: "order", whole: true, Purpose: purpose, Why: why, run: func(r *run) {
			for _, list := range r.troublesOf(kind) {
				f := word(r, list[0])
				for _, t := range list[1:] {
					f = alsoTrouble(f, list[0], t)
				}
				r.report(list[0].Cond, f)
			}
		}})
	}
	order(assembly.SeamCrossedOpen, finding.Error, "seam-after-its-end-is-closed",
		"An edge is sewn, hemmed or bound across a seam that is sewn only later.",
		"Once the edge is closed on both parts, the seam between them can no longer be sewn to its end.", crossedOpen)
	order(assembly.SeamNotSewnYet, finding.Error, "seam-not-sewn-yet",
		"A step presses, finishes, trims or topstitches a seam that a later step sews.",
		"There is no seam yet to do it to.", notSewnYet)
	order(assembly.SeamShutIn, finding.Error, "seam-out-of-reach",
		"A step works on an allowance that has been shut in.",
		"The allowance lies inside a band, a facing or a turned piece, and no scissors, needle or iron can get at it.", shutIn)
	order(assembly.FinishedTooLate, finding.Error, "finished-after-its-end-was-caught",
		"A seam is finished after another seam, a hem or a binding was sewn across its end.",
		"The end of the allowance is caught under the other stitching, so it can no longer be finished to its end.", finishedTooLate)
	order(assembly.PressedTooLate, finding.Warning, "pressed-after-its-end-was-caught",
		"A seam is pressed open or to one side after something was sewn across its end.",
		"The end of the allowance is held by the other stitching as it lay then, and will not lie over.", pressedTooLate)
	order(assembly.EdgeClosedBefore, finding.Error, "edge-closed-before",
		"A step hems, binds, finishes or sews an edge that is already closed.",
		"The edge lies inside a seam, a hem or a binding, or under stitching, and is not there to be worked on.", closedBefore)
	order(assembly.FusedTooLate, finding.Advice, "fused-after-sewing",
		"Interfacing is fused to a piece that has already been sewn to another.",
		"Interfacing goes on while the piece lies flat: it belongs into the seams, and fused later it cannot reach under their allowances.", fusedTooLate)
	order(assembly.FusedWhenTurned, finding.Error, "fused-when-turned",
		"Interfacing is fused to a piece that has been turned or stitched down.",
		"Its wrong side is inside, where no iron reaches.", fusedTooLate)
	order(assembly.PressedTwoWays, finding.Error, "pressed-and-finished-differently",
		"A seam is pressed open and its allowances are finished together.",
		"Allowances that are finished together cannot be pressed apart.", twoWays)
	order(assembly.StitchedFarSide, finding.Warning, "stitched-away-from-the-allowances",
		"A row is stitched on the side of a seam that the allowances were pressed away from.",
		"The row is meant to hold the allowances; on the other side it goes through one layer and holds nothing.", farSide)
	order(assembly.StitchedUnpressed, finding.Warning, "stitched-before-pressing",
		"A seam is topstitched or understitched before it is pressed.",
		"The row fixes the seam as it lies; a fold that was not pressed away stays for good.", unpressed)
	order(assembly.TrimmedTooLate, finding.Warning, "trimmed-after-stitching",
		"A seam is trimmed, graded or clipped after its allowances were stitched down.",
		"The allowances are held by the row and lie under it, where scissors would cut the stitches.", trimmedTooLate)
	order(assembly.GapNotThere, finding.Error, "opening-not-there",
		"Something goes through an opening that is not left yet, or closed already.",
		"Nothing can be turned through a seam that is shut.", gapNotThere)
	order(assembly.NoWayOut, finding.Error, "turned-without-opening",
		"A piece that is sewn shut all round is turned, and no opening was left.",
		"A bag without an opening cannot be turned.", noWayOut)
	order(assembly.ZipTooLate, finding.Error, "inserted-after-its-end-is-closed",
		"A zip or part is inserted between edges whose end a band, facing or binding has already closed.",
		"Its end belongs inside the band or facing, which is shut.", zipTooLate)
	order(assembly.ShapedTooLate, finding.Error, "shaped-after-sewing",
		"An edge is gathered, eased, pleated, staystitched or darted after it was sewn.",
		"Once an edge lies in a seam its length is fixed.", shapedTooLate)
	order(assembly.GapNeverClosed, finding.Error, "opening-never-closed",
		"An opening is left for turning and never closed.",
		"The finished thing has a hole in its seam.", gapNeverClosed)
	order(assembly.TurnedTooEarly, finding.Error, "turned-before-sewing",
		"A part is turned before any seam of it is sewn.",
		"There is nothing to turn yet.", func(r *run, t assembly.Trouble) finding.Finding {
			return at(t.Op.Span, "nothing sewn yet", fmt.Sprintf("%s is turned before it is sewn to anything.", Upper(the(t.Part.Piece.Name))), "Sew its seam first.")
		})
	order(assembly.FixedBeforeTurning, finding.Error, "turned-after-stitching-down",
		"A part is turned after one of its edges was stitched down.",
		"What is stitched down cannot be turned any more.", func(r *run, t assembly.Trouble) finding.Finding {
			return atStep(t, "too late", fmt.Sprintf("%s is turned after it was stitched down.", Upper(the(t.Part.Piece.Name))), "Turn it first.", "stitched down here")
		})
	order(assembly.FastenedTooEarly, finding.Warning, "fastened-before-closing",
		"A buttonhole or fastening is put on a part that is sewn, turned or stitched down later.",
		"It must go through all the layers that end up there, and it is in the way of the machine.", func(r *run, t assembly.Trouble) finding.Finding {
			return atStep(t, "too early", fmt.Sprintf("`%s` comes before %s is closed.", t.Op.Verb, the(t.Part.Piece.Name)), "Move it after the last step that sews or turns this part.", "closed here, later")
		})
	order(assembly.MarkedTooLate, finding.Error, "marked-after-use",
		"A sign is marked after a step has used it.",
		"The sewist needs the sign when she sews to it.", func(r *run, t assembly.Trouble) finding.Finding {
			return atStep(t, "too late", fmt.Sprintf("%s is marked after it was used.", Upper(t.Word)), "Mark it before the step that uses it.", "used here")
		})

	register(Rule{ID: "loose-at-the-end", Severity: finding.Error, Category: "order", FromAbsence: true, ahead: -1, run: loose,
		Purpose: "At the end a piece is not joined to the rest of the garment.",
		Why:     "A seam is missing, or a step that applies to some garments only leaves a part lying about in the others."})
	register(Rule{ID: "pressed-toward-a-stranger", Severity: finding.Error, Category: "order", ahead: 2, run: strangers,
		Purpose: "A seam is pressed toward, or stitched on, a piece that it does not join.",
		Why:     "The allowances can only lie on one of the two parts that the seam joins."})
}

func (r *run) troubles() []assembly.Trouble { return r.played().trouble }

// played gives what comes of playing the steps through.
func (r *run) played() *playing {
	if r.playing == nil {
		r.playing = beginPlay(r.Pattern, r.facts)
	}
	return r.playing.wait(r.Space)
}

// troublesOf lists the troubles of a kind that nothing else explains; those that
// one operation or one seam has in the same garments together.
func (r *run) troublesOf(kind assembly.Kind) (all [][]assembly.Trouble) {
	inTrouble := map[*model.Op]condition.Cond{}
	for _, t := range r.troubles() {
		if t.By != nil {
			t.Cond = r.Space.Diff(t.Cond, inTrouble[t.By]) // what is done too early itself is the cause
		}
		if t.Cond = r.unexplained(t); !r.possible(t.Cond) || leftOut(t) {
			continue
		}
		inTrouble[t.Op] = r.Space.Or(inTrouble[t.Op], t.Cond)
		if t.Kind != kind {
			continue
		}
		i := slices.IndexFunc(all, func(list []assembly.Trouble) bool { return oneCause(list[0], t) })
		if i < 0 {
			all = append(all, nil)
			i = len(all) - 1
		}
		all[i] = append(all[i], t)
	}
	return
}

// oneCause reports whether two troubles of a kind come from one slip: from one
// operation, about one seam, or from two operations of a step that stands at the
// wrong place.
func oneCause(a, b assembly.Trouble) bool {
	return a.Cond == b.Cond && (a.Op == b.Op || a.Seam != nil && a.Seam == b.Seam || a.Seam == nil && a.By != nil && a.By == b.By && a.Op.Step == b.Op.Step)
}

// unexplained leaves out of a trouble the garments in which something else is
// reported about the seam, the edge or the operations in it.
func (r *run) unexplained(t assembly.Trouble) condition.Cond {
	c := t.Cond
	if t.Seam != nil {
		c = r.unsaid(t.Seam, c)
	}
	if t.Use != nil {
		u := *t.Use
		for _, v := range usesOf(r, u.Instance, u.Edge) {
			if v.Side == u.Side {
				c = r.unsaid(v, c)
			}
		}
	}
	for _, op := range []*model.Op{t.Op, t.By} {
		if op == nil {
			continue
		}
		for _, o := range op.Objects {
			o.Each(func(x *model.Target) {
				if x.Seam != nil {
					c = r.unsaid(x.Seam, c)
				}
			})
		}
	}
	return c
}

func seamName(s *model.Seam) string { return "the " + s.Called() }

// loose reports the parts that do not hang together with the rest, those that
// hang together with one another as one.
func loose(r *run) {
	byCond := map[condition.Cond][]*model.Instance{}
	var conds []condition.Cond
	for i, c := range r.played().loose {
		if c = r.Space.And(r.clear(r.unsaid(i, c)), r.Valid); c != condition.False {
			if byCond[c] == nil {
				conds = append(conds, c)
			}
			byCond[c] = append(byCond[c], i)
		}
	}
	for _, c := range conds {
		sort.Slice(byCond[c], func(i, j int) bool { return byCond[c][i].ID < byCond[c][j].ID })
	}
	sort.Slice(conds, func(i, j int) bool { return byCond[conds[i]][0].ID < byCond[conds[j]][0].ID })
	for _, c := range conds {
		first := byCond[c][0]
		f := at(first.Cut.Span, "cut here", fmt.Sprintf("At the end %s is not joined to the rest.", first.Path()),
			"Sew it to the rest in a step, or say `separate` in the piece if it is an item of its own, such as a belt.")
		if n := len(byCond[c]); n > 1 {
			f.Headline = fmt.Sprintf("At the end %s and %d more are not joined to the rest.", first.Path(), n-1)
		}
		r.report(c, f)
	}
}
