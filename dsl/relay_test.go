package dsl

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// TestAnyLayoutComesBack lays the canonical file out as a careless writer would,
// with other spaces, line ends, semicolons, quotation marks and places of
// comments, and asserts that formatting brings the canonical file back.
func TestAnyLayoutComesBack(t *testing.T) {
	want := string(canonical(t))
	f := Parse("canonical.seam", []byte(want))
	rapid.Check(t, func(t *rapid.T) {
		c := &careless{t: t, fresh: true}
		c.block(topBlock, f.Sentences, f.End, f.EndBlank)
		src := c.out.String()
		if c.chance(3) {
			src = strings.ReplaceAll(src, "\n", "\r\n")
		}
		if c.chance(5) {
			src = byteOrderMark + src
		}
		again := Parse("careless.seam", []byte(src))
		for _, x := range again.Findings {
			t.Fatalf("line %d: %s\n%s", x.Place.Start.Line, x.Headline, src)
		}
		got, ok := Format(again)
		if !ok || string(got) != want {
			t.Fatalf("%s\nfrom\n%s", firstChange(want, string(got)), src)
		}
		if err := equalMeaning(f, again); err != nil {
			t.Fatal(err)
		}
	})
}

// careless writes sentences in a layout drawn by chance.
type careless struct {
	t      *rapid.T
	out    strings.Builder
	indent int  // of the current line
	fresh  bool // nothing on the current line yet
	closed bool // the current line ends in a comment
}

// chance is true once in n times.
func (c *careless) chance(n int) bool { return rapid.IntRange(1, n).Draw(c.t, "chance") == n }

func (c *careless) upTo(n int) int { return rapid.IntRange(0, n).Draw(c.t, "number") }

func (c *careless) write(s string) { c.out.WriteString(s) }

// line begins a line, indented by n at least.
func (c *careless) line(blank bool, least int) {
	if !c.fresh {
		c.write("\n")
	}
	for i := 0; blank && i <= c.upTo(2); i++ {
		c.write(strings.Repeat(" ", c.upTo(2)) + "\n")
	}
	c.indent = least + c.upTo(6)
	tabs := 0
	if c.chance(4) {
		tabs = c.indent / 4
	}
	c.write(strings.Repeat("\t", tabs) + strings.Repeat(" ", c.indent-4*tabs))
	c.fresh, c.closed = false, false
}

func (c *careless) space() {
	c.write([]string{" ", "  ", "\t", " \t ", "\u00a0"}[c.upTo(4)])
}

func (c *careless) comment(t Token) {
	c.write(t.Text + strings.Repeat(" ", c.upTo(1)))
	c.closed = true
}

func (c *careless) block(name string, body []*Sentence, rest []Token, restBlank bool) {
	for i, s := range body {
		own := len(body[i].Doc) > 0
		blank := s.Blank && i > 0 || i == 0 && c.chance(4) || name == "section" && s.First() == "step" && c.chance(2)
		if i > 0 && !c.closed && !blank && !own && c.chance(3) {
			c.write(strings.Repeat(" ", c.upTo(1)) + ";")
			c.space()
		} else {
			c.line(blank, 0)
		}
		c.sentence(s)
	}
	for i, t := range rest {
		c.line(i > 0 && t.Blank || i == 0 && restBlank, 0)
		c.comment(t)
	}
	if c.chance(4) || c.closed {
		c.line(c.chance(2), 0)
	} else {
		c.write(strings.Repeat(" ", c.upTo(1)))
	}
}

func (c *careless) sentence(s *Sentence) {
	inside := c.docs(s)
	c.words(s.Head, inside, true)
	if s.HasBody {
		c.brace()
		if s.OpenNote != nil {
			c.write(strings.Repeat(" ", c.upTo(2)))
			c.comment(*s.OpenNote)
			c.line(c.chance(2), 0)
		}
		c.block(s.block(), s.Body, s.BodyEnd, s.EndBlank)
		c.write("}" + strings.Repeat(" ", c.upTo(1)))
		c.words(s.Tail, nil, false)
	}
	if s.Trailing != nil {
		if c.chance(4) {
			c.write(" ;")
		}
		c.write(strings.Repeat(" ", c.upTo(3)))
		c.comment(*s.Trailing)
	}
}

func (c *careless) brace() {
	if c.chance(5) {
		c.line(c.chance(5), 0)
	} else {
		c.write(strings.Repeat(" ", c.upTo(2)))
	}
	c.write("{" + strings.Repeat(" ", c.upTo(1)))
}

