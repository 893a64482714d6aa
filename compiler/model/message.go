package model

import (
	"fmt"
	"slices"
	"sort"
	"strings"

	"seamwarden/compiler/size"
	"seamwarden/dsl"
	"seamwarden/dsl/finding"
)

// All wording of this phase stands here, one constructor for each mistake.

func wrong(rule string, at finding.Span, label, headline, help string) finding.Finding {
	return finding.Finding{Rule: rule, Severity: finding.Error, Headline: headline, Place: finding.Place{Span: at, Label: label}, Help: help}
}

func related(f finding.Finding, at finding.Span, label string) finding.Finding {
	f.Related = append(f.Related, finding.Place{Span: at, Label: label})
	return f
}

// near suggests the name that a misspelt one most likely means, or lists what
// there is if that is little.
func near(name string, known []string) string {
	if n := finding.Nearest(name, known); n != "" {
		return fmt.Sprintf("Did you mean `%s`?", n)
	}
	list := unique(known)
	if len(list) == 0 || len(list) > 8 {
		return ""
	}
	return "There is " + enumerate(list) + "."
}

func unique(in []string) (out []string) {
	sort.Strings(in)
	for i, s := range in {
		if s != "" && (i == 0 || s != in[i-1]) {
			out = append(out, s)
		}
	}
	return
}

func enumerate(list []string) string {
	for i := range list {
		list[i] = "`" + list[i] + "`"
	}
	if len(list) < 2 {
		return strings.Join(list, "")
	}
	return strings.Join(list[:len(list)-1], ", ") + " and " + list[len(list)-1]
}

func declaredTwice(what string, d, old *Decl) finding.Finding {
	f := wrong("name-declared-twice", d.Span, "declared again", fmt.Sprintf("The name `%s` is declared twice.", d.ID),
		"Give one of them another name; a reference could mean either.")
	return related(f, old.Span, "declared here first")
}

func patternTwice(at, first finding.Span) finding.Finding {
	return related(wrong("name-declared-twice", at, "", "The pattern has two heads.", "A folder holds one pattern: keep one `pattern` block."), first, "the first one")
}

func badMeasure(at finding.Span, err error) finding.Finding {
	return wrong("measure-not-understood", at, "", sentenceOf(err.Error()), "Measures are written like 5/8in, 1 1/2in, 1.5cm, 15mm, 2yd or 2m.")
}

func sentenceOf(s string) string {
	if s == "" {
		return s
	}
	s = strings.ToUpper(s[:1]) + s[1:]
	if !strings.ContainsAny(s[len(s)-1:], ".?!") {
		s += "."
	}
	return s
}

func badCount(at finding.Span, text string) finding.Finding {
	return wrong("count-not-understood", at, "", fmt.Sprintf("%s is not a number of things.", text), "Write a whole number from 1 to 9999.")
}

func choiceTooSmall(c *Choice) finding.Finding {
	return wrong("choice-too-small", c.Span, "", fmt.Sprintf("The choice `%s` offers fewer than two ways.", c.ID),
		"List the ways in braces, with their words: { turned \"turned under\", bound \"bound with tape\" }. For something to leave out, use `option`.")
}

func unknownGuard(a *dsl.GuardAtom, known []string, way *Choice) finding.Finding {
	f := wrong("name-unknown", dsl.SpanOf(a.Tokens), "", fmt.Sprintf("`%s` is no view, option or choice of this pattern.", a.Name), near(a.Name, known))
	if way != nil {
		f.Help = fmt.Sprintf("It is a way of the choice `%s`: write `when %s is %s`.", way.ID, way.ID, a.Name)
	}
	return f
}

func isWithoutChoice(a *dsl.GuardAtom, d *Decl) finding.Finding {
	return related(wrong("guard-not-understood", dsl.SpanOf(a.Tokens), "", fmt.Sprintf("`%s` is no choice, so `is %s` says nothing.", a.Name, a.Is),
		fmt.Sprintf("Write `when %s` or `when not %s`.", a.Name, a.Name)), d.Span, "declared here")
}

