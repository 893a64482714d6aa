package check

import (
	"fmt"
	"slices"

	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "band-too-short", Severity: finding.Error, Category: "outlines", FromAbsence: true, run: bandsJudged,
		Purpose: "A tape, a strip or a cord is shorter than the edges that it binds, or the casing that it is drawn through.",
		Why:     "It ends before the edge does, and more of it has to be bought, of another batch."})
	register(Rule{ID: "nothing-for-the-ends", Severity: finding.Advice, Category: "outlines", FromAbsence: true, run: bandsJudged,
		Purpose: "A tape or a strip is just as long as the edges that it binds.",
		Why:     "Its ends are turned in, lapped or joined, and it takes a little more to go round a curve: about 1 cm at each end (common practice, no source)."})
	register(Rule{ID: "band-far-too-long", Severity: finding.Advice, Category: "outlines", FromAbsence: true, run: bandsJudged,
		Purpose: "Far more of a tape is bought than goes along the edges that it binds.",
		Why:     "Half as much again and a hand's length more are usual; beyond that, mostly a number was not mended with the pattern, or an edge is never bound (common practice, no source)."})
	register(Rule{ID: "elastic-out-of-measure", Severity: finding.Warning, Category: "outlines", FromAbsence: true, run: bandsJudged,
		Purpose: "Elastic is as long as the casing that it is drawn through, or not half as long.",
		Why:     "Elastic that is not shorter does not draw in, and much shorter than half it cannot be drawn out (common practice, no source)."})
	register(Rule{ID: "zip-does-not-fit", Severity: finding.Warning, Category: "outlines", FromAbsence: true, run: bandsJudged,
		Purpose: "A zip is far longer than the seams that its side is caught in, or far shorter.",
		Why:     "Zips are sold in steps and shortened, and may go on over a collar; but one that is longer by a third, or stops far before the seam ends, was meant for another seam (common practice, no source)."})
}

// Bounds of what is usual (common practice, no source); see the rules.
const (
	endMM         = 10
	longerPart    = 1.5
	longerMM      = 200
	drawsInPart   = 0.97
	mostDrawnPart = 0.5
	otherCasings  = 1.3 // elastic that is longer than this runs through more than is named
	zipOverMM     = 150
	zipOverPart   = 0.3
	zipShortMM    = 40
	zipShortPart  = 0.15
)

// judged is what may be wrong with the length of a band: by how much it is wrong, for
// what is needed and what there is, and how that is said.
type judged struct {
	rule  string
	most  bool // what is bought has to do for the garment that needs most
	wrong func(need, have float64) float64
	say   string // of the band, the size, what there is and what is needed
	help  string
}

// bandsJudged looks for what the rule that is running looks for. What is said of a band
// by one rule is not said again by the next.
func bandsJudged(r *run) {
	for _, b := range r.bandsMeasured() {
		for _, j := range b.judgements() {
			if j.rule != r.rule.ID {
				continue
			}
			rows := b.lengths
			if j.most {
				rows = mostNeeded(rows)
			}
			bad, need, have, size, several := r.worstRows(rows, j.wrong)
			if bad = r.unsaid(b, bad); !r.possible(bad) {
				continue
			}
			r.tell(b, bad)
			f := at(b.decl.Span, "so long", fmt.Sprintf(j.say, Upper(bandName(b)), r.inSize(size, several), r.inUnits(have), r.inUnits(need)), j.help)
			r.report(bad, also(f, b.uses[0].span(), "used here"))
		}
	}
}

// bandsMeasured gives the bands whose length is declared, with what they need; it lists
// those that could not be compared. It is worked out once.
func (r *run) bandsMeasured() []*band {
	if r.measured != nil || !r.anyOutline() {
		return r.measured
	}
	r.measured = []*band{}
	taken := r.takenUp()
	for _, b := range r.bands() {
		given := r.declaredOf(b)
		if len(given) == 0 || len(b.uses) == 0 && !b.lost {
			continue
		}
		if !b.lost {
			b.lengths = r.neededAndGiven(b, given, taken)
			r.measured = append(r.measured, b)
		}
		r.listBand(b, b.lengths)
	}
	return r.measured
}

