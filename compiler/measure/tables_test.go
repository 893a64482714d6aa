package measure

import (
	"encoding/csv"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"testing"
)

// readTable returns the rows of a reference table that lies beside the
// project, without its head; comment lines begin with #. The test is skipped
// if the tables are not there.
func readTable(t *testing.T, name string) [][]string {
	t.Helper()
	f, err := os.Open(reference(name))
	if errors.Is(err, fs.ErrNotExist) {
		t.Skipf("the reference table %s is not here, so it was not compared", name)
	}
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil || len(rows) < 2 {
		t.Fatalf("%s: %d rows, %v", name, len(rows), err)
	}
	return rows[1:]
}

// reference returns the path of a reference file, which stands in a folder
// beside the project's own.
func reference(name string) string {
	return filepath.Join("..", "..", "..", "shared", "reference", "trade", name)
}

func loose(t *testing.T, text string) Measure {
	t.Helper()
	m, err := ParseLoose(text)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// Factors of NIST Handbook 44, Appendix C, General Tables of Units of
// Measurement (1 inch = 2.54 centimetres exactly, 1 yard = 0.9144 metre
// exactly); recalled from memory and, for the inch and the yard, confirmed by
// the units program's table.
func TestHandbook44Factors(t *testing.T) {
	for _, c := range []struct {
		from Unit
		num  int64
		den  int64 // of millimetres
	}{
		{Inch, 254, 10},
		{Yard, 9144, 10},
		{Millimetre, 1, 1},
		{Centimetre, 10, 1},
		{Metre, 1000, 1},
	} {
		if got, want := Of(1, 1, c.from), Of(c.num, c.den, Millimetre); got != want {
			t.Errorf("1 %s = %s, want %s", c.from, got, want)
		}
	}
	if Of(1, 1, Yard) != FromInches(36, 1) {
		t.Error("1 yd is not 36 in")
	}
}

// Pairs as patterns print them; the table names its sources row by row (one is
// read, the others are recalled common practice).
func TestPrintedPairsAgree(t *testing.T) {
	for _, row := range readTable(t, "inch_metric_printed_pairs.csv") {
		inch, metric := loose(t, row[0]+" in"), loose(t, row[2])
		if got := inch.Length; got != loose(t, row[1]+" mm").Length {
			t.Errorf("%s in = %s, the table says %s mm", row[0], got, row[1])
		}
		if !PairAgrees(inch, metric) {
			t.Errorf("%s in = %s is printed, but was not accepted", row[0], row[2])
		}
	}
}

// The table was computed from 1 yd = 0.9144 m; each row gives the exact value
// and what it is rounded up to.
func TestEighthsOfAYard(t *testing.T) {
	rows := readTable(t, "yard_metre_eighths.csv")
	if len(rows) != 48 {
		t.Errorf("%d rows, want 48 eighths", len(rows))
	}
	for _, row := range rows {
		yards := loose(t, row[0]+" yd")
		if yards.Length != loose(t, row[1]+" in").Length || yards.Length != loose(t, row[3]+" m").Length {
			t.Errorf("%s yd = %s, the table says %s in and %s m", row[0], yards.Length, row[1], row[3])
		}
		printed := loose(t, row[5]+" m")
		if up := MetresUp(yards.Length); up != printed.Length {
			t.Errorf("%s yd is rounded up to %s, the table says %s m", row[0], up, row[5])
		}
		if YardsUp(yards.Length) != yards.Length {
			t.Errorf("%s yd is an eighth already, but was rounded", row[0])
		}
		for _, column := range []string{row[4], row[5]} {
			if !PairAgrees(yards, loose(t, column+" m")) {
				t.Errorf("%s yd = %s m was not accepted", row[0], column)
			}
		}
	}
}

func TestPairsThatDisagree(t *testing.T) {
	for _, c := range []struct{ imperial, metric, why string }{
		{"5/8 in", "2 cm", "4 mm too much"},
		{"1/2 in", "1.5 cm", "5/8 in"},
		{"3/4 in", "1.5 cm", "5/8 in"},
		{"1 in", "3 cm", "1 1/8 in"},
		{"25.75 in", "64.8 cm", "16 CFR 1615.1(c) prints it; 64.8 cm is 25.5 in, read there"},
		{"1/4 in", "1 cm", "3/8 in"},
		{"1 1/2 in", "1.5 cm", "the whole inch left out"},
		{"4 in", "11 cm", "4 3/8 in"},
		{"36 in", "100 cm", "a metre is not a yard"},
		{"2 yd", "1.5 m", "1 5/8 yd"},
		{"2 yd", "2 m", "17 cm more than it is"},
		{"2 yd", "1.7 m", "an eighth of a yard and more is missing"},
		{"1 yd", "90 mm", "the wrong unit"},
	} {
		if PairAgrees(loose(t, c.imperial), loose(t, c.metric)) {
			t.Errorf("%s = %s was accepted: %s", c.imperial, c.metric, c.why)
		}
	}
}

func TestPairsThatAgree(t *testing.T) {
	for _, c := range []struct{ imperial, metric string }{
		{"15.75 in", "40 cm"}, // 16 CFR 1615.1(c), read there
		{"25.75 in", "65.4 cm"},
		{"5/8 in", "15 mm"},
		{"5/8 in", "1,5 cm"},                                         // with a decimal comma
		{"45 in", "115 cm"}, {"60 in", "150 cm"}, {"36 in", "90 cm"}, // widths of cloth, common practice, no source
		{"34 1/2 in", "87.5 cm"}, {"36 in", "92 cm"}, {"24 in", "61 cm"},
		{"2 1/4 yd", "2.1 m"}, {"2 yd", "1.9 m"}, {"1/2 yd", "0.5 m"}, {"1/4 yd", "25 cm"},
	} {
		if !PairAgrees(loose(t, c.imperial), loose(t, c.metric)) {
			t.Errorf("%s = %s was not accepted", c.imperial, c.metric)
		}
	}
}
