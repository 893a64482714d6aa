package measure

import (
	"errors"
	"io/fs"
	"math"
	"math/big"
	"os"
	"strconv"
	"testing"

	"gopkg.in/yaml.v3"
)

// example is one worked example of the reference: numbers that a named source
// gives for its rule. The head of the file says which were read and where.
type example struct {
	ID  string         `yaml:"id"`
	In  map[string]any `yaml:"in"`
	Out map[string]any `yaml:"out"`
}

// examples returns the worked examples by their id.
func examples(t *testing.T) map[string]example {
	t.Helper()
	text, err := os.ReadFile(reference("worked_examples.yaml"))
	if errors.Is(err, fs.ErrNotExist) {
		t.Skip("the worked examples are not here, so they were not compared")
	}
	var groups map[string][]example
	if err == nil {
		err = yaml.Unmarshal(text, &groups)
	}
	if err != nil {
		t.Fatal(err)
	}
	all := map[string]example{}
	for _, group := range groups {
		for _, e := range group {
			all[e.ID] = e
		}
	}
	return all
}

// rat returns a number of an example as the exact decimal that is written.
func rat(t *testing.T, values map[string]any, name string) *big.Rat {
	t.Helper()
	f, isFloat := values[name].(float64)
	n, isInt := values[name].(int)
	if isInt {
		f = float64(n)
	}
	if !isFloat && !isInt {
		t.Fatalf("the example has no number %s", name)
	}
	r, _ := new(big.Rat).SetString(strconv.FormatFloat(f, 'f', -1, 64))
	return r
}

// sized returns a length of an example.
func sized(t *testing.T, values map[string]any, name string, u Unit) Length {
	t.Helper()
	return FromRat(rat(t, values, name), u)
}

func expect(t *testing.T, id string, got, want Length) {
	t.Helper()
	if got != want {
		t.Errorf("%s: %s, the source gives %s", id, got, want)
	}
}

func TestBiasExamples(t *testing.T) {
	all := examples(t)
	e := all["bias_len_20x20_w2"]
	expect(t, e.ID, BiasLength(sized(t, e.In, "square_in", Inch), sized(t, e.In, "cut_width_in", Inch)), sized(t, e.Out, "length_in", Inch))
	e = all["bias_36_w2"]
	length := BiasLength(sized(t, e.In, "square_in", Inch), sized(t, e.In, "cut_width_in", Inch))
	expect(t, e.ID, length, sized(t, e.Out, "length_in", Inch))
	expect(t, e.ID, length, sized(t, e.Out, "length_yd", Yard))
	e = all["bias_square_with_seam"]
	side := sized(t, e.In, "square_in", Inch).Sub(sized(t, e.In, "allowance_in", Inch))
	roundsTo(t, e.ID, BiasLength(side, sized(t, e.In, "cut_width_in", Inch)).In(Inch), rat(t, e.Out, "length_in"), 1)
	for _, id := range []string{"bias_side_250_w2", "bias_side_100_w3_5", "bias_side_55_w2_5"} {
		e = all[id]
		got := BiasSquareSide(sized(t, e.In, "length_in", Inch), sized(t, e.In, "cut_width_in", Inch))
		expect(t, id, got, sized(t, e.Out, "side_in", Inch))
	}
}

// roundsTo says whether a value, rounded to so many decimals, is what is
// printed.
func roundsTo(t *testing.T, id string, value, printed *big.Rat, places int) {
	t.Helper()
	if got, want := value.FloatString(places), printed.FloatString(places); got != want {
		t.Errorf("%s: %s, printed %s", id, got, want)
	}
}

// Three pages cut digits off where they should round: 19/36 yd is printed as
// 0.52, the root of 137.5 as 11.72 and 496 in as 13.7 yd. Our values round to
// what is right, and not to what is printed.
func TestTruncatedDigitsAreNotOurs(t *testing.T) {
	all := examples(t)
	e := all["bias_side_100_w3_5"]
	side := BiasSquareSide(sized(t, e.In, "length_in", Inch), sized(t, e.In, "cut_width_in", Inch))
	roundsTo(t, e.ID, side.In(Yard), rat(t, e.Out, "yards_of_square"), 2) // 0.53

	e = all["bias_side_55_w2_5"]
	area := new(big.Rat).Mul(rat(t, e.In, "length_in"), rat(t, e.In, "cut_width_in"))
	root, _ := area.Float64()
	roundsTo(t, e.ID, new(big.Rat).SetFloat64(math.Sqrt(root)), rat(t, e.Out, "root"), 2) // 11.73

	e = all["bias_placemats"]
	w, h := sized(t, e.In, "w_in", Inch), sized(t, e.In, "h_in", Inch)
	count := rat(t, e.In, "count")
	total := w.Add(h).Mul(2).Add(sized(t, e.In, "overlap_in", Inch)).MulRat(count)
	expect(t, e.ID, total, sized(t, e.Out, "total_in", Inch))
	roundsTo(t, e.ID, total.In(Yard), rat(t, e.Out, "yards"), 2) // 13.78
	if total.In(Yard).FloatString(1) == "13.7" {
		t.Error("496 in are 13.8 yd to one place, not 13.7")
	}
	if up := YardsUp(total); up.Cmp(sized(t, e.Out, "buy_yd", Yard)) > 0 || up.Cmp(total) < 0 {
		t.Errorf("%s: buy %s", e.ID, up)
	}
}