func choiceWithoutIs(a *dsl.GuardAtom, c *Choice) finding.Finding {
	return related(wrong("guard-not-understood", dsl.SpanOf(a.Tokens), "which way?", fmt.Sprintf("`%s` is a choice; a guard says which way.", a.Name),
		fmt.Sprintf("Write `when %s is %s`.", c.ID, c.Values[0].ID)), c.Span, "declared here")
}

func unknownWay(a *dsl.GuardAtom, c *Choice) finding.Finding {
	return related(wrong("name-unknown", dsl.SpanOf(a.Tokens), "", fmt.Sprintf("The choice `%s` has no way called `%s`.", c.ID, a.Is),
		near(a.Is, ids(c.Values, func(d Decl) string { return d.ID }))), c.Span, "declared here")
}

func unknownName(at finding.Span, name string, known []string, elsewhere string) finding.Finding {
	help := sentenceOf(elsewhere)
	if help == "" && slices.Contains(Techniques, name) {
		help = "It is a way of stitching, and stands after `with`."
	}
	if help == "" {
		help = near(name, known)
	}
	if help == "" {
		help = "Is it spelt as where it is declared?"
	}
	return wrong("name-unknown", at, "", fmt.Sprintf("Nothing called `%s` is declared.", name), help)
}

func unknownMaterial(n *dsl.Name, known []string) finding.Finding {
	f := wrong("name-unknown", dsl.SpanOf(n.Tokens), "", fmt.Sprintf("No fabric or interfacing called `%s` is declared.", n.Text), near(n.Text, known))
	if f.Help == "" {
		f.Help = fmt.Sprintf("Declare it: fabric %s \"…\" { widths 45in }.", n.Text)
	}
	return f
}

func unknownEdge(at finding.Span, name string, p *Piece) finding.Finding {
	return wrong("name-unknown", at, "", fmt.Sprintf("The piece %s has no edge called `%s`.", p.Name, name), near(name, ids(p.Edges, func(e *Edge) string { return e.ID })))
}

func noSuchPart(at finding.Span, path, of, part string, known []string) finding.Finding {
	return wrong("name-unknown", at, "", fmt.Sprintf("`%s`: %s has no `%s`.", path, upTo(of), part), near(part, known))
}

func upTo(s string) string { return s }

func noSides(at finding.Span, p *Piece, w string) finding.Finding {
	f := wrong("side-of-a-single", at, "", fmt.Sprintf("%s has no %s one: it is not cut as a pair.", p.Name, w),
		fmt.Sprintf("Cut it `mirrored` for a left and a right one, or leave `.%s` out.", w))
	if len(p.Cuts) > 0 {
		f = related(f, p.Cuts[0].Span, "cut here")
	}
	return f
}

func notASizeRow(at finding.Span, path string) finding.Finding {
	return wrong("name-unknown", at, "", fmt.Sprintf("`%s` is no row of the size table.", path), "Write sizes.ROW, with a row of the size table.")
}

func noSizeTable(at finding.Span, row string) finding.Finding {
	return wrong("name-unknown", at, "", fmt.Sprintf("`%s` is a row of a size table, and this pattern has none.", row), "Name it in the head: sizes \"sizes.yaml\".")
}

func unknownSizeRow(at finding.Span, row string, known []string) finding.Finding {
	return wrong("name-unknown", at, "", fmt.Sprintf("The size table has no row called `%s`.", row), near(row, known))
}

func foldAndMirrored(c *Cut) finding.Finding {
	return wrong("cut-contradicts-itself", c.Span, "", fmt.Sprintf("%s is cut on the fold and mirrored at once.", c.Piece.Name),
		"On the fold gives one whole piece; mirrored gives a left and a right one. Keep the one you mean.")
}

func mirroredAndAlike(c *Cut) finding.Finding {
	return wrong("cut-contradicts-itself", c.Span, "", fmt.Sprintf("%s is cut mirrored and alike at once.", c.Piece.Name), "Keep the one you mean.")
}

