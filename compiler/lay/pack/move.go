package pack

// How many places a move looks at: anywhere, near by, in contact with another.
const (
	anywhere  = 24
	nearBy    = 12
	inContact = 20
	refined   = 3 // the cheapest of them go on downhill
	again     = 5 // how often a contact off the strip is drawn again
)

// candidate is a place and what it costs.
type candidate struct {
	at   spot
	cost int64
}

// best keeps the cheapest few places of a move.
type best struct {
	list [refined]candidate
	n    int
}

const endless = int64(1) << 62

// most is what a place may cost to be kept.
func (b *best) most() int64 {
	if b.n < len(b.list) {
		return endless
	}
	return b.list[b.n-1].cost
}

func (b *best) add(c candidate) {
	if c.cost >= b.most() {
		return
	}
	for i := range b.n {
		if b.list[i].at == c.at {
			return
		}
	}
	if b.n < len(b.list) {
		b.n++
	}
	i := b.n - 1
	for ; i > 0 && b.list[i-1].cost > c.cost; i-- {
		b.list[i] = b.list[i-1]
	}
	b.list[i] = c
}

// move puts an item where it overlaps least, by weight; it stays if nothing is
// better.
func (s *state) move(i int) {
	s.look(i)
	here := candidate{s.spot(i), 0}
	here.cost = s.cost(here.at, endless)
	if here.cost == 0 {
		return
	}
	var b best
	b.add(here)
	try := func(at spot) {
		if !s.fits(i, at.pose) {
			return
		}
		at = s.fit(i, at)
		if c := s.cost(at, b.most()); c < b.most() {
			b.add(candidate{at, c})
		}
	}
	s.sample(i, here.at, try)
	s.pushes(i, try)
	least := b.list[0]
	for n, c := range b.list[:b.n] {
		r := s.descend(i, c)
		if n == 0 || r.cost < least.cost {
			least = r
		}
		if r.cost == 0 {
			break
		}
	}
	if least.cost <= here.cost {
		s.put(i, least.at)
		s.measure(i)
	}
}

// sample tries places of an item anywhere, near by and in contact.
func (s *state) sample(i int, here spot, try func(spot)) {
	poses := int64(len(s.items[i].poses))
	for range anywhere {
		pose := int(s.below(poses))
		rx, ry := s.room(i, pose)
		try(spot{pose, s.below(rx + 1), s.below(ry + 1)})
	}
	k := &s.kinds[s.bodies[i].kind]
	for range nearBy {
		try(spot{here.pose, here.x + s.below(k.w/2) - k.w/4, here.y + s.below(k.h/2) - k.h/4})
	}
	for range inContact {
		at := s.contact(i)
		for range again {
			if s.fit(i, at) == at {
				break
			}
			at = s.contact(i)
		}
		try(at)
	}
}

// pushes tries the places where an item is moved just out of each of those that it
// overlaps, and out of all of them.
func (s *state) pushes(i int, try func(spot)) {
	n := len(s.items)
	here := s.spot(i)
	all, count := Point{}, 0
	for j, d := range s.depth[i*n : i*n+n] {
		if d == 0 {
			continue
		}
		way := s.exit(j, i)
		all, count = all.plus(way), count+1
		try(spot{here.pose, here.x + way.X, here.y + way.Y})
	}
	if count > 1 {
		try(spot{here.pose, here.x + all.X, here.y + all.Y})
	}
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

// contact is a place where an item touches another, or a corner of the strip.
func (s *state) contact(i int) spot {
	n := int64(len(s.items))
	pose := int(s.below(int64(len(s.items[i].poses))))
	mine := s.items[i].poses[pose]
	j := int(s.below(n))
	if j == i {
		rx, ry := s.room(i, pose)
		return spot{pose, s.below(2) * rx, s.below(2) * ry}
	}
	v := &s.views[s.bodies[j].kind][mine]
	c := v.contacts[s.below(int64(len(v.contacts)))]
	if v.turned {
		c = Point{-c.X, -c.Y}
	}
	return spot{pose, int64(s.bodies[j].x) + c.X, int64(s.bodies[j].y) + c.Y}
}

// The smallest step downhill is one of these parts of a shape. It must be small:
// where shapes are jammed the gap that one fits is a few units wide. Of many shapes
// more moves with coarser steps were better in one trial (99 shapes: 1.2 points).
const fine, coarse = 8192, 1024

// descend goes from a place downhill, along the axes and in other directions, with
// steps that become smaller.
func (s *state) descend(i int, c candidate) candidate {
	k := &s.kinds[s.items[i].poses[c.at.pose]]
	size := min(k.w, k.h)
	smallest := size / fine
	if len(s.items) >= many {
		smallest = size / coarse
	}
	for step := size / 8; step > 0 && c.cost > 0; {
		d := s.direction()
		dx, dy := step*d.X>>10, step*d.Y>>10
		a := s.fit(i, spot{c.at.pose, c.at.x + dx, c.at.y + dy})
		b := s.fit(i, spot{c.at.pose, c.at.x - dx, c.at.y - dy})
		ca := s.cost(a, c.cost)
		cb := s.cost(b, min(c.cost, ca))
		switch {
		case cb < c.cost && cb < ca:
			c = candidate{b, cb}
			step = step * 9 / 8
		case ca < c.cost:
			c = candidate{a, ca}
			step = step * 9 / 8
		default:
			if step < smallest {
				return c
			}
			step = step * 55 / 100
		}
	}
	return c
}

// direction is a step along an axis, every second time, or in any direction.
func (s *state) direction() Point {
	v := s.rand.Uint64()
	switch v & 3 {
	case 0:
		return Point{1024, 0}
	case 2:
		return Point{0, 1024}
	}
	return directions[v>>1&15]
}

// directions are unit steps over half a circle, in 1024ths.
var directions = [16]Point{
	{1024, 0}, {1004, 200}, {946, 392}, {851, 569}, {724, 724}, {569, 851}, {392, 946}, {200, 1004},
	{0, 1024}, {-200, 1004}, {-392, 946}, {-569, 851}, {-724, 724}, {-851, 569}, {-946, 392}, {-1004, 200},
}