// mostNeeded puts the most that any garment needs of a size in the place of what each
// needs; no number if that of one is not known.
func mostNeeded(all []rowLengths) (out []rowLengths) {
	for _, l := range all {
		l.rows[0] = slices.Clone(l.rows[0])
		for k := range l.rows[0] {
			for _, o := range all {
				l.rows[0][k] = max(l.rows[0][k], o.rows[0][k])
			}
		}
		out = append(out, l)
	}
	return
}

// listBand says where the length of a band could not be compared.
func (r *run) listBand(b *band, all []rowLengths) {
	missing := len(all) == 0
	for _, l := range all {
		missing = missing || r.possible(l.cond) && !l.known()
	}
	if missing {
		r.out = append(r.out, unchecked(model.Unchecked{What: "whether " + bandName(b) + " is as long as what it goes along, which is not drawn or not said everywhere", Span: b.decl.Span}))
	}
}

func bandName(b *band) string {
	if b.bit != nil && b.bit.ID == "" {
		return "the " + lower(plain(b.bit.Strip.Name))
	}
	return "the " + lower(plain(b.decl.Name))
}

// judgements are what is looked for: of a zip, of elastic in a casing, and of all else.
func (b *band) judgements() []judged {
	draws, sides := false, b.notion != nil && len(b.notion.Parts) > 0
	for _, u := range b.uses {
		draws = draws || u.draws
	}
	switch {
	case sides:
		return []judged{b.zip()}
	case b.notion != nil && b.notion.Word == "elastic":
		if draws {
			return b.elastic()
		}
		return nil // sewn on stretched, by an amount that is not said
	}
	short := judged{"band-too-short", false, func(need, have float64) float64 { return need - have - max(rowsDifferMM, rowsDifferPart*need) },
		"%s is too short%s: it is %s long, and goes along %s.", "Buy or cut more, with about 1 cm for each end; or mend the drawing."}
	if draws {
		short.help = "Buy more, with what hangs out at each end; or mend the drawing."
		return []judged{short}
	}
	ends := judged{"nothing-for-the-ends", false, func(need, have float64) float64 { return need + 2*endMM - have },
		"%s has nothing left for its ends%s: it is %s long, and goes along %s.", "Add about 1 cm for each end, and 2 cm for each join."}
	long := judged{"band-far-too-long", true, func(need, have float64) float64 { return have - longerPart*need - longerMM },
		"%s is far longer than is needed%s: it is %s long, and goes along %s.", "Mend its length, or see whether an edge that it should bind was left out."}
	if b.other {
		return []judged{short, ends}
	}
	return []judged{short, ends, long}
}

func (b *band) elastic() []judged {
	return []judged{
		{"elastic-out-of-measure", false, func(need, have float64) float64 {
			if have > otherCasings*need {
				return 0
			}
			return have - drawsInPart*need
		}, "%s does not draw in%s: it is %s long, and its casing %s.", "Make it shorter: as a rule it is a little shorter than the body where it lies."},
		{"elastic-out-of-measure", false, func(need, have float64) float64 { return mostDrawnPart*need - have },
			"%s is not half as long as its casing%s: it is %s long, and the casing %s.", "Make it longer, or the casing shorter."},
	}
}

func (b *band) zip() judged {
	return judged{"zip-does-not-fit", false, func(need, have float64) float64 {
		return max(have-need-max(zipOverMM, zipOverPart*need), need-have-max(zipShortMM, zipShortPart*need))
	}, "%s does not fit%s: it is %s long, and the seam that it is caught in %s.", "Mend its length in the table, or the drawing; if it is shortened, say how long it is then."}
}