func mirroredOneSideUp(c *Cut) finding.Finding {
	return wrong("cut-contradicts-itself", c.Span, "", fmt.Sprintf("%s is cut mirrored, and yet all with the same side up.", c.Piece.Name),
		"A mirrored pair is cut with one of each side up. Keep the one you mean.")
}

func oddMirrored(c *Cut) finding.Finding {
	return wrong("odd-number-mirrored", c.CountSpan, "an odd number", fmt.Sprintf("%d of %s cannot be cut mirrored: pairs come in twos.", c.Count, c.Piece.Name),
		"Change the number, or say which side is up if it is a single piece.")
}

func namesAndCount(c *Cut, want int) finding.Finding {
	how := "one for each name"
	if c.Lay.Mirrored {
		how = "a left and a right one for each name"
	}
	help := "Change the number or the names after `as`."
	if !c.Lay.Mirrored && c.Count == 2*want {
		help += " For a left and a right one of each name, write `mirrored` before `as`."
	}
	return wrong("cut-names-and-number", c.CountSpan, fmt.Sprintf("%d here", c.Count),
		fmt.Sprintf("%d of %s are cut, and the names ask for %d: %s.", c.Count, c.Piece.Name, want, how), help)
}

func pairsWithoutNames(c *Cut) finding.Finding {
	return wrong("cut-names-and-number", c.CountSpan, "which pair is which?", fmt.Sprintf("%d of %s cut mirrored are %d pairs without names.", c.Count, c.Piece.Name, c.Count/2),
		"Name the pairs, so that a step can say which it means: `mirrored as upper, under`.")
}

func glueOnCloth(c *Cut) finding.Finding {
	return related(wrong("glue-side-on-cloth", c.Span, "", fmt.Sprintf("%s has no glue side.", c.Material.Name),
		"Only interfacing has a glue side. Say `right side up` or `wrong side up`."), c.Material.Span, "declared here")
}

func seamOfNoEdge(s *Seam, t *Target) finding.Finding {
	help := "A seam joins edges: write PIECE.EDGE."
	if t.Kind == ToPiece && len(t.Piece.Edges) > 0 {
		help = fmt.Sprintf("Say which edge: `%s.%s`.", t.Path, t.Piece.Edges[0].ID)
	}
	return wrong("seam-joins-no-edge", t.Span, "no edge", fmt.Sprintf("The %s joins %s, which is no edge.", s.Called(), t.describe()), help)
}

func seamNowhere(s *Seam) finding.Finding {
	f := wrong("never-applies", s.Span, "", fmt.Sprintf("The %s joins pieces that are never there at the same time.", s.Called()), "Look at the guards of its pieces and its own.")
	for _, t := range append(append([]*Target(nil), s.Joins...), s.To...) {
		if sp := t.span(); sp != (finding.Span{}) {
			f = related(f, sp, t.describe())
		}
	}
	return f
}

func whichCopy(s *Seam, t *Target) finding.Finding {
	var names []string
	t.each(func(x *Target) {
		for _, i := range x.Instances {
			switch {
			case i.Copy != "":
				names = append(names, i.Copy)
			case i.Piece.mixed():
				names = append(names, i.Cut.Material.ID)
			}
		}
	})
	help := "Give the copies names in the cut line: `as upper, under`."
	if list := unique(names); len(list) > 0 {
		first := splitPath(t.Path)
		help = fmt.Sprintf("Say which: `%s`. For the same seam in several, add `in %s` at its end.", join(append([]string{first[0], list[0]}, first[1:]...)), strings.Join(list, ", "))
	}
	f := wrong("seam-of-several-copies", t.Span, "which one?", fmt.Sprintf("`%s` in the %s means several pieces at once.", t.Path, s.Called()), help)
	if len(names) == 0 && len(t.Instances) > 1 {
		c := t.Instances[0].Cut
		f.Headline = fmt.Sprintf("`%s` in the %s means %d pieces at once.", t.Path, s.Called(), len(t.Instances))
		f.Help = "Cut one, or give the copies names in the cut line: `as upper, under`."
		f = related(f, c.CountSpan, fmt.Sprintf("%d are cut", c.Count))
	}
	return f
}

