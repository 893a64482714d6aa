package size

import (
	"fmt"
	"strings"
	"testing"
)

// head begins most tables of the tests; it has two lines.
const head = "unit: cm\nsizes: [S, M, L, XL]\n"

// findingCases: each gives exactly these findings, as "line:column rule".
var findingCases = []struct{ name, src, want string }{
	{"anchor", head + "body:\n  a: &x {values: [1, 2, 3, 4]}\n", "4:6 table-unreadable"},
	{"alias", head + "body:\n  a: {values: [1, 2, 3, 4]}\n  b: *a\n", "5:6 table-unreadable"},
	{"alias bomb", "a: &a [x,x,x,x,x,x,x,x,x]\nb: &b [*a,*a,*a,*a,*a,*a,*a,*a,*a]\nc: &c [*b,*b,*b,*b,*b,*b,*b,*b,*b]\nd: [*c,*c,*c]\n", "1:4 table-unreadable"},
	{"merge", head + "body:\n  a: &a {values: [1, 2, 3, 4]}\n  b:\n    <<: *a\n", "4:6 table-unreadable"},
	{"own type", head + "body:\n  a: {values: !!python/object [1, 2, 3, 4]}\n", "4:15 table-unreadable"},
	{"100 deep", head + "body: " + strings.Repeat("[", 100) + strings.Repeat("]", 100) + "\n", "3:7 table-unreadable"},
	{"100 deep in a cell", head + "body:\n  a: {values: [1, 2, 3, " + strings.Repeat("[", 100) + strings.Repeat("]", 100) + "]}\n", "4:25 size-not-a-number"},
	{"20,000 deep", head + "body: " + strings.Repeat("[", 20000) + "\n", "3:1 table-unreadable"},
	{"tab", head + "body:\n\ta: {values: [1, 2, 3, 4]}\n", "4:2 table-unreadable"},
	{"not utf-8", head + "body:\n  a: {name: L\xe4nge, values: [1, 2, 3, 4]}\n", "4:14 table-unreadable"},
	{"utf-16", "\xff\xfeu\x00n\x00", "1:1 table-unreadable"},
	{"empty", "", "0:0 table-unreadable"},
	{"only a comment", "# nothing\n", "0:0 table-unreadable"},
	{"only a mark", "\xef\xbb\xbf", "0:0 table-unreadable"},
	{"nul", "unit: cm\nsizes: [S,\x00 M]\n", "2:11 table-unreadable"},
	{"too large", head + strings.Repeat("#", mostBytes), "0:0 table-unreadable"},
	{"a list", "- 1\n", "1:1 table-unreadable"},
	{"a word", "sizes\n", "1:1 table-unreadable"},
	{"two tables", head + "---\nunit: in\n", "4:1 table-unreadable"},
	{"bracket", "unit: cm\nsizes: [S, M\nbody:\n", "2:1 table-unreadable"},
	{"quote", head + "follows: \"EN\n", "3:1 table-unreadable"},
	{"two colons", "unit: cm: in\n", "1:1 table-unreadable"},
	{"no unit", "sizes: [S]\n", "0:0 table-unreadable"},
	{"no sizes", "unit: cm\n", "0:0 table-unreadable"},
	{"nothing in it", "{}\n", "0:0 table-unreadable, 0:0 table-unreadable"},
	{"unit inch", "unit: inches\nsizes: [S]\n", "1:7 table-unreadable"},
	{"unit yard", "unit: yd\nsizes: [S]\n", "1:7 table-unreadable"},
	{"row unit", head + "pattern:\n  zip: {unit: Cm, values: [1, 2, 3, 4]}\n", "4:15 table-unreadable"},
	{"unknown key", head + "bodies:\n  a: 1\n", "3:1 table-unreadable"},
	{"unknown row key", head + "body:\n  a: {value: [1, 2, 3, 4]}\n", "4:3 size-missing-cell, 4:7 table-unreadable"},
	{"duplicate top", head + "unit: in\n", "3:1 table-unreadable"},
	{"duplicate row", head + "body:\n  a: {values: [1, 2, 3, 4]}\n  a: {values: [1, 2, 3, 4]}\n", "5:3 table-unreadable"},
	{"duplicate in a row", head + "body:\n  a: {values: [1, 2, 3, 4], values: [1, 2, 3, 4]}\n", "4:29 table-unreadable"},
	{"key that is no name", head + "body:\n  hip girth: {values: [1, 2, 3, 4]}\n", "4:3 table-unreadable"},
	{"key that is a list", head + "body:\n  [a]: {values: [1, 2, 3, 4]}\n", "4:3 table-unreadable"},
	{"row that is a list", head + "body:\n  a: [1, 2, 3, 4]\n", "4:6 table-unreadable"},
	{"part that is a list", head + "body: [a]\n", "3:7 table-unreadable"},
	{"woven yes", head + "woven: yes\n", "3:8 table-unreadable"},
	{"woven and stretch", head + "woven: true\nstretch: true\n", "4:10 table-unreadable"},
	{"over in body", head + "body:\n  a: {over: a, values: [1, 2, 3, 4]}\n", "4:7 table-unreadable"},
	{"no name", head + "body:\n  a: {name: , values: [1, 2, 3, 4]}\n", "4:13 table-unreadable"},

	{"rounding a word", head + "rounding: fine\n", "3:11 table-unreadable"},
	{"rounding of no part", head + "rounding: {bodies: 1cm}\n", "3:12 table-unreadable"},
	{"rounding to nothing", head + "rounding: {body: 0cm}\n", "3:18 table-unreadable"},
	{"rounding twice in one system", head + "rounding: {body: [1cm, 1mm]}\n", "3:24 table-unreadable"},
	{"choose a word", head + "choose: bust\n", "3:9 table-unreadable"},
	{"choose between", head + "choose: {between: both}\n", "3:19 table-unreadable"},
	{"choose by nothing", head + "choose: {by: bust}\n", "3:14 size-choice-unknown"},
	{"limits of a finished row", head + "finished:\n  a: {values: [1, 2, 3, 4], limits: [0.5, 1.5, 2.5, 3.5, 4.5]}\n", "4:37 table-unreadable"},
	{"too few limits", head + "body:\n  a: {values: [1, 2, 3, 4], limits: [1, 2]}\n", "4:37 table-unreadable"},
	{"a limit that is no number", head + "body:\n  a: {values: [1, 2, 3, 4], limits: [0.5, x, 2.5, 3.5, 4.5]}\n", "4:43 table-unreadable"},
	{"limits that fall", head + "body:\n  a: {values: [2, 4, 6, 8], limits: [1, 3, 5, 3, 9]}\n", "4:47 size-limit-out-of-place"},
	{"limits beside their values", head + "body:\n  a: {values: [2, 4, 6, 8], limits: [1, 5, 6, 7, 9]}\n", "4:41 size-limit-out-of-place"},
	{"drafts a list", head + "drafts: [a]\n", "3:9 table-unreadable"},
	{"a draft that is a word", head + "drafts:\n  a: b\n", "4:6 table-unreadable"},
	{"a draft with a rounding", head + "drafts:\n  a: {rounding: {}}\n", "4:7 table-unreadable"},
	{"sizes of a draft with a gap", head + "drafts:\n  a: {sizes: [S, L]}\n", "4:18 table-unreadable"},
	{"sizes of a draft from nowhere", head + "drafts:\n  a: {sizes: [XS]}\n", "4:15 table-unreadable"},
	{"a row above and in a draft", head + "body:\n  bust: {values: [80, 84, 88, 92]}\ndrafts:\n  a: {body: {bust: {values: [80, 84, 88, 92]}}}\n", "6:14 table-unreadable"},
	{"a draft without a row", head + "drafts:\n  a: {body: {bust: {values: [80, 84, 88, 92]}}}\n  b: {body: {hip: {values: [80, 84, 88, 92]}}}\n", "4:3 size-missing-cell, 5:3 size-missing-cell"},
	{"a draft with a gap", head + "drafts:\n  a: {body: {bust: {values: [80, 84, 88]}}}\n", "4:38 size-missing-cell"},
	{"a draft whose body shrinks", head + "drafts:\n  a: {sizes: [S, M], body: {bust: {values: [84, 80]}}}\n", "4:49 body-measure-shrinks"},
	{"a draft that is too tight", head + "finished:\n  chest: {over: bust, values: [90, 94, 98, 102]}\ndrafts:\n  a: {body: {bust: {values: [80, 84, 88, 92]}}}\n  b: {body: {bust: {values: [92, 96, 100, 104]}}}\n", "4:32 negative-ease"},
	{"drafts alike", head + "drafts:\n  a: {body: {bust: {values: [80, 84, 88, 92]}}}\n  b: {sizes: [S, M], body: {bust: {values: [80, 84]}}}\n", "5:3 drafts-not-told-apart"},
	{"over nothing in drafts", head + "finished:\n  chest: {over: hip, values: [90, 94, 98, 102]}\ndrafts:\n  a: {body: {bust: {values: [80, 84, 88, 92]}}}\n", "4:17 ease-over-unknown"},
	{"choose by what one draft has", head + "choose: {by: hip}\ndrafts:\n  a: {body: {hip: {values: [80, 84, 88, 92]}, bust: {values: [80, 84, 88, 92]}}}\n  b: {body: {bust: {values: [84, 88, 92, 96]}}}\n", "3:14 size-choice-unknown, 6:3 size-missing-cell"},

	{"sizes empty", "unit: cm\nsizes: []\n", "2:8 table-unreadable"},
	{"sizes a word", "unit: cm\nsizes: S M L\n", "2:8 table-unreadable"},
	{"size on", "unit: cm\nsizes: [on]\n", "2:9 table-unreadable"},
	{"size yes", "unit: cm\nsizes: [yes, no]\n", "2:9 table-unreadable, 2:14 table-unreadable"},
	{"size 1.0", "unit: cm\nsizes: [1.0, 2]\n", "2:9 table-unreadable"},
	{"size 010", "unit: cm\nsizes: [010]\n", "2:9 table-unreadable"},
	{"size date", "unit: cm\nsizes: [2024-01-02]\n", "2:9 table-unreadable"},
	{"size hex", "unit: cm\nsizes: [0x10, 1e3, .inf, ~, [8]]\n", "2:9 table-unreadable, 2:15 table-unreadable, 2:20 table-unreadable, 2:26 table-unreadable, 2:29 table-unreadable"},
	{"size too long", "unit: cm\nsizes: [aaaaaaaaaaaaaaaaaaaaaaaaa]\n", "2:9 table-unreadable"},
	{"too many sizes", "unit: cm\nsizes: [a" + many(101) + "]\n", ""},
	{"size twice", "unit: cm\nsizes: [S, M, S]\n", "2:15 size-repeated"},
	{"size twice by another name", "unit: cm\nsizes: [XL, XXL, 2XL]\n", "2:18 size-repeated"},
	{"sizes turned", "unit: cm\nsizes: [14, 12, 10]\n", "2:13 size-out-of-order"},
	{"number out of order", "unit: cm\nsizes: [8, 10, 9, 12]\n", "2:16 size-out-of-order"},
	{"letters out of order", "unit: cm\nsizes: [XS, XXS, S]\n", "2:13 size-out-of-order"},
	{"3XL before XXL", "unit: cm\nsizes: [XL, 3XL, XXL]\n", "2:18 size-out-of-order"},
	{"cups out of order", "unit: cm\nsizes: [36C, 34C]\n", "2:14 size-out-of-order"},
	{"ranges out of order", "unit: cm\nsizes: [98/104, 86/92]\n", "2:17 size-out-of-order"},

	{"short list", head + "body:\n  a: {values: [1, 2, 3]}\n", "4:22 size-missing-cell"},
	{"empty list", head + "body:\n  a: {values: []}\n", "4:15 size-missing-cell"},
	{"no values", head + "body:\n  a: {name: A}\n", "4:3 size-missing-cell"},
	{"empty cell", head + "body:\n  a: {values: [1, ~, 3, 4]}\n", "4:19 size-missing-cell"},
	{"missing size", head + "body:\n  a: {values: {S: 1, M: 2, XL: 4}}\n", "4:3 size-missing-cell"},
	{"empty by size", head + "body:\n  a: {values: {S: 1, M: 2, L: , XL: 4}}\n", "4:31 size-missing-cell"},
	{"long list", head + "body:\n  a: {values: [1, 2, 3, 4, 5, 6]}\n", "4:28 size-extra-cell"},
	{"unknown size", head + "body:\n  a: {values: {S: 1, M: 2, L: 3, XL: 4, XS: 0.5}}\n", "4:41 size-extra-cell"},
	{"value twice", head + "body:\n  a: {values: {S: 1, M: 2, L: 3, XL: 4, M: 2}}\n", "4:41 size-repeated"},
	{"values a number", head + "body:\n  a: {values: 5}\n", "4:15 size-not-a-number"},

	{"huge", cells("1e999"), "4:16 size-not-a-number"},
	{"inf", cells(".inf"), "4:16 size-not-a-number"},
	{"nan", cells(".nan"), "4:16 size-not-a-number"},
	{"octal", cells("010"), "4:16 size-not-a-number"},
	{"0o10", cells("0o10"), "4:16 size-not-a-number"},
	{"hex", cells("0x10"), "4:16 size-not-a-number"},
	{"many digits", cells(strings.Repeat("9", 4000)), "4:16 size-not-a-number"},
	{"negative", cells("-3"), "4:16 size-not-a-number"},
	{"nothing", cells("0"), "4:16 size-not-a-number"},
	{"part of nothing", cells("1/0"), "4:16 size-not-a-number"},
	{"too large a fraction", cells("7/4"), "4:16 size-not-a-number"},
	{"with a unit", cells("12cm"), "4:16 size-not-a-number"},
	{"decimal comma", cells("'12,5'"), "4:16 size-not-a-number"},
	{"date", cells("2024-01-02"), "4:16 size-not-a-number"},
	{"sixties", cells("1:30"), "4:16 size-not-a-number"},
	{"a map", cells("{a: 1}"), "4:16 size-not-a-number"},
	{"true", cells("true"), "4:16 size-not-a-number"},

	{"falls", head + "body:\n  bust: {values: [88, 92, 90, 100]}\n", "4:27 body-measure-shrinks"},
	{"falls from a cell too high", row("88, 92, 102, 100, 104, 108"), "4:32 body-measure-shrinks"},
	{"finished may fall", head + "finished:\n  drop: {values: [9, 8.8, 8.6, 8.4]}\n", ""},
	{"one cell out", row("88, 92, 99, 100, 104, 108"), "4:27 grade-jump"},
	{"one step out", row("88, 92, 100, 104, 108, 112"), "4:27 grade-jump"},
	{"first step out", row("80, 92, 96, 100, 104, 108"), "4:23 grade-jump"},
	{"last step out", row("88, 92, 96, 100, 104, 116"), "4:41 grade-jump"},
	{"step of nothing in a girth", row("88, 92, 92, 96, 100, 104"), "4:27 grade-jump"},
	{"step of nothing in a length", strings.Replace(row("88, 92, 92, 96, 100, 104"), "bust", "back-length", 1), ""},
	{"wrong sign", strings.Replace(row("88, 92, 96, 94, 98, 102"), "body", "finished", 1), "4:31 grade-jump"},
	{"change that holds", row("88, 90, 92, 98, 104, 110"), ""},
	{"rounding", "unit: in\nsizes: [8, 10, 12, 14, 16]\nbody:\n  neck: {values: [13, 13 1/8, 13 3/8, 13 1/2, 13 3/4]}\n", ""},
	{"too few to tell", "unit: cm\nsizes: [S, M, L]\nbody:\n  bust: {values: [80, 84, 96]}\n", ""},

	{"negative ease", head + "body:\n  hip: {values: [90, 94, 98, 102]}\nfinished:\n  hip: {over: hip, values: [90, 93, 97, 101]}\n", "6:33 negative-ease"},
	{"negative ease in a stretch", head + "stretch: true\nbody:\n  hip: {values: [90, 94, 98, 102]}\nfinished:\n  hip: {over: hip, values: [80, 84, 88, 92]}\n", ""},
	{"over unknown", head + "body:\n  waist: {values: [70, 74, 78, 82]}\nfinished:\n  waist: {over: wiast, values: [80, 84, 88, 92]}\n", "6:17 ease-over-unknown"},
	{"over nothing", head + "finished:\n  waist: {over: waist, values: [80, 84, 88, 92]}\n", "4:17 ease-over-unknown"},
	{"units differ", "unit: in\nsizes: [S]\nbody:\n  hip: {unit: cm, values: [90]}\nfinished:\n  hip: {over: hip, values: [35]}\n", "6:29 negative-ease"},
}

