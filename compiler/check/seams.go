package check

import (
	"fmt"
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "seam-without-allowance", Severity: finding.Error, Category: "seams", FromAbsence: true, run: noAllowance,
		Purpose: "A seam has no allowance, and the pattern names none.",
		Why:     "Nobody can sew a seam without knowing how far from the edge."})
	register(Rule{ID: "seam-never-sewn", Severity: finding.Error, Category: "seams", FromAbsence: true, ahead: 5, run: neverSewn,
		Purpose: "A declared seam is sewn in no step.",
		Why:     "A step is missing: the garment does not hold together there."})
	register(Rule{ID: "dart-never-sewn", Severity: finding.Error, Category: "seams", FromAbsence: true, ahead: 5, run: dartUnsewn,
		Purpose: "A dart, pleat or tuck is declared and no step sews it.",
		Why:     "The edge stays longer than the one that it is sewn to, and the garment wider than its shape."})
	register(Rule{ID: "seam-sewn-twice", Severity: finding.Error, Category: "seams", whole: true, ahead: 5, run: sewnTwice,
		Purpose: "Two steps sew the same seam.",
		Why:     "The second step asks for something that is done already, so one of them is wrong."})
}

// noAllowance reports seams without an allowance; if the pattern names none, all
// that lack one together.
func noAllowance(r *run) {
	var all []*model.Seam
	any := condition.False
	for _, s := range r.Seams {
		if s.Allow == nil && !s.None && r.possible(s.Cond) {
			all = append(all, s)
			any = r.Space.Or(any, s.Cond)
		}
	}
	if len(all) == 0 {
		return
	}
	f := at(all[0].Span, "no allowance", fmt.Sprintf("%s %s no allowance.", Upper(theSeams(all)), hasOrHave(len(all))),
		"Add `allow 5/8in` to the head of the pattern for every seam, or to this one; `allow none` if there is none on purpose.")
	if len(all) > 1 && r.TitleSpan != (finding.Span{}) {
		f.Place = finding.Place{Span: r.TitleSpan, Label: "no allowance for all seams"}
		f.Help = "Add `allow 5/8in` to the head of the pattern for every seam, or give each its own; `allow none` if there is none on purpose."
	}
	r.report(any, f, seamSpans(all)...)
}

func hasOrHave(n int) string {
	if n == 1 {
		return "has"
	}
	return "have"
}

func seamSpans(seams []*model.Seam) (all []finding.Span) {
	for _, s := range seams {
		all = append(all, s.Span)
	}
	return
}

// unsewn is a seam that is not sewn, or not to its ends.
type unsewn struct {
	seam *model.Seam
	bad  condition.Cond
	part bool       // some of it is sewn there
	side model.Side // only this side is missing
}

// neverSewn reports seams that no step sews; those that are missing in the same
// garments together.
func neverSewn(r *run) {
	groups := map[condition.Cond][]unsewn{}
	var order []condition.Cond
	for _, s := range r.Seams {
		x, ok := r.missing(s)
		switch {
		case !ok:
		case x.part || x.side != model.Neither:
			r.reportUnsewn([]unsewn{x})
		default:
			if groups[x.bad] == nil {
				order = append(order, x.bad)
			}
			groups[x.bad] = append(groups[x.bad], x)
		}
	}
	for _, c := range order {
		r.reportUnsewn(groups[c])
	}
}

// missing adds up what the steps sew of a seam.
func (r *run) missing(s *model.Seam) (unsewn, bool) {
	x := unsewn{seam: s}
	var bySide [3]condition.Cond
	sewn := condition.False
	for _, j := range s.Copies {
		list, steps, known := r.stretches(s, j)
		if !known {
			r.out = append(r.out, unchecked(model.Unchecked{What: "whether every stretch of the " + s.Called() + " is sewn", Span: s.Span}))
			return x, false
		}
		for i := range steps {
			done := condition.False
			for _, y := range list {
				sewn = r.Space.Or(sewn, y.cond)
				if y.first <= i && i < y.end {
					done = r.Space.Or(done, y.cond)
				}
			}
			bySide[j.Side] = r.Space.Or(bySide[j.Side], r.Space.Diff(j.Cond, done))
		}
		bySide[j.Side] = r.Space.Diff(bySide[j.Side], r.doubt(s))
		x.bad = r.Space.And(r.Space.Or(x.bad, bySide[j.Side]), r.Valid)
	}
	for _, side := range []model.Side{model.Left, model.Right} {
		if r.possible(bySide[side]) && !r.possible(bySide[side.Other()]) && len(s.Copies) > 1 {
			x.side = side
		}
	}
	x.part = x.side == model.Neither && r.possible(r.Space.And(x.bad, sewn))
	return x, r.possible(x.bad)
}

