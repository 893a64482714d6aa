package pdf

import (
	"math"

	"seamwarden/compiler/figure"
)

// artGap is the room between small drawings, in points, and artWidest how wide several
// beside each other may make a column.
const (
	artGap    = 4
	artWidest = 140
)

// artNeed is the width that the small drawings of a cell need: side by side, as long as
// that is not too wide.
func artNeed(arts []*figure.Drawing) float64 {
	var widest, sum float64
	for _, d := range arts {
		widest, sum = max(widest, natural(d)), sum+natural(d)+artGap
	}
	return max(widest, min(sum-artGap, artWidest))
}

// placedArt is a small drawing at its place in a cell.
type placedArt struct {
	art   *figure.Drawing
	x, y  float64
	scale float64
}

// artPlaces sets the small drawings of a cell side by side, in as many rows as they need,
// and gives the height of all.
func (c *setCell) artPlaces() (all []placedArt, height float64) {
	x, y := 0.0, 0.0
	for _, d := range c.arts {
		s := scaleFor(d, c.place.width, math.Inf(1))
		if x > 0 && x+d.Width*s > c.place.width+slack {
			x, y = 0, height+artGap
		}
		all = append(all, placedArt{d, x, y, s})
		x, height = x+d.Width*s+artGap, max(height, y+d.Height*s)
	}
	return
}

// artMost is the height of the highest cell's drawings.
func (s *setRow) artMost() (most float64) {
	for i := range s.cells {
		_, h := s.cells[i].artPlaces()
		most = max(most, h)
	}
	return
}

// artMarks draws the small drawings of a row.
func (s *setRow) artMarks(l *layouter) (ms []mark) {
	for i := range s.cells {
		all, _ := s.cells[i].artPlaces()
		for _, p := range all {
			ms = append(ms, shiftAll(l.artMarks(p.art, p.scale), s.cells[i].place.x+p.x, p.y)...)
		}
	}
	return
}
