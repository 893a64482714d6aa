package draft

import "fmt"

// Edge is a stretch of a piece's outline, from corner to corner.
type Edge struct {
	Name string
	Path Path
}

// Sign is a notch or a mark; a sign of an edge lies so many millimetres from where that
// edge begins.
type Sign struct {
	Name  string
	Notch bool
	Place Point
	Into  Point // of a notch: the way into the piece
}

// Piece is a pattern piece in one size. Its edges run clockwise.
type Piece struct {
	Edges []Edge
	Signs []Sign
	Folds map[string]Path // straight lines by name
	Grain Path
	Decor []Path // lines that only help the eye, such as the legs of a dart
}

// New begins a piece with its edges, clockwise.
func New(edges ...Edge) *Piece { return &Piece{Edges: edges} }

// Edge gives an edge by name. One that the piece has not is a slip in the draft.
func (p *Piece) Edge(name string) Path {
	for _, e := range p.Edges {
		if e.Name == name {
			return e.Path
		}
	}
	panic("draft: the piece has no edge " + name)
}

// Notch sets a notch on an edge, so many millimetres from where it begins clockwise.
func (p *Piece) Notch(name, edge string, mm float64) *Piece {
	place, way := p.Edge(edge).At(mm)
	p.Signs = append(p.Signs, Sign{Name: name, Notch: true, Place: place, Into: way.Right()})
	return p
}

// NotchBack is the same measured back from where the edge ends.
func (p *Piece) NotchBack(name, edge string, mm float64) *Piece {
	return p.Notch(name, edge, p.Edge(edge).Length()-mm)
}

// Mark sets a mark inside.
func (p *Piece) Mark(name string, place Point) *Piece {
	p.Signs = append(p.Signs, Sign{Name: name, Place: place})
	return p
}

// GrainLine draws the grain.
func (p *Piece) GrainLine(from, to Point) *Piece {
	p.Grain = Line(from, to)
	return p
}

// Fold draws a fold line.
func (p *Piece) Fold(name string, from, to Point) *Piece {
	if p.Folds == nil {
		p.Folds = map[string]Path{}
	}
	p.Folds[name] = Line(from, to)
	return p
}

// Help draws a line that only helps the eye.
func (p *Piece) Help(lines ...Path) *Piece {
	p.Decor = append(p.Decor, lines...)
	return p
}

// Mirrored is the mirror image about the line upright through x, its edges clockwise
// again, beginning with the same one.
func (p *Piece) Mirrored(x float64) *Piece {
	flip := func(q Point) Point { return At(2*x-q.X, q.Y) }
	out := New(Edge{p.Edges[0].Name, p.Edges[0].Path.Mirrored(x)})
	for i := len(p.Edges) - 1; i > 0; i-- {
		out.Edges = append(out.Edges, Edge{p.Edges[i].Name, p.Edges[i].Path.Mirrored(x)})
	}
	for _, s := range p.Signs {
		s.Place, s.Into = flip(s.Place), At(-s.Into.X, s.Into.Y)
		out.Signs = append(out.Signs, s)
	}
	for name, f := range p.Folds {
		out.Fold(name, flip(f.Start()), flip(f.End()))
	}
	if p.Grain != nil {
		out.Grain = p.Grain.each(flip)
	}
	for _, d := range p.Decor {
		out.Decor = append(out.Decor, d.each(flip))
	}
	return out
}

// closed says where the outline is open.
func (p *Piece) closed() error {
	for i, e := range p.Edges {
		next := p.Edges[(i+1)%len(p.Edges)]
		if gap := next.Path.Start().Minus(e.Path.End()).Length(); gap > 0.05 {
			return fmt.Errorf("from %s to %s there is a gap of %.2f mm", e.Name, next.Name, gap)
		}
	}
	return nil
}

// Rectangle is a strip: width across, height down, with its upper left corner at the
// origin. Its edges are named clockwise from the top.
func Rectangle(width, height float64, top, right, bottom, left string) *Piece {
	a, b, c, d := At(0, 0), At(width, 0), At(width, height), At(0, height)
	return New(Edge{top, Line(a, b)}, Edge{right, Line(b, c)}, Edge{bottom, Line(c, d)}, Edge{left, Line(d, a)})
}
