package check

import (
	"math"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/measure"
	"seamwarden/compiler/model"
	"seamwarden/compiler/outline"
)

// givenLength is a length that is declared, for the garments of a condition.
type givenLength struct {
	cond condition.Cond
	mm   func(size int) float64
}

// declaredOf gives how long a band is: what is cut of it, or what is bought; nothing if
// that is not said.
func (r *run) declaredOf(b *band) (all []givenLength) {
	fixed := func(c condition.Cond, count int, l measure.Length) {
		all = append(all, givenLength{c, func(int) float64 { return float64(count) * l.MM() }})
	}
	if b.bit != nil {
		if l, ok := bitLength(b.bit); ok {
			fixed(b.bit.Cond, max(1, b.bit.Count)*max(1, b.bit.Strip.Count), l)
		}
		return
	}
	n := b.notion
	bySize := func(c condition.Cond, count int, key string) {
		row := r.Sizes.Find(key)
		if row == nil {
			return
		}
		all = append(all, givenLength{r.Space.And(c, r.RowCond(row)), func(size int) float64 {
			if !row.Has(size) {
				return math.NaN()
			}
			return float64(count) * row.Values[size].MM()
		}})
	}
	for _, c := range n.Cuts {
		switch {
		case c.Length != nil:
			fixed(c.Cond, max(1, c.Count), c.Length.Length)
		case c.BySize != "":
			bySize(c.Cond, max(1, c.Count), c.BySize)
		}
	}
	switch {
	case len(n.Cuts) > 0:
	case n.Length != nil:
		fixed(n.Cond, 1, n.Length.Length)
	case n.BySize != "":
		bySize(n.Cond, 1, n.BySize)
	}
	return
}

// bitLength is how long one part of a strip is: as is said, or what is left.
func bitLength(b *model.Bit) (measure.Length, bool) {
	if b.Length != nil {
		return b.Length.Length, true
	}
	left := b.Strip.Length.Length
	for _, o := range b.Strip.Bits {
		switch {
		case o == b:
		case o.Length == nil:
			return left, false
		default:
			left = left.Sub(o.Length.Length.Mul(int64(max(1, o.Count))))
		}
	}
	return left, true
}

// neededAndGiven adds up, for all garments that have a band, the length that its uses
// take (row 0) and the length that is declared (row 1).
func (r *run) neededAndGiven(b *band, given []givenLength, taken map[*model.Edge]float64) []rowLengths {
	cond := condition.False
	for _, u := range b.uses {
		cond = r.Space.Or(cond, u.cond)
	}
	all := []rowLengths{r.noLengths(r.Space.And(b.decl.Cond, cond))}
	for i := range b.uses {
		u := &b.uses[i]
		in, out := r.split(all, u.cond)
		if u.seam != nil {
			in = r.withSeam(in, u, taken)
		} else {
			in = r.withEdges(in, u)
		}
		if all = append(in, out...); len(all) > mostRows {
			return nil
		}
	}
	said := condition.False
	for _, g := range given {
		in, out := r.split(all, g.cond)
		for i := range in {
			in[i] = in[i].plus(1, in[i].cond, g.mm)
		}
		all, said = append(in, out...), r.Space.Or(said, g.cond)
	}
	in, out := r.split(all, said)
	for _, l := range out {
		in = append(in, l.plus(1, l.cond, notKnown))
	}
	return in
}

// split parts lengths into those of the garments of a condition, and the rest.
func (r *run) split(all []rowLengths, c condition.Cond) (in, out []rowLengths) {
	for _, l := range all {
		here, left := l, l
		if here.cond = r.Space.And(l.cond, c); r.possible(here.cond) {
			in = append(in, here)
		}
		if left.cond = r.Space.Diff(l.cond, c); r.possible(left.cond) {
			out = append(out, left)
		}
	}
	return
}

// withEdges adds the edges along which a band goes, each part by itself; of a made-up
// part, whose layers lie on each other, one on each side.
func (r *run) withEdges(all []rowLengths, u *bandUse) []rowLengths {
	groups := map[model.Side][]*model.EdgeUse{}
	var inOrder [][]*model.EdgeUse
	for _, x := range u.along.Uses {
		if u.along.Kind != model.ToPartEdge {
			inOrder = append(inOrder, []*model.EdgeUse{x})
			continue
		}
		groups[x.Side] = append(groups[x.Side], x)
	}
	for _, s := range []model.Side{model.Neither, model.Left, model.Right} {
		if len(groups[s]) > 0 {
			inOrder = append(inOrder, groups[s])
		}
	}
	for _, g := range inOrder {
		all = r.withMember(all, 0, g, func(x *model.EdgeUse, d *model.Drawn, size int) float64 {
			return u.layers * r.alongEdge(u.along, x, d, size)
		})
	}
	return all
}

// alongEdge is the length of an edge as it is when its neighbours are sewn, in one size.
func (r *run) alongEdge(t *model.Target, u *model.EdgeUse, d *model.Drawn, size int) float64 {
	o, e := r.drawnEdge(u.Edge, d, size)
	if e == nil {
		return math.NaN()
	}
	width := func(other *outline.Edge) float64 {
		if other == e {
			return 0
		}
		return r.widthAt(nil, u, other)
	}
	if t.From != nil {
		a, b := placeOn(o, e, u.Edge, t.From), placeOn(o, e, u.Edge, t.To)
		return math.Abs(o.SewPlace(e, b, width) - o.SewPlace(e, a, width))
	}
	if acrossFold(u) {
		return 2 * o.SewLength(e, width)
	}
	return o.SewLength(e, width)
}

// withSeam adds the length of a seam: that of its shorter row, on each side of the body.
func (r *run) withSeam(all []rowLengths, u *bandUse, taken map[*model.Edge]float64) []rowLengths {
	for _, j := range u.seam.Copies {
		for _, l := range r.addUp(u.seam, j, taken) {
			in, out := r.split(all, l.cond)
			for i := range in {
				in[i] = in[i].plus(0, in[i].cond, func(k int) float64 {
					a, b := l.rows[0][k], l.rows[1][k]
					if math.IsNaN(a) || b < a {
						a = b
					}
					return u.layers * a
				})
			}
			all = append(in, out...)
		}
		if u.once {
			break
		}
	}
	return all
}
