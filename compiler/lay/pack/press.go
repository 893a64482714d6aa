package pack

import "math"

// press moves all items at once. Near a layout, two items are clear of one another as
// long as one stays behind a line, for each two convex parts that come near. Among the
// places that keep behind all lines a linear program finds those with the shortest
// strip. Then the lines are chosen again. It frees a layout whose overlaps are small,
// and shortens one that has none. After Z. Li, V. Milenkovic,
// "Compaction and separation algorithms for non-convex polygons and their
// applications", European Journal of Operational Research 84 (1995).
//
// It reports whether the layout has no overlap now and is shorter than a length; if
// not, the layout is as it was.
func (s *state) press(below int64) bool {
	first, work := s.save(), s.work
	var best snapshot
	last := endless
	for k := range presses {
		if !s.pressOnce() || s.loss() > 0 || s.length >= last {
			break
		}
		gain := last - s.length
		last = s.length
		if last < below {
			best, below = s.save(), last
		}
		// What is gained shrinks each time: if it is little now, the rest is not worth it.
		if k > 0 && (gain < last-below || gain*2000 < last) {
			break
		}
	}
	s.pressing += s.work - work
	if best.spots == nil {
		s.restore(first)
		return false
	}
	s.restore(best)
	return true
}

const (
	presses = 8  // how often, at most
	freedom = 30 // an item moves by one part of so many of the width, at most, each time
)

// rule is a line that item j must stay behind, seen from item i: nx, ny is its
// direction away from i, of length one; from where the two lie now they must move
// apart by least in this direction.
type rule struct {
	i, j   int
	nx, ny float64
	least  float64
	// margin is what the ends may come nearer when they are rounded, by half a unit each
	// along each axis at most. What lies along an axis needs none.
	margin float64
}

// pressOnce solves one program, and lays the items as it says. Where the cloth is so
// full that nothing is left for margins, they are given only to those pairs that
// overlap once the places are rounded.
func (s *state) pressOnce() bool {
	far := float64(s.width) / freedom
	rules, ok := s.rules(far)
	if !ok {
		return false
	}
	before := s.save()
	if s.follow(rules, far) {
		return true
	}
	for k := range rules {
		rules[k].least -= rules[k].margin
	}
	for range 4 {
		if !s.follow(rules, far) {
			return false
		}
		if s.loss() == 0 {
			return true
		}
		for k, r := range rules {
			if s.depth[r.i*len(s.items)+r.j] > 0 {
				rules[k].least += r.margin
			}
		}
		s.restore(before)
	}
	return false
}

// follow solves the program of some rules, and lays the items as it says. Rules that
// are far from being broken are only added once they are.
func (s *state) follow(rules []rule, far float64) bool {
	p := s.programOf(far)
	n := len(s.items)
	solved := false
	taken := make([]bool, len(rules))
	for range 12 {
		added := false
		for k, r := range rules {
			miss := r.least - float64(r.nx*(p.value[2*r.j]-p.value[2*r.i])) - float64(r.ny*(p.value[2*r.j+1]-p.value[2*r.i+1]))
			if taken[k] || miss <= slackness && (solved || miss < -far/8) {
				continue
			}
			taken[k], added = true, true
			p.atLeast(r.least, term{2 * r.j, r.nx}, term{2 * r.i, -r.nx}, term{2*r.j + 1, r.ny}, term{2*r.i + 1, -r.ny})
		}
		if solved && !added {
			break
		}
		if solved = p.solve(10 * n); !solved {
			break
		}
	}
	s.work += p.products / 256
	if !solved {
		return false
	}
	s.length = int64(math.Ceil(float64(s.length) + p.value[2*n] - slackness))
	for i := range s.items {
		at := s.spot(i)
		at.x += int64(math.RoundToEven(p.value[2*i]))
		at.y += int64(math.RoundToEven(p.value[2*i+1]))
		s.put(i, s.fit(i, at))
	}
	s.measureAll()
	return true
}

