package lay

import (
	"fmt"
	"slices"

	"seamwarden/compiler/lay/pack"
)

// pose is a way in which a piece may lie: its Place without the place, the outline
// that must fit (grown by half the clearance), and where the corner of the box round
// the piece itself is in the coordinates of that outline.
type pose struct {
	place   Place
	outline []Point
	corner  Point
}

// turns lists the angles by which a piece may be turned that lies with its printed
// side up. Its reflection is turned by as much to the other side.
func (p Piece) turns(c Cloth) []int {
	var up []int
	switch p.Cut {
	case Straight:
		up = []int{0}
	case Bias:
		up = []int{45}
	case EitherBias:
		up = []int{45, 315}
	case Crosswise:
		up = []int{90}
	}
	if c.Nap || p.OneWay {
		return up
	}
	for _, t := range slices.Clone(up) {
		up = append(up, (t+180)%360)
	}
	return up
}

// group is so many placements that may all lie in the same ways.
type group struct {
	piece, count int
	poses        []pose
}

// groups lists what lies on the strip if the cloth lies in a way.
func (j Job) groups(w Way) ([]group, error) {
	var all []group
	for i, p := range j.Pieces {
		more, err := j.groupsOf(i, w)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", p.title(), err)
		}
		for _, g := range more {
			if g.count > 0 {
				all = append(all, g)
			}
		}
	}
	return all, nil
}

// of lists the placements of a piece. Two layers with their right sides together
// give one part of each hand at one place, whichever side of the piece is up.
func (j Job) of(i int, p Piece, w Way) ([]group, error) {
	if p.Fold != nil {
		return j.onFold(i, p, w)
	}
	r := p.Outline
	both := func(count int) group {
		return group{i, count, append(j.flat(i, p, r, p.Grain, false), j.flat(i, p, r, p.Grain, true)...)}
	}
	if w != SingleLayer {
		half := (p.Drawn + p.Mirrored + p.Either + 1) / 2
		return []group{both(max(p.Drawn, p.Mirrored, half))}, nil
	}
	return []group{
		{i, p.Drawn, j.flat(i, p, r, p.Grain, false)},
		{i, p.Mirrored, j.flat(i, p, r, p.Grain, true)},
		both(p.Either),
	}, nil
}

// onFold places what is cut on the fold: half of it at a lengthwise fold, if its
// grain runs along it, else the whole of it.
func (j Job) onFold(i int, p Piece, w Way) ([]group, error) {
	h, err := p.half()
	if err != nil {
		return nil, err
	}
	if w == LengthwiseFold && p.Cut == Straight && h.along() {
		g := group{piece: i, count: p.Either}
		up := h.grain.X > 0 // else the upper end is at the near end: end for end
		if up || !j.Cloth.Nap && !p.OneWay {
			g.poses = append(g.poses, j.folded(i, h, false))
		}
		if !up || !j.Cloth.Nap && !p.OneWay {
			g.poses = append(g.poses, j.folded(i, h, true))
		}
		return []group{g}, nil
	}
	count := (int64(p.Either) + w.layers() - 1) / w.layers()
	g := group{i, int(count), j.flat(i, p, h.opened(), h.grain, false)}
	for k := range g.poses {
		g.poses[k].place.Opened = true
	}
	return []group{g}, nil
}

// folded is half a piece at the fold, reflected end for end or not. Its upper end
// points along x if it is turned by 0°, the other way if by 180°.
func (j Job) folded(i int, h half, reflect bool) pose {
	r := slices.Clone(h.ring)
	if reflect {
		for k, v := range r {
			r[k] = Point{-v.X, v.Y}
		}
		reverse(r)
	}
	place := Place{Piece: i, Folded: true, Mirrored: h.below}
	if reflect == (h.grain.X > 0) {
		place.Turn, place.Mirrored = 180, !h.below
	}
	return j.pose(place, r, true)
}

// flat lists the poses of a whole outline with one side up.
func (j Job) flat(i int, p Piece, r []Point, grain Point, mirrored bool) []pose {
	if mirrored {
		r = slices.Clone(r)
		for k, v := range r {
			r[k] = Point{v.X, -v.Y}
		}
		reverse(r)
		grain.Y = -grain.Y
	}
	var all []pose
	for _, t := range p.turns(j.Cloth) {
		if mirrored {
			t = (360 - t) % 360
		}
		all = append(all, j.pose(Place{Piece: i, Turn: t, Mirrored: mirrored}, turnOf(grain, t).turned(r), false))
	}
	return all
}

// pose keeps the clearance round an outline; a piece at the fold keeps its fold edge.
func (j Job) pose(place Place, r []Point, atFold bool) pose {
	low, _ := corner(r)
	out := pose{place, r, low}
	if j.Cloth.Clearance == 0 {
		return out
	}
	fine := make([]real, len(r))
	for i, v := range r {
		fine[i] = real{float64(v.X), float64(v.Y)}
	}
	by := float64((j.Cloth.Clearance + 1) / 2)
	out.outline = grown(fine, func(i int) float64 {
		if atFold && r[i].Y == 0 && r[(i+1)%len(r)].Y == 0 {
			return 0
		}
		return by
	})
	if atFold {
		for i, v := range out.outline {
			out.outline[i].Y = max(0, v.Y)
		}
	}
	return out
}

// problem puts the groups into the terms of the search, and tells of each shape
// which poses it has. Poses with the same outline are one.
func problem(groups []group, width int64) (pack.Problem, [][]pose) {
	p := pack.Problem{Width: width}
	var poses [][]pose
	for kind, g := range groups {
		var own []pose
		var shapes []pack.Pose
		seen := map[string]bool{}
		for _, o := range g.poses {
			if key := shapeKey(o.outline); !seen[key] {
				seen[key] = true
				own = append(own, o)
				shapes = append(shapes, pack.Pose{Outline: packed(o.outline), AtEdge: o.place.Folded})
			}
		}
		for range g.count {
			p.Shapes = append(p.Shapes, pack.Shape{Kind: kind, Poses: shapes})
			poses = append(poses, own)
		}
	}
	return p, poses
}

func packed(r []Point) []pack.Point {
	out := make([]pack.Point, len(r))
	for i, v := range r {
		out[i] = pack.Point(v)
	}
	return out
}

// shapeKey is the same for two counter-clockwise rings that differ by where they lie
// and where they begin.
func shapeKey(r []Point) string {
	low, _ := corner(r)
	first := 0
	for i, v := range r {
		if v.X < r[first].X || v.X == r[first].X && v.Y < r[first].Y {
			first = i
		}
	}
	var b []byte
	for i := range r {
		v := r[(first+i)%len(r)]
		b = fmt.Appendf(b, "%d,%d ", v.X-low.X, v.Y-low.Y)
	}
	return string(b)
}