func TestGatherExamples(t *testing.T) {
	all := examples(t)
	for _, c := range []struct{ id, end, out string }{
		{"gather_20_r2_5", "", "flat_in"},
		{"gather_15_r2_5", "", "flat_in"},
		{"gather_24_r2_ends", "end_allowance_in", "cut_in"},
	} {
		e, end := all[c.id], Length{}
		if c.end != "" {
			end = sized(t, e.In, c.end, Inch)
		}
		got := GatherFlat(sized(t, e.In, "finished_in", Inch), rat(t, e.In, "ratio"), end)
		expect(t, c.id, got, sized(t, e.Out, c.out, Inch))
	}
}

func TestPleatExamples(t *testing.T) {
	all := examples(t)
	e := all["pleat_knife_92"]
	count, width, flat := KnifePleats(sized(t, e.In, "section_cm", Centimetre), sized(t, e.In, "width_cm", Centimetre), sized(t, e.In, "depth_cm", Centimetre))
	if count != int64(e.Out["n"].(int)) {
		t.Errorf("%s: %d pleats", e.ID, count)
	}
	roundsTo(t, e.ID, width.In(Centimetre), rat(t, e.Out, "corrected_width_cm"), 1)
	expect(t, e.ID, flat, sized(t, e.Out, "flat_cm", Centimetre))

	for _, id := range []string{"pleat_box_60_d12", "pleat_inverted_66_d6_5"} {
		e := all[id]
		got := BoxPleatsFlat(sized(t, e.In, "section_cm", Centimetre), sized(t, e.In, "depth_cm", Centimetre), int64(e.In["count"].(int)))
		expect(t, id, got, sized(t, e.Out, "flat_cm", Centimetre))
	}
}

// The handbook finds 2.36 m and goes on with 2.34 m. Ours is the length that
// the first sum gives; both need three strips.
func TestHandbookSlip(t *testing.T) {
	all := examples(t)
	e, pleats := all["pleat_strips_236"], all["pleat_knife_92"]
	_, _, flat := KnifePleats(sized(t, pleats.In, "section_cm", Centimetre), sized(t, pleats.In, "width_cm", Centimetre), sized(t, pleats.In, "depth_cm", Centimetre))
	printed := sized(t, e.In, "flat_m_as_printed", Metre)
	if flat == printed || flat != Of(236, 1, Centimetre) {
		t.Errorf("flat %s, want 2.36 m and not the printed %s", flat, printed)
	}
	wide, allowance := sized(t, e.In, "fabric_width_m", Metre), sized(t, e.In, "allowance_m", Metre)
	for _, f := range []Length{flat, printed} {
		strips := Strips(f, wide, allowance)
		if strips != int64(e.Out["strips"].(int)) {
			t.Errorf("%s: %d strips", f, strips)
		}
		expect(t, e.ID, sized(t, e.In, "strip_length_cm", Centimetre).Mul(strips), sized(t, e.Out, "length_cm", Centimetre))
	}
}

// Sums that have no answer give nothing, and do not fail.
func TestSumsWithoutAnAnswer(t *testing.T) {
	inch := FromInches(1, 1)
	if got := BiasLength(inch, Length{}); !got.IsZero() {
		t.Errorf("a strip without width is %s long", got)
	}
	if got := BiasSquareSide(inch.Mul(-1), inch); !got.IsZero() {
		t.Errorf("less than no strip takes a square of %s", got)
	}
	if n, _, flat := KnifePleats(inch, Length{}, inch); n != 0 || flat != inch {
		t.Errorf("%d pleats without width, %s flat", n, flat)
	}
	if n := Strips(inch, inch, inch); n != 0 {
		t.Errorf("%d strips of cloth that is all allowance", n)
	}
	if got := BiasSquareSide(FromInches(50, 1), FromInches(2, 1)); got != FromInches(10, 1) {
		t.Errorf("a whole root is rounded up to %s", got)
	}
}
