package pack

// relax pushes every two items that overlap apart, each half the way, again and
// again, so that a small overlap spreads through its neighbours into gaps that no
// single move can reach; all places move at once, as in T. Imamichi, M. Yagiura, H.
// Nagamochi, "An iterated local search algorithm based on nonlinear programming for
// the irregular strip packing problem", Discrete Optimization 6 (2009). It reports
// whether no overlap is left; if not, the layout is what it was.
func (s *state) relax(rounds int) bool {
	n := len(s.items)
	before := s.save()
	for range rounds {
		free := true
		for i := range n {
			for j := range i {
				if s.depth[i*n+j] > 0 {
					free = false
					s.part(i, j)
				}
			}
		}
		if free {
			return true
		}
		if s.loss() > 3*before.loss+1000 {
			break
		}
	}
	if s.loss() == 0 {
		return true
	}
	s.restore(before)
	return false
}

// part moves two items from one another, each half of the way if both have room.
func (s *state) part(i, j int) {
	way := s.exit(j, i)
	a, b := s.spot(i), s.spot(j)
	ha := Point{way.X / 2, way.Y / 2}
	to := s.fit(j, spot{b.pose, b.x - (way.X - ha.X), b.y - (way.Y - ha.Y)})
	gone := Point{b.x - to.x, b.y - to.y}
	s.put(j, to)
	s.put(i, s.fit(i, spot{a.pose, a.x + way.X - gone.X, a.y + way.Y - gone.Y}))
	s.measure(i)
	s.measure(j)
	s.work += 4
}

// exit is the shortest way, about, for item j to leave item i.
func (s *state) exit(i, j int) Point {
	v := &s.views[s.bodies[i].kind][s.bodies[j].kind]
	dx, dy := s.between(i, j)
	if v.turned {
		way := v.pair.exit(-dx, -dy)
		return Point{-way.X, -way.Y}
	}
	return v.pair.exit(dx, dy)
}
