package check

import (
	"strings"

	"seamwarden/compiler/assembly"
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// index is what many rules look up, gathered in one walk over the steps and one
// over the seams, so that no rule walks over all steps for each seam. Its lists are
// shared: they must not be changed.
type index struct {
	steps      []*model.Step
	ops        []*model.Op
	byVerb     map[string][]*model.Op
	sewing     map[*model.Seam][]sewing
	blind      []sewing                       // of seams of which nobody knows what they join
	named      map[*model.Seam][]*model.Piece // the pieces that a seam names
	naming     map[*model.Piece][]*model.Seam // the seams that name a piece
	texts      []stepText
	told       []stepText // see written
	small      []string   // texts in small letters
	smallTold  []string   // told in small letters
	smallNames []string   // what pieces are called, in small letters

	marked, used map[any]condition.Cond // see signs
	firstUse     map[any]*model.Op
}

// sewing is an operation that sews a seam: what it acts on, and of alternatives the
// one that is the seam.
type sewing struct {
	op     *model.Op
	object *model.Target
	seam   *model.Target
}

func indexOf(p *model.Pattern) *index {
	x := &index{steps: p.Steps(), ops: p.Ops(), byVerb: map[string][]*model.Op{}, sewing: make(map[*model.Seam][]sewing, len(p.Seams)),
		named: make(map[*model.Seam][]*model.Piece, len(p.Seams)), naming: make(map[*model.Piece][]*model.Seam, len(p.Pieces))}
	for _, op := range x.ops {
		x.byVerb[op.Verb] = append(x.byVerb[op.Verb], op)
		if op.Row.Sews {
			x.sews(op)
		}
	}
	for _, s := range p.Seams {
		x.names(s)
	}
	return x
}

// sews notes which seams an operation sews.
func (x *index) sews(op *model.Op) {
	for _, o := range op.Objects {
		o.Each(func(t *model.Target) {
			if t.Seam == nil {
				return
			}
			x.sewing[t.Seam] = append(x.sewing[t.Seam], sewing{op, o, t})
		})
		if o.Seam != nil && len(o.Seam.Copies) == 0 {
			x.blind = append(x.blind, sewing{op, o, o})
		}
	}
}

// names notes which pieces a seam names.
func (x *index) names(s *model.Seam) {
	var all []*model.Piece
	for _, t := range s.Rows() {
		t.Each(func(t *model.Target) {
			if t.Piece == nil {
				return
			}
			for _, p := range all {
				if p == t.Piece {
					return
				}
			}
			all = append(all, t.Piece)
			x.naming[t.Piece] = append(x.naming[t.Piece], s)
		})
	}
	x.named[s] = all
}

// Steps and Ops stand before those of the pattern, which make a list each time.
func (r *run) Steps() []*model.Step { return r.index.steps }
func (r *run) Ops() []*model.Op     { return r.index.ops }

// opsOf lists the operations of some verbs, those of one verb after those of
// another.
func (r *run) opsOf(verbs ...string) func(yield func(*model.Op) bool) {
	return func(yield func(*model.Op) bool) {
		for _, v := range verbs {
			for _, op := range r.index.byVerb[v] {
				if !yield(op) {
					return
				}
			}
		}
	}
}

// smallTexts gives the texts of steps in small letters, in the order of stepTexts.
func (r *run) smallTexts() []string {
	if texts := r.stepTexts(); r.index.small == nil {
		r.index.small = make([]string, len(texts))
		for i, t := range texts {
			r.index.small[i] = strings.ToLower(t.text)
		}
	}
	return r.index.small
}

// smallPieces gives the names of the pieces in small letters, in their order.
func (r *run) smallPieces() []string {
	if r.index.smallNames == nil {
		r.index.smallNames = make([]string, len(r.Pieces))
		for i, p := range r.Pieces {
			r.index.smallNames[i] = strings.ToLower(p.Name)
		}
	}
	return r.index.smallNames
}

// sewnOn lists what sews a seam line.
func (r *run) sewnOn(j *model.Join) func(yield func(sewing) bool) {
	return func(yield func(sewing) bool) {
		for _, x := range r.index.sewing[j.Seam] {
			if assembly.SewnBy(x.op, x.seam, j) && !yield(x) {
				return
			}
		}
	}
}
