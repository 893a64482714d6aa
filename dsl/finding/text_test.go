package finding

import (
	"strings"
	"testing"
)

const skirt = "pattern \"Skirt\" { }\n" +
	"piece back 1 \"Back\" {\n" +
	"\tcut 2 main  // a pair?\n" +
	"}\n"

// span covers the columns from (inclusive) to (exclusive) of a line.
func span(line, from, to int) Span {
	return Span{File: "pattern.seam", Start: Pos{Line: line, Column: from}, End: Pos{Line: line, Column: to}}
}

func written(w Writer, f Finding) string {
	var out strings.Builder
	w.Out = &out
	if w.Sources == nil {
		w.Sources = map[string]string{"pattern.seam": skirt}
	}
	w.Write(f)
	return out.String()
}

func TestWrite(t *testing.T) {
	full := Finding{
		Rule: "pair-or-alike", Severity: Error, Headline: "2 of the back are cut.",
		Place:   Place{Span: span(3, 2, 12), Label: "a pair, or all alike?"},
		Related: []Place{{Span: span(2, 7, 11), Label: "declared here"}, {Span: span(2, 7, 11), Label: "declared here"}}, // said once
		When:    "in view B", Witness: "view B, size 12", Why: "Only one can be sewn.", Help: "Add `mirrored`.",
	}
	several := Finding{Rule: "r", Severity: Warning, Headline: "Not closed.", Place: Place{
		Span: Span{File: "pattern.seam", Start: Pos{Line: 2, Column: 21}, End: Pos{Line: 4, Column: 2}}, Label: "opened here"}}
	cases := []struct {
		name string
		w    Writer
		f    Finding
		want string
	}{
		{"every part", Writer{Folder: "samples/skirt"}, full, "" +
			"error: 2 of the back are cut: in view B. [pair-or-alike]\n" +
			"  samples/skirt/pattern.seam:3:2\n" +
			"    3 |  cut 2 main  // a pair?\n" +
			"      |  ^^^^^^^^^^ a pair, or all alike?\n" +
			"  samples/skirt/pattern.seam:2:7  declared here\n" +
			"    2 | piece back 1 \"Back\" {\n" +
			"      |       ----\n" +
			"  for example: view B, size 12\n" +
			"  why: Only one can be sewn.\n" +
			"  do: Add `mirrored`.\n\n"},
		{"over several lines", Writer{}, several, "" +
			"warning: Not closed. [r]\n" +
			"  pattern.seam:2:21\n" +
			"    2 | piece back 1 \"Back\" {\n" +
			"      |                     ^ opened here\n\n"},
		{"no source", Writer{Sources: map[string]string{}}, several, "" +
			"warning: Not closed. [r]\n" +
			"  pattern.seam:2:21  opened here\n\n"},
		{"a whole file", Writer{}, Finding{Rule: "r", Headline: "It says nothing.", Place: Place{Span: Span{File: "steps.seam"}}}, "" +
			"error: It says nothing. [r]\n" +
			"  steps.seam\n\n"},
		{"no place", Writer{}, Finding{Rule: "r", Severity: Advice, Headline: "Have it tested."}, "" +
			"advice: Have it tested. [r]\n\n"},
		{"past the end of the file", Writer{}, Finding{Rule: "r", Headline: "It stops.", Place: Place{Span: span(9, 1, 1), Label: "here"}}, "" +
			"error: It stops. [r]\n" +
			"  pattern.seam:9:1  here\n\n"},
		{"past the end of the line", Writer{}, Finding{Rule: "r", Headline: "It stops.", Place: Place{Span: span(4, 2, 2), Label: "here"}}, "" +
			"error: It stops. [r]\n" +
			"  pattern.seam:4:2\n" +
			"    4 | }\n" +
			"      |  ^ here\n\n"},
	}
	for _, c := range cases {
		if got := written(c.w, c.f); got != c.want {
			t.Errorf("%s:\n%s\nwant:\n%s", c.name, got, c.want)
		}
	}
}

