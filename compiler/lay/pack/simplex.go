package pack

import "math"

// program is a linear program: the least of one variable, where every variable has
// bounds and linear sums of them have a least value. It is solved by the dual simplex
// method with bounds (C. E. Lemke 1954; as told in V. Chvátal, "Linear Programming",
// 1983, chapters 8 and 10): a dictionary says every basic variable as a sum of those
// that are not. Every product is rounded before it is added, so that the answer is the
// same on every machine.
type program struct {
	n        int       // variables, and columns of the dictionary
	low, up  []float64 // of all variables, those of the sums behind the others
	value    []float64
	outside  []int // the variable of each column
	basic    []int // the variable of each row
	place    []int // of each variable: its column, or ^ its row
	rows     [][]float64
	price    []float64 // of each column: what the objective gains by it
	products int64     // that were worked out
}

// slack is how far a bound may be overstepped.
const slackness = 1e-3

// newProgram has n variables, of which the last is to be least. Each starts at a value
// within its bounds; the last must start at its lower bound.
func newProgram(n int) *program {
	p := &program{n: n, price: make([]float64, n)}
	p.low, p.up, p.value = make([]float64, n), make([]float64, n), make([]float64, n)
	p.outside, p.place = make([]int, n), make([]int, n)
	for c := range n {
		p.outside[c], p.place[c] = c, c
	}
	p.price[n-1] = 1
	return p
}

// term is a variable with a factor.
type term struct {
	v      int
	factor float64
}

// atLeast adds a sum of variables that must not be below a value.
func (p *program) atLeast(least float64, terms ...term) {
	row, value := make([]float64, p.n), 0.0
	for _, t := range terms {
		value += float64(t.factor * p.value[t.v])
		if at := p.place[t.v]; at >= 0 {
			row[at] += t.factor
		} else {
			p.add(row, t.factor, p.rows[^at])
		}
	}
	v := len(p.value)
	p.low, p.up, p.value = append(p.low, least), append(p.up, math.Inf(1)), append(p.value, value)
	p.place = append(p.place, ^len(p.rows))
	p.rows, p.basic = append(p.rows, row), append(p.basic, v)
}

// add adds a row, times a factor, to another.
func (p *program) add(to []float64, factor float64, row []float64) {
	row = row[:len(to)]
	for c := range to {
		to[c] += float64(factor * row[c])
	}
	p.products += int64(len(to))
}

// solve finds the least value of the last variable, and reports whether there is one
// and was found in a number of steps.
func (p *program) solve(steps int) bool {
	for range steps {
		r, least := -1, slackness
		rising := false
		for k, v := range p.basic {
			if miss := p.low[v] - p.value[v]; miss > least {
				r, least, rising = k, miss, true
			}
			if miss := p.value[v] - p.up[v]; miss > least {
				r, least, rising = k, miss, false
			}
		}
		if r < 0 {
			return true
		}
		c := p.entering(r, rising)
		if c < 0 {
			return false
		}
		p.pivot(r, c, rising)
	}
	return false
}

// entering is the column that can move a row the way it must go and costs least for
// it; -1 if none can.
func (p *program) entering(r int, rising bool) int {
	const tiny = 1e-7
	best, ratio, size := -1, math.Inf(1), 0.0
	for c, a := range p.rows[r] {
		v := p.outside[c]
		if !rising {
			a = -a
		}
		if a > -tiny && a < tiny || a > 0 && p.value[v] >= p.up[v] || a < 0 && p.value[v] <= p.low[v] {
			continue
		}
		a = math.Abs(a)
		q := math.Abs(p.price[c]) / a
		if q < ratio-1e-12 || q < ratio+1e-12 && a > size {
			best, ratio, size = c, q, a
		}
	}
	return best
}

// pivot lets the variable of a column into the basis for that of a row, which goes to
// the bound that it had overstepped.
func (p *program) pivot(r, c int, rising bool) {
	row := p.rows[r]
	in, out := p.outside[c], p.basic[r]
	to := p.up[out]
	if rising {
		to = p.low[out]
	}
	by := (to - p.value[out]) / row[c]
	for k, other := range p.rows {
		if k != r && other[c] != 0 {
			p.value[p.basic[k]] += float64(by * other[c])
		}
	}
	p.value[in] += by
	p.value[out] = to
	p.turn(row, c)
	for k, other := range p.rows {
		if k != r {
			p.replace(other, c, row)
		}
	}
	p.replace(p.price, c, row)
	p.outside[c], p.basic[r] = out, in
	p.place[out], p.place[in] = c, ^r
}

// turn solves a row for the variable of a column.
func (p *program) turn(row []float64, c int) {
	inverse := 1 / row[c]
	for k := range row {
		row[k] *= -inverse
	}
	row[c] = inverse
}

// replace puts a row in place of the variable of a column.
func (p *program) replace(other []float64, c int, row []float64) {
	if f := other[c]; f != 0 {
		other[c] = 0
		p.add(other, f, row)
	}
}