func (r *run) reportUnsewn(list []unsewn) {
	var seams []*model.Seam
	for _, x := range list {
		seams = append(seams, x.seam)
	}
	first := list[0]
	f := at(first.seam.Span, "declared here", fmt.Sprintf("%s %s never sewn.", Upper(theSeams(seams)), isOrAre(len(seams))), fmt.Sprintf("Add `%s` to a step.", sewThem(seams)))
	switch {
	case first.part:
		f.Headline = fmt.Sprintf("A part of the %s is never sewn.", first.seam.Called())
		f.Help = "The stretches that the steps sew do not reach from end to end. If a slit stays open, divide the edge with a mark and let the seam join one part: `edges …, slit, mark slit-end, centre, …`."
	case first.side != model.Neither:
		f.Headline = fmt.Sprintf("The %s is never sewn on the %s side.", first.seam.Called(), first.side)
		f.Help = fmt.Sprintf("Write `sew %s` without a side, or sew the other side in a step as well.", first.seam.ID)
	case r.where(first.bad) != "":
		f.Help = fmt.Sprintf("Add `%s` to a step that applies then, or guard the seam or its pieces with `when`.", sewThem(seams))
	}
	for _, d := range r.deeds().seam[first.seam] {
		if d.on.Seam == first.seam && oneOf(d.op.Verb, []string{"slipstitch", "fell", "close"}) {
			f = also(f, d.op.Span, "closes what is not sewn yet")
			f.Help = fmt.Sprintf("If this is how it is joined, write `sew %s by hand` here.", first.seam.ID)
		}
	}
	for _, s := range seams[1:] {
		f = also(f, s.Span, "and this")
	}
	r.report(first.bad, f, seamSpans(seams[1:])...)
	for _, s := range seams {
		r.tell(s, first.bad)
		for _, u := range s.Uses() {
			r.tell(u.Instance, first.bad)
		}
		for _, k := range s.Catching {
			for _, i := range k.Target.Instances {
				r.tell(i, first.bad)
			}
		}
	}
}

// sewThem writes the operation that sews some seams.
func sewThem(seams []*model.Seam) string {
	var all []string
	for _, s := range seams {
		all = append(all, s.ID)
	}
	return "sew " + strings.Join(all, ", ")
}

func dartUnsewn(r *run) {
	for _, x := range r.Shapings {
		sewn := condition.False
		for _, op := range r.Ops() {
			for _, o := range op.Objects {
				if o.Shaping == x && (op.Row.Sews || op.Verb == x.Kind || op.Verb == "baste" || op.Verb == "stitch" || op.Verb == "fold" || op.Verb == "press" && x.Kind != "dart" && op.Phrase("toward") == nil) {
					sewn = r.Space.Or(sewn, op.Cond)
				}
			}
		}
		r.report(r.Space.Diff(x.Cond, sewn), at(x.Span, "declared here", fmt.Sprintf("The %s is never sewn.", shapingName(x)),
			fmt.Sprintf("Add `sew %s` to a step before its edge is sewn to another.", x.ID)))
	}
}

// shapingName names a dart, pleat or tuck: the back dart.
func shapingName(x *model.Shaping) string {
	if strings.HasSuffix(x.Name, x.Kind) {
		return lower(x.Name)
	}
	return x.Kind + " " + lower(x.Name)
}

func sewnTwice(r *run) {
	for _, s := range r.Seams {
		done := map[[2]*model.Op]bool{}
		for _, j := range s.Copies {
			list, _, _ := r.stretches(s, j)
			for i, x := range list {
				for _, y := range list[:i] {
					if y.first >= x.end || x.first >= y.end || done[[2]*model.Op{x.op, y.op}] {
						continue
					}
					done[[2]*model.Op{x.op, y.op}] = true
					both := r.Space.Diff(r.Space.And(x.cond, y.cond), r.doubt(s))
					f := at(x.op.Span, "sewn again", fmt.Sprintf("The %s is sewn twice.", s.Called()),
						"Take one of them out, say which stretch each sews (`from … to …`), or guard them so that only one applies.")
					r.report(both, also(f, y.op.Span, "sewn here first"))
					r.tell(s, both)
				}
			}
		}
	}
}
