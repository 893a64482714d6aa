package check

import (
	"fmt"
	"strings"

	"seamwarden/compiler/assembly"
	"seamwarden/dsl/finding"
)

// More rules of order: rings, parts that are made first, what goes through a
// casing, seams in two rows, and what is only advice.
func init() {
	order := func(kind assembly.Kind, severity finding.Severity, id, purpose, why string, x says) {
		register(Rule{ID: id, Severity: severity, Category: "order", whole: true, Purpose: purpose, Why: why, run: func(r *run) {
			for _, list := range r.troublesOf(kind) {
				f := x.of(list[0])
				for _, t := range list[1:] {
					f = alsoTrouble(f, list[0], t)
				}
				r.report(list[0].Cond, f)
			}
		}})
	}
	order(assembly.RoundNotClosed, finding.Error, "in-the-round-before-closing",
		"A seam is sewn in the round before its edges are closed to rings.",
		"What is sewn in the round is a ring already: the sleeve with its seam sewn, the armhole with side and shoulder sewn.",
		says{"not a ring yet", "SEAM is sewn in the round before both of its edges are rings.", "Sew the seam that closes the ring first, or sew SEAM `flat`.", "closes it only here"})
	order(assembly.FlatButClosed, finding.Error, "flat-after-closing",
		"A seam is sewn flat when its edge is closed to a ring already.",
		"A ring cannot be laid out flat.",
		says{"a ring already", "SEAM is sewn flat, and its edge is closed to a ring by then.", "Sew it before the seam that closes the ring, or say `in the round`.", "closed here"})
	order(assembly.RingIntoFlat, finding.Error, "ring-sewn-to-an-open-edge",
		"A closed ring is sewn to an edge that is still open.",
		"Ring goes into ring, or flat to flat. An open edge that is sewn to a ring cannot be closed afterwards.",
		says{"one is open still", "SEAM joins a ring to an edge that is closed only later.", "Close both edges before, or neither.", "closed here, later"})
	order(assembly.PartNotMade, finding.Error, "part-not-made-yet",
		"A made-up part is sewn on before its own pieces are sewn together.",
		"A collar, a cuff or a flap is made and turned first; sewn on before, it can no longer be turned.",
		says{"not made yet", "The WORD is sewn on before SEAM, which makes it, is sewn.", "Sew SEAM first.", "made only here"})
	order(assembly.ZipShut, finding.Error, "zip-shut-inside",
		"A bag that is to be turned is sewn shut round a closed zip.",
		"The way out leads through the zip, and its slider cannot be reached from the inside.",
		says{"the zip is closed", "SEAM shuts the NOTION in while it is closed.", "Open the zip at least halfway before: open NOTION-ID.", "opened only here"})
	order(assembly.CaughtTooLate, finding.Error, "caught-after-sewing",
		"A loop, a tie or a tape is put to an edge that is sewn already.",
		"Its raw end belongs between the layers of that seam, which are closed.",
		says{"too late", "`VERB` comes when EDGE is sewn already.", "Move this before the seam that closes the edge.", "sewn here"})
	order(assembly.EndsNotJoined, finding.Error, "closed-before-the-ends-are-joined",
		"A casing is closed before the ends of what was drawn in are joined.",
		"The ends are inside and cannot be reached any more.",
		says{"the ends are loose", "The opening GAP is closed before the ends of the NOTION are joined.", "Join the ends first.", "joined only here"})
	order(assembly.CasingNotMade, finding.Error, "casing-not-made-yet",
		"Elastic or cord is drawn into a casing that is sewn only later.",
		"There is no tunnel yet.",
		says{"no tunnel yet", "The NOTION is drawn in before EDGE is sewn to a tunnel.", "Sew the casing first.", "sewn only here"})
	order(assembly.HeldTooLate, finding.Error, "held-after-sewing",
		"Layers are pinned, laid or basted after they were sewn.",
		"Pins and basting hold layers until they are sewn.",
		says{"too late", "`VERB` comes after what it holds was sewn.", "Move this before the step that sews it, or leave it out.", "sewn here"})
	order(assembly.FinishedTwice, finding.Warning, "finished-twice",
		"An edge is finished by name and once more with its seam.",
		"One of the two is left over. An edge that has been overlocked is not overlocked or bound again.",
		says{"again", "EDGE is finished twice.", "Take one of the two out.", "finished here first"})
	order(assembly.SecondPassMissing, finding.Error, "second-row-missing",
		"A seam is sewn from the right side, and never sewn a second time.",
		"Sewn from the right side, its raw allowances lie outside. A second row shuts them in: `stitch` for a French seam, `fell` for a flat-felled one.",
		says{"allowances outside", "SEAM is sewn with its allowances outside, and nothing shuts them in.", "Add the second row: stitch SEAM-ID, or fell SEAM-ID; fold one edge under before if it is a lapped seam.", ""})
	order(assembly.FinishedBetween, finding.Error, "finished-between-two-rows",
		"The allowances of a French or flat-felled seam are finished before its second row.",
		"They are shut in by the second row and must be thin.",
		says{"shut in later", "SEAM is finished before the row that shuts its allowances in.", "Leave the finish out.", ""})
	order(assembly.TurnedUnpressed, finding.Warning, "stitched-before-the-turned-part-is-pressed",
		"A row is stitched along a turned part that was not pressed after it was turned.",
		"Turning undoes pressing. The row fixes the edge as it lies, rolled to one side or the other.",
		says{"not pressed since", "`VERB` comes before PIECE is pressed again after turning.", "Press it between turning and stitching.", "pressed here"})
	order(assembly.PatchOnTube, finding.Advice, "patch-on-a-tube",
		"A pocket or patch is sewn on when its panel is closed to a tube.",
		"Inside a tube the machine reaches the place only with the rest bunched up beside it.",
		says{"a tube by now", "`VERB` comes when PIECE can no longer be laid flat.", "Sew it on before the seam that closes the tube.", "closed here"})
	order(assembly.RingSewnOpen, finding.Advice, "ring-sewn-before-closing",
		"An edge that becomes a ring is sewn before the seam that closes it, and the step does not say that this is meant.",
		"Both orders are used: flat, before the seam that closes the ring, or in the round, after it. Whoever reads the step must know which.",
		says{"flat, or too early", "This sews EDGE before SEAM closes it.", "Say `flat` if that is meant; else sew SEAM first.", "closed here, later"})
	order(assembly.LevelledTooLate, finding.Advice, "levelled-after-hemming",
		"An edge is levelled after it was hemmed.",
		"What hung out is trimmed off before the hem is turned.",
		says{"too late", "EDGE is levelled after it is closed.", "Level it before.", "closed here"})
	order(assembly.JoinedBeforeThreading, finding.Advice, "joined-before-threading",
		"The ends of elastic are joined before it is drawn in.",
		"A ring of elastic cannot be drawn through a casing.",
		says{"too early", "The ends of the NOTION are joined before it is drawn in.", "Draw it in first.", "drawn in here, later"})
	order(assembly.ButtonFirst, finding.Advice, "button-before-buttonhole",
		"A button is sewn on before its buttonhole is worked.",
		"The place of the button is taken through the finished buttonhole.",
		says{"too early", "The NOTION is sewn on before its buttonhole is worked.", "Work the buttonhole first.", "worked here, later"})
	order(assembly.StaystitchedLate, finding.Advice, "staystitched-late",
		"An edge is staystitched after the seam at its end.",
		"The row keeps an edge from stretching while it is handled, so it comes first.",
		says{"late", "EDGE is staystitched after SEAM is sewn.", "Staystitch it before anything is sewn to its piece.", "sewn here"})
	order(assembly.InsideOut, finding.Warning, "sewn-on-inside-out",
		"A band is sewn on while its ends are sewn and it is not turned yet.",
		"Folded with its right side inside and sewn at the ends, a band has the right side of its long edge inside. Sew the long edge first, or turn the band before.",
		says{"inside out", "PIECE is sewn on when SEAM is sewn, and turned only later.", "Sew SEAM after this, or turn PIECE first.", "its end is sewn here"})
	order(assembly.ReachedTooEarly, finding.Warning, "reached-through-before-turning",
		"Something is done through an opening before the thing is turned through it.",
		"Before the turning the inside is outside. What is reached through the opening lies inside only afterwards.",
		says{"not turned yet", "`VERB` reaches through the opening GAP, and the turning through it comes later.", "Turn first.", "turned here, later"})
	order(assembly.RowTooLate, finding.Advice, "topstitched-after-its-end-was-caught",
		"A seam is topstitched after another seam was sewn across its end.",
		"Stitched before, the row runs out under the other seam, which holds its threads. Stitched after, it has to stop short of it and be secured there.",
		says{"late", "SEAM is topstitched after its end was sewn over.", "Topstitch it before anything is sewn across it.", "its end is sewn over here"})
	order(assembly.UnderstitchedTurned, finding.Advice, "understitched-after-turning",
		"A facing is turned in before it is understitched.",
		"To understitch, the facing is opened out again; what was pressed or basted is undone.",
		says{"turned in by now", "SEAM is understitched after PIECE was turned in.", "Understitch it first, then turn it in.", "turned here"})
	order(assembly.HemUnderFacing, finding.Advice, "hemmed-after-the-facing-was-fastened",
		"An edge is hemmed when the facing that lies over the beginning of its hem is fastened already.",
		"The hem begins under the facing, which has to be lifted.",
		says{"under the facing", "EDGE is hemmed when PIECE, which lies over its end, is fastened already.", "Hem first, then fasten the facing over the hem.", "fastened here"})
	order(assembly.FinishedHeld, finding.Advice, "finished-after-its-end-was-sewn-on",
		"The free edge of a facing is finished after its end was sewn to the layer under it.",
		"At the end the other layer lies in the way of the needle and the knife. Before, the edge is free from end to end.",
		says{"its end is held", "EDGE is finished after SEAM holds its end.", "Finish it before SEAM is sewn.", "sewn here"})
	order(assembly.BoundEndOpen, finding.Advice, "binding-ends-in-the-open",
		"An edge is bound when the edge beside it is hemmed or bound already, and the step does not say what becomes of the ends of the binding.",
		"Bound first, the cut end of the tape is shut in by the other hem. Bound last, it stays raw unless it is folded in.",
		says{"its end lies open", "EDGE is bound after the edge beside it was closed, so that the end of the binding lies open.", "Bind it first; or say that the ends of the binding are folded in.", "closed here"})
	order(assembly.PreparedLate, finding.Advice, "band-edge-prepared-late",
		"The inside edge of a band is pressed under, bound or finished after the band was sewn on.",
		"Flat on the board it can be measured and pressed from end to end. Sewn on, the whole garment hangs from it.",
		says{"sewn on by now", "EDGE is prepared only when PIECE is sewn on.", "Do this before the band is sewn on.", "sewn on here"})
	order(assembly.PressedNowhere, finding.Advice, "pressed-without-direction",
		"A seam is pressed, and nothing says which way its allowances lie.",
		"Whoever sews it next has to guess, and a row of topstitching needs to know.",
		says{"which way?", "Nothing says which way SEAM is pressed.", "Say `open`, `toward` a piece, or `flat`.", ""})
}

