package dsl

import (
	"fmt"
	"strings"

	"seamwarden/dsl/finding"
)

// slipEndsOpen: edges waist, side,
func slipEndsOpen(c *slip) *said {
	last := len(c.head) - 1
	if c.at < last || c.at == last && !c.head[last].Is(",") {
		return nil
	}
	switch t := c.head[last]; {
	case t.Is(","):
		return &said{fmt.Sprintf("The `%s` sentence ends with a comma.", c.name()), "nothing follows it", "Delete it, or write what was to follow.", last, 0}
	case t.Is("or"), t.Is("and"), t.Is("not"), t.Is("when"), t.Is("is"):
		return &said{fmt.Sprintf("Nothing follows `%s`.", t.Text), "something is missing after this", "A guard names a view, an option, or a choice with its value: when A or pockets.", last, 0}
	case c.hope == "Label":
		return &said{fmt.Sprintf("The `%s` sentence lacks its words in quotation marks.", c.name()), "something is missing after this", c.how(), last, 0}
	case c.name() == "seam" && !hasWord(c.head, "joins"):
		return &said{"This seam does not say what it joins.", "`joins` is missing", c.how(), last, 0}
	case c.name() == "seam" && !hasWord(c.head, "to"):
		return &said{"This seam joins an edge to nothing.", "`to` is missing", c.how(), last, 0}
	}
	return nil
}

// slipGuardWord: piece pocket 7 "Pocket" if pockets
func slipGuardWord(c *slip) *said {
	t := c.tok(c.at)
	switch t.Text {
	case "if", "where", "whenever":
		return &said{fmt.Sprintf("A guard is written with `when`, not with `%s`.", t.Text), "write `when`", "For example: when pockets.", c.at, 0}
	case "unless", "except", "without":
		return &said{fmt.Sprintf("A guard is written with `when not`, not with `%s`.", t.Text), "write `when not`", "For example: when not pockets.", c.at, 0}
	}
	if c.tok(c.at-1).Is("for") && c.wanted() == "each" {
		return &said{"A guard is written with `when`, not with `for`.", "write `when`", "For example: when B.", c.at - 1, 0}
	}
	return nil
}

// slipInGuard: when view B, when A, B
func slipInGuard(c *slip) *said {
	w := c.guardAt()
	t := c.tok(c.at)
	switch {
	case w < 0:
		return nil
	case c.tok(w+1).Is("view") && c.at == w+2:
		return &said{"A guard names a view by its letter alone.", "", fmt.Sprintf("Write: when %s.", shorten(t.Text)), w + 1, w + 1}
	case t.Is(","):
		return &said{"No comma stands in a guard.", "write `or`, or `and`", "`when A or B` holds for both views, `when A and pockets` where both are so.", c.at, 0}
	}
	return nil
}

// slipAfterGuard: piece pocket when pockets 7 "Pocket"
func slipAfterGuard(c *slip) *said {
	w := c.guardAt()
	if w < 0 || c.atEnd() || c.at == w+1 || c.tok(c.at-1).Is("not") || c.tok(c.at-1).Is("is") {
		return nil
	}
	return &said{"The guard comes last; nothing can stand after it.", "stands after the guard", "Move `when` and its condition to the end of the sentence.", c.at, len(c.head) - 1}
}

// slipJoins: seam side back.side to side-panel.side
func slipJoins(c *slip) *said {
	if c.name() != "seam" || hasWord(c.head, "joins") || c.atEnd() {
		return nil
	}
	t := c.tok(c.at)
	if t.Kind == Word && finding.Nearest(t.Text, []string{"joins"}) != "" {
		c.certainly("joins")
		return &said{fmt.Sprintf("A seam is written with `joins`, not with `%s`.", t.Text), "write `joins`", c.how(), c.at, 0}
	}
	if c.at < 2 {
		return nil
	}
	return &said{"The word `joins` is missing from this seam.", "`joins` stands before this", c.how(), c.at, 0}
}

