package check

import (
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// idleOps finds the operations that hold for no garment although everything they
// name is there in some: their guards and those of what they name shut each
// other out.
func (r *run) idleOps() map[*model.Op]bool {
	idle := map[*model.Op]bool{}
	for _, op := range r.Ops() {
		if !r.possible(op.Cond) && r.possible(op.Said) && r.possible(op.Step.Cond) && !r.lost(op) {
			idle[op] = true
		}
	}
	return idle
}

// lost reports whether an operation names something that is there in no garment,
// or a seam of which nobody knows what it joins. That is reported where it is
// declared.
func (r *run) lost(op *model.Op) bool {
	lost := false
	look := func(t *model.Target) {
		lost = lost || !r.possible(t.Cond) || t.Kind == model.ToSeam && len(t.Seam.Copies) == 0 || t.Piece != nil && r.neverCut(t.Piece)
	}
	for _, o := range op.Objects {
		o.Each(look)
	}
	for _, p := range op.Phrases {
		for _, t := range p.Targets {
			t.Each(look)
		}
	}
	return lost
}

// asMeant gives the pattern with its idle operations done wherever what they act
// on is there, so that one wrong guard is not reported a second time as a seam
// that is never sewn.
func asMeant(p *model.Pattern, idle map[*model.Op]bool) *model.Pattern {
	if len(idle) == 0 {
		return p
	}
	mended := *p
	mended.Sections, mended.Kept = nil, nil
	for _, s := range p.Sections {
		section := *s
		section.Steps = nil
		for _, st := range s.Steps {
			step := *st
			step.Items = nil
			for _, i := range st.Items {
				if op, ok := i.(*model.Op); ok && idle[op] {
					done := *op
					done.Cond = condition.True
					i = &done
				}
				step.Items = append(step.Items, i)
			}
			section.Steps = append(section.Steps, &step)
		}
		mended.Sections = append(mended.Sections, &section)
	}
	return &mended
}

// neverCut reports whether a piece is cut in no garment.
func (r *run) neverCut(p *model.Piece) bool {
	for _, i := range p.Instances() {
		if r.possible(i.Cond) {
			return false
		}
	}
	return true
}
