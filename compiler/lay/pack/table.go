package pack

import "fmt"

// table holds what is known of the kinds of outline: their convex parts, sizes,
// and, as they are asked for, the places of each from each other.
type table struct {
	kinds   []kind
	views   [][]view
	reaches [][]reach
}

// kind is one outline: a pose of a kind of shape, moved so that its bounds begin
// at the origin.
type kind struct {
	parts  [][]Point
	w, h   int64
	offset Point // of its bounds, from the origin of the outline
	atEdge bool
	area2  int64
}

// view is a pair seen from one of the two.
type view struct {
	*pair
	turned bool // the places are those of the first from the second
}

// reach bounds the places where a second outline overlaps a first: from min on,
// w and h wide. It is what most questions end at, so it is small.
type reach struct {
	minX, minY int32
	w, h       uint32
}

func (v view) reach() reach {
	r := reach{int32(v.min.X), int32(v.min.Y), uint32(v.w), uint32(v.h)}
	if v.turned {
		r.minX, r.minY = int32(-v.min.X-v.w+1), int32(-v.min.Y-v.h+1)
	}
	return r
}

// body is where an item lies, in few bytes.
type body struct{ x, y, kind, _ int32 }

// item is a shape to be laid: the kinds that it may take.
type item struct {
	poses []int // the kind of each pose
	area2 int64 // twice its area
}

// cells is how fine the grids of pairs are.
const cells = 64

func newTable(p Problem) (*table, []item, error) {
	t := &table{}
	known := map[[2]int]int{}
	var items []item
	for _, s := range p.Shapes {
		var it item
		for i, pose := range s.Poses {
			k, ok := known[[2]int{s.Kind, i}]
			if !ok {
				made, err := newKind(pose)
				if err != nil {
					return nil, nil, err
				}
				k = len(t.kinds)
				t.kinds = append(t.kinds, made)
				known[[2]int{s.Kind, i}] = k
			}
			it.poses = append(it.poses, k)
		}
		it.area2 = t.smallest(it)
		items = append(items, it)
	}
	t.views = make([][]view, len(t.kinds))
	for i := range t.views {
		t.views[i] = make([]view, len(t.kinds))
	}
	return t, items, nil
}

func newKind(pose Pose) (kind, error) {
	b := boundsOf(pose.Outline)
	ring := make([]Point, len(pose.Outline))
	for i, v := range pose.Outline {
		ring[i] = v.minus(b.Min)
	}
	parts, err := convexParts(ring)
	return kind{parts: parts, w: b.Max.X - b.Min.X, h: b.Max.Y - b.Min.Y, offset: b.Min, atEdge: pose.AtEdge, area2: Area2(ring)}, err
}

// prepare makes the pairs of all kinds that items may take together, as far as they are
// not known.
func (t *table) prepare(known *Pairs) {
	for i := range t.kinds {
		for j := i; j < len(t.kinds); j++ {
			p := known.pair(t.kinds[i].parts, t.kinds[j].parts)
			t.views[i][j] = view{pair: p}
			if i != j {
				t.views[j][i] = view{pair: p, turned: true}
			}
		}
	}
	for _, row := range t.views {
		r := make([]reach, len(row))
		for j, v := range row {
			r[j] = v.reach()
		}
		t.reaches = append(t.reaches, r)
	}
}

// Pairs keeps what was worked out of two outlines, for the next problem that has them
// both. It is for one goroutine at a time.
type Pairs struct{ known map[string]*pair }

// pair is that of two shapes, by their convex parts.
func (k *Pairs) pair(first, second [][]Point) *pair {
	if k == nil {
		return newPair(first, second, cells)
	}
	key := fmt.Sprint(first, second)
	p := k.known[key]
	if p == nil {
		p = newPair(first, second, cells)
		if k.known == nil {
			k.known = map[string]*pair{}
		}
		k.known[key] = p
	}
	return p
}

// smallest is twice the area of the smallest pose of an item.
func (t *table) smallest(it item) int64 {
	least := t.kinds[it.poses[0]].area2
	for _, k := range it.poses {
		least = min(least, t.kinds[k].area2)
	}
	return least
}