// slipTo: seam side joins back.side and side-panel.side
func slipTo(c *slip) *said {
	t := c.tok(c.at)
	if c.name() != "seam" || hasWord(c.head, "to") || c.wanted() != "to" {
		return nil
	}
	switch t.Text {
	case "and", "with", "onto", "into":
		return &said{fmt.Sprintf("A seam joins one edge `to` the other, not `%s` it.", t.Text), "write `to`", c.how(), c.at, 0}
	}
	return nil
}

// slipFromTo: front.waist lies on band.top from pocket-end
func slipFromTo(c *slip) *said {
	if !c.tok(c.at).Is("from") || c.verb != "" || c.kind == kindMake {
		return nil
	}
	for _, t := range c.head[c.at:] {
		if t.Is("to") {
			return nil
		}
	}
	return &said{"This stretch has no end: `from` one mark `to` another.", "`to` and a mark are missing", c.how(), c.at, 0}
}

// slipOrder: piece 1 back "Back"
func slipOrder(c *slip) *said {
	n, w := c.tok(c.at), c.tok(c.at+1)
	if n.Kind != Number || w.Kind != Word || !c.wantsName() {
		return nil
	}
	return &said{"The name comes before the number.", "", fmt.Sprintf("Write: %s %s %s.", c.name(), w.Text, n.Text), c.at, c.at + 1}
}

// slipNoName: piece "Back"
func slipNoName(c *slip) *said {
	t := c.tok(c.at)
	if c.at != 1 || t.Kind != String && t.Kind != Number || !c.wantsName() {
		return nil
	}
	return &said{fmt.Sprintf("This `%s` has no name.", c.name()), "its name stands before this", c.how(), c.at, 0}
}

// slipCutCount: cut main on fold, cut on fold 1 main
func slipCutCount(c *slip) *said {
	if c.name() != "cut" || c.at != 1 || c.verb != "" {
		return nil
	}
	for _, t := range c.head[1:] {
		if t.Kind == Number {
			return &said{"In a `cut` sentence the count and the material come first.", "comes after them", fmt.Sprintf("Write: cut %s MATERIAL, then how it lies: on fold, mirrored, right side up.", t.Text), 1, 0}
		}
	}
	return &said{"This `cut` sentence does not say how many.", "the count stands before this", "For example: cut 1 main.", 1, 0}
}

// slipCutMaterial: cut 2 mirrored main
func slipCutMaterial(c *slip) *said {
	t := c.tok(2)
	if c.name() != "cut" || c.verb != "" || c.at < 2 {
		return nil
	}
	switch t.Text {
	case "mirrored", "alike", "on", "right", "wrong", "glue":
		return &said{fmt.Sprintf("In a `cut` sentence the material comes before `%s`.", t.Text), "the material stands before this", "For example: cut 2 main mirrored.", 2, 0}
	case "of":
		if c.tok(3).Kind == Measure {
			return &said{"A `cut` sentence of a tape says one length.", "one sentence for each length", "For example: cut 2 of 80cm; cut 2 of 10cm.", c.at, 0}
		}
		return &said{"The word `of` is not needed between count and material.", "one word too many", "For example: cut 2 main.", 2, 0}
	}
	return nil
}

// slipCutInStep: cut 2 main mirrored, in a step
func slipCutInStep(c *slip) *said {
	t := c.tok(c.at)
	if c.verb != "cut" || !t.Is("mirrored") && !t.Is("alike") && !t.Is("side") && !t.Is("fold") {
		return nil
	}
	return &said{"How a piece is cut is not said in a step.", "belongs to a cutting list", "Lines of the cutting list stand inside a piece: piece NAME { cut 2 main mirrored }.", c.at, 0}
}

// slipArticle: sew the side, on the fold
func slipArticle(c *slip) *said {
	for _, i := range []int{c.at, c.at - 1} {
		switch t := c.tok(i); t.Text {
		case "the", "a", "an":
			return &said{fmt.Sprintf("`%s` is not needed here.", t.Text), "one word too many", "Delete it.", i, 0}
		}
	}
	return nil
}

