package pdf

import (
	"testing"

	"seamwarden/compiler/figure"
)

// TestSmallDrawings sets drawings of a cell side by side until the column is full, then
// below, and asks for a column in which they have room.
func TestSmallDrawings(t *testing.T) {
	d := &figure.Drawing{Width: 100, Height: 50, NaturalWidth: 20} // 56.7 by 28.3 points
	if w := artNeed([]*figure.Drawing{d}); w < 56.6 || w > 56.8 {
		t.Errorf("one needs %v points", w)
	}
	if w := artNeed([]*figure.Drawing{d, d, d}); w != artWidest {
		t.Errorf("three need %v points", w)
	}
	c := &setCell{place: column{x: 10, width: artWidest}, arts: []*figure.Drawing{d, d, d}}
	all, height := c.artPlaces()
	if len(all) != 3 || all[1].y != 0 || all[1].x <= all[0].x || all[2].x != 0 || all[2].y <= 28 || height < 60 || height > 61 {
		t.Errorf("%+v, %v high", all, height)
	}
	for _, p := range all {
		if p.x+d.Width*p.scale > artWidest+slack {
			t.Errorf("%+v stands out of the column", p)
		}
	}
}