func TestMarksStandUnderWhatTheyMean(t *testing.T) {
	// Cells from Unicode Standard Annex #11: kana, Han signs and the needle-and-
	// thread emoji are wide; a combining acute accent takes no cell.
	cases := []struct{ line, marked, pad, marks string }{
		{`piece back`, `back`, `      `, `^^^^`},
		{"\tcut 2 main", `main`, `       `, `^^^^`},
		{`"わき" side`, `side`, `       `, `^^^^`},
		{`"脇" side`, `脇`, ` `, `^^`},
		{"\"e\u0301te\" side", `side`, `      `, `^^^^`},
		{"🪡 side", `side`, `   `, `^^^^`},
	}
	for _, c := range cases {
		start := len([]rune(c.line[:strings.Index(c.line, c.marked)])) + 1
		_, pad, across := window(c.line, span(1, start, start+len([]rune(c.marked))))
		if pad != c.pad || across != len(c.marks) {
			t.Errorf("%q: %q and %d marks, want %q and %d", c.line, pad, across, c.pad, len(c.marks))
		}
	}
}

func TestLongLineIsCutAroundThePlace(t *testing.T) {
	line := strings.Repeat("a", 500) + "HERE" + strings.Repeat("z", 500)
	text, pad, across := window(line, span(1, 501, 505))
	if n := len([]rune(text)); n > widest+2 {
		t.Errorf("%d characters are shown", n)
	}
	shown := []rune(text)[len(pad):]
	if string(shown[:across]) != "HERE" || !strings.HasPrefix(text, "…") || !strings.HasSuffix(text, "…") {
		t.Errorf("the marks stand under %q of %q", string(shown[:across]), text)
	}
	if text, _, across = window(line, span(1, 501, 1005)); across != len([]rune(text))-1-widest/3-1 {
		t.Errorf("%d marks run past the %d characters shown", across, len([]rune(text)))
	}
}

func TestSourceCannotReachTheTerminal(t *testing.T) {
	// An escape sequence, a right-to-left override, an unseen space and a line
	// end in everything that can come from a file.
	bad := "a\x1b[31mb\u202ec\u200bd\ne\u2028f"
	f := Finding{Rule: "r", Headline: bad, When: bad, Witness: bad, Why: bad, Help: bad,
		Place: Place{Span: Span{File: bad, Start: Pos{Line: 1, Column: 1}, End: Pos{Line: 1, Column: 2}}, Label: bad}, Related: []Place{{Label: bad, Span: Span{File: bad}}}}
	got := written(Writer{Folder: bad, Sources: map[string]string{bad: bad}}, f)
	if strings.ContainsAny(got, "\x1b\u202e\u200b\u2028") {
		t.Errorf("%q", got)
	}
	if n := strings.Count(got, "\n"); n != 9 {
		t.Errorf("%d lines, want 9:\n%s", n, got)
	}
	if zwnj := "می\u200cخواهم"; clean(zwnj) != zwnj {
		t.Error("a word was changed that is spelt with a non-joiner")
	}
}

func TestColourChangesNoText(t *testing.T) {
	f := Finding{Rule: "r", Severity: Unchecked, Headline: "Not decided.", Place: Place{Span: span(2, 1, 6), Label: "here"}, Why: "Too many choices."}
	plainText, painted := written(Writer{}, f), written(Writer{Colour: true}, f)
	if plainText == painted {
		t.Error("nothing was painted")
	}
	for _, code := range []string{red, yellow, blue, dim, bold, plain} {
		painted = strings.ReplaceAll(painted, code, "")
	}
	if painted != plainText {
		t.Errorf("%q\n%q", painted, plainText)
	}
}

func TestSourceLine(t *testing.T) {
	cases := []struct {
		src  string
		line int
		want string
		ok   bool
	}{
		{"one\ntwo", 1, "one", true},
		{"one\ntwo", 2, "two", true},
		{"one\r\ntwo\r\n", 1, "one", true},
		{"\ufeffone", 1, "one", true},
		{"one\n", 2, "", true},
		{"one\n", 3, "", false},
		{"", 1, "", false},
		{"one", 0, "", false},
	}
	for _, c := range cases {
		if got, ok := sourceLine(c.src, Pos{Line: c.line}); got != c.want || ok != c.ok {
			t.Errorf("line %d of %q is %q, %v", c.line, c.src, got, ok)
		}
	}
}
