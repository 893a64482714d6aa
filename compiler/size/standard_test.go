package size

import (
	"fmt"
	"strings"
	"testing"

	"seamwarden/compiler/measure"
)

// TestStandardsAreAsInTheFiles compares the built-in numbers with the files beside the
// project: EN 13402-3 women (bust READ to 128, waist and hip RECALLED), EN 13402-3 letters
// (READ, secondary), GB/T 1335.2 figure type A (all RECALLED).
func TestStandardsAreAsInTheFiles(t *testing.T) {
	en := survey(t, "size_en13402_3_women_girths_cm.csv")
	girths := standards[0].blocks[0]
	if len(en) != len(girths[0].values) {
		t.Fatalf("%d sizes, want %d", len(girths[0].values), len(en))
	}
	same := func(what, text string, v int) {
		if l := lengthIn(t, text, measure.Centimetre); l != mm(v) {
			t.Errorf("%s: %s cm in the file, %s here", what, text, inCM(v))
		}
	}
	for i, p := range en {
		what := "EN 13402-3, size " + p["code_size_bust_cm"]
		same(what, p["code_size_bust_cm"], girths[0].values[i])
		same(what, p["bust_from"], girths[0].limits[i])
		same(what, p["bust_to"], girths[0].limits[i+1])
		same(what, p["waist_cm_recalled"], girths[1].values[i])
		same(what, p["hip_cm_recalled"], girths[2].values[i])
		if (p["source_of_bust"] == "READ") != (girths[0].rule(i) == offStandard) {
			t.Errorf("%s is %s in the file, and reported as %s", what, p["source_of_bust"], girths[0].rule(i))
		}
	}
	n := 0
	for _, p := range survey(t, "size_en13402_3_letter_codes_cm.csv") {
		std := standardOf("EN 13402-3 " + strings.ReplaceAll(p["sex"], "women", ""))
		for _, l := range std.letters {
			if l.letter == p["letter"] {
				n++
				same(p["sex"]+" "+l.letter, p["from_cm"], l.from)
				same(p["sex"]+" "+l.letter, p["to_cm"], l.to)
			}
		}
	}
	if n != 16 {
		t.Errorf("%d letters compared, want 16", n)
	}
	gb := standardOf("GB/T 1335.2-2008").blocks
	file := blocks(t, "size_gbt1335_2_women_A_cm_RECALLED.csv")
	for _, c := range []struct {
		block, column int
		name          string
	}{{0, 0, "height"}, {0, 1, "arm-length"}, {1, 0, "chest"}, {1, 1, "neck"}, {2, 0, "waist"}, {2, 1, "hip"}} {
		col := columnsOf(file[c.block], c.name)[0]
		mine := gb[c.block][c.column].values
		if len(col.values) != len(mine) {
			t.Errorf("GB/T %s: %d values, want %d", c.name, len(mine), len(col.values))
			continue
		}
		for i, v := range col.values {
			if measure.FromRat(v, measure.Centimetre) != mm(mine[i]) {
				t.Errorf("GB/T %s: %s in the file, %s here", c.name, v.FloatString(1), inCM(mine[i]))
			}
		}
	}
}