// says is how a kind of trouble is told. In its texts SEAM, EDGE, PIECE, GAP, NOTION,
// WORD and VERB stand for what the trouble names.
type says struct{ label, headline, help, by string }

// of fills in what a trouble names.
func (x says) of(t assembly.Trouble) finding.Finding {
	fill := func(s string) string { return Upper(strings.NewReplacer(namesIn(t)...).Replace(s)) }
	return atStep(t, x.label, fill(x.headline), fill(x.help), x.by)
}

// namesIn gives the words for what a trouble names, each after its sign; longer
// signs first.
func namesIn(t assembly.Trouble) (all []string) {
	if t.Seam != nil {
		all = append(all, "SEAM-ID", t.Seam.ID, "SEAM", seamName(t.Seam))
	}
	if t.Use != nil {
		all = append(all, "EDGE", fmt.Sprintf("the %s of %s", edgeCalled(t.Use.Edge.Name), the(t.Use.Instance.Piece.Name)))
	}
	if t.Part != nil {
		all = append(all, "PIECE", the(t.Part.Piece.Name))
	}
	if t.Gap != nil {
		all = append(all, "GAP", t.Gap.Name)
	}
	if t.Notion != nil {
		all = append(all, "NOTION-ID", t.Notion.ID, "NOTION", lower(plain(t.Notion.Name)))
	}
	return append(all, "WORD", lower(t.Word), "VERB", t.Op.Verb)
}