func pairInRow(s *Seam, all []*Target) finding.Finding {
	var pair *Target
	for _, t := range all {
		if len(onSide(t.Uses, Left)) > 0 && len(onSide(t.Uses, Right)) > 0 {
			pair = t
			break
		}
	}
	parts := splitPath(pair.Path)
	l := join(append([]string{parts[0], "left"}, parts[1:]...))
	r := join(append([]string{parts[0], "right"}, parts[1:]...))
	return wrong("pair-in-a-row", pair.Span, "a left and a right one", fmt.Sprintf("`%s` is a pair, and the %s does not say where each of the two goes.", pair.Path, s.Called()),
		fmt.Sprintf("Name them in their places: `%s` and `%s`.", l, r))
}

// singleForPair adds that the other piece, cut once, may be what is wrong.
func singleForPair(f finding.Finding, p *Piece) finding.Finding {
	f.Headline = strings.TrimSuffix(f.Headline, ".") + fmt.Sprintf(": of %s there is only one.", p.Name)
	for _, c := range p.Cuts {
		if c.Lay.Fold {
			f.Help += fmt.Sprintf(" Or look at the fold of %s: an edge that ends at the fold is one edge, and the others are there on both halves.", p.Name)
		} else {
			f.Help += fmt.Sprintf(" Or cut %s on the fold or mirrored, if it has both sides.", p.Name)
		}
		return related(f, c.Span, "cut here")
	}
	return f
}

func notASide(at finding.Span, path string) finding.Finding {
	return wrong("side-not-understood", at, "", fmt.Sprintf("`on %s only` names no side.", path), "Write `on left only` or `on right only`.")
}

func nothingToActOn(o *Op, at finding.Span) finding.Finding {
	return wrong("operation-without-object", at, "", fmt.Sprintf("`%s` does not say what to %s.", o.Verb, o.Verb), "Name a seam, an edge or a piece after it.")
}

var kindNames = map[TargetKind]string{ToSeam: "a seam", ToPiece: "a piece", ToEdge: "an edge", ToPartEdge: "an edge", ToMark: "a mark", ToNotion: "a notion",
	ToBit: "a strip", ToPart: "a part", ToGap: "an opening", ToShaping: "a dart or pleat", ToMaterial: "a material", ToSide: "a side"}

func wrongKind(o *Op, t *Target) finding.Finding {
	var can []string
	for _, k := range o.Row.On {
		can = append(can, kindNames[k])
	}
	can = uniqueInOrder(can)
	f := wrong("operation-on-the-wrong-thing", t.Span, kindNames[t.Kind], fmt.Sprintf("`%s` does not go with %s.", o.Verb, t.describe()),
		fmt.Sprintf("It goes with %s.", orList(can)))
	if o.Verb == "sew" && t.Kind == ToEdge {
		f.Help = "Edges are sewn by their seam: declare `seam NAME joins EDGE to EDGE` and write `sew NAME`."
	}
	return related(f, t.span(), "declared here")
}

func uniqueInOrder(in []string) (out []string) {
	seen := map[string]bool{}
	for _, s := range in {
		if !seen[s] {
			seen[s] = true
			out = append(out, s)
		}
	}
	return
}

func orList(list []string) string {
	if len(list) < 2 {
		return strings.Join(list, "")
	}
	return strings.Join(list[:len(list)-1], ", ") + " or " + list[len(list)-1]
}

func emptyBrace(br *Brace) finding.Finding {
	return wrong("brace-names-nothing", br.Span, "", "These braces fetch nothing.", "Write what to fetch, such as {allow side}; for a brace in the text itself write \\{.")
}

