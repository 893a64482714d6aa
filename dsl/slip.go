package dsl

import (
	"fmt"
	"strings"

	"seamwarden/dsl/finding"
)

// slip is a sentence that the parser stopped in.
type slip struct {
	block string
	s     *Sentence
	head  []Token
	kind  *kind
	verb  string
	at    int     // the token where it stopped; len(head) at the end
	hope  string  // what the parser could have gone on with: a kind of node, or a word in quotes; "" for nothing
	right *string // what certainly stands in place of the tokens of the slip; nil if that is not certain
}

// certainly notes what the tokens of the slip are meant to be, "" for nothing.
func (c *slip) certainly(right string) { c.right = &right }

// said is what is told about a slip, and the tokens that it is about.
type said struct {
	headline, label, help string
	from, to              int // first and last token
}

// cannotRead words a sentence that cannot be read: with the first of the usual
// slips that fits, else in general.
func cannotRead(c *slip, file string) finding.Finding {
	for _, usual := range usualSlips {
		if x := usual(c); x != nil {
			return c.finding(*x, file)
		}
	}
	return c.finding(c.general(), file)
}

func (c *slip) finding(x said, file string) finding.Finding {
	last := len(c.head) - 1
	from, to := min(x.from, last), min(max(x.from, x.to), last)
	span := finding.Span{File: file, Start: c.head[from].Start, End: c.head[to].End()}
	f := syntax("sentence-not-understood", span, x.label, x.headline, x.help)
	if c.right != nil {
		f = sure(f, span, *c.right)
	}
	return f
}

// tok gives a token of the sentence, one of no kind outside it.
func (c *slip) tok(i int) *Token {
	if i < 0 || i >= len(c.head) {
		return &Token{}
	}
	return &c.head[i]
}

// name is what the sentence is called in messages.
func (c *slip) name() string {
	if c.verb != "" {
		return c.verb
	}
	if c.head[0].Kind == Prose {
		return "text"
	}
	return c.s.First()
}

func (c *slip) form() string {
	if c.verb != "" {
		return form(c.verb)
	}
	return c.kind.form
}

// how says how the sentence is written.
func (c *slip) how() string { return "It is written so: " + c.form() }

func (c *slip) atEnd() bool { return c.at >= len(c.head) }

// firstHope finds in a message of the parser what it expected first.
func firstHope(message string) string {
	_, hopes, _ := strings.Cut(message, " (expected ")
	first, _, _ := strings.Cut(hopes, " ")
	return strings.TrimRight(first, "?*)")
}

// wanted gives the word or sign that alone could have followed, "" if several could.
func (c *slip) wanted() string {
	if strings.HasPrefix(c.hope, `"`) {
		return strings.Trim(c.hope, `"`)
	}
	return ""
}

// wantsName reports whether a name could have followed.
func (c *slip) wantsName() bool { return c.hope == "Name" || c.hope == "ViewID" || c.hope == "<word>" }

var lists = set("edges marks widths sides set raw selvage")

// list reports whether the sentence is a list of things with commas.
func (c *slip) list() bool {
	return c.verb != "" || lists[c.name()] || c.kind == kindValues || hasComma(c.head)
}

func hasComma(toks []Token) bool {
	for _, t := range toks {
		if t.Is(",") {
			return true
		}
	}
	return false
}

func (c *slip) general() said {
	if c.atEnd() {
		x := said{fmt.Sprintf("The `%s` sentence stops too early.", c.name()), "something is missing after this", c.how(), c.at, 0}
		if word := c.wanted(); word != "" {
			x.headline = fmt.Sprintf("The `%s` sentence stops before its `%s`.", c.name(), word)
		}
		return x
	}
	t := c.tok(c.at)
	switch word := c.wanted(); {
	case word != "":
		return said{fmt.Sprintf("`%s` is missing before %s.", word, shorten(t.Text)), "`" + word + "` stands before this", c.how(), c.at, 0}
	case t.Kind == Word && c.hope == "":
		return said{fmt.Sprintf("`%s` is a word too many in this `%s` sentence.", shorten(t.Text), c.name()), "not understood from here on", c.how(), c.at, 0}
	}
	return said{fmt.Sprintf("The `%s` sentence cannot be read at %s.", c.name(), shorten(t.Text)), "not understood from here on", c.how(), c.at, 0}
}

// usualSlips are asked in this order; the first that knows the slip words it.
var usualSlips = []func(*slip) *said{
	slipUnitApart, slipDecimalComma, slipBarePoint, slipFigures, slipNoUnit, slipFullStop, slipColon, slipEquals,
	slipEndsOpen, slipGuardWord, slipInGuard, slipAfterGuard, slipJoins, slipTo, slipFromTo, slipOrder, slipNoName, slipCutCount, slipCutMaterial,
	slipCutInStep, slipNoQuotes, slipArticle, slipNearWord, slipNewSentence, slipTwoTexts, slipComma,
}