// cells is a table with one cell at 4:16.
func cells(value string) string {
	return "unit: cm\nsizes: [S]\nbody:\n  a: {values: [" + value + "]}\n"
}

// row is a table with one row of girths for six sizes; the first value is at 4:19.
func row(values string) string {
	return "unit: cm\nsizes: [36, 38, 40, 42, 44, 46]\nbody:\n  bust: {values: [" + values + "]}\n"
}

// many gives n more sizes in a list.
func many(n int) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, ", a%dx", i)
	}
	return b.String()
}

func TestFindings(t *testing.T) {
	for _, c := range findingCases {
		ch, fs := Read("sizes.yaml", []byte(c.src))
		sound(t, c.src, ch, fs)
		var got []string
		for _, f := range fs {
			got = append(got, fmt.Sprintf("%d:%d %s", f.Place.Start.Line, f.Place.Start.Column, f.Rule))
		}
		if c.name == "too many sizes" {
			if len(fs) != 1 || !strings.Contains(fs[0].Headline, "more than 100 sizes") || len(ch.Sizes) != mostSizes {
				t.Errorf("too many sizes: %s", list(fs))
			}
			continue
		}
		if s := strings.Join(got, ", "); s != c.want {
			t.Errorf("%s: got %q, want %q%s", c.name, s, c.want, list(fs))
		}
	}
}

