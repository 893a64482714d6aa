package check

import (
	"fmt"

	"seamwarden/compiler/assembly"
	"seamwarden/dsl/finding"
)

// alsoTrouble adds the place of a trouble that has one cause with the first.
func alsoTrouble(f finding.Finding, first, t assembly.Trouble) finding.Finding {
	switch {
	case t.Seam != nil && t.Seam != first.Seam:
		return also(f, t.Seam.Span, "and this seam")
	case t.Op != first.Op:
		return also(f, t.Op.Span, "and here")
	case t.Use != nil:
		return also(f, t.Use.Edge.Span, "and this edge")
	}
	return f
}

// atStep makes a finding at an operation, and points at what stood in its way.
func atStep(t assembly.Trouble, label, headline, help, by string) finding.Finding {
	f := at(t.Op.Span, label, headline, help)
	if t.By != nil {
		f = also(f, t.By.Span, by)
	}
	return f
}

func crossedOpen(r *run, t assembly.Trouble) finding.Finding {
	s := t.Seam
	f := at(t.Op.Span, "closed across it here", fmt.Sprintf("%s is sewn only after the %s across its end is closed.", Upper(seamName(s)), edgeCalled(t.Use.Edge.Name)),
		fmt.Sprintf("Sew %s before this step.", seamName(s)))
	for _, op := range r.Ops() {
		for _, o := range op.Objects {
			if o.Seam == s && op.Row.Sews && op.Span.Start != t.Op.Span.Start {
				return also(f, op.Span, "sewn here, later")
			}
		}
	}
	return f
}

func notSewnYet(r *run, t assembly.Trouble) finding.Finding {
	f := at(t.Op.Span, "not sewn yet", fmt.Sprintf("`%s` comes before %s is sewn.", t.Op.Verb, seamName(t.Seam)), "Move this after the step that sews it, or sew it first.")
	for _, op := range r.Ops() {
		for _, o := range op.Objects {
			if o.Seam == t.Seam && op.Row.Sews {
				return also(f, op.Span, "sewn here")
			}
		}
	}
	return f
}

func shutIn(r *run, t assembly.Trouble) finding.Finding {
	help := "Move this before the step that shuts them in."
	if t.Op.Verb == "press" && t.By != nil && t.By.Verb == "turn" && len(t.By.Objects) == 1 {
		help = fmt.Sprintf("Move this before the step that shuts them in; or press what was turned instead: `press %s`.", t.By.Objects[0].Path)
	}
	return atStep(t, "cannot be reached", fmt.Sprintf("The allowances of %s cannot be reached any more to %s them.", seamName(t.Seam), t.Op.Verb),
		help, "shut in here")
}

func finishedTooLate(r *run, t assembly.Trouble) finding.Finding {
	return atStep(t, "too late", fmt.Sprintf("%s is finished after its end was sewn over.", Upper(seamName(t.Seam))), "Finish it right after it is sewn, before anything crosses it.", "its end is sewn over here")
}

func pressedTooLate(r *run, t assembly.Trouble) finding.Finding {
	return atStep(t, "too late", fmt.Sprintf("%s is pressed after its end was sewn over.", Upper(seamName(t.Seam))), "Press it before anything crosses it.", "its end is sewn over here")
}

func closedBefore(r *run, t assembly.Trouble) finding.Finding {
	what := fmt.Sprintf("the %s of %s", edgeCalled(t.Use.Edge.Name), the(t.Use.Instance.Piece.Name))
	if t.Seam != nil {
		return atStep(t, "closed before", fmt.Sprintf("%s takes %s, which is closed already.", Upper(seamName(t.Seam)), what), "Sew the seam before the edge is closed, or leave the other step out.", "closed here")
	}
	return atStep(t, "closed before", fmt.Sprintf("`%s` comes when %s is closed already.", t.Op.Verb, what), "Move this before the step that closes the edge, or leave one of them out.", "closed here")
}

func fusedTooLate(r *run, t assembly.Trouble) finding.Finding {
	if t.Kind == assembly.FusedWhenTurned {
		return atStep(t, "too late", fmt.Sprintf("%s is fused after it was turned.", Upper(the(t.Part.Piece.Name))), "Fuse it before the first seam that takes it.", "turned here")
	}
	return atStep(t, "too late", fmt.Sprintf("%s is fused after it was sewn.", Upper(the(t.Part.Piece.Name))), "Fuse it before the first seam that takes it.", "sewn here")
}

func twoWays(r *run, t assembly.Trouble) finding.Finding {
	return atStep(t, "one or the other", fmt.Sprintf("%s is pressed open, and its allowances are finished together.", Upper(seamName(t.Seam))),
		"Finish them `apart` and press the seam open, or finish them `together` and press it to one side.", "and here")
}

func farSide(r *run, t assembly.Trouble) finding.Finding {
	return atStep(t, "no allowances on this side", fmt.Sprintf("%s was pressed to the other side than this row is stitched on.", Upper(seamName(t.Seam))),
		"Stitch on the side that it is pressed to, or press it the other way.", "pressed here")
}

func unpressed(r *run, t assembly.Trouble) finding.Finding {
	return atStep(t, "pressed only now", fmt.Sprintf("%s is pressed only after it was stitched down.", Upper(seamName(t.Seam))), "Press it first.", "stitched here")
}

func trimmedTooLate(r *run, t assembly.Trouble) finding.Finding {
	return atStep(t, "too late", fmt.Sprintf("`%s` comes after the allowances of %s were stitched down.", t.Op.Verb, seamName(t.Seam)), "Move this before the row of stitching.", "stitched down here")
}

func gapNotThere(r *run, t assembly.Trouble) finding.Finding {
	if t.Word == "closed" {
		return atStep(t, "closed already", fmt.Sprintf("The opening %s is closed before this goes through it.", t.Gap.Name), "Close it afterwards.", "closed here")
	}
	f := at(t.Op.Span, "not left yet", fmt.Sprintf("The opening %s is not there yet.", t.Gap.Name), "Sew the seam that leaves it first.")
	return also(f, t.Gap.Span, "left here")
}

func noWayOut(r *run, t assembly.Trouble) finding.Finding {
	return at(t.Op.Span, "no opening", fmt.Sprintf("%s is sewn shut all round and cannot be turned.", Upper(the(t.Part.Piece.Name))),
		"Leave an opening in one of its seams: sew SEAM leaving 3in open as gap. Then turn through it and close it.")
}

func zipTooLate(r *run, t assembly.Trouble) finding.Finding {
	return atStep(t, "too late", fmt.Sprintf("This goes in after the %s of %s is closed across its end.", edgeCalled(t.Use.Edge.Name), the(t.Use.Instance.Piece.Name)), "Insert it before that edge is closed.", "closed here")
}

func shapedTooLate(r *run, t assembly.Trouble) finding.Finding {
	return atStep(t, "too late", fmt.Sprintf("`%s` comes after the %s of %s was sewn.", t.Op.Verb, edgeCalled(t.Use.Edge.Name), the(t.Use.Instance.Piece.Name)), "Move this before the step that sews the edge.", "sewn here")
}

func gapNeverClosed(r *run, t assembly.Trouble) finding.Finding {
	return at(t.Gap.Span, "left here", fmt.Sprintf("The opening %s is never closed.", t.Gap.Name), fmt.Sprintf("Close it in a later step: `slipstitch %s`; or `close %s`, where a row of stitching along the seam shuts it.", t.Gap.ID, t.Gap.ID))
}
