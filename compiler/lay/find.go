package lay

import (
	"cmp"
	"errors"
	"fmt"
	"slices"

	"seamwarden/compiler/lay/pack"
)

// Effort says how long to look.
type Effort struct {
	// Work is what each seed may look at, in places: a few million take a second.
	Work  int64
	Seeds int // how many searches are tried side by side; 0 is one
	Seed  uint64
	// Start is a lay to begin with, nil for none: that of a neighbouring size, or one
	// that was remembered. It may overlap, and may be of another way.
	Start *Lay
	// Stop is asked now and then whether to end early; then the same work need not
	// give the same lay.
	Stop func() bool

	known *pack.Pairs // of the ways that are tried one after the other
}

var errNapFolded = errors.New("cloth with a nap is not folded crosswise: the nap of the two layers would run opposite ways")

// DefaultWork is about a second's.
const DefaultWork = 2_000_000

// Find finds a short lay. The same job and effort without Stop give the same lay on
// every machine. It fails, with a sentence, if the job cannot be laid.
func (j Job) Find(e Effort) (Lay, error) {
	if err := j.check(); err != nil {
		return Lay{}, err
	}
	if j.Way == CrosswiseFold && j.Cloth.Nap {
		return Lay{}, errNapFolded
	}
	if j.Way != Best {
		return j.find(j.Way, e)
	}
	return j.best(e)
}

// Limit is the length of the strip below which no lay of the job can come if the cloth
// lies in a way: by area, by the longest piece, and by the row of pieces at the fold.
func (j Job) Limit(w Way) (int64, error) {
	if err := j.check(); err != nil {
		return 0, err
	}
	p, _, err := j.problem(w)
	if err != nil {
		return 0, err
	}
	limits, err := pack.Bound(p)
	return limits.Length(), err
}

// Ways lists in which ways the cloth may lie.
func (j Job) Ways() []Way {
	if j.Way != Best {
		return []Way{j.Way}
	}
	ways := []Way{SingleLayer, LengthwiseFold}
	if !j.Cloth.Nap {
		ways = append(ways, CrosswiseFold)
	}
	return ways
}

// best tries each way with a part of the work, and goes on with the best of them.
func (j Job) best(e Effort) (Lay, error) {
	var best Lay
	var failed error
	e.known = &pack.Pairs{}
	for _, w := range j.Ways() {
		try := e
		try.Work = e.Work / 4
		l, err := j.find(w, try)
		if err != nil {
			if failed == nil {
				failed = err
			}
			continue
		}
		if best.Way == Best || l.Cloth() < best.Cloth() {
			best = l
		}
	}
	if best.Way == Best {
		return Lay{}, failed
	}
	e.Start = &best
	return j.find(best.Way, e)
}

func (j Job) find(w Way, e Effort) (Lay, error) {
	p, poses, err := j.problem(w)
	if err != nil {
		return Lay{}, err
	}
	b := pack.Budget{Work: e.Work, Seed: e.Seed, Stop: e.Stop, Known: e.known}
	if e.Start != nil && e.Start.Way == w {
		b.Start = startFrom(*e.Start, poses)
	}
	limits, err := pack.Bound(p)
	if err != nil {
		return Lay{}, err
	}
	found, err := pack.SearchMany(p, b, e.Seeds)
	if err != nil {
		return Lay{}, err
	}
	l := Lay{Way: w, Bound: limits.Length()}
	l.place(found, poses)
	return l, nil
}

// problem is the job in the terms of the search. It fails if something is wider than
// the cloth.
func (j Job) problem(w Way) (pack.Problem, [][]pose, error) {
	groups, err := j.groups(w)
	if err != nil {
		return pack.Problem{}, nil, err
	}
	strip := w.strip(j.Cloth.Width)
	for k, g := range groups {
		narrowest := int64(1) << 62
		fits := slices.DeleteFunc(slices.Clone(g.poses), func(o pose) bool {
			low, far := corner(o.outline)
			narrowest = min(narrowest, far.Y-low.Y)
			return far.Y-low.Y > strip
		})
		if len(fits) == 0 {
			return pack.Problem{}, nil, fmt.Errorf("%s is %.1f cm wide as it lies, and the cloth lies %.1f cm wide (%s)",
				j.Pieces[g.piece].title(), float64(narrowest)/1000, float64(strip)/1000, w)
		}
		groups[k].poses = fits
	}
	p, poses := problem(groups, strip)
	return p, poses, nil
}

// place notes where the search laid each shape. Places of one piece are in the order
// in which they lie, since none of them is another's first.
func (l *Lay) place(found pack.Layout, poses [][]pose) {
	l.Length = found.Length
	for i, at := range found.Places {
		o := poses[i][at.Pose]
		one := o.place
		one.At = Point{at.At.X + o.corner.X, at.At.Y + o.corner.Y}
		l.Places = append(l.Places, one)
	}
	slices.SortStableFunc(l.Places, order)
}

// order sorts places by piece, side, and where they lie.
func order(a, b Place) int {
	return cmp.Or(cmp.Compare(a.Piece, b.Piece), cmp.Compare(a.At.X, b.At.X), cmp.Compare(a.At.Y, b.At.Y),
		cmp.Compare(a.Turn, b.Turn), compareBool(a.Mirrored, b.Mirrored))
}

func compareBool(a, b bool) int {
	switch {
	case a == b:
		return 0
	case b:
		return -1
	}
	return 1
}

// startFrom gives each shape a place of the same piece in another lay, nil if there
// are too few. A shape that has not the pose there is given its first.
func startFrom(l Lay, poses [][]pose) *pack.Layout {
	free := slices.Clone(l.Places)
	start := &pack.Layout{Length: l.Length}
	for _, own := range poses {
		k, pose := match(free, own)
		if k < 0 {
			return nil
		}
		c := own[pose].corner
		start.Places = append(start.Places, pack.Placement{Pose: pose, At: pack.Point{X: free[k].At.X - c.X, Y: free[k].At.Y - c.Y}})
		free = slices.Delete(free, k, k+1)
	}
	return start
}

func match(free []Place, own []pose) (place, pose int) {
	place = -1
	for k, f := range free {
		if f.Piece != own[0].place.Piece {
			continue
		}
		if place < 0 {
			place = k
		}
		for n, o := range own {
			if o.place.Turn == f.Turn && o.place.Mirrored == f.Mirrored {
				return k, n
			}
		}
	}
	return place, 0
}
