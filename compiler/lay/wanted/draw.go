package wanted

import (
	"fmt"
	"math"
	"math/big"

	"seamwarden/compiler/lay"
	"seamwarden/compiler/measure"
	"seamwarden/compiler/model"
	"seamwarden/compiler/outline"
)

// drawer draws out parts in sizes, each once.
type drawer struct {
	pattern *model.Pattern
	pieces  map[drawnKey]drawnPiece
}

type drawnKey struct {
	part *part
	size int
	nap  bool
}

type drawnPiece struct {
	piece lay.Piece
	why   string
}

// job puts a set in one size on its cloth; why not, in words.
func (d *drawer) job(s *set, width model.Amount, nap bool, size int) (j lay.Job, why string) {
	m := s.material
	usable := units(width.Length)
	if e := m.LayRules.Selvedges; e != nil {
		usable -= 2 * units(e.Length)
	}
	j = lay.Job{Way: m.LayRules.Way, Cloth: lay.Cloth{Width: usable, Nap: nap}}
	if c := m.LayRules.Clearance; c != nil {
		j.Cloth.Clearance = units(c.Length)
	}
	for _, x := range s.parts {
		key := drawnKey{x, size, nap}
		one, known := d.pieces[key]
		if !known {
			one.piece, one.why = d.piece(x, size, nap)
			one.piece.Keep()
			d.pieces[key] = one
		}
		if one.why != "" {
			return j, one.why
		}
		j.Pieces = append(j.Pieces, one.piece)
	}
	return j, ""
}

var hundred = big.NewRat(lay.Millimetre, 1)

// units is a length in units of the grid, rounded down: a width is never overstated.
func units(l measure.Length) int64 {
	r := l.In(measure.Millimetre)
	r.Mul(r, hundred)
	n := r.Num()
	return n.Div(n, r.Denom()).Int64()
}

// piece draws out a part in one size.
func (d *drawer) piece(x *part, size int, nap bool) (p lay.Piece, why string) {
	p = lay.Piece{Name: x.name, Drawn: x.drawnUp, Mirrored: x.mirrored, Either: x.either, Cut: x.cut}
	if x.number > 0 {
		p.Number = fmt.Sprint(x.number)
	}
	if x.strip != nil {
		w, l := units(x.strip.Width.Length), units(x.strip.Length.Length)
		p.Outline, p.Grain = []lay.Point{{}, {X: w}, {X: w, Y: l}, {Y: l}}, lay.Point{Y: 1}
		return p, ""
	}
	o := x.outlineFor(d.pattern, size)
	if o == nil {
		return p, fmt.Sprintf("the %s is not drawn in size %s", Lower(x.name), d.pattern.Sizes.Sizes[size])
	}
	p.Grain = grain(o)
	if p.Cut != lay.Straight && p.Cut != lay.Crosswise && slanting(o) {
		p.Cut = lay.Straight // its grain line is drawn on the bias already
	}
	if nap && x.piece.Symmetric && p.Either > 0 && x.fold == "" && !alongGrain(o) {
		p.Drawn, p.Either = p.Either, 0 // turned over it would be upside down
	}
	ring, err := cutting(o, x)
	if err != nil {
		return p, fmt.Sprintf("the %s cannot be drawn with its allowances: %v", Lower(x.name), err)
	}
	for _, g := range ring {
		p.Outline = append(p.Outline, lay.Point{X: g.X, Y: -g.Y})
	}
	if x.fold != "" {
		if p.Fold = foldOf(o.Edge(x.fold), p.Outline); p.Fold == nil {
			return p, fmt.Sprintf("the fold edge of the %s is not drawn as a straight line", Lower(x.name))
		}
	}
	p.Outline = coarser(p.Outline, onLine(p.Fold))
	return p, ""
}

// cutting is the polygon that is cut out: it contains the piece with its allowances.
func cutting(o *outline.Outline, x *part) ([]outline.Grid, error) {
	if x.fold != "" {
		o = straightened(o, x.fold)
	}
	return o.ContainingWith(func(e *outline.Edge) float64 {
		switch {
		case e.Name == x.fold && x.fold != "":
			return 0
		case o.Allowance == outline.Excluded:
			return x.widths[e.Name] + outline.GridMM
		}
		return outline.GridMM
	})
}

// straightened is an outline whose fold edge is the straight line between its ends.
func straightened(o *outline.Outline, fold string) *outline.Outline {
	out := *o
	out.Edges = append([]*outline.Edge(nil), o.Edges...)
	for i, e := range out.Edges {
		if e.Name == fold {
			own := *e
			a, b := e.Curves[0].P[0], e.Curves[len(e.Curves)-1].P[3]
			at := func(t float64) outline.Point {
				return outline.Point{X: a.X + t*(b.X-a.X), Y: a.Y + t*(b.Y-a.Y)}
			}
			own.Curves = []outline.Curve{{P: [4]outline.Point{a, at(1. / 3), at(2. / 3), b}, Straight: true}}
			out.Edges[i] = &own
		}
	}
	return &out
}

// foldOf finds the corners of a ring that lie on the line of a fold edge: the first and
// the last along it. It is nil if there are not two.
func foldOf(e *outline.Edge, ring []lay.Point) *[2]lay.Point {
	if e == nil {
		return nil
	}
	a, b := e.Curves[0].P[0], e.Curves[len(e.Curves)-1].P[3]
	dx, dy := b.X-a.X, a.Y-b.Y // y upward
	size := math.Hypot(dx, dy)
	if size == 0 {
		return nil
	}
	var ends [2]lay.Point
	low, high := math.Inf(1), math.Inf(-1)
	for _, v := range ring {
		x, y := float64(v.X)*outline.GridMM-a.X, float64(v.Y)*outline.GridMM+a.Y
		if math.Abs(x*dy-y*dx)/size > outline.GridMM {
			continue
		}
		along := (x*dx + y*dy) / size
		if along < low {
			low, ends[0] = along, v
		}
		if along > high {
			high, ends[1] = along, v
		}
	}
	if !(high > low) {
		return nil
	}
	return &ends
}

// onLine tells which points lie on a fold edge.
func onLine(fold *[2]lay.Point) func(lay.Point) bool {
	return func(p lay.Point) bool { return fold != nil && distance(p, fold[0], fold[1]) <= 1 }
}

// grain is the direction of the grain line to its upper end: that which is higher in
// the drawing; of a line that is drawn level, the one at which it ends. Without one the
// grain runs up the drawing.
func grain(o *outline.Outline) lay.Point {
	if o.Grain == nil {
		return lay.Point{Y: 1}
	}
	x, y := o.Grain.To.X-o.Grain.From.X, o.Grain.From.Y-o.Grain.To.Y
	if y < 0 && math.Abs(y) > math.Abs(x)/100 {
		x, y = -x, -y
	}
	return lay.Point{X: int64(math.Round(x / outline.GridMM)), Y: int64(math.Round(y / outline.GridMM))}
}

// slanting reports whether a grain line is drawn within 10° of the bias of its sheet.
func slanting(o *outline.Outline) bool {
	g := grain(o)
	angle := math.Atan2(math.Abs(float64(g.Y)), math.Abs(float64(g.X))) * 180 / math.Pi
	return math.Abs(angle-45) < 10
}

// alongGrain reports whether a piece is its own mirror image about its grain line.
func alongGrain(o *outline.Outline) bool {
	for _, axis := range o.Symmetric() {
		if axis.Along {
			return true
		}
	}
	return false
}
