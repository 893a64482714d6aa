package check

import (
	"math"

	"seamwarden/compiler/model"
	"seamwarden/compiler/outline"
)

// stretch gives the points between which an edge lies in a seam, nil for all of it: what
// the seam says of the edge, or what it says of another one, if the edge has those points
// as marks or goes on into another seam.
func (r *run) stretch(s *model.Seam, t *model.Target, u *model.EdgeUse) (from, to *model.Target) {
	if t.From != nil || t.To != nil {
		return t.From, t.To
	}
	for _, o := range s.Rows() {
		if o.From == nil || o.To == nil {
			continue
		}
		if hasPoint(u.Edge, o.From) && hasPoint(u.Edge, o.To) || r.inSeveralSeams(u) {
			return o.From, o.To
		}
	}
	return nil, nil
}

// inSeveralSeams reports whether an edge of a part lies in two seams of one garment.
func (r *run) inSeveralSeams(u *model.EdgeUse) bool {
	var first *model.Seam
	for _, s := range r.Seams {
		for _, j := range s.Copies {
			for _, x := range j.Uses() {
				if x != u {
					continue
				}
				if first != nil && first != s && r.possible(r.Space.And(first.Cond, s.Cond)) {
					return true
				}
				first = s
			}
		}
	}
	return false
}

// hasPoint reports whether a named point lies on an edge: a mark on it, or an edge that
// meets it.
func hasPoint(e *model.Edge, at *model.Target) bool {
	if at.Edge != nil {
		n := len(e.Piece.Edges)
		other := e.Piece.Edge(at.Edge.ID)
		return other != nil && other != e && (other.Index == (e.Index+1)%n || e.Index == (other.Index+1)%n)
	}
	if at.Mark == nil {
		return false
	}
	m := e.Piece.Mark(at.Mark.ID)
	return m != nil && (m.On == e || m.Between && m.On != nil && e.Index == (m.On.Index+1)%len(e.Piece.Edges))
}

// placeOn is how far along its drawn edge a named point lies, in millimetres; no number
// if it is not drawn, or twice. Every piece has the point by its own mark of that name.
func placeOn(o *outline.Outline, e *outline.Edge, of *model.Edge, at *model.Target) float64 {
	if at == nil {
		return math.NaN()
	}
	before, behind := o.Neighbours(e)
	switch {
	case at.Edge != nil && before == behind:
		return math.NaN()
	case at.Edge != nil && before.Name == at.Edge.ID:
		return 0
	case at.Edge != nil && behind.Name == at.Edge.ID:
		return e.Length()
	case at.Mark == nil:
		return math.NaN()
	}
	if m := of.Piece.Mark(at.Mark.ID); m != nil && m.Between {
		switch m.On {
		case nil:
		case of:
			return e.Length()
		case of.Piece.Edges[(of.Index+len(of.Piece.Edges)-1)%len(of.Piece.Edges)]:
			return 0
		}
		return math.NaN()
	}
	place, n := math.NaN(), 0
	for _, m := range o.Marks {
		if m.Edge == e && m.Name == at.Mark.ID {
			place, n = m.At, n+1
		}
	}
	if n != 1 {
		return math.NaN()
	}
	return place
}