// TestWhatIsSaid holds a few findings as a whole: they are what people read.
func TestWhatIsSaid(t *testing.T) {
	for _, c := range []struct{ src, headline, help, related string }{
		{row("88, 92, 99, 100, 104, 108"), "Bust in size 40 breaks the run: +7 cm from size 38, then +1 cm to size 42.", "", "size 38"},
		{row("88, 92, 90, 100, 104, 108"), "Bust falls from 92 cm in size 38 to 90 cm in size 40.", "", "size 38"},
		{"unit: in\nsizes: [8]\nbody: {hip: {values: [36 1/2]}}\nfinished: {hip: {over: hip, values: [36]}}\n",
			"Hip is smaller than the body in size 8: 36 in over 36 1/2 in.", "stretch: true", "the body"},
		{"unit: in\nsizes: [8]\nbody: {hip: {values: [7/4]}}\n", "“7/4” is not a measure of Hip in size 8.", "Did you mean 1 3/4?", "the size"},
		{"unit: in\nsizes: [8, 10, 12]\nbody: {hip: {values: [30]}}\n", "Hip has no value for sizes 10 and 12.", "Add what is missing", "the first size without"},
		{"unit: in\nsizes: [8, 10, 12]\nbody: {hip: {values: {8: 30, 10: 31, 012: 32}}}\n", "Hip has a value for “012”, which is no size of this table.", "Did you mean 12?", "begin here"},
		{"unit: in\nsizes: [8]\nfinsihed: {}\n", "“finsihed” is not a word of a table of sizes.", "Did you mean finished?", ""},
	} {
		_, fs := Read("sizes.yaml", []byte(c.src))
		if len(fs) == 0 || fs[0].Headline != c.headline || !strings.Contains(fs[0].Help, c.help) {
			t.Errorf("%s%s", c.headline, list(fs))
			continue
		}
		if c.related != "" && (len(fs[0].Related) == 0 || !strings.Contains(fs[0].Related[0].Label, c.related)) {
			t.Errorf("%s: related %v", c.headline, fs[0].Related)
		}
	}
}

