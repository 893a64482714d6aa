package pack

import "math"

// line is an edge as a·x + b·y + c, the distance to its left.
type line struct{ a, b, c float64 }

func linesOf(r []Point) []line {
	lines := make([]line, len(r))
	for i, p := range r {
		e := r[(i+1)%len(r)].minus(p)
		x, y := float64(e.X), float64(e.Y)
		long := math.Sqrt(float64(x*x) + float64(y*y))
		l := line{a: -y / long, b: x / long}
		l.c = -float64(l.a*float64(p.X)) - float64(l.b*float64(p.Y))
		lines[i] = l
	}
	return lines
}

// edgeDistance is the least distance of a point inside a convex ring to its edges.
func edgeDistance(lines []line, x, y float64) float64 {
	least := math.Inf(1)
	for _, l := range lines {
		least = min(least, float64(l.a*x)+float64(l.b*y)+l.c)
	}
	return least
}

// distances gives for each point of a raster the distance to the nearest point
// that is not in, in steps of the raster; everything beyond the raster is not in.
// After P. Felzenszwalb, D. Huttenlocher, "Distance transforms of sampled
// functions", Theory of Computing 8 (2012).
func distances(in []bool, w, h int) []float64 {
	d := make([]float64, len(in))
	for x := range w { // down each column: plain steps
		run := 0
		for y := range h {
			run = step(in[y*w+x], run)
			d[y*w+x] = float64(run)
		}
		run = 0
		for y := h - 1; y >= 0; y-- {
			run = step(in[y*w+x], run)
			d[y*w+x] = min(d[y*w+x], float64(run))
		}
	}
	row := make([]float64, w+2)
	for y := range h {
		copy(row[1:], d[y*w:(y+1)*w])
		row[0], row[w+1] = 0, 0
		for x := range w {
			best := float64(row[x+1] * row[x+1])
			for k := 1; float64(k*k) < best; k++ {
				for _, o := range [2]int{x + 1 - k, x + 1 + k} {
					if o >= 0 && o < w+2 {
						best = min(best, float64(k*k)+float64(row[o]*row[o]))
					}
				}
			}
			d[y*w+x] = math.Sqrt(best)
		}
	}
	return d
}

func step(in bool, run int) int {
	if !in {
		return 0
	}
	return run + 1
}