func unknownBrace(br *Brace) finding.Finding {
	var known []string
	for w := range BraceWords {
		known = append(known, w)
	}
	help := near(br.Word, known)
	if help == "" {
		sort.Strings(known)
		help = "Text can fetch: " + strings.Join(known, ", ") + "."
	}
	return wrong("brace-names-nothing", br.Span, "", fmt.Sprintf("Text cannot fetch `%s`.", br.Word), help)
}

func braceArgs(br *Brace, want string) finding.Finding {
	shape := strings.TrimSpace("{" + br.Word + " " + want)
	return wrong("brace-names-nothing", br.Span, "", fmt.Sprintf("{%s} is written so: %s}.", br.Word, shape), "")
}

func braceNothing(br *Brace, name string, known []string) finding.Finding {
	return wrong("brace-names-nothing", br.Span, "", fmt.Sprintf("There is no %s called `%s`.", br.Word, name), near(name, known))
}

func braceKind(br *Brace, name, want string) finding.Finding {
	return wrong("brace-names-nothing", br.Span, "", fmt.Sprintf("`%s` is no %s.", name, strings.ToLower(want)), fmt.Sprintf("{%s …} takes a %s.", br.Word, strings.ToLower(want)))
}

func absentInText(br *Brace, what string, declared finding.Span) finding.Finding {
	f := wrong("text-names-what-is-absent", br.Span, "", fmt.Sprintf("The text speaks of %s where there is none.", what),
		"Put the sentence in a block of its own with the same guard, or widen the guard of what it names.")
	return related(f, declared, "declared here")
}

func changeWithoutText(t Text) finding.Finding {
	return wrong("term-without-explanation", t.Span, "", fmt.Sprintf("What edition %s changed is not said.", t.Text), "Write it after the edition: change \"1.1\" \"The pockets are deeper.\"")
}

func noValue(br *Brace, t *Target) finding.Finding {
	return wrong("brace-names-nothing", br.Span, "", fmt.Sprintf("There is no %s to fetch: %s does not say it.", br.Word, t.describe()), "Declare it where the thing is declared, or leave these braces out.")
}

func termWithoutText(t Text) finding.Finding {
	return wrong("term-without-explanation", t.Span, "", fmt.Sprintf("The word “%s” is not explained.", t.Text), "Write its explanation after it: word \"clip\" \"Snip into the allowance.\"")
}

func unknownView(id *dsl.ViewID, known []string) finding.Finding {
	f := wrong("name-unknown", dsl.SpanOf(id.Tokens), "", fmt.Sprintf("This pattern has no view %s.", id.Text), near(id.Text, known))
	if f.Help == "" {
		f.Help = oneOfThese("Its views are ", known, "Leave out `in view`.")
	}
	return f
}

func unknownSize(id *dsl.ViewID, known []string) finding.Finding {
	f := wrong("name-unknown", dsl.SpanOf(id.Tokens), "", fmt.Sprintf("This pattern has no size %s.", id.Text), near(id.Text, known))
	if f.Help == "" {
		f.Help = oneOfThese("Its sizes are ", known, "Leave out `size`, or name a table of sizes in the head.")
	}
	return f
}

// oneOfThese lists what there is, or says what to do if there is nothing.
func oneOfThese(before string, known []string, none string) string {
	if len(known) == 0 {
		return none
	}
	return before + strings.Join(known, ", ") + "."
}

func badSpare(n *dsl.Spare) finding.Finding {
	return finding.Finding{Rule: "measure-not-understood", Severity: finding.Error, Place: finding.Place{Span: dsl.SpanOf(n.By.Tokens), Label: "not per cent"},
		Headline: fmt.Sprintf("%s is not how much cloth is to spare.", n.By.Text), Help: "Write it in whole per cent, at most 100: spare 15%."}
}

func unknownCloth(r *size.Row, known []string) finding.Finding {
	return wrong("name-unknown", r.OfSpan, "", fmt.Sprintf("No fabric or interfacing called `%s` is declared.", r.Of), near(r.Of, known))
}