// docs writes the comments above a sentence, but may keep the last one to be
// written between its words.
func (c *careless) docs(s *Sentence) (inside []Token) {
	docs := s.Doc
	if n := len(docs); n > 0 && !s.opening().Blank && canBreak(s.Head) && c.chance(2) && (n == 1 || !docs[n-1].Blank) {
		docs, inside = docs[:n-1], docs[n-1:]
	}
	for i, t := range docs {
		if i > 0 {
			c.line(t.Blank, 0)
		}
		c.comment(t)
	}
	if len(docs) > 0 {
		c.line(s.opening().Blank, 0)
	}
	return inside
}

func canBreak(toks []Token) bool {
	for i := range toks {
		if i > 0 && mayGoOn(toks[i-1], toks[i], true) {
			return true
		}
	}
	return false
}

// mayGoOn reports whether a line may end between two words.
func mayGoOn(before, t Token, joining bool) bool {
	return before.Is(",") || before.Is("(") || before.Is("=") || joining && joins[t.Text]
}

func (c *careless) words(toks []Token, notes []Token, joining bool) {
	start := c.indent
	for i, t := range toks {
		switch {
		case i > 0 && mayGoOn(toks[i-1], t, joining) && (len(notes) > 0 || c.chance(6)):
			for _, note := range notes {
				c.write(" ")
				c.comment(note)
			}
			notes = nil
			c.line(c.chance(8), start+1)
		case i > 0 && spaced(toks[i-1], t):
			c.space()
		case i > 0 && toks[i-1].Kind != Number && t.Kind != Number && c.chance(8):
			c.space()
		}
		c.word(t)
	}
}

func (c *careless) word(t Token) {
	switch {
	case t.Kind == String && !strings.ContainsAny(t.Text, `\“”`) && c.chance(4):
		c.write("“" + Unquote(t.Text) + "”")
	case (t.Kind == Number || t.Kind == Measure) && strings.Contains(t.Text, "1/2") && c.chance(2):
		c.write(strings.NewReplacer(" 1/2", []string{"½", " ½", "  1/2"}[c.upTo(2)], "1/2", "½").Replace(t.Text))
	case t.Kind == Prose:
		c.prose(t)
	default:
		c.write(t.Text)
	}
}

func (c *careless) prose(t Token) {
	text, _ := Dedent(t.Text)
	_, after, _ := strings.Cut(text, "\n")
	atFence := marginOf(strings.Split(after, "\n")) == 0 // else its margin would count as common
	margin := strings.Repeat(" ", c.indent+c.upTo(5))
	c.write(fence)
	for i, line := range strings.Split(text, "\n") {
		switch {
		case i == 0 && atFence && c.chance(3):
			c.write(line)
			continue
		case line == "":
			c.write("\n" + strings.Repeat(" ", c.upTo(4)))
		default:
			c.write("\n" + margin + line + strings.Repeat(" ", c.upTo(2)))
		}
	}
	if c.chance(2) {
		c.write("\n" + strings.Repeat(" ", c.upTo(8)))
	}
	c.write(fence)
}

// fragments are bits of the language and of other writing. The torn ones leave
// the shape of a file in doubt.
var (
	fragments = append(strings.Fields(`piece step seam section pattern allow fabric view choice make on only left sew press cut edges joins to catching
		when and or not is by hand from mark figure caution symmetric symetric Piece x main back.hem . , , , ; ; ; {} ( ) = : "A" "b" "c\"d" “e” “g" 'f'
		1 2 1/2 ½ 1½ 1/2in 5/8" 2m 3% 3' 4x # #5 & – a–b - / … // //g #h , in .5in 1-1/2in {a} {a,b} under-front.waist,
		side-panel.right.front-seam catching allow`),
		" ", " ", " ", "  ", "\t", "\n", "\n", "\n", "\n  ", "\n  ", "\n    ", "\n\n", "\r\n", "\u00a0", "\n{\n", "\n}\n", "{", "}",
		"\"\"\"\n  text\n\n    more\n\"\"\"", `"""x"""`, "// note\n", "/* a */", "/* a\n b */")
	torn = append(strings.Fields("{ { } } “ ” ' /* */ \" \"\"\""), fragments...)
)

// TestAnyWordsFormat strings fragments together at random and asserts that nothing
// is lost and that formatting settles.
func TestAnyWordsFormat(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bits := rapid.SampledFrom([][]string{fragments, fragments, torn}).Draw(t, "bits")
		between := rapid.SampledFrom([]string{"", " "}).Draw(t, "between")
		src := strings.Join(rapid.SliceOfN(rapid.SampledFrom(bits), 0, 100).Draw(t, "fragments"), between)
		checkPlaces(t, Parse("a.seam", []byte(src)))
		checkFormat(t, src)
	})
}
