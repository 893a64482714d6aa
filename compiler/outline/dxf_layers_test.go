package outline

import (
	"encoding/csv"
	"fmt"
	"os"
	"strings"
	"testing"
)

// TestLayersOfTheStandard draws a point and a line on every layer of the pattern
// interchange practice (ASTM D6673, as a published list of its layers has them) and looks
// what is made of them: marks of notches and drill holes, a grain line, a mirror line, and
// nothing of the others.
func TestLayersOfTheStandard(t *testing.T) {
	f, err := os.Open("../../../shared/reference/trade/dxf_pattern_layers.csv")
	if err != nil {
		t.Skip("The list of layers is not here, so they are not compared with it.")
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment, r.FieldsPerRecord = '#', -1
	rows, err := r.ReadAll()
	if err != nil || len(rows) < 20 {
		t.Fatal(len(rows), err)
	}
	read := map[string]string{ // the standard's word, and what we make of it
		"notches (V and slit)": "notch", "T-notch": "notch", "castle notch": "notch", "check notch": "notch", "U-notch": "notch",
		"drill holes": "mark", "mirror line": "fold", "grain line": "grain",
	}
	met := 0
	for _, row := range rows[1:] {
		if row[1] == "piece boundary" || row[1] == "internal cutouts" || row[1] == "turn points" {
			continue // these are what TestDXF draws
		}
		want := read[row[1]]
		if want != "" {
			met++
		}
		if got := madeOfLayer(t, row[0]); got != want {
			t.Errorf("layer %s, %s: it becomes %q, not %q", row[0], row[1], got, want)
		}
	}
	if met != len(read) {
		t.Errorf("the list has %d of the %d layers that are read", met, len(read))
	}
}

// madeOfLayer puts a point on an edge of a square and a line inside on a layer.
func madeOfLayer(t *testing.T, layer string) string {
	t.Helper()
	square := "0\nLWPOLYLINE\n8\n1\n70\n1\n10\n0\n20\n0\n10\n300\n20\n0\n10\n300\n20\n80\n10\n0\n20\n80\n"
	src := "9\n$INSUNITS\n70\n4\n0\nBLOCK\n2\nsquare\n" + square +
		fmt.Sprintf("0\nPOINT\n8\n%s\n10\n100\n20\n0\n0\nLINE\n8\n%[1]s\n10\n50\n20\n20\n11\n50\n21\n60\n0\nENDBLK\n", layer)
	d, found := ReadDXF("square.dxf", []byte(src))
	if d == nil {
		t.Fatalf("layer %s: %v", layer, found)
	}
	o := d.Pieces[0].Of("any")
	var made []string
	if len(o.Marks) > 0 && o.Marks[0].Notch {
		made = append(made, "notch")
	} else if len(o.Marks) > 0 {
		made = append(made, "mark")
	}
	if len(o.Folds) > 0 {
		made = append(made, "fold")
	}
	if o.Grain != nil {
		made = append(made, "grain")
	}
	return strings.Join(made, " ")
}
