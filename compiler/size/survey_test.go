package size

import (
	"encoding/csv"
	"fmt"
	"math"
	"math/big"
	"os"
	"strconv"
	"strings"
	"testing"

	"seamwarden/compiler/measure"
)

// Choices of size for people who were measured: the open surveys lie beside the project,
// and tests that need them are skipped without.

// survey reads a file of measured people, each a map of its columns.
func survey(t testing.TB, file string) (people []map[string]string) {
	f, err := os.Open(tables + file)
	if err != nil {
		t.Skip("The survey " + file + " is not here; it does not come with the project.")
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil || len(rows) < 2 {
		t.Fatalf("%s: %d rows, %v", file, len(rows), err)
	}
	for _, row := range rows[1:] {
		p := map[string]string{}
		for i, name := range rows[0] {
			p[name] = row[i]
		}
		people = append(people, p)
	}
	return
}

func lengthIn(t testing.TB, text string, u measure.Unit) measure.Length {
	r, ok := new(big.Rat).SetString(text)
	if !ok {
		t.Fatalf("%q is no number", text)
	}
	return measure.FromRat(r, u)
}

// standardChart writes a chart of the letters or of the girths of EN 13402-3 (bust READ in
// secondary sources to 128, letters READ, waist and hip RECALLED).
func lettersChart(t testing.TB, std *standard, key string) *Chart {
	var sizes, values, limits []string
	for _, l := range std.letters {
		sizes = append(sizes, l.letter)
		values = append(values, fmt.Sprint(float64(l.from+l.to)/20))
		limits = append(limits, fmt.Sprint(float64(l.from)/10))
	}
	limits = append(limits, fmt.Sprint(float64(std.letters[len(std.letters)-1].to)/10))
	c, fs := Read("sizes.yaml", []byte(fmt.Sprintf("unit: cm\nsizes: [%s]\nbody:\n  %s: { values: [%s], limits: [%s] }\n",
		strings.Join(sizes, ", "), key, strings.Join(values, ", "), strings.Join(limits, ", "))))
	if len(fs) > 0 {
		t.Fatal(list(fs))
	}
	return c
}

func girthsChart(t testing.TB) *Chart {
	var b strings.Builder
	for i, s := range standards[0].blocks[0] {
		var cells []string
		for _, v := range s.values {
			cells = append(cells, fmt.Sprint(v/10))
		}
		if i == 0 {
			fmt.Fprintf(&b, "unit: cm\nfollows: EN 13402-3\nsizes: [%s]\nbody:\n", strings.Join(cells, ", "))
		}
		fmt.Fprintf(&b, "  %s: { values: [%s] }\n", s.keys[0], strings.Join(cells, ", "))
	}
	c, fs := Read("sizes.yaml", []byte(b.String()))
	if len(fs) > 0 {
		t.Fatal(list(fs))
	}
	return c
}

// surveys are the files whose class counts are known.
var surveys = []struct {
	name, file, column string
	unit               measure.Unit
	who                string
}{
	{"spanish_women", "spanish_women_survey_sample_cm.csv", "bust_cm", measure.Centimetre, ""},
	{"ansur2_female", "ansur2_female_subset_mm.csv", "chestcircumference", measure.Millimetre, ""},
	{"ansur2_male", "ansur2_male_subset_mm.csv", "chestcircumference", measure.Millimetre, "men"},
}

// TestClassCounts puts everybody of three surveys through the choice with the letters of
// EN 13402-3 and compares how many come out in each with size_class_counts_check.csv, which
// was counted by another program.
func TestClassCounts(t *testing.T) {
	want := map[string]map[string]string{}
	for _, row := range survey(t, "size_class_counts_check.csv") {
		want[row["data"]] = row
	}
	for _, s := range surveys {
		std, key := standardOf("EN 13402-3 "+s.who), "bust"
		if s.who == "men" {
			key = "chest"
		}
		c := lettersChart(t, std, key)
		got := map[string]int{}
		people := survey(t, s.file)
		for _, p := range people {
			ch, err := c.Choice(Body{key: lengthIn(t, p[s.column], s.unit)})
			if err != nil {
				t.Fatal(err)
			}
			name := c.Sizes[ch.Choices[0].Size]
			if ch.Choices[0].Lead().Where != Inside {
				name = "outside"
			}
			got[name]++
		}
		if fmt.Sprint(len(people)) != want[s.name]["n"] {
			t.Errorf("%s: %d people, want %s", s.name, len(people), want[s.name]["n"])
		}
		for _, name := range append(append([]string{}, c.Sizes...), "outside") {
			if fmt.Sprint(got[name]) != want[s.name][name] {
				t.Errorf("%s, %s: %d people, want %s", s.name, name, got[name], want[s.name][name])
			}
		}
	}
}

// TestNearestGivesTheStandardsClasses: the classes of EN 13402-3 are what "the nearest size,
// from half way on the larger one" makes of its size centres, so each letter counts the
// same people as the centres that belong to it.
func TestNearestGivesTheStandardsClasses(t *testing.T) {
	c := girthsChart(t)
	bust := standards[0].blocks[0][0]
	b := c.BodyRow("bust").limitsBy(Nearest)
	for i, l := range bust.limits {
		if b[i] != mm(l) {
			t.Errorf("limit %d is %v, the standard has %s", i, b[i], inCM(l))
		}
	}
	women := map[string]string{}
	for _, row := range survey(t, "size_class_counts_check.csv") {
		if row["data"] == "ansur2_female" {
			women = row
		}
	}
	got := map[string]int{}
	for _, p := range survey(t, "ansur2_female_subset_mm.csv") {
		ch, err := c.Choice(Body{"bust": lengthIn(t, p["chestcircumference"], measure.Millimetre)})
		if err != nil {
			t.Fatal(err)
		}
		size, _ := strconv.Atoi(c.Sizes[ch.Choices[0].Size])
		for _, l := range standards[0].letters {
			if ch.Choices[0].Lead().Where == Inside && l.from <= size*10 && size*10 < l.to {
				got[l.letter]++
			}
		}
	}
	for _, l := range standards[0].letters[1:] { // the centres begin with XS
		if fmt.Sprint(got[l.letter]) != women[l.letter] {
			t.Errorf("%s: %d women, want %s", l.letter, got[l.letter], women[l.letter])
		}
	}
}

// TestNearestIsNearest compares the size of each girth of two surveys with the nearest by
// plain counting in floating point; the girths of the files are no half way cases but for
// those that are told apart by a hundredth of a millimetre.
func TestNearestIsNearest(t *testing.T) {
	c := girthsChart(t)
	n := 0
	for _, f := range []struct {
		file string
		cols map[string]string
		keep func(map[string]string) bool
	}{
		{"spanish_women_survey_sample_cm.csv", map[string]string{"bust": "bust_cm", "waist": "waist_cm", "hip": "hip_cm"}, nil},
		{"heinz_body_girths_cm.csv", map[string]string{"waist": "WaistG", "hip": "HipG"}, func(p map[string]string) bool { return p["Gender"] == "0" }},
	} {
		for _, p := range survey(t, f.file) {
			if f.keep != nil && !f.keep(p) {
				continue
			}
			for key, col := range f.cols {
				x, _ := strconv.ParseFloat(p[col], 64)
				row := c.BodyRow(key)
				best := 0
				for i := range row.Values {
					if math.Abs(row.Values[i].MM()/10-x) <= math.Abs(row.Values[best].MM()/10-x)+1e-9 {
						best = i
					}
				}
				n++
				if got := fitOf(row, Nearest, lengthIn(t, p[col], measure.Centimetre)).Size; got != best {
					t.Errorf("%s %s is size %s, want %s", key, p[col], c.Sizes[got], c.Sizes[best])
				}
			}
		}
	}
	if n != 600*3+260*2 {
		t.Errorf("%d girths, want %d", n, 600*3+260*2)
	}
}

// TestChildrenGoByHeight takes the median heights of the US growth charts of 2000 through
// sizes of 6 cm: each child is in the first size that is not less than its height, and
// one that a year has made taller is in no smaller size.
func TestChildrenGoByHeight(t *testing.T) {
	src := "unit: cm\nsizes: [80, 86, 92, 98, 104, 110, 116, 122, 128, 134, 140, 146, 152, 158, 164, 170, 176, 182]\nbody:\n  height: { values: [80, 86, 92, 98, 104, 110, 116, 122, 128, 134, 140, 146, 152, 158, 164, 170, 176, 182] }\n"
	c := chart(t, src)
	last, n := map[string]int{}, 0
	for _, p := range survey(t, "cdc2000_stature_for_age_cm.csv") {
		if p["measure"] != "stature" {
			continue
		}
		n++
		l := lengthIn(t, p["M"], measure.Centimetre)
		ch, err := c.Choice(Body{"height": l})
		if err != nil {
			t.Fatal(err)
		}
		i := ch.Choices[0].Size
		if c.Body[0].Values[i].Cmp(l) < 0 || i > 0 && c.Body[0].Values[i-1].Cmp(l) >= 0 || i < last[p["Sex"]] {
			t.Errorf("%s months, %s cm: size %s", p["Agemos"], p["M"], c.Sizes[i])
		}
		last[p["Sex"]] = i
	}
	if n < 20 {
		t.Errorf("only %d medians", n)
	}
}

func BenchmarkChoice(b *testing.B) {
	c := girthsChart(b)
	own := Body{"bust": measure.Of(93, 1, measure.Centimetre), "waist": measure.Of(77, 1, measure.Centimetre), "hip": measure.Of(104, 1, measure.Centimetre)}
	for b.Loop() {
		if _, err := c.Choice(own); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkSurvey(b *testing.B) {
	c := girthsChart(b)
	var people []Body
	for _, p := range survey(b, "ansur2_female_subset_mm.csv") {
		people = append(people, Body{"bust": lengthIn(b, p["chestcircumference"], measure.Millimetre), "hip": lengthIn(b, p["buttockcircumference"], measure.Millimetre)})
	}
	for b.Loop() {
		for _, own := range people {
			if _, err := c.Choice(own); err != nil {
				b.Fatal(err)
			}
		}
	}
}
