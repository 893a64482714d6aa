package outline

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"os"
	"strings"
	"testing"
)

// TestWidenedAsLibrariesDo compares our offset with what two general libraries of
// geometry, which know one width for all edges, make of the same polygons: corner by
// corner with clipper2-ts 2.0.1 (a port of Clipper2), and by area with jsts 2.12.1 (a port
// of JTS). Both were run once; testdata/offsets.mjs says how.
func TestWidenedAsLibrariesDo(t *testing.T) {
	src, err := os.ReadFile("testdata/offsets.json")
	if err != nil {
		t.Fatal(err)
	}
	var rows []struct {
		Name     string
		Width    float64
		Ring     [][2]float64
		Clipper2 [][2]float64 // in hundredths of a millimetre
		JTSArea  float64      `json:"jtsArea"` // in their squares
	}
	if err := json.Unmarshal(src, &rows); err != nil || len(rows) < 50 {
		t.Fatal(len(rows), err)
	}
	for _, row := range rows {
		shape := fmt.Sprintf("M%v %v", row.Ring[0][0], row.Ring[0][1])
		for _, p := range row.Ring[1:] {
			shape += fmt.Sprintf("L%v %v", p[0], p[1])
		}
		got, err := drawn(t, `<path id="r" d="`+shape+`Z"/>`).Widened(func(*Edge) float64 { return row.Width })
		if strings.HasPrefix(row.Name, "a hollow too narrow") {
			if !errors.Is(err, ErrTooNarrow) { // the libraries close it; ours says that it will not do
				t.Errorf("%s by %v mm: %v", row.Name, row.Width, err)
			}
			continue
		}
		if err != nil {
			t.Errorf("%s by %v mm: %v", row.Name, row.Width, err)
			continue
		}
		var want []Point
		for _, p := range row.Clipper2 {
			want = append(want, Point{X: p[0] / 100, Y: p[1] / 100})
		}
		if off := apart(got, want); off > 0.03 {
			t.Errorf("%s by %v mm: a corner lies %.3f mm off\n%v\n%v", row.Name, row.Width, off, got, want)
		}
		if a := math.Abs(areaOf(got)) * 1e4; math.Abs(a/row.JTSArea-1) > 1e-5 {
			t.Errorf("%s by %v mm: the area is %v, by JTS %v", row.Name, row.Width, a, row.JTSArea)
		}
	}
}

// apart is how far a corner of either polygon lies from the other one; a library may
// round off a corner that hardly turns.
func apart(a, b []Point) (most float64) {
	for range 2 {
		for _, p := range a {
			near := math.Inf(1)
			for i, q := range b {
				c := straight(q, b[(i+1)%len(b)])
				_, d := c.nearest(p, math.Inf(1))
				near = min(near, d)
			}
			most = max(most, near)
		}
		a, b = b, a
	}
	return
}
