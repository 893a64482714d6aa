package check

import (
	"fmt"
	"slices"
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/measure"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

// These rules hold the author's text against what is declared.
func init() {
	register(Rule{ID: "measure-not-declared", Severity: finding.Warning, Category: "prose", whole: true, run: bareMeasures,
		Purpose: "A measure in the text of a step is none that the step declares.",
		Why:     "When an allowance changes, a number that was typed by hand stays as it was, and the sewist reads two that differ."})
	register(Rule{ID: "number-typed-by-hand", Severity: finding.Warning, Category: "prose", run: typedNumbers,
		Purpose: "The text refers to a step, piece or figure by a number that was typed.",
		Why:     "Steps are numbered for each garment, so a number that was typed is wrong for somebody today and for all after the next change."})
	register(Rule{ID: "text-says-the-other-side", Severity: finding.Error, Category: "prose", whole: true, run: otherSide,
		Purpose: "The text of a step speaks of the left piece where the step works on the right one only, or the other way round.",
		Why:     "Text and operation cannot both be right, and the sewist does not know which to believe."})
	register(Rule{ID: "term-not-explained", Severity: finding.Advice, Category: "prose", run: unexplained,
		Purpose: "A term of the trade is used and the glossary does not explain it.",
		Why:     "Whoever sews her second garment does not know it, and stops."})
}

// stepText is a text of a step with the place of each part of it.
type stepText struct {
	step *model.Step
	text string
	cond condition.Cond
	at   func(start, end int) finding.Span
}

// stepTexts lists the texts that stand in steps. They are gathered once.
func (r *run) stepTexts() []stepText {
	if r.index.texts == nil {
		r.index.texts = slices.Clip(textsIn(r.Steps()))
	}
	return r.index.texts
}

func textsIn(steps []*model.Step) (all []stepText) {
	add := func(s *model.Step, p *model.Prose) {
		if p != nil {
			all = append(all, stepText{s, p.Text, p.Cond, placesIn(p)})
		}
	}
	for _, s := range steps {
		for _, i := range s.Items {
			switch x := i.(type) {
			case *model.Prose:
				add(s, x)
			case *model.TryOn:
				add(s, x.Body)
			case *model.Op:
				if x.Instead != nil {
					all = append(all, stepText{s, x.Instead.Text, x.Cond, placesIn(x.Instead)})
				}
			}
		}
	}
	return
}

// placesIn gives the place of a stretch of a text: the same words in its source,
// or the whole of it where they cannot be found.
func placesIn(p *model.Prose) func(int, int) finding.Span {
	return func(start, end int) finding.Span {
		what := p.Text[start:end]
		before := strings.Count(p.Text[:start], what)
		from := 0
		for range before + 1 {
			i := strings.Index(p.Source[from:], what)
			if i < 0 {
				return p.Span
			}
			from += i + len(what)
		}
		return p.At(from-len(what), from)
	}
}

// bareMeasures compares the measures in a step's text with those that it
// declares: of its operations, of its seams, and of its openings and darts.
func bareMeasures(r *run) {
	for _, t := range r.stepTexts() {
		found := measure.FindAll(t.text)
		if len(found) == 0 {
			continue
		}
		declared := r.declaredIn(t.step)
		clash := map[int]bool{} // the halves of a pair that disagrees are reported as such
		for _, p := range measure.FindPairs(t.text) {
			if !p.Agrees() {
				clash[p.Imperial.Start], clash[p.Metric.Start] = true, true
			}
		}
		for _, m := range found {
			if m.Err != nil || m.Doubtful || clash[m.Start] || declared[m.Length] || agreesWithAny(declared, m.Measure) || strings.HasPrefix(t.text[m.End:], " apart") {
				continue // how far apart lines lie can be said in words alone
			}
			f := at(t.at(m.Start, m.End), "declared nowhere in this step", fmt.Sprintf("The text says %s, and nothing in this step measures so.", t.text[m.Start:m.End]),
				"Fetch the measure with braces, such as {allow SEAM} or {wide OPENING}; or say it in the operation. For a length that is only about so, use words: a hand's width.")
			r.report(r.unsaid(t.text, t.cond), f)
		}
	}
}

func agreesWithAny(declared map[measure.Length]bool, m measure.Measure) bool {
	for l := range declared {
		other := measure.Measure{Length: l, Unit: measure.Inch}
		if m.Unit.System() == measure.Imperial {
			other.Unit = measure.Centimetre
			if measure.PairAgrees(m, other) {
				return true
			}
		} else if measure.PairAgrees(other, m) {
			return true
		}
	}
	return false
}

func (r *run) declaredIn(s *model.Step) map[measure.Length]bool {
	m := map[measure.Length]bool{}
	add := func(a *model.Amount) {
		if a != nil {
			m[a.Length] = true
		}
	}
	add(r.Allow)
	for _, i := range s.Items {
		op, ok := i.(*model.Op)
		if !ok {
			continue
		}
		for _, p := range op.Phrases {
			for k := range p.Amounts {
				add(&p.Amounts[k])
			}
		}
		for _, t := range op.Objects {
			t.Each(func(x *model.Target) {
				switch {
				case x.Seam != nil:
					add(x.Seam.Allow)
					add(x.Seam.AllowTo)
				case x.Shaping != nil:
					add(x.Shaping.Takes)
					add(x.Shaping.Long)
				case x.Gap != nil:
					add(x.Gap.Wide)
				case x.Bit != nil:
					add(x.Bit.Length)
				}
			})
		}
	}
	return m
}

var typedNumber = expression(`(?i)\b(steps?|pieces?|figures?|fig\.)\s+(?:no\.?\s*)?[0-9]+`)

func typedNumbers(r *run) {
	for _, t := range r.stepTexts() {
		if !strings.ContainsAny(t.text, "0123456789") {
			continue // most texts; the expression is slow to try everywhere
		}
		for _, hit := range typedNumber().FindAllStringIndex(t.text, -1) {
			what := t.text[hit[0]:hit[1]]
			help := "Name it in braces: {step NAME} prints the number that the step has for this reader."
			switch strings.ToLower(what[:1]) {
			case "p":
				help = "Name it in braces: {piece NAME} prints its name, {number NAME} its number."
			case "f":
				help = "Figures stand beside their step; say what to look at in words."
			}
			r.report(t.cond, at(t.at(hit[0], hit[1]), "typed by hand", fmt.Sprintf("“%s” is a number that was typed by hand.", what), help))
		}
	}
}

// otherSide looks for "left NAME" in the text of a step that works on the right
// NAME only, and the other way round.
func otherSide(r *run) {
	small := r.smallTexts()
	names := make([]string, len(r.Pieces))
	for i, p := range r.Pieces {
		names[i] = lower(p.Name)
	}
	for n, t := range r.stepTexts() {
		for _, s := range []model.Side{model.Left, model.Right} {
			word := s.String() + " "
			if !strings.Contains(small[n], word) {
				continue
			}
			for k, p := range r.Pieces {
				what := word + names[k]
				i := strings.Index(small[n], what)
				if i < 0 {
					continue
				}
				if worked := sidesWorked(t.step, p); worked[s] || !worked[s.Other()] || worked[model.Neither] {
					continue
				}
				r.report(t.cond, at(t.at(i, i+len(what)), "the step works on the "+s.Other().String()+" one", fmt.Sprintf("The text says %s, and this step works on the %s one only.", what, s.Other()),
					"Change the text or the operation."))
			}
		}
	}
}

// sidesWorked marks the sides of a piece that the operations of a step name.
func sidesWorked(s *model.Step, p *model.Piece) (worked [3]bool) {
	for _, i := range s.Items {
		op, ok := i.(*model.Op)
		if !ok {
			continue
		}
		note := func(x *model.Instance) {
			if x.Piece == p && (op.Only == model.Neither || x.Side == op.Only) {
				worked[x.Side] = true
			}
		}
		each := func(t *model.Target) {
			for _, x := range t.Instances {
				note(x)
			}
			if t.Seam != nil {
				for _, u := range t.Seam.Uses() {
					note(u.Instance)
				}
			}
		}
		for _, o := range op.Objects {
			o.Each(each)
		}
		for _, ph := range op.Phrases {
			for _, o := range ph.Targets {
				o.Each(each)
			}
		}
	}
	return worked
}

// terms are the operations whose names a beginner does not know.
var terms = map[string]string{"understitch": "understitch", "staystitch": "staystitch", "edgestitch": "edgestitch", "topstitch": "topstitch", "grade": "grade", "baste": "baste",
	"notch out": "notch", "slipstitch": "slipstitch", "ditch": "ditch", "fell": "fell", "miter": "miter", "shirr": "shirr", "bar-tack": "bar tack", "tack": "tack"}

// unexplained advises an entry of the glossary for each term that is used first
// in a step.
func unexplained(r *run) {
	known := ""
	for _, t := range r.Terms {
		known += " " + strings.ToLower(t.Word.Text)
	}
	said := map[string]bool{}
	for _, op := range r.Ops() {
		term := terms[op.Verb]
		if term == "" || said[term] || strings.Contains(known, term) || strings.Contains(known, strings.ReplaceAll(term, " ", "-")) {
			continue
		}
		said[term] = true
		if op.Verb == "notch out" {
			term = op.Verb // to tell it from the notch that is a mark
		}
		r.report(op.Cond, at(op.Span, "used here first", fmt.Sprintf("The glossary does not explain “%s”.", term), fmt.Sprintf("Add: word %q \"…\" at the top of a file.", term)))
	}
}