// programOf has the ways of all items as variables, and last by how much the strip
// is longer.
func (s *state) programOf(far float64) *program {
	n := len(s.items)
	p := newProgram(2*n + 1)
	for i := range n {
		x, y := float64(s.bodies[i].x), float64(s.bodies[i].y)
		_, room := s.room(i, s.pose[i])
		p.low[2*i], p.up[2*i] = max(-far, -x), far
		p.low[2*i+1], p.up[2*i+1] = max(-far, -y), min(far, float64(room)-y)
	}
	p.low[2*n], p.up[2*n] = -far, math.Inf(1)
	p.value[2*n] = -far
	for i := range n {
		w := s.kinds[s.bodies[i].kind].w
		p.atLeast(float64(int64(s.bodies[i].x)+w-s.length), term{2 * n, 1}, term{2 * i, -1})
	}
	return p
}

// rules are the lines that keep all pairs apart whose items may meet if each moves by
// far along both axes. It fails if some pair has no way out near by.
func (s *state) rules(far float64) (all []rule, ok bool) {
	n := len(s.items)
	for i := range n {
		for j := i + 1; j < n; j++ {
			v := &s.views[s.bodies[i].kind][s.bodies[j].kind]
			dx, dy := s.between(i, j)
			a, b := i, j
			if v.turned {
				dx, dy, a, b = -dx, -dy, j, i
			}
			reach := int64(2*far) + 1
			if dx < v.min.X-reach || dx > v.min.X+v.w+reach || dy < v.min.Y-reach || dy > v.min.Y+v.h+reach {
				continue
			}
			d := Point{dx, dy}
			to := d
			if s.depth[i*n+j] > 0 {
				if to, ok = v.out(d, int64(2*far)); !ok {
					return nil, false
				}
			}
			all = v.lines(all, a, b, d, to, 2*far)
		}
	}
	return all, true
}

// out is a place near d where the pair does not overlap.
func (p *pair) out(d Point, far int64) (Point, bool) {
	at := d
	for range 6 {
		way := p.exit(at.X, at.Y)
		at = at.plus(way)
		if p.depth(at.X, at.Y) == 0 {
			break
		}
	}
	best, least := at, endless
	if p.depth(at.X, at.Y) == 0 {
		w := at.minus(d)
		least = w.X*w.X + w.Y*w.Y
	}
	for _, c := range p.contacts {
		w := c.minus(d)
		if size := w.X*w.X + w.Y*w.Y; size < least {
			best, least = c, size
		}
	}
	w := best.minus(d)
	return best, least < endless && max(w.X, -w.X, w.Y, -w.Y) <= far
}

// lines adds for each convex sum the edge beyond which a place lies farthest: there
// the pair, now at d, must stay beyond it.
func (p *pair) lines(all []rule, i, j int, d, to Point, far float64) []rule {
	reach := int64(far) + 1
	for k, r := range p.parts {
		b := p.partBounds[k]
		if to.X < b.Min.X-reach || to.X > b.Max.X+reach || to.Y < b.Min.Y-reach || to.Y > b.Max.Y+reach {
			continue
		}
		best, most := rule{}, math.Inf(-1)
		for e := range r {
			edge := r[(e+1)%len(r)].minus(r[e])
			x, y := float64(edge.X), float64(edge.Y)
			long := math.Sqrt(float64(x*x) + float64(y*y))
			w := to.minus(r[e])
			// The outside lies to the right of the edge.
			if over := float64(-cross(edge, w)) / long; over > most {
				v := d.minus(r[e])
				nx, ny := y/long, -x/long
				most, best = over, rule{i, j, nx, ny, float64(cross(edge, v)) / long, 0}
				if edge.X != 0 && edge.Y != 0 {
					best.margin = math.Abs(nx) + math.Abs(ny)
				}
			}
		}
		if most < far*math.Sqrt2 {
			best.least += best.margin
			all = append(all, best)
		}
	}
	return all
}