// slipUnitApart: 5/8 in
func slipUnitApart(c *slip) *said {
	for _, i := range []int{c.at, c.at - 1} {
		n, u := c.tok(i), c.tok(i+1)
		if n.Kind == Number && u.Kind == Word && unitMeant(u.Text) != "" && (c.hope == "Amount" || i < c.at || c.verb != "") {
			right := n.Text + unitMeant(u.Text)
			c.certainly(right)
			return &said{fmt.Sprintf("%s %s is written %s.", n.Text, u.Text, right), "no space before the unit", "Write " + right + ".", i, i + 1}
		}
	}
	return nil
}

// slipDecimalComma: 1,5cm
func slipDecimalComma(c *slip) *said {
	for _, i := range []int{c.at, c.at - 1, c.at - 2} {
		whole, comma, rest := c.tok(i), c.tok(i+1), c.tok(i+2)
		if whole.Kind == Number && comma.Is(",") && rest.Kind == Measure && whole.End() == comma.Start && comma.End() == rest.Start {
			right := whole.Text + "." + rest.Text
			return &said{fmt.Sprintf("%s,%s is written with a point.", whole.Text, rest.Text), "decimal comma", "Write " + right + ".", i, i + 2}
		}
	}
	return nil
}

// slipBarePoint: .5in
func slipBarePoint(c *slip) *said {
	t := c.tok(c.at)
	n := c.tok(c.at + 1)
	if !t.Is(".") || n.Kind != Measure && n.Kind != Number {
		return nil
	}
	c.certainly("0." + n.Text)
	return &said{fmt.Sprintf(".%s needs a 0 before the point.", n.Text), "", "Write 0." + n.Text + ".", c.at, c.at + 1}
}

var figures = map[string]string{
	"one": "1", "two": "2", "three": "3", "four": "4", "five": "5", "six": "6", "seven": "7", "eight": "8", "nine": "9", "ten": "10", "twelve": "12", "pair": "2",
}

// slipFigures: cut two main
func slipFigures(c *slip) *said {
	t := c.tok(c.at)
	n := figures[strings.ToLower(t.Text)]
	if n == "" {
		return nil
	}
	return &said{fmt.Sprintf("Numbers are written in figures: `%s` is %s.", t.Text, n), "", "Write " + n + ".", c.at, 0}
}

// slipNoUnit: allow 5/8
func slipNoUnit(c *slip) *said {
	t := c.tok(c.at)
	if t.Kind != Number || c.at == 0 || c.hope != "Amount" && c.verb == "" {
		return nil
	}
	return &said{fmt.Sprintf("%s is a number without a unit.", t.Text), "inches or centimetres?", fmt.Sprintf("Write %sin or %scm, without a space.", t.Text, t.Text), c.at, 0}
}

// slipFullStop: cut 1 main.
func slipFullStop(c *slip) *said {
	last := len(c.head) - 1
	if c.at < last || !c.head[last].Is(".") {
		return nil
	}
	c.certainly("")
	return &said{"A sentence ends without a full stop.", "one sign too many", "Delete it. The end of the line ends the sentence.", last, 0}
}

// slipColon: edges: waist, side
func slipColon(c *slip) *said {
	if !c.tok(c.at).Is(":") {
		return nil
	}
	if c.name() == "seam" && !hasWord(c.head, "joins") {
		return &said{"The word `joins` is missing from this seam.", "`joins` stands here, not a colon", c.how(), c.at, 0}
	}
	return &said{fmt.Sprintf("No colon stands after `%s`.", shorten(c.tok(c.at-1).Text)), "one sign too many", "Delete it.", c.at, 0}
}

// slipEquals: allow = 5/8in, when band = bound
func slipEquals(c *slip) *said {
	if !c.tok(c.at).Is("=") {
		return nil
	}
	if c.guardAt() >= 0 {
		return &said{"In a guard, `is` stands for the equals sign.", "write `is`", "A choice is asked for so: when band is bound.", c.at, 0}
	}
	return &said{"No equals sign stands in this sentence.", "one sign too many", "Delete it.", c.at, 0}
}

// guardAt gives the place of a `when` before the stop, or -1.
func (c *slip) guardAt() int {
	for i := min(c.at, len(c.head)) - 1; i >= 0; i-- {
		if c.head[i].Is("when") {
			return i
		}
	}
	return -1
}