// standardCases: what a table that says it follows a standard is told.
var standardCases = []struct{ name, src, want, says string }{
	{"as the standard", "follows: EN 13402-3\nsizes: [84, 88, 92]\nunit: cm\nbody:\n  bust: {values: [84, 88, 92]}\n  waist: {values: [68, 72, 76]}\n  hip: {values: [92, 96, 100]}\n", "", ""},
	{"in inches, rounded to a quarter", "follows: EN 13402-3\nsizes: [10, 12, 14]\nunit: in\nbody:\n  bust: {values: [33, 34 3/4, 36 1/4]}\n", "", ""},
	{"every second size", "follows: EN 13402-3\nsizes: [84, 92, 100]\nunit: cm\nbody:\n  bust: {values: [84, 92, 100]}\n", "", ""},
	{"above 104 the step is 6", "follows: EN 13402-3\nsizes: [96, 100, 104, 108]\nunit: cm\nbody:\n  bust: {values: [96, 100, 104, 108]}\n", offStandard, "The nearest of EN 13402-3 for women are 104 cm and 110 cm"},
	{"one size left out", "follows: EN 13402-3\nsizes: [84, 88, 96, 100]\nunit: cm\nbody:\n  bust: {values: [84, 88, 96, 100]}\n", offStandard, "so 92 cm of EN 13402-3 for women is left out"},
	{"letters", "follows: EN 13402-3\nsizes: [S, M, L, XL]\nunit: cm\nbody:\n  bust: {values: [86, 94, 102, 110]}\n", "", ""},
	{"a letter's girth reaches into the next", "follows: EN 13402-3\nsizes: [S, M, L]\nunit: cm\nbody:\n  bust: {values: [86, 94, 107]}\n", offStandard, "L is for 98 cm to 107 cm"},
	{"men", "follows: EN 13402-3 men\nsizes: [S, M, L, XL]\nunit: cm\nbody:\n  chest: {values: [90, 98, 106, 117.9]}\n", "", ""},
	{"men's letters are not women's", "follows: EN 13402-3, men\nsizes: [S, M, L]\nunit: cm\nbody:\n  chest: {values: [86, 94, 101]}\n", offStandard, "In EN 13402-3 for men, L is for 102 cm to 110 cm"},
	{"a waist beside another bust", "follows: EN 13402-3\nsizes: [84, 88, 92]\nunit: cm\nbody:\n  bust: {values: [84, 88, 92]}\n  waist: {values: [64, 68, 72]}\n", offRecalled, "has 68 cm beside that bust; 2 other sizes of the row differ too"},
	{"a skirt by its hips", "follows: EN 13402-3\nsizes: [36, 38, 40]\nunit: cm\nbody:\n  hip: {values: [92, 96, 100]}\n  waist: {values: [68, 72, 76]}\n", "", ""},
	{"declared limits", "follows: EN 13402-3\nsizes: [84, 88]\nunit: cm\nbody:\n  bust: {values: [84, 88], limits: [82, 86, 90]}\n", "", ""},
	{"other limits", "follows: EN 13402-3\nsizes: [84, 88]\nunit: cm\nbody:\n  bust: {values: [84, 88], limits: [82, 87, 90]}\n", offStandard, "Its limits are not those"},
	{"children", "follows: EN 13402-3 for children\nsizes: [92, 98, 104]\nunit: cm\nbody:\n  height: {values: [92, 98, 104]}\n", "", ""},
	{"children by fives", "follows: EN 13402-3 for children\nsizes: [95, 100, 105]\nunit: cm\nbody:\n  height: {values: [95, 100, 105]}\n", offRecalled, "92 cm and 98 cm"},
	{"GB/T, recalled", "follows: GB/T 1335.2-2008\nsizes: [84, 88]\nunit: cm\nbody:\n  chest: {values: [84, 88]}\n  neck: {values: [33.6, 35]}\n", offRecalled, "has 34.4 cm beside that chest"},
	{"a standard that is not known", "follows: Quillfen block 3\nsizes: [S]\nunit: cm\nbody:\n  bust: {values: [84]}\n", "not-checked", "“Quillfen block 3”"},
}

func TestFollowsAStandard(t *testing.T) {
	for _, c := range standardCases {
		t.Run(c.name, func(t *testing.T) {
			x, fs := Read("sizes.yaml", []byte(c.src))
			sound(t, c.src, x, fs)
			var got []string
			said := ""
			for _, f := range fs {
				got = append(got, f.Rule)
				said += f.Headline + "\n"
			}
			if strings.Join(got, ", ") != c.want || !strings.Contains(said, c.says) {
				t.Errorf("found %v, want %s, %q:\n%s", got, c.want, c.says, said)
			}
		})
	}
}

// TestEverySlipAgainstTheStandard moves one girth of the whole series by 1 cm: each is found.
func TestEverySlipAgainstTheStandard(t *testing.T) {
	n := 0
	for col := range standards[0].blocks[0] {
		for cell := range standards[0].blocks[0][0].values {
			var b strings.Builder
			for i, s := range standards[0].blocks[0] {
				var cells []string
				for k, v := range s.values {
					if i == col && k == cell {
						v += 10
					}
					cells = append(cells, fmt.Sprint(v/10))
				}
				if i == 0 {
					fmt.Fprintf(&b, "unit: cm\nfollows: EN 13402-3\nsizes: [%s]\nbody:\n", strings.Join(cells, ", "))
				}
				fmt.Fprintf(&b, "  %s: { values: [%s] }\n", s.keys[0], strings.Join(cells, ", "))
			}
			_, fs := Read("sizes.yaml", []byte(b.String()))
			n++
			if rule := standards[0].blocks[0][col].rule(cell); len(fs) != 1 || fs[0].Rule != rule && fs[0].Rule != offStandard && (cell != 1 || fs[0].Rule != "grade-jump") {
				t.Errorf("column %d, cell %d:%s", col, cell, list(fs))
			}
		}
	}
	if n != 48 {
		t.Errorf("%d slips, want 48", n)
	}
}