// TestSizesInOrder holds lists that are right, or that have no order.
func TestSizesInOrder(t *testing.T) {
	for _, s := range []string{"8, 10, 12", "XXS, XS, S, M, L, XL, XXL, 3XL, 4XL", "000, 00, 0, 2, 4", "37, 37.5, 38", "37, 37½, 38", "1X, 2X, 3X",
		"34C, 36C", "6M, 12M, 18M", "86/92, 98/104", "8-10, 12-14", "S/M, L/XL", "One size", "small, medium, large", "petite, 8", "A, B, AA", "\"on\", \"010\"",
		"76, 80, 84, 128"} {
		chart(t, "unit: cm\nsizes: ["+s+"]\n")
	}
}

func TestManyFindingsAreCut(t *testing.T) {
	src := head + "body:\n"
	for i := range 400 {
		src += fmt.Sprintf("  a%d: {values: [x]}\n", i)
	}
	c, fs := Read("sizes.yaml", []byte(src))
	sound(t, src, c, fs)
	if len(fs) != mostFindings+1 || !strings.Contains(fs[0].Headline, "only 200 are listed") {
		t.Errorf("%d findings, first %q", len(fs), fs[0].Headline)
	}
}

func FuzzRead(f *testing.F) {
	f.Add(example)
	f.Add(cups)
	for _, c := range standardCases {
		f.Add(c.src)
	}
	for _, c := range findingCases {
		if len(c.src) < 4000 {
			f.Add(c.src)
		}
	}
	f.Fuzz(func(t *testing.T, src string) {
		c, fs := Read("sizes.yaml", []byte(src))
		sound(t, src, c, fs)
	})
}
