package pack

import "math/rand/v2"

// spot is a place for an item: which of its poses, and where its bounds begin.
type spot struct {
	pose int
	x, y int64
}

// state is a layout in the making: shapes may overlap.
type state struct {
	*table
	items    []item
	width    int64
	length   int64
	pose     []int // of each item
	bodies   []body
	depth    []int64 // of each pair of items, how deep they overlap
	weight   []int64 // of each pair, in 256ths
	rand     *rand.Rand
	base     int64 // what each overlap costs, however small
	order    []int // of the items of a round
	hood     hood
	pressing int64 // the part of work that went into pressing
	work     int64 // places that have been looked at
}

func newState(t *table, items []item, width int64, seed uint64) *state {
	n := len(items)
	s := &state{table: t, items: items, width: width, pose: make([]int, n), bodies: make([]body, n)}
	s.depth, s.weight = make([]int64, n*n), make([]int64, n*n)
	s.rand = rand.New(rand.NewPCG(seed, 0x5eed))
	s.base = width / baseShare
	s.evenWeights()
	return s
}

// baseShare says which part of the width an overlap costs, beside its depth:
// without it many shallow overlaps are too cheap.
const baseShare = 200

const one = 256 // a weight of one

func (s *state) evenWeights() {
	for i := range s.weight {
		s.weight[i] = one
	}
}

// below is a whole number from 0 up to n, n not among them; 0 if n is not positive.
func (s *state) below(n int64) int64 {
	if n <= 1 {
		return 0
	}
	return int64(s.rand.Uint64() % uint64(n))
}

// put lays an item without asking what it overlaps.
func (s *state) put(i int, at spot) {
	s.pose[i] = at.pose
	s.bodies[i] = body{int32(at.x), int32(at.y), int32(s.items[i].poses[at.pose]), 0}
}

func (s *state) spot(i int) spot {
	b := s.bodies[i]
	return spot{s.pose[i], int64(b.x), int64(b.y)}
}

// between is how far item j lies from item i.
func (s *state) between(i, j int) (dx, dy int64) {
	a, b := s.bodies[i], s.bodies[j]
	return int64(b.x) - int64(a.x), int64(b.y) - int64(a.y)
}

// measure renews the depths of an item with all others.
func (s *state) measure(i int) {
	n := len(s.items)
	views := s.views[s.bodies[i].kind]
	for j := range n {
		if j == i {
			continue
		}
		v := &views[s.bodies[j].kind]
		dx, dy := s.between(i, j)
		if v.turned {
			dx, dy = -dx, -dy
		}
		d := v.pair.depth(dx, dy)
		s.depth[i*n+j], s.depth[j*n+i] = d, d
	}
}

func (s *state) measureAll() {
	for i := range s.items {
		s.measure(i)
	}
}

// overlapping reports whether an item overlaps another.
func (s *state) overlapping(i int) bool {
	n := len(s.items)
	for _, d := range s.depth[i*n : i*n+n] {
		if d > 0 {
			return true
		}
	}
	return false
}

// loss is the depth of all pairs together.
func (s *state) loss() (sum int64) {
	for _, d := range s.depth {
		sum += d
	}
	return sum / 2
}

// room is how far an item may go in a pose.
func (s *state) room(i, pose int) (x, y int64) {
	k := &s.kinds[s.items[i].poses[pose]]
	y = s.width - k.h
	if k.atEdge {
		y = 0
	}
	return s.length - k.w, y
}

// fits reports whether the strip is long enough for a pose of an item.
func (s *state) fits(i, pose int) bool {
	return s.kinds[s.items[i].poses[pose]].w <= s.length
}

// fit moves a place into the strip.
func (s *state) fit(i int, at spot) spot {
	rx, ry := s.room(i, at.pose)
	at.x, at.y = min(max(0, at.x), rx), min(max(0, at.y), ry)
	return at
}

// snapshot keeps a layout.
type snapshot struct {
	length int64
	spots  []spot
	loss   int64
}

func (s *state) save() snapshot {
	k := snapshot{length: s.length, spots: make([]spot, len(s.items)), loss: s.loss()}
	for i := range s.items {
		k.spots[i] = s.spot(i)
	}
	return k
}

func (s *state) restore(k snapshot) {
	s.length = k.length
	for i, at := range k.spots {
		s.put(i, at)
	}
	s.measureAll()
}