// slipNearWord: press side towards back
func slipNearWord(c *slip) *said {
	t := c.tok(c.at)
	if t.Kind != Word || len(t.Text) < 4 {
		return nil
	}
	near := finding.Nearest(t.Text, c.formWords())
	if near == "" || near == t.Text {
		return nil
	}
	if finding.Sole(t.Text, c.formWords()) == near {
		c.certainly(near)
	}
	return &said{fmt.Sprintf("`%s` is not a word of a `%s` sentence.", t.Text, c.name()), "not known here", fmt.Sprintf("Did you mean `%s`? %s", near, c.how()), c.at, 0}
}

// formWords are the words in small letters of the sentence's form.
func (c *slip) formWords() []string {
	shape := c.form()
	if c.verb != "" {
		for _, p := range strings.Fields(everyVerb) {
			shape += " " + phraseForms[p]
		}
	}
	words := []string{"when", "each"}
	for _, w := range strings.FieldsFunc(shape, func(r rune) bool { return !(r >= 'a' && r <= 'z' || r == '-') }) {
		if len(w) > 1 {
			words = append(words, w)
		}
	}
	return words
}

// slipNewSentence: cut 1 main cut 1 fuse
func slipNewSentence(c *slip) *said {
	if t := c.tok(c.at); c.at == 0 || !begins(c.block, *t, *c.tok(c.at + 1)) {
		return nil
	}
	return &said{fmt.Sprintf("A new sentence seems to begin at `%s`.", c.tok(c.at).Text), "on the same line", "Begin a new line here, or write a semicolon before it.", c.at, 0}
}

// slipNoQuotes: piece back 1 Back
func slipNoQuotes(c *slip) *said {
	t := c.tok(c.at)
	if t.Kind != Word {
		return nil
	}
	first, last := c.at, c.at
	if c.name() == "step" && c.at == 2 {
		first = 1 // the first word was taken for the step's name
	}
	for n := c.tok(last + 1); n.Kind == Word && !n.Is("when") || n.Is("."); n = c.tok(last + 1) {
		last++
	}
	if c.hope == "Label" {
		return &said{fmt.Sprintf("The text of this `%s` stands in quotation marks.", c.name()), "text without quotation marks", `Write it so: "` + c.source(first, last) + `".`, first, last}
	}
	if strings.Contains(c.form(), `"`) && c.at > 1 && !hasString(c.head) {
		return &said{fmt.Sprintf("The words of this `%s` stand in quotation marks.", c.name()), "words without quotation marks", `Write them so: "` + c.source(first, last) + `".`, first, last}
	}
	return nil
}

// source gives some words of the sentence as they are printed.
func (c *slip) source(from, to int) string {
	var out strings.Builder
	for i := from; i <= to; i++ {
		if i > from && spaced(c.head[i-1], c.head[i]) {
			out.WriteByte(' ')
		}
		out.WriteString(c.head[i].Text)
	}
	return shorten(out.String())
}

func hasString(toks []Token) bool {
	for _, t := range toks {
		if t.Kind == String {
			return true
		}
	}
	return false
}

// slipTwoTexts: option pockets "Side" "pockets"
func slipTwoTexts(c *slip) *said {
	if c.tok(c.at).Kind != String || c.tok(c.at-1).Kind != String {
		return nil
	}
	return &said{"Two texts follow each other; this sentence takes one.", "one text too many", c.how(), c.at, 0}
}

// slipComma: edges waist side hem
func slipComma(c *slip) *said {
	t, before := c.tok(c.at), c.tok(c.at-1)
	if !c.list() || c.hope != "" || c.at < 2 || t.Kind != Word && t.Kind != Measure && t.Kind != Number || before.Kind != Word && before.Kind != Measure && before.Kind != String {
		return nil
	}
	return &said{fmt.Sprintf("A comma seems to be missing before %s.", shorten(t.Text)), "or one word too many", c.how(), c.at, 0}
}
