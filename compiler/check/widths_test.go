package check

import (
	"encoding/csv"
	"math"
	"os"
	"testing"

	"seamwarden/compiler/measure"
)

// TestWidthChart compares the built-in chart with the file beside the project (an extension
// leaflet's chart READ in secondary copies; its column of 32 in is RECALLED and left out), and
// holds what is true of both: less on a wider cloth, more further down.
func TestWidthChart(t *testing.T) {
	f, err := os.Open("../../../shared/reference/trade/fabric_width_conversion_yards.csv")
	if err != nil {
		t.Skip("The width conversion chart is not here; it does not come with the project.")
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil || len(rows) != len(conversion)+1 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	for i, row := range rows[1:] {
		for k, cell := range row[1:] {
			m, err := measure.ParseLoose(cell + " yd")
			if err != nil || m.Length != measure.Of(conversion[i][k], 8, measure.Yard) {
				t.Errorf("line %d, %s: %s yd in the file, %d eighths here", i+1, rows[0][k+1], cell, conversion[i][k])
			}
			if k > 0 && conversion[i][k] > conversion[i][k-1] || i > 0 && conversion[i][k] <= conversion[i-1][k] {
				t.Errorf("line %d, column %d breaks the run", i+1, k)
			}
		}
	}
}

// TestWidthChartBesideTheSameArea: how far the chart lies from the same area, which MODEL.md
// tells. The chart takes its narrowest column as the start.
func TestWidthChartBesideTheSameArea(t *testing.T) {
	above, below, n, least, most := 0, 0, 0, 9.0, 0.0
	for _, line := range conversion {
		for a := range line {
			for b := a + 1; b < len(line); b++ {
				width := func(c int) float64 { return float64(chartWidths[c][1]) }
				share := float64(line[b]) / (float64(line[a]) * width(a) / width(b))
				n++
				if share > 1+1e-9 {
					above++
				} else if share < 1-1e-9 {
					below++
				}
				least, most = min(least, share), max(most, share)
			}
		}
	}
	t.Logf("%d conversions: %d ask for more than the same area, %d for less; from %.3f to %.3f of it", n, above, below, least, most)
	if n != 12*28 || above != 194 || below != 121 || math.Abs(least-0.892) > 0.0005 || math.Abs(most-1.131) > 0.0005 {
		t.Errorf("%d conversions, %d above, %d below, %.3f to %.3f", n, above, below, least, most)
	}
}

// TestChartColumn: widths as cloth is sold; 140 cm is sold as 54 or 55 in (common practice).
func TestChartColumn(t *testing.T) {
	for text, want := range map[string]int{"36in": 0, "90cm": 0, "39in": 1, "45in": 3, "110cm": 3, "115cm": 3, "54in": 5, "140cm": 5, "150cm": 6, "60in": 6, "20in": -1, "120cm": -1, "200cm": -1} {
		m, err := measure.Parse(text)
		if err != nil {
			t.Fatal(err)
		}
		if got := chartColumn(m.Length); got != want {
			t.Errorf("%s is in column %d, want %d", text, got, want)
		}
	}
	// The line in which 2 yd at 60 in stands, which a worked example on a public page names too.
	if got, ok := chartSays(measure.Of(11, 4, measure.Yard), 3, 6); !ok || got != measure.Of(2, 1, measure.Yard) {
		t.Errorf("2 3/4 yd at 45 in is %v at 60 in", got)
	}
	if _, ok := chartSays(measure.Of(1, 2, measure.Yard), 3, 6); ok {
		t.Error("half a yard is outside the chart")
	}
	if _, ok := chartSays(measure.Of(6, 1, measure.Yard), 3, 6); ok {
		t.Error("6 yd is outside the chart")
	}
}
