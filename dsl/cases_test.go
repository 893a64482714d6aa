package dsl

import (
	"os"
	"path/filepath"
	"testing"
)

// layoutCase is source and its canonical form. Each is tried in three ways: in
// gives want, want gives want, and both mean the same. All are fuzz seeds too.
type layoutCase struct{ name, in, want string }

var layoutCases = []layoutCase{
	{"empty", "", ""},
	{"blank lines only", "\n \n\t\n", ""},
	{"one sentence", "option a \"A\"", "option a \"A\"\n"},
	{"byte order mark and CRLF", "\ufeffoption a \"A\"\r\n\r\n\r\noption b \"B\"\r\n", "option a \"A\"\n\noption b \"B\"\n"},
	{"no-break space", "option\u00a0a \"A\"\n", "option a \"A\"\n"},
	{"columns", "option   a    \"A\"\noption bb   \"B\"\n", "option a \"A\"\noption bb \"B\"\n"},
	{"punctuation", "use method m(edge :a . b ,facing:c)\n", "use method m (edge: a.b, facing: c)\n"},
	{"equals sign", "make f from a,b{rim=both   rim}", "make f from a, b {\n  rim = both rim\n}\n"},
	{"brackets in a guard", "option a \"A\" when(A or(not B))and c", "option a \"A\" when (A or (not B)) and c\n"},
	{"curly quotation marks", "option a “A”\noption b „B“\n", "option a \"A\"\noption b \"B\"\n"},
	{"inches in curly marks", "notion b “Button, 3/4\"”\n", "notion b \"Button, 3/4\\\"\"\n"},
	{"curly marks as text", "option a \"The “A” way\"\n", "option a \"The “A” way\"\n"},
	{"fractions", "strip s 1½in x 26in cut 1 main into ½in as a, 2  ¼in as b, 1⁄2in as c\n", "strip s 1 1/2in x 26in cut 1 main into 1/2in as a, 2 1/4in as b, 1/2in as c\n"},
	{"short block on one line", "fabric m \"M\" {\n\n  widths 45in ,60in\n\n  shrinks 3%\n}\n", "fabric m \"M\" { widths 45in, 60in; shrinks 3% }\n"},
	{"piece always on several lines", "piece a 1 \"A\" { cut 1 main; symmetric }", "piece a 1 \"A\" {\n  cut 1 main\n  symmetric\n}\n"},
	{"empty block", "piece a 1 \"A\" {\n\n}\n", "piece a 1 \"A\" { }\n"},
	{"guard after the brace", "fabric m \"M\" { widths 45in }when A\n", "fabric m \"M\" { widths 45in } when A\n"},
	{"brace on its own line", "piece a 1 \"A\"\n{\ncut 1 main\n}\n", "piece a 1 \"A\" {\n  cut 1 main\n}\n"},
	{"note before a brace on its own line", "piece a 1 \"A\"\n// note\n{\ncut 1 main\n}\n", "// note\npiece a 1 \"A\" {\n  cut 1 main\n}\n"},
	{"tabs", "piece a 1 \"A\" {\n\tedges b,\n\t\tc\n}\n", "piece a 1 \"A\" {\n  edges b, c\n}\n"},
	{"blank lines around a block", "option a\npiece b { symmetric }\noption c\noption d\n", "option a\n\npiece b {\n  symmetric\n}\n\noption c\noption d\n"},
	{"blank line before a step", "section \"S\" { step \"A\" { sew a }\nstep \"B\" { sew b }\n\nuse method m }", "section \"S\" {\n  step \"A\" {\n    sew a\n  }\n\n  step \"B\" {\n    sew b\n  }\n\n  use method m\n}\n"},
	{"blank lines at the ends of a block", "piece b {\n\n  symmetric\n\n}\n", "piece b {\n  symmetric\n}\n"},
	{"notes in every place", "// a\n\n\n// b\noption c   // d\n// e\npiece f { // g\n\n// h\nsymmetric// i\n// j\n\n// k\n} // l\n// m\n",
		"// a\n\n// b\noption c  // d\n\n// e\npiece f {  // g\n  // h\n  symmetric  // i\n  // j\n\n  // k\n}  // l\n\n// m\n"},
	{"note inside a sentence", "seam s joins a to b, // why\n    c\n", "// why\nseam s joins a to b, c\n"},
	{"note between lines of a sentence", "seam s joins a to b\n    // why\n    catching c // that\n", "// why\nseam s joins a to b catching c  // that\n"},
	{"notes before and inside", "option z\n\n// own\n\nseam s joins a to b, // why\n    c\n", "option z\n\n// own\n\n// why\nseam s joins a to b, c\n"},
	{"note keeps a block open", "view A \"A\" {\n// note\nfigure \"a.svg\" }\n", "view A \"A\" {\n  // note\n  figure \"a.svg\"\n}\n"},
	{"only a note in a block", "step \"A\" { // note\n}\nstep \"B\" {\n// note\n}\n", "step \"A\" {  // note\n}\n\nstep \"B\" {\n  // note\n}\n"},
	{"line ends that join", "seam s joins a to\n  b\n  catching c\n  when A\n", "seam s joins a to b catching c when A\n"},
	{"prose", "step \"A\" {\n\"\"\"  One.\n      - two\n        three\n\n\n   \"\"\"when A // note\n}\n",
		"step \"A\" {\n  \"\"\"\n  One.\n  - two\n    three\n  \"\"\" when A  // note\n}\n"},
	{"prose with empty lines", "step \"A\" {\n  \"\"\"\n\n  One.\n  \n\n     two\n  \"\"\"\n}\n", "step \"A\" {\n  \"\"\"\n  One.\n\n\n     two\n  \"\"\"\n}\n"},
	{"prose of a word", "word \"fell\" \"\"\" By hand. \"\"\"\n", "word \"fell\" \"\"\"\n  By hand.\n\"\"\"\n"},
	{"empty prose", "step \"A\" { \"\"\"\"\"\" }\n", "step \"A\" {\n  \"\"\"\n  \"\"\"\n}\n"},
	{"long list", "seam waist joins band.bottom to under-front.waist, side-panel.left.waist, back.waist, side-panel.right.waist, over-front.waist, facing.waist\n",
		"seam waist joins band.bottom to under-front.waist, side-panel.left.waist, back.waist, side-panel.right.waist,\n    over-front.waist, facing.waist\n"},
	{"long sentence ends a line before a clause", "seam waist joins waistband.bottom to under-front.waist, side-panel.waist, back.waist catching wrap-facing.top, loop allow 3/8in\n",
		"seam waist joins waistband.bottom to under-front.waist, side-panel.waist, back.waist\n    catching wrap-facing.top, loop allow 3/8in\n"},
	{"long block", "fabric main \"Main\" { widths 45in, 60in; suggested \"Medium-weight twill, wool crepe or chambray, or gabardine\" }\n",
		"fabric main \"Main\" {\n  widths 45in, 60in\n  suggested \"Medium-weight twill, wool crepe or chambray, or gabardine\"\n}\n"},
	{"block in a block on one line", "step \"A\" {\non left only {\n press a open\n sew b }\n}\n", "step \"A\" {\n  on left only { press a open; sew b }\n}\n"},
	{"what is not understood", "frob  a , b  {\n x\n}\nfrob { x ; y }\n", "frob a, b {\n  x\n}\n\nfrob { x; y }\n"},
	{"strange signs", "option  a &  \"A\"\n", "option a & \"A\"\n"},
	{"point before other things", "option a . \"b\"\noption a . 5\n", "option a. \"b\"\noption a. 5\n"},
	{"comma at the end", "piece a {\n  edges b, c,\n  cut 1 main\n}\n", "piece a {\n  edges b, c,\n  cut 1 main\n}\n"},
	{"semicolon that is needed", "piece a {\n  edges b, c,; frob x\n}\n", "piece a {\n  edges b, c,;\n  frob x\n}\n"},
	{"comments of other languages", "# one\noption a # two\n/* three */ option b /* four\n five */\n", "# one\noption a  # two\n/* three */\noption b  /* four\n five */\n"},
	{"measures as people write them", "pattern \"P\" { allow 5/8\" }\n", "pattern \"P\" {\n  allow 5/8\"\n}\n"},
}

// seeds gives fuzz tests everything that other tests read.
func seeds(f *testing.F) {
	f.Helper()
	for _, c := range layoutCases {
		f.Add(c.in)
		f.Add(c.want)
	}
	files, err := filepath.Glob("../testdata/syntax/*.seam")
	if err != nil {
		f.Fatal(err)
	}
	for _, name := range append(files, canonicalFile) {
		src, err := os.ReadFile(name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(string(src))
	}
}
