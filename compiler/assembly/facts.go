// Package assembly plays the steps of a pattern through: what becomes of every
// cut part, edge, seam and notion, and in which garments.
//
// In: a [model.Pattern]. Out: [Facts]. It does not judge; compiler/check reads
// the facts and compiler/wording counts what has to be bought from them.
package assembly

import (
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// Facts is what the steps do to each thing, whatever their order: for every cut
// part, edge, seam and notion the garments in which something happens to it.
type Facts struct {
	Used   map[*model.Instance]condition.Cond // becomes part of the garment
	Shut   map[model.EdgeUse]condition.Cond   // the edge needs nothing more
	Fusing []Fusing
	Stock  map[StockKey][]Amount
	Holes  map[*model.Notion][]Amount       // buttonholes for it
	Worked map[*model.Notion]condition.Cond // something else is put through it or fastened to it, as a strap to its ring
	Treats map[TreatKey]*Treatment
	space  *condition.Space
}

// Fusing is one `fuse` of one thing.
type Fusing struct {
	Op     *model.Op
	Target *model.Target
	Cond   condition.Cond
}

// StockKey is a notion or one half of it, or a part of a strip.
type StockKey struct {
	Notion *model.Notion
	Half   string
	Bit    *model.Bit
}

// Amount is so many, wherever a condition holds.
type Amount struct {
	N    int
	Cond condition.Cond
	Op   *model.Op
}

// TreatKey is what is done to which edge or part of a pair.
type TreatKey struct {
	Verb  string
	Piece *model.Piece
	Edge  *model.Edge
	Seam  *model.Seam
	Copy  string
	Cloth *model.Material
}

// Treatment says where it is done to the left one and to the right one.
type Treatment struct {
	Side [3]condition.Cond
	Op   [3]*model.Op
	Said bool // a step says that only one side is meant
}

// Gather reads the steps once.
func Gather(p *model.Pattern) *Facts {
	parts, _, uses := sizes(p)
	f := &Facts{Used: make(map[*model.Instance]condition.Cond, parts), Shut: make(map[model.EdgeUse]condition.Cond, uses), Stock: map[StockKey][]Amount{},
		Holes: map[*model.Notion][]Amount{}, Worked: map[*model.Notion]condition.Cond{}, Treats: map[TreatKey]*Treatment{}, space: p.Space}
	for _, op := range p.Ops() {
		for _, o := range op.Objects {
			o.Each(func(t *model.Target) { f.object(op, t) })
		}
		for _, p := range op.Phrases {
			for _, x := range p.Targets {
				x.Each(func(t *model.Target) { f.phrase(op, p, t) })
			}
		}
	}
	return f
}

func (f *Facts) use(i *model.Instance, c condition.Cond) {
	f.Used[i] = f.space.Or(f.Used[i], f.space.And(c, i.Cond))
}

func (f *Facts) close(u *model.EdgeUse, c condition.Cond) {
	k := *u
	f.Shut[k] = f.space.Or(f.Shut[k], c)
}

func (f *Facts) object(op *model.Op, t *model.Target) {
	c := f.space.And(op.Cond, t.Cond)
	switch {
	case op.Verb == "fuse":
		f.Fusing = append(f.Fusing, Fusing{op, t, c})
	case t.Kind == model.ToSeam && op.Row.Sews:
		f.sew(op, t, c)
	case t.Kind == model.ToSeam && op.Row.Shuts:
		// finishing a seam finishes the edges in it; they are shut by being sewn
	case t.Kind == model.ToGap:
	default:
		f.acts(op, t, c)
	}
	f.takes(op, t, c)
	f.treat(op, t, c)
}

// acts notes what an operation does to the cut parts and edges it names.
func (f *Facts) acts(op *model.Op, t *model.Target, c condition.Cond) {
	if op.Row.Joins {
		for _, i := range t.Instances {
			f.use(i, c)
		}
	}
	if op.Row.Shuts || attaches[op.Verb] {
		for _, u := range t.Uses {
			f.close(u, c)
		}
	}
}

// attaches are the verbs that fasten a part by the edges they name.
var attaches = map[string]bool{"apply": true, "attach": true, "insert": true, "set": true}

// sew notes that a seam is sewn: all that lies in it becomes one.
func (f *Facts) sew(op *model.Op, t *model.Target, c condition.Cond) {
	for _, j := range t.Seam.Copies {
		if !SewnBy(op, t, j) {
			continue
		}
		jc := f.space.And(c, j.Cond)
		for _, u := range j.Uses() {
			f.use(u.Instance, jc)
			f.close(u, jc)
		}
	}
	for _, k := range t.Seam.Catching {
		k.Target.Each(func(x *model.Target) {
			xc := f.space.And(c, x.Cond)
			for _, i := range x.Instances {
				f.use(i, xc)
			}
			for _, u := range x.Uses {
				f.close(u, xc)
			}
			f.take(x, Amount{k.Count * f.perGarment(t.Seam), xc, op})
		})
	}
}

// perGarment is how often a seam's catching happens: once for each side.
func (f *Facts) perGarment(s *model.Seam) int { return max(1, len(s.Copies)) }

// SewnBy reports whether an operation on a seam acts on one of its copies.
func SewnBy(op *model.Op, t *model.Target, j *model.Join) bool {
	if t.In != "" && j.In != t.In {
		return false
	}
	for _, s := range []model.Side{t.Side, op.Only} {
		if s != model.Neither && j.Side != model.Neither && j.Side != s {
			return false
		}
	}
	return true
}

// takes notes what an operation takes from stock by naming it first.
func (f *Facts) takes(op *model.Op, t *model.Target, c condition.Cond) {
	if op.Row.Uses != "objects" {
		return
	}
	f.take(t, Amount{op.Count * sides(op), c, op})
}

func (f *Facts) take(t *model.Target, a Amount) {
	switch t.Kind {
	case model.ToNotion:
		k := StockKey{Notion: t.Notion, Half: t.NotionBit}
		f.Stock[k] = append(f.Stock[k], a)
	case model.ToBit:
		k := StockKey{Bit: t.Bit}
		f.Stock[k] = append(f.Stock[k], a)
	}
}

// sides is how often an operation is done in one garment: twice if the place
// where it is done is there on both sides of the body.
func sides(op *model.Op) int {
	if op.Only != model.Neither {
		return 1
	}
	for _, p := range op.Phrases {
		if p.Name != "at" && p.Name != "on" && p.Name != "to" {
			continue
		}
		for _, t := range p.Targets {
			left, right := false, false
			for _, i := range t.Instances {
				left, right = left || i.Side == model.Left, right || i.Side == model.Right
			}
			if left && right {
				return 2
			}
		}
	}
	return 1
}

func (f *Facts) phrase(op *model.Op, p *model.Phrase, t *model.Target) {
	c := f.space.And(op.Cond, t.Cond)
	if t.Kind == model.ToNotion && t.Notion.Kind == model.Counted && op.Row.Class == model.Attach && op.Row.Uses == "objects" {
		f.Worked[t.Notion] = f.space.Or(f.Worked[t.Notion], c)
	}
	switch {
	case p.Name == "with" && op.Row.Uses == "with":
		f.take(t, Amount{1, c, op})
		for _, i := range t.Instances {
			f.use(i, c)
		}
	case p.Name == "for" && op.Verb == "buttonhole" && t.Kind == model.ToNotion:
		f.Holes[t.Notion] = append(f.Holes[t.Notion], Amount{op.Count * sides(op), c, op})
	case p.Name == "catching", p.Name == "into", p.Place == "into", p.Place == "over" && (op.Row.Joins || op.Row.Shuts), p.Name == "to" && op.Row.Joins, p.Name == "with" && op.Row.Joins:
		for _, i := range t.Instances {
			f.use(i, c)
		}
		for _, u := range t.Uses {
			if p.Name == "catching" {
				f.close(u, c)
			}
		}
	}
}

// treat notes which side of a pair an operation treats.
func (f *Facts) treat(op *model.Op, t *model.Target, c condition.Cond) {
	note := func(k TreatKey, s model.Side) {
		x := f.Treats[k]
		if x == nil {
			x = &Treatment{}
			f.Treats[k] = x
		}
		x.Said = x.Said || op.Only != model.Neither
		x.Side[s] = f.space.Or(x.Side[s], c)
		if meetsItsTwin(op, t) {
			x.Side[model.Neither] = f.space.Or(x.Side[model.Neither], c)
		}
		if x.Op[s] == nil {
			x.Op[s] = op
		}
	}
	switch t.Kind {
	case model.ToSeam:
		for _, j := range t.Seam.Copies {
			if j.Side != model.Neither && SewnBy(op, t, j) {
				note(TreatKey{Verb: op.Verb, Seam: t.Seam}, j.Side)
			}
		}
	case model.ToEdge:
		for _, u := range t.Uses {
			note(TreatKey{Verb: op.Verb, Piece: t.Piece, Edge: t.Edge, Copy: u.Instance.Copy, Cloth: u.Instance.Cut.Material}, u.Side)
		}
	case model.ToPiece:
		for _, i := range t.Instances {
			note(TreatKey{Verb: op.Verb, Piece: t.Piece, Copy: i.Copy, Cloth: i.Cut.Material}, i.Side)
		}
	}
}

// meetsItsTwin reports whether an operation names the other one of a pair in a
// phrase, as when the left back is laid over the right: then both are treated.
func meetsItsTwin(op *model.Op, t *model.Target) bool {
	found := false
	for _, p := range op.Phrases {
		each(p.Targets, func(x *model.Target) {
			found = found || t.Piece != nil && x.Piece == t.Piece && x.Edge == t.Edge && x.Side != t.Side
		})
	}
	return found
}
