package pack

import "math/bits"

// hood is what one item may meet while it is moved and the others stay where they
// are: for each of its poses, where it overlaps each other. So that a place need not
// be compared with everything on the strip, the strip is cut into slabs along and
// across, and each slab knows whom it may meet.
type hood struct {
	item  int
	poses []near
}

// slabs is how many slabs the strip has, each way.
const slabs = 32

// near is what an item may meet in one of its poses.
type near struct {
	shiftX, shiftY uint
	words          int
	along, across  []uint64 // for each slab a set of others, in words of 64
	others         []other
}

// other is another item, seen from places of the one that is moved. A place x, y is
// in the grid of the pair at sign·x + x0, sign·y + y0.
type other struct {
	x0, y0 int64
	sign   int64
	weight int64
	pair   *pair
}

// look prepares the hood of an item. It is good until something else is moved or
// weights change.
func (s *state) look(i int) {
	h := &s.hood
	h.item = i
	if h.poses == nil {
		most := 0
		for _, it := range s.items {
			most = max(most, len(it.poses))
		}
		h.poses = make([]near, most)
	}
	for pose, k := range s.items[i].poses {
		if s.fits(i, pose) {
			h.poses[pose].fill(s, i, k)
		}
	}
}

func (n *near) fill(s *state, i, kind int) {
	n.words = (len(s.bodies) + 63) / 64
	if n.others == nil {
		n.others = make([]other, len(s.bodies))
		n.along, n.across = make([]uint64, slabs*n.words), make([]uint64, slabs*n.words)
	}
	clear(n.along)
	clear(n.across)
	k := &s.kinds[kind]
	mostX, mostY := s.length-k.w, s.width-k.h
	n.shiftX, n.shiftY = slabShift(mostX), slabShift(mostY)
	for j := range s.bodies {
		if j == i {
			continue
		}
		b := &s.bodies[j]
		r := &s.reaches[kind][b.kind]
		x, y := int64(b.x-r.minX)-int64(r.w)+1, int64(b.y-r.minY)-int64(r.h)+1
		if !n.mark(j, x, x+int64(r.w)-1, y, y+int64(r.h)-1, mostX, mostY) {
			continue
		}
		v := &s.views[kind][b.kind]
		o := other{int64(b.x) - v.min.X, int64(b.y) - v.min.Y, -1, s.weight[i*len(s.bodies)+j], v.pair}
		if v.turned {
			o.x0, o.y0, o.sign = -int64(b.x)-v.min.X, -int64(b.y)-v.min.Y, 1
		}
		n.others[j] = o
	}
}

// slabShift makes slabs as wide as a power of two, so that all cover the places up
// to most.
func slabShift(most int64) uint {
	return uint(max(0, bits.Len64(uint64(max(0, most)))-bits.Len64(slabs-1)))
}

// mark notes that places in a rectangle may meet another, and reports whether any
// place is in it.
func (n *near) mark(j int, x0, x1, y0, y1, mostX, mostY int64) bool {
	if x1 < 0 || y1 < 0 || x0 > mostX || y0 > mostY {
		return false
	}
	word, bit := j>>6, uint64(1)<<(j&63)
	for c := max(0, x0) >> n.shiftX; c <= min(x1, mostX)>>n.shiftX; c++ {
		n.along[int(c)*n.words+word] |= bit
	}
	for c := max(0, y0) >> n.shiftY; c <= min(y1, mostY)>>n.shiftY; c++ {
		n.across[int(c)*n.words+word] |= bit
	}
	return true
}

// cost is the weighted depth of the item that was looked at, at a place; as soon as
// it is over most, some number over most.
func (s *state) cost(at spot, most int64) (sum int64) {
	s.work++
	n := &s.hood.poses[at.pose]
	a, b := int(at.x>>n.shiftX)*n.words, int(at.y>>n.shiftY)*n.words
	for w := range n.words {
		for set := n.along[a+w] & n.across[b+w]; set != 0; set &= set - 1 {
			o := &n.others[w<<6+bits.TrailingZeros64(set)]
			if d := o.pair.depthIn(o.sign*at.x+o.x0, o.sign*at.y+o.y0); d > 0 {
				sum += (d + s.base) * o.weight
				if sum > most {
					return sum
				}
			}
		}
	}
	return sum
}
