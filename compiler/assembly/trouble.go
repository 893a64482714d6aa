package assembly

import (
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// Trouble is a step that comes at the wrong time: Op does something that is no
// longer, or not yet, possible because of By. Cond says in which garments.
type Trouble struct {
	Kind   Kind
	Op     *model.Op // what comes at the wrong time
	By     *model.Op // what shut it off, or what should have come first; may be nil
	Seam   *model.Seam
	Use    *model.EdgeUse
	Part   *model.Instance
	Gap    *model.Gap
	Notion *model.Notion
	Word   string
	Cond   condition.Cond
}

// Kind is a kind of trouble; each is reported by one rule.
type Kind uint8

// The kinds of trouble; common practice of garment sewing, no source. From firstSoft
// on the garment can still be made, and testers stumble.
const (
	SeamCrossedOpen       Kind = iota // an edge is closed across a seam that is sewn only later
	SeamNotSewnYet                    // something is done to a seam before it is sewn
	SeamShutIn                        // something is done to an allowance that can no longer be reached
	FinishedTooLate                   // an allowance is finished after its end was caught
	PressedTooLate                    // a seam is pressed after its end was caught
	EdgeClosedBefore                  // something is done to an edge that is closed already
	FusedWhenTurned                   // interfacing goes in when its piece is turned or shut
	PressedTwoWays                    // a seam is pressed open and finished together, or the other way round
	StitchedFarSide                   // a row is stitched on the side away from the allowances
	StitchedUnpressed                 // a row is stitched before the seam is pressed
	TurnedUnpressed                   // a row is stitched on a part that was turned and not pressed since
	TrimmedTooLate                    // understitched or topstitched before it was graded or clipped
	GapNotThere                       // something goes through an opening that is not left yet, or closed already
	NoWayOut                          // a closed bag is turned without an opening
	ZipTooLate                        // a zip or a part goes in where a band or facing has closed the end
	ShapedTooLate                     // gathers, darts, pleats after the edge was sewn
	GapNeverClosed                    // an opening is used and never closed
	TurnedTooEarly                    // a part is turned before any seam of it is sewn
	FixedBeforeTurning                // a part is stitched down and turned afterwards
	FastenedTooEarly                  // a buttonhole or fastening goes on before the part is closed
	MarkedTooLate                     // a sign is marked after it was used
	RoundNotClosed                    // sewn in the round, and not closed to a ring yet
	FlatButClosed                     // sewn flat, and closed to a ring already
	RingIntoFlat                      // a ring is sewn to what is still open
	PartNotMade                       // an edge of a made-up part is sewn before the part is
	ZipShut                           // a bag is sewn shut round a closed zip
	CaughtTooLate                     // a loop or a tie goes to an edge that is sewn already
	EndsNotJoined                     // a casing is closed before the ends of the elastic are joined
	CasingNotMade                     // elastic goes into what is sewn only later
	HeldTooLate                       // pinned or basted after it was sewn
	FinishedTwice                     // an edge is finished a second time
	SecondPassMissing                 // a seam is sewn with its allowances outside, and never sewn again
	FinishedBetween                   // its allowances are finished between the two rows
	InsideOut                         // a band is sewn on while its ends are sewn and not turned yet
	ReachedTooEarly                   // something is done through an opening before the thing is turned through it
	FusedTooLate                      // interfacing goes in after its piece was sewn
	PatchOnTube                       // a patch goes on a panel that is a tube already
	RingSewnOpen                      // a ring is sewn before the seam that closes it
	LevelledTooLate                   // a hem is levelled after it was sewn
	JoinedBeforeThreading             // the ends of elastic are joined before it is in
	ButtonFirst                       // a button goes on before its buttonhole
	StaystitchedLate                  // staystitched after the seam at its end
	PressedNowhere                    // a seam is pressed and nothing says which way
	RowTooLate                        // a row along a seam after its end was sewn over
	UnderstitchedTurned               // understitched when the facing was turned in
	HemUnderFacing                    // a hem begins under a facing that is fastened already
	FinishedHeld                      // the free edge of a facing is finished when its end is sewn on
	BoundEndOpen                      // an edge is bound when the edge at its end is closed already
	PreparedLate                      // the inside edge of a band is prepared when the band is on

	Kinds // how many kinds there are
)

const firstSoft = FusedTooLate

// Soft reports whether the garment can still be made.
func (k Kind) Soft() bool { return k >= firstSoft }

// troubles gathers what is found.
type troubles struct {
	space *condition.Space
	valid condition.Cond
	out   []Trouble
	at    map[troubleKey]int
}

// troubleKey tells troubles apart: what comes at the wrong time, and for what.
type troubleKey struct {
	kind  Kind
	op    *model.Op
	seam  *model.Seam
	edge  *model.Edge
	thing any
}

func newTroubles(p *model.Pattern) *troubles {
	return &troubles{space: p.Space, valid: p.Valid, at: map[troubleKey]int{}}
}

// trouble reports that something is wrong wherever bad holds. by gives the deeds
// that caused it; the first that matters is named.
func (w *troubles) trouble(bad condition.Cond, t Trouble, by []deed) {
	if bad = w.space.And(bad, w.valid); bad == condition.False {
		return
	}
	for _, d := range by {
		if t.By == nil && w.space.Overlaps(d.cond, bad) {
			t.By = d.op
		}
	}
	k := t.key()
	if i, ok := w.at[k]; ok {
		w.out[i].Cond = w.space.Or(w.out[i].Cond, bad)
		return
	}
	t.Cond = bad
	w.at[k] = len(w.out)
	w.out = append(w.out, t)
}

func (t *Trouble) key() troubleKey {
	k := troubleKey{kind: t.Kind, op: t.Op, seam: t.Seam}
	if t.Use != nil {
		k.edge = t.Use.Edge
	}
	switch {
	case t.Part != nil:
		k.thing = t.Part.Piece
	case t.Gap != nil:
		k.thing = t.Gap
	case t.Notion != nil:
		k.thing = t.Notion
	}
	return k
}
