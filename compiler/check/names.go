package check

import (
	"fmt"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

func init() {
	register(Rule{ID: "name-never-used", Severity: finding.Warning, Category: "names", FromAbsence: true, run: neverNamed,
		Purpose: "An option, a choice, an opening or a part is declared and nothing refers to it.",
		Why:     "Either a guard is missing, so that the choice changes nothing, or the declaration is left over."})
	register(Rule{ID: "text-names-what-is-absent", Severity: finding.Error, Category: "names", run: absent,
		Purpose: "A text refers to a piece, step or seam in garments that do not have it.",
		Why:     "Somebody reads of a piece that she was not told to cut."})
	register(Rule{ID: "pattern-without-head", Severity: finding.Error, Category: "names", FromAbsence: true, run: headless,
		Purpose: "The pattern has no title.",
		Why:     "A booklet needs a name."})
	register(Rule{ID: "figure-without-words", Severity: finding.Warning, Category: "names", run: wordless,
		Purpose: "A figure has no description.",
		Why:     "Who cannot see the figure, or prints it too small, has only the words."})
}

func neverNamed(r *run) {
	say := func(d *model.Decl, what, help string) {
		if !d.Used {
			r.report(d.Cond, at(d.Span, "nothing refers to it", fmt.Sprintf("The %s `%s` is declared and never used.", what, d.ID), help))
		}
	}
	for _, o := range r.Options {
		say(&o.Decl, "option", fmt.Sprintf("Guard what belongs to it with `when %s`, or take it out.", o.ID))
	}
	for _, c := range r.Choices {
		say(&c.Decl, "choice", fmt.Sprintf("Guard what belongs to each way with `when %s is %s`, or take it out.", c.ID, c.Values[0].ID))
	}
	for _, p := range r.Parts {
		say(&p.Decl, "part", "Sew it on by one of its edges, or take it out.")
	}
	for _, g := range r.Gaps {
		if !g.Used {
			r.report(g.Cond, at(g.Span, "never closed", fmt.Sprintf("The opening `%s` is left and never used or closed.", g.ID), fmt.Sprintf("Close it in a later step: slipstitch %s.", g.ID)))
		}
	}
}

func absent(r *run) {
	for _, a := range r.Absences {
		if r.lostIn(a.Finding.Place.Span) {
			continue
		}
		f := a.Finding
		f.Why = r.rule.Why
		r.report(a.Cond, f)
	}
}

// lostIn reports whether a text fetches at a place what no garment has, or a seam
// of which it could not be worked out what it joins. That is reported already.
func (r *run) lostIn(at finding.Span) bool {
	for _, p := range r.Proses {
		for _, br := range p.Braces {
			if br.Span == at && br.Target != nil && (!r.possible(br.Target.Cond) || br.Target.Seam != nil && len(br.Target.Seam.Copies) == 0) {
				return true
			}
		}
	}
	return false
}

func headless(r *run) {
	if r.Title == "" {
		r.report(condition.True, at(finding.Span{File: "pattern.seam"}, "", "The pattern has no title.", `Begin pattern.seam with: pattern "Title" { … }.`))
	}
}

func wordless(r *run) {
	say := func(f *model.Figure) {
		if f.Label.Text == "" {
			r.report(f.Cond, at(f.File.Span, "no words", "This figure has no description.", `Say what it shows after the file: figure "figures/x.svg" "The facing lies on the front, right sides together."`))
		}
	}
	for _, v := range r.Views {
		for _, f := range v.Figures {
			say(f)
		}
	}
	for _, s := range r.Steps() {
		for _, i := range s.Items {
			if f, ok := i.(*model.Figure); ok {
				say(f)
			}
		}
	}
}
